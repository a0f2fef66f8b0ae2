package whole

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"foundrow/internal/grade"
	"foundrow/internal/manuscript"
	"foundrow/internal/pattern"
	"foundrow/internal/proof"
	"foundrow/internal/site"
	"foundrow/internal/source"
)

// root is where the demonstration studio lies, seen from here.
const root = "../.."

// A studio is the files of one by their names, as in "content/studio.toml".
type studio map[string]string

// demonstration reads the demonstration studio, with its handbook.
func demonstration(t testing.TB) studio {
	t.Helper()
	files := studio{}
	err := filepath.WalkDir(filepath.Join(root, "content"), func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := os.ReadFile(name)
		short, _ := filepath.Rel(root, name)
		files[filepath.ToSlash(short)] = string(data)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// open lays a studio open.
func (s studio) open(t testing.TB) *site.Desk {
	t.Helper()
	files := fstest.MapFS{}
	for name, text := range s {
		files[name] = &fstest.MapFile{Data: []byte(text)}
	}
	desk, err := site.Open(site.Plainly(files))
	if err != nil {
		t.Fatal(err)
	}
	return desk
}

// settings reads the studio.toml of a studio.
func (s studio) settings(t testing.TB) pattern.Studio {
	t.Helper()
	set, findings := manuscript.ReadStudio(source.NewFile("content/studio.toml", s["content/studio.toml"]))
	none(t, findings)
	return set
}

// slugs are the patterns of a studio in their order.
func (s studio) slugs(t testing.TB) []string {
	t.Helper()
	slugs := s.open(t).Patterns()
	if len(slugs) == 0 {
		t.Fatal("the studio has no patterns")
	}
	return slugs
}

func patternFile(slug string) string { return "content/patterns/" + slug + "/pattern.md" }

// read reads the pattern of a text, works it in every size and lets it be edited.
func read(name, text string, set pattern.Studio) (*grade.Grade, source.Findings) {
	slug := filepath.Base(filepath.Dir(name))
	p, found := manuscript.ReadPattern(source.NewFile(name, text), slug, set, manuscript.Published())
	g, more := grade.Work(p)
	found = append(found, more...)
	return g, append(found, proof.Check(g, set)...)
}

// readPattern reads one pattern of a studio, which must have no findings.
func (s studio) readPattern(t testing.TB, slug string) *grade.Grade {
	t.Helper()
	g, findings := read(patternFile(slug), s[patternFile(slug)], s.settings(t))
	none(t, findings)
	return g
}

// none fails the test for every finding.
func none(t testing.TB, findings source.Findings) {
	t.Helper()
	for _, f := range findings {
		t.Errorf("%s\n%s", f, f.Excerpt())
	}
	if len(findings) > 0 {
		t.FailNow()
	}
}

// rules are the rules of findings, each finding's.
func rules(findings source.Findings) string {
	names := make([]string, len(findings))
	for i, f := range findings {
		names[i] = f.Rule
	}
	return strings.Join(names, ", ")
}
