package notation

import "foundrow/internal/stitch"

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

// loopsName names loops that hold for what follows.
func loopsName(l stitch.Loop) string {
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
