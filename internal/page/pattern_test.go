package page

import (
	"slices"
	"strings"
	"testing"

	"foundrow/internal/formula"
	"foundrow/internal/grade"
	"foundrow/internal/manuscript"
	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/prose"
	"foundrow/internal/source"
)

func written(text string) pattern.Words { return pattern.Words{Text: text} }

func line(text string) prose.Line { return prose.Line{prose.Text(text)} }

// graded reads and works a pattern, as a file has it, of US terms unless its front matter says others.
func graded(t testing.TB, front, text string) *grade.Grade {
	t.Helper()
	if !strings.Contains(front, "terms") {
		front = "terms = \"us\"\n" + front
	}
	file := source.NewFile("content/patterns/case/pattern.md", "```toml\ntitle = \"Case\"\nkind = \"other\"\n"+front+"\n```\n\n"+text)
	p, findings := manuscript.ReadPattern(file, "case", pattern.Studio{}, manuscript.Published())
	g, more := grade.Work(p)
	for _, f := range append(findings, more...) {
		if f.Severity == source.Error {
			t.Fatalf("%s\n%s", f, f.Excerpt())
		}
	}
	return g
}

// rows is a block of rows, one a line.
func rows(lines string) string { return "```rows case\n" + strings.TrimSpace(lines) + "\n```\n" }

var bothTerms = pattern.Studio{Editions: []pattern.Terms{pattern.US, pattern.UK}}

