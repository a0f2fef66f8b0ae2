package notation_test

import (
	"os"
	"strings"
	"testing"

	"foundrow/internal/stitch"
)

// TestRows reads testdata/rows.txt: rows as patterns write them, each followed by what it is read as, printed in the house style, and by
// the findings it gives. A line of its own sets the terms ("uk") or the sizes ("sizes S M L") of what follows. UPDATE=1 writes the file
// anew.
func TestRows(t *testing.T) {
	const name = "testdata/rows.txt"
	written, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	var out strings.Builder
	terms, sizes := stitch.US, []string(nil)
	rows := 0
	for line := range strings.Lines(string(written)) {
		line = strings.TrimSuffix(line, "\n")
		if strings.HasPrefix(line, "    ") {
			continue
		}
		out.WriteString(line + "\n")
		switch {
		case line == "", strings.HasPrefix(line, "#"):
			continue
		case line == "us":
			terms = stitch.US
			continue
		case line == "uk":
			terms = stitch.UK
			continue
		case line == "sizes", strings.HasPrefix(line, "sizes "):
			sizes = strings.Fields(line)[1:]
			continue
		}
		rows++
		b, fs := read(line, terms, sizes, nil)
		out.WriteString("    " + strings.ReplaceAll(write(b, terms), "\n", "\n    ") + "\n")
		for _, f := range fs {
			out.WriteString("    ! " + f.Rule + " at " + at(f.Place.Text, f.Place.Column, f.Place.Width) + ": " + f.Message + "\n")
		}
		check(t, line, terms, sizes, nil)
	}
	if rows == 0 {
		t.Fatal("the file has no rows")
	}
	if os.Getenv("UPDATE") != "" {
		if err := os.WriteFile(name, []byte(out.String()), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, got := strings.Split(string(written), "\n"), strings.Split(out.String(), "\n")
	for i := range max(len(want), len(got)) {
		if i >= len(want) || i >= len(got) || want[i] != got[i] {
			t.Errorf("%s:%d: is read as\n%s", name, i+1, strings.Join(got[max(0, i-1):min(len(got), i+3)], "\n"))
			break
		}
	}
}

// at returns the words that a finding underlines.
func at(line string, column, width int) string {
	r := []rune(line)
	from := min(max(column-1, 0), len(r))
	return "`" + string(r[from:min(from+width, len(r))]) + "`"
}
