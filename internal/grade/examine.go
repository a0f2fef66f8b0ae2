package grade

import (
	"slices"

	"foundrow/internal/formula"
	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// examine looks at what came out: counts that are no counts, ease outside its fit, what the sample says, what nothing uses.
func (w *plan) examine() {
	for i := range w.entries {
		e := &w.entries[i]
		if e.role == Count && e.what == defined {
			w.examineCount(e)
		}
	}
	for i, l := range w.slots {
		w.examineSlot(&w.p.Slots[i], &w.lines[l], w.slotValues[i])
	}
	w.examineFits()
	w.examineSample()
	w.examineUse()
}

// examineCount reports a count that is not whole, or below zero, or pinned beside its series.
func (w *plan) examineCount(e *entry) {
	at := e.name.Span
	if len(e.parts) > 0 {
		at = w.lines[e.parts[0].line].f.Span
	}
	fraction := where(e.bySize, func(v formula.Value) bool { return !v.Num.IsLost() && !v.Num.IsWhole() })
	w.notWhole(at, e.name.Text, e.kind, e.bySize, fraction)
	e.fraction = len(fraction) > 0
	if below := where(e.bySize, func(v formula.Value) bool { return v.Num.Sign() < 0 }); len(below) > 0 {
		_, names := w.in(below)
		w.ask(at, "below-zero", e.name.Text+" comes to "+w.values(e.kind, e.bySize, below)+", which is less than none", "see whether the formula is meant to give so little")
		w.findings[len(w.findings)-1].Sizes = names
	}
	if e.pinned == nil {
		return
	}
	off := where(e.bySize, func(v formula.Value) bool { return !inSeries(v) })
	off = slices.DeleteFunc(off, func(s int) bool { return !e.pinned[s] })
	if len(off) == 0 {
		return
	}
	said := w.inEach(len(off), func(i int) (int, string) {
		v := e.bySize[off[i]]
		if v.Story.Lower == v.Story.Upper {
			return off[i], v.Num.String() + ", and not " + v.Story.Upper.String()
		}
		return off[i], v.Num.String() + ", between " + v.Story.Lower.String() + " and " + v.Story.Upper.String()
	})
	_, names := w.in(off)
	w.ask(w.lines[e.pins[0].line].f.Span, "pin", e.name.Text+" is pinned to "+said, "pin it to one of these, if the rounding matters there")
	w.findings[len(w.findings)-1].Sizes = names
}

// where returns the sizes whose value is so.
func where(bySize []formula.Value, is func(formula.Value) bool) []int {
	var out []int
	for s, v := range bySize {
		if is(v) {
			out = append(out, s)
		}
	}
	return out
}

// inSeries reports whether a value is one that its rounding could have given.
func inSeries(v formula.Value) bool {
	st := v.Story
	if st.Way == formula.NotRounded || v.Num.IsLost() {
		return true
	}
	return !v.Num.Less(st.Offset) && v.Num.Sub(st.Offset).Div(st.Step).IsWhole()
}

// values says the values of some sizes: "61 1/2 in S and 73 1/2 in L".
func (w *plan) values(kind formula.Kind, bySize []formula.Value, sizes []int) string {
	return w.inEach(len(sizes), func(i int) (int, string) { return sizes[i], w.say(kind, bySize[sizes[i]].Num) })
}

// notWhole reports a count with a fraction in some sizes.
func (w *plan) notWhole(at source.Span, of string, kind formula.Kind, bySize []formula.Value, sizes []int) {
	if len(sizes) == 0 {
		return
	}
	_, names := w.in(sizes)
	w.report(at, "not-whole", of+" is not whole: "+w.values(kind, bySize, sizes), "add , rounded up to whole, or another rounding")
	w.findings[len(w.findings)-1].Sizes = names
}

// examineSlot reports a value in the text that cannot be printed as it is asked for.
func (w *plan) examineSlot(slot *pattern.Slot, l *line, bySize []formula.Value) {
	kind := l.checked.Kind
	counted := kind.IsCount() || kind == formula.Number && slot.Form != pattern.Figure
	switch {
	case kind == formula.Unknown || counted && w.usesFraction(l):
	case counted:
		w.notWhole(l.f.Span, l.f.Text, kind, bySize, where(bySize, func(v formula.Value) bool { return !v.Num.IsLost() && !v.Num.IsWhole() }))
	case slot.Form != pattern.Figure:
		as := "a count"
		switch slot.Form {
		case pattern.Times:
			as = "a number of times"
		case pattern.Ordinal:
			as = "a place in a row"
		case pattern.Counted:
			as = "a number of " + slot.Noun
		}
		w.report(l.f.Span, "kinds", l.f.Text+" is "+kinds[kind]+" and cannot be printed as "+as, "write a count here, or other words behind it")
	}
}

// usesFraction reports whether a line uses a count that was told not to be whole.
func (w *plan) usesFraction(l *line) bool {
	return slices.ContainsFunc(l.f.Names(), func(n formula.Name) bool {
		t := w.target(n, l.in)
		return t != none && w.entries[t].fraction
	})
}

// examineFits asks about every size whose ease, after rounding, is outside the fit that was declared.
func (w *plan) examineFits() {
	for i := range w.entries {
		e := &w.entries[i]
		if e.what != finished || !e.measure.Fit.Set {
			continue
		}
		fit := e.measure.Fit
		f := w.finished(e)
		var outside []int
		for s, ease := range f.Ease {
			if ease.Less(fit.Low) || fit.High.Less(ease) || fit.Under && !fit.High.IsLost() && !ease.IsLost() && ease.Cmp(fit.High) == 0 {
				outside = append(outside, s)
			}
		}
		if len(outside) == 0 {
			continue
		}
		eases := w.inEach(len(outside), func(i int) (int, string) { return outside[i], w.say(formula.Length, f.Ease[outside[i]]) })
		_, names := w.in(outside)
		w.ask(fit.Words.Span, "fit", "the ease of "+e.name.Text+" is "+eases+", outside its fit of "+fit.Words.Text, "change the ease or the fit, or pin the count")
		found := &w.findings[len(w.findings)-1]
		found.Sizes, found.Found = names, fit.Words.Text
		found.Expected = eases
	}
}

// examineUse asks about values that no formula and no text uses. Where part of the front matter could not be read, they may be
// used there.
func (w *plan) examineUse() {
	if w.p.Partial {
		return
	}
	w.useElsewhere()
	for i := range w.entries {
		e := &w.entries[i]
		if e.what != defined || e.role == Amount || e.used || e.made != none || formula.IsReserved(e.name.Text) {
			continue
		}
		w.ask(e.name.Span, "unused", "nothing uses "+e.name.Text, "use it in a formula or in the text, or leave it out")
	}
}

// useElsewhere marks what is used by formulas that could not be read, by tables that are kept as they are written, and by
// makers.
func (w *plan) useElsewhere() {
	use := func(f *formula.Formula) {
		for _, n := range f.Names() {
			if t := w.target(n, inRows); t != none {
				w.entries[t].used = true
			}
		}
	}
	for i := range w.lines {
		if f := w.lines[i].f; !f.IsRead() {
			use(f)
		}
	}
	for _, u := range w.p.Unread {
		for _, kept := range u.Entries {
			f, _ := formula.Parse(w.p.File, kept.Value.Span.From, kept.Value.Text)
			use(f)
		}
	}
	for _, o := range w.p.Own {
		if t, there := w.byName[o.Name.Text]; there {
			w.entries[t].used = true
		}
	}
}

// sampleSize is the size the designer made, by its place in the pattern; the only one where there is one; -1 when not said.
func (w *plan) sampleSize() int {
	if len(w.scopes[inRows].Sizes) == 1 {
		return 0
	}
	return w.p.Sizes.Sample
}

// examineSample holds what the designer's hands made against what the formulas give in her size.
func (w *plan) examineSample() {
	if w.maker || len(w.sample) == 0 || !slices.Contains(w.sizes, w.sampleSize()) {
		if !w.maker && len(w.sample) > 0 && w.sampleSize() < 0 {
			w.report(w.p.Sample[0].Name.Span, "sample", "it is not said which size the sample is", "write sample = \""+w.scopes[inRows].Sizes[0]+"\" under [sizes], or the size you made")
		}
		return
	}
	in := ""
	if all := w.scopes[inRows].Sizes; len(all) > 1 {
		in = " in " + all[w.sampleSize()]
	}
	for i, l := range w.sample {
		gives, says := w.sampleValues[i][0], w.sampleValues[i][1]
		name, about, said := w.p.Sample[i].Name.Text, &w.lines[l[0]], &w.lines[l[1]]
		kind, as := about.checked.Kind, said.checked.Kind
		switch {
		case kind == formula.Unknown || as == formula.Unknown || gives.Num.IsLost() || says.Num.IsLost():
		case as == formula.Number && (kind == formula.Length || kind == formula.Mass):
			w.report(said.f.Span, "kinds", said.f.Text+" what? "+name+" is "+kinds[kind], "write "+said.f.Text+" "+w.unitOf(kind))
		case as != kind && !(as == formula.Number && kind.IsCount()):
			w.report(said.f.Span, "kinds", said.f.Text+" is "+kinds[as]+", and "+name+" is "+kinds[kind], "")
		case w.differ(kind, gives.Num, says.Num):
			w.report(said.f.Span, "sample-differs", "the sample has "+w.say(kind, says.Num)+" for "+name+", and the formulas give "+w.say(kind, gives.Num)+in, "change the formula or its gauge, or pin the size")
			found := &w.findings[len(w.findings)-1]
			found.Expected, found.Found = w.say(kind, gives.Num), w.say(kind, says.Num)
			if in != "" {
				found.Sizes = []string{w.scopes[inRows].Sizes[w.sampleSize()]}
			}
		}
	}
}

func (w *plan) unitOf(k formula.Kind) string {
	if k == formula.Mass {
		return measure.Gram.String()
	}
	return w.unit()
}

// differ compares counts exactly and lengths as a tape shows them: hands cannot measure finer.
func (w *plan) differ(kind formula.Kind, a, b measure.Num) bool {
	switch {
	case kind != formula.Length:
		return a.Cmp(b) != 0
	case w.p.Tape.Unit == measure.Inch:
		return measure.Inches(a) != measure.Inches(b)
	}
	return measure.Centimetres(a) != measure.Centimetres(b)
}
