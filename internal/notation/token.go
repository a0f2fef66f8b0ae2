package notation

import (
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

func isDigit(c byte) bool { return c >= '0' && c <= '9' }
