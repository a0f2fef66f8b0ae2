package ledger

import (
	"foundrow/internal/notation"
	"foundrow/internal/source"
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

// habit is whether a thing is read in the way of a rule that the piece may state: its own statement unless the habit was changed.
func (h *hand) habit(stated, other notation.RuleKind, changed bool) bool {
	if changed {
		return true
	}
	for i := len(h.rules) - 1; i >= 0; i-- {
		switch h.rules[i].Kind {
		case stated:
			return true
		case other:
			return false
		}
	}
	return false
}

// chainsCount reports whether each chain counts as a stitch.
func (h *hand) chainsCount() bool {
	return h.habits.Chains || h.chainsStated
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
		h.often(c.Body, nil, &c.Extent, c.At(), rest)
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
			h.often([]notation.Clause{&notation.Group{Body: c.Body, In: c.In, Bracket: c.Bracket}}, nil, &c.Extent, c.At(), rest)
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

// middle takes a shell or other unit: its space where it has one, else the stitch in its middle. The rest of it is passed.
func (h *hand) middle(r *run) (place, bool) {
	s := &h.s
	unit := r.made
	if unit.Unit == 0 {
		n := min(unit.Each, r.n-s.off)
		for range (n - 1) / 2 {
			h.passOne()
		}
		h.use(1, false)
		p := s.last
		for range n - 1 - (n-1)/2 {
			h.passOne()
		}
		s.soft = true
		return p, true
	}
	total, at, space := 0, 0, -1
	for i, off := s.run, s.off; i < len(s.runs) && sameUnit(unit, s.runs[i].made); i, off = i+1, 0 {
		if s.runs[i].made.Kind == Spaces {
			space = total
		}
		total += s.runs[i].n - off
	}
	at = (total - 1) / 2
	if space >= 0 {
		at = space
	}
	var p place
	for i := range total {
		for s.run < len(s.runs) && s.off >= s.runs[s.run].n {
			s.run, s.off = s.run+1, 0
		}
		if i == at {
			h.use(1, false)
			p = s.last
		} else {
			h.passOne()
		}
	}
	s.soft = true
	return p, true
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
			for len(s.names) < s.units-1 {
				s.names = append(s.names, "")
			}
			s.names = append(s.names[:s.units-1:s.units-1], unit)
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

// groupFromHook works a group in a chain counted from the hook.
func (h *hand) groupFromHook(body []notation.Clause, t *notation.Target, span source.Span) {
	n, _ := h.number(&t.Nth, 2)
	if !h.onChain() {
		h.inPlace(body, want{}, 1, "")
		return
	}
	next := notation.Make{}
	if m := h.firstWorked(body); m != nil {
		next = *m
	}
	h.skipChains(n-1, next.Stitch, span)
	h.inPlace(body, want{what: chain}, 1, "")
}

// unit works a shell or another stitch that is made of several in the next place.
func (h *hand) unit(k *craft, w want) {
	if h.deep++; h.deep > deepest { // a name that is defined by itself
		h.s.open = true
		h.deep--
		return
	}
	defer func() { h.deep-- }()
	if len(k.how) > 0 {
		if body, ok := onePlace(k.how); ok {
			h.inPlace(body, w, 1, k.unit)
			return
		}
		s := &h.s
		s.units++
		h.nameUnit(k.unit)
		outer := s.unit
		s.unit = s.units
		h.seq(k.how, false)
		s.unit = outer
		return
	}
	if k.uses > 1 {
		s := &h.s
		s.units++
		h.nameUnit(k.unit)
		m := h.madeOf(k.made, k.makes)
		m.Unit = s.units
		h.put(m, w, 1, k.uses)
		return
	}
	p, ok := h.nextPlace(w)
	if !ok {
		if !h.so.open {
			h.s.short++
		}
		p = place{&nowhere, Span{}}
	}
	h.unitIn(k, p)
}

func (h *hand) nameUnit(name string) {
	s := &h.s
	for len(s.names) < s.units {
		s.names = append(s.names, "")
	}
	s.names[s.units-1] = name
}

// unitIn works a unit in a place the hook has been in.
func (h *hand) unitIn(k *craft, p place) {
	if h.deep++; h.deep > deepest {
		h.s.open = true
		h.deep--
		return
	}
	defer func() { h.deep-- }()
	if len(k.how) > 0 {
		body, _ := onePlace(k.how)
		h.putIn(body, p, k.unit)
		return
	}
	s := &h.s
	outer := s.unit
	if !s.inside {
		s.units++
		h.nameUnit(k.unit)
		s.unit = s.units
	}
	m := h.madeOf(k.made, k.makes)
	m.Unit = s.unit
	if p.made == &nowhere {
		p.span = Span{}
	}
	h.into(m, p)
	s.unit = outer
	s.last = p
	s.soft = p.made == nil || p.made.Kind == Spaces
}

// onePlace is what a stitch is worked as when all of it goes into one place; ok is false when it goes over several.
func onePlace(how []notation.Clause) ([]notation.Clause, bool) {
	if len(how) == 1 {
		switch c := how[0].(type) {
		case *notation.Group:
			if c.Extent.Kind == notation.NotSaid && (c.In == nil || !c.In.Count.Said && (c.In.Where == notation.Next || c.In.Where == notation.Same || c.In.Where == notation.Unsaid || c.In.Where == notation.InSpace)) {
				return c.Body, true
			}
		case *notation.Make:
			if (!c.In.Count.Said || c.In.Count.Plain == 1 && c.In.Count.Slot == 0) && c.Stitch.Uses() <= 1 {
				m := *c
				m.In = notation.Target{}
				return []notation.Clause{&m}, true
			}
		}
		return how, false
	}
	for _, c := range how {
		switch c := c.(type) {
		case *notation.Make:
			if c.In.Said() && c.In.Where != notation.Same && (c != how[0] || c.In.Count.Said) {
				return how, false
			}
			if c.Stitch.Name == "sl st" {
				return how, false
			}
		case *notation.Chain, *notation.Remark:
		default:
			return how, false
		}
	}
	inner := make([]notation.Clause, 0, len(how))
	for _, c := range how {
		if m, ok := c.(*notation.Make); ok {
			bare := *m
			bare.In = notation.Target{}
			inner = append(inner, &bare)
			continue
		}
		inner = append(inner, c)
	}
	return inner, true
}
