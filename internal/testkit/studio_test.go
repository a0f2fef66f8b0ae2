package testkit

import (
	"strings"
	"testing"
	"testing/fstest"

	"foundrow/internal/site"
)

// What is measured has to be what was promised: real patterns, without errors, of the size and weight said.
func TestStudio(t *testing.T) {
	files := fstest.MapFS{}
	for name, text := range Studio(20) {
		files[name] = &fstest.MapFile{Data: []byte(text)}
	}
	desk, err := site.Open(site.Plainly(files))
	if err != nil {
		t.Fatal(err)
	}
	patterns, findings := desk.Proof(nil)
	for _, f := range findings {
		t.Error(f)
	}
	for i, p := range patterns {
		if n := len(Pattern(i)); n < 5700 || n > 6500 {
			t.Errorf("%s has %d bytes", p.Slug, n)
		}
		if len(p.Sizes) != 9 {
			t.Errorf("%s has the sizes %v", p.Slug, p.Sizes)
		}
		if n := len(p.Values); n < 40 || n > 60 {
			t.Errorf("%s has %d values", p.Slug, n)
		}
		if n := strings.Count(Pattern(i), "{") - 1; n < 79 || n > 82 { // less the ball's
			t.Errorf("%s prints %d values", p.Slug, n)
		}
	}
}
