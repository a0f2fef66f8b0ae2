package notation

import (
	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

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
