package grade

import (
	"slices"

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
	wish := w.entries[i].wish
	uses := make([]fromWish, len(w.entries))
	var counts []int
	for c := range w.entries {
		if w.entries[c].role == Count && w.entries[c].what == defined && w.isMadeFrom(c, wish, uses) {
			counts = append(counts, c)
		}
	}
	if len(counts) == 0 {
		return // a wish that nothing is counted from is what is made
	}
	if len(counts) > 1 {
		names := make([]string, len(counts))
		for k, c := range counts {
			names[k] = w.entries[c].name.Text
		}
		w.askMade(i, source.List(names, "and")+" are made from "+w.entries[wish].name.Text+", so what they make of it must be said", counts[0])
		return
	}
	w.need(i, counts[0])
	var through []int
	for _, k := range w.order { // what the count needs is walked, so measurements stand before those made from them
		if uses[k] == madeFrom {
			through = append(through, k)
		}
	}
	if !w.isStraight(wish, through) {
		w.askMade(i, w.entries[counts[0]].name.Text+" is made from "+w.entries[wish].name.Text+" with a rounding or a comparison in between, so what it makes of it must be said", counts[0])
		return
	}
	w.entries[i].through = through
}

// fromWish is whether an entry is made from a wish.
type fromWish uint8

const (
	notAsked fromWish = iota
	otherwise
	madeFrom
)

// isMadeFrom reports whether an entry is made from a wish, by itself or through other measurements. Counts that follow a count
// that is do not.
func (w *plan) isMadeFrom(i, wish int, known []fromWish) bool {
	if known[i] != notAsked {
		return known[i] == madeFrom
	}
	known[i] = otherwise // what needs itself is made from nothing
	e := &w.entries[i]
	for l := e.lines[0]; l < e.lines[1]; l++ {
		for _, n := range w.lines[l].f.Names() {
			t := w.target(n, w.lines[l].in)
			if t == wish || t != none && w.entries[t].role == Wish && w.entries[t].what == defined && w.isMadeFrom(t, wish, known) {
				known[i] = madeFrom
			}
		}
	}
	return known[i] == madeFrom
}

// askMade asks how counts make a measurement.
func (w *plan) askMade(i int, message string, count int) {
	e := &w.entries[i]
	w.ask(e.name.Span, "made", message, "write made = \""+w.entries[count].name.Text+" in "+w.unit()+w.atGauge()+"\", or whatever it is")
	e.told = true
}

// isStraight reports whether a count follows a wish in a straight line in every size. That is a matter of how its formula is
// written, so any figures will do to find out.
func (w *plan) isStraight(wish int, through []int) bool {
	any := formula.Figure{Num: measure.Int(1)}
	col := formula.Column{Figures: make([]formula.Figure, len(w.entries)), Ask: func(int, []measure.Num) formula.Figure { return any }}
	for i := range col.Figures {
		col.Figures[i] = any
	}
	for s := range w.sizes {
		if _, straight := w.follow(wish, through, s, &col); !straight {
			return false
		}
	}
	return true
}

// follow returns how the last of some entries, each made from a wish or from those before it, follows that wish in one size, and
// whether it does so in a straight line.
func (w *plan) follow(wish int, through []int, s int, col *formula.Column) (last formula.Line, straight bool) {
	lines := make([]formula.Line, 0, len(through))
	of := func(place int) (formula.Line, bool) {
		if place == wish {
			return formula.Line{Slope: measure.Int(1)}, true
		}
		if k := slices.Index(through[:len(lines)], place); k >= 0 {
			return lines[k], true
		}
		return formula.Line{Rest: col.Figures[place].Num}, true
	}
	for _, i := range through {
		e := &w.entries[i]
		p := slices.IndexFunc(e.parts, func(p part) bool { return p.holds(w.sizes[s]) })
		if p < 0 || e.given != nil || len(e.ease) > 0 {
			return formula.Line{}, false
		}
		if last, straight = w.lines[e.parts[p].line].checked.Line(col, of); !straight {
			return formula.Line{}, false
		}
		lines = append(lines, last)
	}
	return last, true
}

// made works what is made of a measurement in one size.
func (w *plan) made(e *entry, s int, col *formula.Column) formula.Value {
	lost := formula.Value{Num: measure.Lost, Kind: e.kind}
	switch {
	case len(e.parts) > 0:
		return w.work(e.parts[0].line, s, col)
	case e.told:
		return lost
	case len(e.through) == 0:
		v := w.entries[e.wish].bySize[s]
		v.Story = formula.Story{}
		return v
	}
	l, straight := w.follow(e.wish, e.through, s, col)
	if !straight || l.Slope.Sign() == 0 {
		return lost
	}
	count := e.through[len(e.through)-1]
	return formula.Value{Num: col.Figures[count].Num.Sub(l.Rest).Div(l.Slope), Kind: formula.Length}
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
