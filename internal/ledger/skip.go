package ledger

import (
	"foundrow/internal/notation"
)

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
		if t.Where == notation.FromHook && t.Nth.Said {
			n, _ = h.number(&t.Nth, n)
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
