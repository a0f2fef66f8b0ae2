package web

import (
	"bytes"
	"path"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"foundrow/internal/page"
	"foundrow/internal/prose"
)

// loaded returns the built-in layouts.
func loaded(t testing.TB) *Layouts {
	t.Helper()
	l, findings := Load(nil)
	if len(findings) > 0 {
		t.Fatal(findings)
	}
	return l
}

// tree parses a page and returns all its elements in order.
func tree(t *testing.T, set func() ([]byte, error)) []*html.Node {
	t.Helper()
	out, err := set()
	if err != nil {
		t.Fatal(err)
	}
	root, err := html.Parse(bytes.NewReader(out))
	if err != nil {
		t.Fatal(err)
	}
	var all []*html.Node
	for n := range root.Descendants() {
		if n.Type == html.ElementNode {
			all = append(all, n)
		}
	}
	return all
}

func attr(n *html.Node, name string) string {
	for _, a := range n.Attr {
		if a.Key == name {
			return a.Val
		}
	}
	return ""
}

// words returns the text of an element, its white space drawn together.
func words(n *html.Node) string {
	var b strings.Builder
	for d := range n.Descendants() {
		if d.Type == html.TextNode {
			b.WriteString(d.Data)
		}
	}
	return strings.Join(strings.Fields(b.String()), " ")
}

// find returns the elements of a tag, with a class if one is given: "li", "p.key".
func find(all []*html.Node, what string) []*html.Node {
	tag, class, _ := strings.Cut(what, ".")
	var out []*html.Node
	for _, n := range all {
		if n.Data == tag && (class == "" || slices.Contains(strings.Fields(attr(n, "class")), class)) {
			out = append(out, n)
		}
	}
	return out
}

func one(t *testing.T, all []*html.Node, what string) *html.Node {
	t.Helper()
	found := find(all, what)
	if len(found) != 1 {
		t.Fatalf("%d of %s on the page, want 1", len(found), what)
	}
	return found[0]
}

// settings are all kinds of page that the pullover's studio has.
func settings(t *testing.T) map[string]func() ([]byte, error) {
	l, p := loaded(t), pullover(t)
	for _, name := range []string{"about", "handbook", "formulas", "rows", "sizes"} {
		p.Menu = append(p.Menu, page.Link{Address: page.PlainAddress(name), Title: name})
	}
	uk := editions(t)[1]
	plain := *p
	plain.Address, plain.Beside, plain.Print = "about/", "about/", ""
	shelf := page.Catalogues(studio(), []page.Card{p.Card(), {Slug: "sluice", Title: "Sluice Hat", Kind: "hat"}}, p.Menu)
	return map[string]func() ([]byte, error){
		p.Address:        func() ([]byte, error) { return l.Pattern(p) },
		p.Print:          func() ([]byte, error) { return l.Print(p) },
		uk.Address:       func() ([]byte, error) { return l.Pattern(uk) },
		uk.Print:         func() ([]byte, error) { return l.Print(uk) },
		"about/":         func() ([]byte, error) { return l.Plain(&plain) },
		"":               func() ([]byte, error) { return l.Catalogue(&shelf[0]) },
		shelf[1].Address: func() ([]byte, error) { return l.Catalogue(&shelf[1]) },
	}
}

// What holds for every page: it can be read by ear, by keyboard, and from any folder.
func TestEveryPage(t *testing.T) {
	assets := map[string]bool{}
	for _, a := range loaded(t).Assets() {
		assets[a.Name] = true
	}
	for address, set := range settings(t) {
		all := tree(t, set)
		if lang := attr(one(t, all, "html"), "lang"); lang != "en" {
			t.Errorf("%q: the language is %q", address, lang)
		}
		one(t, all, "main")
		one(t, all, "h1")
		if title := words(one(t, all, "title")); title == "" {
			t.Errorf("%q has no title", address)
		}
		if n := len(find(all, "script")); n != 0 {
			t.Errorf("%q needs %d scripts", address, n)
		}
		outline(t, address, all)
		places(t, address, all)
		for _, n := range all {
			for _, name := range []string{"href", "src"} {
				leads(t, address, attr(n, name), assets)
			}
			if n.Data == "img" && attr(n, "alt") == "" {
				t.Errorf("%q shows %s without words for it", address, attr(n, "src"))
			}
			if n.Data == "th" && attr(n, "scope") == "" {
				t.Errorf("%q: the heading %q of a table is of no column or row", address, words(n))
			}
			if attr(n, "class") == "scroll" && (attr(n, "tabindex") != "0" || attr(n, "aria-label") == "") {
				t.Errorf("%q: a box that scrolls cannot be reached or has no name", address)
			}
		}
	}
}

