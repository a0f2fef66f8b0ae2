package ledger

import (
	"foundrow/internal/notation"
	"foundrow/internal/source"
)

// evenly makes a number of stitches, increases or decreases without saying where.
func (h *hand) evenly(c *notation.Evenly, rest []notation.Clause) {
	s := &h.s
	n, ok := h.number(&c.Count, 0)
	if !ok {
		return
	}
	k := &craft{made: h.base(), makes: 1, uses: 1}
	if c.Stitch.Name != "" {
		k = h.craftOf(c.Stitch, c.At())
	}
	if c.Per[0].Said {
		h.ratio(c, k)
		return
	}
	ends := c.Along.Where == notation.RowEnds || s.ends
	onEnds := s.run < len(s.runs) && s.runs[s.run].made.Kind == Ends
	if c.Change == 0 && (c.Along.Where == notation.OtherSide || ends && !onEnds) {
		// along a side that is not what the row is on: as many as are said
		s.begun = true
		m := h.madeOf(k.made, k.makes*n)
		h.emit(m)
		s.last = place{&nowhere, Span{}}
		return
	}
	keep, _ := h.needs(rest)
	if c.Along.Till.Kind == notation.ToLast || c.Along.Till.Kind == notation.UntilLeft {
		keep = h.keep(&c.Along.Till)
	}
	over := s.left - keep
	if c.Along.Count.Said && !ends {
		if m, ok := h.number(&c.Along.Count, 0); ok {
			over = m
		}
	}
	if h.so.open && s.left == 0 {
		s.open = true
		return
	}
	switch {
	case c.Change > 0:
		if n > over*4 {
			h.report(DoesNotFit, source.Error, c.At(), 1, [2]string{}, n, over)
		}
		n = over + n
	case c.Change < 0:
		if 2*n > over && n > 0 {
			h.report(DoesNotFit, source.Error, c.At(), 2, [2]string{}, n, over)
		}
		n = max(over-n, 0)
	}
	h.overAll(h.madeOf(k.made, n), over)
}

// overAll makes stitches over a number of places, without saying which goes where.
func (h *hand) overAll(m *Made, over int) {
	var into Span
	for over > 0 {
		if h.seek(want{}) == nil {
			if !h.so.open {
				h.s.short += over
			}
			break
		}
		span, n := h.use(over, true)
		if n == 0 {
			break
		}
		if both, ok := follows(into, span); ok {
			into = both
		}
		over -= n
	}
	h.s.begun = true
	m.Into = into
	if m.N > 0 {
		h.append(m)
	}
}

// evenlyOver makes as many stitches as are said over all that is left of the row.
func (h *hand) evenlyOver(m *Made) { h.overAll(m, h.s.left) }

// ratio makes so many stitches over every so many rows.
func (h *hand) ratio(c *notation.Evenly, k *craft) {
	s := &h.s
	a, _ := h.number(&c.Per[0], 1)
	b, _ := h.number(&c.Per[1], 1)
	if b <= 0 || a <= 0 {
		return
	}
	rows := s.left
	if s.run >= len(s.runs) || s.runs[s.run].made.Kind != Ends {
		rows = h.b.RowEnds()
		if c.Along.Count.Said {
			rows, _ = h.number(&c.Along.Count, rows)
		}
		if rows%b != 0 {
			h.report(PickUp, source.Query, c.At(), 2, [2]string{}, a, b, rows)
		}
		s.begun = true
		h.emit(h.madeOf(k.made, k.makes*(rows/b*a+(rows%b)*a/b)))
		return
	}
	if rows%b != 0 {
		h.report(PickUp, source.Query, c.At(), 2, [2]string{}, a, b, rows)
	}
	h.overAll(h.madeOf(k.made, k.makes*(rows/b*a+(rows%b)*a/b)), rows)
}

// bothEnds works a change at the start of the row, what lies between, and the change at its end.
func (h *hand) bothEnds(c *notation.AtEnds, rest []notation.Clause) {
	start, end := *c, *c
	start.End, end.Start = false, false
	if c.Start {
		h.atEnds(&start, nil)
	}
	i := len(rest)
	for i > 0 && !h.works(rest[i-1:]) {
		i--
	}
	clauses := append(append(append([]notation.Clause{}, rest[:i]...), &end), rest[i:]...)
	h.seq(clauses, true)
}

// atEnds increases or decreases at the ends of the row, in the stitch worked last; where the row says nothing more, it is worked
// plainly between them.
func (h *hand) atEnds(c *notation.AtEnds, rest []notation.Clause) {
	n, ok := h.number(&c.Count, 1)
	if !ok {
		return
	}
	k := &craft{made: h.base(), makes: 2, uses: 1}
	if c.Change < 0 {
		together := h.sheet.stitches[k.made]
		together.Together = 2
		k = &craft{made: h.sheet.one(together), makes: 1, uses: 2}
	}
	alone := c.Start && c.End || !h.works(rest) && (c.Start != c.End) && !h.stitched()
	if c.Start {
		h.spread(k, want{}, n, 1)
	}
	if alone {
		plain := h.s.left
		if c.End {
			plain -= n * k.uses
		}
		h.spread(&craft{made: h.base(), makes: 1, uses: 1}, want{}, plain, 1)
	}
	if c.End {
		h.toLast(want{}, n*k.uses)
		h.spread(k, want{}, n, 1)
	}
}
