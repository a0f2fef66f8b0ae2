package shaping

// Solve finds the rows of a want. Where one interval does not divide the rows it takes two that differ by one row, or by two where
// only one side may have an event; where events may not stand as close as they would, all stand as close as they may. It refuses
// what cannot be, and nothing else.
func Solve(w Want) (Schedule, *Refusal) {
	p, t, reason := w.check()
	if reason != Possible {
		return Schedule{}, w.refusal(p, t, reason)
	}
	s := Schedule{From: w.From, To: w.To, Rows: w.Over, First: w.First, Runs: make([]Run, 0, 4)}
	s.put(Run{Every: w.PlainAtStart, Times: 1})
	row, event := w.PlainAtStart, 0
	for _, st := range p.intervals(t.events(), w.AtOnce, w.Order) {
		for times := st.times; times > 0; {
			every, n := st.size*p.step, times
			if event == 0 { // the first interval ends at a place, but begins where the plain rows end
				every, n = p.first+(st.size-1)*p.step-row, 1
			}
			if t.ofLarger > 0 && t.ofSmaller > 0 { // the two changes part runs that would be one
				n = 1
			}
			s.put(Run{Every: every, Times: n, Change: t.change(event)})
			row += every * n
			event += n
			times -= n
		}
	}
	s.put(Run{Every: w.Over - row, Times: 1})
	return s, nil
}

// intervals returns the places from each event to the next, the first from the place before the first.
func (p places) intervals(events int, atOnce bool, order Order) []stretch {
	if events == 0 {
		return nil
	}
	whole, n := p.n, events
	var out []stretch
	if atOnce {
		out = add(out, 1, 1)
		whole, n = whole-1, n-1
	}
	if whole/max(n, 1) < p.gap { // as close as they may stand; what is over comes before the first
		if !atOnce {
			out = add(out, p.n-(events-1)*p.gap, 1)
		}
		return add(out, p.gap, events-1)
	}
	if order == Alternate && (whole-n/2)/max(n, 1) < p.gap {
		order = OneRate
	}
	for _, st := range split(whole, n, order) {
		out = add(out, st.size, st.times)
	}
	return out
}
