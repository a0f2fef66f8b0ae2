package proof

import (
	"testing"

	"foundrow/internal/measure"
	"foundrow/internal/source"
)

var printed = source.Findings{
	{
		Rule: "count-differs", Place: source.Place{File: "a.md", Line: 3, Column: 8, Width: 8, Text: "Row 3: (64 sts)"},
		Sizes: []string{"L"}, Message: "in L: row 3 leaves 63 sts, but the pattern says 64", Fix: "write {front - 2}",
	},
	{Rule: "no-pattern", Severity: source.Query, Place: source.Place{File: "b"}, Message: "this folder has no pattern.md"},
}

func TestPrint(t *testing.T) {
	for _, c := range []struct {
		hand Hand
		want string
	}{
		{Hand{}, `a.md:3:8: error: in L: row 3 leaves 63 sts, but the pattern says 64 [count-differs]
  Row 3: (64 sts)
         ^^^^^^^^
  fix: write {front - 2}
b: query: this folder has no pattern.md [no-pattern]
`},
		{Hand{Colour: true}, "\x1b[1ma.md:3:8:\x1b[0m \x1b[1;31merror:\x1b[0m in L: row 3 leaves 63 sts, but the pattern says 64\x1b[2m [count-differs]\x1b[0m\n" +
			"  Row 3: (64 sts)\n         ^^^^^^^^\n  fix: write {front - 2}\n" +
			"\x1b[1mb:\x1b[0m \x1b[1;33mquery:\x1b[0m this folder has no pattern.md\x1b[2m [no-pattern]\x1b[0m\n"},
	} {
		if got := c.hand.Print(printed); got != c.want {
			t.Errorf("%+v prints\n%q\nwant\n%q", c.hand, got, c.want)
		}
	}
}

func TestCount(t *testing.T) {
	one := source.Findings{{}}
	query := source.Finding{Severity: source.Query}
	for _, c := range []struct {
		findings source.Findings
		want     string
	}{
		{nil, "no findings"},
		{one, "1 error"},
		{source.Findings{query, query}, "2 queries"},
		{source.Findings{query, {}, {}}, "2 errors and 1 query"},
	} {
		if got := Count(c.findings); got != c.want {
			t.Errorf("%d findings are %q, want %q", len(c.findings), got, c.want)
		}
	}
}

// A number in JSON is a decimal where that is exact, so that whoever reads it need not know of fractions if she can do without.
func TestExact(t *testing.T) {
	for _, c := range []struct {
		over, under int64
		want        string
	}{
		{98, 1, "98"}, {-3, 1, "-3"}, {109, 2, "54.5"}, {-1, 4, "-0.25"}, {64, 3, "21 1/3"}, {1, 1024, "1/1024"}, {9144, 10000, "0.9144"}, {1, 1000000000, "0.000000001"},
	} {
		if got := Exact(measure.Ratio(c.over, c.under)); got != c.want {
			t.Errorf("%d/%d is printed as %q, want %q", c.over, c.under, got, c.want)
		}
	}
}

// Findings are given to the pattern in whose folder they were made, wherever the command was run from.
func TestNew(t *testing.T) {
	at := func(file string) source.Finding { return source.Finding{Place: source.Place{File: file}} }
	p := New([]Pattern{{Slug: "hat"}, {Slug: "bag"}}, source.Findings{
		at("content/patterns/hat/pattern.md"), at("../content/patterns/bag/bag.jpg"), at("content/pages/hat.md"), at("content/studio.toml"), at("content/patterns/hats/pattern.md"),
	})
	if len(p.Patterns[0].Findings) != 1 || len(p.Patterns[1].Findings) != 1 || len(p.Findings) != 3 {
		t.Errorf("the hat has %d, the bag %d, others %d", len(p.Patterns[0].Findings), len(p.Patterns[1].Findings), len(p.Findings))
	}
}
