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
		w.text(loopsName(c.Loop))
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
