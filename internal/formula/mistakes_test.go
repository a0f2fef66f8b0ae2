package formula

import (
	"os"
	"strings"
	"testing"

	"foundrow/internal/source"
)

// TestMistakes holds what is said of formulas that cannot stand against the table. UPDATE=1 writes the table anew.
func TestMistakes(t *testing.T) {
	const name = "testdata/mistakes.txt"
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	g := readGiven(t)
	var told strings.Builder
	for line := range strings.Lines(string(text)) {
		line = strings.TrimRight(line, "\n")
		switch {
		case strings.HasPrefix(line, "    "):
			continue // what was told of the formula above
		case line == "" || line[0] == '#':
			told.WriteString(line + "\n")
			continue
		}
		told.WriteString(line + "\n")
		if findings := g.mistakes(line); len(findings) > 0 {
			told.WriteString(findings)
		} else {
			t.Errorf("nothing is said of %s", line)
		}
	}
	if told.String() == string(text) {
		return
	}
	if os.Getenv("UPDATE") != "" {
		if err := os.WriteFile(name, []byte(told.String()), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	t.Errorf("what is said of mistakes has changed; it is now:\n%s", told.String())
}

// mistakes says what is wrong with a formula: a caret below each column, the rule, what is so and the fix.
func (g *given) mistakes(line string) string {
	text := line
	if line == "(empty)" {
		text = ""
	}
	file := source.NewFile("table", text)
	f, findings := Parse(file, 0, text)
	_, more := f.Check(&g.scope)
	findings = append(findings, more...)
	findings.Sort()
	var b strings.Builder
	for _, fd := range findings {
		b.WriteString("    " + strings.Repeat(" ", fd.Place.Column-1) + strings.Repeat("^", max(1, fd.Place.Width)) + "\n")
		b.WriteString("    " + fd.Rule + ": " + fd.Message + "\n")
		if fd.Fix != "" {
			b.WriteString("    fix: " + fd.Fix + "\n")
		}
	}
	return b.String()
}
