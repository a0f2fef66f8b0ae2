package watch

import (
	"fmt"
	"strings"
	"testing"
	"testing/fstest"

	"foundrow/internal/site"
)

// scarf is a pattern of nine sizes in few lines. Its rows are worked from its counts, and its counts from its body.
const scarf = "```toml\n" + `title = "Scarf"
kind = "other"
terms = "us"
released = 2026-04-02
[gauge.body]
stitch = "sc"
stitches = 16
rows = 18
[sizes]
table = "women"
offer = "XS to 5X"
[measures.width]
body = "bust"
ease = "10 cm"
made = "across in cm at body"
[counts]
across = "width in stitches at body, rounded to the nearest multiple of 2"
hem = { XS = 60, S = 60, M = 60, L = 62, XL = 64, 2X = 66, 3X = 68, 4X = 70, 5X = 72 }
tall = 12
` + "```\n" + `
# Scarf

A scarf.

` + "```rows hem at body\n" + `Foundation: Ch {hem + 1}.
Row 1: Sc in 2nd ch from hook and in each ch across. ({hem} sts)
Row 2: Ch 1, turn, sc in each st across.
Rows 3 to {tall}: Repeat row 2.
` + "```\n"

// studioOf is a studio of one pattern, the scarf.
func studioOf(pattern string) map[string]string {
	return map[string]string{
		"content/studio.toml":               "title = \"Dunes\"\naddress = \"https://dunes.example/\"\ncontact = \"us@dunes.example\"\n",
		"content/patterns/scarf/pattern.md": pattern,
	}
}

