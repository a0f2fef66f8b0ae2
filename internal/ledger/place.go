package ledger

import (
	"foundrow/internal/notation"
)

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
	if w.what != space {
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
