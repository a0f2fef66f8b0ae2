package page

import (
	"strconv"
	"testing"

	"foundrow/internal/formula"
	"foundrow/internal/pattern"
	"foundrow/internal/prose"
)

// BenchmarkOf words a pattern of nine sizes with 80 values in its text, a fifth of them lengths, and 60 rows.
func BenchmarkOf(b *testing.B) {
	g := sized()
	g.Pattern.Sizes.Names = []string{"XS", "S", "M", "L", "XL", "2X", "3X", "4X", "5X"}
	figures := "62 68 74 80 86 98 104 110 116"
	for i := range 80 {
		kind := formula.Stitches
		if i%5 == 0 {
			kind = formula.Length
		}
		g.Pattern.Slots = append(g.Pattern.Slots, pattern.Slot{Formula: &formula.Formula{Text: "value" + strconv.Itoa(i)}})
		g.Slots = append(g.Slots, valuesOf(kind, figures))
	}
	rows := pattern.Piece{Name: written("back")}
	for i := range 60 {
		rows.Lines = append(rows.Lines, pattern.RowLine{
			Lead: prose.Line{prose.Text("Row " + strconv.Itoa(i+1))},
			Line: prose.Line{prose.Text("Ch 1, turn, hdc in each st across to last 2 sts, hdc2tog. ("), prose.Slot{Index: i}, prose.Text(" sts)")},
		})
	}
	g.Pattern.Pieces = []pattern.Piece{rows}
	b.ReportAllocs()
	for b.Loop() {
		if p, _ := Of(g, pattern.Studio{}); len(p.Slots) != 80 {
			b.Fatal("slots are missing")
		}
	}
}
