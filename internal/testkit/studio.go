package testkit

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// Studio makes up a studio of so many patterns, as files by name: all different, none with a finding that is an error. Each
// pattern has about 6 KB, nine sizes and forty formulas, and prints eighty values in its text.
func Studio(patterns int) map[string]string {
	files := map[string]string{"content/studio.toml": "title = \"Made Up\"\naddress = \"https://madeup.example/\"\ncontact = \"us@madeup.example\"\n"}
	for i := range patterns {
		files[fmt.Sprintf("content/patterns/thing-%04d/pattern.md", i)] = Pattern(i)
	}
	return files
}

// groups of four formulas make forty with the four that all come from.
const groups = 9

// Pattern makes up the pattern of a number.
func Pattern(i int) string {
	kinds := [...]string{"garment", "hat", "bag", "shawl", "skirt", "other"}
	skills := [...]string{"basic", "easy", "intermediate", "complex"}
	var b strings.Builder
	fmt.Fprintf(&b, "```toml\ntitle = \"Made-up Thing %d\"\nkind = %q\nsummary = \"The thing made up under number %d.\"\n", i, kinds[i%len(kinds)], i)
	fmt.Fprintf(&b, "released = 2025-%02d-%02d\nversion = \"1.0\"\nskill = %q\nterms = \"us\"\n\n", 1+i%12, 1+i%28, skills[i%len(skills)])
	fmt.Fprintf(&b, "[yarn.main]\nname = \"Any smooth DK wool\"\nweight = 3\nball = { weighs = \"50 g\", runs = \"120 m\" }\nneeds = \"%d m\"\n\n", 400+i%300)
	b.WriteString("[hook.main]\nsize = \"4.5 mm\"\n\n[gauge.body]\nstitch = \"hdc\"\n")
	fmt.Fprintf(&b, "stitches = %d\nrows = %d\n\n[sizes]\ntable = \"women\"\noffer = \"XS to 5X\"\nsample = \"M\"\n\n", 13+i%5, 10+i%4)
	fmt.Fprintf(&b, "[measures.chest]\nbody = \"bust\"\nease = \"%d cm\"\nmade = \"front * 2 in cm at body\"\n\n", 6+i%7)
	b.WriteString("[measures]\nlength = \"54 (55, 55, 55, 57) (57, 57, 57, 57) cm\"\n\n[counts]\n")
	b.WriteString("front = \"chest / 2 in stitches at body, rounded to the nearest multiple of 6 + 2\"\n")
	b.WriteString("tall = \"length in rows at body, rounded up to even\"\n")
	for n := range groups {
		fmt.Fprintf(&b, "n%d = \"front / %d, rounded up to even\"\n", n, 2+n%5)
		fmt.Fprintf(&b, "r%d = \"tall - %d\"\n", n, 2+n%9)
		fmt.Fprintf(&b, "w%d = \"%d%% of bust in stitches at body, rounded down to whole\"\n", n, 20+n)
		fmt.Fprintf(&b, "d%d = \"front + %d\"\n", n, 2*n)
	}
	b.WriteString("```\n\n")
	text(&b, i)
	return b.String()
}

// text writes the words below the front matter: paragraphs, lists, a table and a worked piece, with values in all of them.
func text(b *strings.Builder, i int) {
	fmt.Fprintf(b, "Thing %d is worked *flat* from the hem up, wider than its wearer. It asks for **one yarn**\nand one hook, and for nothing that is hard. Read it through once before you begin: the parts are met in the order\nin which they are worked, and what is said once of the edges holds for all of them. See [where to begin](#the-piece).\n\n", i)
	b.WriteString("## Widths\n\n| | Stitches | Rows |\n| --- | --- | --- |\n")
	for n := range 6 {
		fmt.Fprintf(b, "| Part %d | {n%d} | {r%d} |\n", n+1, n, n)
	}
	b.WriteString("\n## The piece\n\n```rows piece\nFoundation: Ch {front + 1}.\nRow 1: Hdc in 2nd ch from hook and in each ch across. ({front} sts)\n")
	b.WriteString("Rows 2 to 6: Ch 1, turn, hdc in each st across.\n")
	b.WriteString("Row 7: Ch 1, turn, hdc in next 4 sts, *sc in next 2 sts, hdc in next 4 sts; rep from * to last 4 sts, hdc in last 4 sts. ({front} sts)\n")
	b.WriteString("Row 8: Ch 1, turn, hdc in each st across.\nRepeat rows 7 and 8 {r0 / 2} times.\n")
	b.WriteString("Next row: Ch 1, turn, hdc2tog, hdc in each st to last 2 sts, hdc2tog. ({front - 2} sts)\n")
	b.WriteString("Next row: Ch 1, turn, hdc2tog, hdc in each st to last 2 sts, hdc2tog. ({front - 4} sts)\n```\n")
	for n := range groups {
		fmt.Fprintf(b, "\n### Part %d\n\nCount {n%d} stitches from the edge and mark the {d%d}th; work {r%d} rows even in the *second* colour.\n", n+1, n, n, n)
		fmt.Fprintf(b, "Of the {w%d} stitches that are left, {n%d - 2} lie beside the {front - 2} you know:\n\n", n, n)
		fmt.Fprintf(b, "- go on over {r%d - 1} rows, **turning** at the end of each;\n- end at the marked stitch, break the yarn and leave a tail to sew with.\n", n)
	}
	b.WriteString("\n## Finishing\n\nWeave in the ends, lay the piece out to its measurements, pin its edges every hand's width and let it\ndry for a night. Sew the sides from the hem up and leave the upper ends open for the arms. What is left of the\nyarn makes a tassel as long as your hand.\n")
}

// WriteStudio writes files by name into a folder.
func WriteStudio(t testing.TB, folder string, files map[string]string) {
	t.Helper()
	for name, text := range files {
		name = filepath.Join(folder, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(name), 0o777); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(name, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
}
