package shaping

import "foundrow/internal/measure"

// A Gauge is the stitches and rows to one unit of the tape. Lengths come in the same unit.
type Gauge struct{ Stitches, Rows measure.Num }

// nearest makes a number the nearest multiple, the upper one of two as near; false where it is lost or too large to be a count.
func nearest(n measure.Num, multiple int) (int, bool) {
	count, whole := measure.Nearest(n, measure.Int(int64(multiple)), measure.Num{}).Int()
	return count, whole && !n.IsLost() && abs(count) <= most
}

// A length is a measurement with its name, for what is said of it.
type length struct {
	name string
	is   measure.Num
}

// positive refuses lengths and gauges that nothing can be made of.
func positive(lengths ...length) *Refusal {
	for _, l := range lengths {
		switch {
		case l.is.IsLost():
			return refuse(TooLarge, l.name, " is too large a number")
		case l.is.Sign() < 0:
			return refuse(Negative, l.name, " is ", l.is.String(), ", and nothing measures less than nothing")
		case l.is.Sign() == 0:
			return refuse(NothingLeft, l.name, " is 0")
		}
	}
	return nil
}

// sensible refuses counts below zero and such as no piece has.
func sensible(counts ...int) *Refusal {
	for _, n := range counts {
		switch {
		case n < 0:
			return refuse(Negative, "a count comes to ", n, ", and nothing can be worked a negative number of times")
		case n > most:
			return refuse(TooLarge, "no piece has more than ", most, " stitches or rows")
		}
	}
	return nil
}
