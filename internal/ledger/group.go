package ledger

import (
	"foundrow/internal/notation"
)

// times is how often an extent says, 1 where it says nothing.
func (h *hand) times(e *notation.Extent) int {
	n, ok := h.number(&e.Count, 1)
	switch e.Kind {
	case notation.Times, notation.InAll:
	case notation.MoreTimes:
		n++
	case notation.RepeatN:
		h.moot.repeats = true
		if !h.habit(notation.RepeatIsTotal, notation.RepeatIsMore, h.habits.Repeats == InAll) {
			n++
		}
	default:
		return 1
	}
	if !ok {
		if e.Kind == notation.Times || e.Kind == notation.InAll {
			return 0
		}
		return 1
	}
	return max(n, 0)
}

// group works clauses in brackets: in one place, several times, or once through.
func (h *hand) group(c *notation.Group, rest []notation.Clause) {
	if c.In != nil {
		h.groupIn(c, rest)
		return
	}
	switch c.Extent.Kind {
	case notation.NotSaid:
		if c.Bracket == '(' && len(c.Body) > 1 && bare(c.Body) { // "(sc, dc)": all of it in the next place
			h.inPlace(c.Body, want{}, 1, "")
			return
		}
		h.seq(c.Body, false)
	case notation.Times, notation.InAll, notation.MoreTimes, notation.RepeatN:
		h.over(c.Body, h.times(&c.Extent))
	default:
		h.often(c.Body, &c.Extent, rest)
	}
}

// bare reports whether nothing in the clauses says where it goes.
func bare(clauses []notation.Clause) bool {
	for _, c := range clauses {
		switch c := c.(type) {
		case *notation.Make:
			if c.In.Said() || c.Form == notation.NumberAfter || c.Stitch.Uses() > 1 {
				return false
			}
		case *notation.Chain:
		default:
			return false
		}
	}
	return true
}

// over works clauses n times.
func (h *hand) over(body []notation.Clause, n int) {
	leaps := n > 4 && even(body)
	var marks [2]state
	for i := 0; i < n; i++ {
		h.s.again = i > 0
		before := h.steps
		if leaps {
			if i == 2 {
				i += h.leap(&marks[0], &marks[1], n-i)
				if leaps = false; i >= n {
					return
				}
			} else {
				marks[i] = h.mark()
			}
		}
		h.seq(body, false)
		h.s.repeats++
		if h.tired() || h.steps == before {
			return
		}
	}
}

// groupIn works a group in one place, or in each of several.
func (h *hand) groupIn(c *notation.Group, rest []notation.Clause) {
	t := c.In
	body := c.Body
	places := 1
	// "[3 dc, ch 2] twice in next sp" is twice in one place; "(dc, ch 1) in next sp 3 times" is once in each of three
	if c.Extent.Kind != notation.NotSaid {
		switch c.Extent.Kind {
		case notation.Times, notation.InAll, notation.MoreTimes, notation.RepeatN:
			n := h.times(&c.Extent)
			one := t.Where == notation.FromHook || t.Where == notation.InRing || t.Where == notation.Same || t.Where == notation.First || t.Where == notation.Last
			if one || c.Extent.Span.From < t.Span.From {
				body = repeated(body, n)
				if n == 0 {
					return
				}
			} else {
				places = n
			}
		default:
			h.often([]notation.Clause{&notation.Group{Body: c.Body, In: c.In, Bracket: c.Bracket}}, &c.Extent, rest)
			return
		}
	}
	s := &h.s
	w := h.targetWant(t)
	switch {
	case s.inside:
		h.seq(body, false)
		return
	case t.Where == notation.Same && c.Bracket == 0 && s.again && s.fresh:
		w = want{} // "*bpdc and fpdc around same st": both round one
	case t.Where == notation.Same || t.Where == notation.Joining:
		h.inSame(body, t, w)
		return
	case t.Where == notation.FromHook:
		h.groupFromHook(body, t, c.At())
		return
	case t.Where == notation.InRing:
		if h.seek(want{what: ring}) == nil {
			w = want{what: ring}
		}
	case t.Where == notation.Between:
		for range places {
			if h.gap(w.what == group) {
				h.putIn(body, s.last, "")
				s.soft = true
			} else {
				h.beyondGroup(body)
			}
		}
		return
	case t.Where == notation.Everywhere || t.Where == notation.Remaining || t.Till.Kind != notation.NotSaid:
		places = h.extent(w, t, rest)
	case t.Where == notation.Last:
		n, _ := h.number(&t.Count, 1)
		h.toLast(w, n)
		places = n
	case t.Where == notation.Marked:
		h.toMark(t.Name)
		w = want{what: anything}
	case t.Count.Said:
		n, ok := h.number(&t.Count, 1)
		if !ok {
			return
		}
		places *= n
	}
	if t.Every > 1 {
		for i := 0; i < places; i += t.Every {
			h.inPlace(body, w, 1, "")
			h.pass(w, min(t.Every-1, places-i-1))
		}
		return
	}
	h.inPlace(body, w, places, "")
}

