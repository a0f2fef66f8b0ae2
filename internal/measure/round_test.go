package measure

import (
	"math"
	"math/big"
	"os"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// records reads the lines of a table under testdata, without its comments.
func records(t *testing.T, name string) [][]string {
	t.Helper()
	text, err := os.ReadFile("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	var out [][]string
	for line := range strings.Lines(string(text)) {
		if fields := strings.Fields(line); len(fields) > 0 && fields[0] != "#" {
			out = append(out, fields)
		}
	}
	return out
}

func num(t *testing.T, s string) Num {
	t.Helper()
	n, ok := Parse(s)
	if !ok {
		t.Fatalf("%q is no number", s)
	}
	return n
}

func TestRounding(t *testing.T) {
	for _, f := range records(t, "rounding.txt") {
		n, step, offset := num(t, f[0]), num(t, f[1]), num(t, f[2])
		lower, upper := Neighbours(n, step, offset)
		said := strings.Join([]string{lower.Decimal(1), upper.Decimal(1), "up", Up(n, step, offset).Decimal(1),
			"down", Down(n, step, offset).Decimal(1), "nearest", Nearest(n, step, offset).Decimal(1)}, " ")
		if IsTie(n, step, offset) {
			said += " tie"
		}
		if want := strings.Join(f[3:], " "); said != want {
			t.Errorf("%s to a multiple of %s + %s: %s, wanted %s", f[0], f[1], f[2], said, want)
		}
	}
}

// TestSeries holds every rounding against its definition: a number of the series, on its side, and none between.
func TestSeries(t *testing.T) {
	small := rapid.Custom(func(t *rapid.T) Num {
		return Ratio(rapid.Int64Range(-10_000, 10_000).Draw(t, "over"), rapid.Int64Range(1, 60).Draw(t, "under"))
	})
	rapid.Check(t, func(t *rapid.T) {
		n, offset := small.Draw(t, "n"), small.Draw(t, "offset")
		step := small.Filter(func(n Num) bool { return n.Sign() > 0 }).Draw(t, "step")
		up, down, nearest := Up(n, step, offset), Down(n, step, offset), Nearest(n, step, offset)
		for _, x := range []Num{up, down, nearest} {
			if parts := new(big.Rat).Quo(new(big.Rat).Sub(rat(x), rat(offset)), rat(step)); !parts.IsInt() {
				t.Fatalf("%v is no number of the series", x)
			}
		}
		if up.Less(n) || n.Less(down) || !up.Sub(n).Less(step) || !n.Sub(down).Less(step) {
			t.Fatalf("%v lies not between %v and %v", n, down, up)
		}
		toUp, toDown := up.Sub(n), n.Sub(down)
		want := up
		if toDown.Less(toUp) {
			want = down
		}
		if nearest.Cmp(want) != 0 {
			t.Fatalf("nearest is %v, wanted %v of %v and %v", nearest, want, down, up)
		}
		if tie := toUp.Cmp(toDown) == 0 && up != down; IsTie(n, step, offset) != tie {
			t.Fatalf("tie is %v between %v and %v", !tie, down, up)
		}
		if lower, upper := Neighbours(n, step, offset); lower != down || upper != up {
			t.Fatalf("neighbours are %v and %v, wanted %v and %v", lower, upper, down, up)
		}
	})
}

// TestRoot holds roots against their squares: exact ones give the number back, others lie within half a ten-millionth.
func TestRoot(t *testing.T) {
	for _, c := range []struct {
		of, root string
		exact    bool
	}{{"0", "0", true}, {"16", "4", true}, {"2.25", "1.5", true}, {"2", "1.4142136", false}, {"3", "1.7320508", false}, {"0.0001", "0.01", true}} {
		root, exact := Root(num(t, c.of))
		if root.Decimal(7) != c.root || exact != c.exact {
			t.Errorf("the root of %s is %s (exact: %v), wanted %s", c.of, root.Decimal(7), exact, c.root)
		}
	}
	if root, _ := Root(Int(-1)); !root.IsLost() {
		t.Errorf("-1 has the root %v", root)
	}
	half := big.NewRat(1, 2*rootParts)
	rapid.Check(t, func(t *rapid.T) {
		x := numbers().Draw(t, "x").Abs()
		root, exact := Root(x)
		square := new(big.Rat).Mul(rat(root), rat(root))
		if exact {
			if square.Cmp(rat(x)) != 0 {
				t.Fatalf("%v is no exact root of %v", root, x)
			}
			return
		}
		below, above := new(big.Rat).Sub(rat(root), half), new(big.Rat).Add(rat(root), half)
		if below.Sign() > 0 && below.Mul(below, below).Cmp(rat(x)) > 0 || above.Mul(above, above).Cmp(rat(x)) < 0 {
			t.Fatalf("%v is not the nearest root of %v", root, x)
		}
	})
}

func TestPi(t *testing.T) {
	if off := math.Abs(Pi.Float()-math.Pi) / math.Pi; off > 4e-10 {
		t.Errorf("pi is off by %g of itself", off)
	}
}
