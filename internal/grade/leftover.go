package grade

import (
	"slices"
	"strconv"

	"foundrow/internal/source"
)

// lookOver asks about edges of which something was taken up and something is left when every piece is worked: stitches that no
// row, seam or pick-up ever meets.
func (w *plan) lookOver() {
	type left struct {
		name edgeName
		n    int
	}
	var all []left
	sizes := map[left][]int{}
	for s := range w.bench.taken {
		for name, t := range w.bench.taken[s] {
			if n := t.left.Stitches(); n > 0 {
				l := left{name, n}
				if sizes[l] == nil {
					all = append(all, l)
				}
				sizes[l] = append(sizes[l], s)
			}
		}
	}
	slices.SortFunc(all, func(a, b left) int { return a.n - b.n })
	for _, l := range all {
		at, named := w.lastNamed(l.name)
		if !named {
			continue
		}
		_, names := w.in(sizes[l])
		w.ask(at, "left-over", strconv.Itoa(l.n)+" of the sts of "+l.name.piece+"."+l.name.which+" are left when all the pieces are worked", "take them up, or say that they are left: Note: …")
		w.findings[len(w.findings)-1].Sizes = names
	}
}

// lastNamed finds where an edge is named last in the pattern.
func (w *plan) lastNamed(name edgeName) (at source.Span, named bool) {
	for i := range w.bench.pieces {
		for _, e := range w.bench.pieces[i].Rows.Edges {
			if e.Piece == name.piece && e.Which == name.which && e.Span.From >= at.From {
				at, named = e.Span, true
			}
		}
	}
	return at, named
}
