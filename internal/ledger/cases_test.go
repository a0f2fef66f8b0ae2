package ledger_test

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"

	"foundrow/internal/ledger"
	"foundrow/internal/notation"
	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

type caseFile struct {
	Case []rowCase `toml:"case"`
}

type rowCase struct {
	ID        string    `toml:"id"`
	Terms     string    `toml:"terms"`
	Work      string    `toml:"work"`
	Expect    string    `toml:"expect"`
	Sizes     []string  `toml:"sizes"`
	Notes     []string  `toml:"notes"`
	Start     any       `toml:"start"`
	StartKind string    `toml:"start_kind"`
	Row       []caseRow `toml:"row"`
}

type caseRow struct {
	Text   string `toml:"text"`
	Count  any    `toml:"count"`
	Leaves any    `toml:"leaves"`
	Unit   string `toml:"unit"`
	Error  string `toml:"error"`
	Uses   any    `toml:"uses"`
	Right  string `toml:"right"`
}

func (c *rowCase) terms() stitch.Terms {
	if c.Terms == "uk" {
		return stitch.UK
	}
	return stitch.US
}

// list writes a number of the case as a pattern would, the trade's list where sizes differ.
func (c *rowCase) list(v any) string {
	switch v := v.(type) {
	case int64:
		return fmt.Sprint(v)
	case []any:
		words := make([]string, len(v))
		for i, n := range v {
			words[i] = fmt.Sprint(n)
		}
		return words[0] + " (" + strings.Join(words[1:], ", ") + ")"
	}
	return ""
}

var asBrackets = strings.NewReplacer("{", "(", "}", ")", "<", "(", ">", ")")

// A block is one fenced block of a case: its text, and which rows of the case its lines are.
type block struct {
	lines []string
	rows  []int // index of the case row, or -1
}

func (b *block) add(line string, row int) {
	b.lines = append(b.lines, line)
	b.rows = append(b.rows, row)
}

// between is what rows that a case leaves out bring the next one to, where its notes say so in words.
var between = map[string]map[int]any{
	"o-hat-post-increase":   {5: int64(63)},
	"o-garment-uk-sleeve-3": {7: []any{int64(38), int64(41), int64(44)}, 8: []any{int64(38), int64(42), int64(46)}},
}

// blocks writes a case as the file its README describes.
func (c *rowCase) blocks() []block {
	var out []block
	var b block
	switch c.StartKind {
	case "ch":
		b.add("Foundation: Ch "+c.list(c.Start)+".", -1)
	case "fsc":
		b.add("Foundation: Fsc "+c.list(c.Start)+".", -1)
	case "sts", "blocks", "clusters":
		b.add("Start: "+c.list(c.Start)+" "+c.StartKind+".", -1)
	case "row-ends":
		b.add("Start: "+c.list(c.Start)+" row-ends.", -1)
	}
	notes := func() {
		for _, n := range c.Notes {
			parts := []string{n}
			if !c.rule(n) { // a note may state two rules
				parts = strings.FieldsFunc(n, func(r rune) bool { return r == ';' || r == ',' })
				if !slices.ContainsFunc(parts, c.rule) {
					parts = []string{n}
				}
			}
			for _, part := range parts {
				if part = strings.TrimSpace(part); c.rule(part) {
					b.add("Throughout: "+part+".", -1)
				} else {
					b.add("Note: "+part+".", -1)
				}
			}
		}
	}
	notes()
	last := 0
	for i := range c.Row {
		r := &c.Row[i]
		first, end := c.numbers(r.Text)
		if i > 0 {
			before := c.Row[i-1].Leaves
			if before == nil && first > 0 && last > 0 && first != last+1 {
				before = c.Row[i-1].Count
				if m, ok := before.(map[string]any); ok {
					before = m["dc"]
					if before == nil {
						before = m["sc"]
					}
				}
			}
			if n, ok := between[c.ID]; ok && n[i] != nil {
				before = n[i]
			}
			if before != nil {
				out = append(out, b)
				b = block{}
				b.add("Start: "+c.list(before)+" sts.", -1)
				notes()
			}
		}
		b.add(asBrackets.Replace(r.Text), i)
		last = end
	}
	return append(out, b)
}

// rule reports whether a note of a case states a rule of the closed list.
func (c *rowCase) rule(note string) bool {
	text := "Throughout: " + note + "."
	f := source.NewFile("", text)
	b, fs := notation.Parse(notation.Input{File: f, Body: source.Span{To: len(text)}, Terms: c.terms(), Sizes: c.Sizes})
	if len(fs) > 0 || len(b.Lines) != 1 {
		return false
	}
	_, ok := b.Lines[0].(*notation.Rule)
	return ok
}

// numbers finds the first and last number of a row's label, in the first size.
func (c *rowCase) numbers(text string) (first, last int) {
	text = asBrackets.Replace(text)
	f := source.NewFile("", text)
	b, _ := notation.Parse(notation.Input{File: f, Body: source.Span{To: len(text)}, Terms: c.terms(), Sizes: c.Sizes})
	if len(b.Lines) == 0 {
		return 0, 0
	}
	var l *notation.Label
	switch line := b.Lines[0].(type) {
	case *notation.Row:
		l = &line.Label
	case *notation.Again:
		l = &line.Label
	default:
		return 0, 0
	}
	number := func(c notation.Count) int {
		if c.List != nil {
			return c.List[0].N
		}
		return c.Plain
	}
	for i, r := range l.Numbers {
		if i == 0 {
			first = number(r.From)
		}
		last = number(r.From)
		if r.To.Said {
			last = number(r.To)
		}
	}
	if l.Every == notation.AndAlternate {
		last++
		if first > 0 {
			last = first
		}
	}
	return first, last
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

func inSize(v any, size int) (int, bool) {
	switch v := v.(type) {
	case int64:
		return int(v), true
	case []any:
		n, ok := v[min(size, len(v)-1)].(int64)
		return int(n), ok
	}
	return 0, false
}

// compare returns what differs between a printed row and the case.
func (c *rowCase) compare(b *ledger.Book, p ledger.Printed, at, size int) string {
	r := &c.Row[at]
	if m, ok := r.Count.(map[string]any); ok {
		sums := map[string]int{} // "hdc" and "hdc (neck)" are sections of one row
		for key, v := range m {
			want, _ := inSize(v, size)
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
	want, ok := inSize(r.Count, size)
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

func TestCases(t *testing.T) {
	var f caseFile
	if _, err := toml.DecodeFile("../../testdata/cases/rows.toml", &f); err != nil {
		t.Fatal(err)
	}
	only := os.Getenv("CASE")
	right, refused, wrong := 0, 0, 0
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
			if !o.read {
				word = "right, with words not read"
			}
		}
		fmt.Fprintf(&table, "%-34s %-10s %s\n", c.ID, c.Expect, word)
		if word != "right" || only != "" || testing.Verbose() && os.Getenv("ALL") != "" {
			table.WriteString(strings.Join(o.details, "\n") + "\n")
		}
	}
	t.Logf("\n%s%d cases: %d right, %d refused, %d wrong", table.String(), len(f.Case), right, refused, wrong)
}
