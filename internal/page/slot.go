package page

import (
	"slices"
	"strings"

	"foundrow/internal/formula"
	"foundrow/internal/measure"
	"foundrow/internal/pattern"
)

// filled words every slot of a pattern. A slot that was not worked is unknown, so that a page can be looked at while its
// formulas are still being mended.
func filled(p *pattern.Pattern, worked [][]formula.Value) []Slot {
	slots := make([]Slot, len(p.Slots))
	for i, s := range p.Slots {
		slots[i] = Slot{All: unknown}
		switch {
		case i >= len(worked) || len(worked[i]) == 0:
		case isBody(p, s):
			slots[i] = bodyLengths(nums(worked[i]), p.Tape)
		default:
			slots[i] = fill(s, worked[i], p.Tape)
		}
	}
	return slots
}

// isBody reports whether a slot is a measurement of a body just so, which crosses between the units as a body does.
func isBody(p *pattern.Pattern, s pattern.Slot) bool {
	if s.Formula == nil {
		return false
	}
	name := strings.TrimSpace(s.Formula.Text)
	return slices.ContainsFunc(p.Sizes.Body, func(b pattern.BodyMeasurement) bool { return b.Name == name }) ||
		slices.ContainsFunc(p.Body, func(d pattern.Definition) bool { return d.Name.Text == name })
}

// fill words one value in the form that the words around it ask for.
func fill(s pattern.Slot, bySize []formula.Value, tape measure.Tape) Slot {
	if !bySize[0].Kind.IsCount() && bySize[0].Kind != formula.Number {
		return figures(bySize, tape)
	}
	switch s.Form {
	case pattern.Ordinal:
		return slotOf(wordEach(bySize, Ordinal, "th"))
	case pattern.Times:
		return times(bySize)
	case pattern.Counted:
		return counted(numbers(bySize), noun(s, bySize[0].Kind))
	}
	return slotOf(numbers(bySize))
}

// wordEach words the whole numbers by a rule; what is not whole is printed as it is, with an ending: its finding says why.
func wordEach(bySize []formula.Value, rule func(int) string, ending string) []string {
	out := make([]string, len(bySize))
	for i, v := range bySize {
		if n, whole := v.Num.Int(); whole && !isUnknown(v) {
			out[i] = rule(n)
		} else {
			out[i] = number(v) + ending
		}
	}
	return out
}

// times words "{n} times": once and twice where a size stands alone, figures in a list.
func times(bySize []formula.Value) Slot {
	each := wordEach(bySize, Times, " times")
	if agree(each) {
		return Slot{All: each[0]}
	}
	return Slot{All: List(numbers(bySize)) + " times", BySize: each}
}

// counted words "{n} sts".
func counted(figures []string, noun string) Slot {
	if agree(figures) {
		return Slot{All: Counted(figures[0], noun)}
	}
	s := Slot{All: List(figures) + " " + noun, BySize: make([]string, len(figures))}
	for i, f := range figures {
		s.BySize[i] = Counted(f, noun)
	}
	return s
}

// noun is what a slot counts, where its brackets do not say it by the kind of the value.
func noun(s pattern.Slot, kind formula.Kind) string {
	switch {
	case s.Noun != "":
		return s.Noun
	case kind == formula.Rows:
		return "rows"
	}
	return "sts"
}
