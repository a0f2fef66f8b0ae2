package whole

import (
	"regexp"
	"slices"
	"strings"
	"testing"
)

// digits are the changes of one digit that are followed to the page. The sample does not answer for another gauge, so its assertions are
// left out, before and after.
var digits = []struct {
	does, slug string
	was, now   string
}{
	{"a stitch less", "orfleet-pullover", "stitches = 16\n", "stitches = 15\n"},
	{"a stitch more", "orfleet-pullover", "stitches = 16\n", "stitches = 17\n"},
	{"a row more", "orfleet-pullover", "rows     = 12\n", "rows     = 13\n"},
	{"a stitch more in the rib", "orfleet-pullover", "stitches = 17\n", "stitches = 18\n"},
	{"a centimetre more round the arm", "orfleet-pullover", `ease     = "5 cm"`, `ease     = "6 cm"`},
	{"a round more over 10 cm", "greel-hat", "rows     = 12\n", "rows     = 13\n"},
}

// TestOneDigit changes one digit of a gauge or a measurement and publishes again. Wherever a page printed a value that depends on it the
// page prints the new one, and no old one is left.
func TestOneDigit(t *testing.T) {
	for _, d := range digits {
		t.Run(d.slug+"/"+d.does, func(t *testing.T) {
			t.Parallel()
			files, name := demonstration(t), patternFile(d.slug)
			text := withoutSample(files[name])
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
		moved += figuresBecame(t, name, old.figures, now.figures, lists)
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

// figuresBecame holds each figure of a page against the one that stands in its place now, and returns how many are others.
func figuresBecame(t *testing.T, name string, old, now []string, lists turn) (moved int) {
	t.Helper()
	for i := range old {
		a, b := list.FindAllString(counting.Replace(old[i]), -1), list.FindAllString(counting.Replace(now[i]), -1)
		if len(a) != len(b) {
			t.Errorf("%s: %q was printed and is %q", name, old[i], now[i])
			continue
		}
		for k := range a {
			if !became(lists, a[k], b[k]) {
				t.Errorf("%s: %q was printed and is %q, where %q became %q", name, old[i], now[i], a[k], lists[a[k]])
			}
			if a[k] != b[k] {
				moved++
			}
		}
	}
	return moved
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
