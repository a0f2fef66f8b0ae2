package notation_test

import (
	"strings"
	"testing"

	"github.com/BurntSushi/toml"

	"foundrow/internal/notation"
	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

type caseFile struct {
	Case []struct {
		ID        string   `toml:"id"`
		Terms     string   `toml:"terms"`
		Sizes     []string `toml:"sizes"`
		Notes     []string `toml:"notes"`
		StartKind string   `toml:"start_kind"`
		Row       []struct {
			Text string `toml:"text"`
		} `toml:"row"`
	} `toml:"case"`
}

// TestCases reads every row of the case file as its pattern printed it, braces and angle brackets written as ( ), and tells how many
// were read to the last word.
func TestCases(t *testing.T) {
	var f caseFile
	if _, err := toml.DecodeFile("../../testdata/cases/rows.toml", &f); err != nil {
		t.Fatal(err)
	}
	brackets := strings.NewReplacer("{", "(", "}", ")", "<", "(", ">", ")")
	rows, read := 0, 0
	for _, c := range f.Case {
		terms := stitch.US
		if c.Terms == "uk" {
			terms = stitch.UK
		}
		for _, r := range c.Row {
			rows++
			text := brackets.Replace(r.Text)
			file := source.NewFile(c.ID, text)
			b, fs := notation.Parse(notation.Input{File: file, Body: source.Span{To: len(text)}, Terms: terms, Sizes: c.Sizes, Specials: []string{"bs"}})
			if len(b.Lines) != 1 {
				t.Errorf("%s: %d lines of one row", c.ID, len(b.Lines))
			}
			clean := true
			for _, f := range fs {
				clean = false
				t.Logf("%s\n   %s\n%s", text, f, f.Excerpt())
			}
			if clean {
				read++
			}
		}
	}
	t.Logf("%d of %d rows read to the last word", read, rows)
	if read*100 < rows*95 {
		t.Errorf("fewer than 95 of 100 rows read")
	}
}
