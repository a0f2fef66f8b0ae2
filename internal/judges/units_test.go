package judges

import (
	"fmt"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"foundrow/internal/measure"
	"foundrow/internal/testkit"
)

// TestUnits asks GNU units (Debian's package units) for the conversions that bodies, yarn and scales cross by.
func TestUnits(t *testing.T) {
	units, there := testkit.Judge(t, "units")
	if !there {
		return
	}
	cm := measure.Tape{Unit: measure.Centimetre}
	inch := measure.Tape{Unit: measure.Inch}
	for _, c := range []struct {
		from, to string
		ours     measure.Num
	}{
		{"38 inch", "cm", cm.Body(measure.Int(38), measure.Inch)},
		{"9.75 inch", "cm", cm.Body(measure.Ratio(975, 100), measure.Inch)},
		{"96.5 cm", "inch", inch.Body(measure.Ratio(965, 10), measure.Centimetre)},
		{"74 mm", "inch", inch.Body(measure.Int(74), measure.Millimetre)},
		{"131 yard", "cm", cm.Garment(measure.Int(131), measure.Yard)},
		{"120 m", "cm", cm.Garment(measure.Int(120), measure.Metre)},
		{"3.5 oz", "g", measure.Grams(measure.Ratio(35, 10), measure.Ounce)},
		{"415 g", "oz", measure.InOunces(measure.Int(415))},
	} {
		out, err := exec.Command(units, "--terse", "--digits", "17", c.from, c.to).Output()
		if err != nil {
			t.Fatalf("units %q %q: %v", c.from, c.to, err)
		}
		theirs, err := strconv.ParseFloat(strings.TrimSpace(string(out)), 64)
		if err != nil {
			t.Fatalf("units %q %q said %q", c.from, c.to, out)
		}
		if got, want := fmt.Sprintf("%.12g", c.ours.Float()), fmt.Sprintf("%.12g", theirs); got != want {
			t.Errorf("%s is %s %s, GNU units says %s", c.from, got, c.to, want)
		}
	}
}
