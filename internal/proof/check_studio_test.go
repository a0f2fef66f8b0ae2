package proof

import (
	"os"
	"path/filepath"
	"testing"

	"foundrow/internal/grade"
	"foundrow/internal/manuscript"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

const content = "../../content"

// read reads and works a pattern, and returns what every stage up to the technical edit found.
func read(f *source.File, slug string, studio pattern.Studio) source.Findings {
	p, found := manuscript.ReadPattern(f, slug, studio, manuscript.Published())
	g, more := grade.Work(p)
	found = append(found, more...)
	return append(found, Check(g, studio)...)
}

func readFile(t testing.TB, name string) *source.File {
	t.Helper()
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	f, _ := manuscript.CheckText(filepath.ToSlash(name), data)
	return f
}

// TestNoFalseAlarms reads the demonstration studio, in which the technical edit has nothing to ask.
func TestNoFalseAlarms(t *testing.T) {
	studio, _ := manuscript.ReadStudio(readFile(t, content+"/studio.toml"))
	names, err := filepath.Glob(content + "/patterns/*/pattern.md")
	if err != nil || len(names) == 0 {
		t.Fatal("no patterns to read", err)
	}
	for _, name := range names {
		p, _ := manuscript.ReadPattern(readFile(t, name), filepath.Base(filepath.Dir(name)), studio, manuscript.Published())
		g, _ := grade.Work(p)
		for _, f := range Check(g, studio) {
			t.Errorf("%s\n%s", f, f.Excerpt())
		}
	}
}
