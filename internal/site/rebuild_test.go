package site

import (
	"bytes"
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// A drawn studio is changed at random. Each of its files is one of a few texts, so that going back and forth is common.
type drawn struct{ files map[string]string }

func (d *drawn) change(t *rapid.T) {
	slug := rapid.SampledFrom([]string{"hat", "bag"}).Draw(t, "slug")
	n := rapid.IntRange(0, 3).Draw(t, "version")
	pattern := "content/patterns/" + slug + "/pattern.md"
	switch rapid.SampledFrom([]string{"pattern", "pattern", "faulty", "draft", "remove", "picture", "page", "no page", "table", "layout", "studio"}).Draw(t, "change") {
	case "pattern":
		d.files[pattern] = text(slug, "released = 2026-01-02\n", n)
		d.files["content/patterns/"+slug+"/it.jpg"] = "a picture"
		d.files["content/sizes/dune.toml"] = table(0)
	case "faulty":
		d.files[pattern] = text(slug, "released = 2026-01-02\n[counts]\nwide = \"unheard_of + 1\"\n", n)
	case "draft":
		d.files[pattern] = text(slug, "", n)
	case "remove":
		maps.DeleteFunc(d.files, func(name, _ string) bool { return strings.HasPrefix(name, "content/patterns/"+slug+"/") })
	case "picture":
		picture := "content/patterns/" + slug + rapid.SampledFrom([]string{"/it.jpg", "/is.jpg"}).Draw(t, "name")
		if d.files[picture] = fmt.Sprint("picture ", n%2); n >= 2 {
			delete(d.files, picture)
		}
	case "page":
		d.files["content/pages/about-"+slug+".md"] = fmt.Sprintf("# About the %s %d\n\nSee [it](/patterns/%s/#part-%d).\n", slug, n/2, slug, n)
	case "no page":
		delete(d.files, "content/pages/about-"+slug+".md")
	case "table":
		if d.files["content/sizes/dune.toml"] = table(n); n == 3 {
			delete(d.files, "content/sizes/dune.toml")
		}
	case "layout":
		if d.files["layouts/pattern/pattern.css"] = fmt.Sprintf("h1 { margin: %dpx }", n); n == 0 {
			delete(d.files, "layouts/pattern/pattern.css")
		}
	case "studio":
		d.files["content/studio.toml"] = fmt.Sprintf("# %d\ntitle = \"Dunes %d\"\naddress = \"https://dunes.example/\"\ncontact = \"us@dunes.example\"\n", n, n/2)
	}
}

func text(slug, more string, n int) string {
	return fmt.Sprintf("```toml\ntitle = \"The %s %d\"\nkind = \"other\"\nterms = \"us\"\nversion = \"%d\"\n%s[sizes]\ntable = \"dune\"\noffer = \"S to L\"\n"+
		"[body]\n```\n\n## Part %d\n\nWork {head}. See ![it](it.jpg) and [all](/kind/other/).\n", slug, n, n, strings.Replace(more, "[counts]", "[measures]\n[counts]", 1), n)
}

func table(n int) string {
	return fmt.Sprintf("source = \"measured\"\nsizes = [\"S\", \"M\", \"L\"]\n[body.head]\ncm = [52, 55, %d]\n", 58+n)
}

// Whatever was changed, building with what is remembered comes out as building without: the same findings, the same files with the
// same bytes. Patterns with an error stay as they were published, which a clean build cannot know: so it is told of them.
func TestRebuildIsBuild(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawn{files: map[string]string{"content/studio.toml": "title = \"Dunes\"\naddress = \"https://dunes.example/\"\ncontact = \"us@dunes.example\"\n"}}
		var kept shelf
		memory := new(Memory)
		for range rapid.IntRange(1, 6).Draw(t, "builds") {
			for range rapid.IntRange(0, 5).Draw(t, "changes") {
				d.change(t)
			}
			if rapid.Bool().Draw(t, "from text") {
				memory = Remember(memory.Text())
			}
			before := maps.Clone(kept.have)
			clean := shelf{before: kept.before, have: spoilt(kept.have)}
			_, said := kept.build(t, d.files, memory)
			_, again := clean.build(t, d.files, nil)
			if !slices.Equal(said, again) {
				t.Fatalf("remembering, the findings are\n%s\nand otherwise\n%s", strings.Join(said, "\n"), strings.Join(again, "\n"))
			}
			for name, data := range clean.have {
				if bytes.Equal(data, spoil) {
					clean.have[name] = before[name]
				}
			}
			if !maps.EqualFunc(kept.have, clean.have, bytes.Equal) {
				t.Fatalf("remembering, the outputs are\n%v\nand otherwise\n%v", kept.names(), clean.names())
			}
		}
	})
}

var spoil = []byte("spoilt")

// spoilt returns outputs with their bytes spoilt: a clean build makes all anew but for those that stay as they were.
func spoilt(have map[string][]byte) map[string][]byte {
	out := map[string][]byte{}
	for name := range have {
		out[name] = spoil
	}
	return out
}
