package grade

import (
	"slices"

	"foundrow/internal/formula"
	"foundrow/internal/measure"
)

// workSizes works the plan in every size, entry by entry: a piece is worked in all sizes together, because what its rows leave open
// is settled for all of them.
func (w *plan) workSizes() {
	n := len(w.sizes)
	block := make([]formula.Value, n*(len(w.entries)+len(w.slots)))
	for i := range w.entries {
		e := &w.entries[i]
		e.bySize, block = block[:n:n], block[n:]
		if len(e.pins) > 0 {
			e.pinned = make([]bool, n)
		}
	}
	w.slotValues = make([][]formula.Value, len(w.slots))
	for i := range w.slots {
		w.slotValues[i], block = block[:n:n], block[n:]
	}
	w.sampleValues = make([][2]formula.Value, len(w.sample))
	w.bench.taken = make([]map[edgeName]taken, n)
	cols := make([]formula.Column, n)
	figures := make([]formula.Figure, n*len(w.entries))
	for s := range cols {
		w.bench.taken[s] = map[edgeName]taken{}
		cols[s] = formula.Column{Size: w.sizes[s], Figures: figures[s*len(w.entries) : (s+1)*len(w.entries)]}
		cols[s].Ask = func(place int, given []measure.Num) formula.Figure { return w.answer(place, s, given) }
	}
	for _, i := range w.order {
		if e := &w.entries[i]; e.what == piece {
			w.workPiece(e, cols)
		} else {
			w.workEntry(i, cols)
		}
	}
	for s := range cols {
		for i, l := range w.slots {
			w.slotValues[i][s] = w.work(l, s, &cols[s])
		}
		if w.sizes[s] == w.sampleSize() {
			for i, l := range w.sample {
				w.sampleValues[i] = [2]formula.Value{w.work(l[0], s, &cols[s]), w.work(l[1], s, &cols[s])}
			}
		}
	}
}

// workEntry works an entry in every size.
func (w *plan) workEntry(i int, cols []formula.Column) {
	e := &w.entries[i]
	for s := range cols {
		v := w.value(e, s, &cols[s])
		if v.Kind = e.kind; e.told && e.what != published {
			v.Num = measure.Lost
		}
		e.bySize[s] = v
		cols[s].Figures[i] = formula.Figure{Num: v.Num, Approx: v.Approx}
	}
}

// value works an entry in one size.
func (w *plan) value(e *entry, s int, col *formula.Column) formula.Value {
	size := w.sizes[s]
	switch {
	case e.given != nil:
		return formula.Value{Num: *e.given}
	case e.what == published:
		if size < len(e.table.Value) {
			return formula.Value{Num: e.table.Value[size]}
		}
		return formula.Value{Num: measure.Lost}
	case e.what == finished:
		return w.made(e, s, col)
	case e.body != none:
		return w.eased(e, s, col)
	}
	before := len(w.remarks)
	v := w.part(e.parts, s, col)
	for _, p := range e.pins {
		if p.holds(size) {
			w.decided(before)
			return w.pinned(e, v, w.work(p.line, s, col), s)
		}
	}
	return v
}

// decided drops what was remarked since on how a number was rounded: the designer has made her choice.
func (w *plan) decided(before int) {
	kept := slices.DeleteFunc(w.remarks[before:], func(r sizedRemark) bool { return r.What == formula.Tie || r.What == formula.Least })
	w.remarks = w.remarks[:before+len(kept)]
}

// part works the formula that holds in a size.
func (w *plan) part(parts []part, s int, col *formula.Column) formula.Value {
	for _, p := range parts {
		if p.holds(w.sizes[s]) {
			return w.work(p.line, s, col)
		}
	}
	return formula.Value{Num: measure.Lost}
}

// work works a line in a size and keeps what was remarked.
func (w *plan) work(line, s int, col *formula.Column) formula.Value {
	v, remarks := w.lines[line].checked.Work(col)
	for _, r := range remarks {
		w.remarks = append(w.remarks, sizedRemark{r, line, s})
	}
	return v
}

// eased works a body and what is added to it: a length, or a share of the body.
func (w *plan) eased(e *entry, s int, col *formula.Column) formula.Value {
	body := col.Figures[e.body]
	v := formula.Value{Num: body.Num, Approx: body.Approx}
	if len(e.ease) == 0 {
		return v
	}
	ease := w.part(e.ease, s, col)
	v.Approx = v.Approx || ease.Approx
	if ease.Kind == formula.Number {
		ease.Num = ease.Num.Mul(body.Num)
	}
	v.Num = v.Num.Add(ease.Num)
	return v
}

// pinned puts the designer's choice in the place of a worked value, whose story it keeps.
func (w *plan) pinned(e *entry, worked, choice formula.Value, s int) formula.Value {
	e.pinned[s] = true
	if worked.Story.Way == formula.NotRounded {
		worked.Story = formula.Story{From: worked.Num, Lower: worked.Num, Upper: worked.Num}
	}
	worked.Num, worked.Approx = choice.Num, choice.Approx
	return worked
}
