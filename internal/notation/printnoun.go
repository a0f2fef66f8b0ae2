package notation

import "foundrow/internal/stitch"

// noun writes what places or counted things are called, in the number of the count.
func (w *writer) noun(n *Noun, c *Count) {
	if n.Name != "" && n.Kind != AUnit || n.Kind == AUnit && n.Name != "" && n.Stitch != (stitch.Stitch{}) {
		w.text(n.Name, " ")
	}
	switch n.Kind {
	case AnyStitch:
		w.number(c, "st", "sts")
	case AStitch:
		w.text(n.Stitch.In(w.terms))
	case AChain:
		w.text("ch")
		w.chains(n)
	case ASpace:
		if n.Chains.Said || n.Loose {
			w.text("ch")
			w.chains(n)
			w.text(" ")
		}
		if n.Loop {
			w.number(c, "loop", "loops")
		} else {
			w.number(c, "sp", "sps")
		}
	case TurningCh:
		if n.Chains.Said {
			w.text("beg ch")
			w.chains(n)
		} else {
			w.text("tch")
		}
	case ARing:
		w.text("ring")
	case ARowEnd:
		if n.Stitch != (stitch.Stitch{}) {
			w.text(n.Stitch.In(w.terms), " ")
		}
		w.number(c, "row-end", "row-ends")
	case AUnit:
		if n.Stitch != (stitch.Stitch{}) {
			w.number(c, n.Stitch.In(w.terms), n.Stitch.Plural(w.terms))
		} else {
			w.number(c, n.Name, plural(n.Name))
		}
	case ARepeat:
		w.number(c, "rep", "reps")
	case ARow:
		w.number(c, rowWord(n.Round), rowWord(n.Round)+"s")
	}
}

func (w *writer) chains(n *Noun) {
	if n.Chains.Said {
		w.text("-")
		w.count(&n.Chains)
	}
}

// plural returns a unit's name of several.
func plural(name string) string {
	switch name {
	case "leaf":
		return "leaves"
	case "box", "arch":
		return name + "es"
	case "granny":
		return "grannies"
	}
	return name + "s"
}

// along writes a place that holds for what follows.
func (w *writer) along(t *Target) {
	switch t.Where {
	case Both:
		w.text("through both thicknesses")
	case OtherSide:
		if t.Noun.Kind == NoNoun {
			w.text("along other side")
		} else {
			w.text("along other side of ")
			w.place(t)
		}
	default:
		if t.Name == "" {
			w.text("along row-ends")
		} else {
			w.text(t.Name)
		}
	}
}
