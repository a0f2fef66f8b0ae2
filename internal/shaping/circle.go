package shaping

import "foundrow/internal/measure"

// A StartingRound is how many stitches the first round of a flat circle has, which is what every later round adds.
type StartingRound struct {
	Stitch                string // US abbreviation
	Least, Usual, Largest int
}

// StartingRounds are the first rounds of flat circles.
// Source: craftymaria.blogspot.com, 2009/06, and mkcarroll.com, 2009/5/14: 6 sc, 8 hdc, 10 to 12 dc, 12 to 14 tr and more. Rounds of 5
// and 7 sc and of 9 dc are those of published hats and toys, the fact g-circle-constant of testdata/cases/grading.toml.
var StartingRounds = []StartingRound{{"sc", 5, 6, 7}, {"hdc", 8, 8, 8}, {"dc", 9, 12, 12}, {"tr", 12, 14, 14}}

// FlatCircle returns the stitches after every round of a circle that lies flat: each round adds what the first one had.
// Source: craftymaria.blogspot.com, 2009/06.
//
//	FlatCircle(6, 4) = 6 12 18 24
func FlatCircle(first, rounds int) []int { return Growing(first, first, rounds) }

// Growing returns the stitches after every row of a piece that begins with first and changes by each in every further row, up to the
// row before it would be used up.
func Growing(first, each, rows int) []int {
	var out []int
	for n := first; len(out) < min(rows, most) && n > 0 && n <= most; n += each {
		out = append(out, n)
	}
	return out
}

// CircleRate is how many stitches each round of a flat circle adds, before it is made whole: 2π times how tall a stitch is for its
// width. A double crochet twice as tall as wide gives 12.6.
// Source: geometry; the double crochet from engineeredcrochet.blogspot.com, 2013/12.
func CircleRate(height, width measure.Num) measure.Num {
	return measure.Pi.Mul(measure.Int(2)).Mul(height).Div(width)
}

// A Crown is the top of a hat and what follows it.
type Crown struct {
	Diameter measure.Num // where increasing stops
	Depth    measure.Num // of the whole hat
	Stitches int         // of the sides: as many starting rounds as come nearest to the girth
	Rounds   []int       // stitches after every round of the crown
	Even     int         // rounds worked even after it, down to the depth
}

// HatCrown works out a hat from the top. The crown is a flat circle of the girth's diameter, and the hat is 0.4 of the girth deep.
// Source: hookthatyarn.wordpress.com, 2016/06/09 (D = C / π, 0.4 C), and ohewe.blogspot.com, 2009/06.
//
//	a girth of 22 inch: a crown 7.0 inch across; of 23 inch: 7.32 inch, and 9.2 inch deep
//
// The depth is measured from the middle of the crown, along the fabric.
func HatCrown(girth measure.Num, g Gauge, first int) (Crown, *Refusal) {
	if r := positive(length{"the girth", girth}, length{"the stitch gauge", g.Stitches}, length{"the row gauge", g.Rows}, length{"the first round", measure.Int(int64(first))}); r != nil {
		return Crown{}, r
	}
	c := Crown{Diameter: CrownDiameter(girth), Depth: measure.Ratio(4, 10).Mul(girth)}
	stitches, ok := nearest(girth.Mul(g.Stitches), first)
	rounds, fits := nearest(c.Depth.Mul(g.Rows), 1)
	if !ok || !fits {
		return c, refuse(TooLarge, "no hat has so many stitches")
	}
	c.Stitches = max(first, stitches)
	c.Rounds = FlatCircle(first, c.Stitches/first)
	if c.Even = rounds - len(c.Rounds); c.Even < 0 {
		return c, refuse(TooFewRows, "the crown takes ", counted(len(c.Rounds), "round"), ", but the whole hat is ", rounds, " deep")
	}
	return c, nil
}

// CrownDiameter is what lies flat across a girth: C / π.
func CrownDiameter(girth measure.Num) measure.Num { return girth.Div(measure.Pi) }

// tallest is how far the height of a stitch may be from its width in a ball.
var tallest = measure.Int(10)

// Sphere returns the stitches after every row of a ball, from pole to pole: in row i of n, 2n · sin((i - ½)π / n) where stitches are
// square, and as many times more as they are taller than wide.
// Source: the ideal crochet sphere (2010, in a set of mathematical texts); theunknownorchard.blogspot.com, 2015/08.
//
//	Sphere(10, 1) = 3 9 14 18 20 20 18 14 9 3
func Sphere(rows int, tall measure.Num) ([]int, *Refusal) {
	if r := positive(length{"the rows of a ball", measure.Int(int64(rows))}, length{"the height of a stitch", tall}); r != nil {
		return nil, r
	}
	if rows > 1000 || tall.Cmp(tallest) > 0 || tall.Under() > 1000 {
		return nil, refuse(TooLarge, "no ball has more than 1000 rows, or stitches more than ", tallest.String(), " times as tall as wide")
	}
	out := make([]int, rows)
	for i := range (rows + 1) / 2 {
		n := sine(2*i+1, 2*rows).Mul(measure.Int(int64(2 * rows))).Mul(tall)
		out[i], _ = nearest(n, 1)
		out[i] = max(1, out[i])
		out[rows-1-i] = out[i]
	}
	return out, nil
}

// Ball returns the stitches after every round of a ball as toys are made: a flat circle of some rounds, rounds even, and the circle
// back again.
// Source: the rounds of published toys (amigurumi.sdbes.com, sea horse: 6 to 48 and back); common practice.
//
//	Ball(6, 3, 2) = 6 12 18 18 18 12 6
func Ball(first, rounds, even int) []int {
	out := FlatCircle(first, rounds)
	if len(out) == 0 {
		return nil
	}
	widest := len(out)
	for range min(max(even, 0), most) {
		out = append(out, out[widest-1])
	}
	for i := widest - 2; i >= 0; i-- {
		out = append(out, out[i])
	}
	return out
}

// Cone returns the stitches after every round of a cone from its point to a girth: as many rounds as its slope is long, each to the
// nearest whole stitch of the straight line from nothing to the girth.
// Source: geometry: the slope of a cone is √(h² + r²).
func Cone(girth, height measure.Num, g Gauge) ([]int, *Refusal) {
	if r := positive(length{"the girth", girth}, length{"the height", height}, length{"the stitch gauge", g.Stitches}, length{"the row gauge", g.Rows}); r != nil {
		return nil, r
	}
	radius := girth.Div(measure.Pi.Mul(measure.Int(2)))
	slope := hypotenuse(radius, height)
	rounds, ok := nearest(slope.Mul(g.Rows), 1)
	stitches, fits := nearest(girth.Mul(g.Stitches), 1)
	if !ok || !fits || slope.IsLost() {
		return nil, refuse(TooLarge, "no cone has so many stitches")
	}
	out := make([]int, max(1, rounds))
	for i := range out {
		out[i], _ = nearest(measure.Ratio(int64(stitches*(i+1)), int64(len(out))), 1)
		out[i] = max(1, out[i])
	}
	return out, nil
}

// hypotenuse is √(a² + b²), to the ten-millionth. The sides are taken to the thousandth first, so that their squares fit.
func hypotenuse(a, b measure.Num) measure.Num {
	thousandth := measure.Ratio(1, 1000)
	a, b = measure.Nearest(a, thousandth, measure.Num{}), measure.Nearest(b, thousandth, measure.Num{})
	root, _ := measure.Root(a.Mul(a).Add(b.Mul(b)))
	return root
}
