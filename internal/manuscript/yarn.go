package manuscript

import (
	"strings"

	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

var yarnKeys = []key[pattern.Yarn]{
	{"name", isText, `"Any smooth DK wool"`, false, func(r *reader, y *pattern.Yarn, n *node) { y.Wanted = n.words }},
	{"weight", isWhole, `3`, false, func(r *reader, y *pattern.Yarn, n *node) {
		// The standard yarn weight system goes from 0, lace, to 7, jumbo.
		// Source: Craft Yarn Council, Standard Yarn Weight System (www.YarnStandards.com).
		if w, ok := r.wholeNumber(n, 0, 7); ok {
			y.Weight = w
		}
	}},
	{"ball", isTable, `{ weighs = "50 g", runs = "120 m" }`, false, func(r *reader, y *pattern.Yarn, n *node) {
		walk(r, ballKeys, n, y, "the `ball` of a yarn")
	}},
	{"colour", isText, `"slate"`, false, func(r *reader, y *pattern.Yarn, n *node) { y.Colour = n.words }},
	{"fibre", isText, `"wool"`, false, func(r *reader, y *pattern.Yarn, n *node) { y.Fibre = n.words }},
	{"needs", isText | isWhole | isDecimal | isTable, `"415 (440, 480) g"`, false, func(r *reader, y *pattern.Yarn, n *node) {
		y.Amounts = append(y.Amounts, pattern.Definition{Name: pattern.Words{Text: n.name, Span: n.key}, Parts: r.parts(n)})
	}},
	{"margin", isText, `"10%"`, false, func(r *reader, y *pattern.Yarn, n *node) {
		if share, ok := r.share(n); ok {
			y.Margin = share
		}
	}},
	{"swatch", isTable, `{ hdc = "12 g of 300 sts" }`, false, func(r *reader, y *pattern.Yarn, n *node) {
		for _, e := range n.entries {
			if s, ok := r.swatch(e); ok {
				y.Swatch = append(y.Swatch, s)
			}
		}
	}},
}

// usualMargin is bought to spare where nothing is said.
// Source: deviousknitter.com, enough yarn to swatch: 10 to 15 % over what the sample took.
var usualMargin = measure.Ratio(1, 10)

// share reads "10%" as a share of one, up to all of it again.
func (r *reader) share(n *node) (measure.Num, bool) {
	num, sign, ok := splitQuantity(n.words)
	switch {
	case !ok || num.IsLost() || sign != "%":
		r.fs.Report(r.file, n.text, "unread-quantity", "`"+n.words+"` is no share", "write "+n.name+` = "10%"`)
	case num.Sign() < 0 || measure.Int(100).Less(num):
		r.fs.Report(r.file, n.text, "out-of-range", "`"+n.name+"` is "+n.words+", and goes from 0% to 100%", "write "+n.name+` = "10%"`)
	default:
		return num.Div(measure.Int(100)), true
	}
	return measure.Num{}, false
}

// swatch reads what so many of a stitch weigh: hdc = "12 g of 300 sts".
func (r *reader) swatch(n *node) (pattern.Swatch, bool) {
	none := pattern.Swatch{}
	example := `"12 g of 300 sts"`
	if n.broken {
		return none, false
	}
	if n.kind != isText {
		r.wrongType(n, isText, n.name+" = "+example)
		return none, false
	}
	weight, stitches, both := strings.Cut(n.words, " of ")
	many, noun, counted := splitQuantity(stitches)
	if !both || !counted || many.IsLost() || !many.IsWhole() || noun != "" && noun != "st" && noun != "sts" && noun != "stitches" {
		r.fs.Report(r.file, n.text, "unread-quantity", "`"+n.words+"` does not say what how many stitches weigh", "write "+n.name+" = "+example)
		return none, false
	}
	scale := *n
	scale.words = weight
	num, unit, ok := r.quantity(&scale, example, measure.Gram, measure.Ounce)
	if !ok {
		return none, false
	}
	if many.Sign() <= 0 {
		r.fs.Report(r.file, n.text, "out-of-range", "the swatch of `"+n.name+"` has "+many.String()+" stitches, and has to have more than 0", "count them again, or leave the line out")
		return none, false
	}
	return pattern.Swatch{Stitch: pattern.Words{Text: n.name, Span: n.key}, Grams: measure.Grams(num, unit), Stitches: many}, true
}

var ballKeys = []key[pattern.Yarn]{
	{"weighs", isText | isWhole | isDecimal, `"50 g"`, false, func(r *reader, y *pattern.Yarn, n *node) {
		if num, unit, ok := r.quantity(n, `"50 g"`, measure.Gram, measure.Ounce); ok {
			y.Weighs = measure.Grams(num, unit)
		}
	}},
	{"runs", isText | isWhole | isDecimal, `"120 m"`, false, func(r *reader, y *pattern.Yarn, n *node) {
		if num, unit, ok := r.quantity(n, `"120 m"`, measure.Metre, measure.Yard); ok {
			y.Runs = measure.Tape{}.Body(num, unit).Div(measure.Int(100))
		}
	}},
}

func readYarns(r *reader, p *pattern.Pattern, n *node) {
	p.Yarns = group(r, yarnKeys, n, func(n *node) pattern.Yarn { return pattern.Yarn{Name: r.name(n), Weight: -1, Margin: usualMargin} })
}

var hookKeys = []key[pattern.Hook]{
	{"size", isText | isWhole | isDecimal, `"4.5 mm"`, true, readHookSize},
	{"note", isText, `"or the size that gives the gauge"`, false, func(r *reader, h *pattern.Hook, n *node) { h.Note = n.words }},
}

func readHooks(r *reader, p *pattern.Pattern, n *node) {
	p.Hooks = group(r, hookKeys, n, func(n *node) pattern.Hook { return pattern.Hook{Name: r.name(n)} })
}

// readHookSize reads a diameter. Labels are not read, as makers differ in them; of a known one the millimetres are offered.
func readHookSize(r *reader, h *pattern.Hook, n *node) {
	if n.kind == isText && !strings.HasSuffix(n.words, measure.Millimetre.String()) {
		if sizes := hooksLabelled(n.words); len(sizes) > 0 {
			r.fs.Report(r.file, n.text, "hook-label", "`"+n.words+"` is a label, and makers differ in what they call a hook",
				"write its millimetres: size = \""+source.List(sizes, "or")+"\"")
			return
		}
	}
	if num, _, ok := r.quantity(n, `"4.5 mm"`, measure.Millimetre); ok {
		h.Size = num
	}
}

// hookLabels are the letters and numbers of US hooks. They are not unique, and a number alone may be that of a steel hook, so
// they are looked up for a finding only.
// Source: Craft Yarn Council, Hooks and Needles (www.YarnStandards.com), transcriptions of the page confirmed by 2 or 3 others;
// D = 3.125 mm by one page. M-13 and N-15 are how M/N-13 and N/P-15 are often written.
var hookLabels = []struct{ millimetres, labels string }{
	{"2.25 mm", "B-1"}, {"2.75 mm", "C-2"}, {"3.125 mm", "D"}, {"3.25 mm", "D-3"}, {"3.5 mm", "E-4"}, {"3.75 mm", "F-5"},
	{"4 mm", "G-6"}, {"4.25 mm", "G"}, {"4.5 mm", "7"}, {"5 mm", "H-8"}, {"5.25 mm", "I"}, {"5.5 mm", "I-9"}, {"5.75 mm", "J"},
	{"6 mm", "J-10"}, {"6.5 mm", "K-10.5"}, {"8 mm", "L-11"}, {"9 mm", "M/N-13 M-13 N-13"}, {"10 mm", "N/P-15 N-15 P-15"},
	{"11.5 mm", "P-16"}, {"15 mm", "P/Q"}, {"15.75 mm", "Q"}, {"16 mm", "Q"}, {"19 mm", "S"}, {"25 mm", "T/U/X"}, {"30 mm", "T/X"},
}

// hooksLabelled returns the diameters that a label stands for: "US H-8", "H/8", "size H8" and "H" are one.
func hooksLabelled(words string) []string {
	label := strings.ToUpper(words)
	for _, extra := range []string{"US", "SIZE", "HOOK"} {
		label = strings.ReplaceAll(label, extra, "")
	}
	signs := strings.NewReplacer(" ", "", "-", "", "/", "")
	label = signs.Replace(label)
	var exact, letter []string
	for _, h := range hookLabels {
		for _, known := range strings.Fields(h.labels) {
			if signs.Replace(known) == label {
				exact = append(exact, h.millimetres)
			} else if l, _, numbered := strings.Cut(known, "-"); numbered && l == label {
				letter = append(letter, h.millimetres)
			}
		}
	}
	if len(exact) > 0 {
		return exact
	}
	return letter
}
