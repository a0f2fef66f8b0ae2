package notation_test

import (
	"testing"

	"foundrow/internal/stitch"
)

// piece is a worked piece of ten lines, as a garment has a dozen of.
const piece = `Foundation: Ch 44 (48, 52, 56, 60).
Row 1 (RS): Hdc in 3rd ch from hook and in each ch across. (42, 46, 50, 54, 58 hdc)
Row 2: Ch 2 (does not count as a st), turn, hdc in each st across.
Rows 3 to 20: Repeat row 2.
Row 21: Ch 1, turn, sc in first st, *ch 1, sk next st, sc in next st; rep from * to last st, sc in last st.
Row 22: Ch 1, turn, sc in first st, *ch 1, sk ch-1 sp, sc in next sc; rep from * to last st, sc in last st.
Row 23: Ch 3 (counts as dc), turn, [dc in next 5 sts, dc2tog] 4 (5, 5, 6, 6) times, dc in each st across.
Row 24: Ch 1, turn, sl st in first 4 (4, 5, 5, 6) sts, ch 1, sc in next st, sc2tog, sc to last 7 (7, 8, 8, 9) sts, sc2tog.
Row 25: Ch 3, turn, (2 dc, ch 2, 2 dc) in next ch-2 sp, dc in each st across, join with sl st in top of beg ch-3.
Repeat rows 24 and 25 until 12 sts remain.`

func BenchmarkParse(b *testing.B) {
	sizes := []string{"S", "M", "L", "XL", "2X"}
	b.ReportAllocs()
	for b.Loop() {
		read(piece, stitch.US, sizes, nil)
	}
}

func BenchmarkPrint(b *testing.B) {
	block, fs := read(piece, stitch.US, []string{"S", "M", "L", "XL", "2X"}, nil)
	if len(fs) > 0 {
		b.Fatal(fs[0])
	}
	b.ReportAllocs()
	for b.Loop() {
		write(block, stitch.UK)
	}
}