// outline checks that headings begin with the page's and never skip a level.
func outline(t *testing.T, address string, all []*html.Node) {
	level := 0
	for _, n := range all {
		if len(n.Data) == 2 && n.Data[0] == 'h' && n.Data[1] >= '1' && n.Data[1] <= '6' {
			next := int(n.Data[1] - '0')
			if next > level+1 {
				t.Errorf("%q: after a heading of level %d comes %q of level %d", address, level, words(n), next)
			}
			level = next
		}
	}
}

// places checks that no name is given twice and that every link within the page leads to one.
func places(t *testing.T, address string, all []*html.Node) {
	ids := map[string]bool{}
	for _, n := range all {
		if id := attr(n, "id"); id != "" {
			if ids[id] {
				t.Errorf("%q has two places called %q", address, id)
			}
			ids[id] = true
		}
	}
	for _, n := range find(all, "a") {
		if id, within := strings.CutPrefix(attr(n, "href"), "#"); within && !ids[id] {
			t.Errorf("%q links to #%s, which is nowhere", address, id)
		}
	}
}

// leads checks that a link within the site is relative and leads to something that is published.
func leads(t *testing.T, address, to string, assets map[string]bool) {
	t.Helper()
	if to == "" || strings.Contains(to, ":") || strings.HasPrefix(to, "#") {
		return
	}
	if strings.HasPrefix(to, "/") {
		t.Errorf("%q: the link %s works in one folder only", address, to)
	}
	to, _, _ = strings.Cut(path.Join("/", address, to), "#")
	file := strings.TrimPrefix(to, "/")
	switch {
	case strings.HasPrefix(file, "assets/"):
		if !assets[file] {
			t.Errorf("%q asks for %s, which is not among the assets", address, file)
		}
	case path.Base(file) != "index.html" && path.Base(file) != "front.svg":
		t.Errorf("%q links to %s", address, file)
	}
}

func TestPatternPage(t *testing.T) {
	l, p := loaded(t), pullover(t)
	all := tree(t, func() ([]byte, error) { return l.Pattern(p) })
	if got, want := words(one(t, all, "p.key")), "Sizes XS (S, M, L, XL) (2X, 3X, 4X, 5X)"; got != want {
		t.Errorf("the key says %q, want %q", got, want)
	}
	if got, want := words(one(t, all, "title")), "Millrace Pullover · Tannery Lane"; got != want {
		t.Errorf("the title is %q, want %q", got, want)
	}
	for _, link := range find(all, "link") {
		if attr(link, "rel") == "canonical" && attr(link, "href") != "https://tannery.example/patterns/millrace/" {
			t.Errorf("the page says that it lies at %s", attr(link, "href"))
		}
	}
	if got, want := len(find(all, "figure.piece")), len(p.Pieces); got != want {
		t.Errorf("%d pieces on the page, want %d", got, want)
	}
	text := words(one(t, all, "main"))
	for _, want := range []string{
		"Rows 3 to 62 (68, 74, 86, 86) (98, 104, 110, 116) Repeat row 2.",
		"Row 1 WS Ch 2, turn, hdc in each st across. (62 (68, 74, 86, 86) (98, 104, 110, 116) sts)",
		"place marker in 32nd (34th, 38th, 44th, 44th) (50th, 52nd, 56th, 58th) st",
		"Repeat rows 1 and 2 1 (2, 3, 3, 4) (4, 5, 5, 6) times.",
		"to 54 (55, 55, 55, 57) (57, 57, 57, 57) cm [21½ (22, 22, 22, 22¾) (22¾, 22¾, 22¾, 22¾) inches]",
		"The designer made M and testers made S and 2X",
		"14 sts and 10 rows in hdc = 10 cm [4 inches], blocked, with a 4.5 mm hook",
		"Rib: 3.75 mm (US F-5), for the ribs",
		"the designer’s own choice in L",
		"A boxy pullover in half double ridges, worked flat from the hem up & seamed.",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("the page does not say %q", want)
		}
	}
}

