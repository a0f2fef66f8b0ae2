package manuscript

import (
	"embed"
	"path"
	"slices"
	"strings"
	"sync"

	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// A SizeTable is a published table of body measurements, or a studio's own. Its file says
//
//	source = "where it was published, with the address"
//	credit = "the line its publisher asks to be printed"
//	wearer = "adult"                    # or a list with one for each size
//	sizes  = ["S", "M", "L"]
//	long   = ["Small", "Medium", "Large"]   # the published names, where they are longer
//
//	[body.chest]                        # the name formulas use
//	label  = "chest"                    # as it is printed; the name in words if left out
//	how    = "round the fullest part"
//	girth  = true                       # of a range formulas take the upper end; of other measurements the middle
//	inch   = ["32 to 34", "36 to 38", "40 to 42"]   # one cell for each size: a number, a range, or "-" for none
//	cm     = ["81 to 86", "91.5 to 96.5", "101.5 to 106.5"]
//	mark   = "confirmed by 2 pages"     # how well the row is attested
//
//	[[misprint]]                        # a cell that the publisher got wrong: printed as it is, with the note
//	of     = "chest"
//	size   = "L"
//	cell   = "cm"                       # cm, inch, or unknown when it cannot be told which; formulas take the other one
//	note   = "42 inches are 106.5 cm"
//
// Formulas use the inches at 2.54 cm, and the centimetres where the table has no inches or the inch cell is the wrong one.
type SizeTable struct {
	Name   string // what patterns call it: the name of its file
	Source string
	Credit string
	Sizes  []TableSize
	Rows   []TableRow
}

// A TableSize is a column of a table.
type TableSize struct {
	Name, Long string // Long is the published name; the same as Name where there is no longer one
	Wearer     pattern.Wearer
}

// A TableRow is one measurement in all sizes of a table.
type TableRow struct {
	Name, Label, How, Mark string
	Girth                  bool
	Cells                  []TableCell
}

// A TableCell is what a table prints for one size in its two units.
type TableCell struct {
	pattern.BodyCell
	Empty  bool
	Metric bool // formulas take the centimetres: there are no inches, or they are misprinted
}

// Tables are the size tables a pattern may name.
type Tables struct{ list []SizeTable }

// Names returns the names of the tables, the published ones first.
func (t Tables) Names() []string {
	names := make([]string, len(t.list))
	for i := range t.list {
		names[i] = t.list[i].Name
	}
	return names
}

// Find returns the table of a name.
func (t Tables) Find(name string) (SizeTable, bool) {
	for i := range t.list {
		if t.list[i].Name == name {
			return t.list[i], true
		}
	}
	return SizeTable{}, false
}

// With returns the tables with a studio's own among them, each in place of a published one of the same name.
func (t Tables) With(own ...SizeTable) Tables {
	list := slices.Clone(t.list)
	for _, o := range own {
		if i := slices.IndexFunc(list, func(s SizeTable) bool { return s.Name == o.Name }); i >= 0 {
			list[i] = o
		} else {
			list = append(list, o)
		}
	}
	return Tables{list}
}

//go:embed tables/*.toml
var tableFiles embed.FS

// publishedNames are in the order they are listed to designers.
var publishedNames = [...]string{"women", "men", "youth", "child", "baby", "head", "feet", "hands"}

// Published returns the built-in tables: women, men, youth, child, baby, head, feet and hands, each with its source in its file.
func Published() Tables { return published() }

var published = sync.OnceValue(func() Tables {
	var t Tables
	for _, name := range publishedNames {
		name = path.Join("tables", name+".toml")
		data, err := tableFiles.ReadFile(name)
		if err != nil {
			panic(err) // it is part of the program
		}
		f, _ := CheckText(name, data)
		table, fs := ReadSizes(f)
		if fs.Errors() {
			panic(fs[0].String())
		}
		t.list = append(t.list, table)
	}
	return t
})

// set returns the sizes of a table as words can name them.
func (t *SizeTable) set() sizeSet {
	set := sizeSet{what: "the table `" + t.Name + "`"}
	for _, s := range t.Sizes {
		set.names, set.long = append(set.names, s.Name), append(set.long, s.Long)
	}
	return set
}

// choose copies the chosen sizes of a table into a pattern.
func (t *SizeTable) choose(into *pattern.Sizes, chosen []int, tape measure.Tape) {
	into.Credit = t.Credit
	longer := false
	for _, i := range chosen {
		s := t.Sizes[i]
		into.Names, into.Long = append(into.Names, s.Name), append(into.Long, s.Long)
		longer = longer || s.Long != s.Name
		into.Wearer = youngest(into.Wearer, s.Wearer)
	}
	if !longer {
		into.Long = nil
	}
	for i := range t.Rows {
		if m, any := t.Rows[i].choose(chosen, into.Take, tape); any {
			into.Body = append(into.Body, m)
		}
	}
}

// choose returns a row in the chosen sizes, and whether any of them has a cell.
func (row *TableRow) choose(chosen []int, take string, tape measure.Tape) (pattern.BodyMeasurement, bool) {
	m := pattern.BodyMeasurement{Name: row.Name, Label: row.Label, How: row.How, Girth: row.Girth, Mark: row.Mark,
		Value: make([]measure.Num, 0, len(chosen)), Cells: make([]pattern.BodyCell, 0, len(chosen))}
	any := false
	for _, i := range chosen {
		c := row.Cells[i]
		value := measure.Lost
		if !c.Empty {
			any = true
			low, high, unit := c.LowInch, c.HighInch, measure.Inch
			if c.Metric {
				low, high, unit = c.LowCm, c.HighCm, measure.Centimetre
			}
			value = tape.Body(bodyValue(low, high, row.Girth, take), unit)
		}
		m.Value, m.Cells = append(m.Value, value), append(m.Cells, c.BodyCell)
	}
	return m, any
}

// youngest returns the wearer for whom more care is asked, so that a pattern for a family has the cautions for its baby.
func youngest(a, b pattern.Wearer) pattern.Wearer {
	for _, w := range [...]pattern.Wearer{pattern.Baby, pattern.Child, pattern.Pet, pattern.Adult, pattern.None} {
		if a == w || b == w {
			return w
		}
	}
	return b
}

// tableName is the name of the table a file holds.
func tableName(f *source.File) string { return strings.TrimSuffix(path.Base(f.Name), ".toml") }
