package ledger

import (
	"foundrow/internal/notation"
	"foundrow/internal/source"
)

// A reach is an edge of another piece that this one is taking stitches from as it goes.
type reach struct {
	piece, which string
	left         Edge
	known        bool
	copy         int // which of several pieces made alike it is of, from 0
}

// reachFor finds the edge that a name means, as much of it as is left.
func (h *hand) reachFor(e *notation.Edge) *reach {
	for i := range h.foreign {
		if f := &h.foreign[i]; f.piece == e.Piece && f.which == e.Which {
			h.another(f, e)
			return f
		}
	}
	edge, ok := h.edge(e, 0)
	if !ok {
		h.report(NoSuchEdge, source.Error, e.Span, 0, [2]string{e.Piece, e.Which})
	}
	h.foreign = append(h.foreign, reach{e.Piece, e.Which, edge, ok, 0})
	return &h.foreign[len(h.foreign)-1]
}

// another goes on to the same edge of the next piece made alike, where the one before is used up.
func (h *hand) another(f *reach, e *notation.Edge) {
	if !f.known || f.left.Stitches() > 0 {
		return
	}
	if edge, ok := h.edge(e, f.copy+1); ok {
		f.left, f.copy = edge, f.copy+1
	}
}

// edge finds a live edge, of another piece or of this one; copy counts the pieces made alike.
func (h *hand) edge(e *notation.Edge, copy int) (Edge, bool) {
	which := e.Which
	if e.Row.Said {
		n, ok := h.number(&e.Row, 0)
		if !ok {
			return Edge{}, false
		}
		which = "row " + digits(n)
	}
	if e.Piece == "" || e.Piece == h.p.Name {
		h.b.last = h.so.live
		return h.b.Edge(which)
	}
	if h.p.Edges == nil {
		return Edge{}, false
	}
	return h.p.Edges(e.Piece, which, copy)
}

// takeFrom takes n stitches of an edge of another piece.
func (h *hand) takeFrom(e *notation.Edge, n int) bool {
	f := h.reachFor(e)
	if !f.known {
		return false
	}
	if has := f.left.Stitches(); has < n {
		h.report(RunOut, source.Error, e.Span, 1, [2]string{e.Piece, e.Which}, n, has)
		n = has
	}
	_, f.left = f.left.Cut(n)
	h.s.begun = true
	return true
}

// reach works a stitch into an edge of another piece, which takes it up there.
func (h *hand) reach(k *craft, c *notation.Make, t *notation.Target, count int) {
	n, ok := h.number(&t.Count, 1)
	if !ok {
		return
	}
	if t.Each && !t.Count.Said || t.Till.Kind == notation.AcrossRow {
		n = h.reachFor(t.Edge).left.Stitches()
	}
	if !h.takeFrom(t.Edge, n) || k.slip {
		return
	}
	made := n
	if count > 1 && count != n {
		made = n * count
	}
	h.emit(h.madeOf(k.made, k.makes*made))
}

// digits writes a number.
func digits(n int) string {
	if n < 10 {
		return string(rune('0' + max(n, 0)))
	}
	return digits(n/10) + digits(n%10)
}
