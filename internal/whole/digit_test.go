package whole

import (
	"encoding/json"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"foundrow/internal/formula"
	"foundrow/internal/grade"
	"foundrow/internal/measure"
	"foundrow/internal/page"
	"foundrow/internal/proof"
	"foundrow/internal/publish"
	"foundrow/internal/site"
	"foundrow/internal/testkit"
)

// digits are the changes of one digit that are followed to the page. The sample does not answer for another gauge, so its assertions are
// left out, before and after.
var digits = []struct {
	does, slug string
	first      *strings.Replacer // before anything is compared
	was, now   string
}{
	{"a stitch less over 20 cm", "orfleet-pullover", strings.NewReplacer("stitches = 16\nrows     = 12\n", "stitches = 32\nrows     = 24\nover     = \"20 cm\"\n"), "stitches = 32\n", "stitches = 31\n"},
	{"a stitch more in the rib", "orfleet-pullover", nil, "stitches = 17\n", "stitches = 18\n"},
	{"a centimetre more round the arm", "orfleet-pullover", nil, `ease     = "5 cm"`, `ease     = "6 cm"`},
	{"a round more over 10 cm", "greel-hat", nil, "rows     = 12\n", "rows     = 13\n"},
}

// TestOneDigit changes one digit of a gauge or a measurement and publishes again. Wherever a page printed a value that depends on it the
// page prints the new one, and no old one is left.
func TestOneDigit(t *testing.T) {
	for _, d := range digits {
		t.Run(d.slug+"/"+d.does, func(t *testing.T) {
			t.Parallel()
			files, name := demonstration(t), patternFile(d.slug)
			text := withoutSample(files[name])
			if d.first != nil {
				text = d.first.Replace(text)
			}
			changed := strings.Replace(text, d.was, d.now, 1)
			if changed == text {
				t.Fatalf("%s has no %s", name, d.was)
			}
			folder := t.TempDir()
			files[name] = text
			before := publishedOf(t, folder, files, d.slug)
			files[name] = changed
			after := publishedOf(t, folder, files, d.slug)
			compare(t, before, after)
			inOrder(t, before.grade)
			inOrder(t, after.grade)
		})
	}
}

// withoutSample leaves out what the sample says of values and pieces.
func withoutSample(text string) string {
	head, rest, _ := strings.Cut(text, "[sample]\n")
	_, rest, _ = strings.Cut(rest, "\n\n")
	return head + rest
}

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

// A turn says what became of printed words: old words, and the new ones of everything that was printed so.
type turn map[string][]string

func (turns turn) add(old, now string) { turns[old] = append(turns[old], now) }

// news are all the new words.
func (turns turn) news() map[string]bool {
	all := map[string]bool{}
	for _, now := range turns {
		for _, words := range now {
			all[words] = true
		}
	}
	return all
}

// list finds figures of all sizes as they are printed, and those of one: "62 (68, 74)", "21½ (22, 22¾)", "8".
var list = func() *regexp.Regexp {
	const figure = `[−+]?(?:\d+(?:\.\d+)?[¼½¾]?|[¼½¾])(?:st|nd|rd|th)?`
	const bracket = ` \(` + figure + `(?:, ` + figure + `)*\)`
	return regexp.MustCompile(figure + `(?:` + bracket + `)*`)
}()

// counting sets words for how often as figures.
var counting = strings.NewReplacer("once", "1", "twice", "2", " times", "")

// compare holds every page before against the same page after.
func compare(t *testing.T, before, after printing) {
	lists, cells := turnsOf(t, before, after)
	changed := 0
	for old, now := range lists {
		if !slices.Contains(now, old) {
			changed++
		}
	}
	if changed < 3 {
		t.Errorf("only %d lists of values are others", changed)
	}
	moved, resized := 0, 0
	for name, old := range before.pages {
		now := after.pages[name]
		if len(old.figures) != len(now.figures) || len(old.cells) != len(now.cells) {
			t.Fatalf("%s had %d figures and %d cells, and has %d and %d", name, len(old.figures), len(old.cells), len(now.figures), len(now.cells))
		}
		for i := range old.figures {
			a, b := list.FindAllString(counting.Replace(old.figures[i]), -1), list.FindAllString(counting.Replace(now.figures[i]), -1)
			if len(a) != len(b) {
				t.Errorf("%s: %q was printed and is %q", name, old.figures[i], now.figures[i])
				continue
			}
			for k := range a {
				if !became(lists, a[k], b[k]) {
					t.Errorf("%s: %q was printed and is %q, where %q became %q", name, old.figures[i], now.figures[i], a[k], lists[a[k]])
				}
				if a[k] != b[k] {
					moved++
				}
			}
		}
		for i := range old.cells {
			if !became(cells, old.cells[i], now.cells[i]) {
				t.Errorf("%s: a cell was %q and is %q, where that became %q", name, old.cells[i], now.cells[i], cells[old.cells[i]])
			}
			if old.cells[i] != now.cells[i] {
				resized++
			}
		}
		nothingLeft(t, name, now, lists, cells)
	}
	if moved < 3*len(before.pages) {
		t.Errorf("only %d places in %d pages print something else", moved, len(before.pages))
	}
	if resized < len(before.pages) {
		t.Errorf("only %d cells of the tables of sizes are others", resized)
	}
	t.Logf("%d lists became others; %d places in %d pages print them, and %d cells of their tables of sizes", changed, moved, len(before.pages), resized)
}

