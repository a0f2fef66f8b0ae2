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
		if h.circle() && !s.begun && s.used == [kinds]int32{} { // what is used up is not met again
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
			_, got := h.use(n, byChains(w))
			if got == 0 {
				break
			}
			n -= got
		}
		s.begun = false
	}
}

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
