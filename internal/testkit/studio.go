package testkit

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// Studio makes up a studio of so many patterns, as files by name: all different, none with a finding that is an error. Each
// pattern has about 6 KB, nine sizes and eighty values of its own, and prints some eighty of them in its text.
func Studio(patterns int) map[string]string {
	files := map[string]string{"content/studio.toml": "title = \"Made Up\"\naddress = \"https://madeup.example/\"\n"}
	for i := range patterns {
		files[fmt.Sprintf("content/patterns/thing-%04d/pattern.md", i)] = Pattern(i)
	}
	return files
}

// groups of four values make eighty of them with the four that all come from.
const groups = 19

// Pattern makes up the pattern of a number.
func Pattern(i int) string {
	kinds := [...]string{"garment", "hat", "bag", "shawl", "skirt", "other"}
	skills := [...]string{"basic", "easy", "intermediate", "complex"}
	var b strings.Builder
	fmt.Fprintf(&b, "```toml\ntitle = \"Made-up Thing %d\"\nkind = %q\nsummary = \"The thing made up under number %d.\"\n", i, kinds[i%len(kinds)], i)
	fmt.Fprintf(&b, "released = 2025-%02d-%02d\nskill = %q\nterms = \"us\"\n\n", 1+i%12, 1+i%28, skills[i%len(skills)])
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

// text writes the words below the front matter: paragraphs, a table, a worked piece, with values in all of them.
func text(b *strings.Builder, i int) {
	fmt.Fprintf(b, "Thing %d is worked *flat* from the hem up, {chest - bust} wider than its wearer. It asks for **one yarn**\nand one hook, and for nothing that is hard.\n\n", i)
	b.WriteString("## Widths\n\n| | Stitches | Rows |\n| --- | --- | --- |\n")
	for n := range 5 {
		fmt.Fprintf(b, "| Part %d | {n%d} | {r%d} |\n", n+1, n, n)
	}
	b.WriteString("\n## The piece\n\n```rows piece\nFoundation: Ch {front + 1}.\nRow 1: Hdc in 2nd ch from hook and in each ch across. ({front} sts)\n")
	b.WriteString("Rows 2 to {tall}: Ch 1, turn, hdc in each st across. ({front} sts)\n```\n")
	for n := range groups {
		if n%4 == 0 {
			fmt.Fprintf(b, "\n### Part %d\n\n", n/4+1)
		}
		fmt.Fprintf(b, "Count {n%d} stitches from the edge, mark the {d%d}th stitch and work {r%d} rows even; {w%d} are left.\n", n, n, n, n)
	}
	b.WriteString("\n## Finishing\n\nWeave in the ends, lay the piece out to {chest / 2} by {length}, pin its edges every hand's width and let it\ndry for a night. Sew the sides from the hem up and leave the upper ends open for the arms.\n")
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
