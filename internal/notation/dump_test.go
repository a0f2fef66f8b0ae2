package notation_test

import (
	"os"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"

	"foundrow/internal/notation"
	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

func TestDump(t *testing.T) {
	var f caseFile
	if _, err := toml.DecodeFile("../../testdata/cases/rows.toml", &f); err != nil {
		t.Fatal(err)
	}
	brackets := strings.NewReplacer("{", "(", "}", ")", "<", "(", ">", ")")
	var out strings.Builder
	for _, c := range f.Case {
		terms := stitch.US
		if c.Terms == "uk" {
			terms = stitch.UK
		}
		for _, r := range c.Row {
			text := brackets.Replace(r.Text)
			file := source.NewFile(c.ID, text)
			b, fs := notation.Parse(notation.Input{File: file, Body: source.Span{To: len(text)}, Terms: terms, Sizes: c.Sizes, Specials: []string{"bs"}})
			out.WriteString(text + "\n")
			for _, l := range b.Lines {
				out.WriteString("   " + notation.Source(l, terms, nil) + "\n")
			}
			for _, f := range fs {
				out.WriteString("   !! " + f.String() + "\n")
			}
		}
	}
	os.WriteFile("/tmp/dump.txt", []byte(out.String()), 0o644)
}
