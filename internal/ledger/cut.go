package ledger

import (
	"foundrow/internal/notation"
	"foundrow/internal/source"
)

// cutEdge takes what a start names of an edge: its first or last stitches, the part between two markers, all of it.
func (h *hand) cutEdge(e *notation.Edge) (Edge, bool) {
	if e.Piece == "" || e.Piece == h.p.Name {
		edge, ok := h.edge(e, 0)
		if !ok {
			h.fail(NoSuchEdge, e.Span, 0)
			return Edge{}, false
		}
		part, _ := h.partOf(edge, e)
		return part, true
	}
	f := h.reachFor(e)
	if !f.known {
		return Edge{}, false
	}
	part, left := h.partOf(f.left, e)
	f.left = left
	return part, true
}

func (h *hand) partOf(edge Edge, e *notation.Edge) (part, left Edge) {
	has := edge.Stitches()
	short := func(n int) {
		if n > has {
			h.errors++
			h.report(RunOut, source.Error, e.Span, 1, [2]string{e.Piece, e.Which}, n, has)
		}
	}
	switch {
	case e.First.Said:
		n, _ := h.number(&e.First, has)
		short(n)
		return edge.Cut(n)
	case e.Last.Said:
		n, _ := h.number(&e.Last, has)
		short(n)
		left, part = edge.Cut(max(has-n, 0))
		return part, left
	case e.From != "" || e.To != "":
		return h.betweenMarks(edge, e)
	}
	return edge, Edge{Book: edge.Book}
}

// betweenMarks cuts an edge between two markers, both marked stitches with it.
func (h *hand) betweenMarks(edge Edge, e *notation.Edge) (part, left Edge) {
	from, to := 0, edge.Stitches()
	if edge.Book == nil {
		return edge, edge
	}
	if e.From != "" {
		n, ok := edge.markAt(e.From)
		if !ok {
			h.report(NoSuchMarker, source.Error, e.Span, 0, [2]string{e.From})
		}
		from = n
	}
	if e.To != "" {
		n, ok := edge.markAt(e.To)
		if !ok {
			h.report(NoSuchMarker, source.Error, e.Span, 0, [2]string{e.To})
			n = to - 1
		}
		to = n + 1
	}
	before, rest := edge.Cut(from)
	part, after := rest.Cut(max(to-from, 0))
	return part, before.Join(after)
}

// seam joins two edges, which must bring equal numbers.
func (h *hand) seam(l *notation.Seam) {
	var n [2]int
	for i := range l.Edges {
		e := &l.Edges[i]
		edge, ok := h.edge(e, 0)
		if !ok {
			h.report(NoSuchEdge, source.Error, e.Span, 0, [2]string{e.Piece, e.Which})
			return
		}
		part, _ := h.partOf(edge, e)
		n[i] = part.Stitches()
	}
	if n[0] != n[1] {
		h.errors++
		a, b := l.Edges[0], l.Edges[1]
		h.report(SeamDiffers, source.Error, l.At(), 0, [2]string{edgeName(a, h.p.Name), edgeName(b, h.p.Name)}, n[0], n[1])
	}
}

func edgeName(e notation.Edge, own string) string {
	if e.Piece == "" {
		if own == "" {
			return e.Which
		}
		return own + "." + e.Which
	}
	return e.Piece + "." + e.Which
}
