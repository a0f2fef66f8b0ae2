package notation

import (
	"unicode/utf8"

	"foundrow/internal/source"
)

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
	if n := len(s.toks); len(s.open) == 0 && c == ')' && (n == 1 && s.toks[0].to-s.toks[0].from == 1 || n > 0 && n <= 4 && (s.toks[n-1].kind == tNumber || s.toks[n-1].kind == tOrdinal)) {
		s.add(tColon, 1) // "Row 1) ", "12) ", "A) "
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
