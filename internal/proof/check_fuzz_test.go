package proof

import (
	"os"
	"path/filepath"
	"testing"

	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// FuzzCheck reads any text as a pattern. Whatever it is, the edit comes to an end, and what it finds stands in the file.
func FuzzCheck(f *testing.F) {
	names, err := filepath.Glob(faults + "/*.md")
	if err != nil || len(names) == 0 {
		f.Fatal("no patterns to begin with", err)
	}
	for _, name := range names {
		data, err := os.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(string(data))
	}
	for _, s := range []string{"", "```toml\n```\n62 (", "1 (2", "½", "\\", "{", "`", "](", "9 (-, -) in", "4 in / 10 cm / 4 in"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		file := source.NewFile("pattern.md", text)
		for _, found := range read(file, "fuzz", pattern.Studio{}) {
			if found.Rule == "" || found.Message == "" {
				t.Errorf("a finding without a name or without words: %+v", found)
			}
			if found.Place.File == "pattern.md" && (found.Place.Line < 1 || found.Place.Column < 1) {
				t.Errorf("%s stands outside of the file", found)
			}
		}
	})
}
