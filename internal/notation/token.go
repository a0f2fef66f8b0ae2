package notation

import (
	"unicode/utf8"

	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

// A kind sorts tokens.
type kind uint8

const (
	tEnd     kind = iota
	tWord         // a word; unknown ones have the word unknown
	tNumber       // 12
	tOrdinal      // 2nd
	tSlot         // {front}
	tComma        // , ; and the full stop are told apart: a claim stands in a sentence of its own
	tSemi         // ;
	tStop         // .
	tColon        // :
	tDash         // - with space round it, or – or —
	tHyphen       // - within a word
	tEquals       // =
	tPlus         // +
	tSlash        // /
	tStar         // *, **
	tOpen         // ( [
	tShut         // ) ]
	tQuote        // "own words"
	tEdge         // hem.left
)

// A token is a piece of a line. Offsets are those of the file.
type token struct {
	kind     kind
	word     word
	is       bool // a word that is a stitch by itself
	begins   bool // a word that may begin a stitch of several words
	decimal  bool // a number with a fraction: "30.5"; an ordinal that is a value: "{n}th"
	bracket  byte // of brackets
	n        int  // a number, the index of a slot, how many stars, or the index of the bracket that matches
	from, to int
	*lexeme  // of words
}

func (t *token) span() source.Span { return source.Span{From: t.from, To: t.to} }

// most is the largest count that is worked: ten million stitches are no pattern.
const most = 10_000_000

// A scanner cuts one line into tokens.
type scanner struct {
	text  string // of the whole file
	i, to int
	terms stitch.Terms
	slot  func(int) int
	toks  []token
	open  []int // brackets not yet closed
	// what went wrong, as spans: brackets that do not match, trade braces, numbers beyond most
	loose, braces, large []source.Span
}

// scan cuts the text between two offsets into tokens. The last is always of kind tEnd.
func (s *scanner) scan(from, to int) {
	s.i, s.to, s.toks, s.open = from, to, s.toks[:0], s.open[:0]
	s.loose, s.braces, s.large = s.loose[:0], s.braces[:0], s.large[:0]
	for {
		s.space()
		if s.i >= s.to {
			break
		}
		s.next()
	}
	for _, i := range s.open {
		s.loose = append(s.loose, s.toks[i].span())
		s.toks[i].n = len(s.toks)
	}
	s.toks = append(s.toks, token{kind: tEnd, from: s.to, to: s.to, lexeme: &wordless})
}

func (s *scanner) space() {
	for s.i < s.to {
		switch c := s.text[s.i]; {
		case c == ' ' || c == '\t' || c == '\r':
			s.i++
		case c == 0xC2 && s.i+1 < s.to && s.text[s.i+1] == 0xA0:
			s.i += 2
		default:
			return
		}
	}
}

func (s *scanner) add(k kind, n int) *token {
	s.toks = append(s.toks, token{kind: k, from: s.i, to: s.i + n, lexeme: &wordless})
	s.i += n
	return &s.toks[len(s.toks)-1]
}

func (s *scanner) peek(at int) byte {
	if at >= s.to || at < 0 {
		return 0
	}
	return s.text[at]
}

func (s *scanner) next() {
	c := s.text[s.i]
	switch {
	case isLetter(c):
		s.words()
	case isDigit(c):
		s.number()
	case c == ',':
		s.add(tComma, 1)
	case c == ';':
		s.add(tSemi, 1)
	case c == '.':
		s.stop()
	case c == ':':
		s.add(tColon, 1)
	case c == '=':
		s.add(tEquals, 1)
	case c == '+':
		s.add(tPlus, 1)
	case c == '/':
		s.add(tSlash, 1)
	case c == '&':
		t := s.add(tWord, 1)
		t.word, t.lexeme = wAnd, lexicon[s.terms]["and"]
	case c == '*':
		n := 1
		for s.peek(s.i+n) == '*' {
			n++
		}
		s.add(tStar, n).n = n
	case c == '-':
		s.dash()
	case c == '(' || c == '[' || c == '<':
		if c == '<' {
			s.braces = append(s.braces, source.Span{From: s.i, To: s.i + 1})
		}
		s.bracket(c)
	case c == ')' || c == ']' || c == '>' || c == '}':
		s.shut(c)
	case c == '{':
		s.brace()
	case c == '"':
		s.quote(1, "\"")
	case c == '\'':
		s.i++
	default:
		s.other()
	}
}

func isLetter(c byte) bool { return c|0x20 >= 'a' && c|0x20 <= 'z' || c == '_' }
func isDigit(c byte) bool  { return c >= '0' && c <= '9' }

// other reads what is not ASCII: dashes, quotes, the multiplication sign; anything else is an unknown word.
func (s *scanner) other() {
	r, n := utf8.DecodeRuneInString(s.text[s.i:s.to])
	switch r {
	case '–', '—', '−':
		after := s.i + n
		if r == '–' && len(s.toks) > 0 && s.toks[len(s.toks)-1].to == s.i && after < s.to && s.text[after] != ' ' {
			s.add(tHyphen, n)
			return
		}
		s.add(tDash, n)
	case '“':
		s.quote(n, "”")
	case '×', '✕':
		t := s.add(tWord, n)
		t.word, t.lexeme = wX, lexicon[s.terms]["x"]
	case '’', '‘', '”', '\u200b', '\ufeff':
		s.i += n
	default:
		s.add(tWord, n)
		for s.i < s.to && s.text[s.i] >= utf8.RuneSelf || s.i < s.to && isLetter(s.text[s.i]) {
			s.i++
		}
		s.toks[len(s.toks)-1].to = s.i
	}
}

// stop reads a full stop. One that only closes an abbreviation, with the sentence going on behind it, is dropped.
func (s *scanner) stop() {
	if n := len(s.toks); n > 0 && s.toks[n-1].to == s.i && s.toks[n-1].kind == tWord && shortens(s.toks[n-1].low) {
		at := s.i + 1
		for at < s.to && s.text[at] == ' ' {
			at++
		}
		low := s.toks[n-1].low
		if c := s.peek(at); c >= 'a' && c <= 'z' || isDigit(c) && s.takesNumber(low) || c == ',' || c == ';' || (c == '(' || c == '[') && s.toks[n-1].word == wUnit || c == '(' && low == "in" {
			s.i++
			return
		}
	}
	s.add(tStop, 1)
}

// shortens reports whether a word is an abbreviation that old texts write with a full stop.
func shortens(low string) bool {
	switch low {
	case "st", "sp", "ch", "chs", "rep", "rnd", "beg", "tch", "tog", "lp", "lps", "in", "cm", "sk", "inc", "dec", "cont", "foll", "alt", "patt",
		"rem", "prev", "ins", "tr", "dc", "sc", "dtr", "sl", "l", "p", "bet", "rd", "inch", "mm":
		return true
	}
	return false
}

// takesNumber reports whether a number may follow an abbreviation within the sentence: "ch. 3", "rnd. 2".
func (s *scanner) takesNumber(low string) bool {
	switch low {
	case "ch":
		if n := len(s.toks); n > 1 { // "in last ch. 14 sts" ends a sentence
			switch t := &s.toks[n-2]; {
			case t.kind == tNumber, t.kind == tOrdinal, t.kind == tWord && (t.word == wNext || t.word == wLast || t.word == wFirst || t.word == wEach || t.word == wSame || t.word == wRemaining || t.word == wEnd):
				return false
			}
		}
		return true
	case "sk", "rnd", "rd", "inc", "dec", "rep", "sl":
		return true
	}
	return false
}

// dash reads a hyphen within a word, or a dash between phrases.
func (s *scanner) dash() {
	before := len(s.toks) > 0 && s.toks[len(s.toks)-1].to == s.i
	after := s.peek(s.i + 1)
	if before && after != 0 && after != ' ' && after != '-' {
		s.add(tHyphen, 1)
		return
	}
	n := 1
	for s.peek(s.i+n) == '-' {
		n++
	}
	s.add(tDash, n)
}

// depth is how many brackets may stand within each other.
const depth = 24

func (s *scanner) bracket(c byte) {
	t := s.add(tOpen, 1)
	t.bracket = c
	if len(s.open) >= depth {
		s.loose = append(s.loose, t.span())
		t.n = len(s.toks)
		return
	}
	s.open = append(s.open, len(s.toks)-1)
}

// shut matches a closing bracket with the last that was opened; one of another shape closes it all the same, with a finding.
func (s *scanner) shut(c byte) {
	if n := len(s.toks); len(s.open) == 0 && c == ')' && n > 0 && n <= 4 && (s.toks[n-1].kind == tNumber || s.toks[n-1].kind == tOrdinal) {
		s.add(tColon, 1) // "Row 1) ", "12) "
		return
	}
	if len(s.open) == 0 {
		s.loose = append(s.loose, source.Span{From: s.i, To: s.i + 1})
		s.i++
		return
	}
	at := s.open[len(s.open)-1]
	s.open = s.open[:len(s.open)-1]
	if s.toks[at].bracket != mate(c) {
		s.loose = append(s.loose, source.Span{From: s.i, To: s.i + 1})
	}
	s.toks[at].n = len(s.toks)
	t := s.add(tShut, 1)
	t.bracket, t.n = c, at
}

func mate(c byte) byte {
	switch c {
	case ')':
		return '('
	case ']':
		return '['
	case '}':
		return '{'
	}
	return '<'
}

// brace reads a value; a brace that holds none is one of the trade's, which are read as brackets with a finding.
func (s *scanner) brace() {
	slot := -1
	if s.slot != nil {
		slot = s.slot(s.i)
	}
	if slot < 0 {
		s.braces = append(s.braces, source.Span{From: s.i, To: s.i + 1})
		s.bracket('{')
		return
	}
	n := 1
	for s.i+n < s.to && s.text[s.i+n] != '}' {
		n++
	}
	n = min(n+1, s.to-s.i)
	t := s.add(tSlot, n)
	t.n = slot
	switch low := s.letters(s.i); low {
	case "th", "st", "nd", "rd":
		// {n}th is an ordinal; {n}st could be "{n} st" written together, but nobody writes that of a value
		t.kind = tOrdinal
		t.decimal = true // marks an ordinal that is a value
		s.i += 2
		t.to = s.i
	}
}

// letters returns the run of letters at an offset, up to three, in small letters.
func (s *scanner) letters(at int) string {
	n := 0
	for n < 4 && at+n < s.to && isLetter(s.text[at+n]) {
		n++
	}
	if n == 0 || n > 3 {
		return ""
	}
	return small(s.text[at : at+n])
}

func small(s string) string {
	for i := range len(s) {
		if s[i] >= 'A' && s[i] <= 'Z' {
			b := []byte(s)
			for j := range b {
				if b[j] >= 'A' && b[j] <= 'Z' {
					b[j] |= 0x20
				}
			}
			return string(b)
		}
	}
	return s
}

// quote reads words of the designer's own, up to the closing mark. A mark straight behind a number is the sign for inches.
func (s *scanner) quote(n int, closing string) {
	if k := len(s.toks); closing == "\"" && k > 0 && s.toks[k-1].kind == tNumber && s.toks[k-1].to == s.i {
		t := s.add(tWord, 1)
		t.word, t.lexeme = wUnit, lexicon[s.terms]["inch"]
		return
	}
	for at := s.i + n; at+len(closing) <= s.to; at++ {
		if s.text[at:at+len(closing)] == closing {
			s.add(tQuote, at+len(closing)-s.i).n = n
			return
		}
	}
	s.loose = append(s.loose, source.Span{From: s.i, To: s.i + n})
	s.i += n
}

func (s *scanner) number() {
	t := s.add(tNumber, 0)
	for s.i < s.to && isDigit(s.text[s.i]) {
		if t.n <= most {
			t.n = 10*t.n + int(s.text[s.i]-'0')
		}
		s.i++
	}
	if t.n > most {
		t.n = most
		s.large = append(s.large, source.Span{From: t.from, To: s.i})
	}
	switch {
	case s.peek(s.i) == '.' && isDigit(s.peek(s.i+1)):
		t.decimal = true
		s.i++
		for s.i < s.to && isDigit(s.text[s.i]) {
			s.i++
		}
	case s.peek(s.i) != 0:
		switch low := s.letters(s.i); low {
		case "th", "nd", "rd", "d":
			t.kind = tOrdinal
			s.i += len(low)
		case "st":
			if t.n%10 == 1 && t.n%100 != 11 {
				t.kind = tOrdinal
				s.i += 2
			}
		}
	}
	t.to = s.i
}

// words reads a run of letters. Hyphens, digits and dots belong to it only where the whole is a known word: "row-end", "sc2tog",
// "s.c.".
func (s *scanner) words() {
	end := s.i
	for end < s.to && (isLetter(s.text[end]) || isApostrophe(s.text, end, s.to) > 0) {
		end += max(1, isApostrophe(s.text, end, s.to))
	}
	if end-s.i > 2 && s.text[end-1]|0x20 == 's' && s.text[end-2] == '\'' { // "dc's"
		if l, ok := s.look(s.i, end-2); ok {
			s.word(end, l)
			return
		}
	}
	if s.peek(end) == '.' && end-s.i <= 2 && isLetter(s.peek(end+1)) && s.dotted(end) {
		return
	}
	if s.peek(end) == '.' && isLetter(s.peek(end+1)) && s.edge(end) {
		return
	}
	if isDigit(s.peek(end)) {
		long := end
		for long < s.to && (isDigit(s.text[long]) || isLetter(s.text[long])) {
			long++
		}
		if st, ok := stitch.Word(s.text[s.i:long], s.terms); ok && st.Together > 0 {
			t := s.add(tWord, long-s.i)
			t.is, t.lexeme = true, &lexeme{stitch: st, low: small(s.text[t.from:t.to])}
			return
		}
	}
	if s.peek(end) == '-' && isLetter(s.peek(end+1)) {
		long := end + 1
		for long < s.to && isLetter(s.text[long]) {
			long++
		}
		if l, ok := s.look(s.i, long); ok {
			s.word(long, l)
			return
		}
	}
	l, ok := s.look(s.i, end)
	if !ok {
		l = &lexeme{low: small(s.text[s.i:end])}
		l.stitch, l.is = stitch.Word(l.low, s.terms)
	}
	if l.word == wDropped {
		s.i = end
		return
	}
	s.word(end, l)
}

func (s *scanner) word(end int, l *lexeme) {
	t := s.add(tWord, end-s.i)
	t.word, t.is, t.begins, t.lexeme = l.word, l.is, l.begins, l
	if s.peek(end) == '(' && s.peek(end+1)|0x20 == 's' && s.peek(end+2) == ')' {
		s.i += 3 // time(s)
		t.to = s.i
	}
}

// look finds a word of the file in the lexicon without copying it.
func (s *scanner) look(from, to int) (*lexeme, bool) {
	var b [24]byte
	if to-from > len(b) {
		return nil, false
	}
	n := copy(b[:], s.text[from:to])
	for i := range n {
		if b[i] >= 'A' && b[i] <= 'Z' {
			b[i] |= 0x20
		}
	}
	l, ok := lexicon[s.terms][string(b[:n])]
	return l, ok
}

func isApostrophe(text string, at, to int) int {
	if at < to && text[at] == '\'' && at+1 < to && isLetter(text[at+1]) {
		return 1
	}
	return 0
}

// dotted reads "s.c." and "h.d.c.", as old books write.
func (s *scanner) dotted(end int) bool {
	long := end
	for s.peek(long) == '.' && isLetter(s.peek(long+1)) {
		long++
		for long < s.to && isLetter(s.text[long]) {
			long++
		}
	}
	l, ok := s.look(s.i, long)
	if !ok {
		return false
	}
	s.word(long, l)
	if s.peek(s.i) == '.' {
		s.i++
	}
	return true
}

// edge reads "hem.left": an edge of a piece.
func (s *scanner) edge(dot int) bool {
	end := dot + 1
	for end < s.to && (isLetter(s.text[end]) || isDigit(s.text[end])) {
		end++
	}
	switch s.text[dot+1 : end] {
	case "last", "foundation", "left", "right":
		s.add(tEdge, end-s.i).n = dot
		return true
	}
	return false
}
