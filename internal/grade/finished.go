package grade

import (
	"foundrow/internal/formula"
	"foundrow/internal/measure"
	"foundrow/internal/source"
)

// settleMade settles what is made of a measurement: by its own formula, from a count, or the wish itself when no count uses it.
func (w *plan) settleMade(e *entry) {
	e.kind = formula.Length
	if e.wish != none && w.entries[e.wish].kind != formula.Length {
		e.kind = w.entries[e.wish].kind
	}
	if len(e.parts) == 0 {
		return
	}
	k := w.check(e.parts[0].line)
	if k != formula.Length && k != formula.Unknown {
		fix := "write a length"
		if k.IsCount() {
			fix = "add in " + w.unit() + w.atGauge()
		}
		w.report(w.lines[e.parts[0].line].f.Span, "kinds", "what is made of "+e.name.Text+" is "+kinds[k]+", and a measurement is a length", fix)
		w.dismiss(e.parts)
		k = formula.Unknown
	}
	e.kind = k
}

// findCount finds the one count that is made from a wish, for what is made to be found from.
func (w *plan) findCount(i int) {
	e := &w.entries[i]
	var uses []int
	for c := range w.entries {
		if w.entries[c].role == Count && w.entries[c].what == defined && w.uses(c, e.wish, 0) {
			uses = append(uses, c)
		}
	}
	switch len(uses) {
	case 0: // a wish that nothing is counted from is what is made
	case 1:
		w.need(i, uses[0])
		if e = &w.entries[i]; w.isStraight(uses[0], e.wish) {
			e.from = uses[0]
			return
		}
		w.askMade(e, w.entries[uses[0]].name.Text+" does not follow "+e.name.Text+" in a straight line, so what it makes of it must be said", uses[0])
	default:
		names := make([]string, len(uses))
		for k, c := range uses {
			names[k] = w.entries[c].name.Text
		}
		w.askMade(e, source.List(names, "and")+" are made from "+e.name.Text+", so what they make of it must be said", uses[0])
	}
}

// askMade asks how counts make a measurement.
func (w *plan) askMade(e *entry, message string, count int) {
	w.ask(e.name.Span, "made", message, "write made = \""+w.entries[count].name.Text+" in "+w.unit()+w.atGauge()+"\", or whatever it is")
	e.told = true
}

// isStraight reports whether a count follows a wish in a straight line in every size. That is a matter of how its formula is
// written, so any figures will do to find out.
func (w *plan) isStraight(count, wish int) bool {
	any := formula.Figure{Num: measure.Int(1)}
	col := formula.Column{Figures: make([]formula.Figure, len(w.entries)), Ask: func(int, []measure.Num) formula.Figure { return any }}
	for i := range col.Figures {
		col.Figures[i] = any
	}
	for s := range w.sizes {
		if _, straight := w.follows(count, wish, s, &col, 0); !straight {
			return false
		}
	}
	return true
}

// uses reports whether an entry is made from a wish, by itself or through other measurements. Counts that follow a count that
// uses it do not.
func (w *plan) uses(i, wish, depth int) bool {
	if depth > len(w.entries) {
		return false // a circle
	}
	e := &w.entries[i]
	for l := e.lines[0]; l < e.lines[1]; l++ {
		for _, n := range w.lines[l].f.Names() {
			t := w.target(n, w.lines[l].in)
			if t == wish || t != none && w.entries[t].role == Wish && w.entries[t].what == defined && w.uses(t, wish, depth+1) {
				return true
			}
		}
	}
	return false
}

// made works what is made of a measurement in one size.
func (w *plan) made(e *entry, s int, col *formula.Column) formula.Value {
	lost := formula.Value{Num: measure.Lost, Kind: e.kind}
	switch {
	case len(e.parts) > 0:
		return w.work(e.parts[0].line, s, col)
	case e.told:
		return lost
	case e.from == none:
		v := w.entries[e.wish].bySize[s]
		v.Story = formula.Story{}
		return v
	}
	l, straight := w.follows(e.from, e.wish, s, col, 0)
	if !straight || l.Slope.Sign() == 0 {
		return lost
	}
	return formula.Value{Num: col.Figures[e.from].Num.Sub(l.Rest).Div(l.Slope), Kind: formula.Length}
}

// follows returns how an entry follows a wish in one size, and whether it does so in a straight line.
func (w *plan) follows(i, wish, s int, col *formula.Column, depth int) (formula.Line, bool) {
	if i == wish {
		return formula.Line{Slope: measure.Int(1)}, true
	}
	e := &w.entries[i]
	if depth > 0 && (e.role != Wish || e.what != defined || !w.uses(i, wish, 0)) {
		return formula.Line{Rest: col.Figures[i].Num}, true
	}
	if e.given != nil || len(e.ease) > 0 {
		return formula.Line{}, false
	}
	for _, p := range e.parts {
		if p.holds(w.sizes[s]) {
			return w.lines[p.line].checked.Line(col, func(place int) (formula.Line, bool) { return w.follows(place, wish, s, col, depth+1) })
		}
	}
	return formula.Line{}, false
}

// finished makes a finished measurement of its entry.
func (w *plan) finished(e *entry) Finished {
	f := Finished{Name: e.name.Text, Label: e.label, Made: nums(e.bySize)}
	if e.wish == none {
		return f
	}
	wish := &w.entries[e.wish]
	f.Wish = nums(wish.bySize)
	if wish.body == none {
		return f
	}
	f.Body = nums(w.entries[wish.body].bySize)
	f.Ease = make([]measure.Num, len(f.Made))
	for s := range f.Made {
		f.Ease[s] = f.Made[s].Sub(f.Body[s])
	}
	return f
}

func nums(bySize []formula.Value) []measure.Num {
	out := make([]measure.Num, len(bySize))
	for s, v := range bySize {
		out[s] = v.Num
	}
	return out
}
