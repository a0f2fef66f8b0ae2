// Package measure holds exact numbers, the units of a tape measure and a scale, and the trade's ways of rounding.
//
// Arithmetic is exact: a number is a fraction of two int64, worked through 128 bits, and a result that does not fit is Lost
// rather than wrapped. Package measure knows no kinds (what may be added to what): that is package formula's job.
package measure

import (
	"math/bits"
	"strconv"
	"strings"
)

// A Num is an exact rational number in lowest terms. The zero value is 0. A sum or product that does not fit in 64 bits is
// Lost, and stays lost through whatever is done with it afterwards, so that it need be looked for only at the end.
type Num struct {
	over  int64
	under int64 // the denominator less one, so that the zero value is 0/1; -1 marks a lost number
}

// Lost is the number that did not fit, or that was divided by zero.
var Lost = Num{under: -1}

// Int returns a whole number.
func Int(n int64) Num { return Num{over: n} }

// Ratio returns a/b in lowest terms; Lost when b is 0.
func Ratio(a, b int64) Num {
	if b == 0 {
		return Lost
	}
	negative := (a < 0) != (b < 0)
	return reduce(negative, 0, magnitude(a), 0, magnitude(b))
}

// IsLost reports whether the number overflowed, or was divided by zero, somewhere on its way.
func (x Num) IsLost() bool { return x.under < 0 }

// Over and Under return the numerator, which carries the sign, and the denominator.
func (x Num) Over() int64  { return x.over }
func (x Num) Under() int64 { return x.under + 1 }

// IsWhole reports whether the number has no fraction.
func (x Num) IsWhole() bool { return x.under == 0 }

// Sign returns -1, 0 or 1; 0 for a lost number.
func (x Num) Sign() int {
	switch {
	case x.IsLost() || x.over == 0:
		return 0
	case x.over < 0:
		return -1
	}
	return 1
}

// Int returns the number as an int, and whether it is whole and fits.
func (x Num) Int() (int, bool) { return int(x.over), x.under == 0 }

// Float returns the nearest float, for drawing only: no count or measurement is ever made of it.
func (x Num) Float() float64 { return float64(x.over) / float64(x.under+1) }

// Neg returns -x.
func (x Num) Neg() Num {
	if x.over == -1<<63 {
		return Lost
	}
	return Num{-x.over, x.under}
}

// Add returns x + y.
func (x Num) Add(y Num) Num {
	if x.IsLost() || y.IsLost() {
		return Lost
	}
	if x.under == 0 && y.under == 0 {
		if sum := x.over + y.over; (sum > x.over) == (y.over > 0) {
			return Num{over: sum}
		}
		return Lost
	}
	// a/b + c/d = (a·d + c·b) / (b·d): each product has 127 bits at most, so the sum of two fits in 128.
	b, d := uint64(x.under+1), uint64(y.under+1)
	h1, l1 := bits.Mul64(magnitude(x.over), d)
	h2, l2 := bits.Mul64(magnitude(y.over), b)
	h, l, negative := addSigned(x.over < 0, h1, l1, y.over < 0, h2, l2)
	hd, ld := bits.Mul64(b, d)
	return reduce(negative, h, l, hd, ld)
}

// Sub returns x - y.
func (x Num) Sub(y Num) Num { return x.Add(y.Neg()) }

// Mul returns x · y.
func (x Num) Mul(y Num) Num {
	if x.IsLost() || y.IsLost() {
		return Lost
	}
	h, l := bits.Mul64(magnitude(x.over), magnitude(y.over))
	hd, ld := bits.Mul64(uint64(x.under+1), uint64(y.under+1))
	return reduce((x.over < 0) != (y.over < 0), h, l, hd, ld)
}

// Div returns x / y; Lost when y is 0.
func (x Num) Div(y Num) Num {
	if x.IsLost() || y.IsLost() || y.over == 0 {
		return Lost
	}
	h, l := bits.Mul64(magnitude(x.over), uint64(y.under+1))
	hd, ld := bits.Mul64(uint64(x.under+1), magnitude(y.over))
	return reduce((x.over < 0) != (y.over < 0), h, l, hd, ld)
}

