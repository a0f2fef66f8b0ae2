package manuscript

import (
	"strconv"
	"strings"

	"foundrow/internal/measure"
	"foundrow/internal/pattern"
)

// states are how the swatch was when it was measured.
var states = []string{"blocked", "hung", "as worn", "relaxed"}

// A swatch is a gauge while its keys are read: what was counted can be known only when all of them are.
type swatch struct {
	pattern.Gauge
	table                  *node
	where                  string // the table, as findings call it
	over, rowsOver, across *length
	rounds                 int
}

// A length is one with the words it was written in.
type length struct {
	num   measure.Num // in the tape's unit
	words string
}

var gaugeKeys = []key[swatch]{
	{"stitch", isText, `"hdc"`, false, func(r *reader, g *swatch, n *node) { g.Stitch = n.words }},
	{"stitches", isWhole | isDecimal, `14`, false, func(r *reader, g *swatch, n *node) { g.Stitches = r.positive(n) }},
	{"rows", isWhole | isDecimal, `10`, false, func(r *reader, g *swatch, n *node) { g.Rows = r.positive(n) }},
	{"over", isText | isWhole | isDecimal, `"10 cm"`, false, func(r *reader, g *swatch, n *node) { g.over = r.garmentLength(n) }},
	{"rows_over", isText | isWhole | isDecimal, `"10 cm"`, false, func(r *reader, g *swatch, n *node) { g.rowsOver = r.garmentLength(n) }},
	{"rounds", isText | isWhole, `"1 to 3"`, false, readRounds},
	{"across", isText | isWhole | isDecimal, `"10 cm"`, false, func(r *reader, g *swatch, n *node) { g.across = r.garmentLength(n) }},
	{"repeats", isWhole, `2`, false, func(r *reader, g *swatch, n *node) { g.Written.Repeats, _ = r.wholeNumber(n, 1, 1000) }},
	{"of", isText | isWhole, `"6 sts"`, false, readOf},
	{"hook", isText, `"main"`, false, readGaugeHook},
	{"state", isText, `"blocked"`, false, func(r *reader, g *swatch, n *node) {
		w, _ := r.oneOf(n, states)
		g.State = w.Text
	}},
}

func readGauges(r *reader, p *pattern.Pattern, n *node) {
	for _, g := range group(r, gaugeKeys, n, func(n *node) swatch {
		return swatch{Gauge: pattern.Gauge{Name: r.name(n), State: states[0]}, table: n, where: "[gauge." + n.name + "]"}
	}) {
		p.Gauges = append(p.Gauges, r.workedOut(g))
	}
}

// workedOut says what a gauge counts over what.
func (r *reader) workedOut(g swatch) pattern.Gauge {
	usual := length{num: r.p.Tape.Garment(measure.Int(10), measure.Centimetre)}
	over := usual
	if g.over != nil {
		over = *g.over
	}
	g.Over, g.RowsOver, g.Written.Over = over.num, over.num, over.words
	if g.rowsOver != nil {
		g.RowsOver = g.rowsOver.num
	}
	has := func(name string) bool { return g.table.entry(name) != nil }
	switch {
	case has("rounds") || has("across"):
		r.motif(&g)
	case has("repeats") || has("of"):
		if g.rowsOver == nil {
			g.RowsOver = usual.num
		}
		r.repeats(&g)
	case !has("stitches") && !has("rows"):
		r.missing(g.table, "stitches", "14", g.where)
	}
	return g.Gauge
}

// motif works out a gauge given as rounds across: from the middle out, that many rounds are half of it.
func (r *reader) motif(g *swatch) {
	r.needs(g, "rounds", `"1 to 3"`)
	r.needs(g, "across", `"10 cm"`)
	r.excludes(g, "rows", "rounds")
	if g.rounds == 0 || g.across == nil {
		return
	}
	g.Rows, g.RowsOver = measure.Int(int64(g.rounds)), g.across.num.Div(measure.Int(2))
	g.Over, g.Written.Across = g.across.num, g.across.words
}

// repeats works out a gauge given in repeats of a stitch pattern. Rows beside it are counted over the usual 10 cm.
func (r *reader) repeats(g *swatch) {
	r.needs(g, "repeats", `2`)
	r.needs(g, "of", `"6 sts"`)
	r.needs(g, "over", `"9 cm"`)
	r.excludes(g, "stitches", "repeats")
	g.Stitches = measure.Int(int64(g.Written.Repeats * g.Written.Of))
}

// needs reports a key that the others of a gauge ask for.
func (r *reader) needs(g *swatch, name, example string) {
	if g.table.entry(name) == nil {
		r.missing(g.table, name, example, g.where)
	}
}

// excludes reports a key that says again, in another way, what a gauge says already.
func (r *reader) excludes(g *swatch, name, said string) {
	if n := g.table.entry(name); n != nil {
		r.fs.Report(r.file, n.key, "two-gauges", g.where+" has both `"+name+"` and `"+said+"`", "keep one of them")
	}
}

func (r *reader) garmentLength(n *node) *length {
	num, unit, ok := r.quantity(n, `"10 cm"`, measure.Centimetre, measure.Millimetre, measure.Inch)
	if !ok {
		return nil
	}
	return &length{r.p.Tape.Garment(num, unit), n.words}
}

// readRounds reads how many rounds from the middle out were measured: "1 to 3" or 3.
func readRounds(r *reader, g *swatch, n *node) {
	if n.kind == isWhole {
		g.rounds, _ = r.wholeNumber(n, 1, 1000)
		g.Written.Rounds = "1 to " + strconv.Itoa(g.rounds)
		return
	}
	first, last, _ := strings.Cut(n.words, " to ")
	to, err := strconv.Atoi(strings.TrimSpace(last))
	if strings.TrimSpace(first) != "1" || err != nil || to < 1 || to > 1000 {
		r.fs.Report(r.file, n.text, "unread-quantity", "`"+n.words+"` does not say how many rounds from the middle out were measured", `write rounds = "1 to 3"`)
		return
	}
	g.rounds, g.Written.Rounds = to, n.words
}

// readOf reads how many stitches one repeat has: "6 sts" or 6.
func readOf(r *reader, g *swatch, n *node) {
	if n.kind == isWhole {
		g.Written.Of, _ = r.wholeNumber(n, 1, 10000)
		return
	}
	figure, noun, _ := strings.Cut(n.words, " ")
	of, err := strconv.Atoi(figure)
	switch {
	case err != nil || of < 1 || of > 10000:
		r.fs.Report(r.file, n.text, "unread-quantity", "`"+n.words+"` does not say how many stitches a repeat has", `write of = "6 sts"`)
	case noun != "sts" && noun != "st" && noun != "stitches" && noun != "stitch":
		r.fs.Report(r.file, n.text, "unit-unknown", "a repeat is counted in stitches, and `"+n.words+"` is not", `write of = "6 sts", and the rows with rows and rows_over`)
	default:
		g.Written.Of = of
	}
}

func readGaugeHook(r *reader, g *swatch, n *node) {
	g.Hook = n.words
	var known []string
	for _, h := range r.p.Hooks {
		if h.Name.Text == n.words {
			return
		}
		known = append(known, h.Name.Text)
	}
	if r.whole {
		unknownName(&r.fs, r.file, n.text, n.words, "hook", known)
	}
}
