package ledger

import (
	"foundrow/internal/notation"
)

// Repeats over one run of like stitches make the same again and again, a few places further on each time. Once two times have been
// worked and were alike, the rest are entered as copies: the sum is done for the stitches, and only the runs are written down.

// even reports whether clauses do the same wherever they are worked along a run of like stitches.
func even(clauses []notation.Clause) bool {
	for _, c := range clauses {
		switch c := c.(type) {
		case *notation.Make:
			t := &c.In
			if c.LastIn != nil || !evenTarget(t) {
				return false
			}
		case *notation.Skip:
			if !evenTarget(&c.In) {
				return false
			}
		case *notation.Chain, *notation.Remark, *notation.Yarn:
		case *notation.Group:
			if c.In != nil && !evenTarget(c.In) || len(c.Ending) > 0 || !even(c.Body) {
				return false
			}
			switch c.Extent.Kind {
			case notation.NotSaid, notation.Times, notation.InAll:
			default:
				return false
			}
		default:
			return false
		}
	}
	return true
}

func evenTarget(t *notation.Target) bool {
	switch t.Where {
	case notation.Unsaid, notation.Next, notation.InSpace:
	default:
		return false
	}
	return t.Till.Kind == notation.NotSaid && t.Edge == nil && t.Below == 0 && !t.Row.Said && !t.Nth.Said && t.Of.Kind == notation.NoNoun && t.Every == 0
}

// leap enters up to n more times of a repeat whose last two times began at the states a and b. It returns how many it has entered: none
// when the two were not alike or the run of stitches is at its end.
func (h *hand) leap(a, b *state, n int) int {
	s := &h.s
	size := len(h.made) - b.made
	if n <= 0 || b.made-a.made != size || a.run != b.run || s.run != b.run || s.run >= len(s.runs) || s.sub != 0 || b.sub != 0 || len(h.foreign) > 0 ||
		len(h.reports) != a.reports || len(h.b.Marks) != a.marks || len(h.b.Rows) != a.rows || s.short != a.short || s.holes != a.holes ||
		b.made > h.first && h.made[b.made-1].N != b.tail.N {
		return 0
	}
	d := s.off - b.off
	if d <= 0 || b.off-a.off != d || s.units-b.units != b.units-a.units || s.soft != b.soft {
		return 0
	}
	r := &s.runs[s.run]
	if n = min(n, (r.n-s.off)/d, h.limit-h.steps); n <= 0 {
		return 0
	}
	step := d
	if r.back {
		step = -d
	}
	units := s.units - b.units
	for i := range size {
		if !sameAgain(&h.made[a.made+i], &h.made[b.made+i], step, units) {
			return 0
		}
	}
	from := b.made
	for i := 1; i <= n; i++ {
		for k := range size {
			m := h.made[from+k]
			if m.Into.N > 0 {
				m.Into.From += int32(step * i)
			}
			if m.Unit > 0 {
				m.Unit += units * i
			}
			h.made = append(h.made, m)
		}
	}
	if units > 0 && len(s.names) > 0 {
		for range n {
			for k := range units {
				s.names = append(s.names, s.names[b.units+k])
			}
		}
	}
	for range n {
		for k := len(b.skips); k < len(s.skips) && k < len(b.skips)+1; k++ { // what each time skipped
			last := s.skips[len(s.skips)-1]
			last.From += int32(step)
			s.skips = append(s.skips, last)
		}
	}
	for k := range kinds {
		s.used[k] += (s.used[k] - b.used[k]) * int32(n)
		s.skipped[k] += (s.skipped[k] - b.skipped[k]) * int32(n)
		s.passed[k] += (s.passed[k] - b.passed[k]) * int32(n)
	}
	s.off += d * n
	s.left -= (b.left - s.left) * n
	s.units += units * n
	s.slips += (s.slips - b.slips) * n
	if s.last.span.N > 0 {
		s.last.span.From += int32(step * n)
	}
	s.repeats += n
	h.steps += n
	return n
}

// alone reports whether all stitches ahead are of the run that the hook is at.
func (h *hand) alone() bool {
	s := &h.s
	return s.run < len(s.runs) && s.left == s.runs[s.run].n-s.off && h.weight(&s.runs[s.run]) == 1
}

// sameAgain reports whether a run was made like another, a step further on.
func sameAgain(a, b *Made, step, units int) bool {
	if a.Kind != b.Kind || a.Of != b.Of || a.N != b.N || a.Each != b.Each || a.Chains != b.Chains || a.Whole != b.Whole ||
		a.Stands != b.Stands || a.Counted != b.Counted || a.Unit > 0 && a.Unit+units != b.Unit || a.Into.N != b.Into.N {
		return false
	}
	into := a.Into
	if into.N > 0 {
		into.From += int32(step)
	}
	return into == b.Into
}