// Cmp returns -1, 0 or 1 as x is less than, equal to or more than y. It never overflows. Lost numbers compare equal to
// everything, so that they cause no second finding.
func (x Num) Cmp(y Num) int {
	if x.IsLost() || y.IsLost() {
		return 0
	}
	if sx, sy := x.Sign(), y.Sign(); sx != sy {
		if sx < sy {
			return -1
		}
		return 1
	}
	h1, l1 := bits.Mul64(magnitude(x.over), uint64(y.under+1))
	h2, l2 := bits.Mul64(magnitude(y.over), uint64(x.under+1))
	c := cmp128(h1, l1, h2, l2)
	if x.over < 0 {
		return -c
	}
	return c
}

// Less reports x < y, in the form that sorting wants.
func (x Num) Less(y Num) bool { return x.Cmp(y) < 0 }

// Abs returns the number without its sign.
func (x Num) Abs() Num {
	if x.over < 0 {
		return x.Neg()
	}
	return x
}

// Floor returns the greatest whole number not above x.
func (x Num) Floor() Num {
	if x.IsLost() || x.under == 0 {
		return x
	}
	q := x.over / (x.under + 1)
	if x.over < 0 {
		q--
	}
	return Int(q)
}

// Ceil returns the least whole number not below x.
func (x Num) Ceil() Num {
	if x.IsLost() || x.under == 0 {
		return x
	}
	return x.Floor().Add(Int(1))
}

// String prints a whole number plainly and a fraction mixed: "95 5/8", "-1/2".
func (x Num) String() string {
	if x.IsLost() {
		return "too large"
	}
	if x.under == 0 {
		return strconv.FormatInt(x.over, 10)
	}
	d := uint64(x.under + 1)
	whole, rest := magnitude(x.over)/d, magnitude(x.over)%d
	var b strings.Builder
	if x.over < 0 {
		b.WriteByte('-')
	}
	if whole > 0 {
		b.WriteString(strconv.FormatUint(whole, 10) + " ")
	}
	b.WriteString(strconv.FormatUint(rest, 10) + "/" + strconv.FormatUint(d, 10))
	return b.String()
}

// Decimal prints the number with at most the given places after the point, rounded half away from zero, without trailing zeros.
func (x Num) Decimal(places int) string {
	if x.IsLost() {
		return "too large"
	}
	scale := int64(1)
	for range places {
		scale *= 10
	}
	scaled := x.Abs().Mul(Int(scale)).Add(Ratio(1, 2)).Floor()
	if scaled.IsLost() {
		return x.String()
	}
	whole, rest := scaled.over/scale, scaled.over%scale
	s := strconv.FormatInt(whole, 10)
	if rest > 0 {
		digits := strconv.FormatInt(scale+rest, 10)[1:]
		s += "." + strings.TrimRight(digits, "0")
	}
	if x.over < 0 && scaled.over != 0 {
		s = "-" + s
	}
	return s
}

// Parse reads a decimal number such as "54", "-3.25" or ".5". It reports false for anything else, and returns Lost for a
// number of too many digits.
func Parse(s string) (Num, bool) {
	digits, negative := strings.CutPrefix(s, "-")
	whole, fraction, _ := strings.Cut(digits, ".")
	if whole == "" && fraction == "" {
		return Num{}, false
	}
	n, scale := Num{}, Int(1)
	for _, part := range [2]string{whole, fraction} {
		for i := range len(part) {
			if part[i] < '0' || part[i] > '9' {
				return Num{}, false
			}
			n = n.Mul(Int(10)).Add(Int(int64(part[i] - '0')))
		}
	}
	for range fraction {
		scale = scale.Mul(Int(10))
	}
	n = n.Div(scale)
	if negative {
		n = n.Neg()
	}
	return n, true
}

func magnitude(n int64) uint64 {
	if n < 0 {
		return -uint64(n)
	}
	return uint64(n)
}

func cmp128(h1, l1, h2, l2 uint64) int {
	switch {
	case h1 < h2 || h1 == h2 && l1 < l2:
		return -1
	case h1 == h2 && l1 == l2:
		return 0
	}
	return 1
}

