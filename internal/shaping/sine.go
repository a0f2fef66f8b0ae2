package shaping

import (
	"math/bits"

	"foundrow/internal/measure"
)

// one is 1 in the fixed point that sines are worked in: 60 bits behind the point.
const one = 60

// halfTurn is π in that fixed point.
// Source: π to 20 places, from memory; the test compares the sines with package math.
const halfTurn = 3622009729038561421

// sine returns the sine of a part of a half turn, over/under of it, no more than a half, to about a million-millionth. It works in
// whole numbers, so that every machine gives the same stitches.
func sine(over, under int) measure.Num {
	high, low := bits.Mul64(halfTurn, uint64(over))
	x, _ := bits.Div64(high, low, uint64(under))
	// x - x³/3! + x⁵/5! - …; the terms beyond the 23rd power are below the last bit
	sum, term, square := int64(x), x, times(x, x)
	for n := uint64(2); n <= 22; n += 2 {
		term = times(term, square) / (n * (n + 1))
		if n%4 == 2 {
			sum -= int64(term)
		} else {
			sum += int64(term)
		}
	}
	const coarse = one - 40 // what is beyond 40 bits is noise
	return measure.Ratio((sum+1<<(coarse-1))>>coarse, 1<<40)
}

// times multiplies in fixed point.
func times(a, b uint64) uint64 {
	high, low := bits.Mul64(a, b)
	return high<<(64-one) | low>>one
}
