package manuscript

import (
	"slices"
	"strings"
	"testing"

	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/prose"
	"foundrow/internal/source"
)

func pullover(t *testing.T) *pattern.Pattern {
	t.Helper()
	p, fs := ReadPattern(readFile(t, "pullover.md"), "millrace", pattern.Studio{}, Published())
	must(t, fs)
	return p
}

func same(t *testing.T, what string, got, want any) {
	t.Helper()
	if got != want {
		t.Errorf("%s is %v, not %v", what, got, want)
	}
}

func sameNum(t *testing.T, what string, got, want measure.Num) {
	t.Helper()
	if got.Cmp(want) != 0 || got.IsLost() != want.IsLost() {
		t.Errorf("%s is %s, not %s", what, got, want)
	}
}

func TestHeadOfPattern(t *testing.T) {
	p := pullover(t)
	same(t, "title", p.Title.Text, "Millrace Pullover")
	same(t, "the title's place", p.File.Slice(p.Title.Span), "Millrace Pullover")
	same(t, "kind", p.Kind.Text, "garment")
	same(t, "released", p.Released, "2026-04-02")
	same(t, "version", p.Version, "1.1")
	same(t, "skill", p.Skill.Text, "intermediate")
	same(t, "terms", p.Terms, pattern.US)
	same(t, "wearer, from the table", p.Wearer, pattern.Adult)
	same(t, "partial", p.Partial, false)
	same(t, "film", p.Film.Runs, 24*60+10)
	if len(p.Weighed) != 1 || p.Weighed[0].Yarn.Text != "" || p.Weighed[0].Grams.Cmp(measure.Int(415)) != 0 {
		t.Errorf("the sample weighs %v, want 415 g", p.Weighed)
	}
	same(t, "credits", len(p.Credits), 3)
	same(t, "photo", p.Photos[0].From.Text+" "+p.Photos[0].Shows+" "+p.Photos[0].Ease, "front.jpg M 12 cm")
	same(t, "turning", len(p.Turning) == 2 && !p.Turning[0].Counts && p.Turning[1].Counts, true)
	same(t, "own", p.Own[1].Name.Text+": "+p.Own[1].Question, "length: lengthen or shorten")
	if got := p.Tested; len(got) != 2 || !slices.Equal(got[0].Sizes, []int{2 - 1, 6}) || !slices.Equal(got[1].Sizes, []int{2, 3, 4}) {
		t.Errorf("tested are %v", got)
	}
	if s := p.Special[1]; s.Abbr.Text != "V-st" || s.Height != "dc" || s.Makes.Cmp(measure.Int(2)) != 0 || p.Special[0].Uses.Sign() != 0 {
		t.Errorf("special stitches are %v", p.Special)
	}
}

func TestYarnAndGauge(t *testing.T) {
	p := pullover(t)
	y := p.Yarns[0]
	same(t, "yarn", y.Name.Text+", "+y.Colour+", "+y.Fibre, "main, slate, wool")
	sameNum(t, "a ball weighs", y.Weighs, measure.Int(50))
	sameNum(t, "a ball runs", y.Runs, measure.Int(120))
	sameNum(t, "the second hook", p.Hooks[1].Size, measure.Int(4))
	gauges := map[string]pattern.Gauge{}
	for _, g := range p.Gauges {
		gauges[g.Name.Text] = g
	}
	body, rib, shell, square := gauges["body"], gauges["rib"], gauges["shell"], gauges["square"]
	sameNum(t, "over", body.Over, measure.Int(10))
	sameNum(t, "stitches of rib", rib.Stitches, measure.Ratio(33, 2))
	same(t, "states", body.State+", "+rib.State, "blocked, as worn")
	sameNum(t, "stitches of the shells", shell.Stitches, measure.Int(12))
	sameNum(t, "over which the shells are counted", shell.Over, measure.Int(9))
	sameNum(t, "over which their rows are counted", shell.RowsOver, measure.Int(10))
	sameNum(t, "rounds of the square", square.Rows, measure.Int(3))
	sameNum(t, "over which they are counted", square.RowsOver, measure.Int(5)) // half of 4 inches at 2.5 cm
	same(t, "as written", square.Written.Rounds+" over "+square.Written.Across, "1 to 3 over 4 inch")
}