// recorded works a scarf and records it.
func recorded(t testing.TB, pattern string) *record {
	t.Helper()
	files := fstest.MapFS{}
	for name, text := range studioOf(pattern) {
		files[name] = &fstest.MapFile{Data: []byte(text)}
	}
	p, err := site.OpenPreview(site.Plainly(files), "test", nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	s := p.Sheets("patterns/scarf", nil)
	if !s.Good {
		t.Fatalf("the scarf has %v", s.Findings)
	}
	return recordOf(s.Worked)
}

// said prints a change as the band does.
func (c *change) said() string {
	var b strings.Builder
	for _, v := range c.Values {
		fmt.Fprintf(&b, "%s %s\n", v.Name, v.Said)
	}
	for _, r := range c.Rows {
		fmt.Fprintf(&b, "%s", r.Where)
		if r.In != "" {
			fmt.Fprintf(&b, " %s", r.In)
		}
		fmt.Fprintf(&b, ": %s → %s\n", r.From, r.To)
	}
	if c.More > 0 {
		fmt.Fprintf(&b, "and %d more rows\n", c.More)
	}
	return b.String()
}

// TestThisSaveChanged edits the scarf and reads what is said to have changed. The figures are worked by hand: the busts of the women's
// table are 30 to 62 inches at their upper ends (Craft Yarn Council, www.YarnStandards.com), four inches apart, in centimetres at 2.54,
// and with 10 cm of ease, at 16 sts to 10 cm, rounded to even.
func TestThisSaveChanged(t *testing.T) {
	for _, c := range []struct{ does, old, new, said string }{
		{"nothing", "A scarf.", "A scarf.", ""},
		{"words alone", "A scarf.", "A long scarf.", ""},
		{"a count in one size", "L = 62", "L = 64", `
hem 62 → 64 in L
hem.stitches 62 → 64 in L
Hem, Foundation in L: Ch 63. → Ch 65.
Hem, Row 1 in L: Sc in 2nd ch from hook and in each ch across. (62 sts) → Sc in 2nd ch from hook and in each ch across. (64 sts)
`},
		{"a count in two sizes alike and in one otherwise", "XS = 60, S = 60, M = 60", "XS = 60, S = 58, M = 58", `
hem 60 → 58 in S and M
hem.stitches 60 → 58 in S and M
Hem, Foundation in S and M: Ch 61. → Ch 59.
Hem, Row 1 in S and M: Sc in 2nd ch from hook and in each ch across. (60 sts) → Sc in 2nd ch from hook and in each ch across. (58 sts)
`},
		{"a count in every size", "tall = 12", "tall = 14", `
tall 12 → 14 in every size
hem.rows 12 → 14 in every size
Hem, Rows 3 to 14: Rows 3 to 12: Repeat row 2. → Rows 3 to 14: Repeat row 2.
`},
		{"a row", "sc in each st across.\nRows", "sc blo in each st across.\nRows", `
Hem, Row 2: Ch 1, turn, sc in each st across. → Ch 1, turn, sc BLO in each st across.
`},
		{"a row more", "Rows 3 to {tall}", "Row 3: Ch 1, turn, hdc in each st across.\nRows 4 to {tall}", `
Hem, Row 3:  → Ch 1, turn, hdc in each st across.
Hem, Rows 4 to 12:  → Repeat row 2.
Hem, Rows 3 to 12: Repeat row 2. → 
`},
		{"the ease: in 2X the count is rounded to the same", "10 cm", "11 cm", `
width 86.2 → 87.2 cm in XS, 96.36 → 97.36 cm in S, 106.52 → 107.52 cm in M, 116.68 → 117.68 cm in L, 126.84 → 127.84 cm in XL, 137 → 138 cm in 2X, 147.16 → 148.16 cm in 3X, 157.32 → 158.32 cm in 4X, 167.48 → 168.48 cm in 5X
across 138 → 140 in XS, 154 → 156 in S, 170 → 172 in M, 186 → 188 in L, 202 → 204 in XL, 236 → 238 in 3X, 252 → 254 in 4X, 268 → 270 in 5X
width as made 86.25 → 87.5 cm in XS, 96.25 → 97.5 cm in S, 106.25 → 107.5 cm in M, 116.25 → 117.5 cm in L, 126.25 → 127.5 cm in XL, 147.5 → 148.75 cm in 3X, 157.5 → 158.75 cm in 4X, 167.5 → 168.75 cm in 5X
`},
		{"a name", "tall = 12", "tall = 12\nlong = \"tall * 2\"", `
long is new: 24
`},
		{"fewer sizes", "XS to 5X\"\n", "S to 5X\"\n", `
sizes XS to 5X → S to 5X
`},
	} {
		t.Run(c.does, func(t *testing.T) {
			edited := strings.Replace(scarf, c.old, c.new, 1)
			if c.does == "fewer sizes" {
				edited = strings.Replace(edited, "XS = 60, ", "", 1)
			}
			if said := "\n" + compare(recorded(t, scarf), recorded(t, edited)).said(); said != c.said && said+c.said != "\n" {
				t.Errorf("it is said that%s\nwanted%s", said, c.said)
			}
		})
	}
}

// Going back says the same the other way round.
func TestChangeBack(t *testing.T) {
	was, is := recorded(t, scarf), recorded(t, strings.Replace(scarf, "L = 62", "L = 64", 1))
	there, back := compare(was, is), compare(is, was)
	if there.Values[0] != (valueChange{"hem", "62 → 64 in L"}) || back.Values[0] != (valueChange{"hem", "64 → 62 in L"}) {
		t.Errorf("there is %v, back %v", there.Values, back.Values)
	}
	if !compare(was, was).empty() || !compare(nil, was).empty() {
		t.Error("something is said to have changed where nothing has")
	}
}

// A long list of rows is cut, and says so.
func TestManyRowsChanged(t *testing.T) {
	rows := ""
	for n := 13; n < 40; n++ {
		rows += fmt.Sprintf("Row %d: Ch 1, turn, sc in each st across.\n", n)
	}
	longer := strings.Replace(scarf, "Repeat row 2.\n", "Repeat row 2.\n"+rows, 1)
	c := compare(recorded(t, scarf), recorded(t, longer))
	if len(c.Rows) != mostRows || c.More != 27-mostRows {
		t.Errorf("%d rows are listed and %d more", len(c.Rows), c.More)
	}
}