func repeated(body []notation.Clause, n int) []notation.Clause {
	all := make([]notation.Clause, 0, len(body)*min(n, 1000))
	for range min(n, 1000) {
		all = append(all, body...)
	}
	return all
}

// inPlace works clauses into each of the next n places that are looked for.
func (h *hand) inPlace(body []notation.Clause, w want, n int, unit string) {
	for range n {
		if h.step(); h.tired() {
			return
		}
		p, ok := h.nextPlace(w)
		if !ok {
			h.beyondGroup(body)
			continue
		}
		h.putIn(body, p, unit)
	}
}

// nextPlace takes the next place that is looked for; a shell is taken whole, and worked into in its middle.
func (h *hand) nextPlace(w want) (place, bool) {
	s := &h.s
	if w.what == named && !h.isAhead(w) {
		w = want{}
	}
	r := h.seek(w)
	if r == nil {
		if h.loosely(w) {
			s.hidden, s.soft, s.begun = true, true, true
			return place{&hiddenSpace, Span{}}, true
		}
		return place{}, false
	}
	if w.what == group {
		return h.middle(r)
	}
	if r.made.Kind == Rings {
		s.begun = true
		return place{r.made, r.span(0, 1)}, true
	}
	h.use(1, byChains(w))
	return s.last, true
}

// putIn works clauses all into one place.
func (h *hand) putIn(body []notation.Clause, p place, unit string) {
	s := &h.s
	outerIn, outer, outerUnit := s.in, s.inside, s.unit
	s.in, s.inside = p, true
	if !outer {
		s.units++
		s.unit = s.units
		if unit != "" {
			h.nameUnit(unit)
		}
	}
	h.seq(body, false)
	s.in, s.inside, s.unit = outerIn, outer, outerUnit
	s.last = p
	s.soft = p.made == nil || p.made.Kind == Spaces || p.made.Kind == Rings || p.span.Face == Gap
	s.fresh = false
}

// beyondGroup works a group where no place is left for it.
func (h *hand) beyondGroup(body []notation.Clause) {
	if !h.so.open {
		h.s.short++
	}
	h.putIn(body, place{&nowhere, Span{}}, "")
}

// inSame works a group in the place where the hook has been, or in the first one.
func (h *hand) inSame(body []notation.Clause, t *notation.Target, w want) {
	s := &h.s
	switch {
	case (t.Base || t.Of.Kind == notation.TurningCh) && s.base.made != nil:
		h.putIn(body, s.base, "")
	case s.entered:
		h.inPlace(body, want{what: anything}, 1, "")
	case w.what == space && !s.chained && (s.that || s.last.made == nil || s.last.made.Kind != Spaces && s.last.made.Kind != Rings):
		s.that = false
		h.inPlace(body, want{what: space}, 1, "")
	case s.last.made != nil:
		h.putIn(body, s.last, "")
	default:
		h.inPlace(body, want{}, 1, "")
	}
}
