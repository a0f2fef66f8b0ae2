package formula

import (
	"os"
	"strings"
	"testing"

	"foundrow/internal/measure"
	"foundrow/internal/source"
)

// given is what the tables under testdata are worked with.
type given struct {
	scope  Scope
	names  []string
	values []Value
	col    Column
}

const sizeOfTables = 1 // M

func readGiven(t testing.TB) *given {
	t.Helper()
	g := &given{}
	g.scope = Scope{Sizes: []string{"S", "M", "L"}, Name: func(n Name) (int, Kind) {
		for i, name := range g.names {
			if name == n.Text && n.Of == "" {
				return i, g.values[i].Kind
			}
		}
		return 0, Unknown
	}}
	g.col.Size = sizeOfTables
	for _, line := range lines(t, "given.txt") {
		if f := strings.Fields(line); f[0] == "gauge" {
			over := figureOf(t, f[4])
			g.scope.Gauges = append(g.scope.Gauges, Gauge{Name: f[1], Stitches: figureOf(t, f[2]), Over: over, Rows: figureOf(t, f[3]), RowsOver: over})
			continue
		}
		name, text, _ := strings.Cut(line, "=")
		_, v, _ := g.work(t, strings.TrimSpace(text))
		g.names, g.values = append(g.names, strings.TrimSpace(name)), append(g.values, v)
		g.col.Figures = append(g.col.Figures, Figure{v.Num, v.Approx})
	}
	return g
}

func figureOf(t testing.TB, s string) measure.Num {
	n, ok := measure.Parse(s)
	if !ok {
		t.Fatalf("%q is no number", s)
	}
	return n
}

// lines reads a table without its comments and empty lines.
func lines(t testing.TB, name string) []string {
	t.Helper()
	text, err := os.ReadFile("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for line := range strings.Lines(string(text)) {
		if line = strings.TrimRight(line, "\n"); strings.TrimSpace(line) != "" && line[0] != '#' {
			out = append(out, line)
		}
	}
	return out
}

// work reads, checks and works a formula that must have no finding.
func (g *given) work(t testing.TB, text string) (f *Formula, v Value, least bool) {
	t.Helper()
	f, findings := Parse(source.NewFile("table", text), 0, text)
	checked, more := f.Check(&g.scope)
	for _, fd := range append(findings, more...) {
		t.Fatalf("%s\n%s", fd, fd.Excerpt())
	}
	v, remarks := checked.Work(&g.col)
	return f, v, len(remarks) > 0 && remarks[0].What == Least
}

func TestCanonical(t *testing.T) {
	for _, line := range lines(t, "canonical.txt") {
		written, want, _ := strings.Cut(line, "=>")
		written, want = strings.TrimSpace(written), strings.TrimSpace(want)
		for _, text := range []string{written, want} {
			f, findings := Parse(source.NewFile("table", text), 0, text)
			for _, fd := range findings {
				t.Errorf("%s\n%s", fd, fd.Excerpt())
			}
			if got := f.String(); got != want {
				t.Errorf("%s prints as %s, wanted %s", text, got, want)
			}
		}
	}
}

func TestValues(t *testing.T) {
	g := readGiven(t)
	for _, line := range lines(t, "values.txt") {
		text, want, _ := strings.Cut(line, "=")
		text, want = strings.TrimSpace(text), strings.TrimSpace(want)
		f, v, least := g.work(t, text)
		if got := told(v, least); got != want {
			t.Errorf("%s = %s, wanted %s", text, got, want)
		}
		if _, again, _ := g.work(t, f.String()); again != v {
			t.Errorf("%s is printed as %s, which gives %s and not %s", text, f, told(again, least), told(v, least))
		}
	}
}

// told prints a value with its story, the way the table has it.
func told(v Value, least bool) string {
	s := v.Num.String() + " " + v.Kind.String()
	if v.Approx {
		s = "about " + v.Num.Decimal(4) + " " + v.Kind.String()
	}
	st := v.Story
	if st.Way == NotRounded {
		return s
	}
	from := st.From.String()
	if st.From.Under() > 1000 {
		from = st.From.Decimal(4)
	}
	s += " from " + from + " of " + st.Lower.String() + " and " + st.Upper.String()
	switch {
	case st.Tie:
		s += ", a tie"
	case least:
		s += ", the least"
	}
	return s
}
