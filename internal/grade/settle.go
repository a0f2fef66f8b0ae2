package grade

import (
	"foundrow/internal/formula"
	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
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
	w.settleParts(e)
	if e.measure != nil && e.measure.Body.Text != "" {
		w.settleEase(e)
	}
	w.settlePins(e)
	w.suits(e)
}

func (w *plan) settleParts(e *entry) {
	if len(e.parts) == 0 {
		if e.measure == nil || e.measure.Body.Text == "" {
			w.report(e.name.Span, "no-value", e.name.Text+" is given no value", "write a formula, or body and ease")
		}
		return
	}
	e.kind = w.common(e.parts)
	w.covers(e.name, e.parts, "")
}

// common checks formulas that hold for different sizes and returns the kind of them all; a plain number goes with counts.
func (w *plan) common(parts []part) formula.Kind {
	kind := formula.Unknown
	for _, p := range parts {
		switch k := w.check(p.line); {
		case k == formula.Unknown || k == kind:
		case kind == formula.Unknown, kind == formula.Number && k.IsCount():
			kind = k
		case k == formula.Number && kind.IsCount():
		default:
			l := &w.lines[p.line]
			w.report(l.f.Span, "kinds", l.subject+" is "+kinds[kind]+" in the sizes before and "+kinds[k]+" here", "give every size the same kind")
		}
	}
	return kind
}

// kinds names kinds in a sentence.
var kinds = [...]string{
	formula.Unknown: "unknown", formula.Number: "a plain number", formula.Length: "a length", formula.Mass: "a mass",
	formula.Stitches: "stitches", formula.Rows: "rows",
}

// covers reports sizes for which none of the parts holds, or more than one.
func (w *plan) covers(name pattern.Words, parts []part, of string) {
	if len(parts) == 1 && parts[0].sizes == nil {
		return
	}
	all := w.scopes[inRows].Sizes
	times := make([]int, len(all))
	for _, p := range parts {
		for s := range all {
			if p.holds(s) {
				times[s]++
			}
		}
	}
	var missing, twice []string
	for s, n := range times {
		switch {
		case n == 0:
			missing = append(missing, all[s])
		case n > 1:
			twice = append(twice, all[s])
		}
	}
	if len(missing) > 0 {
		w.report(name.Span, "size-missing", of+name.Text+" is given no value in "+source.SizeNames(missing, all), "write a value for every size that is offered")
		w.findings[len(w.findings)-1].Sizes = missing
	}
	if len(twice) > 0 {
		w.report(name.Span, "size-twice", of+name.Text+" is given more than one value in "+source.SizeNames(twice, all), "leave each size in one place")
		w.findings[len(w.findings)-1].Sizes = twice
	}
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
	switch k := w.common(e.ease); k {
	case formula.Unknown, formula.Length, formula.Number:
	default:
		w.report(w.lines[e.ease[0].line].f.Span, "kinds", "the ease of "+e.name.Text+" is "+kinds[k], "write a length such as 10 cm, or a share of the body such as -10%")
		w.dismiss(e.ease)
	}
	w.covers(e.name, e.ease, "the ease of ")
}

// settlePins settles the designer's own choices, which are of the count's kind or plain numbers of it.
func (w *plan) settlePins(e *entry) {
	if len(e.pins) == 0 {
		return
	}
	for _, p := range e.pins {
		k := w.check(p.line)
		if k == formula.Unknown || e.kind == formula.Unknown || k == e.kind || k == formula.Number && e.kind.IsCount() {
			continue
		}
		l := &w.lines[p.line]
		w.report(l.f.Span, "kinds", l.subject+" is pinned to "+kinds[k]+", and its formula gives "+kinds[e.kind], "")
		w.dismiss([]part{p})
	}
	w.pinnedOnce(e)
}

// pinnedOnce reports sizes that are pinned twice.
func (w *plan) pinnedOnce(e *entry) {
	all := w.scopes[inRows].Sizes
	var twice []string
	for s := range all {
		n := 0
		for _, p := range e.pins {
			if p.holds(s) {
				n++
			}
		}
		if n > 1 {
			twice = append(twice, all[s])
		}
	}
	if len(twice) > 0 {
		w.report(w.lines[e.pins[0].line].f.Span, "size-twice", e.name.Text+" is pinned more than once in "+source.SizeNames(twice, all), "leave each size in one place")
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
