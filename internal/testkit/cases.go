package testkit

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"

	"foundrow/internal/notation"
	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

// A Case is some rows of a real pattern with what each of them really makes. The head of testdata/cases/rows.toml says what its
// fields mean.
type Case struct {
	ID        string    `toml:"id"`
	Title     string    `toml:"title"`
	Terms     string    `toml:"terms"`
	Work      string    `toml:"work"`
	Expect    string    `toml:"expect"` // "ok", "error" or "ambiguous"
	Tags      []string  `toml:"tags"`
	Sizes     []string  `toml:"sizes"` // none: one size without a name
	Notes     []string  `toml:"notes"`
	Start     any       `toml:"start"`
	StartKind string    `toml:"start_kind"`
	Row       []CaseRow `toml:"row"`
	Changed   string    `toml:"changed"` // of a case restated in house notation: what was changed, and why
}

// A CaseRow is one row or printed line of a case. A number is an int64, or a []any of them by size; a count may also be a
// map[string]any of such numbers by the kind that is counted, and what a row leaves a string: the words of a Start line.
type CaseRow struct {
	Text      string `toml:"text"`
	Count     any    `toml:"count"`
	Leaves    any    `toml:"leaves"`
	Unit      string `toml:"unit"`
	Error     string `toml:"error"`
	Uses      any    `toml:"uses"`
	Published any    `toml:"published"`
	Right     string `toml:"right"`
}

// A CaseBlock is one rows block of a case.
type CaseBlock struct {
	Lines []string
	Rows  []int // by line: the index of the row in the case, or -1
}

// Cases reads a file of cases.
func Cases(t testing.TB, file string) []Case {
	t.Helper()
	var f struct {
		Case []Case `toml:"case"`
	}
	if _, err := toml.DecodeFile(file, &f); err != nil {
		t.Fatal(err)
	}
	return f.Case
}

// In returns the terms that a case is written in.
func (c *Case) In() stitch.Terms {
	if c.Terms == "uk" {
		return stitch.UK
	}
	return stitch.US
}

// InSize returns a number of a case in one size; not every row has one.
func InSize(v any, size int) (int, bool) {
	switch v := v.(type) {
	case int64:
		return int(v), true
	case []any:
		n, ok := v[min(size, len(v)-1)].(int64)
		return int(n), ok
	}
	return 0, false
}

// Pattern writes a case as the text of a pattern.md, and says for each line of it, from 0, which row of the case it is: -1 for none.
func (c *Case) Pattern() (text string, rows []int) {
	var lines []string
	put := func(row int, line string) {
		lines, rows = append(lines, line), append(rows, row)
	}
	put(-1, "```toml")
	put(-1, "title = "+strconv.Quote(c.Title))
	put(-1, `kind = "other"`)
	put(-1, `version = "1.0"`)
	put(-1, "terms = "+strconv.Quote(c.Terms))
	put(-1, `wearer = "none"`)
	if len(c.Sizes) > 0 {
		quoted := make([]string, len(c.Sizes))
		for i, s := range c.Sizes {
			quoted[i] = strconv.Quote(s)
		}
		put(-1, "[sizes]")
		put(-1, "offer = ["+strings.Join(quoted, ", ")+"]")
	}
	put(-1, "```")
	for i, b := range c.Blocks() {
		name := "case"
		if i > 0 {
			name += strconv.Itoa(i + 1)
		}
		put(-1, "")
		put(-1, "```rows "+name)
		for k, line := range b.Lines {
			put(b.Rows[k], line)
		}
		put(-1, "```")
	}
	return strings.Join(lines, "\n") + "\n", rows
}

// Blocks writes the rows of a case as rows blocks. A new one begins where the case leaves rows out, or where the next row finds
// something else than this one leaves.
func (c *Case) Blocks() []CaseBlock {
	var out []CaseBlock
	b := c.begin()
	last := 0
	for i := range c.Row {
		first, end := c.numbers(c.Row[i].Text)
		if before := c.before(i, first, last); before != nil {
			out = append(out, b)
			b = CaseBlock{}
			b.add("Start: " + standing(before) + ".")
			b.notes(c)
		}
		b.Lines, b.Rows = append(b.Lines, brackets.Replace(c.Row[i].Text)), append(b.Rows, i)
		last = end
	}
	return append(out, b)
}

