package page

import (
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
		if i < len(worked) && len(worked[i]) > 0 {
			slots[i] = fill(s, worked[i], p.Tape)
		}
	}
	return slots
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

// noun returns the word that is counted, which stands after the brace in the manuscript.
func noun(s pattern.Slot, kind formula.Kind) string {
	if f := s.Formula; f != nil && f.File != nil && s.Span.From <= len(f.File.Text) {
		_, after, found := strings.Cut(f.File.Text[s.Span.From:], "}")
		after = strings.TrimLeft(after, " ")
		end := strings.IndexFunc(after, func(r rune) bool { return (r < 'a' || r > 'z') && r != '-' })
		if end < 0 {
			end = len(after)
		}
		if found && end > 0 {
			return after[:end]
		}
	}
	if kind == formula.Rows {
		return "rows"
	}
	return "sts"
}
