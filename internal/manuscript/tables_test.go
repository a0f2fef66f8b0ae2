package manuscript

import (
	"slices"
	"testing"

	"github.com/BurntSushi/toml"

	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// A judge is testdata/published.toml.
type judge struct {
	Women, Men, Youth, Child, Baby, Head, Feet, Hands printed
	Surveyed                                          map[string]map[string]map[string][3]float64
	Ages                                              struct {
		Age         []int
		Girls, Boys []float64
	}
	Misprint []struct {
		Table, Size, Of, Wrong string
		Inch, Cm               [2]float64
	}
}

type printed struct {
	Sizes    []string
	Inch, Cm map[string][][2]float64
}

func readJudge(t *testing.T) (j judge) {
	t.Helper()
	if _, err := toml.Decode(readFile(t, "published.toml").Text, &j); err != nil {
		t.Fatal(err)
	}
	return j
}

func tableNamed(t *testing.T, name string) SizeTable {
	t.Helper()
	table, ok := Published().Find(name)
	if !ok {
		t.Fatalf("there is no table %s", name)
	}
	return table
}

func rowNamed(t *testing.T, table SizeTable, name string) TableRow {
	t.Helper()
	i := slices.IndexFunc(table.Rows, func(r TableRow) bool { return r.Name == name })
	if i < 0 {
		t.Fatalf("%s has no row %s", table.Name, name)
	}
	return table.Rows[i]
}

func cellNamed(t *testing.T, table, row, size string) TableCell {
	t.Helper()
	found := tableNamed(t, table)
	i := found.set().find(size)
	if i < 0 {
		t.Fatalf("%s has no size %s", table, size)
	}
	return rowNamed(t, found, row).Cells[i]
}

func TestPublishedCells(t *testing.T) {
	j := readJudge(t)
	cells := 0
	for name, p := range map[string]printed{"women": j.Women, "men": j.Men, "youth": j.Youth, "child": j.Child, "baby": j.Baby, "head": j.Head, "feet": j.Feet, "hands": j.Hands} {
		table := tableNamed(t, name)
		if table.Source == "" {
			t.Errorf("%s names no source", name)
		}
		if len(p.Inch) == 0 || len(p.Inch) != len(p.Cm) {
			t.Fatalf("%s has %d rows in inches and %d in centimetres", name, len(p.Inch), len(p.Cm))
		}
		for row, inches := range p.Inch {
			for i, size := range p.Sizes {
				c := cellNamed(t, name, row, size)
				got := [4]float64{c.LowInch.Float(), c.HighInch.Float(), c.LowCm.Float(), c.HighCm.Float()}
				want := [4]float64{inches[i][0], inches[i][1], p.Cm[row][i][0], p.Cm[row][i][1]}
				if got != want || c.Empty || c.Worked != measure.NoUnit {
					t.Errorf("%s %s in %s is %v, printed is %v", name, row, size, got, want)
				}
				cells += 4
			}
		}
	}
	if cells < 1000 {
		t.Errorf("only %d figures were compared", cells)
	}
}

func TestSurveyedCells(t *testing.T) {
	j := readJudge(t)
	for name, rows := range j.Surveyed {
		for row, sizes := range rows {
			for size, p := range sizes {
				c := cellNamed(t, name, row, size)
				if got, want := [2]float64{c.LowCm.Float(), c.HighCm.Float()}, [2]float64{p[0], p[2]}; got != want || c.Worked != measure.Inch {
					t.Errorf("%s %s of %s is %v, surveyed is %v", name, row, size, got, want)
				}
			}
		}
	}
	for i, age := range j.Ages.Age {
		c := cellNamed(t, "feet", "foot_length", "Age "+measure.Int(int64(age)).String())
		want := [2]float64{min(j.Ages.Girls[i], j.Ages.Boys[i]), max(j.Ages.Girls[i], j.Ages.Boys[i])}
		if got := [2]float64{c.LowCm.Float(), c.HighCm.Float()}; got != want {
			t.Errorf("feet at %d are %v, surveyed are %v", age, got, want)
		}
	}
}

// Every misprint is marked with a note and printed as it is, formulas take the cell that is not wrong, and nothing else is marked.
func TestMisprints(t *testing.T) {
	j := readJudge(t)
	for _, m := range j.Misprint {
		c := cellNamed(t, m.Table, m.Of, m.Size)
		if c.Misprint == "" || c.Metric != (m.Wrong == "inch") {
			t.Errorf("%s %s in %s: note %q, taken in centimetres: %v, wrong is %s", m.Table, m.Of, m.Size, c.Misprint, c.Metric, m.Wrong)
		}
		if c.LowCm.Float() != m.Cm[0] || c.HighInch.Float() != m.Inch[1] {
			t.Errorf("%s %s in %s is not printed as it is", m.Table, m.Of, m.Size)
		}
	}
	marked := 0
	for _, name := range Published().Names() {
		for _, row := range tableNamed(t, name).Rows {
			for _, c := range row.Cells {
				if c.Misprint != "" {
					marked++
				}
			}
		}
	}
	if marked != len(j.Misprint) {
		t.Errorf("%d cells are marked, %d are wrong", marked, len(j.Misprint))
	}
}

// A cell in two units that are further apart than either was rounded has to be marked.
func TestUnitsAgreeUnlessMarked(t *testing.T) {
	for _, name := range []string{"women", "men", "youth", "child", "baby"} {
		for _, row := range tableNamed(t, name).Rows {
			for i, c := range row.Cells {
				off := func(inch, cm measure.Num) bool {
					return measure.Ratio(3, 4).Less(inch.Mul(measure.InternationalInch).Sub(cm).Abs())
				}
				if (off(c.LowInch, c.LowCm) || off(c.HighInch, c.HighCm)) && c.Misprint == "" {
					t.Errorf("%s %s: cell %d does not convert and is not marked", name, row.Name, i)
				}
			}
		}
	}
}

func TestBodyValues(t *testing.T) {
	cases := []struct {
		table, take, of, size string
		unit                  measure.Unit
		want                  measure.Num
	}{
		{"women", "", "bust", "M", measure.Centimetre, measure.Ratio(38*254, 100)}, // the upper end of a girth, from the inches
		{"women", "lower", "bust", "M", measure.Centimetre, measure.Ratio(36*254, 100)},
		{"women", "middle", "bust", "M", measure.Inch, measure.Int(37)},
		{"women", "", "bust", "5X", measure.Centimetre, measure.Ratio(62*254, 100)},  // its cm cell is misprinted
		{"women", "", "upper_arm", "5X", measure.Centimetre, measure.Ratio(99, 2)},   // its inch cell is misprinted
		{"women", "", "cross_back", "M", measure.Inch, measure.Ratio(63, 4)},         // the middle of a width
		{"women", "upper", "armhole_depth", "M", measure.Inch, measure.Ratio(15, 2)}, // unless it is said otherwise
		{"men", "", "chest", "S", measure.Inch, measure.Int(36)},                     // men have a chest
		{"head", "", "head", "Adult woman", measure.Centimetre, measure.Ratio(23*254, 100)},
		{"hands", "", "wrist", "Women", measure.Centimetre, measure.Ratio(168, 10)}, // there are no inches
	}
	for _, c := range cases {
		table := tableNamed(t, c.table)
		var s pattern.Sizes
		s.Take = c.take
		table.choose(&s, []int{table.set().find(c.size)}, measure.Tape{Unit: c.unit, Inch: measure.GarmentInch})
		i := slices.IndexFunc(s.Body, func(b pattern.BodyMeasurement) bool { return b.Name == c.of })
		if i < 0 || s.Body[i].Value[0].Cmp(c.want) != 0 {
			t.Errorf("%s %s in %s is not %s %s", c.table, c.of, c.size, c.want, c.unit)
		}
	}
}

func TestWearers(t *testing.T) {
	choose := func(name string, from, to string) pattern.Sizes {
		table := tableNamed(t, name)
		set := table.set()
		var all []int
		for i := set.find(from); i <= set.find(to); i++ {
			all = append(all, i)
		}
		var s pattern.Sizes
		table.choose(&s, all, measure.Tape{})
		return s
	}
	for _, c := range []struct {
		table, from, to string
		want            pattern.Wearer
	}{
		{"women", "XS", "5X", pattern.Adult}, {"child", "2", "10", pattern.Child}, {"baby", "3 months", "24 months", pattern.Baby},
		{"head", "Baby", "Adult man", pattern.Baby}, {"head", "Child", "Adult man", pattern.Child}, {"head", "Adult woman", "Adult man", pattern.Adult},
	} {
		if got := choose(c.table, c.from, c.to).Wearer; got != c.want {
			t.Errorf("%s, %s to %s is for %s, not %s", c.table, c.from, c.to, got, c.want)
		}
	}
}

func TestOwnTables(t *testing.T) {
	own, fs := ReadSizes(source.NewFile("content/sizes/head.toml", "source = \"us\"\nsizes = [\"S\"]\n[body.head]\ncm = [\"50 to 52\"]\n"))
	must(t, fs)
	more, fs := ReadSizes(source.NewFile("content/sizes/dolls.toml", "source = \"us\"\nsizes = [\"Small\"]\n[body.chest]\ninch = [9]\n"))
	must(t, fs)
	tables := Published().With(own, more)
	if names := tables.Names(); len(names) != len(publishedNames)+1 || names[len(names)-1] != "dolls" {
		t.Errorf("the tables are %v", names)
	}
	head, _ := tables.Find("head")
	if len(head.Sizes) != 1 || len(tableNamed(t, "head").Sizes) != 7 {
		t.Error("a table of one's own replaces the published one where it is used, and only there")
	}
	c := head.Rows[0].Cells[0]
	if c.Worked != measure.Inch || c.LowInch.Cmp(measure.Ratio(79, 4)) != 0 || c.HighInch.Cmp(measure.Ratio(41, 2)) != 0 {
		t.Errorf("50 to 52 cm are printed as %s to %s inches", c.LowInch, c.HighInch)
	}
}
