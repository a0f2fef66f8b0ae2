package web

import (
	"os"
	"testing"

	"foundrow/internal/grade"
	"foundrow/internal/manuscript"
	"foundrow/internal/page"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// nine are the sizes of the pullover.
var nine = []string{"XS", "S", "M", "L", "XL", "2X", "3X", "4X", "5X"}

func studio() pattern.Studio {
	return pattern.Studio{
		Title: "Tannery Lane", Address: "https://tannery.example/", Language: "en",
		Rights:   "© 2026 Tannery Lane. Print it for yourself; link to it rather than copy it.",
		Contact:  "hello@tannery.example",
		Editions: []pattern.Terms{pattern.US, pattern.UK},
	}
}

// editions are the pages of a garment in nine sizes as long as such patterns are.
func editions(t testing.TB) []*page.Page {
	t.Helper()
	data, err := os.ReadFile("testdata/pullover.md")
	if err != nil {
		t.Fatal(err)
	}
	p, findings := manuscript.ReadPattern(source.NewFile("content/patterns/millrace/pattern.md", string(data)), "millrace", studio(), manuscript.Published())
	g, more := grade.Work(p)
	pages, rest := page.Of(g, studio())
	for _, f := range append(append(findings, more...), rest...) {
		if f.Severity == source.Error {
			t.Fatalf("the pullover has an error: %s\n%s", f, f.Excerpt())
		}
	}
	return pages
}

// pullover is the page in the terms it opens with.
func pullover(t testing.TB) *page.Page { return editions(t)[0] }
