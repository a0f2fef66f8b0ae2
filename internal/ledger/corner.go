package ledger

import (
	"slices"

	"foundrow/internal/notation"
	"foundrow/internal/source"
)

// hands are the edges of a piece as hands meet them with the right side facing: down the left side, along the foundation, up the right
// side and back along the last row.
var hands = [...]string{"left", "foundation", "right", "last"}

// checkOrder reports edges of one piece that are named the other way round than the side that faces has them.
func (h *hand) checkOrder(l *notation.Start) {
	want := 1
	if h.facesFirst() == notation.WrongSide {
		want = -1
	}
	n := len(l.Edges)
	for i := range l.Edges {
		if i == n-1 && !l.Around {
			break
		}
		a, b := &l.Edges[i], &l.Edges[(i+1)%n]
		if a.Piece != b.Piece || n < 2 {
			continue
		}
		x, y := slices.Index(hands[:], a.Which), slices.Index(hands[:], b.Which)
		if x < 0 || y < 0 {
			continue
		}
		if turn := (y - x + 4) % 4; turn == 1 && want < 0 || turn == 3 && want > 0 {
			h.report(PickUp, source.Error, b.Span, 3, [2]string{a.Which, b.Which}, want)
			return
		}
	}
}

// facesFirst is the side that the first row behind the start is marked with.
func (h *hand) facesFirst() notation.Side {
	for _, l := range h.p.Block.Lines[h.row.line+1:] {
		switch l := l.(type) {
		case *notation.Row:
			return l.Label.Side
		case *notation.Start, *notation.Foundation:
			return notation.NoSide
		}
	}
	return notation.NoSide
}
