package ledger

import (
	"foundrow/internal/notation"
)

// lay lays out the live edge as the row meets it.
func (h *hand) lay(turned bool) {
	h.buf = h.buf[:0]
	live := h.so.live
	for i, n := 0, len(live.Spans); i < n; i++ {
		if s := live.Spans[i]; !turned {
			h.buf = live.Book.layOut(h.buf, s)
		} else {
			s = live.Spans[n-1-i]
			s.Back = !s.Back
			h.buf = live.Book.layOut(h.buf, s)
		}
	}
	h.s = state{runs: h.buf, names: h.s.names[:0]}
	for i := range h.buf {
		r := &h.buf[i]
		h.s.found[r.made.Kind] += int32(r.n)
		h.s.left += h.weight(r) * r.n
	}
	h.s.total = h.s.left
	if h.so.entry > 0 && h.so.joined {
		h.enter(h.so.entry - 1)
	}
}

// weight is what one place of a run counts for when stitches are counted along the live edge.
func (h *hand) weight(r *run) int {
	if r.face == FreeLoop {
		if h.s.other {
			return 1
		}
		return 0
	}
	if h.chainsAre() && r.made.Kind == Spaces {
		return r.made.Chains
	}
	return weight(r)
}

// recount adds up the stitches ahead anew.
func (h *hand) recount() {
	s := &h.s
	s.left = 0
	for i, off := s.run, s.off; i < len(s.runs); i, off = i+1, 0 {
		if r := &s.runs[i]; off < r.n {
			s.left += h.weight(r) * (r.n - off)
		}
	}
}

// enter begins a round at a place: what lies before it is met at the end.
func (h *hand) enter(number int) {
	for i := range h.s.runs {
		r := &h.s.runs[i]
		off := number - r.from
		if r.back {
			off = -off
		}
		if off >= 0 && off < r.n {
			h.s.run, h.s.off = i, off
			h.rotate()
			h.s.entered = true
			return
		}
	}
}

// rotate moves what lies before the next place to the end of the round.
func (h *hand) rotate() {
	s := &h.s
	runs := make([]run, 0, len(s.runs)+1)
	cut := s.runs[s.run]
	before := cut
	before.n = s.off
	if cut.back {
		cut.from -= s.off
	} else {
		cut.from += s.off
	}
	cut.n -= s.off
	runs = append(append(runs, cut), s.runs[s.run+1:]...)
	runs = append(runs, s.runs[:s.run]...)
	if before.n > 0 {
		runs = append(runs, before)
	}
	s.runs, s.run, s.off, s.missing = runs, 0, 0, ""
	h.steps += len(runs) / 4
	s.left = 0
	for i := range runs {
		s.left += h.weight(&runs[i]) * runs[i].n
	}
}

// insertRun puts places in front of the next one.
func (h *hand) insertRun(r run) {
	s := &h.s
	runs := make([]run, 0, len(s.runs)+2)
	runs = append(runs, s.runs[:s.run]...)
	at := s.run
	if s.run < len(s.runs) {
		cut := s.runs[s.run]
		if s.off > 0 {
			before := cut
			before.n = s.off
			runs = append(runs, before)
			at++
			if cut.back {
				cut.from -= s.off
			} else {
				cut.from += s.off
			}
			cut.n -= s.off
		}
		runs = append(runs, r, cut)
		runs = append(runs, s.runs[s.run+1:]...)
	} else {
		runs = append(runs, r)
	}
	s.runs, s.run, s.off, s.sub, s.missing = runs, at, 0, 0, ""
	h.steps += len(runs) / 4
	s.found[r.made.Kind] += int32(r.n)
	s.left += h.weight(&r) * r.n
	s.total += h.weight(&r) * r.n
}

// circle reports whether the live edge is read in a circle.
func (h *hand) circle() bool { return h.row.round || h.so.joined }

// onChain reports whether the hook is before loose chains.
func (h *hand) onChain() bool {
	s := &h.s
	i, off := s.run, s.off
	for ; i < len(s.runs); i, off = i+1, 0 {
		if off < s.runs[i].n {
			return s.runs[i].made.Kind == Chains
		}
	}
	return false
}

func (h *hand) onRing() bool {
	s := &h.s
	return s.run < len(s.runs) && s.runs[s.run].made.Kind == Rings
}

// facing is the other side.
func facing(s notation.Side) notation.Side {
	switch s {
	case notation.RightSide:
		return notation.WrongSide
	case notation.WrongSide:
		return notation.RightSide
	}
	return s
}
