package proof

import (
	"slices"
	"strings"

	"foundrow/internal/formula"
	"foundrow/internal/measure"
	"foundrow/internal/pattern"
)

// What two figures for one length may differ by. Each was rounded to the grid of its tape, 1/2 cm and 1/4 inch, so that half of
// either is rounding alone; a centimetre, or half an inch, is worth a question; more is a mistake.
// Source of the grid: jennabarron.com on conversion mistakes. The two limits are proposals on that grid, with no source.
var (
	halfCm      = measure.Ratio(1, 4)
	halfQuarter = measure.Ratio(1, 8)
	worthAsking = measure.Int(1)
)

// A pair is one length, or one list of lengths, written in both units.
type pair struct {
	p            passage
	metric, inch quantity
	about        bool // it is called approximate
	body         bool // the sentence speaks of a body, which is physical
}

// pairs finds lengths followed by the same in the other unit: "54 cm (21½ in)", "4 in / 10 cm", "10 cm = 4 inches".
func (e *edit) pairs(visit func(pair)) {
	for _, p := range e.passages {
		for i := 0; i+1 < len(p.quantities); i++ {
			a, b := p.quantities[i], p.quantities[i+1]
			if !joined(p.words, a, b) || len(a.entries) != len(b.entries) {
				continue
			}
			if isImperial(a.unit) {
				a, b = b, a
			}
			if !isMetric(a.unit) || !isImperial(b.unit) {
				continue
			}
			visit(pair{
				p: p, metric: a, inch: b,
				about: p.nearBefore(p.quantities[i].from, "about", "approx", "approximately", "roughly", "around", "nearly", "almost"),
				body: p.says(a.from, "bust", "chest", "hip", "hips", "waist", "head", "foot", "feet", "hand", "wrist", "arm", "body", "fit", "fits", "tall", "height",
					"wearer", "model", "circumference"),
			})
		}
	}
}

// joined reports whether nothing but one mark or "or" stands between two quantities.
func joined(words []word, a, b quantity) bool {
	return a.sentence == b.sentence && b.from == a.to+1 && words[a.to].is("(", "[", "/", "=", "or", "–", "-")
}

func isMetric(u measure.Unit) bool {
	return u == measure.Centimetre || u == measure.Millimetre || u == measure.Metre || u == measure.Gram
}

func isImperial(u measure.Unit) bool {
	return u == measure.Inch || u == measure.Yard || u == measure.Ounce
}

// gap is what the two figures of a pair differ by in a size, in centimetres, an inch having so many; ok is false where one is not a length
// of something crocheted.
func (pr pair) gap(size int, inch measure.Num) (gap measure.Num, ok bool) {
	m, i := pr.metric.entries[size], pr.inch.entries[size]
	if m.absent || i.absent || pr.inch.unit != measure.Inch || pr.metric.unit == measure.Gram {
		return measure.Num{}, false
	}
	cm := measure.Tape{}.Body(m.num, pr.metric.unit)
	return cm.Sub(i.num.Mul(inch)).Abs(), true
}

// rounding is what the two figures may differ by from rounding alone.
func (pr pair) rounding(inch measure.Num) measure.Num {
	if pr.about {
		return measure.Ratio(1, 2).Add(inch.Div(measure.Int(2)))
	}
	return halfCm.Add(halfQuarter.Mul(inch))
}

// A verdict on the two figures of a pair.
type verdict uint8

const (
	agrees   verdict = iota
	physical         // at 2.54 cm to the inch, where garments are reckoned otherwise
	rough            // near, and not what a tape shows
	differs
)

// judge compares the figures of a pair in a size, an inch of something crocheted having so many centimetres.
func (pr pair) judge(size int, inch measure.Num) verdict {
	garment, isLength := pr.gap(size, inch)
	if !isLength {
		if pr.heavyOff(size) {
			return differs
		}
		return agrees
	}
	body, _ := pr.gap(size, measure.InternationalInch)
	least, most := garment, worthAsking
	if body.Less(garment) {
		least = body
	}
	if pr.about {
		most = most.Add(pr.rounding(inch))
	}
	switch bodyAgrees := body.Cmp(pr.rounding(measure.InternationalInch)) <= 0; {
	case garment.Cmp(pr.rounding(inch)) <= 0, bodyAgrees && pr.body:
		return agrees
	case bodyAgrees:
		return physical
	case least.Cmp(most) <= 0:
		return rough
	}
	return differs
}

// unitsDiffer finds pairs that no ratio makes agree.
func unitsDiffer(e *edit) []note {
	var notes []note
	e.pairs(func(pr pair) {
		for s := range pr.metric.entries {
			if pr.judge(s, e.garmentInch()) == differs {
				notes = append(notes, pr.note(e, s))
				return
			}
		}
	})
	return notes
}

// unitsRough finds pairs that are near and not right: at the other ratio, or off the grid by less than a mistake.
func unitsRough(e *edit) []note {
	var notes []note
	e.pairs(func(pr pair) {
		for s := range pr.metric.entries {
			v := pr.judge(s, e.garmentInch())
			if v != physical && v != rough {
				continue
			}
			n := pr.note(e, s)
			if v == physical {
				n.message += "; it was reckoned with 2.54 cm to the inch"
				n.fix += `, or say inch = "exact" in studio.toml if all garments are to be reckoned so`
			}
			notes = append(notes, n)
			return
		}
	})
	return notes
}

