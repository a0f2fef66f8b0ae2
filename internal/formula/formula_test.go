package formula

import (
	"slices"
	"strings"
	"testing"

	"foundrow/internal/measure"
	"foundrow/internal/source"
)

func TestReserved(t *testing.T) {
	if !slices.IsSorted(Reserved) {
		t.Error("the words are not in order")
	}
	for _, w := range Reserved {
		if !IsReserved(w) {
			t.Errorf("%s is not found", w)
		}
		if f, findings := Parse(source.NewFile("word", w), 0, w); len(findings) == 0 && len(f.Names()) > 0 {
			t.Errorf("%s reads as a name", w)
		}
	}
	for _, w := range []string{"length", "mass", "number", "in_all", "chest", "Whole"} {
		if f, findings := Parse(source.NewFile("word", w), 0, w); IsReserved(w) || len(findings) > 0 || len(f.Names()) != 1 {
			t.Errorf("%s is no name", w)
		}
	}
}

func TestEase(t *testing.T) {
	for _, c := range []struct {
		written, printed string
		kind             Kind
		num              measure.Num
	}{
		{"10 cm", "10 cm", Length, measure.Int(10)},
		{"-5 cm", "-5 cm", Length, measure.Int(-5)},
		{"+2 inch", "2 inch", Length, measure.Int(5)},
		{"-10%", "-10%", Number, measure.Ratio(-1, 10)},
		{"12.5 %", "12.5%", Number, measure.Ratio(1, 8)},
		{"5 (7, 9) cm", "5 (7, 9) cm", Length, measure.Int(7)},
		{"-5 (-7, -9)%", "-5 (-7, -9)%", Number, measure.Ratio(-7, 100)},
		{"5% of chest", "5% of chest", Length, measure.Ratio(52, 10)},
	} {
		g := readGiven(t)
		f, findings := ParseEase(source.NewFile("ease", c.written), 0, c.written)
		checked, more := f.Check(&g.scope)
		v, _ := checked.Work(&g.col)
		if findings = append(findings, more...); len(findings) > 0 || v.Kind != c.kind || v.Num != c.num || f.String() != c.printed {
			t.Errorf("%s is %v %v and prints as %s: %v", c.written, v.Num, v.Kind, f, findings)
		}
		if again, findings := ParseEase(nil, 0, f.String()); len(findings) > 0 || again.String() != f.String() {
			t.Errorf("%s prints as %s, which reads as %s: %v", c.written, f, again, findings)
		}
	}
	for _, bare := range []string{"20", "-5", "0.1", "5 (7, 9)"} {
		f := source.NewFile("ease", bare)
		if _, findings := ParseEase(f, 0, bare); len(findings) != 1 || !strings.HasPrefix(findings[0].Message, bare+" what?") {
			t.Errorf("an ease of %s is neither a length nor a share, but %v", bare, findings)
		}
	}
	if _, findings := Parse(nil, 0, "-10%"); len(findings) != 1 {
		t.Errorf("a percentage alone is no formula, but %v", findings)
	}
}

// TestPlaces: what is found in a formula is told at its place in the file, in characters.
func TestPlaces(t *testing.T) {
	const line = `länge = "chest + 4"`
	file := source.NewFile("p.md", "first line\n"+line+"\n")
	text := "chest + 4"
	f, _ := Parse(file, strings.Index(file.Text, text), text)
	_, findings := f.Check(&Scope{Name: func(Name) (int, Kind) { return 0, Length }})
	if len(findings) != 1 {
		t.Fatal(findings)
	}
	if p := findings[0].Place; p.Line != 2 || p.Column != 18 || p.Width != 1 || p.Text != line {
		t.Errorf("the 4 is told at %+v", p)
	}
	if n := f.Names(); len(n) != 1 || file.Slice(n[0].Span) != "chest" {
		t.Errorf("the names are %v", n)
	}
}

// TestUnread: a formula that could not be read still names what it may use, prints as written, and works out as unknown.
func TestUnread(t *testing.T) {
	const text = "chest + (hem.rows * rib_rows"
	f, findings := Parse(source.NewFile("p", text), 0, text)
	if len(findings) != 1 || f.IsRead() || f.String() != text {
		t.Fatalf("%v, printed as %s", findings, f)
	}
	var names []string
	for _, n := range f.Names() {
		names = append(names, n.Text+"."+n.Of)
	}
	if got := strings.Join(names, " "); got != "chest. hem.rows rib_rows." {
		t.Errorf("the names are %s", got)
	}
	checked, findings := f.Check(&Scope{})
	if v, remarks := checked.Work(&Column{}); len(findings) > 0 || v.Kind != Unknown || !v.Num.IsLost() || remarks != nil {
		t.Errorf("it comes to %v, %v", v, findings)
	}
}

