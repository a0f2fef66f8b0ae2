package source

import (
	"strings"
	"testing"
)

func TestSizeNames(t *testing.T) {
	const all = "XS S M L XL 2X 3X 4X 5X"
	for _, c := range []struct{ some, said string }{
		{"", ""},
		{"M", "M"},
		{"L 2X", "L and 2X"},
		{"S M", "S and M"},
		{"S M L XL", "S to XL"},
		{"XS M L XL 5X", "XS, M to XL and 5X"},
		{"XS S M 3X 4X 5X", "XS to M and 3X to 5X"},
		{"5X XS", "XS and 5X"}, // in the order of the pattern
		{"S tall", "S and tall"},
		{all, "XS to 5X"},
	} {
		if said := SizeNames(strings.Fields(c.some), strings.Fields(all)); said != c.said {
			t.Errorf("%q is said as %q, wanted %q", c.some, said, c.said)
		}
	}
}
