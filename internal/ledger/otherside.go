package ledger

import (
	"foundrow/internal/notation"
)

// otherSide works along the free loops of a chain: those that lie ahead in the row, else those of the foundation.
func (h *hand) otherSide(k *craft, c *notation.Make, t *notation.Target, count int, rest []notation.Clause) {
	if !h.s.other && h.loopsAhead(want{what: otherSide}) == 0 {
		h.turnCorner(true)
		defer func() {
			h.s.other = false
			h.recount()
		}()
	}
	at := *t
	at.Where = notation.Next
	if t.Each || !t.Count.Said && !t.Noun.Chains.Said && c.Form == notation.Bare {
		at.Where = notation.Everywhere
	}
	if h.s.other {
		if c.Form == notation.NumberFirst && !t.Count.Said { // "4 sc along the other side"
			h.spread(k, want{what: otherSide}, count, 1)
			return
		}
		h.places(k, c, &at, count, rest)
		return
	}
	n, ok := h.number(&t.Count, 1)
	if !ok {
		return
	}
	h.spread(k, want{what: otherSide}, n, count)
}

// along says where what follows is worked.
func (h *hand) along(c *notation.Along) {
	switch c.In.Where {
	case notation.OtherSide:
		h.turnCorner(false)
	case notation.RowEnds:
		h.s.ends = true
	default:
		h.s.other, h.s.ends = false, false
		h.recount()
	}
}

// turnCorner brings the hook to the other side of the chain that the row goes along, or of the foundation.
func (h *hand) turnCorner(short bool) {
	s := &h.s
	if s.other {
		return
	}
	for i := range s.runs { // the chain this row has gone along
		if r := &s.runs[i]; r.made.Kind == Chains && r.face == Top && r.back && s.tchain > 0 {
			n := r.from + 1 - s.tchain - 1
			s.other = true
			if n > 0 {
				s.run, s.off = len(s.runs), 0
				if s.left > 0 {
					s.holes += s.left
				}
				h.insertRun(run{made: r.made, row: r.row, from: 1, n: n, face: FreeLoop})
			}
			h.recount()
			return
		}
	}
	e := h.b.foundation
	if h.usedFoundation {
		e = Edge{}
	}
	s.other = true
	for i := len(e.Spans) - 1; i >= 0; i-- {
		for _, r := range h.b.layOut(nil, e.Spans[i]) {
			h.insertRun(r)
		}
	}
	h.usedFoundation = true
	h.recount()
}
