package grade

import (
	"slices"
	"strconv"

	"foundrow/internal/ledger"
	"foundrow/internal/source"
)

// A stand is a pattern planned once in one tension, for many bodies: its formulas are read, put in order and checked, and the pieces
// that come out alike for several bodies are worked once.
type stand struct {
	g     *Grid
	t     Tension
	plans map[string]*plan // by which measurements are given: what is given is not made of anything
	shelf *shelf
}

func (g *Grid) stand(t Tension) *stand {
	return &stand{g: g, t: t, plans: map[string]*plan{}, shelf: &shelf{books: map[string]shelved{}, number: map[*ledger.Book]int{}}}
}

// work works one body and returns what is found, as WorkFor finds it, and whether a row does not come out.
func (s *stand) work(b body) (findings source.Findings, fails bool) {
	key := make([]byte, len(b.own))
	for i, own := range b.own {
		if !own.IsLost() {
			key[i] = 1
		}
	}
	w := s.plans[string(key)]
	if w == nil {
		w = s.plan(b)
		s.plans[string(key)] = w
	}
	return w.again(s.g, b)
}

// plan makes a plan for all bodies that give the same measurements.
func (s *stand) plan(b body) *plan {
	w := newPlan(s.g.p)
	w.maker = true
	w.unpin()
	for i := range s.g.sizes {
		w.sizes = append(w.sizes, i)
	}
	m := s.g.maker(b, s.t)
	w.putIn(m.Body)
	w.putInGauges(m.Gauges)
	w.bench.shelf = s.shelf
	w.walk()
	return w
}

// again works a plan that was walked for one body, and leaves it as it was.
func (w *plan) again(g *Grid, b body) (findings source.Findings, fails bool) {
	c := *w
	c.sizes = []int{b.size}
	c.entries = slices.Clone(w.entries)
	c.bench.pieces = slices.Clone(w.bench.pieces)
	c.findings = slices.Clone(w.findings)
	for i := range b.own {
		if own := b.own[i]; !own.IsLost() {
			c.entries[c.byName[g.axes[i].name]].given = &own
		}
	}
	c.workSizes()
	c.remark()
	c.examine()
	less := c.lessThanNone()
	return c.findings, less || c.findings.Errors()
}

// lessThanNone asks about values in rows that come to less than none, and reports whether there are any: "repeat {fast - 1} more
// times" leaves its row open where there is not even the first.
func (w *plan) lessThanNone() bool {
	found := false
	for i := range w.entries {
		for _, slot := range w.entries[i].slots {
			l := &w.lines[w.slots[slot]]
			if n := w.slotValues[slot][0].Num; n.Sign() < 0 {
				found = true
				w.ask(l.f.Span, "below-zero", "the row asks for "+l.f.Text+", which comes to "+n.String(), "see in which sizes and bodies the row is needed")
			}
		}
	}
	return found
}

// A shelf has the books of pieces that were worked, by all that they depend on.
type shelf struct {
	books  map[string]shelved
	number map[*ledger.Book]int
}

type shelved struct {
	book    *ledger.Book
	reports []ledger.Report
}

// work works a piece in its sizes, or takes it off the shelf where it was worked from the same numbers before.
func (b *workbench) work(w *plan, e *entry, pc *Piece, in []ledger.Piece) ([]*ledger.Book, [][]ledger.Report) {
	if b.shelf == nil || len(in) != 1 {
		return ledger.WorkSizes(in)
	}
	key := w.dependsOn(e, pc)
	if s, there := b.shelf.books[key]; there {
		return []*ledger.Book{s.book}, [][]ledger.Report{s.reports}
	}
	before := len(w.findings)
	books, reports := ledger.WorkSizes(in)
	b.shelf.number[books[0]] = len(b.shelf.number) + 1
	if len(w.findings) == before { // what is found on the way would be lost with the book
		b.shelf.books[key] = shelved{books[0], reports[0]}
	}
	return books, reports
}

// dependsOn names all that the one book of a piece depends on within a tension: the size, whose numbers are taken from lists, the
// values in its rows, and the books of the pieces it uses and of those that may have used the same edges before.
func (w *plan) dependsOn(e *entry, pc *Piece) string {
	key := make([]byte, 0, 64)
	put := func(n int64) { key = append(strconv.AppendInt(key, n, 36), ' ') }
	put(int64(w.bench.byName[pc.Name]))
	put(int64(w.sizes[0]))
	for _, slot := range e.slots {
		put(w.slotValues[slot][0].Num.Over())
		put(w.slotValues[slot][0].Num.Under())
	}
	as := w.p.Pieces[pc.Blocks[0]].As.Text
	for i := range w.bench.pieces {
		other := &w.bench.pieces[i]
		if other.Name != pc.Name && len(other.Books) > 0 && other.Books[0] != nil && (other.Name == as || meet(pc, other)) {
			put(int64(i))
			put(int64(w.bench.shelf.number[other.Books[0]]))
		}
	}
	return string(key)
}

// meet reports whether a piece uses edges of another, or of a third that the other uses too.
func meet(pc, other *Piece) bool {
	for _, e := range pc.Rows.Edges {
		if e.Piece == other.Name {
			return true
		}
		for _, o := range other.Rows.Edges {
			if o.Piece == e.Piece {
				return true
			}
		}
	}
	return false
}
