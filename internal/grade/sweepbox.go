package grade

import (
	"slices"

	"foundrow/internal/measure"
)

// box finds the ranges in which every row comes out, of the measurements and then of the tension of stitches and of rows. It begins
// with all that was tried and cuts, at one end of one range at a time, what loses the fewest pairs that come out for each that does
// not, until none of these is left. The designer's own tension is never cut off, nor is anything inside the ranges to keep.
func (g *Grid) box(trials []Trial, keep []Range) []Range {
	at := make([][]measure.Num, len(trials))
	inside := make([]int, len(trials))
	for i := range trials {
		at[i], inside[i] = g.coordinates(&trials[i]), i
	}
	fails := func(i int) bool { return trials[i].fails }
	tried := boundsOf(at, inside)
	none := !slices.ContainsFunc(inside, func(i int) bool { return !fails(i) })
	for !none && slices.ContainsFunc(inside, fails) {
		c, found := g.bestCut(trials, at, inside, keep)
		if none = !found; found {
			inside = slices.DeleteFunc(inside, func(i int) bool { return c.takes(at[i][c.dim]) })
		}
	}
	good := tried
	if !none {
		good = boundsOf(at, inside)
	}
	var ranges []Range
	for i := range g.axes {
		ranges = append(ranges, Range{g.axes[i].name, g.axes[i].label, tried[i], good[i], none})
	}
	last := len(g.axes)
	return append(ranges, Range{"stitches", "stitches", tried[last], good[last], none}, Range{"rows", "rows", tried[last+1], good[last+1], none})
}

// boundsOf are the least and the greatest of some pairs in every dimension.
func boundsOf(at [][]measure.Num, some []int) []Bounds {
	bounds := make([]Bounds, len(at[some[0]]))
	for d := range bounds {
		bounds[d] = Bounds{measure.Lost, measure.Lost}
		for _, i := range some {
			n := at[i][d]
			if bounds[d].From.IsLost() || n.Less(bounds[d].From) {
				bounds[d].From = n
			}
			if bounds[d].To.IsLost() || bounds[d].To.Less(n) {
				bounds[d].To = n
			}
		}
	}
	return bounds
}

// coordinates are where a pair lies: its measurements, then its tension.
func (g *Grid) coordinates(t *Trial) []measure.Num {
	at := make([]measure.Num, 0, len(g.axes)+2)
	for i := range g.axes {
		at = append(at, g.at(g.bodies[t.body], i))
	}
	hands := g.tensions[t.tension]
	return append(at, hands.Stitches, hands.Rows)
}

// within reports whether a pair lies inside ranges; not where there are none.
func within(at []measure.Num, ranges []Range) bool {
	for d, r := range ranges {
		if r.None || at[d].Less(r.Good.From) || r.Good.To.Less(at[d]) {
			return false
		}
	}
	return len(ranges) > 0
}

// A cut takes away one end of a range: all from a number on, up or down.
type cut struct {
	dim  int
	up   bool
	from measure.Num
}

func (c cut) takes(n measure.Num) bool {
	if c.up {
		return !n.Less(c.from)
	}
	return !c.from.Less(n)
}

// bestCut finds the cut that loses the fewest pairs that come out for each that fails; of two alike, the one that takes more failing
// ones. Not found: any would take the designer's own tension, or everything.
func (g *Grid) bestCut(trials []Trial, at [][]measure.Num, inside []int, keep []Range) (best cut, found bool) {
	bestLost, bestGone := 0, 0
	order := slices.Clone(inside)
	for dim := range len(g.axes) + 2 {
		tension := dim >= len(g.axes)
		for _, up := range [...]bool{false, true} {
			slices.SortStableFunc(order, func(a, b int) int {
				if up {
					a, b = b, a
				}
				return at[a][dim].Cmp(at[b][dim])
			})
			lost, gone := 0, 0
			for k, i := range order {
				n := at[i][dim]
				if tension && (n.Sign() == 0 || (n.Sign() > 0) != up) || within(at[i], keep) {
					break
				}
				if trials[i].fails {
					gone++
				} else {
					lost++
				}
				last := k == len(order)-1
				if last || at[order[k+1]][dim].Cmp(n) == 0 || gone == 0 {
					continue
				}
				if !found || lost*bestGone < bestLost*gone || lost*bestGone == bestLost*gone && gone > bestGone {
					best, found, bestLost, bestGone = cut{dim, up, n}, true, lost, gone
				}
			}
		}
	}
	return best, found
}
