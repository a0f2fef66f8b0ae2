package formula

import "foundrow/internal/measure"

// A Line is a value that follows another, the wish, in a straight line: Slope times the wish, and Rest.
type Line struct{ Slope, Rest measure.Num }

// Line works the formula before its last rounding as a straight line. The function says how a name follows the wish, by its
// place; a name that has nothing to do with it has no slope. It reports false where the formula or a name does not follow
// straight: a wish that is rounded, compared or divided by.
func (c *Checked) Line(col *Column, of func(place int) (Line, bool)) (Line, bool) {
	if c.steps == nil {
		return Line{}, false
	}
	w := worker{c: c, col: col}
	rests, slopes := make([]Figure, len(c.steps)), make([]measure.Num, len(c.steps))
	last := len(c.steps) - 1
	if c.steps[last].op == opRound {
		last = int(c.steps[last].a)
	}
	for i := range c.steps[:last+1] {
		s := &c.steps[i]
		if s.op == opName {
			l, straight := of(int(s.place))
			if !straight {
				return Line{}, false
			}
			rests[i].Num, slopes[i] = l.Rest, l.Slope
			continue
		}
		var straight bool
		if slopes[i], straight = s.slope(rests, slopes); !straight {
			return Line{}, false
		}
		rests[i] = w.step(i, rests)
	}
	return Line{slopes[last], rests[last].Num}, true
}

// slope returns how a node follows the wish when its operands do, and whether it follows straight.
func (s *step) slope(rests []Figure, slopes []measure.Num) (measure.Num, bool) {
	if s.op <= opList || s.op == opPi {
		return measure.Num{}, true
	}
	var a, b, c measure.Num
	if s.a != none {
		a = slopes[s.a]
	}
	if s.b != none {
		b = slopes[s.b]
	}
	if s.c != none {
		c = slopes[s.c]
	}
	switch s.op {
	case opNegate:
		return a.Neg(), true
	case opAdd:
		return a.Add(b), true
	case opSub:
		return a.Sub(b), true
	case opMul:
		return a.Mul(rests[s.b].Num).Add(b.Mul(rests[s.a].Num)), a.Sign() == 0 || b.Sign() == 0
	case opDiv:
		return a.Div(rests[s.b].Num), b.Sign() == 0
	case opShare, opConvert:
		return a.Mul(s.num), true
	case opRecast:
		return a, true
	}
	return measure.Num{}, a.Sign() == 0 && b.Sign() == 0 && c.Sign() == 0
}
