package notation

import "foundrow/internal/stitch"

func (w *writer) till(t *Target) {
	if t.Till.Kind != NotSaid {
		w.text(" ")
		w.extent(&t.Till)
	}
}

// extent writes how far or how often.
func (w *writer) extent(e *Extent) {
	counted := func(before, after string) {
		w.text(before)
		if e.Count.Said {
			w.count(&e.Count)
			if e.Noun.Kind != NoNoun {
				w.text(" ")
			}
		}
		if e.Noun.Kind != NoNoun {
			w.noun(&e.Noun, &e.Count)
		}
		w.text(after)
	}
	switch e.Kind {
	case AcrossRow:
		if e.Around {
			w.text("around")
		} else {
			w.text("across")
		}
	case Times, RepeatN:
		w.times(&e.Count)
	case MoreTimes:
		if e.Count.plain() && e.Count.Plain <= 2 && e.Count.Plain > 0 {
			w.times(&e.Count)
			w.text(" more")
		} else {
			w.count(&e.Count)
			w.text(" more times")
		}
	case InAll:
		w.times(&e.Count)
		w.text(" in all")
	case ToLast:
		counted("to last ", "")
	case UntilLeft:
		counted("until ", "")
		w.number(&e.Count, " remains", " remain")
	case ToNext:
		w.text("to ")
		w.before(&e.Count)
		w.text("next ")
		w.noun(&e.Noun, &Count{})
	case ToMarker:
		w.text("to ")
		w.before(&e.Count)
		w.text("marker")
		if e.Name != "" {
			w.text(" ", e.Name)
		}
	case ToCentre:
		if w.terms == stitch.UK {
			counted("to centre ", "")
		} else {
			counted("to center ", "")
		}
	case UntilMade:
		counted("until there are ", "")
	case UntilMeasures:
		w.measures(e)
	}
}

// before writes "2 sts before ", where an extent stops short of something.
func (w *writer) before(c *Count) {
	if c.Said {
		w.count(c)
		w.number(c, " st before ", " sts before ")
	}
}

// measures writes "until piece measures 30.5 cm".
func (w *writer) measures(e *Extent) {
	w.text("until piece measures ")
	switch {
	case !e.Length.Said:
		w.text("desired length")
	case e.Length.plain():
		w.text(decimalText(e.Measure))
	default:
		w.count(&e.Length)
	}
	switch {
	case e.Unit == "inch" && !(e.Length.plain() && e.Length.Plain == 1):
		w.text(" inches")
	case e.Unit != "":
		w.text(" ", e.Unit)
	}
}
