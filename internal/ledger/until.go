package ledger

import (
	"foundrow/internal/notation"
	"foundrow/internal/source"
)

// untilCount repeats rows until a number of stitches remains. It is looked at after every row.
func (h *hand) untilCount(said []*words, l *notation.Again) {
	target, ok := h.number(&l.Extent.Count, 0)
	if !ok {
		return
	}
	line := h.row
	ending := h.endingRow(l)
	first := h.so.number + 1
	defer func() {
		h.tell(first, h.so.number, said...)
	}()
	for h.so.count != target {
		start := h.so.count
		for i, w := range said {
			before := h.so.count
			h.workRow(h.next(w, line))
			h.so.worked++
			now := h.so.count
			h.row = line
			switch {
			case h.so.open || h.tired() || h.so.worked > tallest:
				return
			case now == target:
				if i < len(said)-1 && ending != w.line {
					h.report(UntilWithin, source.Query, l.Extent.Span, 0, [2]string{}, target, i+1, len(said))
				}
				return
			case before < target && now > target, before > target && now < target:
				h.fail(UntilPassed, l.Extent.Span, 0, target, before, now)
				return
			}
		}
		if now := h.so.count; now == start || (now > start) != (target > start) {
			h.fail(UntilNever, l.Extent.Span, 0, target, start, now)
			return
		}
	}
}

// endingRow is the line of the row that "ending with row 2" names, -1 when none is named.
func (h *hand) endingRow(l *notation.Again) int {
	for _, r := range l.Ending {
		if n, ok := h.number(&r.From, 0); ok {
			if w, found := h.find(n); found {
				return w.line
			}
		}
	}
	return -1
}

// untilLong repeats rows until the piece is as long as is said.
func (h *hand) untilLong(said []*words, l *notation.Again) {
	if h.p.Rows == nil {
		h.cycle(said, len(said))
		return
	}
	rows, ok := h.p.Rows(l.Extent)
	if !ok {
		h.cycle(said, len(said))
		return
	}
	n := rows - h.so.worked
	if n <= 0 {
		return
	}
	side := h.so.side
	if n%2 == 1 {
		side = facing(side)
	}
	if l.EndSide != notation.NoSide && side != notation.NoSide && side != l.EndSide {
		n++
	}
	if last := h.endingRow(l); last >= 0 {
		for most := n + len(said); said[(n-1)%len(said)].line != last && n < most; {
			n++
		}
	}
	h.cycle(said, n)
}
