package notation

import "foundrow/internal/stitch"

func (w *writer) skip() string {
	if w.terms == stitch.UK {
		return "miss"
	}
	return "sk"
}

func changeWord(by int) string {
	if by < 0 {
		return "dec"
	}
	return "inc"
}

// make writes "3 dc in next st", "sc in next 5 sts", "sc 5", "dc 5 times in next ch".
func (w *writer) make(m *Make) {
	s := m.Stitch
	loop := s.Loop
	last := w.last
	w.last = s
	defer func() { w.lastCount = m.Count }()
	if m.And {
		if m.Count.Said && !w.lastCount.equal(&m.Count) {
			w.count(&m.Count)
			w.text(" ")
		}
		if loop == last.Loop {
			loop = stitch.BothLoops
		}
		if m.In.Where == RestUnnamed && loop == stitch.BothLoops {
			loop = last.Loop
		}
		if s.Loop == stitch.BothLoops && last.Loop != stitch.BothLoops {
			w.targetIn(&m.In, s, "both loops")
		} else {
			w.targetIn(&m.In, s, loop.String())
		}
	} else {
		if m.OnTheWay {
			w.text("working ")
		}
		if m.Form == NumberFirst && m.Count.Said {
			w.count(&m.Count)
			w.text(" ")
			if m.More {
				w.text("more ")
			}
		}
		w.stitches(&m.Count, s)
		switch m.Form {
		case NumberAfter:
			w.text(" ")
			w.count(&m.Count)
		case TimesAfter:
			w.text(" ")
			w.times(&m.Count)
		}
		if m.In.Said() {
			w.text(" ")
			w.targetIn(&m.In, s, "")
		}
	}
	if m.Yarn != "" {
		w.text(" in ", m.Yarn)
	}
	if m.LastIn != nil {
		w.text(", the last one")
		w.target(m.LastIn, s, 0)
	}
}

// stitches writes the name of a stitch in the number of its count.
func (w *writer) stitches(c *Count, s stitch.Stitch) {
	w.number(c, s.In(w.terms), s.Plural(w.terms))
}

// chainSays writes what a chain counts as, behind it.
func (w *writer) chainSays(says ChainSays, as stitch.Stitch, plus *Count) {
	switch says {
	case SaysCounts:
		w.text(" (counts as ")
		w.countsAs(as, plus)
		w.text(")")
	case SaysNot:
		w.text(" (does not count as a st)")
	}
}

func (w *writer) countsAs(as stitch.Stitch, plus *Count) {
	if as == (stitch.Stitch{}) {
		w.text("a st")
	} else {
		w.text(as.In(w.terms))
	}
	if plus.Said {
		w.text(", ch ")
		w.count(plus)
	}
}

func (w *writer) counts(c *Counts) {
	switch {
	case c.Skipped:
		w.text("(skipped ch ")
	default:
		w.text("(tch ")
	}
	if c.Says == SaysNot {
		w.text("does not count as a st)")
		return
	}
	w.text("counts as ")
	w.countsAs(c.As, &c.Plus)
	w.text(")")
}

func (w *writer) join(j *Join) {
	if j.Not {
		w.text("do not join")
		return
	}
	switch {
	case j.Slip:
		w.text(stitch.Stitch{Name: "sl st"}.In(w.terms))
	case len(j.With) > 0:
		w.text("join with ")
		for i, c := range j.With {
			if i > 0 {
				w.text(" and ")
			}
			w.clause(c)
		}
	case j.In.Said():
		w.text("join with ", stitch.Stitch{Name: "sl st"}.In(w.terms))
	default:
		w.text("join")
	}
	if j.In.Said() {
		w.target(&j.In, stitch.Stitch{}, 0)
	}
	if j.Ring {
		w.text(" to form a ring")
	}
}
