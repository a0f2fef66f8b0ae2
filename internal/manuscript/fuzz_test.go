package manuscript

import (
	"os"
	"path/filepath"
	"testing"

	"foundrow/internal/pattern"
	"foundrow/internal/prose"
	"foundrow/internal/source"
)

// FuzzReadPattern reads anything as a pattern: no panic, and every place that is returned lies inside the file.
func FuzzReadPattern(f *testing.F) {
	f.Add(readFile(f, "pullover.md").Text)
	archives, _ := filepath.Glob("testdata/*/*.txtar")
	for _, name := range append(archives, "testdata/prose.txtar") {
		if data, err := os.ReadFile(name); err == nil {
			f.Add(string(data))
		}
	}
	head := "```toml\ntitle = \"a\"\nkind = \"hat\"\nterms = \"us\"\n"
	f.Add(head + "[sizes]\ntable = \"women\"\n[measures]\na = { \"XS to S\" = \"1 cm\", M = 2 }\n```\n{a}\n")
	f.Add(head + "a = \"\nb = [\n[c\n```\n```rows a as b, reversed make 2\nRow {1}: {a}th\n")
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) > 1<<16 {
			return
		}
		file, _ := CheckText("pattern.md", []byte(text))
		p, fs := ReadPattern(file, "a", pattern.Studio{}, Published())
		plain, more := ReadPlain(file, "a", pattern.Studio{})
		for _, finding := range append(fs, more...) {
			checkPlace(t, file, finding)
		}
		checkPattern(t, p)
		checkPattern(t, &plain.Pattern)
		if _, again := ReadPattern(file, "a", pattern.Studio{}, Published()); len(again) != len(fs) {
			t.Errorf("the second time there are %d findings, not %d", len(again), len(fs))
		}
		_, _ = ReadSizes(file)
		_, _ = ReadStitches(file)
		_, _ = ReadStudio(file)
	})
}

func checkPlace(t *testing.T, f *source.File, finding source.Finding) {
	t.Helper()
	if finding.Place.Line < 1 || finding.Place.Column < 1 || finding.Place.File != f.Name || finding.Rule == "" || finding.Message == "" {
		t.Errorf("a finding stands nowhere: %v", finding)
	}
}

// checkPattern looks at every place of a pattern.
func checkPattern(t *testing.T, p *pattern.Pattern) {
	t.Helper()
	inside := func(s source.Span) {
		if s.From < 0 || s.To < s.From || s.To > len(p.File.Text) {
			t.Fatalf("%v lies outside of a file of %d bytes", s, len(p.File.Text))
		}
	}
	for _, w := range []pattern.Words{p.Title, p.Kind, p.Summary, p.Skill, p.Sizes.Table, p.Film.Page} {
		inside(w.Span)
	}
	for _, s := range p.Slots {
		inside(s.Span)
		inside(s.Formula.Span)
	}
	for _, d := range p.Counts {
		inside(d.Name.Span)
		for _, part := range d.Parts {
			inside(part.Formula.Span)
			if part.Formula.Span.From > len(p.File.Text) || part.Formula.Span.From+len(part.Formula.Text) > len(p.File.Text) {
				t.Fatalf("a formula reaches out of the file")
			}
		}
	}
	for _, piece := range p.Pieces {
		inside(piece.Span)
		inside(piece.Body)
		if piece.Body.From < piece.Span.From || piece.Body.To > piece.Span.To {
			t.Fatalf("the rows %v lie outside of their block %v", piece.Body, piece.Span)
		}
		for _, l := range piece.Rows.Lines {
			inside(l.At())
		}
	}
	checkBlocks(t, p, p.Text, inside)
	prose.Walk(p.Text, func(l prose.Line) { checkLine(t, p, l) })
}

func checkBlocks(t *testing.T, p *pattern.Pattern, blocks []prose.Block, inside func(source.Span)) {
	t.Helper()
	for _, b := range blocks {
		switch b := b.(type) {
		case *prose.Heading:
			inside(b.Span)
		case *prose.Paragraph:
			inside(b.Span)
		case *prose.Table:
			inside(b.Span)
			for _, row := range b.Rows {
				if len(row) != len(b.Head) {
					t.Fatal("the rows of a table are not alike")
				}
			}
		case *prose.Code:
			inside(b.Span)
		case *prose.Piece:
			inside(b.Span)
			if b.Index < 0 || b.Index >= len(p.Pieces) {
				t.Fatal("a piece that there is not")
			}
		case *prose.List:
			for _, item := range b.Items {
				checkBlocks(t, p, item, inside)
			}
		case *prose.Quote:
			checkBlocks(t, p, b.Blocks, inside)
		}
	}
}

func checkLine(t *testing.T, p *pattern.Pattern, l prose.Line) {
	t.Helper()
	for _, part := range l {
		if s, ok := part.(prose.Slot); ok && (s.Index < 0 || s.Index >= len(p.Slots)) {
			t.Fatal("a slot that there is not")
		}
	}
}
