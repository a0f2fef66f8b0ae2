package ledger

import (
	"foundrow/internal/notation"
	"foundrow/internal/source"
)

// rowEnds works along row-ends: those of the edge the row is on, else those of this piece.
func (h *hand) rowEnds(k *craft, c *notation.Make, t *notation.Target, count int) {
	at := h.s.run
	for at < len(h.s.runs) && at == h.s.run && h.s.off >= h.s.runs[at].n { // the run before is used up
		at++
	}
	onEnds := at < len(h.s.runs) && h.s.runs[at].made.Kind == Ends
	n, said := h.number(&t.Count, 0)
	switch {
	case onEnds:
		w := want{what: rowEnd, name: t.Noun.Stitch.Name}
		each := count
		switch {
		case t.Count.Said && !t.Each && count == n:
			each = 1
		case t.Count.Said:
		case t.Each:
			n = h.ahead(w, 0)
			if t.Till.Kind == notation.ToLast {
				n = h.ahead(w, h.keep(&t.Till))
			}
		case c.Form == notation.NumberFirst || c.Form == notation.NumberAfter: // "24 sc along the side": as many as are said
			h.evenlyOver(h.madeOf(k.made, k.makes*count))
			return
		case t.Where == notation.RowEnds:
			n = h.ahead(w, 0)
		}
		if t.Every > 1 {
			if n%t.Every != 0 {
				h.report(PickUp, source.Query, t.Span, 0, [2]string{}, t.Every, n)
			}
			h.everyOther(k, w, n, t.Every, each)
			return
		}
		h.spread(k, w, n, each)
		return
	case !t.Count.Said:
		n = h.b.RowEnds()
		if !t.Each { // "10 sc down side"
			h.s.begun = true
			h.emit(h.madeOf(k.made, k.makes*count))
			h.s.soft = false
			return
		}
	case !said:
		return
	}
	if has := h.endsHere(); n > has {
		h.report(PickUp, source.Error, t.Span, 1, [2]string{}, n, has)
	}
	h.s.begun = true
	if t.Every > 1 {
		n = (n + t.Every - 1) / t.Every
	}
	made := n
	if count > 1 && count != n {
		made = n * count
	}
	h.emit(h.madeOf(k.made, k.makes*made))
	h.s.last = place{&nowhere, Span{}}
}

// endsHere is how many rows have ended at the side of the piece; a piece that starts in the middle may have more.
func (h *hand) endsHere() int {
	n := h.b.RowEnds()
	if h.so.number > n && len(h.b.Rows) > 0 && h.b.Rows[0].Made != nil {
		n = h.so.number
	}
	if h.row.number-1 > n {
		n = h.row.number - 1
	}
	return n
}
