package proof

import (
	"sort"
	"strings"
	"unicode"
	"unicode/utf8"

	"foundrow/internal/formula"
	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// A cutter cuts a file into passages and these into words.
type cutter struct {
	file     *source.File
	slots    []pattern.Slot
	passages []passage
	words    []word // of all passages

	text     string // of the file, to the end of the passage
	at       int
	kind     passageKind
	first    int // the word the passage begins with
	began    int // the word the sentence begins with
	sentence int32
}

// longest is how many words a sentence has at most; what goes on for longer is cut there, so that looking through a sentence is
// always quick.
const longest = 256

// reach is how many bytes a value, tag, address or piece of code has at most. One that is opened and never closed is not looked for
// in the whole of the file, again and again.
const reach = 1 << 11

// take cuts one passage.
func (c *cutter) take(kind passageKind, span source.Span) {
	to := min(span.To, len(c.file.Text))
	if span.From < 0 || span.From >= to {
		return
	}
	c.text, c.at, c.kind, c.first, c.began, c.sentence = c.file.Text[:to], span.From, kind, len(c.words), len(c.words), 0
	for c.at < len(c.text) {
		c.next()
	}
	c.passages = append(c.passages, passage{kind: kind, span: span, words: c.words[c.first:]})
}

// next takes one word, or passes over what is not read.
func (c *cutter) next() {
	rest := c.text[c.at:]
	r, size := utf8.DecodeRuneInString(rest)
	near := rest[:min(len(rest), reach)]
	switch {
	case r == '\\':
		c.escape(rest)
	case r == '`':
		c.at += codeLength(near)
	case r == '{' && strings.IndexByte(near, '}') > 0:
		c.value(strings.IndexByte(near, '}') + 1)
	case r == '<' && tagLength(near) > 0:
		c.at += tagLength(near)
	case r == ']' && strings.HasPrefix(rest, "]("):
		c.put(mark, 1)
		c.at += addressLength(near[1:])
	case r == '\n':
		c.at++
		if c.kind != paragraph {
			c.stop()
		}
	case unicode.IsSpace(r) || (r == '*' || r == '_') && !(c.kind == row || c.kind == lead):
		c.at += size
	case isFigure(rest):
		c.figure(rest)
	case unicode.IsLetter(r):
		c.put(plainWord, wordLength(rest))
	default:
		c.put(mark, size)
		if (r == '.' || r == '!' || r == '?') && (c.at == len(c.text) || c.text[c.at] == ' ' || c.text[c.at] == '\n') {
			c.stop()
		}
	}
}

// stop ends a sentence.
func (c *cutter) stop() {
	c.sentence++
	c.began = len(c.words)
}

func (c *cutter) put(kind wordKind, length int) *word {
	if len(c.words)-c.began >= longest {
		c.stop()
	}
	text := c.text[c.at : c.at+length]
	c.words = append(c.words, word{
		kind: kind, text: text, low: strings.ToLower(text), slot: -1, sentence: c.sentence,
		span: source.Span{From: c.at, To: c.at + length},
	})
	c.at += length
	return &c.words[len(c.words)-1]
}

// escape passes over a stitch name that is left alone, and takes any other character as it is.
func (c *cutter) escape(rest string) {
	c.at++
	if r, size := utf8.DecodeRuneInString(rest[1:]); unicode.IsLetter(r) {
		c.at += wordLength(rest[1:])
	} else if size > 0 {
		c.put(mark, size)
	}
}

func (c *cutter) value(length int) {
	from := c.at
	w := c.put(value, length)
	w.text = strings.TrimSpace(w.text[1 : length-1])
	w.low = w.text
	if i := sort.Search(len(c.slots), func(i int) bool { return c.slots[i].Span.To > from }); i < len(c.slots) && c.slots[i].Span.From <= from {
		w.slot = int32(i)
	}
}

// figure takes a number with what makes it another thing: "38th" is an ordinal, "2X", "2tog" and "11:40" are words.
func (c *cutter) figure(rest string) {
	num, length := readFigure(rest, c.insideBrackets())
	after := rest[length:]
	letters := wordLength(after)
	tail := strings.ToLower(after[:letters])
	switch {
	case strings.HasPrefix(after, ":") && len(after) > 1 && isDigit(after[1]):
		length++
		for length < len(rest) && (isDigit(rest[length]) || rest[length] == ':') {
			length++
		}
		c.put(plainWord, length)
		return
	case num.IsWhole() && (tail == "st" && endsInOne(num) || tail == "nd" || tail == "rd" || tail == "th"):
		c.put(ordinal, length+letters)
	case letters > 0 && after[:letters] != "x" && unitOf(tail) == measure.NoUnit && countOf(tail) == formula.Unknown:
		c.put(plainWord, length+letters)
		return
	default:
		c.put(number, length)
	}
	c.words[len(c.words)-1].num = num
}

// endsInOne tells "1st" and "21st" from "3st", three stitches written without a space.
func endsInOne(n measure.Num) bool {
	whole, _ := n.Int()
	return whole%10 == 1 && whole%100 != 11
}

// insideBrackets reports whether a bracket is open, where a comma parts the numbers of a list rather than thousands.
func (c *cutter) insideBrackets() bool {
	for i := len(c.words) - 1; i >= c.began; i-- {
		switch c.words[i].text {
		case ")", "]":
			return false
		case "(", "[":
			return true
		}
	}
	return false
}

// quarters are the fractions that a tape shows, and the eighths and thirds that are written beside them.
var quarters = map[rune]measure.Num{
	'¼': measure.Ratio(1, 4), '½': measure.Ratio(1, 2), '¾': measure.Ratio(3, 4), '⅛': measure.Ratio(1, 8), '⅜': measure.Ratio(3, 8),
	'⅝': measure.Ratio(5, 8), '⅞': measure.Ratio(7, 8), '⅓': measure.Ratio(1, 3), '⅔': measure.Ratio(2, 3),
}

func isFigure(s string) bool {
	if isDigit(s[0]) || s[0] == '.' && len(s) > 1 && isDigit(s[1]) {
		return true
	}
	r, _ := utf8.DecodeRuneInString(s)
	_, fraction := quarters[r]
	return fraction
}

// readFigure reads "54", "54.5", "1,200", "21¼", "21 1/4" and "3/4", and returns the number and its length.
func readFigure(s string, listed bool) (num measure.Num, length int) {
	digits := func(from int) int {
		to := from
		for to < len(s) && isDigit(s[to]) {
			to++
		}
		return to
	}
	length = digits(0)
	for !listed && length > 0 && length < 4 && length+3 < len(s) && s[length] == ',' && digits(length+1) == length+4 {
		length += 4
	}
	if length+1 < len(s) && s[length] == '.' && isDigit(s[length+1]) {
		length = digits(length + 1)
	}
	num, _ = measure.Parse(strings.ReplaceAll(s[:length], ",", ""))
	rest, whole := s[length:], num.IsWhole()
	if r, size := utf8.DecodeRuneInString(strings.TrimPrefix(rest, " ")); size > 0 {
		if q, ok := quarters[r]; ok && whole {
			return num.Add(q), len(s) - len(strings.TrimPrefix(rest, " ")) + size
		}
	}
	if over, under, n := readFraction(strings.TrimPrefix(rest, " ")); n > 0 && whole && strings.HasPrefix(rest, " ") {
		return num.Add(measure.Ratio(over, under)), len(s) - len(rest) + 1 + n
	}
	if over, under, n := readFraction(s); n > 0 {
		return measure.Ratio(over, under), n
	}
	return num, length
}

// readFraction reads a proper fraction in halves, quarters or eighths: "1/2", "3/4".
func readFraction(s string) (over, under int64, length int) {
	if len(s) < 3 || s[1] != '/' || !isDigit(s[0]) || len(s) > 3 && isDigit(s[3]) {
		return 0, 0, 0
	}
	over, under = int64(s[0]-'0'), int64(s[2]-'0')
	if under != 2 && under != 4 && under != 8 || over == 0 || over >= under {
		return 0, 0, 0
	}
	return over, under, 3
}

func isDigit(b byte) bool { return '0' <= b && b <= '9' }

// wordLength is the length of the word that a text begins with: letters, digits, apostrophes and underscores, and a hyphen before
// a digit, as in "ch-2".
func wordLength(s string) int {
	n := 0
	for n < len(s) {
		r, size := utf8.DecodeRuneInString(s[n:])
		if !unicode.IsLetter(r) && !(n > 0 && (isDigit(s[n]) || joins(r, s[n+size:]))) {
			break
		}
		n += size
	}
	return n
}

// joins reports whether an apostrophe, hyphen or underscore with this behind it belongs to the word before it.
func joins(r rune, rest string) bool {
	next, size := utf8.DecodeRuneInString(rest)
	switch r {
	case '\'', '’':
		return unicode.IsLetter(next)
	case '-':
		return size == 1 && isDigit(rest[0])
	case '_':
		return unicode.IsLetter(next) || size == 1 && isDigit(rest[0])
	}
	return false
}

// codeLength is the length of the code span that a text begins with; of its backticks alone when it is never closed.
func codeLength(s string) int {
	n := len(s) - len(strings.TrimLeft(s, "`"))
	fence := s[:n]
	for at := n; at < len(s); {
		i := strings.Index(s[at:], fence)
		if i < 0 {
			return n
		}
		at += i
		run := len(s[at:]) - len(strings.TrimLeft(s[at:], "`"))
		if run == n {
			return at + n
		}
		at += run
	}
	return n
}

// tagLength is the length of the tag, comment or address in angle brackets that a text begins with, or 0.
func tagLength(s string) int {
	if len(s) < 3 || s[1] != '/' && s[1] != '!' && !unicode.IsLetter(rune(s[1])) {
		return 0
	}
	return strings.IndexByte(s, '>') + 1
}

// addressLength is the length of the address in brackets that a text begins with, behind the words of its link.
func addressLength(s string) int {
	depth := 0
	for i := range len(s) {
		switch s[i] {
		case '(':
			depth++
		case ')':
			if depth--; depth == 0 {
				return i + 1
			}
		case '\n':
			return 0
		}
	}
	return 0
}
