package notation

import "foundrow/internal/stitch"

// clauses writes a list of clauses.
func (w *writer) clauses(cs []Clause) {
	var only Only
	for i, c := range cs {
		if now := c.For(); !sameOnly(now, only) {
			if i > 0 {
				w.text(". ")
			}
			w.only(now)
			only = now
			w.clause(c)
			continue
		}
		if i > 0 && hasEnding(cs[i-1]) {
			w.text("; ")
		} else if i > 0 {
			switch c := c.(type) {
			case *Make:
				if c.And {
					w.text(" and ")
					break
				}
				w.text(", ")
			case *Counts:
				w.text(" ")
			case *Remark:
				if c.Brackets {
					w.text(" ")
				} else {
					w.text(", ")
				}
			default:
				w.text(", ")
			}
		}
		w.clause(c)
	}
}

// hasEnding reports whether a clause closes with the ending of its last time, which a semicolon ends.
func hasEnding(c Clause) bool {
	switch c := c.(type) {
	case *Group:
		return len(c.Ending)+len(c.Instead) > 0
	case *Repeat:
		return len(c.Ending)+len(c.Instead) > 0
	}
	return false
}

func (w *writer) clause(c Clause) {
	switch c := c.(type) {
	case *Make:
		w.make(c)
	case *Chain:
		w.text("ch ")
		w.count(&c.Count)
		w.chainSays(c.Says, c.As, &c.Plus)
	case *Group:
		w.group(c)
	case *Repeat:
		w.repeat(c)
	case *Skip:
		w.text(w.skip())
		if !c.In.bare() || c.In.Where != Unsaid {
			w.text(" ")
		}
		w.place(&c.In)
	case *Leave:
		w.text("leave ")
		w.place(&c.In)
		w.text(" unworked")
	case *Join:
		w.join(c)
	case *Travel:
		if c.Count.Said {
			w.count(&c.Count)
			w.text(" ")
		}
		w.text(c.Stitch.In(w.terms))
		for i := range c.In {
			if i > 0 {
				w.text(" and")
			}
			w.target(&c.In[i], c.Stitch, c.Stitch.Loop)
		}
	case *Evenly:
		w.evenly(c)
	case *AtEnds:
		w.text(changeWord(c.Change), " ")
		w.count(&c.Count)
		switch {
		case c.Start && c.End:
			w.text(" at each end")
		case c.Start:
			w.text(" at beg of row")
		default:
			w.text(" at end of row")
		}
	case *Along:
		w.along(&c.In)
	case *Within:
		w.text("work on ")
		w.place(&c.In)
		w.text(" only")
	case *Counts:
		w.counts(c)
	case *Continue:
		w.goOn(c)
	case *Through:
		w.text(loopName2(c.Loop))
	case *Turn:
		if c.Not {
			w.text("do not ")
		}
		w.text("turn")
	case *Fasten:
		w.text("fasten off")
		if c.Yarn != "" {
			w.text(" ", c.Yarn)
		}
	case *Rejoin:
		if c.Yarn == "" {
			w.text("rejoin yarn")
		} else {
			w.text("join ", c.Yarn)
		}
		if c.With != (stitch.Stitch{}) {
			w.text(" with ", c.With.In(w.terms))
		}
		if c.In.Said() {
			w.target(&c.In, stitch.Stitch{}, 0)
		}
	case *Yarn:
		w.text(c.How, " ", c.Name)
	case *Marker:
		w.text(c.Does, " marker")
		if c.Name != "" {
			w.text(" ", c.Name)
		}
		if c.In.Said() {
			w.target(&c.In, stitch.Stitch{}, 0)
		}
	case *Quoted:
		w.quoted(c)
	case *Remark:
		text := w.prose(c.Text)
		if c.Brackets {
			text = "(" + text + ")"
		}
		w.text(text)
	case *Like:
		w.text("repeat ")
		if c.Last.Said {
			w.text("last ")
			if !(c.Last.plain() && c.Last.Plain == 1) {
				w.count(&c.Last)
				w.text(" ")
			}
			w.number(&c.Last, rowWord(c.Round), rowWord(c.Round)+"s")
		} else {
			w.rows(c.Rows, c.Round)
		}
		if c.Extent.Kind != NotSaid {
			w.text(" ")
			w.extent(&c.Extent)
		}
	case *UnreadClause:
		w.text(c.Text)
	}
}

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

// group writes clauses in brackets, with how often and where.
func (w *writer) group(g *Group) {
	if g.OnTheWay {
		w.text("working ")
	}
	if g.Bracket == 0 { // joined by "and"
		for i, c := range g.Body {
			if i > 0 {
				w.text(" and ")
			}
			w.clause(c)
		}
	} else {
		open, shut := "(", ")"
		if g.Bracket == '[' {
			open, shut = "[", "]"
		}
		w.text(open)
		w.clauses(g.Body)
		w.text(shut)
	}
	if g.Extent.Kind != NotSaid {
		w.text(" ")
		w.extent(&g.Extent)
	}
	if g.In != nil {
		s := stitch.Stitch{}
		if len(g.Body) > 0 {
			if m, ok := g.Body[len(g.Body)-1].(*Make); ok && g.In.wraps() {
				s = m.Stitch
			}
		}
		w.target(g.In, s, 0)
	}
	w.ending(g.Ending, g.Instead)
}