func TestGaugeSentence(t *testing.T) {
	p := &pattern.Pattern{Hooks: []pattern.Hook{{Name: written("main"), Size: num("4.5")}, {Name: written("rib"), Size: num("3.75")}}}
	ten, five := measure.Int(10), measure.Int(5)
	for _, c := range []struct {
		gauge pattern.Gauge
		want  string
	}{
		{pattern.Gauge{Stitch: "hdc", Stitches: num("14"), Rows: ten, Over: ten, RowsOver: ten, Hook: "main"}, "14 sts and 10 rows in hdc = 10 cm [4 inches], blocked, with a 4.5 mm hook"},
		{pattern.Gauge{Stitch: "sc blo", Stitches: num("16.5"), Over: ten, State: "as worn", Hook: "rib"}, "16.5 sts in sc BLO = 10 cm [4 inches], as worn, with a 3.75 mm hook"},
		{pattern.Gauge{Stitch: "dc", Rows: num("9"), RowsOver: ten, State: "hung"}, "9 rows in dc = 10 cm [4 inches], blocked and hung"},
		{pattern.Gauge{Stitch: "sc", Stitches: num("8"), Rows: num("18"), Over: five, RowsOver: ten}, "8 sts = 5 cm [2 inches] and 18 rows = 10 cm [4 inches] in sc, blocked"},
		{pattern.Gauge{Over: ten, Written: pattern.GaugeForm{Rounds: "1 to 3", Across: "10 cm"}}, "Rounds 1 to 3 measure 10 cm [4 inches] across, blocked"},
		{pattern.Gauge{Over: num("9"), Written: pattern.GaugeForm{Repeats: 2, Of: 6}}, "2 repeats of 6 sts = 9 cm [3½ inches], blocked"},
		{pattern.Gauge{Over: num("9"), Written: pattern.GaugeForm{Repeats: 1, Of: 12}}, "1 repeat of 12 sts = 9 cm [3½ inches], blocked"},
	} {
		if got := gaugeSentence(p, c.gauge, carrier{}); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// Labels by the Craft Yarn Council's list (www.YarnStandards.com, Hooks and Needles; steel hooks on their own page).
func TestHookSize(t *testing.T) {
	for mm, want := range map[string]string{
		"4.5": "4.5 mm (US 7)", "5": "5 mm (US H-8)", "3.125": "3.125 mm (US D)", "2.5": "2.5 mm", "3": "3 mm", "7": "7 mm",
		"1.65": "1.65 mm (US steel 7)", "2": "2 mm", "1.5": "1.5 mm",
	} {
		if got := hookSize(num(mm)); got != want {
			t.Errorf("%s mm: %q, want %q", mm, got, want)
		}
	}
}

func TestStory(t *testing.T) {
	rounded := func(way formula.Way, from, num_, step, offset string) formula.Value {
		f := num(from)
		st := formula.Story{Way: way, From: f, Step: num(step), Offset: num(offset)}
		st.Lower, st.Upper = measure.Down(f, st.Step, st.Offset), measure.Up(f, st.Step, st.Offset)
		st.Tie = way == formula.Nearest && measure.IsTie(f, st.Step, st.Offset)
		return formula.Value{Num: num(num_), Kind: formula.Stitches, Story: st}
	}
	plain := formula.Value{Num: num("10"), Kind: formula.Stitches}
	for _, c := range []struct {
		name   string
		bySize []formula.Value
		pinned []bool
		want   string
		last   string
	}{
		{"one size", []formula.Value{rounded(formula.Nearest, "765/8", "98", "6", "2")}, nil, "from 95 5/8, a multiple of 6 + 2", "from 95 5/8, a multiple of 6 + 2"},
		{"a list", []formula.Value{rounded(formula.Nearest, "61.7", "62", "6", "2"), rounded(formula.Nearest, "66.5", "68", "6", "2")}, nil, "from 61.7 (66 1/2), a multiple of 6 + 2", "from 66 1/2, a multiple of 6 + 2"},
		{"up to even", []formula.Value{rounded(formula.Up, "31", "32", "2", "0")}, nil, "from 31, up to an even number", "from 31, up to an even number"},
		{"down to odd", []formula.Value{rounded(formula.Down, "32.5", "31", "2", "1")}, nil, "from 32 1/2, down to an odd number", "from 32 1/2, down to an odd number"},
		{"whole", []formula.Value{rounded(formula.Nearest, "10.2", "10", "1", "0")}, nil, "from 10.2, a whole number", "from 10.2, a whole number"},
		{"a tie", []formula.Value{rounded(formula.Nearest, "17", "19", "4", "3")}, nil, "from 17, halfway between 15 and 19, a multiple of 4 + 3", "from 17, halfway between 15 and 19, a multiple of 4 + 3"},
		{"less one", []formula.Value{rounded(formula.Nearest, "17.1", "17", "6", "-1")}, nil, "from 17.1, a multiple of 6 − 1", "from 17.1, a multiple of 6 − 1"},
		{"already so", []formula.Value{rounded(formula.Nearest, "62", "62", "6", "2"), rounded(formula.Nearest, "68", "68", "6", "2")}, nil, "already a multiple of 6 + 2", "already a multiple of 6 + 2"},
		{"never rounded", []formula.Value{plain, plain}, nil, "", ""},
		{"pinned", []formula.Value{rounded(formula.Nearest, "61.7", "62", "6", "2"), rounded(formula.Nearest, "66.5", "74", "6", "2")}, []bool{false, true}, "from 61.7 (74), a multiple of 6 + 2", "the designer’s own choice"},
	} {
		s := story(grade.Value{BySize: c.bySize, Pinned: c.pinned})
		if s.All != c.want || s.In(len(c.bySize)-1) != c.last {
			t.Errorf("%s: %q and %q, want %q and %q", c.name, s.All, s.In(len(c.bySize)-1), c.want, c.last)
		}
	}
}

func TestPinned(t *testing.T) {
	g := &grade.Grade{Pattern: &pattern.Pattern{Sizes: pattern.Sizes{Names: []string{"S", "M", "L"}, Sample: -1}}}
	g.Values = []grade.Value{{Name: "front", Role: grade.Count, Kind: formula.Stitches, BySize: valuesOf(formula.Stitches, "62 68 86"), Pinned: []bool{false, false, true}}}
	c := countsOf(g)[0]
	if c.Label != "Front" || c.Value.All != "62 (68, 86) sts" || c.Pinned != "the designer’s own choice in L" {
		t.Errorf("%+v", c)
	}
}

func TestCautions(t *testing.T) {
	for _, c := range []struct {
		name   string
		wearer pattern.Wearer
		kind   string
		text   string
		want   string
	}{
		{"a grown-up's hood", pattern.Adult, "garment", "Thread a drawstring through the hood.", ""},
		{"a child's hood", pattern.Child, "garment", "Thread a drawstring through the hood.", "Cords and ties"},
		{"a child's cardigan", pattern.Child, "garment", "Sew on the buttons.", "Small parts"},
		{"a plain child's pullover", pattern.Child, "garment", "Weave in the ends.", ""},
		{"a bonnet", pattern.Baby, "hat", "Lace the ribbon through.", "Cords and ties, Ribbon, Openings"},
		{"a cot blanket", pattern.Baby, "blanket", "Weave in the ends.", "Sleep, Openings"},
		{"a bear", pattern.None, "toy", "Insert the safety eyes.", "Small parts, Giving or selling a toy, Sleep"},
		{"a fluffy bear with a bobble", pattern.Child, "toy", "Sew on the pompom; brushed mohair.", "Pompoms and fringe, Giving or selling a toy, Sleep, Fluffy yarn"},
		{"a dog's coat", pattern.Pet, "other", "Sew on the buttons.", "Pets, Small parts"},
		{"a stole", pattern.None, "shawl", "Knot the fringe.", ""},
	} {
		p := &pattern.Pattern{Wearer: c.wearer, Kind: written(c.kind), Text: []prose.Block{&prose.Paragraph{Line: line(c.text)}}}
		var got []string
		for _, caution := range cautions(p) {
			got = append(got, caution.Title)
			for _, promise := range []string{"complies", "conforms", "is safe", "meets the"} {
				if strings.Contains(caution.Text, promise) {
					t.Errorf("the caution %q promises: %q", caution.Title, caution.Text)
				}
			}
		}
		if strings.Join(got, ", ") != c.want {
			t.Errorf("%s: %v, want %s", c.name, got, c.want)
		}
	}
}

// The wearer of the size table decides where the pattern does not say.
func TestWearerOfTheTable(t *testing.T) {
	p := &pattern.Pattern{Sizes: pattern.Sizes{Wearer: pattern.Baby}, Kind: written("blanket")}
	if len(cautions(p)) == 0 {
		t.Error("a blanket in the baby table's sizes has no caution")
	}
	if p.Wearer = pattern.Adult; len(cautions(p)) != 0 {
		t.Error("the wearer of the pattern is not asked first")
	}
}

// sized is a pattern in three sizes with one finished measurement round a bust of the Craft Yarn Council's woman table.
func sized() *grade.Grade {
	p := &pattern.Pattern{
		File: source.NewFile("pattern.md", ""), Title: written("Millrace"), Kind: written("garment"), Slug: "millrace",
		Sizes:    pattern.Sizes{Names: []string{"S", "M", "L"}, Sample: 1},
		Measures: []pattern.Measure{{Definition: pattern.Definition{Name: written("chest")}, Body: written("bust"), Finished: true}},
		Tested:   []pattern.Tested{{By: "Ida Marsh", Sizes: []int{2}}},
	}
	cell := func(lowCm, highCm, lowInch, highInch string) pattern.BodyCell {
		return pattern.BodyCell{LowCm: num(lowCm), HighCm: num(highCm), LowInch: num(lowInch), HighInch: num(highInch)}
	}
	p.Sizes.Body = []pattern.BodyMeasurement{
		{Name: "bust", Label: "bust", How: "round the fullest part", Cells: []pattern.BodyCell{cell("81", "86", "32", "34"), cell("91.5", "96.5", "36", "38"), cell("101.5", "106.5", "40", "42")}},
		{Name: "waist", Label: "waist", Cells: []pattern.BodyCell{{}, {}, {}}},
	}
	return &grade.Grade{Pattern: p, Sizes: p.Sizes.Names, Finished: []grade.Finished{{
		Name: "chest", Made: []measure.Num{num("97.14"), num("105.71"), num("114.29")}, Ease: []measure.Num{num("11.14"), num("9.21"), num("-2.3")},
	}}}
}

func TestSizes(t *testing.T) {
	s := sizes(sized())
	if s.Key != "S (M, L)" || s.Range != "S to L" {
		t.Errorf("key %q, range %q", s.Key, s.Range)
	}
	var got []string
	for _, g := range s.Groups {
		for _, c := range g.Columns {
			var cells []string
			for _, cell := range c.Cells {
				cells = append(cells, cell.First+" "+cell.Second)
			}
			got = append(got, g.Label+" "+c.Label+": "+strings.Join(cells, ", "))
		}
	}
	want := []string{
		// The table's own cells: 81 cm is not 32 inches, and is printed beside it all the same.
		"To fit body Bust: 81–86 cm 32–34 in, 91.5–96.5 cm 36–38 in, 101.5–106.5 cm 40–42 in",
		// At 2.5 cm to the inch, each unit from the exact length.
		"Finished Chest: 97 cm 38¾ in, 105.5 cm 42¼ in, 114.5 cm 45¾ in",
		// Worked in the tape's unit and converted: 97 less 86 and 38¾ less 34 would give 11 and 4¾.
		"Ease Chest: +11 cm +4½ in, +9 cm +3¾ in, −2.5 cm −1 in",
	}
	if !slices.Equal(got, want) {
		t.Errorf("the sizes are\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	if want := []string{"worked out", "sample", "tested"}; !slices.Equal(s.Hands, want) {
		t.Errorf("made by hand: %q, want %q", s.Hands, want)
	}
	if want := "The designer made M and testers made L; S is worked out by arithmetic and not made by hand."; s.Tried != want {
		t.Errorf("%q, want %q", s.Tried, want)
	}
}

func TestSizesByInches(t *testing.T) {
	g := sized()
	g.Pattern.Tape = inchTape
	g.Finished[0].Made, g.Finished[0].Ease = []measure.Num{num("38"), num("42"), num("46")}, nil
	s := sizes(g)
	if first, second := s.Groups[0].Columns[0].Cells[0], s.Groups[1].Columns[0].Cells[2]; first != (Cell{"32–34 in", "81–86 cm"}) || second != (Cell{"46 in", "115 cm"}) {
		t.Errorf("%v and %v", first, second)
	}
}

func TestSizesRemarks(t *testing.T) {
	g := sized()
	g.Pattern.Sizes.Body[0].Cells[2].Misprint = "40 inches and 101.5 cm do not agree"
	g.Pattern.Sizes.Body[0].Cells[0].Worked = measure.Inch
	g.Pattern.Sizes.Body[0].Cells[1] = pattern.BodyCell{}
	g.Finished[0].Made = []measure.Num{measure.Lost, measure.Lost, measure.Lost}
	s := sizes(g)
	notes := strings.Join(s.Notes, "\n")
	for _, want := range []string{"Bust: round the fullest part.", "Bust in L is printed as the table has it", "inches are worked from it at 2.54"} {
		if !strings.Contains(notes, want) {
			t.Errorf("the notes do not say %q:\n%s", want, notes)
		}
	}
	if cell := s.Groups[0].Columns[0].Cells[1]; cell != (Cell{First: "–"}) {
		t.Errorf("an empty cell of the table is printed as %v", cell)
	}
	for _, group := range s.Groups {
		if group.Label == "Finished" {
			t.Errorf("a measurement that no count makes is printed: %v", group)
		}
	}
}

func TestBalls(t *testing.T) {
	y := pattern.Yarn{Name: written("main"), Runs: num("115"), Weighs: num("50"), Amounts: []pattern.Definition{{Name: written("needs")}}}
	for _, c := range []struct {
		kind          formula.Kind
		figures, want string
	}{
		{formula.Length, "95000 115000 115100", "950 (1150, 1151) m [1039 (1258, 1259) yd] | 9 (10, 11) balls"},
		{formula.Mass, "415 50", "415 (50) g [14.6 (1.8) oz] | 9 (1) balls"},
		{formula.Number, "1 1", "1 ball"},
	} {
		g := &grade.Grade{Pattern: &pattern.Pattern{}, Values: []grade.Value{{Name: "main.needs", Role: grade.Amount, Kind: c.kind, BySize: valuesOf(c.kind, c.figures)}}}
		var got []string
		for _, s := range amountsOf(g).ofYarn(y) {
			got = append(got, s.All)
		}
		if strings.Join(got, " | ") != c.want {
			t.Errorf("%s of %s: %q, want %q", c.figures, c.kind, got, c.want)
		}
	}
}

func TestOf(t *testing.T) {
	g := sized()
	p := g.Pattern
	p.Released, p.Version, p.Skill = "2026-04-02", "1.1", written("easy")
	p.Yarns = []pattern.Yarn{{Name: written("a"), Weight: 3}, {Name: written("b"), Weight: -1}, {Name: written("c"), Weight: 3}}
	p.Photos = []pattern.Photo{{From: written("front.jpg"), Alt: "Worn, from the front", Shows: "M", Ease: "9 cm"}, {From: written("back.jpg")}}
	p.Text = []prose.Block{
		&prose.Paragraph{Line: line("By the river.")},
		&prose.Heading{Level: 2, ID: "hem", Film: -1, Line: line("Hem")},
		&prose.Heading{Level: 3, ID: "rib", Film: -1, Line: line("Rib")},
		&prose.Heading{Level: 2, ID: "back", Film: -1, Line: line("Back")},
	}
	pages, findings := Of(g, pattern.Studio{Title: "Tannery Lane", Contact: "hello@tannery.example"})
	page := pages[0]
	if len(findings) != 1 || findings[0].Rule != "no-alt" || findings[0].Severity != source.Query {
		t.Errorf("findings %v, want a query for the alt text of back.jpg", findings)
	}
	want := Card{Slug: "millrace", Title: "Millrace", Kind: "garment", Skill: "easy", Weights: []int{3, 3}, Released: "2026-04-02", Version: "1.1", Sizes: "S to L", Photo: "front.jpg", Alt: "Worn, from the front"}
	if got := page.Card(); got.Title != want.Title || got.Photo != want.Photo || got.Sizes != want.Sizes || !slices.Equal(got.Weights, want.Weights) || got.Alt != want.Alt || got.Skill != want.Skill {
		t.Errorf("card %+v, want %+v", got, want)
	}
	if tags := strings.Join(page.Card().Tags(), ", "); tags != "Garment, Easy, S to L, Light (3)" {
		t.Errorf("the card says %s", tags)
	}
	var facts []string
	for _, f := range page.Facts {
		facts = append(facts, f.Label+" "+f.Value+" "+f.Address)
	}
	if got, want := strings.Join(facts, "; "), "Kind Garment kind/garment/; Skill Easy skill/easy/; Yarn weight Light (3) weight/3/; Sizes S to L ; Written in US terms ; Version 1.1 ; Released 2 April 2026 "; got != want {
		t.Errorf("facts\n%s\nwant\n%s", got, want)
	}
	if len(page.Intro) != 1 || len(page.Text) != 3 || len(page.Contents) != 2 || page.Contents[1] != (Link{"#back", "Back"}) {
		t.Errorf("intro of %d, text of %d, contents %v", len(page.Intro), len(page.Text), page.Contents)
	}
	if page.Photos[0].Caption != "Shown in size M, with 9 cm of ease." || page.Studio.Language != "en" || page.Studio.ContactLink != "mailto:hello@tannery.example" {
		t.Errorf("%+v, %+v", page.Photos[0], page.Studio)
	}
}

// A text that nothing was worked for is still a page: the finding is elsewhere.
func TestNothingWorked(t *testing.T) {
	p := &pattern.Pattern{Slots: []pattern.Slot{{}, {}}, Sizes: pattern.Sizes{Sample: -1}}
	pages, _ := Of(&grade.Grade{Pattern: p, Slots: [][]formula.Value{{}}}, pattern.Studio{})
	page := pages[0]
	if len(page.Slots) != 2 || page.Slots[0].All != "?" || page.Slots[1].All != "?" || page.Sizes.Range != "One size" {
		t.Errorf("%+v", page)
	}
}

func TestMoment(t *testing.T) {
	for _, c := range []struct {
		film Film
		want string
	}{
		{Film{Address: "https://films.example/millrace"}, "https://films.example/millrace#t=700"},
		{Film{Address: "film.mp4", Local: true}, "film.mp4#t=700"},
		{Film{Address: "https://www.youtube.com/watch?v=x1"}, "https://www.youtube.com/watch?v=x1&t=700s"},
		{Film{Address: "https://youtu.be/x1"}, "https://youtu.be/x1?t=700s"},
		{Film{}, ""},
	} {
		if got := c.film.Moment(700); got != c.want {
			t.Errorf("%v at 11:40: %q, want %q", c.film, got, c.want)
		}
	}
	for seconds, want := range map[int]string{0: "0:00", 90: "1:30", 700: "11:40", 3725: "1:02:05"} {
		if got := Stamp(seconds); got != want {
			t.Errorf("Stamp(%d) = %q, want %q", seconds, got, want)
		}
	}
}
