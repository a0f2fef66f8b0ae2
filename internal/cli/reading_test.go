package cli

import (
	"testing"

	"foundrow/internal/measure"
)

// TestReadings: what a designer says she counted. An inch of a garment is 2.5 cm.
func TestReadings(t *testing.T) {
	cm, inch := measure.Tape{}, measure.Tape{Unit: measure.Inch}
	for _, c := range []struct {
		said string
		tape measure.Tape
		read string // stitches, width, rows, height; or what is wrong
	}{
		{"16 sts, 20 rows over 10.5 cm by 11 cm", cm, "16 10 1/2 20 11"},
		{"16 sts and 20 rows over 10.5 by 11 cm", cm, "16 10 1/2 20 11"},
		{"20 rows, 16.5 stitches over 10 cm", cm, "16 1/2 10 20 10"},
		{"16 1/2 sts over 10 cm", cm, "16 1/2 10 0 10"},
		{"24 sts over 6 inch", inch, "24 6 0 6"},
		{"24 sts over 6 in", cm, "24 15 0 15"},
		{"9 rnds over 5 cm", inch, "0 2 9 2"},
		{"1 st over 5 mm", cm, "1 1/2 0 1/2"},
		{"16 sts", cm, `"16 sts": nothing says over what length this was counted`},
		{"sixteen sts over 10 cm", cm, `"sixteen sts over 10 cm": sixteen is no number of stitches or rows`},
		{"0 sts over 10 cm", cm, `"0 sts over 10 cm": 0 is no number of stitches or rows`},
		{"16 over 10 cm", cm, `"16 over 10 cm": 16 what? sts or rows`},
		{"16 loops over 10 cm", cm, `"16 loops over 10 cm": 16 what? sts or rows`},
		{"16 sts, 17 sts over 10 cm", cm, `"16 sts, 17 sts over 10 cm": sts are counted twice in one reading`},
		{"16 sts over 10", cm, `"16 sts over 10": 10 is no length: it needs a number and cm or inch`},
		{"16 sts over 10 g", cm, `"16 sts over 10 g": 10 g is no length: it needs a number and cm or inch`},
		{"16 sts over 0 cm", cm, `"16 sts over 0 cm": 0 cm is no length: it needs a number and cm or inch`},
		{"16 sts over 10 cm by 11 cm", cm, `"16 sts over 10 cm by 11 cm": two lengths, and only one thing counted`},
	} {
		r, err := readingOf(c.said, c.tape)
		got := r.Stitches.String() + " " + r.Width.String() + " " + r.Rows.String() + " " + r.Height.String()
		if err != nil {
			got = err.Error()
		}
		if got != c.read {
			t.Errorf("%q is read as\n\t%s\nwanted\n\t%s", c.said, got, c.read)
		}
	}
}
