package cli

import (
	"fmt"
	"slices"
	"strings"

	"foundrow/internal/formula"
	"foundrow/internal/grade"
	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

// A sheet prints a grade for a terminal.
type sheet struct {
	title   string
	tape    measure.Tape
	written *pattern.Pattern
	own     bool // worked for one body
	colour  bool
}

// A row is one line of a sheet: what it is, then a cell for each size. Below it may stand a note across all columns.
type row struct {
	head  string
	cells []string
	note  string
	faint bool // it explains the row above
}

// print prints everything about a grade.
func (s sheet) print(g *grade.Grade) string {
	var b strings.Builder
	b.WriteString(s.heading(g) + "\n")
	if len(g.Sizes) == 1 {
		s.single(&b, g)
		return b.String()
	}
	for _, section := range s.sections(g) {
		s.section(&b, section, g.Sizes)
	}
	if pinned(g) {
		b.WriteString("\n* your own choice, pinned\n")
	}
	return b.String()
}

func (s sheet) heading(g *grade.Grade) string {
	words := []string{s.title}
	switch {
	case s.own && g.Sizes[0] != "":
		words = append(words, "for one body, otherwise size "+g.Sizes[0])
	case s.own:
		words = append(words, "for one body")
	case len(g.Sizes) == 1 && g.Sizes[0] != "":
		words = append(words, "size "+g.Sizes[0])
	case len(g.Sizes) > 1:
		sizes := fmt.Sprint(len(g.Sizes)) + " sizes"
		if table := s.written.Sizes.Table.Text; table != "" {
			sizes += " of the table " + table
		}
		words = append(words, sizes)
		if i := s.written.Sizes.Sample; i >= 0 && i < len(g.Sizes) {
			words = append(words, "sample "+g.Sizes[i])
		}
	}
	return strings.Join(words, " · ")
}

// A section is a headed part of a sheet.
type section struct {
	head string
	rows []row
}

// sections are the parts of a sheet in the order a grader works: from the body to the thing made.
func (s sheet) sections(g *grade.Grade) []section {
	parts := []section{{head: "body"}, {head: "wanted"}, {head: "counts"}, {head: "needed"}, {head: "made"}}
	for i := range g.Values {
		v := &g.Values[i]
		at := &parts[int(v.Role)]
		at.rows = append(at.rows, s.rows(v, g)...)
		for _, n := range g.Yarn {
			if v.Role == grade.Amount && v.Name == n.Yarn+".weight" {
				at.rows = append(at.rows, s.used(n)...)
			}
		}
	}
	for _, f := range g.Finished {
		parts[4].rows = append(parts[4].rows, s.finished(f)...)
	}
	return slices.DeleteFunc(parts, func(p section) bool { return p.rows == nil })
}

// rows are those of one value: its figures, what they were before they were rounded, and the formula.
func (s sheet) rows(v *grade.Value, g *grade.Grade) []row {
	figures := row{head: joinWords(v.Name, s.unit(v.Kind)), cells: make([]string, len(v.BySize))}
	scale := measure.Int(1)
	if v.Role == grade.Amount && v.Kind == formula.Length {
		var unit string
		unit, scale = s.run()
		figures.head = joinWords(v.Name, unit)
	}
	from := row{head: "  from", cells: make([]string, len(v.BySize)), faint: true}
	rounded := false
	for i, n := range v.BySize {
		figures.cells[i] = number(n.Num.Div(scale), v.Kind)
		if v.Pinned != nil && v.Pinned[i] {
			figures.cells[i] += "*"
		}
		if n.Story.Way != formula.NotRounded && n.Story.From.Cmp(n.Num) != 0 {
			rounded = true
			from.cells[i] = story(n)
		}
	}
	if v.Role == grade.Body {
		if s.own {
			return []row{figures}
		}
		return s.printed(figures, v, g)
	}
	out := []row{figures}
	if rounded {
		out = append(out, from)
	}
	for _, f := range s.formulas(v) {
		out = append(out, row{note: "  " + f, faint: true})
	}
	return out
}

// printed adds to a body measurement the range that its table prints, of which the formulas take one end.
func (s sheet) printed(figures row, v *grade.Value, g *grade.Grade) []row {
	for _, b := range s.written.Sizes.Body {
		if b.Name != v.Name || len(b.Cells) != len(s.written.Sizes.Names) {
			continue
		}
		printed := row{head: "  printed", cells: make([]string, len(g.Sizes)), faint: true}
		ranged := false
		for i, size := range g.Sizes {
			at := slices.Index(s.written.Sizes.Names, size)
			if at < 0 {
				return []row{figures}
			}
			c := b.Cells[at]
			if c.HighCm.Sign() == 0 { // the table has no figure
				printed.cells[i] = "-"
				continue
			}
			low, high := c.LowCm, c.HighCm
			if s.tape.Unit == measure.Inch {
				low, high = c.LowInch, c.HighInch
			}
			printed.cells[i] = low.Decimal(2)
			if low.Cmp(high) != 0 {
				ranged = true
				printed.cells[i] += "–" + high.Decimal(2)
			}
		}
		if ranged {
			return []row{figures, printed}
		}
	}
	return []row{figures}
}

// used are the rows below what is bought of a yarn: what is worked up of it, and how that was found.
func (s sheet) used(n grade.YarnNeed) []row {
	used := row{head: "  used", cells: make([]string, len(n.Used)), faint: true}
	for i, g := range n.Used {
		used.cells[i] = number(g, formula.Mass)
	}
	how := "by the swatch"
	if n.FromSample {
		how = "by the weighed sample"
	}
	how += ", " + n.Margin.Mul(measure.Int(100)).Decimal(1) + "% to spare"
	if len(n.Reckoned) > 0 {
		terms := make([]string, len(n.Reckoned))
		for i, name := range n.Reckoned {
			terms[i] = stitch.Translate(name, stitch.US, s.written.Terms)
		}
		how += "; the share of " + source.List(terms, "and") + " was never measured"
	}
	return []row{used, {note: "  " + how, faint: true}}
}

// finished are the rows of what is made: the measurement, the body it goes round, and the ease that is left.
func (s sheet) finished(f grade.Finished) []row {
	line := func(head string, nums []measure.Num, plus, faint bool) row {
		r := row{head: head, cells: make([]string, len(nums)), faint: faint}
		for i, n := range nums {
			r.cells[i] = number(n, formula.Length)
			if plus && n.Sign() > 0 {
				r.cells[i] = "+" + r.cells[i]
			}
		}
		return r
	}
	rows := []row{line(joinWords(f.Name, s.unit(formula.Length)), f.Made, false, false)}
	if f.Ease != nil {
		rows = append(rows, line("  ease", f.Ease, true, true))
	}
	return rows
}

// formulas are those a value is worked by, with the sizes each is for.
func (s sheet) formulas(v *grade.Value) []string {
	var parts []pattern.Part
	p := s.written
	switch v.Role {
	case grade.Count:
		parts = definition(p.Counts, v.Name)
	case grade.Wish:
		for _, m := range p.Measures {
			if m.Name.Text != v.Name {
				continue
			}
			if parts = m.Parts; parts == nil && m.Body.Text != "" {
				words := m.Body.Text
				for _, e := range m.Ease {
					words += ", ease " + e.Formula.Text + s.forSizes(e.Sizes)
				}
				return []string{words}
			}
		}
	}
	var out []string
	for _, part := range parts {
		if part.Formula != nil && !bare(part.Formula.Text) {
			out = append(out, part.Formula.Text+s.forSizes(part.Sizes))
		}
	}
	return out
}

func definition(all []pattern.Definition, name string) []pattern.Part {
	for _, d := range all {
		if d.Name.Text == name {
			return d.Parts
		}
	}
	return nil
}

// forSizes names the sizes a formula is for, if it is not for all.
func (s sheet) forSizes(sizes []int) string {
	if sizes == nil {
		return ""
	}
	all := s.written.Sizes.Names
	var names []string
	for _, i := range sizes {
		if i < len(all) {
			names = append(names, all[i])
		}
	}
	return " (" + source.SizeNames(names, all) + ")"
}

// bare reports whether a formula says no more than the figures above it: a number and a unit.
func bare(text string) bool {
	return !strings.ContainsAny(text, "*/,") && len(strings.Fields(text)) <= 2
}

func (s sheet) unit(k formula.Kind) string {
	switch k {
	case formula.Length:
		if s.tape.Unit == measure.Inch {
			return "inch"
		}
		return "cm"
	case formula.Mass:
		return "g"
	case formula.Stitches:
		return "sts"
	case formula.Rows:
		return "rows"
	}
	return ""
}

// run is the unit that a length of yarn is given in, with how many of the tape's units it has.
func (s sheet) run() (unit string, scale measure.Num) {
	if s.tape.Unit == measure.Inch {
		return "yd", measure.Int(36)
	}
	return "m", measure.Int(100)
}

// number prints a value in the unit that its row names. Counts are exact; lengths and masses are shown to the hundredth.
func number(n measure.Num, k formula.Kind) string {
	switch {
	case n.IsLost() || k == formula.Unknown:
		return "?"
	case k == formula.Length || k == formula.Mass:
		return n.Decimal(2)
	}
	return n.String()
}

// story prints what a count was before it was made whole: a fraction of a stitch that one can picture as a fraction, any other
// to the hundredth.
func story(v formula.Value) string {
	switch from := v.Story.From; {
	case v.Approx:
		return "≈" + from.Decimal(2)
	case from.Under() <= 8:
		return from.String()
	default:
		return from.Decimal(2)
	}
}

func joinWords(words ...string) string {
	return strings.Join(slices.DeleteFunc(words, func(w string) bool { return w == "" }), " ")
}

func pinned(g *grade.Grade) bool {
	return slices.ContainsFunc(g.Values, func(v grade.Value) bool { return slices.Contains(v.Pinned, true) })
}
