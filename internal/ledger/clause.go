package ledger

import (
	"foundrow/internal/notation"
)

// seq works clauses one after the other. At the top of a row a repeat that goes as often as it fits is fitted to what follows it, and
// then everything is done.
func (h *hand) seq(clauses []notation.Clause, top bool) {
	for i, c := range clauses {
		if h.split != nil {
			return
		}
		if h.step(); h.tired() {
			h.s.open = true
			return
		}
		if h.row.split && !h.holds(c.For()) {
			continue
		}
		rest := clauses[i+1:]
		if top {
			if a, ok := c.(*notation.AtEnds); ok && a.End && h.works(rest) {
				h.bothEnds(a, rest)
				return
			}
			if body, ending, ok := h.asFits(c); ok {
				h.fit(body, ending, rest)
				return
			}
		}
		h.clause(c, rest, top)
	}
}

func (h *hand) clause(c notation.Clause, rest []notation.Clause, top bool) {
	switch c := c.(type) {
	case *notation.Make:
		h.make(c, rest)
	case *notation.Chain:
		h.chain(c, rest, top)
	case *notation.Group:
		h.group(c, rest)
	case *notation.Repeat:
		h.repeat(c, rest)
	case *notation.Skip:
		h.skip(c, rest)
	case *notation.Leave:
		h.leave(c)
	case *notation.Join:
		h.join(c)
	case *notation.Travel:
		if h.row.slips {
			for i := range c.In {
				h.make(&notation.Make{Stitch: c.Stitch, In: c.In[i]}, rest)
			}
			return
		}
		h.travel(c)
	case *notation.Evenly:
		h.evenly(c, rest)
	case *notation.Through:
		h.s.loop, h.s.loops = c.Loop, true
	case *notation.Turn:
		h.turn(c, rest, top)
	case *notation.Fasten:
		h.so.cut = c.At()
	case *notation.Rejoin:
		h.rejoin(c, rest)
	case *notation.Marker:
		h.marker(c)
	case *notation.Quoted:
		h.quoted(c)
	case *notation.Like:
		h.like(c)
	case *notation.Along:
		h.along(c)
	case *notation.AtEnds:
		h.atEnds(c, rest)
	case *notation.Continue, *notation.UnreadClause:
		h.s.open = true
	}
}

// quoted works a clause in the designer's own words by its declared effect.
func (h *hand) quoted(c *notation.Quoted) {
	uses, _ := h.number(&c.Uses, 0)
	makes, _ := h.number(&c.Makes, 0)
	s := h.base()
	if c.Stitch.Name != "" {
		s = h.sheet.one(c.Stitch)
	}
	if uses == 0 {
		if makes > 0 {
			h.s.begun = true
			h.emit(h.madeOf(s, makes))
		}
		return
	}
	if makes == 0 {
		h.pass(want{}, uses)
		return
	}
	h.put(h.madeOf(s, makes), want{}, 1, uses)
}

// like works what other rows say, at the place where the row is.
func (h *hand) like(c *notation.Like) {
	if h.refs > 8 {
		return
	}
	h.refs++
	for _, w := range h.meant(c.Rows, c.Last, c.At()) {
		h.seq(w.body, true)
	}
	h.refs--
}

// turn turns the work. At the end of a row the next one begins turned; in the middle a new row begins, unless a chain that was just
// made is worked back along.
func (h *hand) turn(c *notation.Turn, rest []notation.Clause, top bool) {
	switch {
	case c.Not:
		h.so.still = true
	case !h.stitched() || !top:
	case !h.works(rest):
		h.so.turn = true
	case !fromHook(rest):
		h.split = rest
	}
}

// works reports whether any of the clauses works a stitch.
func (h *hand) works(clauses []notation.Clause) bool {
	for _, c := range clauses {
		switch c := c.(type) {
		case *notation.Make, *notation.Repeat, *notation.Evenly, *notation.AtEnds, *notation.Quoted, *notation.Like, *notation.UnreadClause:
			return true
		case *notation.Group:
			if h.works(c.Body) {
				return true
			}
		}
	}
	return false
}

// fromHook reports whether the next stitch goes into a chain counted from the hook.
func fromHook(clauses []notation.Clause) bool {
	m := firstMake(clauses)
	return m != nil && m.In.Where == notation.FromHook
}

// firstMake is the first stitch that the clauses work, or nil when something else that takes a place comes first.
func firstMake(clauses []notation.Clause) *notation.Make {
	for _, c := range clauses {
		switch c := c.(type) {
		case *notation.Make:
			return c
		case *notation.Group:
			if c.In != nil && c.In.Where != notation.Unsaid {
				if m := firstMake(c.Body); m != nil {
					at := *m
					at.In = *c.In
					return &at
				}
			}
			if m := firstMake(c.Body); m != nil {
				return m
			}
		case *notation.Repeat:
			if m := firstMake(c.Body); m != nil {
				return m
			}
		case *notation.Skip, *notation.Evenly, *notation.Quoted, *notation.Like:
			return nil
		}
	}
	return nil
}

// firstOf reports whether the first clause that does anything is of a kind.
func firstOf[C notation.Clause](clauses []notation.Clause) (C, bool) {
	for _, c := range clauses {
		switch c.(type) {
		case *notation.Remark, *notation.Yarn, *notation.Marker, *notation.Counts, *notation.Turn:
			continue
		}
		found, ok := c.(C)
		return found, ok
	}
	var none C
	return none, false
}

func turns(clauses []notation.Clause) bool {
	for _, c := range clauses {
		switch c := c.(type) {
		case *notation.Turn:
			return !c.Not
		case *notation.Make:
			return false
		}
	}
	return false
}

// ends reports whether the clauses only end a row.
func ends(clauses []notation.Clause) bool {
	for _, c := range clauses {
		switch c := c.(type) {
		case *notation.Turn, *notation.Fasten, *notation.Yarn, *notation.Remark, *notation.Marker, *notation.Leave, *notation.Counts:
		case *notation.Join:
			if !c.Not {
				return false
			}
		default:
			return false
		}
	}
	return true
}
