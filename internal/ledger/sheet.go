package ledger

import (
	"foundrow/internal/notation"
	"foundrow/internal/stitch"
)

// A sheet is what the sizes of a piece share while they are worked one after the other: what each line says, and the stitches by
// which runs are told apart. Nothing on it depends on a size.
type sheet struct {
	lines    []*words
	agains   []text
	stitches []*stitch.Stitch
	room     []Made // where the sizes put what they make, one after the other
	rows     int    // how many rows the size before came to
	hand     hand   // works one size after the other
}

func newSheet(b *notation.Block) *sheet {
	return &sheet{lines: make([]*words, len(b.Lines)), agains: make([]text, len(b.Lines))}
}

// words is what a line of rows says.
func (s *sheet) words(i int, l *notation.Row) *words {
	if s.lines[i] == nil {
		s.lines[i] = wordsOf(i, l)
	}
	return s.lines[i]
}

// again is a line that repeats rows, as it is reported.
func (s *sheet) again(i int, l *notation.Again) text {
	if s.agains[i].words == nil {
		w := &words{line: i, label: &l.Label, span: l.At()}
		s.agains[i] = text{words: w, span: l.At(), name: nameOf(&l.Label, 0)}
	}
	return s.agains[i]
}

// one is the shared copy of a stitch: equal stitches are equal pointers.
func (s *sheet) one(st stitch.Stitch) *stitch.Stitch {
	for i, p := range s.stitches {
		if *p == st {
			s.stitches[0], s.stitches[i] = p, s.stitches[0] // most ask for the one they asked for last
			return p
		}
	}
	p := new(stitch.Stitch)
	*p = st
	s.stitches = append(s.stitches, p)
	return p
}
