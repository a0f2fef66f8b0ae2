package notation_test

import (
	"os"
	"strings"
	"testing"

	"foundrow/internal/stitch"
)

func TestDump(t *testing.T) {
	b, _ := os.ReadFile("testdata/rows2.in")
	var out strings.Builder
	terms := stitch.US
	var sizes []string
	for _, line := range strings.Split(strings.TrimSpace(string(b)), "\n") {
		out.WriteString(line + "\n")
		switch {
		case strings.HasPrefix(line, "#"):
			continue
		case line == "us":
			terms = stitch.US
			continue
		case line == "uk":
			terms = stitch.UK
			continue
		case strings.HasPrefix(line, "sizes"):
			sizes = strings.Fields(line)[1:]
			continue
		}
		bl, fs := read(line, terms, sizes, nil)
		out.WriteString("    " + strings.ReplaceAll(write(bl, terms), "\n", "\n    ") + "\n")
		for _, f := range fs {
			out.WriteString("    ! " + f.String() + "\n")
		}
		check(t, line, terms, sizes, nil)
	}
	os.WriteFile("/tmp/dump.txt", []byte(out.String()), 0o644)
}
