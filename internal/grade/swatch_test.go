package grade_test

import (
	"testing"

	"foundrow/internal/grade"
	"foundrow/internal/measure"
	"foundrow/internal/pattern"
)

// TestMeasure: all that was counted over all that was measured.
func TestMeasure(t *testing.T) {
	half := func(n int64) measure.Num { return measure.Ratio(n, 2) }
	reading := func(sts, width, rows, height int64) grade.Reading {
		return grade.Reading{Stitches: half(sts), Width: half(width), Rows: half(rows), Height: half(height)}
	}
	for _, c := range []struct {
		name        string
		readings    []grade.Reading
		mean, apart string
	}{
		{"nothing", nil, "0 0", "0 0"},
		{"one", []grade.Reading{reading(32, 20, 24, 20)}, "16 12", "0 0"},
		{"one over more than ten centimetres", []grade.Reading{reading(32, 21, 40, 22)}, "15 5/21 18 2/11", "0 0"},
		{"the longer weighs more", []grade.Reading{reading(16, 10, 0, 0), reading(60, 40, 0, 0)}, "15 1/5 0", "5/76 0"},
		{"stitches of one, rows of the other", []grade.Reading{reading(32, 20, 0, 0), reading(0, 0, 26, 20)}, "16 13", "0 0"},
		{"half a stitch", []grade.Reading{reading(33, 20, 0, 0)}, "16 1/2 0", "0 0"},
	} {
		s := grade.Measure(c.readings, measure.Int(10))
		if got := s.Stitches.Mean.String() + " " + s.Rows.Mean.String(); got != c.mean {
			t.Errorf("%s: %s, wanted %s", c.name, got, c.mean)
		}
		if got := s.Stitches.Apart().String() + " " + s.Rows.Apart().String(); got != c.apart {
			t.Errorf("%s: %s apart, wanted %s", c.name, got, c.apart)
		}
	}
}

// TestInGauge: a skirt of 144 stitches at 14 to 10 cm is 102.86 cm round in M; the same stitches at 16 are 90, and counted again they
// are 168 stitches, 105 cm.
func TestInGauge(t *testing.T) {
	p, findings := read(t, "skirt.md", skirt)
	if len(findings) > 0 {
		t.Fatal(findings)
	}
	const m = 2
	kept, anew := grade.InGauge(p, "body", pattern.Gauge{Stitches: measure.Int(16)})
	for _, c := range []struct {
		name        string
		g           *grade.Grade
		around, cms string
	}{{"kept", kept, "144", "90"}, {"anew", anew, "168", "105"}} {
		if got := c.g.Value("around").BySize[m].Num.String() + " " + c.g.Finished[0].Made[m].Decimal(2); got != c.around+" "+c.cms {
			t.Errorf("%s: %s, wanted %s %s", c.name, got, c.around, c.cms)
		}
	}
	if got := kept.Value("tall").BySize[m].Num.String(); got != "60" {
		t.Errorf("rows that were not counted come to %s", got)
	}
	if p.Gauges[0].Stitches != measure.Int(14) || len(p.Pins) > 0 {
		t.Error("the pattern itself was changed")
	}
}
