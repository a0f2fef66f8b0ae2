package site

import (
	"bytes"
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"pgregory.net/rapid"
)

// A viewer previews a studio as its files change, keeping the pages it was shown.
type viewer struct {
	memory Memory
	now    *Preview
	sheets map[string]*Sheets
}

func (v *viewer) open(t reporter, files map[string]string) {
	t.Helper()
	studio := fstest.MapFS{}
	for name, text := range files {
		studio[name] = &fstest.MapFile{Data: []byte(text)}
	}
	next, err := OpenPreview(Plainly(studio), "test", &v.memory, v.now)
	if err != nil {
		t.Fatal(err)
	}
	v.now = next
	if v.sheets == nil {
		v.sheets = map[string]*Sheets{}
	}
}

// ask asks for an output by its name.
func (v *viewer) ask(t reporter, name string) (Output, bool) {
	t.Helper()
	switch part := v.now.PartOf(name); part {
	case "":
		return Output{}, false
	case "assets":
		return v.now.Asset(name)
	case "catalogue":
		o, is, err := v.now.Catalogue(strings.TrimSuffix(name, "index.html"))
		if err != nil {
			t.Fatal(err)
		}
		return o, is
	default:
		s := v.now.Sheets(part, v.sheets[part])
		v.sheets[part] = s
		if s.Trouble != nil {
			t.Fatal(s.Trouble)
		}
		o, is := s.Outputs[name]
		return o, is
	}
}

// Whatever was changed, every page that a clean build publishes is the same when it is asked for here, and the overview finds
// what the build finds. Patterns with an error are the build's to leave out; here they come as far as they go.
func TestPreviewIsBuild(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawn{files: map[string]string{"content/studio.toml": "title = \"Dunes\"\naddress = \"https://dunes.example/\"\ncontact = \"us@dunes.example\"\n"}}
		var v viewer
		var kept shelf // what was published at every step, so that what stays of a faulty pattern is known
		var memory Memory
		for range rapid.IntRange(1, 12).Draw(t, "steps") {
			for range rapid.IntRange(0, 3).Draw(t, "changes") {
				d.change(t)
			}
			v.open(t, d.files)
			built, said := kept.build(t, d.files, &memory)
			if rapid.Bool().Draw(t, "asked before it is looked over") {
				v.compare(t, built, kept.have)
			}
			overview := v.now.Overview(nil)
			var seen []string
			for _, f := range overview.Findings {
				seen = append(seen, f.String()+fixOf(f.Fix))
			}
			if !slices.Equal(seen, said) {
				t.Fatalf("the overview finds\n%s\nand the build\n%s", strings.Join(seen, "\n"), strings.Join(said, "\n"))
			}
			v.compare(t, built, kept.have)
		}
	})
}

func fixOf(fix string) string {
	if fix == "" {
		return ""
	}
	return "\n    fix: " + fix
}

// compare asks for everything that was published, but for what stays as it was.
func (v *viewer) compare(t reporter, built Site, have map[string][]byte) {
	t.Helper()
	for _, p := range built.Parts {
		for _, name := range p.Outputs {
			if slices.ContainsFunc(built.Stayed, func(file string) bool { return strings.HasPrefix(file, "content/"+p.Name) }) {
				continue
			}
			o, is := v.ask(t, name)
			if p.Name == "catalogue" && v.now.Blocked() {
				continue
			}
			if o.From != "" {
				var err error
				if o.Data, _, err = v.now.build.Files.Read(o.From, 1<<20); err != nil {
					t.Fatal(err)
				}
			}
			if !is || !bytes.Equal(o.Data, have[name]) {
				t.Errorf("%s is %q, and was published as %q", name, o.Data, have[name])
			}
		}
	}
}