// brackets: in a pattern, braces are values.
var brackets = strings.NewReplacer("{", "(", "}", ")", "<", "(", ">", ")")

func (b *CaseBlock) add(line string) {
	b.Lines, b.Rows = append(b.Lines, line), append(b.Rows, -1)
}

func (c *Case) begin() CaseBlock {
	var b CaseBlock
	switch c.StartKind {
	case "ch":
		b.add("Foundation: Ch " + list(c.Start) + ".")
	case "fsc":
		b.add("Foundation: Fsc " + list(c.Start) + ".")
	case "sts", "blocks", "clusters", "row-ends":
		b.add("Start: " + list(c.Start) + " " + c.StartKind + ".")
	}
	b.notes(c)
	return b
}

// notes writes the notes that state a rule as such, and the rest as notes. One note may state two rules.
func (b *CaseBlock) notes(c *Case) {
	for _, n := range c.Notes {
		parts := []string{n}
		if !c.rule(n) {
			split := strings.FieldsFunc(n, func(r rune) bool { return r == ';' || r == ',' })
			if slices.ContainsFunc(split, c.rule) {
				parts = split
			}
		}
		for _, part := range parts {
			if part = strings.TrimSpace(part); c.rule(part) {
				b.add("Throughout: " + part + ".")
			} else {
				b.add("Note: " + part + ".")
			}
		}
	}
}

// between is what rows that a case leaves out bring the next one to, where its notes say so in words.
var between = map[string]map[int]any{
	"o-hat-post-increase":   {5: int64(63)},
	"o-garment-uk-sleeve-3": {7: []any{int64(38), int64(41), int64(44)}, 8: []any{int64(38), int64(42), int64(46)}},
}

// before returns what a row stands on where that is not simply what the row before it leaves, and nil where it is.
func (c *Case) before(i, first, last int) any {
	if i == 0 {
		return nil
	}
	if n := between[c.ID][i]; n != nil {
		return n
	}
	above := &c.Row[i-1]
	if above.Leaves != nil {
		return above.Leaves
	}
	if first == 0 || last == 0 || first == last+1 {
		return nil
	}
	kinds, is := above.Count.(map[string]any)
	switch {
	case !is:
		return above.Count
	case kinds["dc"] != nil:
		return kinds["dc"]
	}
	return kinds["sc"]
}

// standing writes what a block begins on: a number of stitches, or the words of the case for it.
func standing(before any) string {
	if words, is := before.(string); is {
		return words
	}
	return list(before) + " sts"
}

// list writes a number of a case as a pattern would: where sizes differ, as the trade's list.
func list(v any) string {
	all, is := v.([]any)
	if !is {
		return fmt.Sprint(v)
	}
	words := make([]string, len(all))
	for i, n := range all {
		words[i] = fmt.Sprint(n)
	}
	return words[0] + " (" + strings.Join(words[1:], ", ") + ")"
}

func (c *Case) parse(text string) (*notation.Block, source.Findings) {
	return notation.Parse(notation.Input{
		File: source.NewFile("", text), Body: source.Span{To: len(text)}, Terms: c.In(), Sizes: c.Sizes,
	})
}

// rule reports whether a note of a case states a rule of the closed list.
func (c *Case) rule(note string) bool {
	b, found := c.parse("Throughout: " + note + ".")
	if len(found) > 0 || len(b.Lines) != 1 {
		return false
	}
	_, is := b.Lines[0].(*notation.Rule)
	return is
}

// numbers finds the first and last number of a row's label, in the first size: 0 where it has none.
func (c *Case) numbers(text string) (first, last int) {
	b, _ := c.parse(brackets.Replace(text))
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
	if l.Every == notation.AndAlternate && first > 0 {
		last = first
	}
	return first, last
}