func TestSizesOfPattern(t *testing.T) {
	p := pullover(t)
	same(t, "sizes", strings.Join(p.Sizes.Names, " "), "XS S M L XL 2X 3X 4X 5X")
	same(t, "published names", p.Sizes.Long[0], "X-Small")
	same(t, "sample", p.Sizes.Sample, 2)
	same(t, "credit", p.Sizes.Credit, "Source: Craft Yarn Council's www.YarnStandards.com")
	bust := p.Sizes.Body[0]
	same(t, "the first measurement", bust.Name, "bust")
	same(t, "is printed to", bust.Cells[8].HighCm.Decimal(1)+" cm", "158 cm")
	same(t, "with its misprint", bust.Cells[8].Misprint != "" && bust.Cells[7].Misprint == "", true)
}

// partsOf writes the parts of a value with the sizes they hold for.
func partsOf(p *pattern.Pattern, parts []pattern.Part) string {
	var all []string
	for _, part := range parts {
		var sizes []string
		for _, i := range part.Sizes {
			sizes = append(sizes, p.Sizes.Names[i])
		}
		if got := p.File.Slice(part.Formula.Span); got != part.Formula.Text {
			all = append(all, "MISPLACED "+got)
		}
		all = append(all, strings.Join(sizes, " ")+": "+part.Formula.Text)
	}
	return strings.Join(all, "; ")
}

func TestValuesOfPattern(t *testing.T) {
	p := pullover(t)
	var names []string
	values := map[string]string{}
	for _, d := range slices.Concat(p.Body, p.Counts) {
		names = append(names, d.Name.Text)
		values[d.Name.Text] = partsOf(p, d.Parts)
	}
	for _, m := range p.Measures {
		names = append(names, m.Name.Text)
		values[m.Name.Text] = partsOf(p, m.Parts)
		values[m.Name.Text+" ease"] = partsOf(p, m.Ease)
	}
	same(t, "names in the order of the file", strings.Join(names, " "), "palm front hem cap cuffs chest hips yoke length drop")
	for name, want := range map[string]string{
		"cuffs":      ": 2",
		"drop":       ": 0.5",
		"chest":      "",
		"chest ease": ": 10 cm",
		"hips ease":  "XS S M L: 4 cm; XL 2X 3X 4X 5X: -5%",
		"yoke":       ": 20 (21, 21, 22, 22) (23, 23, 24, 24) cm",
		"length":     "XS: 54 cm; S M L: 22\"; XL 2X 3X 4X 5X: 57 cm",
		"cap":        ": front / 2, rounded up to even",
	} {
		same(t, name, values[name], want)
	}
	chest, hips := p.Measures[0], p.Measures[1]
	same(t, "made", chest.Made.Text, "front * 2 in cm at body")
	same(t, "finished", chest.Finished && !p.Measures[3].Finished, true)
	sameNum(t, "fit from", chest.Fit.Low, measure.Int(6))
	sameNum(t, "fit to", chest.Fit.High, measure.Int(13))
	same(t, "a range has its upper end", chest.Fit.Under, false)
	sameNum(t, "classic from", hips.Fit.Low, measure.Int(5))
	sameNum(t, "classic to under", hips.Fit.High, measure.Int(10))
	same(t, "a band has not", hips.Fit.Under, true)
	same(t, "pins", partsOf(p, p.Pins[0].Parts), "L: 86; 4X 5X: 110")
	var sample []string
	for _, a := range p.Sample {
		sample = append(sample, a.Name.Text+" = "+a.Value.Text)
	}
	same(t, "sample", strings.Join(sample, ", "), "front = 74, cap.rows = 25, hem.rows = 12")
	same(t, "notions", p.Notions[0].What+"; "+p.Notions[1].What+" "+partsOf(p, p.Notions[1].Amount), "tapestry needle; buttons, 18 mm : 5 (5, 5, 6, 6) (6, 7, 7, 7)")
}