// Each edition says where the other is, to makers and to machines, and shows the same photos.
func TestEditions(t *testing.T) {
	l, pages := loaded(t), editions(t)
	for i, want := range []struct{ ways, print, alternate, canonical, photo, about, rows string }{
		{"Read this in UK terms uk/index.html", "Read this in UK terms ../uk/print/index.html", "https://tannery.example/patterns/millrace/uk/", "https://tannery.example/patterns/millrace/", "front.svg", "../../about/index.html", "hdc2tog"},
		{"Read this in US terms ../index.html", "Read this in US terms ../../print/index.html", "https://tannery.example/patterns/millrace/", "https://tannery.example/patterns/millrace/uk/", "../front.svg", "../../../about/index.html", "htr2tog"},
	} {
		p := pages[i]
		links := func(all []*html.Node) (read string) {
			for _, n := range find(all, "a") {
				if strings.HasPrefix(words(n), "Read this") {
					read += words(n) + " " + attr(n, "href")
				}
			}
			return read
		}
		all, sheet := tree(t, func() ([]byte, error) { return l.Pattern(p) }), tree(t, func() ([]byte, error) { return l.Print(p) })
		if got := links(all); got != want.ways {
			t.Errorf("%s: the page leads to %q, want %q", p.Terms, got, want.ways)
		}
		if got := links(sheet); got != want.print {
			t.Errorf("%s: the sheet leads to %q, want %q", p.Terms, got, want.print)
		}
		at := map[string]string{}
		for _, n := range find(all, "link") {
			at[attr(n, "rel")] = attr(n, "href")
		}
		if at["alternate"] != want.alternate || at["canonical"] != want.canonical {
			t.Errorf("%s: %v", p.Terms, at)
		}
		if got := attr(find(all, "img")[0], "src"); got != want.photo {
			t.Errorf("%s: the photo is %s, want %s", p.Terms, got, want.photo)
		}
		text := words(one(t, all, "main"))
		if !strings.Contains(text, want.rows) || strings.Contains(text, "hdc2tog") && strings.Contains(text, "htr2tog") {
			t.Errorf("%s: the rows are in other terms", p.Terms)
		}
		lead := slices.ContainsFunc(find(all, "a"), func(n *html.Node) bool { return words(n) == "how we block" && attr(n, "href") == want.about })
		if !lead {
			t.Errorf("%s: the text does not lead to %s", p.Terms, want.about)
		}
	}
}

func TestSizeTable(t *testing.T) {
	l, p := loaded(t), pullover(t)
	all := tree(t, func() ([]byte, error) { return l.Pattern(p) })
	table := one(t, all, "table.sizes")
	var rows []string
	for n := range table.Descendants() {
		if n.Data == "tr" && n.Parent.Data == "tbody" {
			rows = append(rows, words(n))
		}
	}
	if len(rows) != len(nine) {
		t.Fatalf("%d rows, want one a size", len(rows))
	}
	if want := "M sample91.5–96.5 cm 36–38 in105.5 cm 42¼ in55 cm 22 in+9 cm +3¾ in"; rows[2] != want {
		t.Errorf("M reads %q, want %q", rows[2], want)
	}
	if caption := find(all, "caption"); len(caption) != 1 || words(caption[0]) == "" {
		t.Error("the table has no caption")
	}
}

// Where nothing stands above the first column, its cells are the headings of their rows.
func TestTableOfTheText(t *testing.T) {
	said := func(text string) prose.Line { return prose.Line{prose.Text(text)} }
	p := &page.Page{Address: "about/", Text: []prose.Block{&prose.Table{
		Head: []prose.Line{nil, said("Rows")}, Rows: [][]prose.Line{{said("Back"), said("33")}, {said("Yoke"), said("25")}},
	}}}
	all := tree(t, func() ([]byte, error) { return loaded(t).Plain(p) })
	var got []string
	for _, n := range append(find(all, "th"), find(all, "td")...) {
		got = append(got, n.Data+" "+attr(n, "scope")+" "+words(n))
	}
	if want := "th col Rows, th row Back, th row Yoke, td  , td  33, td  25"; strings.Join(got, ", ") != want {
		t.Errorf("%s, want %s", strings.Join(got, ", "), want)
	}
}

