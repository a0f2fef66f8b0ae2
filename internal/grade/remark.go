package grade

import (
	"slices"

	"foundrow/internal/formula"
	"foundrow/internal/measure"
	"foundrow/internal/source"
)

// A sizedRemark is what was met in one line in one size.
type sizedRemark struct {
	formula.Remark
	line int
	size int // by its place among the sizes worked
}

// remark words what was met while working: one finding for all sizes that met the same in the same place.
func (w *plan) remark() {
	type met struct {
		line, node int
		what       formula.What
	}
	var order []met
	bySame := map[met][]sizedRemark{}
	for _, r := range w.remarks {
		m := met{r.line, r.Node, r.What}
		if bySame[m] == nil {
			order = append(order, m)
		}
		bySame[m] = append(bySame[m], r)
	}
	for _, m := range order {
		w.word(bySame[m])
	}
}

// word makes a finding of one remark in the sizes that met it.
func (w *plan) word(met []sizedRemark) {
	l := &w.lines[met[0].line]
	node := met[0].Node
	sizes := make([]int, len(met))
	for i, r := range met {
		sizes[i] = r.size
	}
	in, names := w.in(sizes)
	of := l.checked.Words(node)
	f := source.Finding{Place: w.p.File.Place(l.checked.Span(node)), Sizes: names}
	switch met[0].What {
	case formula.Tie:
		f.Rule, f.Severity = "tie", source.Query
		f.Message = who(l, of) + " lies half way " + w.each(met, func(r sizedRemark) string {
			return "between " + w.say(l.checked.Kind, r.Lower) + " and " + w.say(l.checked.Kind, r.Upper)
		}) + ", and goes up"
		f.Fix = "to choose, write rounded up or rounded down, or pin the size"
	case formula.Least:
		f.Rule, f.Severity = "below-series", source.Query
		f.Message = who(l, of) + " comes to " + w.each(met, func(r sizedRemark) string { return w.say(l.checked.Kind, r.From) }) +
			", and a rounding goes no lower than " + w.say(l.checked.Kind, met[0].Lower)
		f.Fix = "see whether the formula is meant to give so little"
	case formula.DividedByZero:
		f.Rule, f.Message = "divided-by-zero", of+" is 0"+in+", and nothing can be divided by it"
	case formula.NoRoot:
		f.Rule, f.Message = "no-root", of+" is below zero"+in+" and has no root"
	case formula.NoSeries:
		f.Rule, f.Message = "no-series", "a multiple of "+w.each(met, func(r sizedRemark) string { return r.From.String() })+" is nothing to round to"
	default:
		f.Rule, f.Message = "too-large", "this comes to a number of more digits than can be reckoned with exactly"+in
		f.Fix = "see whether a number or unit is meant to be so large or so fine"
	}
	w.findings = append(w.findings, f)
}

// who names what a rounding is of: the value it gives, or in the text the words themselves.
func who(l *line, words string) string {
	if l.subject != "" {
		return l.subject
	}
	return words
}

// in says in which sizes: " in S and L", " in every size", or nothing where there is one without a name. The names are those
// of a finding, none when all sizes are meant.
func (w *plan) in(sizes []int) (phrase string, names []string) {
	all := w.scopes[inRows].Sizes
	switch {
	case len(all) == 1:
		return "", nil
	case len(sizes) == len(all):
		return " in every size", nil
	}
	for _, s := range sizes {
		names = append(names, all[w.sizes[s]])
	}
	return " in " + source.SizeNames(names, all), names
}

// each says something of every remark, with the sizes it holds in: "61 1/2 in S and M, 73 1/2 in L".
func (w *plan) each(met []sizedRemark, say func(sizedRemark) string) string {
	return w.inEach(len(met), func(i int) (int, string) { return met[i].size, say(met[i]) })
}

// inEach joins the words for several sizes, those that are alike together.
func (w *plan) inEach(n int, say func(int) (size int, words string)) string {
	var words []string
	var sizes [][]int
	for i := range n {
		size, said := say(i)
		at := slices.Index(words, said)
		if at < 0 {
			at = len(words)
			words, sizes = append(words, said), append(sizes, nil)
		}
		sizes[at] = append(sizes[at], size)
	}
	for i := range words {
		in, _ := w.in(sizes[i])
		words[i] += in
	}
	return source.List(words, "and")
}

// say prints a number of a kind in a finding: a length to the hundredth in the unit of the pattern.
func (w *plan) say(k formula.Kind, n measure.Num) string {
	switch {
	case k == formula.Length:
		return n.Decimal(2) + " " + w.unit()
	case k == formula.Mass:
		return n.Decimal(2) + " " + measure.Gram.String()
	case n.Under() > 16:
		return n.Decimal(2)
	}
	return n.String()
}
