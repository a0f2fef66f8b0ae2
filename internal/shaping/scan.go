package shaping

import (
	"slices"
	"strings"
	"unicode/utf8"

	"foundrow/internal/source"
)

// A stepKind is what kind of token was read: one of these, or a sign itself.
type stepKind rune

const (
	stepEnd     stepKind = 0
	stepNumber  stepKind = '0'
	stepWord    stepKind = 'a' // letters, with hyphens between
	stepFormula stepKind = '{' // with all that stands to the closing brace
)

// A stepReader reads the text of a step token by token.
type stepReader struct {
	file     *source.File
	from     int // where the text begins in the file
	text     string
	kind     stepKind
	lo, hi   int    // of the token
	word     string // in small letters
	value    int    // of a number
	last     source.Span
	findings source.Findings
}

func (r *stepReader) at() source.Span { return source.Span{From: r.lo, To: r.hi}.Shift(r.from) }

// next reads the token behind the present one.
func (r *stepReader) next() {
	if r.hi > r.lo {
		r.last = r.at()
	}
	at := r.hi
	for at < len(r.text) && strings.IndexByte(" \t\r\n", r.text[at]) >= 0 {
		at++
	}
	r.lo, r.hi = at, at
	if at == len(r.text) {
		r.kind = stepEnd
		return
	}
	switch c := r.text[at]; {
	case isDigit(c):
		r.kind, r.value = stepNumber, 0
		for r.hi < len(r.text) && isDigit(r.text[r.hi]) {
			r.value = min(10*r.value+int(r.text[r.hi]-'0'), most+1)
			r.hi++
		}
	case isLetter(c):
		r.kind = stepWord
		for r.hi < len(r.text) && (isLetter(r.text[r.hi]) || r.text[r.hi] == '-') {
			r.hi++
		}
		r.word = strings.ToLower(r.text[r.lo:r.hi])
	case c == '{':
		r.kind = stepFormula
		n := strings.IndexByte(r.text[at:], '}')
		if n < 0 {
			r.hi = len(r.text)
			r.fail("a brace is opened and not closed", "write }")
			return
		}
		r.hi += n + 1
	default:
		sign, n := utf8.DecodeRuneInString(r.text[at:])
		r.kind, r.hi = stepKind(sign), at+n
	}
}

func isDigit(c byte) bool  { return c >= '0' && c <= '9' }
func isLetter(c byte) bool { return c|0x20 >= 'a' && c|0x20 <= 'z' }

// eat steps over a word if it is one of these.
func (r *stepReader) eat(words ...string) bool {
	if r.kind != stepWord || !slices.Contains(words, r.word) {
		return false
	}
	r.next()
	return true
}

func (r *stepReader) comma() {
	if r.kind == ',' {
		r.next()
	}
}

// need steps over one of these words or reports that it is missing.
func (r *stepReader) need(wanted string, words ...string) {
	switch {
	case r.eat(words...):
	case r.kind == stepWord:
		r.unread()
	default:
		r.fail("`"+wanted+"` is missing before "+r.said(), "write "+wanted)
	}
}

// unread reports a token that has no place where it stands.
func (r *stepReader) unread() {
	fix := "write steps such as leave 4, or 2 every row, 3 times, or 1 every other row, to the end"
	if near := source.Nearest(r.word, stepWords); r.kind == stepWord && near != "" && near != r.word {
		fix = "write " + near
	}
	r.fail(r.said()+" has no place here in a step", fix)
}

// fail reports the first slip of a step; what follows may come of it, and is not read.
func (r *stepReader) fail(message, fix string) {
	if len(r.findings) == 0 {
		r.findings.Report(r.file, r.at(), "step", message, fix)
	}
	r.kind, r.lo, r.hi = stepEnd, len(r.text), len(r.text)
}

// said names the token in a sentence.
func (r *stepReader) said() string {
	if r.kind == stepEnd {
		return "the end"
	}
	return "`" + r.text[r.lo:r.hi] + "`"
}
