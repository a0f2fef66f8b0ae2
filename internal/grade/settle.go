package grade

import (
	"foundrow/internal/formula"
	"foundrow/internal/measure"
)

// settle checks the formulas of an entry and finds the kind of its value, once what they need is settled.
func (w *plan) settle(i int) {
	e := &w.entries[i]
	switch e.what {
	case published:
		e.kind = formula.Length
		return
	case piece:
		for _, s := range e.slots {
			w.check(w.slots[s])
		}
		return
	case finished:
		w.settleMade(e)
		return
	}
	e.kind = w.common(e.parts)
	if e.measure != nil && e.measure.Body.Text != "" {
		w.settleEase(e)
	}
	w.settlePins(e)
	w.suits(e)
}

// common checks formulas that hold for different sizes and returns the kind of them all; a plain number goes with counts.
func (w *plan) common(parts []part) formula.Kind {
	kind, differ := formula.Unknown, false
	for _, p := range parts {
		switch k := w.check(p.line); {
		case k == formula.Unknown || k == kind:
		case kind == formula.Unknown, kind == formula.Number && k.IsCount():
			kind = k
		case k == formula.Number && kind.IsCount():
		default:
			l := &w.lines[p.line]
			w.report(l.f.Span, "kinds", l.subject+" is "+kinds[kind]+" in the sizes before and "+kinds[k]+" here", "give every size the same kind")
			differ = true
		}
	}
	if differ {
		return formula.Unknown
	}
	return kind
}

// kinds names kinds in a sentence.
var kinds = [...]string{
	formula.Unknown: "unknown", formula.Number: "a plain number", formula.Length: "a length", formula.Mass: "a mass",
	formula.Stitches: "stitches", formula.Rows: "rows",
}

// holds reports whether the part is for a size.
func (p part) holds(size int) bool {
	if p.sizes == nil {
		return true
	}
	for _, s := range p.sizes {
		if s == size {
			return true
		}
	}
	return false
}

// settleEase settles a measurement that is a body and what is added to it.
func (w *plan) settleEase(e *entry) {
	e.kind = formula.Length
	if len(e.ease) == 0 {
		return
	}
	for _, p := range e.ease {
		switch k := w.check(p.line); k {
		case formula.Unknown, formula.Length, formula.Number:
		default:
			w.report(w.lines[p.line].f.Span, "kinds", "the ease of "+e.name.Text+" is "+kinds[k], "write a length such as 10 "+w.unit()+", or a share of the body such as -10%")
			w.dismiss([]part{p})
		}
	}
}

// settlePins settles the designer's own choices, which are of the count's kind or plain numbers of it.
func (w *plan) settlePins(e *entry) {
	for _, p := range e.pins {
		k := w.check(p.line)
		if k == formula.Unknown || e.kind == formula.Unknown || k == e.kind || k == formula.Number && e.kind.IsCount() {
			continue
		}
		l := &w.lines[p.line]
		w.report(l.f.Span, "kinds", l.subject+" is pinned to "+kinds[k]+", and its formula gives "+kinds[e.kind], "")
		w.dismiss([]part{p})
	}
}

// dismiss makes lines unknown that were reported.
func (w *plan) dismiss(parts []part) {
	for _, p := range parts {
		w.lines[p.line].checked = formula.Checked{}
	}
}

// suits reports a value that its table is not for.
func (w *plan) suits(e *entry) {
	unit, fix := w.unit(), ""
	switch {
	case e.kind == formula.Unknown || e.role == Amount:
		return
	case e.role == Body && e.kind != formula.Length:
		fix = "write a length such as 40 " + unit
	case e.role == Wish && e.kind.IsCount():
		fix = "add in " + unit + w.atGauge() + ", or move it to [counts]"
	case e.role == Count && (e.kind == formula.Length || e.kind == formula.Mass):
		fix = "move it to [measures]"
		if e.kind == formula.Length {
			fix = "add in stitches" + w.atGauge() + ", or move it to [measures]"
		}
	case e.role == Wish && e.made != none && e.kind != formula.Length:
		fix = "a measurement of the thing made is a length: write one such as 40 " + unit
	default:
		return
	}
	where := [...]string{Body: "a body measurement", Wish: "a measurement", Count: "a count"}[e.role]
	at := e.name.Span
	if len(e.parts) > 0 {
		at = w.lines[e.parts[0].line].f.Span
	}
	w.report(at, "kinds", e.name.Text+" is "+kinds[e.kind]+", which is no kind for "+where, fix)
	e.kind, e.told = formula.Unknown, true
	w.dismiss(e.parts)
}

// unit is what lengths of this pattern are written in.
func (w *plan) unit() string {
	if w.p.Tape.Unit == measure.Inch {
		return measure.Inch.String()
	}
	return measure.Centimetre.String()
}

// atGauge names a gauge in a fix, where the pattern has more than one.
func (w *plan) atGauge() string {
	if len(w.p.Gauges) < 2 {
		return ""
	}
	return " at " + w.p.Gauges[0].Name.Text
}
