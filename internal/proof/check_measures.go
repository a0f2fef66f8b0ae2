package proof

import (
	"slices"
	"strings"

	"foundrow/internal/formula"
	"foundrow/internal/grade"
	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// countMeasures finds a count whose measurement behind it no gauge of the pattern gives: "86 sts (50 cm)", "24 rows measure 20 cm".
func countMeasures(e *edit) []note {
	var notes []note
	for _, p := range e.passages {
		if p.kind == row || p.kind == lead {
			continue
		}
		for i := 0; i+1 < len(p.quantities); i++ {
			c, l := p.quantities[i], p.quantities[i+1]
			if c.counts == formula.Unknown || c.ordinal || len(c.entries) != len(l.entries) || !isTied(p.words, c, l) {
				continue
			}
			wide := p.says(c.from, "gauge", "tension", "swatch")
			if known, fits := e.gaugesGive(c, l); len(known) > 0 && !fits && !wide {
				notes = append(notes, note{
					span: l.figures,
					message: c.first().Decimal(0) + " " + c.counts.String() + " are " + source.List(known, "or") + " at the gauge of the pattern, and the text says " +
						l.first().Decimal(2) + " " + shortUnit(l.unit),
					fix: "write the length as a value in braces, such as {" + c.first().Decimal(0) + " " + shortCount(c.counts) + " in cm}",
				})
			}
		}
	}
	return notes
}

// isTied reports whether a length says how much a count measures.
func isTied(words []word, c, l quantity) bool {
	if l.unit != measure.Centimetre && l.unit != measure.Inch || c.sentence != l.sentence || l.from <= c.to-1 {
		return false
	}
	switch between := words[c.to:l.from]; len(between) {
	case 1:
		return between[0].is("(", "=", "measure", "measures")
	case 2:
		return between[0].is("(", "measure", "measures") && between[1].is("about", "approx", "=", "≈")
	}
	return false
}

// gaugesGive returns what a count measures at each gauge that has its kind, and whether the written length is one of them within what
// is worth asking about.
func (e *edit) gaugesGive(c, l quantity) (known []string, fits bool) {
	tape := e.pattern.Tape
	for _, g := range e.pattern.Gauges {
		has, over := g.Stitches, g.Over
		if c.counts == formula.Rows {
			has, over = g.Rows, g.RowsOver
		}
		if has.Sign() <= 0 || over.Sign() <= 0 {
			continue
		}
		all := true
		for i := range c.entries {
			if c.entries[i].absent || l.entries[i].absent {
				continue
			}
			made := c.entries[i].num.Mul(over).Div(has)
			off := tape.InCentimetres(made).Sub(tape.InCentimetres(tape.Garment(l.entries[i].num, l.unit))).Abs()
			all = all && off.Cmp(worthAsking) <= 0
			if i == 0 {
				known = append(known, tapeText(tape, made, l.unit))
			}
		}
		fits = fits || all
	}
	return known, fits
}

func tapeText(t measure.Tape, n measure.Num, u measure.Unit) string {
	if u == measure.Inch {
		return measure.Inches(t.InInches(n)) + " in"
	}
	return measure.Centimetres(t.InCentimetres(n)) + " cm"
}

// lengthOf prints a length of something crocheted in the unit the pattern is written in.
func (e *edit) lengthOf(n measure.Num) string {
	if e.pattern.Tape.Unit == measure.Inch {
		return tapeText(e.pattern.Tape, n, measure.Inch)
	}
	return tapeText(e.pattern.Tape, n, measure.Centimetre)
}

func shortCount(k formula.Kind) string {
	if k == formula.Rows {
		return "rows"
	}
	return "sts"
}

// finishedDiffers finds a list of a finished measurement, called by its name, that is not what the counts make. What a body has
// is another thing and is left alone.
func finishedDiffers(e *edit) []note {
	var notes []note
	e.lists(func(p passage, q quantity) {
		if q.unit != measure.Centimetre && q.unit != measure.Inch || len(q.entries) != e.sizes() || p.says(q.from, "fit", "fits", "body") || !p.says(q.from, "finished", "actual", "garment") {
			return
		}
		i := slices.IndexFunc(e.Finished, func(f grade.Finished) bool {
			label := f.Label
			if label == "" {
				label = f.Name
			}
			return len(f.Made) == e.sizes() && holds(p.before(q.from), label)
		})
		if i < 0 {
			return
		}
		f, tape := e.Finished[i], e.pattern.Tape
		var sizes []string
		first := -1
		for s, n := range q.entries {
			off := tape.InCentimetres(f.Made[s]).Sub(tape.InCentimetres(tape.Garment(n.num, q.unit))).Abs()
			if !n.absent && halfCm.Add(measure.Ratio(1, 4)).Less(off) {
				sizes = append(sizes, e.size(s))
				if first < 0 {
					first = s
				}
			}
		}
		if first >= 0 {
			notes = append(notes, note{
				span: q.figures, sizes: sizes,
				message: "the counts make `" + f.Name + "` " + tapeText(tape, f.Made[first], q.unit) + " in " + e.size(first) + ", and the text says " + entryText(q, first),
				fix:     "write {" + f.Name + "}",
			})
		}
	})
	return notes
}

// notRising finds finished girths that do not grow although the body does: two sizes that are one.
func notRising(e *edit) []note {
	var notes []note
	for _, f := range e.Finished {
		m, girth := e.girth(f)
		if !girth {
			continue
		}
		var sizes, said []string
		for s := 1; s < len(f.Made); s++ {
			if f.Made[s-1].Less(f.Made[s]) || len(f.Body) == len(f.Made) && !f.Body[s-1].Less(f.Body[s]) || f.Made[s].IsLost() || f.Made[s-1].IsLost() {
				continue
			}
			sizes = append(sizes, e.size(s))
			said = append(said, e.lengthOf(f.Made[s-1])+" in "+e.size(s-1)+" and "+e.lengthOf(f.Made[s])+" in "+e.size(s))
		}
		if len(sizes) > 0 {
			notes = append(notes, note{
				span: m.Name.Span, sizes: sizes,
				message: "`" + f.Name + "` is " + strings.Join(said, "; ") + ", and the body is larger",
				fix:     "see whether the counts round two sizes to one; a smaller multiple or a pin parts them",
			})
		}
	}
	return notes
}

// girth returns the measure a finished measurement was written as, and whether it goes round a body.
func (e *edit) girth(f grade.Finished) (pattern.Measure, bool) {
	i := slices.IndexFunc(e.pattern.Measures, func(m pattern.Measure) bool { return m.Name.Text == f.Name })
	if i < 0 || len(f.Made) != e.sizes() {
		return pattern.Measure{}, false
	}
	m := e.pattern.Measures[i]
	return m, slices.ContainsFunc(e.pattern.Sizes.Body, func(b pattern.BodyMeasurement) bool { return b.Girth && b.Name == m.Body.Text })
}

// fallsWithSize finds finished measurements, and measurements listed by hand, of which a larger size has less.
func fallsWithSize(e *edit) []note {
	var notes []note
	seen := map[string]bool{}
	ask := func(name string, span source.Span, made []measure.Num) {
		for s := 1; s < len(made); s++ {
			if made[s].Less(made[s-1]) {
				notes = append(notes, note{
					span: span, sizes: []string{e.size(s - 1), e.size(s)},
					message: "`" + name + "` falls from " + e.lengthOf(made[s-1]) + " in " + e.size(s-1) + " to " + e.lengthOf(made[s]) + " in " + e.size(s),
					fix:     "a length may stay the same from one size to the next and seldom falls; see whether a number was mistyped",
				})
				return
			}
		}
	}
	for _, f := range e.Finished {
		m, girth := e.girth(f)
		seen[f.Name] = true
		if girth || m.Name.Text == "" {
			continue
		}
		ask(f.Name, m.Name.Span, f.Made)
	}
	for _, m := range e.pattern.Measures {
		if seen[m.Name.Text] || !byHand(m.Definition) {
			continue
		}
		i := slices.IndexFunc(e.Values, func(v grade.Value) bool { return v.Name == m.Name.Text })
		if i < 0 || e.Values[i].Kind != formula.Length {
			continue
		}
		ask(m.Name.Text, m.Name.Span, numbers(e.Values[i]))
	}
	return notes
}

// byHand reports whether a value is numbers that somebody wrote down for each size, with no name in them.
func byHand(d pattern.Definition) bool {
	return !slices.ContainsFunc(d.Parts, func(p pattern.Part) bool { return p.Formula == nil || len(p.Formula.Names()) > 0 })
}

func numbers(v grade.Value) []measure.Num {
	nums := make([]measure.Num, len(v.BySize))
	for i, x := range v.BySize {
		nums[i] = x.Num
	}
	return nums
}

// sizeJumps finds finished girths that grow from one size to the next by more than twice what the body does and more than twice what
// they usually do: a size is missing between the two, or one of them is not what was meant.
func sizeJumps(e *edit) []note {
	var notes []note
	for _, f := range e.Finished {
		m, girth := e.girth(f)
		if !girth || len(f.Body) != len(f.Made) || m.Fit.Set {
			continue // where a fit is declared, package grade holds every size to it
		}
		steps := make([]measure.Num, 0, len(f.Made))
		for s := 1; s < len(f.Made); s++ {
			steps = append(steps, f.Made[s].Sub(f.Made[s-1]))
		}
		if slices.ContainsFunc(steps, func(n measure.Num) bool { return n.Sign() <= 0 }) {
			continue // two sizes in one: the step behind them is no jump
		}
		usual := middle(steps)
		for s, step := range steps {
			body := f.Body[s+1].Sub(f.Body[s])
			if body.Sign() > 0 && body.Mul(measure.Int(2)).Less(step) && usual.Mul(measure.Int(2)).Less(step) {
				notes = append(notes, note{
					span: m.Name.Span, sizes: []string{e.size(s), e.size(s + 1)},
					message: "`" + f.Name + "` grows by " + e.lengthOf(step) + " from " + e.size(s) + " to " + e.size(s+1) + ", and the body by " + e.lengthOf(body),
					fix:     "see whether the ease or a pin of one of the two is what was meant",
				})
			}
		}
	}
	return notes
}

// middle returns the median.
func middle(nums []measure.Num) measure.Num {
	if len(nums) == 0 {
		return measure.Num{}
	}
	sorted := slices.Clone(nums)
	slices.SortFunc(sorted, measure.Num.Cmp)
	return sorted[len(sorted)/2]
}
