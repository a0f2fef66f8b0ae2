package shaping

import "foundrow/internal/measure"

// A Neck is the neck of a front or a back: stitches left in the middle, and the schedule of one side, the other being alike.
type Neck struct {
	Centre int
	Side   Schedule
}

// NeckByThirds rounds a neck: a third of its width is left in the middle at once, and at each side half of what remains goes in every
// row and the rest in every other; what is left of the rows is plain. Across is all stitches before the neck; the rows are those of
// one side, after the one that leaves the middle.
// Source: the armhole by thirds of ozlorna.blogspot.com, 2012/09, worked on a neck; common practice.
func NeckByThirds(across, width, rows int) (Neck, *Refusal) {
	return solveNeck(byThirds, across, width, rows)
}

// VNeck narrows each side of a neck evenly from its point; a neck of an odd width leaves the stitch in the middle.
// Source: common practice, no source.
func VNeck(across, width, rows int) (Neck, *Refusal) { return solveNeck(inAPoint, across, width, rows) }

func byThirds(across, width, rows int) (Neck, *Refusal) {
	n := Neck{Centre: width / 3}
	if (width-n.Centre)%2 != 0 {
		n.Centre++
	}
	side := (width - n.Centre) / 2
	steps := []Step{{Act: Lose, Stitches: 1, Every: 1, Times: (side + 1) / 2}, {Act: Lose, Stitches: 1, Every: 2, Times: side / 2}}
	var refused *Refusal
	n.Side, refused = SolveSteps(StepsWant{From: (across - n.Centre) / 2, Over: Say(rows), Steps: steps})
	return n, refused
}

func inAPoint(across, width, rows int) (Neck, *Refusal) {
	n := Neck{Centre: width % 2}
	var refused *Refusal
	n.Side, refused = Solve(Want{From: (across - n.Centre) / 2, To: (across - width) / 2, Over: rows, Each: []int{2, 1}})
	return n, refused
}

// solveNeck shapes a neck, or refuses it with the nearest widths and the fewest rows that can be.
func solveNeck(shape func(across, width, rows int) (Neck, *Refusal), across, width, rows int) (Neck, *Refusal) {
	if r := sensible(across, width, rows); r != nil {
		return Neck{}, r
	}
	try := func(width, rows int) (Neck, *Refusal) {
		switch {
		case width < 1 || width > across-2:
			return Neck{}, refuse(NothingLeft, "a neck of ", counted(width, "stitch"), " leaves no shoulders of ", across)
		case (across-width)%2 != 0:
			return Neck{}, refuse(OddChange, "a neck of ", width, " out of ", counted(across, "stitch"), " leaves two shoulders that are not alike")
		}
		return shape(across, width, rows)
	}
	n, refused := try(width, rows)
	if refused == nil {
		return n, nil
	}
	refused.Offers = nil // those of a side are not in the numbers of the neck
	offer := func(key Key, width, rows, value int) bool {
		if _, again := try(width, rows); again != nil {
			return false
		}
		refused.Offers = append(refused.Offers, Offer{key, []int{value}})
		return true
	}
	for w := min(width, across-1) - 1; w > 0 && !offer(KeyWidth, w, rows, w); w-- {
	}
	for w := width + 1; w < across && refused.Reason != TooFewRows && !offer(KeyWidth, w, rows, w); w++ {
	}
	for over := rows + 1; over <= 2*across && refused.Reason == TooFewRows && !offer(KeyOver, width, over, over); over++ {
	}
	return Neck{}, refused
}

// A Dart is a bust dart in short rows.
type Dart struct {
	Rows  int   // that it adds in the middle, always even
	Turns []int // stitches left unworked at a side at each turn, more every time, up to the width of the dart
}

// BustDart makes the middle of a front longer than its sides by a depth: every two rows of it turn a part of the width earlier.
// Source: geometry; common practice, no source.
func BustDart(width int, depth measure.Num, g Gauge) (Dart, *Refusal) {
	if r := positive(length{"the depth of the dart", depth}, length{"the row gauge", g.Rows}); r != nil {
		return Dart{}, r
	}
	rows, ok := nearest(depth.Mul(g.Rows), 2)
	if !ok {
		return Dart{}, refuse(TooLarge, "no dart has so many rows")
	}
	d := Dart{Rows: max(2, rows)}
	parts, refused := SteppedShoulder(width, d.Rows/2)
	if refused != nil {
		r := refuse(TooFewStitches, "a dart of ", counted(d.Rows, "row"), " turns ", d.Rows/2, " times, but is ", counted(width, "stitch"), " wide")
		if width >= 0 && width <= most {
			r.Offers = []Offer{{KeyWidth, []int{d.Rows / 2}}}
		}
		return Dart{}, r
	}
	left := 0
	for _, n := range parts {
		left += n
		d.Turns = append(d.Turns, left)
	}
	return d, nil
}
