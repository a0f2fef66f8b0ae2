package manuscript

import (
	"slices"
	"strings"

	"foundrow/internal/formula"
	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// isValue are the kinds of what may be a value: a formula, the trade's list, a number, or a table by sizes.
const isValue = isText | isWhole | isDecimal | isTable

// definitions reads the values of [counts] or [body], in the order of the file.
func (r *reader) definitions(t *node, is role) []pattern.Definition {
	list := make([]pattern.Definition, 0, len(t.entries))
	for _, n := range t.entries {
		name := r.valueName(n, is)
		if !n.broken && n.kind&isValue == 0 {
			r.wrongType(n, isText|isWhole|isTable, n.name+` = "6 cm in stitches at body, rounded up to whole"`)
			n.broken = true
		}
		list = append(list, pattern.Definition{Name: name, Parts: r.parts(n)})
	}
	return list
}

// parts reads a value: one formula for all sizes, or a table of one for each of several sets of sizes, which together have to
// be all of them.
func (r *reader) parts(n *node) []pattern.Part {
	if n.kind != isTable || n.broken {
		return []pattern.Part{{Formula: r.formula(n, formula.Parse)}}
	}
	return r.bySizes(n, formula.Parse, true)
}

// bySizes reads { XS = "54 cm", "S to L" = "55 cm" }. Where all sizes are wanted, those without a value are reported.
func (r *reader) bySizes(t *node, parse reading, all bool) []pattern.Part {
	set := r.offered()
	if len(set.names) == 0 {
		if r.whole {
			r.fs.Report(r.file, t.span, "unknown-size", "`"+t.name+"` is given by sizes, and this pattern has none", `write one value, or offer sizes: [sizes] offer = ["S", "M", "L"]`)
		}
		return []pattern.Part{{Formula: r.unknown(t)}}
	}
	var parts []pattern.Part
	said := make([]bool, len(set.names))
	var twice []string
	lost := false
	for _, e := range t.entries {
		at := *e
		at.span = e.key // what is wrong with the name of a size is shown there
		before := len(r.fs)
		sizes := r.once(set, &at, r.sizeWords(set, &at, e.name))
		lost = lost || len(r.fs) > before
		kept := sizes[:0:0]
		for _, i := range sizes {
			if said[i] {
				twice = append(twice, set.names[i])
				continue
			}
			said[i] = true
			kept = append(kept, i)
		}
		part := pattern.Part{Sizes: kept, Formula: r.formula(e, parse)}
		if len(kept) > 0 {
			parts = append(parts, part)
		}
	}
	if len(twice) > 0 {
		r.fs.Report(r.file, t.span, "sizes-doubled", "`"+t.name+"` has two values for "+source.List(twice, "and"), "name every size once")
	}
	if missing := unsaid(set.names, said); all && len(missing) > 0 {
		if !lost {
			r.fs.Report(r.file, t.span, "sizes-missing", "`"+t.name+"` has no value for "+source.List(missing, "and"), "name every size once, such as "+example(missing))
		}
		var rest []int
		for i, yes := range said {
			if !yes {
				rest = append(rest, i)
			}
		}
		parts = append(parts, pattern.Part{Sizes: rest, Formula: r.unknown(t)})
	}
	return parts
}

func unsaid(names []string, said []bool) []string {
	var missing []string
	for i, yes := range said {
		if !yes {
			missing = append(missing, names[i])
		}
	}
	return missing
}

// example is an entry for the sizes that are missing.
func example(missing []string) string {
	if len(missing) == 1 {
		return `"` + missing[0] + `" = "…"`
	}
	return `"` + missing[0] + " to " + missing[len(missing)-1] + `" = "…"`
}

// A finish is a measure while its keys are read.
type finish struct {
	pattern.Measure
	wish bool
}

var measureKeys = []key[finish]{
	{"body", isText, `"bust"`, false, func(r *reader, m *finish, n *node) { m.Body = wordsOf(n) }},
	{"ease", isText | isWhole | isDecimal | isTable, `"10 cm"`, false, func(r *reader, m *finish, n *node) { m.Ease = r.ease(n) }},
	{"fit", isText, `"6 to 13 cm"`, false, readFit},
	{"made", isText | isWhole | isDecimal, `"front * 2 in cm at body"`, false, func(r *reader, m *finish, n *node) { m.Made = r.formula(n, formula.Parse) }},
	{"label", isText, `"chest"`, false, func(r *reader, m *finish, n *node) { m.Label = n.words }},
	{"wish", isValue, `"54 (55, 57) cm"`, false, func(r *reader, m *finish, n *node) { m.wish, m.Parts = true, r.parts(n) }},
}

func readMeasures(r *reader, p *pattern.Pattern, t *node) {
	for _, n := range t.entries {
		m := finish{Measure: pattern.Measure{Definition: pattern.Definition{Name: r.valueName(n, measured)}}}
		switch {
		case n.kind == isTable && !n.broken && !r.isBySizes(n):
			m.Finished = true
			walk(r, measureKeys, n, &m, "[measures."+n.name+"]")
			r.checkMeasure(n, &m)
		case n.broken || n.kind&isValue != 0:
			m.Parts = r.parts(n)
		default:
			r.wrongType(n, isText|isWhole|isTable, n.name+` = "54 (55, 57) cm"`)
			n.broken = true
			m.Parts = r.parts(n)
		}
		p.Measures = append(p.Measures, m.Measure)
	}
}

// isBySizes reports whether a table gives a value for each size rather than the keys of a measurement.
func (r *reader) isBySizes(t *node) bool {
	set := r.offered()
	sizes := 0
	for _, e := range t.entries {
		if has(measureKeys, e.name) {
			return false
		}
		first, _, _ := strings.Cut(e.name, " to ")
		if first, _, _ = strings.Cut(first, ","); set.find(first) >= 0 {
			sizes++
		}
	}
	return t.inline && len(t.entries) > 0 || sizes > 0
}

// checkMeasure reports a measurement that says too little or too much.
func (r *reader) checkMeasure(t *node, m *finish) {
	where := "[measures." + t.name + "]"
	report := func(name, rule, message, fix string) {
		at := t.span
		if n := t.entry(name); n != nil {
			at = n.key
		}
		r.fs.Report(r.file, at, rule, message, fix)
	}
	body := t.entry("body") != nil
	switch {
	case !body && t.entry("wish") == nil && t.entry("made") == nil:
		report("", "missing-key", where+" says neither which body measurement it follows nor what it shall be", `write body = "bust" and ease = "10 cm", or wish = "54 cm"`)
	case !body && t.entry("ease") != nil:
		report("ease", "missing-key", where+" has an ease and no body measurement that it is added to", `write body = "bust", or give the whole measurement: wish = "54 cm"`)
	case !body && t.entry("fit") != nil:
		report("fit", "missing-key", where+" has a fit and no body measurement that it is compared with", `write body = "bust", or leave the fit out`)
	case t.entry("wish") != nil && t.entry("ease") != nil:
		report("wish", "two-wishes", where+" has both a wish and an ease", "keep one of them: the ease is what the wish leaves, or the wish what the ease makes")
	}
}

func (r *reader) ease(n *node) []pattern.Part {
	if n.kind == isTable {
		return r.bySizes(n, formula.ParseEase, true)
	}
	return []pattern.Part{{Formula: r.formula(n, formula.ParseEase)}}
}

// bands are the fits of a published chart: the ease it gives each, in inches and in the centimetres it prints beside them. The
// chart leaves gaps (-2 to 0, 0 to +2 inches) and lets two bands share 4 inches; that every band reaches from its own figure up to
// the next one, which is no longer in it, is our rule.
// Source: Craft Yarn Council, Ease & Fit (www.YarnStandards.com), confirmed by 2 pages.
var bands = []struct {
	name          string
	low, high     measure.Num // inches
	lowCm, highCm measure.Num
}{
	{"very close", measure.Lost, measure.Int(0), measure.Lost, measure.Int(0)},
	{"close", measure.Int(0), measure.Int(2), measure.Int(0), measure.Int(5)},
	{"classic", measure.Int(2), measure.Int(4), measure.Int(5), measure.Int(10)},
	{"loose", measure.Int(4), measure.Int(6), measure.Int(10), measure.Int(15)},
	{"oversized", measure.Int(6), measure.Lost, measure.Int(15), measure.Lost},
}

// readFit reads "6 to 13 cm" or the name of a band.
func readFit(r *reader, m *finish, n *node) {
	m.Fit = pattern.Fit{Words: wordsOf(n)}
	var known []string
	for _, b := range bands {
		known = append(known, b.name)
		if b.name != n.words {
			continue
		}
		m.Fit.Low, m.Fit.High, m.Fit.Under, m.Fit.Set = b.lowCm, b.highCm, true, true
		if r.p.Tape.Unit == measure.Inch {
			m.Fit.Low, m.Fit.High = b.low, b.high
		}
		return
	}
	first, last, isRange := strings.Cut(n.words, " to ")
	high, name, ok := splitQuantity(last)
	low, lowName, ok2 := splitQuantity(first)
	if !isRange || !ok || !ok2 || lowName != "" && lowName != name {
		r.fs.Report(r.file, n.text, "unread-quantity", "`"+n.words+"` is neither a range of ease nor a published fit",
			`write fit = "6 to 13 cm", or one of `+source.List(known, "and"))
		return
	}
	unit, _ := measure.ParseUnit(name)
	switch {
	case unit != measure.Centimetre && unit != measure.Millimetre && unit != measure.Inch:
		r.fs.Report(r.file, n.text, "unit-missing", "the fit "+n.words+" has no unit of length", `write fit = "`+n.words+` cm" or the like`)
	case high.Less(low):
		r.fs.Report(r.file, n.text, "out-of-range", "the fit "+n.words+" runs downwards", "write the smaller ease first; less than the body has a minus")
	default:
		m.Fit.Low, m.Fit.High, m.Fit.Set = r.p.Tape.Garment(low, unit), r.p.Tape.Garment(high, unit), true
	}
}

// readPins reads the designer's own choice for some sizes.
func readPins(r *reader, p *pattern.Pattern, t *node) {
	for _, n := range t.entries {
		pin := pattern.Pin{Name: pattern.Words{Text: n.name, Span: n.key}}
		switch {
		case n.broken:
			continue
		case n.kind == isTable:
			pin.Parts = r.bySizes(n, formula.Parse, false)
		case n.kind&(isText|isWhole) != 0:
			pin.Parts = r.parts(n)
		default:
			r.wrongType(n, isWhole|isTable, n.name+` = { L = 86 }`)
			continue
		}
		p.Pins = append(p.Pins, pin)
	}
}

var measuredKeys = []key[pattern.Pattern]{
	{"weighs", isText | isWhole | isDecimal | isTable, `"415 g"`, false, readWeighs},
}

// readWeighs reads what the sample weighs: "415 g", or each yarn for itself, { A = "300 g", B = "115 g" }.
func readWeighs(r *reader, p *pattern.Pattern, t *node) {
	weigh := func(n *node, of pattern.Words) {
		if num, unit, ok := r.quantity(n, `"415 g"`, measure.Gram, measure.Ounce); ok {
			p.Weighed = append(p.Weighed, pattern.Weighed{Yarn: of, Grams: measure.Grams(num, unit), Span: n.text})
		}
	}
	if t.kind != isTable {
		weigh(t, pattern.Words{})
		return
	}
	known := make([]string, len(p.Yarns))
	for i, y := range p.Yarns {
		known[i] = y.Name.Text
	}
	for _, n := range t.entries {
		switch {
		case n.broken:
		case n.kind&(isText|isWhole|isDecimal) == 0:
			r.wrongType(n, isText, n.name+` = "300 g"`)
		case !slices.Contains(known, n.name):
			if r.whole {
				unknownName(&r.fs, r.file, n.key, n.name, "yarn", known)
			}
		default:
			weigh(n, pattern.Words{Text: n.name, Span: n.key})
		}
	}
}

// readSample reads what the designer's hands made: front = 74, cap.rows = 25, and what was measured of it.
func readSample(r *reader, p *pattern.Pattern, t *node) {
	if n := t.entry("measured"); n != nil && n.kind == isTable {
		walk(r, measuredKeys, n, p, "[sample.measured]")
	}
	var read func(n *node, name string)
	read = func(n *node, name string) {
		switch {
		case n.broken, name == "measured" && n.kind == isTable:
		case n.kind == isTable:
			for _, e := range n.entries {
				read(e, name+"."+e.name)
			}
		case n.kind&(isText|isWhole|isDecimal) == 0:
			r.wrongType(n, isWhole, name+" = 74")
		default:
			at := pattern.Words{Text: name, Span: n.key}
			p.Sample = append(p.Sample, pattern.Assertion{Name: at, Value: r.formula(n, formula.Parse)})
		}
	}
	for _, n := range t.entries {
		read(n, n.name)
	}
}
