package notation

import "foundrow/internal/stitch"

// rule writes a sentence of the closed list.
func (w *writer) rule(r *Rule) {
	what := func() {
		if r.Skipped {
			w.text("skipped ")
		}
		switch {
		case r.Noun.Kind == AChain && r.Chain.Said:
			w.text("ch ")
			w.count(&r.Chain)
		default:
			w.noun(&r.Noun, &Count{})
		}
	}
	switch r.Kind {
	case ChainCounts:
		what()
		w.text(" counts as ")
		w.countsAs(r.Stitch, &r.Plus)
	case ChainDoesNotCount:
		what()
		w.text(" does not count as a st")
	case ChainStands:
		what()
		w.text(" stands but is not in the count")
	case RepeatIsTotal:
		w.text("rep from * n times means n in all")
	case RepeatIsMore:
		w.text("rep from * n times means n more")
	case NumberFirstIsRun:
		w.text("3 ", stitch.Stitch{Name: "sc"}.In(w.terms), " means ", stitch.Stitch{Name: "sc"}.In(w.terms), " in each of next 3 sts")
	case NumberFirstIsOnePlace:
		w.text("3 ", stitch.Stitch{Name: "sc"}.In(w.terms), " means 3 ", stitch.Stitch{Name: "sc"}.In(w.terms), " in one st")
	case ChainsAreStitches:
		w.text("each ")
		w.noun(&r.Noun, &Count{})
		w.text(" counts as ")
		if r.Sts.Said {
			w.count(&r.Sts)
			w.number(&r.Sts, " st", " sts")
		} else {
			w.text("a st")
		}
	case Defines:
		w.defines(r)
	case SlipsAreStitches:
		w.text("each ", stitch.Stitch{Name: "sl st"}.In(w.terms), " counts as a st")
	case SlipsDoNotCount:
		w.text(stitch.Stitch{Name: "sl st"}.In(w.terms), " does not count as a st")
	case CountOf:
		w.text("counts are of ")
		w.noun(&r.Noun, &Count{Said: true})
	}
}

// defines writes what a name stands for.
func (w *writer) defines(r *Rule) {
	name := r.Name
	if r.Stitch.Standard() {
		name = r.Stitch.In(w.terms)
	}
	if len(r.How) > 0 {
		w.text(name, " = ")
		w.clauses(r.How)
		if r.First {
			w.text("; it is the first st of the round")
		}
		return
	}
	w.text(name)
	if r.Makes.Said {
		w.text(" makes ")
		w.count(&r.Makes)
		w.number(&r.Makes, " st", " sts")
	}
	if r.Uses.Said {
		if r.Makes.Said {
			w.text(" in ")
		} else {
			w.text(" uses ")
		}
		w.count(&r.Uses)
		w.number(&r.Uses, " st", " sts")
	}
}
