package ledger_test

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"

	"foundrow/internal/ledger"
	"foundrow/internal/notation"
	"foundrow/internal/source"
	"foundrow/internal/stitch"
	"foundrow/internal/testkit"
)

type caseFile struct {
	Case []rowCase `toml:"case"`
}

type rowCase struct{ testkit.Case }

func (c *rowCase) terms() stitch.Terms { return c.In() }

// A block is one fenced block of a case: its text, and which rows of the case its lines are.
type block struct {
	lines []string
	rows  []int // index of the case row, or -1
}

func (c *rowCase) blocks() []block {
	var out []block
	for _, b := range c.Blocks() {
		out = append(out, block{b.Lines, b.Rows})
	}
	return out
}

type outcome struct {
	read    bool
	right   bool
	silent  bool // it was read, nothing was found, and a count differs
	details []string
}

func (o *outcome) say(format string, args ...any) {
	o.details = append(o.details, fmt.Sprintf(format, args...))
}

// run works a case and compares it with what it says.
func (c *rowCase) run() outcome {
	o := outcome{read: true, right: true}
	sizes := len(c.Sizes)
	if sizes == 0 {
		sizes = 1
	}
	found, queries := 0, 0
	errorRows := map[int]bool{}
	wanted := map[int]bool{}
	for i := range c.Row {
		if c.Row[i].Error != "" {
			wanted[i] = true
		}
	}
	differs := false
	for _, b := range c.blocks() {
		text := strings.Join(b.lines, "\n")
		f := source.NewFile(c.ID, text)
		tree, fs := notation.Parse(notation.Input{File: f, Body: source.Span{To: len(text)}, Terms: c.terms(), Sizes: c.Sizes})
		for _, x := range fs {
			o.read = false
			found++
			o.say("   parse: %s", x)
		}
		pieces := make([]ledger.Piece, sizes)
		for k := range pieces {
			pieces[k] = ledger.Piece{Name: "case", Block: tree, Sizes: c.Sizes, Size: k}
		}
		books, reports := ledger.WorkSizes(pieces)
		for k := range reports {
			for _, r := range reports[k] {
				found++
				if r.Severity == source.Query {
					queries++
				} else {
					line := strings.Count(text[:r.Span.From], "\n")
					if line < len(b.rows) {
						errorRows[b.rows[line]] = true
					}
				}
				o.say("   %s", describe(c, f, k, r))
			}
			for _, p := range books[k].Printed {
				if p.Line >= len(b.lines) {
					continue
				}
				at := b.rows[lineOf(text, p.Span)]
				if at < 0 || p.Row < 0 {
					continue
				}
				if c.Row[at].Error != "" && (c.Row[at].Error == "fit" || c.Row[at].Error == "foundation") {
					continue
				}
				if why := c.compare(books[k], p, at, k); why != "" {
					differs = true
					o.say("   size %d: %s\n      %s", k, why, c.Row[at].Text)
				}
			}
		}
	}
	switch c.Expect {
	case "error":
		for i := range wanted {
			if !errorRows[i] {
				o.right = false
				o.say("   no error on: %s", c.Row[i].Text)
			}
		}
		for i := range errorRows {
			if !wanted[i] && i >= 0 {
				o.right = false
				o.say("   error on a right row: %s", c.Row[i].Text)
			}
		}
	case "ambiguous":
		if queries == 0 || len(errorRows) > 0 {
			o.right = false
			o.say("   ambiguous: %d queries, %d rows with errors", queries, len(errorRows))
		}
	default:
		if len(errorRows) > 0 {
			o.right = false
		}
	}
	if differs {
		o.right = false
	}
	o.silent = !o.right && found == 0
	return o
}

func lineOf(text string, s source.Span) int { return strings.Count(text[:s.From], "\n") }

func describe(c *rowCase, f *source.File, size int, r ledger.Report) string {
	fs := ledger.Findings(f, c.Sizes, perSize(max(len(c.Sizes), 1), size, r))
	return fs[0].String()
}