// TestUnknownFits: what is unknown because of an earlier finding makes no finding of its own.
func TestUnknownFits(t *testing.T) {
	for _, text := range []string{
		"gone + 4", "gone + 4 cm", "gone * gone", "4 cm / gone", "gone in stitches", "gone in number", "root(gone)", "gone as rows",
		"gone, rounded up to whole", "4 sts, up to multiple of gone + 2", "min(gone, 3 sts, 4 cm)", "90% of gone", "gone in rows at body + 2",
	} {
		f, findings := Parse(source.NewFile("p", text), 0, text)
		checked, more := f.Check(&Scope{Gauges: []Gauge{{Name: "body"}}, Name: func(Name) (int, Kind) { return 0, Unknown }})
		if v, _ := checked.Work(&Column{}); len(findings) > 0 || len(more) > 0 || !v.Num.IsLost() {
			t.Errorf("%s comes to %v: %v %v", text, v.Num, findings, more)
		}
	}
}

// TestBounds: what is too long, too deep or too large is told, and costs no more than that.
func TestBounds(t *testing.T) {
	for name, text := range map[string]string{
		"brackets":  strings.Repeat("(", 100_000) + "1" + strings.Repeat(")", 100_000),
		"nesting":   strings.Repeat("(", 50) + "1" + strings.Repeat(")", 50),
		"signs":     strings.Repeat("-", 1000) + "1",
		"shares":    strings.Repeat("1% of ", 1000) + "x",
		"functions": strings.Repeat("abs(", 1000) + "1" + strings.Repeat(")", 1000),
		"a sum":     strings.Repeat("1 + ", 10_000) + "1",
		"a list":    "1 (" + strings.Repeat("1, ", 10_000) + "1)",
		"a name":    strings.Repeat("x", 1000),
		"a number":  strings.Repeat("9", 1000),
		"a text":    strings.Repeat(" ", 1<<20) + "1",
	} {
		if _, findings := Parse(source.NewFile("p", text), 0, text); len(findings) != 1 || findings[0].Rule != "formula" {
			t.Errorf("%s: %v", name, findings)
		}
	}
	for text, what := range map[string]What{
		"999999999999999 * 999999999999999": TooLarge,
		"1 / (2 - 2)":                       DividedByZero,
		"root(-1)":                          NoRoot,
		"7, up to multiple of 0":            NoSeries,
		"7, up to multiple of -1 (-1)":      NoSeries,
	} {
		f, findings := Parse(source.NewFile("p", text), 0, text)
		checked, more := f.Check(&Scope{Sizes: []string{"S", "M"}})
		if findings = append(findings, more...); what == NoSeries && strings.Contains(text, "-") {
			if len(findings) == 0 {
				t.Errorf("%s reads", text)
			}
			continue
		}
		v, remarks := checked.Work(&Column{})
		if len(findings) > 0 || !v.Num.IsLost() || len(remarks) != 1 || remarks[0].What != what {
			t.Errorf("%s comes to %v: %v %v", text, v.Num, remarks, findings)
		}
	}
}

func FuzzParse(f *testing.F) {
	for _, table := range []string{"canonical.txt", "values.txt", "mistakes.txt"} {
		for _, line := range lines(f, table) {
			text, _, _ := strings.Cut(line, "=")
			f.Add(strings.TrimSpace(text), strings.Contains(text, "%"))
		}
	}
	f.Fuzz(func(t *testing.T, text string, ease bool) {
		file := source.NewFile("fuzz", "x = \""+text+"\"\n")
		read := Parse
		if ease {
			read = ParseEase
		}
		formula, findings := read(file, 5, text)
		scope := Scope{Sizes: []string{"S", "M", "L"}, Gauges: []Gauge{{Name: "body", Stitches: one, Over: one}}, Name: func(n Name) (int, Kind) {
			return len(n.Text) % 3, Kind(len(n.Text) % 6)
		}}
		checked, more := formula.Check(&scope)
		for _, fd := range append(findings, more...) {
			if fd.Place.Line < 1 || fd.Place.Column < 1 || fd.Message == "" {
				t.Fatalf("%+v", fd)
			}
		}
		for _, n := range formula.Names() {
			if n.Span.From < 5 || n.Span.To > 5+len(text) || n.Span.From > n.Span.To {
				t.Fatalf("%s stands at %v", n.Text, n.Span)
			}
		}
		col := Column{Size: 2, Figures: make([]Figure, 3), Ask: func(int, []measure.Num) Figure { return Figure{Num: one} }}
		v, _ := checked.Work(&col)
		checked.Line(&col, func(int) (Line, bool) { return Line{Slope: one}, true })
		if len(findings) > 0 {
			return
		}
		printed := formula.String()
		again, findings := read(source.NewFile("again", printed), 0, printed)
		if len(findings) > 0 || again.String() != printed {
			t.Fatalf("%q prints as %q, which prints as %q: %v", text, printed, again.String(), findings)
		}
		checked, _ = again.Check(&scope)
		if w, _ := checked.Work(&col); w != v {
			t.Fatalf("%q comes to %v, and %q to %v", text, v, printed, w)
		}
	})
}
