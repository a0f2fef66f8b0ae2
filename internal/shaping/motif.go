package shaping

// Mitre returns the stitches of every row of a mitred square: from 2n + 1, two fewer in every row at the middle, down to 1.
// Source: mooglyblog.com, 2019 (19 17 … 3 1).
//
//	Mitre(9) = 19 17 15 13 11 9 7 5 3 1
func Mitre(n int) []int { return Growing(2*n+1, -2, n+1) }

// MitreFromChain returns n for a mitred square on a chain: an even chain, of which one turns and two go into the first decrease.
// Source: mooglyblog.com, 2019: ch 22, row 1 has 19.
func MitreFromChain(chain int) (n int, refused *Refusal) {
	if chain < 4 || chain%2 != 0 || chain > most {
		r := refuse(OddChange, "a mitred square needs an even chain of 4 or more, not ", chain)
		if even := max(4, min(chain, most)/2*2); chain%2 != 0 || chain < 4 {
			r.Offers = append(r.Offers, Offer{KeyFrom, []int{even}})
		}
		return 0, r
	}
	return (chain - 4) / 2, nil
}

// Motif returns the stitches after every round of a motif with corners: so many sides, the first round with so many stitches a side,
// each further one with more. A part of a motif has as many sides as it has of the whole.
// Source: octojellycrochetstudio.com, 2021, and needleworkersroom.blogspot.com (a square of 3, 7, 11 … dc a side); a hexagon with its
// corner chains counted, sites.google.com/site/crochetbtf.
//
//	Motif(4, 3, 4, 3) = 12 28 44
func Motif(sides, first, more, rounds int) []int { return Growing(sides*first, sides*more, rounds) }

// Border returns the stitches after every round of a border round corners: three stitches in one at an outer corner add two to each
// round, three worked as one at an inner corner take two away.
// Source: geometry: a corner square to both sides takes one stitch more of each side in every round; common practice.
func Border(edge, outer, inner, rounds int) []int {
	return Growing(edge+2*(outer-inner), 2*(outer-inner), rounds)
}

// Triangle returns the stitches of every row of a triangle that grows by the same number in every row, from the point.
// Source: tofucrafts.blogspot.com, 2009 (6, 12, 18 … dc, two clusters more in every row); common practice.
func Triangle(first, each, rows int) []int { return Growing(first, each, rows) }

// Wedge returns the stitches of every row of a wedge in short rows: each leaves one stitch more than the row before, and the last
// goes over all again, the stitches of the shortest row but one and the row-ends of the others.
// Source: Red Heart LW3076, 2012: 27 26 … 17, then 27 again, 12 rows at the edge.
func Wedge(stitches, rows int) ([]int, *Refusal) {
	if r := sensible(stitches, rows); r != nil {
		return nil, r
	}
	if rows < 2 || rows-2 >= stitches {
		r := refuse(TooFewStitches, "a wedge of ", counted(rows, "row"), " leaves a stitch in each, but there are ", stitches)
		if stitches >= 1 {
			r.Offers = []Offer{{KeyOver, []int{stitches + 1}}}
		}
		return nil, r
	}
	return append(Growing(stitches, -1, rows-1), stitches), nil
}

// ShortRows returns how many stitches each of some short rows works, where every turn leaves its part of the stitches unworked, and
// last the row over all of them. The parts are as even as they go, the longer ones first.
// Source: geometry; common practice for shoulders, darts and heels.
//
//	ShortRows(29, 3) = 19 9 29: parts of 10, 10 and 9
func ShortRows(stitches, turns int) ([]int, *Refusal) {
	parts, refused := SteppedShoulder(stitches, turns)
	if refused != nil {
		return nil, refused
	}
	var out []int
	left := stitches
	for _, n := range parts[:len(parts)-1] {
		left -= n
		out = append(out, left)
	}
	return append(out, stitches), nil
}

// SteppedShoulder parts the stitches of a shoulder into steps, each left unworked in its turn, the longer ones first, at the armhole.
// Source: common practice, no source.
//
//	SteppedShoulder(29, 3) = 10 10 9
func SteppedShoulder(stitches, steps int) ([]int, *Refusal) {
	if r := sensible(stitches, steps); r != nil {
		return nil, r
	}
	if steps == 0 || steps > stitches {
		r := refuse(TooFewStitches, counted(stitches, "stitch"), " cannot go in ", counted(steps, "step"))
		if stitches > 0 {
			r.Offers = []Offer{{KeyEvents, []int{min(max(steps, 1), stitches)}}}
		}
		return nil, r
	}
	var out []int
	for _, st := range split(stitches, steps, LongFirst) {
		for range st.times {
			out = append(out, st.size)
		}
	}
	return out, nil
}
