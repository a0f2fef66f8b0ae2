package ledger_test

import (
	"os"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"

	"foundrow/internal/ledger"
	"foundrow/internal/notation"
	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

// FuzzWork: whatever can be read can be worked, in both terms and in two sizes: no panic, the accounts balance, every report is about a
// place of the file, and the words for it are there.
func FuzzWork(f *testing.F) {
	var cases caseFile
	if _, err := toml.DecodeFile("../../testdata/cases/rows.toml", &cases); err != nil {
		f.Fatal(err)
	}
	for i := range cases.Case {
		for _, b := range cases.Case[i].blocks() {
			f.Add(strings.Join(b.lines, "\n"), cases.Case[i].Terms == "uk")
		}
	}
	table, err := os.ReadFile("testdata/pieces.txt")
	if err != nil {
		f.Fatal(err)
	}
	for _, c := range strings.Split(string(table), "\n# ") {
		var lines []string
		for _, line := range strings.Split(c, "\n")[1:] {
			lines = append(lines, readMarks(line).text)
		}
		f.Add(strings.Join(lines, "\n"), false)
	}
	f.Add("Start: 10000000 sts.\nRow 1: Ch 1, turn, *sc, ch 1, sk 1; rep from * across.", false)
	f.Add("Start: 3 sts.\nRows 1 to 9999999: Ch 1, turn, 2 sc in first st, sc in each st across.", false)
	f.Add("Start: 3 sts.\nRow 1: Ch 1, turn, [[[[sc in next st] 9999999 times] 9999999 times] 9999999 times] 9999999 times.", false)
	f.Add("Throughout: C = C.\nRow 1: C in next st.", false)
	f.Add("Start: (ch 22, hdc in 3rd ch from hook and next 19 ch) across.", false)
	f.Add("Start: 20 sts.\nRnd 1: Sl st in next 21 sts, ch 1, sc around.", false)
	f.Fuzz(func(t *testing.T, text string, uk bool) {
		if len(text) > 4000 {
			return
		}
		terms := stitch.US
		if uk {
			terms = stitch.UK
		}
		file := source.NewFile("rows", text)
		sizes := []string{"S", "M"}
		tree, _ := notation.Parse(notation.Input{File: file, Body: source.Span{To: len(text)}, Terms: terms, Sizes: sizes})
		pieces := make([]ledger.Piece, len(sizes))
		for i := range pieces {
			pieces[i] = ledger.Piece{Name: "a", Block: tree, Sizes: sizes, Size: i}
		}
		books, reports := ledger.WorkSizes(pieces)
		for i, b := range books {
			if wrong := balanced(b); wrong != "" {
				t.Errorf("%q: %s", text, wrong)
			}
			for _, which := range []string{"last", "foundation", "left", "right", "row 1"} {
				if e, ok := b.Edge(which); ok {
					e.Cut(e.Stitches() / 2)
				}
			}
			for row := range b.Rows {
				b.Counts(row)
			}
			b.Total()
			for _, r := range reports[i] {
				if r.Span.From < 0 || r.Span.To > len(text) || r.Span.From > r.Span.To {
					t.Errorf("%q: %v lies outside", text, r)
				}
			}
		}
		for _, found := range ledger.Findings(file, sizes, reports) {
			if found.Message == "" || found.Message == found.Rule {
				t.Errorf("%q: no words for %s", text, found.Rule)
			}
		}
	})
}
