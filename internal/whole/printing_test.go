package whole

import (
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"foundrow/internal/grade"
	"foundrow/internal/page"
	"foundrow/internal/proof"
	"foundrow/internal/publish"
	"foundrow/internal/site"
	"foundrow/internal/testkit"
)

// A printing is what was published of one pattern, and what it was worked from.
type printing struct {
	graded patternJSON // as grade --json prints it, with the pieces of proof --json
	grade  *grade.Grade
	yarns  []page.Yarn
	pages  map[string]sheet // by file
}

// A sheet is one page: all its text, its figures in their order (what is set bold), and the cells of its table of sizes.
type sheet struct {
	text           string
	figures, cells []string
}

// publishedOf publishes a studio on disk and takes what came of one pattern.
func publishedOf(t *testing.T, folder string, files studio, slug string) printing {
	t.Helper()
	testkit.WriteStudio(t, folder, files)
	_, found, err := publish.Run(publish.Order{Studio: folder})
	if err != nil {
		t.Fatal(err)
	}
	if found.Errors() {
		none(t, found)
	}
	read, err := publish.Read(folder)
	if err != nil {
		t.Fatal(err)
	}
	desk, err := site.Open(read)
	if err != nil {
		t.Fatal(err)
	}
	out := printing{pages: map[string]sheet{}}
	out.grade, _ = desk.Pattern(slug)
	entry := proof.Of(slug, out.grade)
	for _, printed := range [][]byte{entry.JSON(), proof.New([]proof.Pattern{entry}, nil).JSON()} {
		var all struct {
			patternJSON
			Patterns []patternJSON `json:"patterns"`
		}
		if err := json.Unmarshal(printed, &all); err != nil {
			t.Fatal(err)
		}
		if len(all.Patterns) > 0 {
			out.graded.Pieces = all.Patterns[0].Pieces
		} else {
			out.graded = all.patternJSON
		}
	}
	made, _ := page.Of(out.grade, files.settings(t))
	out.yarns = made[0].Yarns
	root := filepath.Join(folder, "public", "patterns", slug)
	err = filepath.WalkDir(root, func(name string, d os.DirEntry, err error) error {
		if err == nil && !d.IsDir() && strings.HasSuffix(name, ".html") {
			out.pages[strings.TrimPrefix(name, root)] = sheetOf(t, name)
		}
		return err
	})
	if err != nil || len(out.pages) != 4 {
		t.Fatalf("%d pages, where there are two editions, each with one to print: %v", len(out.pages), err)
	}
	return out
}

func sheetOf(t *testing.T, name string) sheet {
	t.Helper()
	f, err := os.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	doc, err := html.Parse(f)
	if err != nil {
		t.Fatal(err)
	}
	var s sheet
	for n := range doc.Descendants() {
		switch {
		case n.Type == html.ElementNode && n.Data == "b":
			s.figures = append(s.figures, words(n))
		case n.Type == html.ElementNode && n.Data == "table" && slices.Contains(n.Attr, html.Attribute{Key: "class", Val: "sizes"}):
			for d := range n.Descendants() {
				if d.Data == "td" {
					s.cells = append(s.cells, words(d))
				}
			}
		case n.Type == html.ElementNode && n.Data == "main":
			s.text = words(n)
		}
	}
	return s
}

// inline are the elements that words go on through.
var inline = []string{"a", "b", "em", "i", "small", "span", "strong"}

// words are the words of an element; where another block begins there is a line's end.
func words(n *html.Node) string {
	var b strings.Builder
	for d := range n.Descendants() {
		switch {
		case d.Type == html.TextNode:
			b.WriteString(d.Data)
		case d.Type == html.ElementNode && !slices.Contains(inline, d.Data):
			b.WriteByte('\n')
		}
	}
	return b.String()
}
