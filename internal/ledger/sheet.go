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
	stitches []stitch.Stitch
	room     []Made // where the sizes put what they make, one after the other
	rows     int    // how many rows the size before came to
	hand     hand   // works one size after the other
}

func newSheet(b *notation.Block) *sheet {
	return &sheet{lines: make([]*words, len(b.Lines)), agains: make([]text, len(b.Lines)), stitches: make([]stitch.Stitch, 1, 8)}
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

// one is the number of a stitch: equal stitches have the same.
func (s *sheet) one(st stitch.Stitch) int32 {
	for i := range s.stitches {
		if s.stitches[i] == st {
			return int32(i)
		}
	}
	s.stitches = append(s.stitches, st)
	return int32(len(s.stitches) - 1)
}

// of is the stitch of a run.
func (h *hand) of(m *Made) *stitch.Stitch { return &h.sheet.stitches[m.Of] }
