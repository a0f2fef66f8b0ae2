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
		return ordinals(entriesOf(bySize))
	case pattern.Times:
		return times(entriesOf(bySize))
	case pattern.Counted:
		return counted(numbers(bySize), noun(s, bySize[0].Kind))
	}
	return slotOf(numbers(bySize))
}

// An entry is a number in one size. N is -1 where the figure is no whole number: then its words are those for many.
type entry struct {
	figure string
	n      int
}

func entriesOf(bySize []formula.Value) []entry {
	out := make([]entry, len(bySize))
	for i, v := range bySize {
		out[i] = entry{number(v), wholeOf(v)}
	}
	return out
}

// wholeOf is a whole number, or -1 for any other.
func wholeOf(v formula.Value) int {
	if n, whole := v.Num.Int(); whole && n >= 0 && !isUnknown(v) {
		return n
	}
	return -1
}

func figuresOf(entries []entry) []string {
	out := make([]string, len(entries))
	for i, e := range entries {
		out[i] = e.figure
	}
	return out
}

// wordEach words the whole numbers by a rule; what is not whole is printed as it is, with an ending: its finding says why.
func wordEach(entries []entry, rule func(int) string, ending string) []string {
	out := make([]string, len(entries))
	for i, e := range entries {
		switch {
		case e.n >= 0:
			out[i] = rule(e.n)
		case e.figure == absent:
			out[i] = absent
		default:
			out[i] = e.figure + ending
		}
	}
	return out
}

// ordinals words "{n}th".
func ordinals(entries []entry) Slot { return slotOf(wordEach(entries, Ordinal, "th")) }

// times words "{n} times": once and twice where a size stands alone, figures in a list.
func times(entries []entry) Slot {
	each := wordEach(entries, Times, " times")
	if agree(each) {
		return Slot{All: each[0]}
	}
	return Slot{All: List(figuresOf(entries)) + " times", BySize: each}
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

// agreeing words figures with words behind them that differ between one and many: "24 (26) sts remain". The words begin with their
// space.
func agreeing(entries []entry, one, many string) Slot {
	each := make([]string, len(entries))
	for i, e := range entries {
		switch {
		case e.figure == absent:
			each[i] = absent
		case e.n == 1:
			each[i] = e.figure + one
		default:
			each[i] = e.figure + many
		}
	}
	if agree(each) {
		return Slot{All: each[0]}
	}
	return Slot{All: List(figuresOf(entries)) + many, BySize: each}
}

// agreed is the words that agree with figures which stand elsewhere.
func agreed(entries []entry, one, many string) Slot {
	each := make([]string, len(entries))
	for i, e := range entries {
		if each[i] = many; e.n == 1 {
			each[i] = one
		}
	}
	if agree(each) {
		return Slot{All: each[0]}
	}
	return Slot{All: many, BySize: each}
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
