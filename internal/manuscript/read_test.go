package manuscript

import (
	"strings"
	"testing"

	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
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

// Braces in rows hold values, whatever stands around them. Those that a designer uses as brackets hold none, nor do stray ones.
func TestSlotsOfRows(t *testing.T) {
	for rows, want := range map[string]string{
		"Row 1: Sc in next {wide} sts, {2 * wide}th st.":            "wide | 2 * wide",
		"Rows {wide}-{wide + 1}: Sc {wide} times, {wide}.":          "wide | wide + 1 | wide | wide",
		"Row 1: {sc, ch 1, sc} in next st, {2 dc} in next, {wide}.": "wide",
		"Row 1: Sc in next {wide st, {wide} st, wide}.":             "wide",
		"Row 1: Sc in next {wide\nsts}, {wide}.":                    "wide",
		"Row 1: Sc in next {wide +} sts.":                           "wide +",
	} {
		file := source.NewFile("pattern.md", "```toml\ntitle = \"Bag\"\nkind = \"bag\"\nterms = \"us\"\n[counts]\nwide = \"12 sts\"\n```\n\n```rows bag\n"+rows+"\n```\n")
		p, _ := ReadPattern(file, "bag", pattern.Studio{}, Published())
		var got []string
		for _, s := range p.Slots {
			got = append(got, s.Formula.Text)
			if file.Slice(s.Span) != "{"+s.Formula.Text+"}" || s.Form != pattern.Figure {
				t.Errorf("%q: the slot %q has the form %d", rows, file.Slice(s.Span), s.Form)
			}
		}
		if strings.Join(got, " | ") != want {
			t.Errorf("%q has the values %q, want %q", rows, strings.Join(got, " | "), want)
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