func perSize(n, size int, r ledger.Report) [][]ledger.Report {
	out := make([][]ledger.Report, n)
	out[min(size, n-1)] = []ledger.Report{r}
	return out
}

// compare returns what differs between a printed row and the case.
func (c *rowCase) compare(b *ledger.Book, p ledger.Printed, at, size int) string {
	r := &c.Row[at]
	if m, ok := r.Count.(map[string]any); ok {
		sums := map[string]int{} // "hdc" and "hdc (neck)" are sections of one row
		for key, v := range m {
			want, _ := testkit.InSize(v, size)
			name, _, _ := strings.Cut(key, " (")
			sums[name] += want
		}
		for key, want := range sums {
			if got, ok := c.kind(b, p, key); !ok || got != want {
				return fmt.Sprintf("%d %s, should be %d", got, key, want)
			}
		}
		return ""
	}
	want, ok := testkit.InSize(r.Count, size)
	if !ok {
		return ""
	}
	if p.Open {
		if p.Count != want {
			return fmt.Sprintf("open with %d, should be %d", p.Count, want)
		}
		return ""
	}
	if p.Count == want {
		return ""
	}
	if r.Unit != "" {
		if got, ok := c.kind(b, p, r.Unit); ok && got == want {
			return ""
		}
	}
	return fmt.Sprintf("%d, should be %d", p.Count, want)
}

// kind counts what a key of a case names: "dc", "ch-2 sp", "shell".
func (c *rowCase) kind(b *ledger.Book, p ledger.Printed, key string) (int, bool) {
	if key == "full loops" { // those of all their chains
		key = "ch-5 loops"
	}
	if key == "half loop" {
		n := 0
		for _, m := range b.Rows[p.Row].Made {
			if m.Kind == ledger.Spaces && m.Chains == 2 && m.Whole == 0 {
				n += m.N
			}
		}
		return n, true
	}
	text := "Row 1: Sc in each st. (1 " + key + ")"
	f := source.NewFile("", text)
	t, _ := notation.Parse(notation.Input{File: f, Body: source.Span{To: len(text)}, Terms: c.terms()})
	row, ok := t.Lines[0].(*notation.Row)
	if !ok || len(row.Claims) != 1 {
		return 0, false
	}
	return b.Tallied(p.Row, row.Claims[0].Noun), true
}

// TestCases works printed rows of real patterns as they stand. None may be wrong without a finding, and of a hundred at least 85 must be
// read whole and come out right. CASE=id shows one.
func TestCases(t *testing.T) {
	var f caseFile
	if _, err := toml.DecodeFile("../../testdata/cases/rows.toml", &f); err != nil {
		t.Fatal(err)
	}
	only := os.Getenv("CASE")
	right, whole, refused, wrong := 0, 0, 0, 0
	var table strings.Builder
	for i := range f.Case {
		c := &f.Case[i]
		if only != "" && c.ID != only {
			continue
		}
		o := c.run()
		word := "right"
		switch {
		case o.silent:
			word = "WRONG IN SILENCE"
			wrong++
			t.Errorf("%s is wrong in silence", c.ID)
		case !o.read && !o.right:
			word = "refused"
			refused++
		case !o.right:
			word = "wrong"
			wrong++
		default:
			right++
			if whole++; !o.read {
				whole--
				word = "right, with words not read"
			}
		}
		fmt.Fprintf(&table, "%-34s %-10s %s\n", c.ID, c.Expect, word)
		if word != "right" || only != "" || testing.Verbose() && os.Getenv("ALL") != "" {
			table.WriteString(strings.Join(o.details, "\n") + "\n")
		}
	}
	if only == "" && 100*whole < 85*len(f.Case) {
		t.Errorf("%d of %d cases are read whole and come out right", whole, len(f.Case))
	}
	t.Logf("\n%s%d cases: %d right, %d refused, %d wrong", table.String(), len(f.Case), right, refused, wrong)
}
