package page

import (
	"strconv"
	"strings"
	"testing"

	"foundrow/internal/grade"
	"foundrow/internal/manuscript"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// laid writes a line in one: kind, sizes, label, side, text, count, film, divided by bars.
func laid(l Line, slots []Slot) string {
	words := func(i int) string { return slots[i].All }
	kind, film := "row", ""
	if l.Kind == NoteLine {
		kind = "note"
	}
	if l.Film >= 0 {
		film = strconv.Itoa(l.Film)
	}
	return strings.Join([]string{kind, l.Only.Words(words), l.Label.Words(words), l.Side, l.Text.Words(words), l.Count.Words(words), film}, "|")
}

// Every kind of line, as it is set where nothing was worked.
func TestLines(t *testing.T) {
	for _, c := range []struct{ written, want string }{
		{"Foundation: Ch 10.", "row||Foundation||Ch 10.||"},
		{"Row 1 (RS): Sc in 2nd ch from hook and in each ch across. (9 sts)", "row||Row 1|RS|Sc in 2nd ch from hook and in each ch across.|(9 sts)|"},
		{"Row 2 (WS): Ch 1, turn. (9).", "row||Row 2|WS|Ch 1, turn.|(9)|"},
		{"Row 3: (2 dc, ch 2, 2 dc) in next ch-2 sp.", "row||Row 3||(2 dc, ch 2, 2 dc) in next ch-2 sp.||"},
		{"Row 5: Ch 3 (counts as dc), turn. (82 dc, 4 ch-2 sps)", "row||Row 5||Ch 3 (counts as dc), turn.|(82 dc, 4 ch-2 sps)|"},
		{"Repeat row 2 until 5 sts remain.", "row||||Repeat row 2 until 5 sts remain.||"},
		{"Rnds 4 to 9: Sc in each st around.", "row||Rnds 4 to 9||Sc in each st around.||"},
		{"Fasten off.", "row||||Fasten off.||"},
		{"Note: Blocking settles it. (It does.)", "note||Note||Blocking settles it. (It does.)||"},
		{"Note: Leave {wide} sts, {wide + 1} in all.", "note||Note||Leave 9 (10, 12) sts, 10 (11, 13) in all.||"},
		{"Throughout: ch 2 does not count as a st.", "note||Throughout||Ch 2 does not count as a st.||"},
		{"Sizes M and L only: Rnd 8 (RS): Sc in each st around. (64 sts)", "row|Sizes M and L only|Rnd 8|RS|Sc in each st around.|(64 sts)|"},
		{"All other sizes: Note: nothing to do.", "note|All other sizes|Note||nothing to do.||"},
		{"Film: 8:40\nRow 9: Fasten off.", "row||Row 9||Fasten off.||520"},
		{"Film: 1:02:05\nNote: Breathe.", "note||Note||Breathe.||3725"},
		{"Start: 38 row-ends.", "row||Start||38 row-ends.||"},
		{"Start: {wide} sts.", "row||Start||9 (10, 12) sts.||"},
		{"Start: hem.left, 1 hdc in each row-end.", "row||Start||Along the left edge of the hem, 1 hdc in each row-end.||"},
		{"Start: first 10 sts of left_front.last.", "row||Start||On the first 10 sts of the last row of the left front.||"},
		{"Start: left_front.last.", "row||Start||On the last row of the left front.||"},
		{"Seam: hem.last to hem.foundation.", "row||Seam||The last row of the hem to the foundation of the hem.||"},
		{"Place marker a in the {wide}th st.", "row||||Place marker a in the 9th (10th, 12th) st.||"},
		{"Lengthen or shorten here, in steps of 2 rows.", "row||||Lengthen or shorten here, in steps of 2 rows.||"},
		{"Chart: rows 1 to 12.", "row||Chart||Rows 1 to 12.||"},
		{"Work: shaping body over {wide} rows.", "row||||Work: shaping body over 9 (10, 12) rows.||"},
		// Numbers that differ between sizes, with the words that agree with them.
		{"Row 1: Sc in next 4 (6, -) sts, sk 1 (2, 3) sts.", "row||Row 1||Sc in next 4 (6, –) sts, sk 1 (2, 3) sts.||"},
		{"Row 1: Sc in each st to last {wide} sts.", "row||Row 1||Sc in each st to last 9 (10, 12) sts.||"},
		{"Row 1: (Sc, ch 1) {few} times.", "row||Row 1||(sc, ch 1) 1 (2, 3) times.||"},
		{"Row 1: (Sc, ch 1) {one} times.", "row||Row 1||(sc, ch 1) once.||"},
		{"Repeat row 2 until {few} sts remain.", "row||||Repeat row 2 until 1 (2, 3) sts remain.||"},
		{"Rows 2 to {wide}: Sc in each st. ({one} sts)", "row||Rows 2 to 9 (10, 12)||Sc in each st.|(1 st)|"},
		{"Sizes S and L only: Row {wide}: Sc in next {few} sts. ({wide} sts)", "row|Sizes S and L only|Row 9 (–, 12)||Sc in next 1 (–, 3) sts.|(9 (–, 12) sts)|"},
		{"Size M only: Rows 2 to {wide}: Sc in the {few}th st. ({wide} sts)", "row|Size M only|Rows 2 to 10||Sc in 2nd st.|(10 sts)|"},
		{"Repeat row 2 until piece measures {long}.", "row||||Repeat row 2 until piece measures 10 (12, 14) cm [4 (4¾, 5½) inches].||"},
	} {
		front := "[sizes]\noffer = [\"S\", \"M\", \"L\"]\n[measures]\nlong = \"10 (12, 14) cm\"\n[counts]\nwide = \"9 (10, 12) sts\"\nfew = \"1 (2, 3)\"\none = \"1\""
		file := source.NewFile("pattern.md", "```toml\ntitle = \"Case\"\nkind = \"other\"\nterms = \"us\"\n"+front+"\n```\n\n"+rows(c.written))
		p, _ := manuscript.ReadPattern(file, "case", pattern.Studio{}, manuscript.Published())
		worked, _ := grade.Work(p)
		pages, _ := Of(&grade.Grade{Pattern: p, Slots: worked.Slots}, pattern.Studio{})
		lines := pages[0].Pieces[0].Lines
		if len(lines) != 1 {
			t.Errorf("%q makes %d lines", c.written, len(lines))
			continue
		}
		if got := laid(lines[0], pages[0].Slots); got != c.want {
			t.Errorf("%q\n gives %q\n  want %q", c.written, got, c.want)
		}
	}
}

// In one size a row reads as if it had been written for it.
func TestRowsInOneSize(t *testing.T) {
	g := graded(t, "[sizes]\noffer = [\"S\", \"M\", \"L\"]\n[counts]\nwide = \"9 (10, 12) sts\"\nfew = \"1 (2, 3)\"",
		rows("Foundation: Ch {wide + 1}.\nRow 1: Sc in 2nd ch from hook and in each ch across.\nRow 2: Ch 1, turn, sc in next {few} sts, sc2tog, sc in each st across.\nRepeat row 2 {few} times."))
	pages, _ := Of(g, pattern.Studio{})
	for size, want := range []string{
		"Ch 10. | Sc in 2nd ch from hook and in each ch across. (9 sts) | Ch 1, turn, sc in next 1 st, sc2tog, sc in each st across. (8 sts) | Repeat row 2 once. (7 sts)",
		"Ch 11. | Sc in 2nd ch from hook and in each ch across. (10 sts) | Ch 1, turn, sc in next 2 sts, sc2tog, sc in each st across. (9 sts) | Repeat row 2 twice. (7 sts)",
		"Ch 13. | Sc in 2nd ch from hook and in each ch across. (12 sts) | Ch 1, turn, sc in next 3 sts, sc2tog, sc in each st across. (11 sts) | Repeat row 2 3 times. (8 sts)",
	} {
		var got []string
		for _, l := range pages[0].Pieces[0].Lines {
			words := func(i int) string { return pages[0].Slots[i].In(size) }
			got = append(got, strings.TrimSpace(l.Text.Words(words)+" "+l.Count.Words(words)))
		}
		if strings.Join(got, " | ") != want {
			t.Errorf("size %d reads\n%s\nwant\n%s", size, strings.Join(got, " | "), want)
		}
	}
}

// A count is printed where it changes, and a side once one was said.
func TestWorkedLines(t *testing.T) {
	for _, c := range []struct{ name, rows, want string }{
		{"flat", `
			Foundation: Ch 11.
			Row 1 (RS): Sc in 2nd ch from hook and in each ch across.
			Row 2: Ch 1, turn, sc in each st across.
			Row 3: Ch 1, turn, sc2tog, sc in each st across. (9 sts)
			Rows 4 and 5: Ch 1, turn, sc2tog, sc in each st across.
			Repeat row 2 until 7 sts remain.
			Repeat row 3 twice.
			Fasten off.`, `
			row||Foundation||Ch 11.||
			row||Row 1|RS|Sc in 2nd ch from hook and in each ch across.|(10 sts)|
			row||Row 2|WS|Ch 1, turn, sc in each st across.||
			row||Row 3|RS|Ch 1, turn, sc2tog, sc in each st across.|(9 sts)|
			row||Rows 4 and 5||Ch 1, turn, sc2tog, sc in each st across.|(7 sts)|
			row||||Repeat row 2 until 7 sts remain.||
			row||||Repeat row 3 twice.|(5 sts)|
			row||||Fasten off.||`},
		{"round", `
			Foundation: Magic ring.
			Rnd 1 (RS): 6 sc in ring.
			Rnd 2: 2 sc in each st around.
			Rnd 3: Sc in each st around.`, `
			row||Foundation||Magic ring.||
			row||Rnd 1|RS|6 sc in ring.|(6 sts)|
			row||Rnd 2||2 sc in each st around.|(12 sts)|
			row||Rnd 3||Sc in each st around.||`},
		{"spaces", `
			Foundation: Ch {wide + 1}.
			Row 1: Sc in 2nd ch from hook and in each ch across. ({wide} sts)
			Row 2: Ch 1, turn, sc in first st, *ch 2, sk next st, sc in next st; rep from * across.
			Row 3: Ch 1, turn, sc in first sc, *ch 3, sc in next sc; rep from * across.
			Row 4: Ch 1, turn, sc in first sc, *ch 3, sc in next sc; rep from * across.`, `
			row||Foundation||Ch 10 (12, 14).||
			row||Row 1||Sc in 2nd ch from hook and in each ch across.|(9 (11, 13) sts)|
			row||Row 2||Ch 1, turn, sc in first st, *ch 2, sk next st, sc in next st; rep from * across.|(5 (6, 7) sts, 4 (5, 6) ch-2 sps)|
			row||Row 3||Ch 1, turn, sc in first sc, *ch 3, sc in next sc; rep from * across.|(5 (6, 7) sts, 4 (5, 6) ch-3 sps)|
			row||Row 4||Ch 1, turn, sc in first sc, *ch 3, sc in next sc; rep from * across.||`},
		{"some sizes", `
			Foundation: Ch {wide + 1}.
			Row 1: Sc in 2nd ch from hook and in each ch across.
			Sizes M and L only: Next row: Ch 1, turn, sc2tog, sc in each st across.
			Next row: Ch 1, turn, sc in each st across.`, `
			row||Foundation||Ch 10 (12, 14).||
			row||Row 1||Sc in 2nd ch from hook and in each ch across.|(9 (11, 13) sts)|
			row|Sizes M and L only|Next row||Ch 1, turn, sc2tog, sc in each st across.|(– (10, 12) sts)|
			row||Next row||Ch 1, turn, sc in each st across.||`},
	} {
		g := graded(t, "[sizes]\noffer = [\"S\", \"M\", \"L\"]\n[counts]\nwide = \"9 (11, 13) sts\"", rows(unindented(c.rows)))
		pages, _ := Of(g, pattern.Studio{})
		var got []string
		for _, l := range pages[0].Pieces[0].Lines {
			got = append(got, laid(l, pages[0].Slots))
		}
		if want := unindented(c.want); strings.Join(got, "\n") != want {
			t.Errorf("%s:\n%s\nwant\n%s", c.name, strings.Join(got, "\n"), want)
		}
	}
}

func unindented(text string) string {
	var lines []string
	for line := range strings.SplitSeq(strings.TrimSpace(text), "\n") {
		lines = append(lines, strings.TrimSpace(line))
	}
	return strings.Join(lines, "\n")
}

// Each block of a piece has its own lines, whether the piece goes on or is worked as another.
func TestPieces(t *testing.T) {
	g := graded(t, "[hook.main]\nsize = \"4 mm\"\n[hook.small]\nsize = \"3.5 mm\"\n[gauge.body]\nstitch = \"sc\"\nstitches = 16\nrows = 18\nhook = \"main\"\n[gauge.rib]\nstitch = \"sc blo\"\nstitches = 18\nrows = 20\nhook = \"small\"\n",
		strings.Join([]string{
			"```rows left_front at body, make 2\nFoundation: Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across. (10 sts)\n```",
			"```rows left_front continued at rib with small\nRow 2: Ch 1, turn, sc2tog, sc blo in each st across.\n```",
			"```rows back as left_front\nFoundation: Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across. (20 sts)\n```",
			"```rows right_front as left_front, reversed\n```",
		}, "\n\n"))
	pages, _ := Of(g, bothTerms)
	var got []string
	for _, p := range pages[1].Pieces {
		got = append(got, "# "+p.Title+": "+p.Asks)
		for _, l := range p.Lines {
			got = append(got, laid(l, pages[1].Slots))
		}
	}
	want := unindented(`
		# Left front: make 2, at the body tension
		row||Foundation||Ch 11.||
		row||Row 1||Dc in 2nd ch from hook and in each ch across.|(10 sts)|
		# Left front, continued: at the rib tension, with the 3.5 mm hook
		row||Row 2||Ch 1, turn, dc2tog, dc BLO in each st across.|(9 sts)|
		# Back: worked as the left front, at the body tension
		row||Foundation||Ch 21.||
		row||Row 1||Dc in 2nd ch from hook and in each ch across.|(20 sts)|
		row||Row 2||Ch 1, turn, dc2tog, dc BLO in each st across.|(19 sts)|
		# Right front: worked as the left front, reversed, at the body tension
		note||Note||This is the left front in a mirror: whatever a row does there at its beginning, it does here at its end, and the other way round.||
		row||Foundation||Ch 11.||
		row||Row 1||Dc in 2nd ch from hook and in each ch across.|(10 sts)|
		row||Row 2||Ch 1, turn, dc2tog, dc BLO in each st across.|(9 sts)|`)
	if strings.Join(got, "\n") != want {
		t.Errorf("\n%s\nwant\n%s", strings.Join(got, "\n"), want)
	}
}