func TestRowsInOrder(t *testing.T) {
	l, p := loaded(t), pullover(t)
	all := tree(t, func() ([]byte, error) { return l.Pattern(p) })
	var labels []string
	for n := range find(all, "figure.piece")[1].Descendants() {
		if n.Type == html.ElementNode && n.Data == "span" && attr(n, "class") == "label" {
			labels = append(labels, words(n))
		}
	}
	if got, want := strings.Join(labels, " | "), "Start | Row 1 WS | Row 2 RS | Next row WS Film 12:20 | Note | Next 2 rows Sizes M and 3X to 5X only | Next row RS | Next row WS"; got != want {
		t.Errorf("the back has\n%s\nwant\n%s", got, want)
	}
}

func TestPrintPage(t *testing.T) {
	l, p := loaded(t), pullover(t)
	out, err := l.Print(p)
	if err != nil {
		t.Fatal(err)
	}
	if want := `content: "Millrace Pullover, version 1.1"`; !bytes.Contains(out, []byte(want)) {
		t.Errorf("no sheet bears %s", want)
	}
	all := tree(t, func() ([]byte, error) { return out, nil })
	if got, want := len(find(all, "figure.piece")), len(p.Pieces); got != want {
		t.Errorf("%d pieces on paper, want %d", got, want)
	}
	one(t, all, "p.key")
	var style string
	for _, a := range l.Assets() {
		if strings.HasPrefix(a.Name, "assets/paper-") {
			style = string(a.Data)
		}
	}
	for _, want := range []string{"@page", "counter(page)", "break-inside:avoid"} {
		if !strings.Contains(style, want) {
			t.Errorf("the style for paper has no %s", want)
		}
	}
}

func TestCataloguePage(t *testing.T) {
	all := tree(t, settings(t)[""])
	var cards []string
	for _, n := range find(all, "li.card") {
		cards = append(cards, words(n))
	}
	if len(cards) != 2 || !strings.HasPrefix(cards[0], "Sluice Hat") || !strings.HasSuffix(cards[0], "Not out yet") || strings.Contains(cards[1], "Not out yet") {
		t.Errorf("the cards are %q", cards)
	}
	here := 0
	for _, n := range find(all, "a.choice") {
		if attr(n, "aria-current") == "page" {
			here++
		}
	}
	if here != 1 {
		t.Errorf("%d choices are marked as the page one is on", here)
	}
}

// Words from outside are words on the page, wherever they stand.
func TestEscaping(t *testing.T) {
	const hostile = `"><script>alert(1)</script><b onclick='x'>&amp;`
	l := loaded(t)
	p := poisoned(t, hostile)
	for name, set := range map[string]func() ([]byte, error){
		"pattern": func() ([]byte, error) { return l.Pattern(p) },
		"print":   func() ([]byte, error) { return l.Print(p) },
		"plain":   func() ([]byte, error) { return l.Plain(p) },
		"catalogue": func() ([]byte, error) {
			return l.Catalogue(&page.Catalogue{Studio: p.Studio, Menu: p.Menu, Title: hostile, Shown: []page.Card{p.Card()}, Filters: []page.Filter{{Label: hostile, Choices: []page.Choice{{Label: hostile, Address: hostile}}}}})
		},
	} {
		all := tree(t, set)
		if n := len(find(all, "script")); n != 0 {
			t.Errorf("%s: %d scripts came in", name, n)
		}
		for _, n := range all {
			for _, a := range n.Attr {
				if strings.HasPrefix(a.Key, "on") || strings.HasPrefix(strings.ToLower(a.Val), "javascript:") {
					t.Errorf("%s: %s has %s=%q", name, n.Data, a.Key, a.Val)
				}
			}
		}
		if title := words(one(t, all, "title")); !strings.Contains(title, "<script>") {
			t.Errorf("%s: the title lost its words: %q", name, title)
		}
	}
}
