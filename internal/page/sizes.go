package page

import (
	"slices"

	"foundrow/internal/grade"
	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// Sizes is what a page says about its sizes: which there are, in which order figures stand for them, whom they fit and what
// comes out. Every slice by size is in the order of Names.
type Sizes struct {
	Names  []string // empty for a pattern of one size
	Key    string   // the names as a list: which place in a list is which size; empty for a pattern of one size
	Range  string   // "XS to 5X", "One size"
	Hands  []string // by size, how it was tried: "sample", "tested", "worked out"
	Tried  string   // the same as a sentence
	Groups []Group  // to fit, finished, ease: three groups that are never merged
	Notes  []string // how bodies are measured; misprints of the table that the page repeats
}

// A Group is a set of columns under one heading.
type Group struct {
	Label   string
	Columns []Column
}

// A Column is one measurement in every size, or in the one there is.
type Column struct {
	Label string
	Cells []Cell
}

// A Cell is a measurement in the tape's unit and in the other: "76–81 cm", "30–32 in".
type Cell struct{ First, Second string }

func sizes(g *grade.Grade) Sizes {
	p := g.Pattern
	s := Sizes{Range: sizeRange(p.Sizes.Names)}
	if manySizes(p) {
		s.Names = p.Sizes.Names
		s.Key = List(s.Names)
	}
	s.Hands, s.Tried = hands(p)
	toFit, notes := bodies(g)
	s.Notes = notes
	var finished, ease []Column
	for _, f := range g.Finished {
		if !slices.ContainsFunc(f.Made, func(n measure.Num) bool { return !n.IsLost() }) {
			continue // the query asks how the counts make it
		}
		label := capital(f.Label)
		if label == "" {
			label = Name(f.Name)
		}
		finished = append(finished, Column{label, cells(p.Tape, f.Made, p.Tape.InCentimetres, p.Tape.InInches, "")})
		if f.Ease != nil {
			ease = append(ease, Column{label, cells(p.Tape, f.Ease, p.Tape.InCentimetres, p.Tape.InInches, "+")})
		}
	}
	for _, group := range []Group{{"To fit body", toFit}, {"Finished", finished}, {"Ease", ease}} {
		if len(group.Columns) > 0 {
			s.Groups = append(s.Groups, group)
		}
	}
	return s
}

func manySizes(p *pattern.Pattern) bool { return len(p.Sizes.Names) > 1 }

func sizeRange(names []string) string {
	switch {
	case len(names) > 1:
		return names[0] + " to " + names[len(names)-1]
	case len(names) == 1 && names[0] != "":
		return names[0]
	}
	return "One size"
}

// cells words a measurement in each size. Each unit is worked from the exact value, never from the printed figure of the other.
func cells(tape measure.Tape, bySize []measure.Num, inCm, inInches func(measure.Num) measure.Num, plus string) []Cell {
	out := make([]Cell, len(bySize))
	for i, n := range bySize {
		if n.IsLost() {
			out[i] = Cell{unknown, ""}
			continue
		}
		cm, inches := minus(measure.Centimetres(inCm(n))), minus(measure.Inches(inInches(n)))
		out[i] = ordered(tape, signed(plus, n, cm)+" cm", signed(plus, n, inches)+" in")
	}
	return out
}

// signed puts a plus before what is more than nothing, where differences are printed.
func signed(plus string, n measure.Num, figure string) string {
	if n.Sign() > 0 && figure != "0" {
		return plus + figure
	}
	return figure
}

func ordered(tape measure.Tape, cm, inches string) Cell {
	if tape.Unit == measure.Inch {
		return Cell{inches, cm}
	}
	return Cell{cm, inches}
}

// bodies words the measurements of the bodies that the sizes are for: those the pattern's own measurements are compared with,
// or the first of the table when none is. They are the table's cells, or the pattern's own figures.
func bodies(g *grade.Grade) (columns []Column, notes []string) {
	p := g.Pattern
	var wanted []string
	for _, m := range p.Measures {
		if name := m.Body.Text; name != "" && !slices.Contains(wanted, name) {
			wanted = append(wanted, name)
		}
	}
	if len(wanted) == 0 && len(p.Sizes.Body) > 0 {
		wanted = append(wanted, p.Sizes.Body[0].Name)
	}
	for _, name := range wanted {
		if own := ownBody(g, name); own != nil {
			columns = append(columns, Column{capital(own.Label), cells(p.Tape, nums(own.BySize), p.Tape.BodyInCentimetres, p.Tape.BodyInInches, "")})
			continue
		}
		i := slices.IndexFunc(p.Sizes.Body, func(b pattern.BodyMeasurement) bool { return b.Name == name })
		if i < 0 {
			continue // the finding is where the name was written
		}
		b := p.Sizes.Body[i]
		label := capital(b.Label)
		if label == "" {
			label = Name(b.Name)
		}
		columns = append(columns, Column{label, published(p.Tape, b.Cells)})
		if b.How != "" {
			notes = append(notes, label+": "+b.How+".")
		}
		if unit := workedUnit(b.Cells); unit != "" {
			notes = append(notes, label+": the table has one unit; "+unit+" are worked from it at 2.54 cm to the inch.")
		}
		notes = append(notes, misprints(p, label, b.Cells)...)
	}
	return columns, notes
}

// ownBody is a body measurement that the pattern states itself.
func ownBody(g *grade.Grade, name string) *grade.Value {
	stated := slices.ContainsFunc(g.Pattern.Body, func(d pattern.Definition) bool { return d.Name.Text == name })
	if !stated {
		return nil
	}
	i := slices.IndexFunc(g.Values, func(v grade.Value) bool { return v.Role == grade.Body && v.Name == name })
	if i < 0 {
		return nil
	}
	v := g.Values[i]
	if v.Label == "" {
		v.Label = Name(v.Name)
	}
	return &v
}

// published words the cells of a table as they are printed there, both units, never converted.
func published(tape measure.Tape, bySize []pattern.BodyCell) []Cell {
	out := make([]Cell, len(bySize))
	for i, c := range bySize {
		var cm, inches string
		if c.HighCm.Sign() > 0 {
			cm = span(c.LowCm.Decimal(2), c.HighCm.Decimal(2)) + " cm"
		}
		if c.HighInch.Sign() > 0 {
			inches = span(quarters(c.LowInch), quarters(c.HighInch)) + " in"
		}
		if out[i] = ordered(tape, cm, inches); out[i].First == "" {
			out[i].First, out[i].Second = out[i].Second, ""
		}
		if out[i].First == "" {
			out[i].First = "–" // the table leaves the cell empty
		}
	}
	return out
}

// workedUnit names the unit that a table does not print, where there is one.
func workedUnit(bySize []pattern.BodyCell) string {
	for _, c := range bySize {
		switch c.Worked {
		case measure.Centimetre:
			return "centimetres"
		case measure.Inch:
			return "inches"
		}
	}
	return ""
}

func span(low, high string) string {
	if low == high {
		return low
	}
	return low + "–" + high
}

// quarters prints published inches: as a tape does where they are on its grid, otherwise to the digit.
func quarters(n measure.Num) string {
	if n.Mul(measure.Int(4)).IsWhole() {
		return measure.Inches(n)
	}
	return n.Decimal(3)
}

func misprints(p *pattern.Pattern, label string, bySize []pattern.BodyCell) []string {
	var notes []string
	for i, c := range bySize {
		if c.Misprint != "" && i < len(p.Sizes.Names) {
			notes = append(notes, label+" in "+p.Sizes.Names[i]+" is printed as the table has it: "+c.Misprint+".")
		}
	}
	return notes
}

// hands says which sizes hands have made and which are arithmetic alone.
func hands(p *pattern.Pattern) (bySize []string, sentence string) {
	n := max(1, len(p.Sizes.Names))
	bySize = make([]string, n)
	var tested, worked []int
	for _, t := range p.Tested {
		for _, s := range t.Sizes {
			if s < n && s != p.Sizes.Sample && bySize[s] == "" {
				bySize[s] = "tested"
				tested = append(tested, s)
			}
		}
	}
	for s := range bySize {
		switch {
		case s == p.Sizes.Sample:
			bySize[s] = "sample"
		case bySize[s] == "":
			bySize[s] = "worked out"
			worked = append(worked, s)
		}
	}
	if !manySizes(p) {
		return bySize, ""
	}
	names := p.Sizes.Names
	var said []string
	if s := p.Sizes.Sample; s >= 0 && s < n {
		said = append(said, "The designer made "+names[s])
	}
	if len(tested) > 0 {
		said = append(said, "testers made "+runs(names, tested))
	}
	switch {
	case len(said) == 0:
		return bySize, "Every size is worked out by arithmetic; it is not said which were made by hand."
	case len(worked) == 0:
		return bySize, capital(source.List(said, "and")) + "."
	}
	return bySize, capital(source.List(said, "and")) + "; " + runs(names, worked) + plural(len(worked), " is", " are") + " worked out by arithmetic and not made by hand."
}

func plural(n int, forOne, forMany string) string {
	if n == 1 {
		return forOne
	}
	return forMany
}
