package whole

import (
	"os"
	"path/filepath"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"foundrow/internal/notation"
	"foundrow/internal/pattern"
	"foundrow/internal/proof"
	"foundrow/internal/prose"
	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

// rows are lines of rows with what they are read by. A value in braces is known by the words between them.
type rows struct {
	terms    stitch.Terms
	sizes    []string
	specials []string
	values   []string // by slot
}

// read reads lines of rows written in some terms.
func (r rows) read(text string, terms stitch.Terms) (*notation.Block, source.Findings) {
	return notation.Parse(notation.Input{
		File: source.NewFile("rows", text), Body: source.Span{To: len(text)}, Terms: terms, Sizes: r.sizes, Specials: r.specials,
		Slot: func(from int) int {
			words, _, closed := strings.Cut(text[from+1:], "}")
			for i, v := range r.values {
				if closed && v == words {
					return i
				}
			}
			return -1
		},
	})
}

func (r rows) print(lines []notation.Line, terms stitch.Terms) string {
	var b strings.Builder
	for _, l := range lines {
		b.WriteString(notation.Source(l, terms, func(slot int) string { return r.values[slot] }) + "\n")
	}
	return b.String()
}

// thereAndBack prints lines in the other terms, reads that, and prints it in their own again, which must be what they are printed as
// without the journey.
func (r rows) thereAndBack(t *testing.T, where string, lines []notation.Line) {
	t.Helper()
	own, other := r.print(lines, r.terms), r.print(lines, r.terms.Other())
	block, found := r.read(other, r.terms.Other())
	if len(found) > 0 {
		t.Errorf("%s: printed in %s terms it is not understood: %s\n%s", where, r.terms.Other(), found[0], other)
	} else if back := r.print(block.Lines, r.terms); back != own {
		t.Errorf("%s: printed in %s terms as\n%scomes back as\n%sand was\n%s", where, r.terms.Other(), other, back, own)
	}
}

// rowsOf is what the rows of a pattern are read by.
func rowsOf(p *pattern.Pattern) rows {
	r := rows{terms: p.Terms, sizes: p.Sizes.Names}
	for _, s := range p.Special {
		r.specials = append(r.specials, s.Abbr.Text)
	}
	for _, s := range p.Slots {
		r.values = append(r.values, s.Formula.Text)
	}
	return r
}

// TestTermsOfRows carries every piece of every demonstration pattern into the other terms and back.
func TestTermsOfRows(t *testing.T) {
	files := demonstration(t)
	terms := map[stitch.Terms]int{}
	for _, slug := range files.slugs(t) {
		p := files.readPattern(t, slug).Pattern
		for _, piece := range p.Pieces {
			terms[p.Terms]++
			rowsOf(p).thereAndBack(t, slug+", "+piece.Name.Text, piece.Rows.Lines)
		}
	}
	if terms[stitch.US] == 0 || terms[stitch.UK] == 0 {
		t.Errorf("pieces in US and UK terms: %v", terms)
	}
}

// TestTermsOfPatterns writes every demonstration pattern as if it had been written in the other terms: it is read without a finding and
// every row comes to the same. Written in its own terms again it is the same file, byte for byte, as its rows set in the house style
// make of it.
func TestTermsOfPatterns(t *testing.T) {
	files := demonstration(t)
	set := files.settings(t)
	for _, slug := range files.slugs(t) {
		name := patternFile(slug)
		first := files.readPattern(t, slug)
		own := rewritten(first.Pattern, first.Pattern.Terms)
		g, found := read(name, own, set)
		none(t, found)
		other := rewritten(g.Pattern, g.Pattern.Terms.Other())
		there, found := read(name, other, set)
		none(t, found)
		if there.Pattern.Terms == first.Pattern.Terms {
			t.Errorf("%s is still in %s terms", slug, there.Pattern.Terms)
		}
		if back := rewritten(there.Pattern, first.Pattern.Terms); back != own {
			t.Errorf("%s comes back as another file:\n%s", slug, firstDifference(own, back))
		}
		one, two := proof.Of(slug, first), proof.Of(slug, there)
		if !reflect.DeepEqual(one.Values, two.Values) {
			t.Errorf("%s has other values in %s terms", slug, there.Pattern.Terms)
		}
		for i, piece := range one.Pieces {
			for k, row := range piece.Rows {
				if again := two.Pieces[i].Rows[k]; row.Label != again.Label || row.Line != again.Line || !reflect.DeepEqual(row.Stitches, again.Stitches) {
					t.Errorf("%s, %s: %s is worked otherwise in %s terms", slug, piece.Name, row.Label, there.Pattern.Terms)
				}
			}
		}
	}
}

// rewritten is the file of a pattern with its rows in the house style, and everything that depends on terms in those terms.
func rewritten(p *pattern.Pattern, terms stitch.Terms) string {
	r, text := rowsOf(p), p.File.Text
	front := strings.Index(text, "\n```\n")
	var b strings.Builder
	for line := range strings.Lines(text[:front]) {
		key, value, _ := strings.Cut(line, "=")
		switch strings.TrimSpace(key) {
		case "terms":
			line = key + "=" + strings.Replace(value, p.Terms.String(), terms.String(), 1)
		case "stitch", "how":
			line = key + "=" + stitch.Carry(value, p.Terms, terms)
		}
		b.WriteString(line)
	}
	from := front
	for _, piece := range p.Pieces {
		b.WriteString(stitch.Carry(text[from:piece.Body.From], p.Terms, terms) + r.print(piece.Rows.Lines, terms))
		from = piece.Body.To
	}
	b.WriteString(stitch.Carry(text[from:], p.Terms, terms))
	return b.String()
}

// TestTermsOfCorpus carries every row that package notation is tested with into the other terms and back.
func TestTermsOfCorpus(t *testing.T) {
	text, err := os.ReadFile(filepath.Join(root, "internal", "notation", "testdata", "rows.txt"))
	if err != nil {
		t.Fatal(err)
	}
	var r rows
	for n := range 1000 {
		r.values = append(r.values, strconv.Itoa(n))
	}
	carried, unread := 0, 0
	for line := range strings.Lines(string(text)) {
		line = strings.TrimSuffix(line, "\n")
		switch {
		case line == "", strings.HasPrefix(line, "#"), strings.HasPrefix(line, "    "):
		case line == "us":
			r.terms = stitch.US
		case line == "uk":
			r.terms = stitch.UK
		case line == "sizes", strings.HasPrefix(line, "sizes "):
			r.sizes = strings.Fields(line)[1:]
		default:
			block, found := r.read(line+"\n", r.terms)
			if len(found) > 0 { // its words are kept as they stand, in whatever terms
				unread++
				continue
			}
			r.thereAndBack(t, line, block.Lines)
			carried++
		}
	}
	if carried < 10*unread {
		t.Errorf("%d rows carried over, and %d not understood", carried, unread)
	}
	t.Logf("%d rows carried into the other terms and back", carried)
}

// TestTermsOfProse translates every text of the demonstration patterns into the other terms and back, as it is printed and as it is
// carried to be read again.
func TestTermsOfProse(t *testing.T) {
	files := demonstration(t)
	texts, changed := 0, 0
	for _, slug := range files.slugs(t) {
		p := files.readPattern(t, slug).Pattern
		for _, text := range textsOf(p) {
			there := stitch.Translate(text, p.Terms, p.Terms.Other())
			if back := stitch.Translate(there, p.Terms.Other(), p.Terms); back != text {
				t.Errorf("%s: %q\nin %s terms is %q\nand comes back as %q", slug, text, p.Terms.Other(), there, back)
			}
			there = stitch.Carry(text, p.Terms, p.Terms.Other())
			if back := stitch.Carry(there, p.Terms.Other(), p.Terms); back != text {
				t.Errorf("%s: %q\ncarried to %s terms is %q\nand comes back as %q", slug, text, p.Terms.Other(), there, back)
			}
			texts++
			if there != text {
				changed++
			}
		}
	}
	if changed == 0 {
		t.Error("no text has anything to translate")
	}
	t.Logf("%d texts, of which %d are others in the other terms", texts, changed)
}

// textsOf are the texts of a pattern: those between its slots, line by line, and those of its notes.
func textsOf(p *pattern.Pattern) []string {
	texts := []string{p.Title.Text, p.Summary.Text}
	prose.Walk(p.Text, func(l prose.Line) { texts = append(texts, l.Words(func(int) string { return "{}" })) })
	for _, piece := range p.Pieces {
		for _, l := range piece.Rows.Lines {
			if note, is := l.(*notation.Note); is {
				texts = append(texts, stitch.Translate(note.Text, stitch.US, p.Terms))
			}
		}
	}
	return texts
}
