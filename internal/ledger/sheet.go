package ledger

import (
	"foundrow/internal/notation"
	"foundrow/internal/source"
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

// words are what a line of rows says, the same in every size.
type words struct {
	line   int
	body   []notation.Clause
	claims []notation.Claim
	counts *notation.Counts // what it says of its chain, where it does so apart from it
	label  *notation.Label
	span   source.Span
	round  bool
	side   notation.Side
	opens  *opening // how it opens, once that was looked at
	split  bool     // some of it is for some sizes only
	slips  bool     // slip stitches are all it works: they are its fabric
	plain  bool     // nothing in it looks further than the row below or does anything but make stitches
}

// A text is a row to be worked: what it says, and how it is called.
type text struct {
	*words
	number int
	name   RowName
	span   source.Span
	side   notation.Side
	claims []notation.Claim // those that hold for this working
	odd    bool             // it is worked as another row says, whose claims do not hold
}

func (w *words) text() text { return text{words: w, span: w.span, side: w.side} }

// wordsOf is what a line of rows says.
func wordsOf(i int, l *notation.Row) *words {
	w := &words{body: l.Body, claims: l.Claims, label: &l.Label, span: l.At(), line: i, round: l.Label.Round, side: l.Label.Side, plain: true}
	if w.split = forSome(l.Body); w.split {
		w.plain = false
	}
	w.slips = onlySlips(l.Body)
	for _, c := range l.Body {
		switch c := c.(type) {
		case *notation.Counts:
			w.counts = c
		case *notation.Join:
			w.round = w.round || !c.Not
		case *notation.Turn, *notation.Chain, *notation.Make, *notation.Repeat, *notation.Group, *notation.Through, *notation.Remark, *notation.Skip:
		default:
			w.plain = false
		}
	}
	return w
}

// onlySlips reports whether slip stitches are all that a row works.
func onlySlips(clauses []notation.Clause) bool {
	found := false
	for _, c := range clauses {
		switch c := c.(type) {
		case *notation.Travel:
			found = true
		case *notation.Make:
			if c.Stitch.Name != "sl st" {
				return false
			}
			found = true
		case *notation.Chain, *notation.Turn, *notation.Remark, *notation.Yarn, *notation.Marker, *notation.Through, *notation.Counts:
		default:
			return false
		}
	}
	return found
}

// forSome reports whether any of the clauses is for some sizes only.
func forSome(clauses []notation.Clause) bool {
	for _, c := range clauses {
		if o := c.For(); o.Rest || len(o.Names) > 0 {
			return true
		}
		switch c := c.(type) {
		case *notation.Group:
			if forSome(c.Body) || forSome(c.Ending) {
				return true
			}
		case *notation.Repeat:
			if forSome(c.Body) || forSome(c.Ending) {
				return true
			}
		}
	}
	return false
}
