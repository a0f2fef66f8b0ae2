package measure

import (
	"math"
	"math/big"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// numbers draws fractions of every size, the edges of what fits among them.
func numbers() *rapid.Generator[Num] {
	part := rapid.OneOf(
		rapid.Int64Range(-300, 300),
		rapid.Int64Range(-1_000_000_000_000, 1_000_000_000_000),
		rapid.Int64Range(-math.MaxInt64, math.MaxInt64),
		rapid.SampledFrom([]int64{math.MaxInt64, math.MaxInt64 - 1, -math.MaxInt64, 1 << 62, 1<<32 + 1, 1}),
	)
	return rapid.Custom(func(t *rapid.T) Num {
		under := part.Filter(func(n int64) bool { return n != 0 }).Draw(t, "under")
		return Ratio(part.Draw(t, "over"), under)
	})
}

func rat(x Num) *big.Rat { return big.NewRat(x.Over(), x.Under()) }

// fits reports whether an exact number has the form of a Num.
func fits(r *big.Rat) bool { return r.Num().IsInt64() && r.Denom().IsInt64() }

// agrees holds a result against the exact one: equal where that fits, lost where it does not. The least int64 may be either,
// because it has no opposite.
func agrees(t *rapid.T, of string, got Num, want *big.Rat) {
	switch {
	case want.Num().IsInt64() && want.Num().Int64() == math.MinInt64:
	case !fits(want) && !got.IsLost():
		t.Fatalf("%s is %v, but %s does not fit", of, got, want)
	case fits(want) && got.IsLost():
		t.Fatalf("%s is lost, but %s fits", of, want)
	case fits(want) && rat(got).Cmp(want) != 0:
		t.Fatalf("%s is %v, wanted %s", of, got, want)
	case fits(want) && (got.Over() != want.Num().Int64() || got.Under() != want.Denom().Int64()):
		t.Fatalf("%s is %d/%d, not in lowest terms", of, got.Over(), got.Under())
	}
}

func TestArithmeticIsExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x, y := numbers().Draw(t, "x"), numbers().Draw(t, "y")
		agrees(t, "sum", x.Add(y), new(big.Rat).Add(rat(x), rat(y)))
		agrees(t, "difference", x.Sub(y), new(big.Rat).Sub(rat(x), rat(y)))
		agrees(t, "product", x.Mul(y), new(big.Rat).Mul(rat(x), rat(y)))
		if y.Sign() != 0 {
			agrees(t, "quotient", x.Div(y), new(big.Rat).Quo(rat(x), rat(y)))
		}
		agrees(t, "opposite", x.Neg(), new(big.Rat).Neg(rat(x)))
		agrees(t, "magnitude", x.Abs(), new(big.Rat).Abs(rat(x)))
		if c := rat(x).Cmp(rat(y)); x.Cmp(y) != c || x.Less(y) != (c < 0) {
			t.Fatalf("%v compared with %v gives %d, wanted %d", x, y, x.Cmp(y), c)
		}
		if x.Sign() != rat(x).Sign() || x.IsWhole() != rat(x).IsInt() {
			t.Fatalf("%v: sign %d, whole %v", x, x.Sign(), x.IsWhole())
		}
	})
}

func TestFloorAndCeil(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := numbers().Draw(t, "x")
		floor := new(big.Int).Div(rat(x).Num(), rat(x).Denom()) // big.Int.Div rounds towards less for a positive divisor
		agrees(t, "floor", x.Floor(), new(big.Rat).SetInt(floor))
		ceil := new(big.Int).Neg(new(big.Int).Div(new(big.Int).Neg(rat(x).Num()), rat(x).Denom()))
		agrees(t, "ceil", x.Ceil(), new(big.Rat).SetInt(ceil))
	})
}

func TestLostStaysLost(t *testing.T) {
	one := Int(1)
	over := Int(math.MaxInt64)
	for name, x := range map[string]Num{
		"too large a sum":     over.Add(one),
		"too large a product": over.Mul(Int(2)),
		"too fine":            Ratio(1, math.MaxInt64).Div(Int(2)),
		"over zero":           one.Div(Num{}),
		"ratio to zero":       Ratio(1, 0),
		"sum with lost":       Lost.Add(one),
		"one less lost":       one.Sub(Lost),
		"product":             one.Mul(Lost),
		"quotient":            Lost.Div(one),
		"opposite":            Lost.Neg(),
		"magnitude":           Lost.Abs(),
		"floor":               Lost.Floor(),
		"ceil":                Lost.Ceil(),
		"least opposite":      Int(math.MinInt64).Neg(),
		"rounded up":          Up(Lost, one, Num{}),
		"to the nearest none": Nearest(one, Num{}, Num{}),
	} {
		if !x.IsLost() || x.Sign() != 0 || x.IsWhole() || x.Cmp(one) != 0 || x.String() != "too large" {
			t.Errorf("%s: %v", name, x)
		}
	}
}

func TestParseAndPrint(t *testing.T) {
	for _, c := range []struct{ written, mixed, decimal string }{
		{"0", "0", "0"},
		{"54", "54", "54"},
		{"-3.25", "-3 1/4", "-3.25"},
		{".5", "1/2", "0.5"},
		{"-.5", "-1/2", "-0.5"},
		{"95.625", "95 5/8", "95.63"},
		{"0.004", "1/250", "0"},
		{"-0.004", "-1/250", "0"},
		{"0.005", "1/200", "0.01"},
		{"999999999999999", "999999999999999", "999999999999999"},
		{"9223372036854775807", "9223372036854775807", "9223372036854775807"},
		{"9223372036854775808", "too large", "too large"},
		{"0.00000000000000000001", "too large", "too large"},
	} {
		n, ok := Parse(c.written)
		if !ok || n.String() != c.mixed || n.Decimal(2) != c.decimal {
			t.Errorf("%s reads as %s, %s (%v); wanted %s, %s", c.written, n, n.Decimal(2), ok, c.mixed, c.decimal)
		}
	}
	for _, s := range []string{"", "-", ".", "5,5", "1e3", "--1", "1.2.3", "½", " 1", "+1"} {
		if n, ok := Parse(s); ok {
			t.Errorf("%q reads as %v", s, n)
		}
	}
}

// TestDecimal holds printed decimals against big.Rat, which rounds halves away from zero too.
func TestDecimal(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := Ratio(rapid.Int64Range(-1_000_000_000, 1_000_000_000).Draw(t, "over"), rapid.Int64Range(1, 100_000).Draw(t, "under"))
		places := rapid.IntRange(0, 6).Draw(t, "places")
		want := rat(x).FloatString(places)
		if strings.Contains(want, ".") {
			want = strings.TrimRight(strings.TrimRight(want, "0"), ".")
		}
		if want == "-0" {
			want = "0"
		}
		if got := x.Decimal(places); got != want {
			t.Fatalf("%v to %d places is %s, wanted %s", x, places, got, want)
		}
		if back, ok := Parse(want); !ok || back.Decimal(places) != want {
			t.Fatalf("%s reads as %v", want, back)
		}
	})
}
