package manuscript

import (
	"strings"
	"testing"

	"foundrow/internal/measure"
)

func TestSplitQuantity(t *testing.T) {
	for written, want := range map[string]string{
		"50 g": "50 g", "4.5mm": "4 1/2 mm", "1/2 inch": "1/2 inch", "4 1/2 inch": "4 1/2 inch", "4½ inch": "4 1/2 inch", "½ inch": "1/2 inch",
		"4 ½ inch": "4 1/2 inch", "-2.5 cm": "-2 1/2 cm", "-2 1/2 cm": "-2 1/2 cm", "-¼ inch": "-1/4 inch", "54": "54", "12 (13) cm": "12 (13) cm",
		"4 1 cm": "4 1 cm", "1/0 cm": "", "cm": "", "": "", "-": "", "1.2.3 cm": "", ". cm": "",
	} {
		num, unit, ok := splitQuantity(written)
		got := ""
		if ok {
			got = strings.TrimSpace(num.String() + " " + unit)
		}
		if got != want {
			t.Errorf("%q reads as %q, not %q", written, got, want)
		}
	}
}

func TestSeconds(t *testing.T) {
	for written, want := range map[string]int{
		"0:05": 5, "11:40": 700, "75:00": 4500, "1:02:30": 3750, "120:59": 7259,
		"1:2": -1, "4:75": -1, "1:60:00": -1, ":40": -1, "11": -1, "11:40:": -1, "-1:40": -1, "1:+4": -1, "a:40": -1, "1:02:3": -1, "": -1,
	} {
		got, ok := seconds(written)
		if !ok {
			got = -1
		}
		if got != want {
			t.Errorf("%q is %d seconds, not %d", written, got, want)
		}
	}
}

// The colon after the label of a row, and colons that end none.
func TestLeadEnd(t *testing.T) {
	for _, line := range []string{
		"Row 1:| Sc.", "Row 1 (RS):| Sc.", "Rows 4, 6 and 8:| Sc.", "Rnds 3 to {deep * 0.5}:| Sc.", "1st row:| Sc.", "Foundation:| Ch 3.",
		"Sizes M and 3X to 5X only:| Row 2: Sc.", "Film:| 8:40", "Set-up row:|", "Reihe ß:| Fm.", "Note:| that is, 2:1.",
		"Repeat rows 2 and 3 4 times.", "Sc in next st. Then: ch 1.", "*Sc, ch 1; rep: sc.", "[Sc: ch 1]", ": Sc.", "-: Sc.", "2:1 rib", "\"so\": Sc.",
		"Work as many stitches as there are into each of the spaces that the row below has made for you: sc.",
	} {
		words := strings.Replace(line, "|", "", 1)
		want := max(strings.Index(line, "|")-1, 0)
		if got := leadEnd(words); got != want {
			t.Errorf("the label of %q ends at %d, not %d", words, got, want)
		}
	}
}

func TestHookLabels(t *testing.T) {
	for label, want := range map[string]string{
		"H-8": "5 mm", "H8": "5 mm", "H/8": "5 mm", "US H": "5 mm", "size h-8 hook": "5 mm", "G": "4.25 mm", "G-6": "4 mm", "K": "6.5 mm", "Q": "15.75 mm 16 mm",
		"M": "9 mm", "N": "9 mm 10 mm", "7": "4.5 mm", "P": "10 mm 11.5 mm", "S": "19 mm", "8": "", "": "", "big": "",
	} {
		if got := strings.Join(hooksLabelled(label), " "); got != want {
			t.Errorf("%q is %q, not %q", label, got, want)
		}
	}
}

// The bands of the chart meet: every ease is in one of them and in no other.
func TestBands(t *testing.T) {
	for half := -12; half <= 20; half++ {
		inches := measure.Ratio(int64(half), 2)
		var in []string
		for _, b := range bands {
			if (b.low.IsLost() || !inches.Less(b.low)) && (b.high.IsLost() || inches.Less(b.high)) {
				in = append(in, b.name)
			}
		}
		want := "very close"
		switch {
		case half >= 12:
			want = "oversized"
		case half >= 8:
			want = "loose"
		case half >= 4:
			want = "classic"
		case half >= 0:
			want = "close"
		}
		if strings.Join(in, ", ") != want {
			t.Errorf("an ease of %s inches is %v, not %s", inches, in, want)
		}
	}
}
