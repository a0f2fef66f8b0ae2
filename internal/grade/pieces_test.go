package grade

import (
	"slices"
	"strings"
	"testing"

	"foundrow/internal/formula"
	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/prose"
	"foundrow/internal/source"
)

// twiceAsManyRows works pieces whose rows are twice the value of the first slot in them, and keeps the order of what it was asked.
type twiceAsManyRows struct {
	slots map[string]int
	rows  map[string]measure.Num
	order []string
}

func (r *twiceAsManyRows) kind(_, of string, given int) (formula.Kind, bool) {
	switch {
	case of == "rows" && given == 0:
		return formula.Rows, true
	case of == "stitches_after" && given == 1:
		return formula.Stitches, true
	}
	return formula.Unknown, false
}

func (r *twiceAsManyRows) work(name string, size int, slot func(int) formula.Value) {
	r.order = append(r.order, name)
	r.rows[name] = slot(r.slots[name]).Num.Mul(measure.Int(2)).Add(measure.Int(int64(size)))
}

func (r *twiceAsManyRows) ask(name, of string, size int, given []measure.Num) formula.Figure {
	n := r.rows[name]
	if of == "stitches_after" {
		n = n.Sub(given[0])
	}
	return formula.Figure{Num: n}
}

// withPieces makes a pattern of counts, one a line, and of pieces that use one value each.
func withPieces(t *testing.T, counts string, pieces map[string]string) *pattern.Pattern {
	t.Helper()
	text := counts
	for _, uses := range pieces {
		text += uses + "\n"
	}
	p := &pattern.Pattern{File: source.NewFile("pieces.md", text), Sizes: pattern.Sizes{Names: []string{"S", "M"}, Sample: -1}}
	read := func(words string) (*formula.Formula, source.Span) {
		at := strings.Index(text, words)
		f, findings := formula.Parse(p.File, at, words)
		if len(findings) > 0 {
			t.Fatal(findings)
		}
		return f, source.Span{From: at, To: at + len(words)}
	}
	for line := range strings.Lines(counts) {
		name, words, _ := strings.Cut(strings.TrimSuffix(line, "\n"), " = ")
		f, _ := read(words)
		at := strings.Index(text, line)
		p.Counts = append(p.Counts, pattern.Definition{
			Name: pattern.Words{Text: name, Span: source.Span{From: at, To: at + len(name)}}, Parts: []pattern.Part{{Formula: f}},
		})
	}
	names := make([]string, 0, len(pieces))
	for name := range pieces {
		names = append(names, name)
	}
	slices.Sort(names)
	for i, name := range names {
		f, span := read(pieces[name])
		p.Slots = append(p.Slots, pattern.Slot{Formula: f, Span: span})
		p.Pieces = append(p.Pieces, pattern.Piece{Name: pattern.Words{Text: name, Span: span}, Lines: []pattern.RowLine{{Line: prose.Line{prose.Text("Ch "), prose.Slot{Index: i}}}}})
	}
	return p
}

// TestPiecesAreEntries: values and pieces are worked in whatever order they need, in every size.
func TestPiecesAreEntries(t *testing.T) {
	p := withPieces(t, "edge = border.rows + 1\nneck = edge - hem.stitches_after(3)\nhem = 10 rows\n",
		map[string]string{"border": "hem.rows", "hem": "hem"})
	rows := &twiceAsManyRows{slots: map[string]int{"border": 0, "hem": 1}, rows: map[string]measure.Num{}}
	g, findings := work(p, rows)
	for _, f := range findings {
		if f.Rule != "kinds" && f.Rule != "unused" { // the second line takes stitches from rows, on purpose
			t.Errorf("%s", f)
		}
	}
	if got := strings.Join(rows.order, " "); got != "hem border hem border" {
		t.Errorf("the pieces were worked in the order %s", got)
	}
	// In S the hem has 20 rows and the border 40; in M 21 and 43.
	if e := g.Value("edge").BySize; e[0].Num != measure.Int(41) || e[1].Num != measure.Int(44) {
		t.Errorf("the edge is %v and %v", e[0].Num, e[1].Num)
	}
	if len(findings) != 2 || !g.Value("neck").BySize[0].Num.IsLost() {
		t.Errorf("rows less stitches are %v", findings)
	}
	if s := g.Slots[0]; s[0].Num != measure.Int(20) || s[1].Num != measure.Int(21) {
		t.Errorf("the border begins with %v and %v", s[0].Num, s[1].Num)
	}
}

func TestPiecesGiven(t *testing.T) {
	p := withPieces(t, "left = hem.stitches_after(step * 2)\nstep = 4\nshade = hem.colour + 1\n", map[string]string{"hem": "10"})
	g, findings := work(p, &twiceAsManyRows{slots: map[string]int{"hem": 0}, rows: map[string]measure.Num{}})
	if v := g.Value("left").BySize[1]; v.Num != measure.Int(13) || v.Kind != formula.Stitches { // 2 · 10 + 1 - 8
		t.Errorf("left is %v %v", v.Num, v.Kind)
	}
	var rules []string
	for _, f := range findings {
		rules = append(rules, f.Rule)
	}
	if got := strings.Join(rules, " "); got != "unknown-name unused unused" {
		t.Errorf("found %v", findings)
	}
}
