package ledger

import (
	"foundrow/internal/notation"
	"foundrow/internal/stitch"
)

// join closes a round. A tall join is the end of the last space, and the next round begins in that space.
func (h *hand) join(c *notation.Join) {
	if c.Not {
		return
	}
	s := &h.s
	s.joined = true
	chains := 0
	var tall stitch.Stitch
	for _, w := range c.With {
		switch w := w.(type) {
		case *notation.Chain:
			n, _ := h.number(&w.Count, 1)
			chains += n
		case *notation.Make:
			if w.Stitch.Name != "sl st" {
				tall = w.Stitch
			}
		}
	}
	if chains > 0 {
		h.emit(&Made{Kind: Spaces, N: 1, Chains: chains, Stands: true})
	}
	if tall.Name != "" && len(h.made) > h.first {
		if last := h.made[len(h.made)-1]; last.Kind == Spaces || height(tall) > 2 {
			h.closeSpace(tall)
		}
	}
}

// slipsAlong takes slip stitches that move the hook rather than make fabric: at the start of a row before a chain, and in the place
// where a round was joined.
func (h *hand) slipsAlong(c *notation.Make, rest []notation.Clause) bool {
	s := &h.s
	t := &c.In
	switch {
	case s.begun && h.row.round && t.Where == notation.First:
		s.joined = true
		return true
	case s.begun && (t.Where == notation.TopOf || t.Nth.Said && t.Of.Kind == notation.AChain):
		s.joined = true // "sl st to 3rd ch of ch-5"
		return true
	case s.begun || !h.works(rest):
		return false
	case t.Where == notation.Same || t.Where == notation.First && !t.Count.Said && h.row.round:
		return true
	}
	if _, ok := firstOf[*notation.Chain](rest); !ok {
		return false
	}
	h.travel(&notation.Travel{In: []notation.Target{*t}})
	return true
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

// travel moves the hook along by slip stitches, which make nothing. What is passed at the start of a round is met at its end.
func (h *hand) travel(c *notation.Travel) {
	s := &h.s
	for i := range c.In {
		t := &c.In[i]
		if s.joined { // where the next round begins
			h.travelAfter(t)
			continue
		}
		if t.Edge != nil {
			n, ok := h.number(&t.Count, 1)
			if ok {
				h.takeFrom(t.Edge, n)
			}
			continue
		}
		switch t.Where {
		case notation.Same, notation.Joining:
			continue
		}
		w := h.targetWant(t)
		n, ok := h.number(&t.Count, 1)
		if !ok || n <= 0 {
			continue
		}
		if h.circle() && !s.begun {
			h.travelRound(w, n)
			continue
		}
		if t.Where == notation.TopOf && s.begun {
			continue
		}
		if isSpace(w) || w.what == group {
			if r := h.seek(w); r != nil {
				s.entered = true
				s.soft = true
			} else if h.loosely(w) {
				s.hidden, s.soft = true, true
				s.last = place{&hiddenSpace, Span{}}
			} else if !h.so.open {
				s.short += n
			}
			continue
		}
		for n > 0 {
			r := h.seek(w)
			if r == nil {
				if !h.so.open {
					s.short += n
				}
				break
			}
			span, got := h.use(n, byChains(w))
			if got == 0 {
				break
			}
			if span.N > 0 {
				s.gone = appendSpan(s.gone, span)
			}
			n -= got
		}
		s.begun = false
	}
}

// circle reports whether the live edge is read in a circle.
func (h *hand) circle() bool { return h.row.round || h.so.joined }

// travelRound moves to the n-th place that is looked for at the start of a round, and begins the round there.
func (h *hand) travelRound(w want, n int) {
	s := &h.s
	start, startOff := s.run, s.off
	var found *run
	for ; n > 0; n-- {
		if found != nil {
			s.off++
		}
		i, off := s.run, s.off
		found = nil
		for ; i < len(s.runs); i, off = i+1, 0 {
			if r := &s.runs[i]; off < r.n && h.accepts(r, w) {
				s.run, s.off = i, off
				found = r
				break
			}
		}
		if found == nil {
			s.run, s.off = start, startOff
			if h.loosely(w) {
				s.hidden, s.soft = true, true
				s.last = place{&hiddenSpace, Span{}}
			} else if !h.so.open {
				s.short += n
			}
			return
		}
	}
	h.rotate()
	s.entered = true
	s.soft = isSpace(w) || w.what == group
}

// travelAfter notes where the next round begins: in the first space, in the next stitch.
func (h *hand) travelAfter(t *notation.Target) {
	w := h.targetWant(t)
	n, _ := h.number(&t.Count, 1)
	at := 0
	for i := h.first; i < len(h.made); i++ {
		m := &h.made[i]
		r := run{made: m, n: m.N}
		if h.accepts(&r, w) {
			if n <= m.N {
				h.s.entry = at + n
				return
			}
			n -= m.N
		}
		at += m.N
	}
}

// rejoin begins the yarn again: at the start of the live edge, in a place along a round, or where stitches were left.
func (h *hand) rejoin(c *notation.Rejoin, rest []notation.Clause) {
	h.so.cut.To = 0
	s := &h.s
	t := &c.In
	if s.begun {
		return
	}
	w := h.targetWant(t)
	switch {
	case t.Where == notation.Marked || t.Name != "" && h.hasMark(t.Name):
		h.toMark(t.Name)
		s.entered = true
	case h.circle() && (isSpace(w) || w.what == group):
		h.travelRound(w, 1)
	case w.what == space:
		h.travel(&notation.Travel{In: []notation.Target{*t}})
	}
	if c.With.Name != "" && c.With.Name != "sl st" {
		k := h.craftOf(c.With, c.At())
		if s.entered {
			w = want{what: anything}
		} else if w.what != space {
			w = want{}
		}
		h.spread(k, w, 1, 1)
	}
}

// skip passes places over.
func (h *hand) skip(c *notation.Skip, rest []notation.Clause) {
	s := &h.s
	t := &c.In
	w := h.targetWant(t)
	n, ok := h.number(&t.Count, 1)
	if !ok || n <= 0 {
		return
	}
	if h.onFoundation() && !s.begun {
		switch {
		case t.Where == notation.FromHook && t.Nth.Said:
			if nth, ok := h.number(&t.Nth, 1); ok {
				n = nth
			}
		}
		if m := h.firstWorked(rest); m != nil {
			h.skipChains(n, m.Stitch, c.At())
			s.begun = true
			return
		}
	}
	switch {
	case s.chained && !s.skippedFirst && (t.Where == notation.First || t.Where == notation.Same) && n == 1 && w.what != space:
		s.skippedFirst = true // the chain stands on it
		return
	case t.Where == notation.Last:
		h.toLast(w, n)
	case t.Till.Kind != notation.NotSaid:
		n = h.extent(w, t, nil)
	}
	if w.what == named && !h.isAhead(w) {
		w = want{}
	}
	s.begun = true
	h.pass(w, n)
}

// pass misses the next n places that are looked for.
func (h *hand) pass(w want, n int) {
	s := &h.s
	for n > 0 {
		r := h.seek(w)
		if r == nil {
			if w.what == space && (h.so.loose || s.hidden) || w.what == chain && h.so.loose {
				s.hidden = true
				return
			}
			if !h.so.open {
				s.short += n
			}
			return
		}
		if byChains(w) && r.made.Kind == Spaces {
			_, got := h.use(n, true)
			if got == 0 {
				return
			}
			n -= got
			continue
		}
		got := min(n, r.n-s.off)
		if got == 0 {
			return
		}
		if r.made.Kind == Stitches || r.made.Kind == Turnings {
			s.skips = append(s.skips, r.span(s.off, got))
		}
		s.skipped[r.made.Kind] += int32(got)
		s.left -= h.weight(r) * got
		s.off += got
		n -= got
		if w.what == space {
			s.that = false
		}
	}
}

// leave leaves what remains, or the number that is said, for another time.
func (h *hand) leave(c *notation.Leave) {
	s := &h.s
	if c.In.Count.Said && !s.open {
		n, ok := h.number(&c.In.Count, 0)
		if ok && n != s.left && !h.so.open {
			if n < s.left {
				h.toLast(want{}, n)
			} else {
				s.short += n - s.left
			}
		}
	}
	h.leaveRest()
}

// leaveRest takes everything ahead as left unworked.
func (h *hand) leaveRest() {
	s := &h.s
	for ; s.run < len(s.runs); s.run, s.off, s.sub = s.run+1, 0, 0 {
		r := &s.runs[s.run]
		if n := r.n - s.off; n > 0 {
			s.given[r.made.Kind] += int32(n)
			if r.made.Kind != Turnings || r.made.Stands {
				s.unworked = appendSpan(s.unworked, r.span(s.off, n))
			}
		}
	}
	s.left = 0
}
