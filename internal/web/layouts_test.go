package web

import (
	"bytes"
	"strings"
	"testing"

	"foundrow/internal/page"
)

func TestOverride(t *testing.T) {
	l, findings := Load(map[string]string{
		"pattern/pattern.html": "{{define \"main\"}}\n<h1>{{.Pattern.Title}}</h1>\n{{.Key}}\n{{template \"instructions\" .}}\n{{end}}",
		"pattern/pattern.css":  ".mine { color: rebeccapurple; }",
		"pattern/pattern.js":   "document.body.title = 'mine'",
	})
	if len(findings) > 0 {
		t.Fatal(findings)
	}
	p := pullover(t)
	all := tree(t, func() ([]byte, error) { return l.Pattern(p) })
	if n := len(find(all, "table.sizes")); n != 0 {
		t.Error("the table of sizes is still there, though the studio's layout has none")
	}
	if words(one(t, all, "h1")) != "Millrace Pullover" || len(find(all, "figure.piece")) != len(p.Pieces) {
		t.Error("the parts that the studio's layout asks for are not there")
	}
	style, script := "", ""
	for _, n := range find(all, "link") {
		if attr(n, "rel") == "stylesheet" {
			style = attr(n, "href")
		}
	}
	for _, n := range find(all, "script") {
		script = attr(n, "src")
	}
	for _, asset := range [...]struct{ link, says string }{{style, ".mine{color:"}, {script, "document.body.title"}} {
		found := false
		for _, a := range l.Assets() {
			found = found || "../../"+a.Name == asset.link && bytes.Contains(a.Data, []byte(asset.says))
		}
		if !found {
			t.Errorf("no asset %q says %s", asset.link, asset.says)
		}
	}
	// The other pages keep the built-in style.
	if built := loaded(t); built.paper.style != l.paper.style || built.pattern.style == l.pattern.style {
		t.Error("the studio's style is not on the pattern's page alone")
	}
}

func TestAssetsAreNamedByContent(t *testing.T) {
	a, b := loaded(t), loaded(t)
	for i, asset := range a.Assets() {
		if other := b.Assets()[i]; other.Name != asset.Name || !bytes.Equal(other.Data, asset.Data) {
			t.Errorf("%s and %s of the same layouts differ", asset.Name, other.Name)
		}
		if bytes.Contains(asset.Data, []byte("/*")) || bytes.Contains(asset.Data, []byte("\n")) {
			t.Errorf("%s is not minified", asset.Name)
		}
	}
	changed, _ := Load(map[string]string{"frame/frame.css": "body { margin: 0; }"})
	if changed.pattern.style == a.pattern.style {
		t.Error("another style has the same name")
	}
}

// A mistake in a layout is found when it is loaded, at its line, also where a page would seldom come.
func TestMistakes(t *testing.T) {
	for _, c := range []struct {
		name, text string
		at, says   string // rule, file and line; a part of the message
	}{
		{"pattern/pattern.html", "{{define \"main\"}}\n<p>{{.Pattern.Title}</p>\n{{end}}", "layout-syntax layouts/pattern/pattern.html:2", "bad character"},
		{"pattern/pattern.html", "{{define \"main\"}}\n<h1>x</h1>\n", "layout-syntax layouts/pattern/pattern.html:3", "unexpected EOF"},
		{"pattern/pattern.html", "{{define \"main\"}}\n\n<p>{{.Pattern.Titel}}</p>\n{{end}}", "layout-syntax layouts/pattern/pattern.html:3", "Titel"},
		{"pattern/pattern.html", "{{define \"main\"}}\n{{range .Pattern.Photos}}\n<img alt=\"{{.Alternative}}\">\n{{end}}{{end}}", "layout-syntax layouts/pattern/pattern.html:3", "Alternative"},
		{"pattern/pattern.html", "{{define \"main\"}}\n{{if .Pattern.Photos}}{{else}}\n{{.Nothing}}{{end}}{{end}}", "layout-syntax layouts/pattern/pattern.html:3", "Nothing"},
		{"pattern/pattern.html", "{{define \"main\"}}\n<a href=\"{{.Home}}\n>x</a>{{end}}", "layout-syntax layouts/pattern/pattern.html:1", "as the rest of the page uses it"},
		{"words/words.html", strings.Replace(builtIn()["words/words.html"], "with .Sizes", "with .Sizes.Names", 1), "layout-syntax layouts/words/words.html:2", "Names"},
		{"words/words.html", "{{define \"sizes\"}}{{.Sizes}}{{end}}", "layout-syntax layouts/words/words.html:1", "no such template"},
		{"frame/frame.html", "<!doctype html>\n<title>{{.Title}}</title>\n{{template \"mian\" .}}", "layout-syntax layouts/frame/frame.html:3", "mian"},
		{"catalogue/catalogue.html", "{{define \"main\"}}\n{{.Pattern.Title.Words}}\n{{end}}", "layout-syntax layouts/catalogue/catalogue.html:2", "Words"},
		{"pattern/pattern.js", "let a = 1;\nlet = = 2;", "layout-syntax layouts/pattern/pattern.js:2", "unexpected"},
		{"patern/patern.html", "x", "unknown-layout layouts/patern/patern.html:1", "patern/patern.html"},
		{"readme.txt", "x", "unknown-layout layouts/readme.txt:1", "readme.txt"},
	} {
		l, findings := Load(map[string]string{c.name: c.text})
		if len(findings) == 0 {
			t.Errorf("%s %q is taken as it is", c.name, c.text)
			continue
		}
		f := findings[0]
		if at := f.Rule + " " + strings.TrimPrefix(f.String(), ""); !strings.HasPrefix(at, c.at) || !strings.Contains(f.Message, c.says) {
			t.Errorf("%s %q: %s, want %s … %s", c.name, c.text, f, c.at, c.says)
		}
		if len(findings) > 1 {
			t.Errorf("one mistake in %s makes %d findings: %v", c.name, len(findings), findings)
		}
		if _, err := l.Pattern(pullover(t)); err != nil {
			t.Errorf("with %s wrong no page can be set: %v", c.name, err)
		}
	}
}

func TestUnknownLayoutFix(t *testing.T) {
	_, findings := Load(map[string]string{"patern/pattern.css": ""})
	if len(findings) != 1 || !strings.Contains(findings[0].Fix, "layouts/pattern/pattern.css") {
		t.Errorf("%v", findings)
	}
}

// A page that has nothing to show leaves no empty sections.
func TestEmptyPattern(t *testing.T) {
	l := loaded(t)
	p := &page.Page{Address: "patterns/x/", Beside: "patterns/x/", Print: "patterns/x/print/", Title: "X"}
	all := tree(t, func() ([]byte, error) { return l.Pattern(p) })
	if n := find(all, "h2"); len(n) != 0 {
		t.Errorf("an empty pattern has the section %q", words(n[0]))
	}
	if n := len(find(all, "nav")); n != 0 {
		t.Errorf("an empty pattern has %d lists of links", n)
	}
}
