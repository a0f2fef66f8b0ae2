package notation_test

import (
	"strings"
	"testing"

	"github.com/BurntSushi/toml"

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

// eachCase calls visit with the rows of every case as a block: each of its notes as a rule where it states one, else as a note; braces and
// angle brackets written as ( ).
func eachCase(t testing.TB, visit func(id, block string, rows int, terms stitch.Terms, sizes []string)) {
	var f caseFile
	if _, err := toml.DecodeFile("../../testdata/cases/rows.toml", &f); err != nil {
		t.Fatal(err)
	}
	brackets := strings.NewReplacer("{", "(", "}", ")", "<", "(", ">", ")")
	for _, c := range f.Case {
		terms := stitch.US
		if c.Terms == "uk" {
			terms = stitch.UK
		}
		var b strings.Builder
		for _, note := range c.Notes {
			note = brackets.Replace(note)
			if _, fs := read("Throughout: "+note, terms, c.Sizes, nil); len(fs) == 0 {
				b.WriteString("Throughout: " + note + "\n")
			} else {
				b.WriteString("Note: " + note + "\n")
			}
		}
		for _, r := range c.Row {
			b.WriteString(brackets.Replace(r.Text) + "\n")
		}
		visit(c.ID, b.String(), len(c.Row), terms, c.Sizes)
	}
}

// TestCases reads every row of the case file as its pattern printed it and tells how many were read to the last word.
func TestCases(t *testing.T) {
	rows, unread := 0, 0
	eachCase(t, func(id, block string, n int, terms stitch.Terms, sizes []string) {
		rows += n
		b, fs := read(block, terms, sizes, nil)
		if lines := strings.Count(block, "\n"); len(b.Lines) < lines {
			t.Errorf("%s: %d lines of %d", id, len(b.Lines), lines)
		}
		bad := make(map[int]bool)
		for _, f := range fs {
			bad[f.Place.Line] = true
			t.Logf("%s: %s\n%s", id, f, f.Excerpt())
		}
		unread += len(bad)
	})
	t.Logf("%d of %d rows read to the last word", rows-unread, rows)
	if unread*100 > rows*5 {
		t.Errorf("more than 5 in 100 rows are not read: %d of %d", unread, rows)
	}
}

// TestCasesComeBack prints every row of the case file in both terms and reads it again.
func TestCasesComeBack(t *testing.T) {
	eachCase(t, func(id, block string, _ int, terms stitch.Terms, sizes []string) {
		var rules, rows []string
		for _, line := range strings.Split(strings.TrimSpace(block), "\n") {
			if strings.HasPrefix(line, "Throughout:") {
				rules = append(rules, line)
			} else {
				rows = append(rows, line)
			}
		}
		for _, row := range rows {
			check(t, strings.Join(append(rules[:len(rules):len(rules)], row), "\n"), terms, sizes, nil)
		}
	})
}