// TestPreviewWork counts what is done for each of a designer's steps. A page is made when it is asked for and not before; a change
// costs what it touches.
func TestPreviewWork(t *testing.T) {
	files := map[string]string{
		"content/studio.toml":                  "title = \"Dunes\"\naddress = \"https://dunes.example/\"\ncontact = \"us@dunes.example\"\n",
		"content/sizes/dune.toml":              table(0),
		"content/patterns/hat/pattern.md":      text("hat", "released = 2026-01-02\n", 1),
		"content/patterns/hat/it.jpg":          "a picture",
		"content/patterns/bag/pattern.md":      text("bag", "released = 2026-01-02\n", 1),
		"content/patterns/bag/it.jpg":          "a picture",
		"content/patterns/mitten/pattern.md":   text("mitten", "", 1),
		"content/patterns/mitten/it.jpg":       "a picture",
		"content/pages/about.md":               "# About\n\nWords.\n",
		"content/patterns/bonnet/pattern.md":   text("bonnet", "released = 2026-01-02\n", 2),
		"content/patterns/bonnet/it.jpg":       "a picture",
		"content/patterns/bonnet/not-shown.md": "nobody asks for this",
	}
	var v viewer
	hat, front, about := "patterns/hat/index.html", "index.html", "about/index.html"
	for _, step := range []struct {
		does string
		edit map[string]string
		asks []string
		look bool // over the whole studio
		want Work
	}{
		{does: "the first page needs itself and the menu", asks: []string{hat}, want: Work{Read: 2, Set: 1, Layouts: 1}},
		{does: "nothing has changed", asks: []string{hat, hat}, want: Work{Replayed: 1}},
		{does: "the rest is worked once", look: true, want: Work{Read: 3, Replayed: 2}},
		{does: "and is known then", look: true, asks: []string{hat}, want: Work{Replayed: 5}},
		{does: "the catalogue is made of what is known", asks: []string{front}, want: Work{Replayed: 5, Catalogue: 1}},
		{does: "one pattern is edited", edit: map[string]string{"content/patterns/hat/pattern.md": text("hat", "released = 2026-01-02\n", 2)},
			asks: []string{hat}, look: true, want: Work{Read: 1, Set: 1, Replayed: 4}},
		{does: "the catalogue tells of its new title", asks: []string{front}, want: Work{Replayed: 5, Catalogue: 1}},
		{does: "a comment in studio.toml is nothing", edit: map[string]string{"content/studio.toml": "title = \"Dunes\" # of sand\naddress = \"https://dunes.example/\"\ncontact = \"us@dunes.example\"\n"},
			asks: []string{hat, front}, look: true, want: Work{Replayed: 5}},
		{does: "a style is edited", edit: map[string]string{"layouts/pattern/pattern.css": "h1 { color: teal }"},
			asks: []string{hat}, look: true, want: Work{Read: 1, Set: 1, Replayed: 4, Layouts: 1}},
		{does: "a size table is edited", edit: map[string]string{"content/sizes/dune.toml": table(1)},
			asks: []string{hat}, look: true, want: Work{Read: 4, Set: 1, Replayed: 1}},
		{does: "a picture is edited", edit: map[string]string{"content/patterns/bag/it.jpg": "another picture"},
			asks: []string{hat}, look: true, want: Work{Read: 1, Replayed: 4}},
		{does: "what nobody asks for is edited", edit: map[string]string{"content/patterns/bonnet/not-shown.md": "still nobody"},
			asks: []string{hat}, look: true, want: Work{Replayed: 5}},
		{does: "a page is edited below its title", edit: map[string]string{"content/pages/about.md": "# About\n\nOther words.\n"},
			asks: []string{hat, about}, look: true, want: Work{Read: 1, Set: 1, Replayed: 4}},
		{does: "a page is renamed in the menu", edit: map[string]string{"content/pages/about.md": "# About us\n\nOther words.\n"},
			asks: []string{hat, about}, look: true, want: Work{Read: 2, Set: 2, Replayed: 3}},
		{does: "a draft is edited", edit: map[string]string{"content/patterns/mitten/pattern.md": text("mitten", "", 3)},
			asks: []string{hat, "patterns/mitten/index.html"}, look: true, want: Work{Read: 1, Set: 1, Replayed: 4}},
		{does: "a pattern goes", edit: map[string]string{"content/patterns/bonnet/pattern.md": "", "content/patterns/bonnet/it.jpg": "", "content/patterns/bonnet/not-shown.md": ""},
			asks: []string{hat}, look: true, want: Work{Replayed: 4}},
	} {
		for name, text := range step.edit {
			if files[name] = text; text == "" {
				delete(files, name)
			}
		}
		v.open(t, maps.Clone(files))
		for _, name := range step.asks {
			if _, is := v.ask(t, name); !is {
				t.Errorf("%s: there is no %s", step.does, name)
			}
		}
		if step.look {
			v.now.Overview(nil)
		}
		if got := v.now.Work(); got != step.want {
			t.Errorf("%s: the work was %+v, wanted %+v", step.does, got, step.want)
		}
	}
}