// Everything in inches: a pattern's units come before its studio's, and lengths cross at the garment's inch.
func TestUnits(t *testing.T) {
	text := "```toml\ntitle = \"Hat\"\nkind = \"hat\"\nterms = \"us\"\nunits = \"inch\"\n[gauge.body]\nstitches = 14\n[sizes]\ntable = \"head\"\n" +
		"[measures.girth]\nbody = \"head\"\nfit = \"loose\"\n[measures.depth]\nbody = \"head\"\nfit = \"-5 to 10 cm\"\n```\n"
	studio, fs := ReadStudio(source.NewFile("studio.toml", "title = \"a\"\naddress = \"https://a.example\"\nunits = \"cm\"\nterms = \"uk\"\n"))
	must(t, fs)
	same(t, "the address ends in a slash", studio.Address, "https://a.example/")
	same(t, "editions", len(studio.Editions) == 2 && studio.Editions[0] == pattern.UK, true)
	p, fs := ReadPattern(source.NewFile("pattern.md", text), "hat", studio, Published())
	must(t, fs)
	sameNum(t, "10 cm", p.Gauges[0].Over, measure.Int(4))
	sameNum(t, "loose", p.Measures[0].Fit.Low, measure.Int(4))
	sameNum(t, "-5 cm", p.Measures[1].Fit.Low, measure.Int(-2))
	sameNum(t, "the head of a man", p.Sizes.Body[0].Value[6], measure.Int(24))
	same(t, "wearer: the youngest", p.Wearer, pattern.Baby)
	same(t, "all sizes", len(p.Sizes.Names), 7)
}

func TestUnreadTables(t *testing.T) {
	f := source.NewFile("pattern.md", "```toml\ntitle = \"Hat\"\nkind = \"hat\"\nterms = \"us\"\n[shaping.raglan]\nfrom = 60\nover = { sts = \"4 sts\" }\n```\n")
	p, _ := ReadPattern(f, "hat", pattern.Studio{}, Published())
	if len(p.Unread) != 1 || len(p.Unread[0].Entries) != 2 {
		t.Fatalf("kept are %v", p.Unread)
	}
	u := p.Unread[0]
	same(t, "name", u.Name.Text, "shaping.raglan")
	same(t, "first", u.Entries[0].Key.Text+" "+u.Entries[0].Value.Text, "from 60")
	same(t, "second", u.Entries[1].Key.Text+" "+f.Slice(u.Entries[1].Value.Span), "over.sts 4 sts")
}

func TestPieces(t *testing.T) {
	p := pullover(t)
	type piece struct {
		name, gauge, hook, as string
		make, lines           int
		continued, reversed   bool
	}
	want := []piece{{"hem", "rib", "rib", "", 2, 4, false, false}, {"front", "body", "", "", 1, 1, false, false},
		{"front", "body", "", "", 1, 1, true, false}, {"back", "", "", "front", 1, 1, false, true}}
	for i, w := range want {
		g := p.Pieces[i]
		if got := (piece{g.Name.Text, g.Gauge.Text, g.Hook.Text, g.As.Text, g.Make, len(g.Rows.Lines), g.Continued, g.Reversed}); got != w {
			t.Errorf("piece %d is %v, not %v", i, got, w)
		}
	}
	hem := p.Pieces[0]
	body := p.File.Slice(hem.Body)
	if !strings.HasPrefix(body, "Foundation: Ch {hem") || !strings.HasSuffix(body, "{cuffs} times.\n") {
		t.Errorf("the rows are %q", body)
	}
	whole := p.File.Slice(hem.Span)
	if !strings.HasPrefix(whole, "```rows hem") || !strings.HasSuffix(whole, "\n```") {
		t.Errorf("the block is %q", whole)
	}
	for i, w := range []string{"Foundation: Ch {hem + 1}.", "Row 1 (RS): Sc in 2nd ch from hook and in each ch across. ({hem} sts)",
		"Sizes M and 3X to 5X only: Row 2: Ch 1, turn, sc blo in each st across.", "Repeat row 2 {cuffs} times."} {
		same(t, "line", p.File.Slice(hem.Rows.Lines[i].At()), w)
	}
}

