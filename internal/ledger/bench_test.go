package ledger_test

import (
	"testing"

	"foundrow/internal/ledger"
	"foundrow/internal/notation"
	"foundrow/internal/source"
)

// The garment of BenchmarkWork: 12 pieces of 80 written lines in all, worked to 300 rows of which half are shaped. Its numbers are the
// slots of each piece, in nine sizes.
var garment = []struct {
	make int
	text string
	base []int // value of each slot in the first size; it grows by step a size
	step []int
}{
	{2, `Foundation: Ch {hem + 1}.
Row 1: Sc in 2nd ch from hook and in each ch across. ({hem} sts)
Row 2: Ch 1, turn, sc blo in each st across.
Rows 3 to 24: Repeat row 2.
`, []int{11, 10}, []int{0, 0}},
	{2, `Foundation: Ch {front + 1}.
Row 1 (RS): Sc in 2nd ch from hook and in each ch across. ({front} sts)
Row 2: Ch 1, turn, sc in each st across.
Row 3: Ch 1, turn, sc in first st, *dc in next st, sc in next st; rep from * across to last st, sc in last st. ({front} sts)
Repeat rows 2 and 3 4 times.
Row 12: Ch 1, turn, sc in each st across.
Row 13: Ch 1, turn, sc2tog, sc in each st to last 2 sts, sc2tog. ({front - 2} sts)
Row 14: Ch 1, turn, sc in each st across.
Repeat row 13 {times} times. ({front - 2 - 2 * times} sts)
`, []int{81, 80, 80, 78, 22, 34}, []int{8, 8, 8, 8, 0, 8}},
	{4, `Foundation: Ch {cuff + 1}.
Row 1: Sc in 2nd ch from hook and in each ch across. ({cuff} sts)
Row 2: Ch 1, turn, sc in each st across.
Row 3: Ch 1, turn, 2 sc in first st, sc in each st to last st, 2 sc in last st. ({cuff + 2} sts)
Repeat row 3 {grow} times. ({top} sts)
Next 6 rows: Ch 1, turn, sc in each st across.
`, []int{37, 36, 38, 18, 74}, []int{2, 2, 2, 0, 2}},
	{4, `Foundation: Magic ring.
Rnd 1 (RS): Ch 1, 6 sc in ring, join. (6 sts)
Rnd 2: Ch 1, 2 sc in each st around, join. (12 sts)
Rnd 3: Ch 1, *sc in next st, 2 sc in next st; rep from * around, join. (18 sts)
Rnd 4: Ch 1, *sc in next 2 sts, 2 sc in next st; rep from * around, join. (24 sts)
Rnd 5: Ch 1, *sc in next 3 sts, 2 sc in next st; rep from * around, join. (30 sts)
Rnds 6 to 15: Ch 1, sc in each st around, join. (30 sts)
`, nil, nil},
}

// slots finds the braces of a text: the offsets at which values stand.
func slots(text string) map[int]int {
	m := map[int]int{}
	for i := range text {
		if text[i] == '{' {
			m[i] = len(m)
		}
	}
	return m
}

func garmentSizes() []string { return []string{"XS", "S", "M", "L", "XL", "2X", "3X", "4X", "5X"} }

// workGarment parses and works the garment in all sizes, and returns how many rows that was.
func workGarment(tb testing.TB, files []*source.File) (lines, rows, shaped int) {
	sizes := garmentSizes()
	for i, g := range garment {
		at := slots(g.text)
		f := files[i]
		slot := func(from int) int {
			if n, ok := at[from]; ok {
				return n
			}
			return -1
		}
		for range g.make {
			b, fs := notation.Parse(notation.Input{File: f, Body: source.Span{To: len(f.Text)}, Sizes: sizes, Slot: slot})
			if len(fs) > 0 {
				tb.Fatal(fs[0])
			}
			pieces := make([]ledger.Piece, len(sizes))
			for s := range pieces {
				pieces[s] = ledger.Piece{Block: b, Sizes: sizes, Size: s, Count: func(c notation.Count) (int, bool, bool) {
					if c.Slot == 0 || c.Slot > len(g.base) {
						return 0, false, false
					}
					return g.base[c.Slot-1] + s*g.step[c.Slot-1], false, true
				}}
			}
			books, reports := ledger.WorkSizes(pieces)
			for s := range reports {
				if len(reports[s]) > 0 {
					tb.Fatal(ledger.Findings(f, sizes, reports)[0])
				}
				_ = books[s]
			}
			lines += len(b.Lines)
			rows += books[0].Worked()
			before := 0
			for _, r := range books[0].Rows {
				if r.Times > 0 && r.Count != before {
					shaped++
				}
				before = r.Count
			}
		}
	}
	return lines, rows, shaped
}

func BenchmarkWork(b *testing.B) {
	files := make([]*source.File, len(garment))
	for i, g := range garment {
		files[i] = source.NewFile("piece", g.text)
	}
	lines, rows, shaped := workGarment(b, files)
	b.ReportAllocs()
	for b.Loop() {
		workGarment(b, files)
	}
	b.ReportMetric(float64(lines), "lines")
	b.ReportMetric(float64(rows), "rows")
	b.ReportMetric(float64(shaped), "shaped")
}

func BenchmarkParse(b *testing.B) {
	sizes := garmentSizes()
	for b.Loop() {
		for _, g := range garment {
			at := slots(g.text)
			f := source.NewFile("piece", g.text)
			for range g.make {
				notation.Parse(notation.Input{File: f, Body: source.Span{To: len(f.Text)}, Sizes: sizes, Slot: func(from int) int {
					if n, ok := at[from]; ok {
						return n
					}
					return -1
				}})
			}
		}
	}
}
