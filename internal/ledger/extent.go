package ledger

import (
	"foundrow/internal/notation"
)

// extent is how many of the places looked for a stitch goes over that is told how far it goes, or goes as far as what follows leaves.
func (h *hand) extent(w want, t *notation.Target, rest []notation.Clause) int {
	e := &t.Till
	if !t.Count.Said {
		h.s.elastic = true
		h.s.hidden = h.s.hidden || h.so.loose && (w.what == space || w.what == stitchOrSp || w.what == group)
	}
	switch e.Kind {
	case notation.ToLast, notation.UntilLeft:
		return h.ahead(w, h.keep(e))
	case notation.ToNext:
		stop := h.wants(&e.Noun)
		n, ok := h.until(w, stop)
		if !ok {
			n = h.ahead(w, 0)
		}
		h.s.that = ok
		return n
	case notation.ToMarker:
		return h.untilMark(w, e.Name)
	case notation.ToCentre:
		c, _ := h.number(&e.Count, 1)
		return max((h.s.total-c)/2-(h.s.total-h.s.left), 0)
	case notation.UntilMade:
		c, _ := h.number(&e.Count, 0)
		return max(c-h.counted(), 0)
	}
	if n, ok := h.number(&t.Count, 0); ok && t.Count.Said {
		return n
	}
	if w.what == space {
		return h.ahead(w, 0)
	}
	keep, stop := h.needs(rest)
	if isSpace(stop) {
		if n, ok := h.until(w, stop); ok {
			return n
		}
	}
	return h.ahead(w, keep)
}

// keep is how many stitches an extent leaves at the end of the row.
func (h *hand) keep(e *notation.Extent) int {
	n, ok := h.number(&e.Count, 1)
	if !ok {
		return 0
	}
	return n
}

// needs is how many stitches the clauses take, as far as that can be told, or the space that the first of them goes into.
func (h *hand) needs(clauses []notation.Clause) (int, want) {
	n := 0
	for _, c := range clauses {
		if h.row.split && !h.holds(c.For()) {
			continue
		}
		switch c := c.(type) {
		case *notation.Make:
			took, w := h.takes(c)
			if isSpace(w) && n == 0 {
				return 0, w
			}
			n += took
		case *notation.Skip:
			if k, ok := h.number(&c.In.Count, 1); ok && c.In.Noun.Kind != notation.ASpace {
				n += k
			}
		case *notation.Leave:
			if k, ok := h.number(&c.In.Count, 0); ok {
				n += k
			}
		case *notation.AtEnds:
			if k, ok := h.number(&c.Count, 1); ok && c.End {
				if c.Change < 0 {
					k *= 2
				}
				n += k
			}
		case *notation.Group:
			if c.In != nil {
				w := h.targetWant(c.In)
				if isSpace(w) && n == 0 {
					return 0, w
				}
				k, _ := h.number(&c.In.Count, 1)
				n += k
				continue
			}
			k, w := h.needs(c.Body)
			if isSpace(w) && n == 0 {
				return 0, w
			}
			n += k * h.times(&c.Extent)
		case *notation.Repeat:
			if c.Extent.Kind != notation.AcrossRow {
				k, _ := h.needs(c.Body)
				n += k * h.times(&c.Extent)
			}
		}
	}
	return n, want{}
}

// takes is how many stitches of the row below a clause takes, or the space it goes into.
func (h *hand) takes(c *notation.Make) (int, want) {
	t := &c.In
	switch t.Where {
	case notation.Same, notation.Joining, notation.InRing, notation.RowEnds, notation.OtherSide, notation.Between, notation.Skipped, notation.Everywhere, notation.Remaining, notation.RestUnnamed, notation.FromHook:
		if t.Noun.Kind == notation.ASpace {
			return 0, h.targetWant(t)
		}
		return 0, want{}
	}
	if t.Edge != nil {
		return 0, want{}
	}
	if w := h.targetWant(t); w.what == space {
		return 0, w
	}
	n, _ := h.number(&t.Count, 1)
	if t.Where == notation.Unsaid && c.Form != notation.Bare {
		n, _ = h.number(&c.Count, 1)
	}
	if uses := c.Stitch.Uses(); uses > 1 && !t.Over {
		n *= uses
	}
	return n, want{}
}

// toLast moves to the last n places of the row. Stitches that lie before them are a hole in it.
func (h *hand) toLast(w want, n int) {
	s := &h.s
	if isSpace(w) || w.what == group || w.what == turning {
		for over := h.ahead(w, 0) - n; over > 0; over-- {
			if h.seek(w) == nil {
				return
			}
			h.passOne()
		}
		return
	}
	over := s.left - n
	if over > 0 && w.what == named && h.ahead(w, 0) == n && h.nextIs(w) {
		return // the last of their name
	}
	soft := s.soft
	for over > 0 && s.run < len(s.runs) {
		r := &s.runs[s.run]
		here := r.n - s.off
		weight := h.weight(r)
		if weight == 0 || here == 0 {
			h.passTo(s.run+1, want{})
			continue
		}
		take := min(here, over/weight)
		if take == 0 {
			return
		}
		s.passed[r.made.Kind] += int32(take)
		s.off += take
		s.left -= take * weight
		over -= take * weight
		if !soft && !(s.ofUnit && sameUnit(s.last.made, r.made)) {
			s.holes += take * weight
		}
	}
}
