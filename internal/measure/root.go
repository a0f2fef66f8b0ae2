package measure

import "math/bits"

// Pi is a close fraction for π, less than four parts in ten thousand million too large: its denominator is small, so that sums
// with it still fit, and no count of stitches that a hook ever made shows the difference.
// Source: a convergent of the continued fraction of π, from memory; the test compares it with math.Pi.
var Pi = Ratio(104348, 33215)

// rootParts is how finely a root that is no fraction is worked: to the ten-millionth.
const rootParts = 10_000_000

// Root returns the square root of x and whether it is exact; otherwise it is the nearest ten-millionth. Numbers below zero have
// none: Lost.
func Root(x Num) (root Num, exact bool) {
	if x.IsLost() || x.over < 0 {
		return Lost, false
	}
	over, under := uint64(x.over), uint64(x.under+1)
	if a, b := root128(0, over), root128(0, under); a*a == over && b*b == under {
		return Ratio(int64(a), int64(b)), true
	}
	// √(a/b)·p = √(a·p²/b); p² has 47 bits, so the product has 110 and the root 55.
	h, l := bits.Mul64(over, rootParts*rootParts)
	qh := h / under
	ql, rest := bits.Div64(h%under, l, under)
	r := root128(qh, ql)
	sh, sl := bits.Mul64(r, r+1) // the middle above r is (r + ½)² = r·(r+1) + ¼
	if c := cmp128(qh, ql, sh, sl); c > 0 || c == 0 && rest > under/4 {
		r++
	}
	return Ratio(int64(r), rootParts), false
}

// root128 returns the whole part of the square root, found bit by bit.
func root128(h, l uint64) uint64 {
	length := bits.Len64(l)
	if h != 0 {
		length = 64 + bits.Len64(h)
	}
	var r uint64
	for bit := (length+1)/2 - 1; bit >= 0; bit-- {
		t := r | 1<<bit
		if th, tl := bits.Mul64(t, t); cmp128(th, tl, h, l) <= 0 {
			r = t
		}
	}
	return r
}