// addSigned adds two signed magnitudes of 127 bits at most.
func addSigned(neg1 bool, h1, l1 uint64, neg2 bool, h2, l2 uint64) (h, l uint64, negative bool) {
	if neg1 == neg2 {
		l, carry := bits.Add64(l1, l2, 0)
		h, _ := bits.Add64(h1, h2, carry)
		return h, l, neg1
	}
	if cmp128(h1, l1, h2, l2) < 0 {
		h1, l1, h2, l2, neg1 = h2, l2, h1, l1, neg2
	}
	l, borrow := bits.Sub64(l1, l2, 0)
	h, _ = bits.Sub64(h1, h2, borrow)
	return h, l, neg1
}

// reduce makes a number of two 128-bit magnitudes, in lowest terms; Lost when either still does not fit.
func reduce(negative bool, nh, nl, dh, dl uint64) Num {
	if nh == 0 && nl == 0 {
		return Num{}
	}
	if nh|dh != 0 {
		nh, nl, dh, dl = lowest128(nh, nl, dh, dl)
		if nh|dh != 0 {
			return Lost
		}
	} else if g := gcd(nl, dl); g > 1 {
		nl, dl = nl/g, dl/g
	}
	if nl > 1<<63-1 || dl > 1<<63-1 {
		return Lost
	}
	if negative {
		return Num{-int64(nl), int64(dl - 1)}
	}
	return Num{int64(nl), int64(dl - 1)}
}

func gcd(a, b uint64) uint64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// lowest128 divides both numbers by their greatest common divisor, found by halving and subtracting.
func lowest128(ah, al, bh, bl uint64) (uint64, uint64, uint64, uint64) {
	gh, gl := gcd128(ah, al, bh, bl)
	nh, nl := div128(ah, al, gh, gl)
	dh, dl := div128(bh, bl, gh, gl)
	return nh, nl, dh, dl
}

func gcd128(ah, al, bh, bl uint64) (uint64, uint64) {
	shift := min(zeros128(ah, al), zeros128(bh, bl))
	ah, al = right128(ah, al, zeros128(ah, al))
	for bh|bl != 0 {
		bh, bl = right128(bh, bl, zeros128(bh, bl))
		if cmp128(ah, al, bh, bl) > 0 {
			ah, al, bh, bl = bh, bl, ah, al
		}
		var borrow uint64
		bl, borrow = bits.Sub64(bl, al, 0)
		bh, _ = bits.Sub64(bh, ah, borrow)
	}
	for range shift {
		ah, al = ah<<1|al>>63, al<<1
	}
	return ah, al
}

func zeros128(h, l uint64) int {
	if l != 0 {
		return bits.TrailingZeros64(l)
	}
	return 64 + bits.TrailingZeros64(h)
}

func right128(h, l uint64, n int) (uint64, uint64) {
	if n >= 64 {
		return 0, h >> (n - 64)
	}
	return h >> n, l>>n | h<<(64-n)
}

// div128 divides exactly: b is known to be a divisor of a. It is long division by bits where b has more than 64 of them,
// which only numbers near the edge of what fits ever reach.
func div128(ah, al, bh, bl uint64) (uint64, uint64) {
	if bh == 0 {
		qh := ah / bl
		ql, _ := bits.Div64(ah%bl, al, bl)
		return qh, ql
	}
	// b has more than 64 bits, so the quotient has fewer than 64.
	var q uint64
	shift := bits.LeadingZeros64(bh) - bits.LeadingZeros64(ah)
	if shift < 0 {
		return 0, 0
	}
	for range shift {
		bh, bl = bh<<1|bl>>63, bl<<1
	}
	for range shift + 1 {
		q <<= 1
		if cmp128(ah, al, bh, bl) >= 0 {
			var borrow uint64
			al, borrow = bits.Sub64(al, bl, 0)
			ah, _ = bits.Sub64(ah, bh, borrow)
			q |= 1
		}
		bh, bl = right128(bh, bl, 1)
	}
	return 0, q
}
