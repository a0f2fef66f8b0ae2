package proof

import (
	"slices"
	"strconv"
	"strings"

	"foundrow/internal/formula"
	"foundrow/internal/grade"
	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// A weight is what is usual for a standard yarn weight: stitches over 10 cm (4 inches) and the hook. The zero number is open.
type weight struct {
	name            string
	fewest, most    int64 // single crochet; double crochet for lace
	thinnest, thick measure.Num
}

// weights are the standard yarn weights 0 to 7: guidelines, of which the gauge of a pattern may differ. The hook of lace is the
// widest that either of its two columns, steel and other, allows.
// Source: Craft Yarn Council, Standard Yarn Weight System, web table (www.YarnStandards.com), read in reproductions: weights 1 to 5
// confirmed by five pages, 0 by four, 6 and 7 by three for the current edition.
var weights = [8]weight{
	{"lace", 32, 42, measure.Ratio(14, 10), measure.Ratio(225, 100)},
	{"super fine", 21, 32, measure.Ratio(225, 100), measure.Ratio(35, 10)},
	{"fine", 16, 20, measure.Ratio(35, 10), measure.Ratio(45, 10)},
	{"light", 12, 17, measure.Ratio(45, 10), measure.Ratio(55, 10)},
	{"medium", 11, 14, measure.Ratio(55, 10), measure.Ratio(65, 10)},
	{"bulky", 8, 11, measure.Ratio(65, 10), measure.Int(9)},
	{"super bulky", 7, 9, measure.Int(9), measure.Int(15)},
	{"jumbo", 0, 6, measure.Int(15), measure.Num{}},
}

// oneWeight returns the yarn weight of a pattern; false where it is not said, where yarns differ, or where several strands are
// held together.
func (e *edit) oneWeight() (int, bool) {
	if len(e.pattern.Yarns) == 0 {
		return 0, false
	}
	w := e.pattern.Yarns[0].Weight
	for _, y := range e.pattern.Yarns {
		if text := flat(y.Wanted); y.Weight != w || holds(text, "strand") || holds(text, "double") || holds(text, "triple") || holds(text, "doubled") {
			return 0, false
		}
	}
	if w < 0 || w >= len(weights) || e.mentions("held double") || e.mentions("two strand") || e.mentions("2 strand") || e.mentions("held together") || e.mentions("yarn double") {
		return 0, false
	}
	return w, true
}

// unusualGauge finds gauges outside of what is usual for the yarn. The table gives single crochet (double crochet for lace); other
// plain stitches are as wide or a little wider, so that a quarter less is let pass (common practice, no source). Ribs, stitch
// patterns and gauges taken as worn are not compared, and toys are worked tightly.
func unusualGauge(e *edit) []note {
	w, known := e.oneWeight()
	if !known {
		return nil
	}
	var notes []note
	for _, g := range e.pattern.Gauges {
		plain, known := usStitch(g.Stitch, e.pattern.Terms)
		if !known || g.Stitches.Sign() <= 0 || g.Over.Sign() <= 0 || g.State == "as worn" || g.Written.Of > 0 || g.Written.Across != "" {
			continue
		}
		fewest, most := measure.Int(weights[w].fewest), measure.Int(weights[w].most)
		if (plain == "sc") == (w == 0) {
			fewest = fewest.Mul(measure.Ratio(3, 4))
		}
		ten := g.Stitches.Div(e.pattern.Tape.InCentimetres(g.Over)).Mul(measure.Int(10))
		if ten.Less(fewest) || most.Less(ten) && e.pattern.Kind.Text != "toy" {
			notes = append(notes, note{
				span: g.Name.Span,
				message: ten.Decimal(1) + " " + g.Stitch + " over 10 cm is unusual for yarn of weight " + strconv.Itoa(w) + " (" + weights[w].name + "), which has " +
					strconv.FormatInt(weights[w].fewest, 10) + " to " + strconv.FormatInt(weights[w].most, 10) + " " + tableStitch(w, e.pattern.Terms),
				fix: "see that the weight of the yarn and the gauge are those of one swatch",
			})
		}
	}
	return notes
}

// usStitch returns the US name of a plain stitch, worked through both loops, and false for anything else.
func usStitch(written string, t pattern.Terms) (string, bool) {
	names := []string{"sc", "hdc", "dc", "tr"}
	if t == pattern.UK {
		names = []string{"dc", "htr", "tr", "dtr"}
	}
	if i := slices.Index(names, strings.ToLower(strings.TrimSpace(written))); i >= 0 {
		return []string{"sc", "hdc", "dc", "tr"}[i], true
	}
	return "", false
}

// tableStitch names the stitch the table is in.
func tableStitch(weight int, t pattern.Terms) string {
	switch {
	case weight == 0 && t == pattern.UK:
		return "tr"
	case weight != 0 && t == pattern.US:
		return "sc"
	}
	return "dc"
}

// rowsPerStitch is how many rows there are to the width of a stitch, from the flattest to the tallest fabric that is likely: twice
// and half of square, halved again as the stitch grows. Common practice, no source; double crochet is twice as tall as wide by
// engineeredcrochet.blogspot.com 2013/12.
var rowsPerStitch = map[string][2]measure.Num{
	"sc":  {measure.Ratio(7, 10), measure.Ratio(17, 10)},
	"hdc": {measure.Ratio(5, 10), measure.Ratio(12, 10)},
	"dc":  {measure.Ratio(3, 10), measure.Ratio(9, 10)},
	"tr":  {measure.Ratio(2, 10), measure.Ratio(7, 10)},
}

// swappedGauge finds gauges whose stitches and rows cannot both be right: most often they changed places.
func swappedGauge(e *edit) []note {
	var notes []note
	for _, g := range e.pattern.Gauges {
		plain, known := usStitch(g.Stitch, e.pattern.Terms)
		if !known || g.Stitches.Sign() <= 0 || g.Rows.Sign() <= 0 || g.Over.Sign() <= 0 || g.RowsOver.Sign() <= 0 || g.State == "as worn" || g.Written.Across != "" {
			continue
		}
		ratio, likely := g.Rows.Div(g.RowsOver).Div(g.Stitches.Div(g.Over)), rowsPerStitch[plain]
		if ratio.Less(likely[0]) || likely[1].Less(ratio) {
			notes = append(notes, note{
				span: g.Name.Span,
				message: g.Stitches.Decimal(1) + " sts by " + g.Rows.Decimal(1) + " rows is an unlikely shape for " + g.Stitch + ": a row would be " + measure.Int(1).Div(ratio).Decimal(1) +
					" times as tall as a stitch is wide",
				fix: "see whether stitches and rows changed places, or stand over different lengths",
			})
		}
	}
	return notes
}

// unusualHook finds hooks outside of what is usual for the yarn and for the weights next to it: designers often work a size up or
// down, and toys well below.
func unusualHook(e *edit) []note {
	w, known := e.oneWeight()
	if !known {
		return nil
	}
	least, most := weights[max(0, w-1)].thinnest, weights[min(len(weights)-1, w+1)].thick
	var notes []note
	for _, h := range e.pattern.Hooks {
		thin := h.Size.Less(least) && e.pattern.Kind.Text != "toy"
		if h.Size.Sign() <= 0 || !thin && (most.Sign() == 0 || !most.Less(h.Size)) {
			continue
		}
		usual := weights[w].thinnest.Decimal(2) + " to " + weights[w].thick.Decimal(2) + " mm"
		if weights[w].thick.Sign() == 0 {
			usual = weights[w].thinnest.Decimal(2) + " mm and more"
		}
		notes = append(notes, note{
			span:    h.Name.Span,
			message: "a hook of " + h.Size.Decimal(2) + " mm is unusual for yarn of weight " + strconv.Itoa(w) + " (" + weights[w].name + "), which takes " + usual,
			fix:     "see that it is the hook the gauge was made with",
		})
	}
	return notes
}

// amounts returns the values of a pattern that say how much of a yarn each size takes.
func (e *edit) amounts(y pattern.Yarn) []grade.Value {
	var all []grade.Value
	for _, v := range e.Values {
		if v.Role == grade.Amount && (v.Name == y.Name.Text || strings.HasPrefix(v.Name, y.Name.Text+".")) && len(v.BySize) == e.sizes() {
			all = append(all, v)
		}
	}
	return all
}

// yarnUnsaid finds yarns of which it is neither said nor worked out how much is needed, although it is of another.
func yarnUnsaid(e *edit) []note {
	known := func(y pattern.Yarn) bool {
		return len(y.Amounts) > 0 || slices.ContainsFunc(e.Yarn, func(n grade.YarnNeed) bool { return n.Yarn == y.Name.Text })
	}
	if !slices.ContainsFunc(e.pattern.Yarns, known) {
		return nil
	}
	var notes []note
	for _, y := range e.pattern.Yarns {
		if !known(y) {
			notes = append(notes, note{
				span:    y.Name.Span,
				message: "it is not said how much of the yarn `" + y.Name.Text + "` each size takes, and it is of the others",
				fix:     "weigh it too, weighs = { " + y.Name.Text + " = … } under [sample.measured], or write needs = … under [yarn." + y.Name.Text + "]",
			})
		}
	}
	return notes
}

// yarnFalls finds amounts of yarn of which a larger size takes less, as they are stated or else as they were worked out.
func yarnFalls(e *edit) []note {
	var notes []note
	for _, y := range e.pattern.Yarns {
		for _, v := range e.amounts(y) {
			s := fallsAt(v)
			if s == 0 {
				continue
			}
			fix := "a larger size never takes less; see whether a number was mistyped"
			if len(y.Amounts) == 0 {
				fix = "a larger size hardly takes less; see whether a piece grows smaller, or state needs = … by hand"
			}
			notes = append(notes, note{
				span: amountSpan(y), sizes: []string{e.size(s - 1), e.size(s)},
				message: "the yarn `" + y.Name.Text + "` falls from " + e.amountOf(v, s-1) + " in " + e.size(s-1) + " to " + e.amountOf(v, s) + " in " + e.size(s),
				fix:     fix,
			})
			break // grams, metres and balls fall together
		}
	}
	return notes
}

// fallsAt returns the first size of which a value is less than of the size before, 0 when it never falls.
func fallsAt(v grade.Value) int {
	for s := 1; s < len(v.BySize); s++ {
		if v.BySize[s].Num.Less(v.BySize[s-1].Num) {
			return s
		}
	}
	return 0
}

// amountOf says an amount of yarn in one size, with its unit.
func (e *edit) amountOf(v grade.Value, s int) string {
	n := v.BySize[s].Num
	switch v.Kind {
	case formula.Mass:
		return n.Decimal(0) + " g"
	case formula.Length:
		return e.pattern.Tape.BodyInCentimetres(n).Div(measure.Int(100)).Decimal(0) + " m"
	}
	return n.Decimal(0)
}

func amountSpan(y pattern.Yarn) source.Span {
	if len(y.Amounts) > 0 {
		return y.Amounts[0].Name.Span
	}
	return y.Name.Span
}

// ballDiffers finds grams with metres in the text that are not in the proportion of the ball, where all yarns have one ball: "450 g
// (1080 m)" of a yarn of 115 m to 50 g.
func ballDiffers(e *edit) []note {
	if len(e.pattern.Yarns) == 0 {
		return nil
	}
	ball := e.pattern.Yarns[0]
	for _, y := range e.pattern.Yarns {
		if y.Weighs.Sign() <= 0 || y.Runs.Sign() <= 0 || y.Weighs.Mul(ball.Runs).Cmp(ball.Weighs.Mul(y.Runs)) != 0 {
			return nil
		}
	}
	var notes []note
	for _, p := range e.passages {
		for i := 0; i+1 < len(p.quantities); i++ {
			a, b := p.quantities[i], p.quantities[i+1]
			if a.unit == measure.Metre {
				a, b = b, a
			}
			if a.unit != measure.Gram || b.unit != measure.Metre || a.isList() || b.isList() || !joined(p.words, p.quantities[i], p.quantities[i+1]) {
				continue
			}
			want := a.first().Mul(ball.Runs).Div(ball.Weighs)
			if off := want.Sub(b.first()).Abs(); off.Cmp(want.Mul(measure.Ratio(5, 100))) <= 0 {
				continue
			}
			notes = append(notes, note{
				span: p.quantities[i].figures,
				message: a.first().Decimal(0) + " g of this yarn are " + want.Decimal(0) + " m at " + ball.Runs.Decimal(1) + " m to a ball of " + ball.Weighs.Decimal(1) + " g, and the text says " +
					b.first().Decimal(0) + " m",
				fix: "mend the amount, or the ball", expected: want.Decimal(0), found: b.first().Decimal(0),
			})
		}
	}
	return notes
}

// ballUnlikely finds balls whose grams and metres are not those of the yarn's weight: most often yards were taken for metres, or
// a digit was dropped. The ranges are wide, and a third beyond either end is let pass, for fibres differ.
// Source: skeinqueenyarns.co.uk, konnek.co.za, goodyarn.us, colourspun.blogspot.com, angoravalley.com and a leaflet of conversions,
// rounded outer bounds for 100 g; common practice, no standard.
var metresIn100g = [8][2]int64{{600, 1000}, {350, 600}, {250, 400}, {200, 300}, {120, 220}, {90, 130}, {40, 100}, {0, 70}}

func ballUnlikely(e *edit) []note {
	var notes []note
	for _, y := range e.pattern.Yarns {
		if y.Weight < 0 || y.Weight >= len(metresIn100g) || y.Weighs.Sign() <= 0 || y.Runs.Sign() <= 0 {
			continue
		}
		in100 := y.Runs.Mul(measure.Int(100)).Div(y.Weighs)
		least, most := measure.Int(metresIn100g[y.Weight][0]), measure.Int(metresIn100g[y.Weight][1])
		if !in100.Less(least.Mul(measure.Ratio(2, 3))) && !most.Mul(measure.Ratio(4, 3)).Less(in100) {
			continue
		}
		notes = append(notes, note{
			span: y.Name.Span,
			message: "a ball of " + y.Weighs.Decimal(1) + " g that runs " + y.Runs.Decimal(1) + " m has " + in100.Decimal(0) + " m to 100 g; yarn of weight " + strconv.Itoa(y.Weight) +
				" has " + least.String() + " to " + most.String(),
			fix: "see that the weight, the grams and the metres of the ball are those of its band",
		})
	}
	return notes
}