// became reports whether what was printed may have become that: one of what was so printed is so now, or it is no value at all.
func became(turns turn, old, now string) bool {
	if turns[old] == nil {
		return old == now
	}
	return slices.Contains(turns[old], now)
}

// nothingLeft looks for old lists in all the text of a page, for old single figures where values are set, and for old measurements in the
// table of sizes.
func nothingLeft(t *testing.T, name string, s sheet, lists, cells turn) {
	t.Helper()
	news := lists.news()
	printed := map[string]bool{}
	for _, found := range list.FindAllString(s.text, -1) {
		if strings.Contains(found, "(") {
			printed[found] = true
		}
	}
	for _, f := range s.figures {
		for _, found := range list.FindAllString(counting.Replace(f), -1) {
			printed[found] = true
		}
	}
	for old := range lists {
		if printed[old] && !news[old] {
			t.Errorf("%s still has %q, which became %q", name, old, lists[old])
		}
	}
	news = cells.news()
	for old := range cells {
		if slices.Contains(s.cells, old) && !news[old] {
			t.Errorf("%s still has a cell %q, which became %q", name, old, cells[old])
		}
	}
}

// turnsOf pairs what each value was with what it is: those that grade --json prints, the stitches of every row, the formulas in the text and
// in the rows, and yarn. Measurements of the thing made stand in the cells of the table, a size each.
func turnsOf(t *testing.T, before, after printing) (lists, cells turn) {
	t.Helper()
	lists, cells = turn{}, turn{}
	tape := before.grade.Pattern.Tape
	pair := func(old, now []formula.Value) {
		a, b := worded(old, tape), worded(now, tape)
		for i := range min(len(a), len(b)) {
			lists.add(a[i], b[i])
		}
	}
	for _, name := range slices.Sorted(maps.Keys(before.graded.Values)) {
		pair(valuesOf(t, before.graded.Values[name]), valuesOf(t, after.graded.Values[name]))
	}
	for i, piece := range before.graded.Pieces {
		for k, row := range piece.Rows {
			pair(stitchesOf(row), stitchesOf(after.graded.Pieces[i].Rows[k]))
		}
	}
	for i := range before.grade.Slots {
		pair(before.grade.Slots[i], after.grade.Slots[i])
	}
	for i, yarn := range before.yarns {
		for k := range yarn.Needs {
			a, b := list.FindAllString(yarn.Needs[k].All, -1), list.FindAllString(after.yarns[i].Needs[k].All, -1)
			for n := range min(len(a), len(b)) {
				lists.add(a[n], b[n])
			}
		}
	}
	for i, f := range before.grade.Finished {
		now := after.grade.Finished[i]
		for size := range f.Made {
			cells.add(cell(f.Made[size], tape), cell(now.Made[size], tape))
			if f.Ease != nil {
				cells.add(signed(f.Ease[size], tape), signed(now.Ease[size], tape))
			}
		}
	}
	return lists, cells
}

// worded are the lists that a value is printed as: one of counts, two of lengths.
func worded(bySize []formula.Value, tape measure.Tape) []string {
	first, second := make([]string, len(bySize)), make([]string, len(bySize))
	for i, v := range bySize {
		figure := page.Figure(v, tape)
		if a, b, both := strings.Cut(figure, " ["); both {
			figure = strings.Fields(a)[0]
			second[i] = strings.Fields(b)[0]
		}
		first[i] = figure
	}
	if second[0] == "" {
		return []string{page.List(first)}
	}
	return []string{page.List(first), page.List(second)}
}

// valuesOf reads a value of the JSON.
func valuesOf(t *testing.T, v valueJSON) []formula.Value {
	t.Helper()
	kinds := map[string]formula.Kind{}
	for k := formula.Unknown; k <= formula.Rows; k++ {
		kinds[k.String()] = k
	}
	out := make([]formula.Value, len(v.BySize))
	for i, s := range v.BySize {
		n, ok := measure.Parse(*s)
		if kinds[v.Kind] == formula.Unknown || !ok {
			t.Fatalf("%s is no number of the kind %s", *s, v.Kind)
		}
		out[i] = formula.Value{Kind: kinds[v.Kind], Num: n}
	}
	return out
}

// stitchesOf are the stitches of a row of the JSON; a size without the row has a dash.
func stitchesOf(r rowJSON) []formula.Value {
	out := make([]formula.Value, len(r.Stitches))
	for i, n := range r.Stitches {
		out[i] = formula.Value{Kind: formula.Stitches, Num: measure.Lost}
		if n != nil {
			out[i].Num = measure.Int(int64(*n))
		}
	}
	return out
}

// cell is a length as the table of sizes prints it.
func cell(n measure.Num, tape measure.Tape) string {
	first, second, _ := strings.Cut(page.Figure(formula.Value{Kind: formula.Length, Num: n}, tape), " [")
	return first + " " + strings.Fields(second)[0] + " in"
}

// signed is an ease as the table of sizes prints it.
func signed(n measure.Num, tape measure.Tape) string {
	if n.Sign() <= 0 {
		return cell(n, tape)
	}
	first, second, _ := strings.Cut(cell(n, tape), " cm ")
	return "+" + first + " cm +" + second
}
