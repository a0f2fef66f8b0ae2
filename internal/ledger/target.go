package ledger

import (
	"foundrow/internal/notation"
	"foundrow/internal/stitch"
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

// nextIs reports whether the next stitch is what is looked for.
func (h *hand) nextIs(w want) bool {
	for i, off := h.s.run, h.s.off; i < len(h.s.runs); i, off = i+1, 0 {
		if r := &h.s.runs[i]; off < r.n && h.weight(r) > 0 {
			return h.accepts(r, w)
		}
	}
	return false
}

// same works a stitch in the place where the hook has been, or in the first place where it has been nowhere.
func (h *hand) same(k *craft, t *notation.Target, count int) {
	s := &h.s
	w := h.targetWant(t)
	if t.Base || t.Of.Kind == notation.TurningCh || t.Of.Kind == notation.AChain {
		if s.base.made != nil {
			h.place(k, s.base, count)
			return
		}
		w = want{}
	}
	if t.That {
		s.that = true
	}
	if s.entered {
		h.spread(k, want{what: anything}, 1, count)
		return
	}
	if w.what == space && (s.that || s.last.made == nil || s.last.made.Kind != Spaces && s.last.made.Kind != Rings) && !s.chained {
		s.that = false
		h.spread(k, want{what: space}, 1, count)
		return
	}
	if s.last.made != nil {
		h.place(k, s.last, count)
		return
	}
	if s.entered {
		w = want{what: anything}
	} else if w.what != space {
		w = want{}
	}
	h.spread(k, w, 1, count)
}

// joining is the place where the round began.
func (h *hand) joining() place {
	s := &h.s
	if s.base.made != nil && s.base.made.Kind != Spaces {
		return s.base
	}
	if h.seek(want{}) != nil {
		h.use(1, false)
		return s.last
	}
	return s.last
}

// nth works a stitch in a chosen place of a shell or a chain: "in 3rd dc of next shell", "in 2nd ch of next ch-3".
func (h *hand) nth(k *craft, t *notation.Target, w want, count int) {
	n, _ := h.number(&t.Nth, 1)
	switch {
	case t.Of.Kind == notation.NoNoun: // "in the 4th st": those before it are missed
		h.pass(w, n-1)
	case w.what == group:
		if r := h.seek(w); r != nil {
			unit := r.made
			for i := 1; i < n && h.seek(want{}) != nil && sameUnit(unit, h.s.runs[h.s.run].made); i++ {
				h.passOne()
			}
			h.spread(k, want{}, 1, count)
			h.s.ofUnit = true
			return
		}
	case w.what == space:
		if !h.hasSpace(w.chains) && !h.so.loose {
			w = want{what: turning} // "in 3rd ch of ch-5", where the ch 5 began the row
		}
	}
	h.spread(k, w, 1, count)
}

// hasSpace reports whether a space of just so many chains lies ahead.
func (h *hand) hasSpace(chains int) bool {
	for i, off := h.s.run, h.s.off; i < len(h.s.runs); i, off = i+1, 0 {
		if r := &h.s.runs[i]; r.made.Kind == Spaces && (r.made.Chains == chains || chains == 0) && off < r.n {
			return true
		}
	}
	return false
}

// passOne passes the place the hook is before.
func (h *hand) passOne() {
	s := &h.s
	r := &s.runs[s.run]
	s.passed[r.made.Kind]++
	s.left -= h.weight(r)
	s.off++
}

// everyOther works a stitch in every second, third … place.
func (h *hand) everyOther(k *craft, w want, places, every, each int) {
	for i := 0; i < places; i += every {
		h.spread(k, w, 1, each)
		h.pass(w, min(every-1, places-i-1))
	}
}

// between works a stitch between two others, which takes neither of them.
func (h *hand) between(k *craft, c *notation.Make, t *notation.Target, count int, rest []notation.Clause) {
	w := h.targetWant(t)
	groups := w.what == group
	n := 1
	if t.Each || t.Till.Kind != notation.NotSaid {
		n = h.extent(want{}, t, rest)
	}
	for range n {
		if !h.gap(groups) {
			h.beyond(h.madeOf(k.made, 1), want{what: group}, 1, count*k.makes, 1)
			continue
		}
		h.place(k, h.s.last, count)
		h.s.soft = true
	}
}

// gap moves to the next gap between stitches, or between groups of them.
func (h *hand) gap(groups bool) bool {
	s := &h.s
	r := h.seek(want{})
	if r == nil {
		if h.circle() && !s.wrapped { // between the last and the first
			s.wrapped = true
			s.last = place{&nowhere, Span{Face: Gap}}
			return true
		}
		return false
	}
	n := 1
	if groups && r.made.Each > 1 {
		n = min(r.made.Each, r.n-s.off)
	}
	span, got := h.use(n, false)
	if groups && r.made.Unit > 0 {
		for r2 := h.seek(want{}); r2 != nil && sameUnit(r.made, r2.made); r2 = h.seek(want{}) {
			span, got = h.use(r2.n-s.off, false)
		}
	}
	if !span.Back {
		span.From += int32(got - 1)
	}
	s.last = place{r.made, Span{span.Row, span.From, 1, span.Back, Gap}}
	return true
}

// below works a stitch into a row further down; the live stitch in front of it is taken up unless the row says what becomes of it.
func (h *hand) below(k *craft, t *notation.Target, count int, rest []notation.Clause) {
	m := h.madeOf(k.made, k.makes*count)
	h.s.begun = true
	for _, c := range rest {
		switch c := c.(type) {
		case *notation.Skip:
			if c.In.Where != notation.Same {
				h.emit(m)
				return
			}
		case *notation.Remark, *notation.Yarn:
			continue
		}
		break
	}
	n, _ := h.number(&t.Count, 1)
	m.N = k.makes
	if count == n {
		h.put(m, want{}, n, 1)
		return
	}
	m.N *= count
	h.put(m, want{}, n, 1)
}

// skippedPlaces works a stitch in places that were missed before.
func (h *hand) skippedPlaces(k *craft, c *notation.Make, t *notation.Target, count int) {
	n, _ := h.number(&t.Count, 1)
	s := &h.s
	if t.Row.Said || len(s.skips) == 0 {
		if t.Row.Said {
			h.below(k, t, count, nil)
			return
		}
		h.spread(k, want{}, n, count)
		return
	}
	first := s.skips[len(s.skips)-1]
	s.skips = s.skips[:len(s.skips)-1]
	took := min(n, int(first.N))
	s.short += n - took
	if left := first; took < int(first.N) {
		left.N -= int32(took)
		if first.N = int32(took); left.Back {
			first.From += left.N
		} else {
			left.From += first.N
		}
		s.skips = append(s.skips[:len(s.skips):len(s.skips)], left)
	}
	s.skipped[Stitches] -= int32(took)
	s.used[Stitches] += int32(took)
	m := h.madeOf(k.made, k.makes*took)
	if count > 1 && count != n {
		m.N *= count
	}
	m.Into = first
	h.emit(m)
}

// closesLoop takes a tall stitch into the first stitch of the round for the end of its last loop: "ch 2, dc in first sc".
func (h *hand) closesLoop(k *craft, c *notation.Make) bool {
	n := len(h.made)
	if !h.row.round || n == h.first || h.made[n-1].Kind != Spaces || h.s.left > 0 && !h.s.soft || k.uses > 1 {
		return false
	}
	h.closeSpace(h.sheet.stitches[k.made])
	return true
}

// closeSpace makes one space of the last chains and the stitch that closes them, as long as the others of the round.
func (h *hand) closeSpace(s stitch.Stitch) {
	n := len(h.made)
	size := 0
	for i := n - 1; i >= h.first; i-- {
		if m := &h.made[i]; m.Kind == Spaces && (i < n-1 || m.N > 1) {
			size = m.Chains
			break
		}
	}
	var m Made
	if n > h.first && h.made[n-1].Kind == Spaces && h.made[n-1].N == 1 {
		m = h.made[n-1]
		h.made = h.made[:n-1]
		if size == 0 {
			size = m.Chains + chainsOf(s)
		}
	} else {
		m = Made{Kind: Spaces, N: 1, Stands: true}
		if size == 0 {
			size = chainsOf(s)
		}
	}
	m.Whole, m.Chains = size, size
	h.append(&m)
	h.s.entry = -1 // the next round begins in it
}

// chainsOf is how tall a stitch is in chains.
func chainsOf(s stitch.Stitch) int {
	if e := s.Tall().Find(); e != nil {
		return e.Chains
	}
	return 1
}