// repeat writes "*…; rep from * around", "*…* 5 times".
func (w *writer) repeat(r *Repeat) {
	star := "***"[:min(max(r.Stars, 1), 3)]
	w.text(star)
	cut := -1
	if r.Until > 0 && r.Until <= len(r.Body) {
		cut = r.Until
	}
	if cut > 0 {
		w.clauses(r.Body[:cut])
		w.text(star, "*, ")
		w.clauses(r.Body[cut:])
	} else {
		w.clauses(r.Body)
	}
	switch r.Extent.Kind {
	case NotSaid:
		w.text(star)
	case Times:
		w.text(star, " ")
		w.extent(&r.Extent)
	default:
		w.text("; rep from ", star, " ")
		w.extent(&r.Extent)
	}
	if r.Last {
		w.text(", ending last rep at ", star, "*")
	}
	w.ending(r.Ending, r.Instead)
}

func (w *writer) ending(ending, instead []Clause) {
	switch {
	case len(ending) == 0 && len(instead) == 0:
		return
	case len(ending) == 0:
		w.text(", omitting last ")
		w.clauses(instead)
		return
	}
	w.text(", ending last rep with ")
	w.clauses(ending)
	if len(instead) > 0 {
		w.text(" instead of ")
		w.clauses(instead)
	}
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

func (w *writer) evenly(e *Evenly) {
	if e.Per[0].Said {
		w.count(&e.Per[0])
		w.text(" ", e.Stitch.In(w.terms), " over every ")
		w.count(&e.Per[1])
		w.number(&e.Per[1], " row", " rows")
	} else {
		if e.Change != 0 {
			w.text(changeWord(e.Change), " ")
		}
		if e.Count.Said {
			w.count(&e.Count)
			w.text(" ")
		}
		if e.Stitch != (stitch.Stitch{}) {
			w.text(e.Stitch.In(w.terms), " ")
		} else {
			w.number(&e.Count, "st ", "sts ")
		}
		w.text("evenly")
	}
	if e.Along.Said() {
		w.target(&e.Along, e.Stitch, 0)
	}
}

// goOn writes "cont in patt: inc 6 sts every 2nd row until …".
func (w *writer) goOn(c *Continue) {
	switch {
	case c.Change != 0:
		w.text("continue in this manner, ", changeWord(c.Change), " ")
		w.count(&c.Count)
		w.text(" ")
		if c.Stitch != (stitch.Stitch{}) {
			w.text(c.Stitch.In(w.terms))
		} else {
			w.number(&c.Count, "st", "sts")
		}
		if c.Each.Kind != NoNoun {
			w.text(" in each ")
			w.noun(&c.Each, &Count{})
		}
		switch {
		case c.Next && c.Every == 2:
			w.text(" on next and every following alt ")
		case c.Next:
			w.text(" on next and every following ")
		case c.Every == 2:
			w.text(" on every alt ")
		case c.Every > 2:
			w.text(" on every ")
			w.ordinal(&Count{Plain: c.Every})
			w.text(" ")
		default:
			w.text(" on every ")
		}
		w.text(rowWord(c.Round))
	case c.Rows.Said:
		w.text("work ")
		w.count(&c.Rows)
		w.number(&c.Rows, " "+rowWord(c.Round), " "+rowWord(c.Round)+"s")
		if c.Stitch != (stitch.Stitch{}) {
			w.text(" in ", c.Stitch.In(w.terms))
		} else {
			w.text(" in patt")
		}
	default:
		w.text("continue in patt")
	}
	if c.Extent.Kind != NotSaid {
		w.text(" ")
		w.extent(&c.Extent)
	}
}

// loopName2 names loops that hold for what follows.
func loopName2(l stitch.Loop) string {
	if l == stitch.BothLoops {
		return "both loops"
	}
	return l.String()
}

func (w *writer) quoted(q *Quoted) {
	w.text(`"`, w.prose(q.Text), `"`)
	if q.Bare {
		return
	}
	w.text(" (")
	if q.Uses.Said {
		w.text("uses ")
		w.count(&q.Uses)
	}
	if q.Makes.Said {
		if q.Uses.Said {
			w.text(", ")
		}
		w.text("makes ")
		w.count(&q.Makes)
		if q.Stitch != (stitch.Stitch{}) {
			w.text(" ")
			w.number(&q.Makes, q.Stitch.In(w.terms), q.Stitch.Plural(w.terms))
		}
	}
	w.text(")")
}
