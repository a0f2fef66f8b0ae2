package grade

import (
	"strconv"
	"strings"
	"testing"

	"foundrow/internal/formula"
	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// garment is a pattern of forty formulas in nine sizes, of the kinds that a designer writes.
func garment() (string, []string) {
	formulas := []string{
		"chest / 2 in stitches at body, rounded to the nearest multiple of 6 + 2",
		"90% of chest in rows at rib, rounded up to even",
		"front / 6, rounded up to even",
		"(front - neck) / 2",
		"14 (14, 15, 15, 16) (16, 17, 17, 18) cm in rows at body, rounded down to even",
		"max(front - 20, 40 sts)",
		"6 cm in stitches at rib, rounded up to whole",
		"abs(front - 2 * arm), rounded up to odd",
	}
	var b strings.Builder
	var lines []string
	for i := range 40 {
		f := formulas[i%len(formulas)]
		lines = append(lines, f)
		b.WriteString("c" + strconv.Itoa(i) + " = " + f + "\n")
	}
	return b.String(), lines
}

// BenchmarkGrade reads 40 formulas, checks them and works them in nine sizes.
func BenchmarkGrade(b *testing.B) {
	text, lines := garment()
	file := source.NewFile("bench.md", text)
	bust := []int64{76, 86, 97, 107, 117, 127, 137, 147, 157}
	values := make([]measure.Num, len(bust))
	for i, n := range bust {
		values[i] = measure.Int(n)
	}
	base := pattern.Pattern{File: file, Sizes: pattern.Sizes{
		Names: strings.Fields("XS S M L XL 2X 3X 4X 5X"), Sample: 2,
		Body: []pattern.BodyMeasurement{{Name: "bust", Value: values}},
	}}
	base.Gauges = []pattern.Gauge{
		{Name: pattern.Words{Text: "body"}, Stitches: measure.Int(14), Rows: measure.Int(10), Over: measure.Int(10), RowsOver: measure.Int(10)},
		{Name: pattern.Words{Text: "rib"}, Stitches: measure.Int(16), Rows: measure.Int(18), Over: measure.Int(10), RowsOver: measure.Int(10)},
	}
	b.ReportAllocs()
	for b.Loop() {
		p := base
		ease, _ := formula.ParseEase(file, 0, "10 cm")
		p.Measures = []pattern.Measure{{
			Definition: pattern.Definition{Name: pattern.Words{Text: "chest"}}, Body: pattern.Words{Text: "bust"},
			Ease: []pattern.Part{{Formula: ease}}, Finished: true,
		}}
		at := 0
		p.Counts = make([]pattern.Definition, 0, len(lines))
		for i, l := range lines {
			name := "c" + strconv.Itoa(i)
			switch i {
			case 0:
				name = "front"
			case 2:
				name = "neck"
			case 6:
				name = "arm"
			}
			f, findings := formula.Parse(file, at, l)
			if findings != nil {
				b.Fatal(findings)
			}
			p.Counts = append(p.Counts, pattern.Definition{Name: pattern.Words{Text: name, Span: f.Span}, Parts: []pattern.Part{{Formula: f}}})
			at += len(l)
		}
		g, findings := Work(&p)
		if findings.Errors() || len(g.Values) != 42 {
			b.Fatal(findings)
		}
	}
}