// TestPreviewOfFaults shows what is made while something is wrong.
func TestPreviewOfFaults(t *testing.T) {
	files := map[string]string{
		"content/studio.toml":                "title = \"Dunes\"\naddress = \"https://dunes.example/\"\ncontact = \"us@dunes.example\"\n",
		"content/sizes/dune.toml":            table(0),
		"content/patterns/hat/pattern.md":    text("hat", "released = 2026-01-02\n", 1),
		"content/patterns/hat/it.jpg":        "a picture",
		"content/patterns/mitten/pattern.md": text("mitten", "", 1),
		"content/patterns/mitten/it.jpg":     "a picture",
	}
	var v viewer
	v.open(t, files)
	good := v.now.Sheets("patterns/hat", nil)
	if !good.Good || good.State != Published || good.Title != "The hat 1" {
		t.Fatalf("the hat is %+v", good.Manuscript)
	}
	if s := v.now.Sheets("patterns/mitten", nil); !s.Good || s.State != Unreleased || s.Outputs["patterns/mitten/index.html"].Data == nil {
		t.Errorf("the mitten, which is not released, is %+v", s.Manuscript)
	}
	if o, _ := v.ask(t, "index.html"); bytes.Contains(o.Data, []byte("mitten")) {
		t.Error("the mitten stands in the catalogue before it is released")
	}
	v.now.Overview(nil)

	files["content/patterns/hat/pattern.md"] = text("hat", "released = 2026-01-02\n[counts]\nwide = \"unheard_of + 1\"\n", 2)
	v.open(t, files)
	faulty := v.now.Sheets("patterns/hat", good)
	if faulty.Good || faulty.State != Faulty || !faulty.Findings.Errors() {
		t.Errorf("the faulty hat is %+v", faulty.Manuscript)
	}
	if data := faulty.Outputs["patterns/hat/index.html"].Data; !bytes.Contains(data, []byte("The hat 2")) {
		t.Errorf("the faulty hat does not come as far as it goes: %q", data)
	}
	if o, _ := v.ask(t, "index.html"); !bytes.Contains(o.Data, []byte("The hat 1")) {
		t.Error("the catalogue has lost the card that the hat had before")
	}

	files["content/patterns/hat/pattern.md"] = text("hat", "released = 2026-01-02\n", 1)
	files["layouts/pattern/pattern.html"] = "{{define \"main\"}}{{.Nonsense}}{{end}}"
	v.open(t, files)
	if s := v.now.Sheets("patterns/hat", faulty); s.Good || !v.now.Blocked() || !v.now.Shared().Errors() {
		t.Errorf("with a broken layout the hat is %+v", s.Manuscript)
	}
	delete(files, "layouts/pattern/pattern.html")
	v.open(t, files)
	if s := v.now.Sheets("patterns/hat", faulty); !s.Good || v.now.Blocked() {
		t.Errorf("with the layout mended the hat is %+v", s.Manuscript)
	}
	delete(files, "content/patterns/hat/pattern.md")
	delete(files, "content/patterns/hat/it.jpg")
	v.open(t, files)
	if s := v.now.Sheets("patterns/hat", faulty); s != nil {
		t.Errorf("the hat, which is gone, is %+v", s.Manuscript)
	}
}

// TestPreviewOfMany asks a preview from many sides at once; it is for the race detector.
func TestPreviewOfMany(t *testing.T) {
	files := map[string]string{"content/studio.toml": "title = \"Dunes\"\naddress = \"https://dunes.example/\"\ncontact = \"us@dunes.example\"\n", "content/sizes/dune.toml": table(0)}
	for i := range 20 {
		files[fmt.Sprintf("content/patterns/hat-%d/pattern.md", i)] = text("hat", "released = 2026-01-02\n", i%4)
		files[fmt.Sprintf("content/pages/page-%d.md", i)] = fmt.Sprintf("# Page %d\n\nWords.\n", i)
	}
	var v viewer
	for step := range 3 {
		files["content/pages/page-1.md"] = fmt.Sprintf("# Page %d\n", step)
		v.open(t, maps.Clone(files))
		done := make(chan bool)
		now := v.now
		go func() { now.Overview(nil); done <- true }()
		go func() { now.Catalogue(""); done <- true }()
		go func() { now.Catalogue("kind/other/"); done <- true }()
		for i := range 20 {
			go func() {
				now.Sheets(fmt.Sprintf("patterns/hat-%d", i), nil)
				now.Sheets(fmt.Sprintf("pages/page-%d", i), nil)
				done <- true
			}()
		}
		for range 10 {
			<-done
		}
		v.open(t, maps.Clone(files)) // while the one before is still being asked
		for range 13 {
			<-done
		}
	}
}

// A mistake of ours over one manuscript is told as ours, and the preview goes on.
func TestOurOwnMistake(t *testing.T) {
	r, trouble := guarded(leaf{file: "content/patterns/hat/pattern.md"}, func() *Result { panic("lost the thread") })
	if r.State != Faulty || trouble == nil || !strings.Contains(trouble.Error(), "over content/patterns/hat/pattern.md: lost the thread") {
		t.Errorf("the result is %+v, the trouble %v", r, trouble)
	}
}
