package proof

import (
	"slices"
	"strings"

	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// unusedHook finds hooks that no gauge, no piece and no sentence takes up. One hook alone is used for everything.
func unusedHook(e *edit) []note {
	if len(e.pattern.Hooks) < 2 {
		return nil
	}
	said := e.millimetres()
	var notes []note
	for i, h := range e.pattern.Hooks {
		name := h.Name.Text
		used := slices.ContainsFunc(e.pattern.Gauges, func(g pattern.Gauge) bool { return g.Hook == name || i == 0 && g.Hook == "" }) ||
			slices.ContainsFunc(e.pattern.Pieces, func(p pattern.Piece) bool { return p.Hook.Text == name }) ||
			e.mentions(name+" hook") || slices.ContainsFunc(said, func(mm measure.Num) bool { return mm.Cmp(h.Size) == 0 })
		if !used {
			notes = append(notes, note{
				span:    h.Name.Span,
				message: "the " + h.Size.Decimal(2) + " mm hook `" + name + "` is listed and nothing is worked with it",
				fix:     "say `with " + name + "` in the pieces it is for, name it in the text, or take [hook." + name + "] out",
			})
		}
	}
	return notes
}

// millimetres returns the sizes of hooks that the text speaks of.
func (e *edit) millimetres() []measure.Num {
	var all []measure.Num
	for _, p := range e.passages {
		for _, q := range p.quantities {
			if q.unit == measure.Millimetre && !slices.Contains(all, q.first()) {
				all = append(all, q.first())
			}
		}
	}
	return all
}

// unlistedHook finds hooks that the text takes up and the materials do not list. A sentence about what to try when the gauge is
// off names hooks that a maker may need and the pattern does not.
func unlistedHook(e *edit) []note {
	var notes []note
	for _, p := range e.passages {
		for _, q := range p.quantities {
			if q.unit != measure.Millimetre || q.isList() || !p.follows(q.to, 6, "hook") || p.says(q.from, "if", "try", "or", "larger", "smaller", "may", "might", "could", "than") {
				continue
			}
			if slices.ContainsFunc(e.pattern.Hooks, func(h pattern.Hook) bool { return h.Size.Cmp(q.first()) == 0 }) {
				continue
			}
			mm := q.first().Decimal(2) + " mm"
			notes = append(notes, note{
				span:    q.figures,
				message: "the text takes a " + mm + " hook, and the hooks listed are " + e.hookSizes(),
				fix:     `list it: [hook.NAME] with size = "` + mm + `", or write one of those listed`,
			})
		}
	}
	return notes
}

func (e *edit) hookSizes() string {
	var sizes []string
	for _, h := range e.pattern.Hooks {
		sizes = append(sizes, h.Size.Decimal(2)+" mm")
	}
	if len(sizes) == 0 {
		return "none"
	}
	return source.List(sizes, "and")
}

// unusedYarn finds yarns that no row and no sentence names, where there are several.
func unusedYarn(e *edit) []note {
	if len(e.pattern.Yarns) < 2 {
		return nil
	}
	var notes []note
	for i, y := range e.pattern.Yarns {
		name := strings.ToLower(y.Name.Text)
		used := name == "main" || i == 0 && len(name) > 1 && !strings.EqualFold(name, "mc") ||
			e.namesYarn(name) || e.mentions(y.Colour)
		if !used {
			notes = append(notes, note{
				span:    y.Name.Span,
				message: "the yarn `" + y.Name.Text + "` is listed and no row or sentence takes it up",
				fix:     "say `with " + y.Name.Text + "` where it is used, or take [yarn." + y.Name.Text + "] out",
			})
		}
	}
	return notes
}

// namesYarn reports whether a yarn is named. A single letter counts only as a capital, and not as the article "A".
func (e *edit) namesYarn(name string) bool {
	return slices.ContainsFunc(e.index[name], func(at place) bool {
		return len(name) > 1 || isYarnLetter(e.passages[at.passage].words, at.word)
	})
}

// isYarnLetter reports whether a word stands where the name of a yarn does: "with B", "join C in any sp", "Row 5 (B)", "B only".
func isYarnLetter(words []word, i int) bool {
	w := words[i]
	if w.kind != plainWord || w.text != strings.ToUpper(w.text) || i == 0 || words[i-1].sentence != w.sentence {
		return false
	}
	if words[i-1].is("with", "join", "rejoin", "drop", "yarn", "colour", "color", "in", "to", "using", "and", "off", "of", "between", "or", "up", "carry", "cut", "shade", "for") {
		return i+1 == len(words) || !startsName(words[i+1])
	}
	return words[i-1].low == "(" && i+1 < len(words) && words[i+1].is(")", ",", "and", "&", "only")
}

// startsName reports whether a word goes on in capitals as a title does: "with A Firm Hand".
func startsName(w word) bool {
	return w.kind == plainWord && w.text != w.low && len(w.text) > 1 && w.text != strings.ToUpper(w.text)
}

// yarnWords are what rows call yarns by: the trade's letters, and the plain colours (common practice, no source).
var yarnWords = []string{
	"A", "B", "C", "D", "E", "F", "G", "H", "MC", "CC",
	"black", "white", "cream", "grey", "gray", "brown", "red", "pink", "orange", "yellow", "green", "blue", "navy", "teal", "purple", "lilac",
}

// unlistedYarn finds letters and colours that rows take up as yarns and that the materials do not have.
func unlistedYarn(e *edit) []note {
	var notes []note
	for _, name := range yarnWords {
		if e.hasYarn(name) {
			continue
		}
		i := slices.IndexFunc(e.index[strings.ToLower(name)], func(at place) bool {
			p := e.passages[at.passage]
			return p.inRows() && p.words[at.word].text == name && takesYarn(p.words, at.word)
		})
		if i < 0 {
			continue
		}
		at := e.index[strings.ToLower(name)][i]
		notes = append(notes, note{
			span:    e.passages[at.passage].words[at.word].span,
			message: "the rows take up yarn " + name + ", and the yarns listed are " + e.yarnNames(),
			fix:     "list it as [yarn." + name + "], or write the name of one that is listed",
		})
	}
	return notes
}

// takesYarn is stricter than isYarnLetter: what stands there cannot be anything but a yarn.
func takesYarn(words []word, i int) bool {
	w := words[i]
	if i == 0 || words[i-1].sentence != w.sentence || i+1 < len(words) && startsName(words[i+1]) {
		return false
	}
	if words[i-1].is("with", "join", "rejoin", "drop", "using") {
		return true
	}
	return words[i-1].is("to") && i > 1 && words[i-2].is("change", "changing", "switch", "switching") || words[i-1].is("off") && i > 1 && words[i-2].is("fasten", "cut")
}

func (e *edit) hasYarn(name string) bool {
	return slices.ContainsFunc(e.pattern.Yarns, func(y pattern.Yarn) bool {
		return strings.EqualFold(y.Name.Text, name) || name == "MC" && strings.EqualFold(y.Name.Text, "main") ||
			len(name) > 2 && (holds(flat(y.Colour), name) || holds(flat(y.Wanted), name))
	})
}

func (e *edit) yarnNames() string {
	var names []string
	for _, y := range e.pattern.Yarns {
		names = append(names, y.Name.Text)
	}
	if len(names) == 0 {
		return "none"
	}
	return source.List(names, "and")
}