// heavyOff reports whether a weight or a length of yarn in both units is off by more than rounding to whole numbers explains.
func (pr pair) heavyOff(size int) bool {
	m, i := pr.metric.entries[size], pr.inch.entries[size]
	if m.absent || i.absent {
		return false
	}
	var want measure.Num
	switch {
	case pr.metric.unit == measure.Gram && pr.inch.unit == measure.Ounce:
		want = measure.Grams(i.num, measure.Ounce)
	case pr.metric.unit == measure.Metre && pr.inch.unit == measure.Yard:
		want = measure.Tape{}.Body(i.num, measure.Yard).Div(measure.Int(100))
	default:
		return false
	}
	share := measure.Ratio(2, 100)
	if pr.about {
		share = measure.Ratio(10, 100)
	}
	return want.Mul(share).Add(measure.Int(1)).Less(m.num.Sub(want).Abs())
}

// note says what the metric figure is in the other unit.
func (pr pair) note(e *edit, size int) note {
	m, i := pr.metric.entries[size].num, pr.inch.entries[size].num
	is := ""
	switch pr.inch.unit {
	case measure.Ounce:
		is = measure.InOunces(m).Decimal(2) + " oz"
	case measure.Yard:
		is = m.Mul(measure.Int(100)).Div(measure.Tape{}.Body(measure.Int(1), measure.Yard)).Decimal(0) + " yd"
	default:
		is = measure.Inches(measure.Tape{}.Body(m, pr.metric.unit).Div(e.garmentInch())) + " in"
	}
	written := i.Decimal(2) + " " + shortUnit(pr.inch.unit)
	if pr.inch.unit == measure.Inch && i.Mul(measure.Int(4)).IsWhole() {
		written = measure.Inches(i) + " in"
	}
	n := note{
		span:    pr.metric.figures,
		message: m.Decimal(2) + " " + pr.metric.unit.String() + " is " + is + ", and the text says " + written,
		fix:     "write a value in braces, which prints in both units, or mend one of the two", expected: is, found: written,
	}
	if pr.inch.figures.From < n.span.From {
		n.span = pr.inch.figures
	}
	if len(pr.metric.entries) == e.sizes() && len(e.Sizes) > 1 {
		n.sizes = []string{e.size(size)}
	}
	return n
}

func shortUnit(u measure.Unit) string {
	if u == measure.Inch {
		return "in"
	}
	return u.String()
}

// garmentInch is how many centimetres an inch of something crocheted has in this studio.
func (e *edit) garmentInch() measure.Num {
	return measure.Tape{Unit: measure.Inch, Inch: e.pattern.Tape.Inch}.InCentimetres(measure.Int(1))
}

// offTape finds lengths that no tape measure shows.
func offTape(e *edit) []note {
	var notes []note
	for _, p := range e.passages {
		for _, q := range p.quantities {
			step, shows := measure.Ratio(1, 2), "half centimetres"
			if q.unit == measure.Inch {
				step, shows = measure.Ratio(1, 4), "quarter inches"
			} else if q.unit != measure.Centimetre {
				continue
			}
			for _, n := range q.entries {
				near := measure.Nearest(n.num, step, measure.Num{})
				if n.absent || n.num.Less(measure.Int(1)) || near.Cmp(n.num) == 0 || n.num.Cmp(measure.InternationalInch) == 0 {
					continue
				}
				unit := shortUnit(q.unit)
				notes = append(notes, note{
					span:    q.figures,
					message: n.num.Decimal(3) + " " + unit + " is not on a tape measure, which shows " + shows,
					fix:     "write " + near.Decimal(2) + " " + unit,
				})
				break
			}
		}
	}
	return notes
}

// A swatch is a gauge as a sentence says it: so many stitches or rows over a length.
type swatch struct {
	count, over quantity
}

// swatches finds gauges in the text: "14 sts and 10 rows to 10 cm". Only those over 10 cm or 4 inches are looked at, for "24 rows,
// 20 cm" may be anything.
func swatches(p passage) []swatch {
	var all []swatch
	for i, q := range p.quantities {
		if q.counts == formula.Unknown || q.isList() || q.ordinal {
			continue
		}
		for _, over := range p.quantities[i+1:] {
			if over.sentence != q.sentence {
				break
			}
			ten := over.unit == measure.Centimetre && over.first().Cmp(measure.Int(10)) == 0 || over.unit == measure.Inch && over.first().Cmp(measure.Int(4)) == 0
			if ten && !over.isList() && over.from > 0 && p.words[over.from-1].is("over", "to", "=", "per", "in", "measure", "measures", "equal", "equals", "is") {
				all = append(all, swatch{q, over})
			}
			if over.unit != measure.NoUnit {
				break
			}
		}
	}
	return all
}

// gaugeDiffers finds gauges in the text that are none of those the pattern is reckoned with.
func gaugeDiffers(e *edit) []note {
	var notes []note
	for _, p := range e.passages {
		if p.inRows() {
			continue
		}
		for _, s := range swatches(p) {
			var known []string
			agrees := slices.ContainsFunc(e.pattern.Gauges, func(g pattern.Gauge) bool {
				has, over := g.Stitches, g.Over
				if s.count.counts == formula.Rows {
					has, over = g.Rows, g.RowsOver
				}
				if has.Sign() == 0 || over.Sign() == 0 {
					return false
				}
				ten := has.Div(e.pattern.Tape.InCentimetres(over)).Mul(measure.Int(10))
				known = append(known, ten.Decimal(1))
				return ten.Sub(s.count.first()).Abs().Cmp(measure.Ratio(1, 2)) <= 0
			})
			if agrees || len(known) == 0 {
				continue
			}
			notes = append(notes, note{
				span: s.count.figures,
				message: "the text gives a gauge of " + s.count.first().Decimal(1) + " " + s.count.counts.String() + " over " + e.pattern.File.Slice(s.over.figures) + " " + shortUnit(s.over.unit) +
					", and the pattern is reckoned with " + strings.Join(known, " and ") + " over 10 cm",
				fix: "mend the one that is not right; the gauge is printed by itself and need not be in the text",
			})
		}
	}
	return notes
}
