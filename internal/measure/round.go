package measure

// Rounding picks from the series offset, step + offset, 2·step + offset, … of stitch multiples. The common short-cut of
// rounding n/step and adding the offset afterwards is wrong by the offset; these take it away first.
// Source: natalieinstitches.com, Rounding to multiples, 2023.

// Up returns the least number of the series not below n.
func Up(n, step, offset Num) Num { return n.Sub(offset).Div(step).Ceil().Mul(step).Add(offset) }

// Down returns the greatest number of the series not above n.
func Down(n, step, offset Num) Num { return n.Sub(offset).Div(step).Floor().Mul(step).Add(offset) }

// Nearest returns the number of the series nearest to n, the upper one when two are as near.
func Nearest(n, step, offset Num) Num {
	return n.Sub(offset).Div(step).Add(Ratio(1, 2)).Floor().Mul(step).Add(offset)
}

// IsTie reports whether n lies exactly between two numbers of the series.
func IsTie(n, step, offset Num) bool {
	parts := n.Sub(offset).Div(step)
	return parts.Sub(parts.Floor()).Cmp(Ratio(1, 2)) == 0 && !parts.IsLost()
}

// Neighbours returns the numbers of the series on either side of n; both are n where it is one of them.
func Neighbours(n, step, offset Num) (lower, upper Num) {
	parts := n.Sub(offset).Div(step)
	lower = parts.Floor().Mul(step).Add(offset)
	if parts.IsWhole() {
		return lower, lower
	}
	return lower, lower.Add(step)
}