// A slot knows its braces and the words around it; its formula knows its own place.
func TestSlots(t *testing.T) {
	p := pullover(t)
	var got []string
	for _, s := range p.Slots {
		if p.File.Slice(s.Span) != "{"+s.Formula.Text+"}" || s.Formula.Span.From != s.Span.From+1 {
			t.Errorf("the slot %q has the formula %q at %d", p.File.Slice(s.Span), s.Formula.Text, s.Formula.Span.From)
		}
		form := [...]string{"", "th", " times", " "}[s.Form]
		got = append(got, s.Formula.Text+form+s.Noun)
	}
	same(t, "slots", strings.Join(got, ", "),
		"front sts, capth, cuffs times, hem + 1, hem, cuffs, chest, front sts, cuffs, cap rows, front")
}

func TestTextOfPattern(t *testing.T) {
	p := pullover(t)
	fill := func(i int) string { return "<" + p.Slots[i].Formula.Text + ">" }
	got := dump(p.Text, fill)
	want := strings.TrimPrefix(`
# millrace Millrace
p Work the front on <front>, every <cap> st marked, <cuffs> over. A long line|breaks here, & so on: ½ of it, {not a value}.
## hem @40 Hem
piece 0
## front-and-back @3750 Front and _back_
table left right centre
  size | <chest> | counts
  all | ·{a\|b}· | <front>
list 1
 -
  p First [see the hem](#hem)
 -
  p Then ![the <cuffs> cuffs](cuffs.jpg)
  p with words
quote
 p Quoted *<cap>*.
piece 1
piece 2
piece 3
break
code text "left {alone}\n"
`, "\n")
	want = strings.ReplaceAll(want, `·{a\|b}·`, "·{a|b}·")
	if got != want {
		t.Errorf("the text is\n%s\nnot\n%s", got, want)
	}
	prose.Walk(p.Text, func(l prose.Line) {
		if len(l) == 0 {
			t.Error("an empty line")
		}
	})
}

// Line ends of another system, a byte order mark and a last line without an end change nothing.
func TestLineEnds(t *testing.T) {
	words := readFile(t, "pullover.md").Text
	want := pullover(t)
	for _, text := range []string{strings.ReplaceAll(words, "\n", "\r\n"), "\ufeff" + words, strings.TrimSuffix(words, "\n"), "\n \n" + words} {
		f, fs := CheckText("pattern.md", []byte(text))
		must(t, fs)
		p, fs := ReadPattern(f, "millrace", pattern.Studio{}, Published())
		must(t, fs)
		fill := func(i int) string { return "<" + p.Slots[i].Formula.Text + ">" }
		if got, wanted := dump(p.Text, fill), dump(want.Text, fill); got != wanted {
			t.Errorf("with %q the text is\n%s", text[:9], got)
		}
		same(t, "values", len(p.Counts) == len(want.Counts) && len(p.Measures) == len(want.Measures) && len(p.Pieces) == len(want.Pieces), true)
		same(t, "length", partsOf(p, p.Measures[3].Parts), partsOf(want, want.Measures[3].Parts))
		for i, piece := range p.Pieces {
			same(t, "lines", len(piece.Rows.Lines), len(want.Pieces[i].Rows.Lines))
			if strings.HasSuffix(f.Slice(piece.Span), "\r") {
				t.Error("a block takes in half a line end")
			}
		}
	}
}
