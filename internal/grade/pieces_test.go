package grade_test

import (
	"strings"
	"testing"

	"foundrow/internal/formula"
	"foundrow/internal/grade"
	"foundrow/internal/manuscript"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// pieced reads and works a pattern in sizes S and M, of counts and of blocks of rows.
func pieced(t *testing.T, counts, rows string) (*grade.Grade, source.Findings) {
	t.Helper()
	text := "```toml\ntitle = \"Pieces\"\nkind = \"other\"\nterms = \"us\"\n[gauge.body]\nstitch = \"sc\"\nstitches = 16\nrows = 20\n" +
		"[sizes]\noffer = [\"S\", \"M\"]\n[counts]\n" + counts + "```\n\n" + rows
	p, findings := manuscript.ReadPattern(source.NewFile("pattern.md", text), "pieces", pattern.Studio{}, manuscript.Published())
	if findings.Errors() {
		t.Fatal(findings)
	}
	return grade.Work(p)
}

func rules(findings source.Findings) string {
	var found []string
	for _, f := range findings {
		found = append(found, f.Rule)
	}
	return strings.Join(found, " ")
}

// TestPiecesAreEntries: values and pieces are worked in whatever order they need, in every size.
func TestPiecesAreEntries(t *testing.T) {
	g, findings := pieced(t,
		"around = \"border.stitches + 2\"\nlong = \"20 (24) rows\"\nwide = \"12 (14) sts\"\n",
		"```rows border at body\nStart: hem.left, 1 sc in each row-end.\nRow 1: Ch 1, turn, sc in each st across. ({hem.rows} sts)\n```\n\n"+
			"```rows hem at body\nFoundation: Ch {wide + 1}.\nRow 1: Sc in 2nd ch from hook and in each ch across. ({wide} sts)\nRows 2 to {long}: Ch 1, turn, sc in each st across.\n```\n\n{around}, {hem.height}\n")
	if len(findings) > 0 {
		t.Fatal(findings)
	}
	around := g.Value("around")
	if got := around.BySize[0].Num.String() + " " + around.BySize[1].Num.String(); got != "22 26" || around.Kind != formula.Stitches {
		t.Errorf("around is %s %v: the border has a stitch in each row-end of 20 and 24 rows", got, around.Kind)
	}
	height := g.Slots[len(g.Slots)-1]
	if got := height[0].Num.String() + " " + height[1].Num.String(); got != "10 12" {
		t.Errorf("the hem is %s cm high: 20 and 24 rows, 20 of them to 10 cm", got)
	}
	if g.Pieces[0].Name != "border" || g.Pieces[0].Books[1].Stitches() != 24 {
		t.Errorf("the border in M has %d stitches", g.Pieces[0].Books[1].Stitches())
	}
}

// TestWrongInOneSize: a row that comes out in one size and not in another is one finding that names the size.
func TestWrongInOneSize(t *testing.T) {
	_, findings := pieced(t, "wide = \"12 (15) sts\"\n",
		"```rows hem at body\nFoundation: Ch {wide + 1}.\nRow 1: Sc in 2nd ch from hook and in each ch across.\nRow 2: Ch 1, turn, (sc in next 2 sts, sc2tog) across. (9 (11) sts)\n```\n")
	if len(findings) != 1 || strings.Join(findings[0].Sizes, " ") != "M" || findings[0].Place.Line != 18 {
		t.Errorf("found %v", findings)
	}
}

// TestPieceFaults: what is asked of a piece that it does not have, a circle through pieces, a length where a number is wanted.
func TestPieceFaults(t *testing.T) {
	hem := "```rows hem at body\nFoundation: Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across.\n```\n"
	if _, findings := pieced(t, "shade = \"hem.colour + 1\"\n", hem); rules(findings) != "unknown-name unused" {
		t.Errorf("found %v", findings)
	}
	loop := "```rows hem at body\nFoundation: Ch {wide}.\nRow 1: Sc in 2nd ch from hook and in each ch across.\n```\n"
	if _, findings := pieced(t, "wide = \"hem.stitches + 1\"\n", loop); rules(findings) != "circle" {
		t.Errorf("found %v", findings)
	}
	long := "```rows hem at body\nFoundation: Ch {5 cm}.\nRow 1: Sc in 2nd ch from hook and in each ch across.\n```\n"
	if _, findings := pieced(t, "wide = 3\n", long+"{wide}\n"); rules(findings) != "kinds" {
		t.Errorf("found %v", findings)
	}
}

// TestLessThanNone: a repetition that comes to less than none in one size is told in that size; what is left of an edge is asked about.
func TestLessThanNone(t *testing.T) {
	_, findings := pieced(t, "deep = \"14 (20) rows\"\n",
		"```rows hem at body\nFoundation: Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across. (10 sts)\nRow 2: Ch 1, turn, sc in each st across.\nRepeat row 2 {deep - 15} more times.\n```\n")
	if rules(findings) != "row-below-zero" || strings.Join(findings[0].Sizes, " ") != "S" {
		t.Errorf("found %v", findings)
	}
	_, findings = pieced(t, "deep = \"14 (20) rows\"\n",
		"```rows hem at body\nFoundation: Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across. (10 sts)\nRows 2 to {deep}: Ch 1, turn, sc in each st across.\n```\n\n"+
			"```rows cuff at body\nStart: first 4 sts of hem.last.\nRow 1: Ch 1, turn, sc in each st across. (4 sts)\n```\n")
	if rules(findings) != "left-over" || findings[0].Severity != source.Query || len(findings[0].Sizes) != 0 {
		t.Errorf("found %v", findings)
	}
}
