package formula

import (
	"foundrow/internal/measure"
	"foundrow/internal/source"
)

// A Figure is a number as formulas reckon with it.
type Figure struct {
	Num    measure.Num
	Approx bool // pi or a root is in it
}

// A Column is what is known in one size when a formula is worked.
type Column struct {
	Size    int      // its place among the sizes of the pattern: which number of a list is taken
	Figures []Figure // what names stand for, by the place that Scope.Name gave them

	// Ask gives a value of a piece, by the number that Scope.Name gave it and with the values in the brackets behind it.
	Ask func(place int, given []measure.Num) Figure
}

// A Remark is something met while a formula was worked in one size: it is worded, and joined with those of the other sizes, by
// who works them.
type Remark struct {
	What         What
	Node         int // which part of the formula, for telling whether two sizes met the same
	From         measure.Num
	Lower, Upper measure.Num // of a tie: the numbers that From lies half way between; of Least: where the series begins
}

// What is what a Remark is about.
type What uint8

const (
	Tie           What = iota // From lay half way between two numbers; it was taken up
	Least                     // From lay below the first of the series, which was taken
	TooLarge                  // the result did not fit
	DividedByZero             //
	NoRoot                    // of a number below zero
	NoSeries                  // a multiple of nothing, or of less
)

// most is how many operands are worked without asking for memory.
const most = 24

// Work works the formula in one size. The value is lost, and of unknown kind, where an earlier finding stands in the way.
func (c *Checked) Work(col *Column) (Value, []Remark) {
	if c.steps == nil {
		return Value{Num: measure.Lost, Kind: c.Kind}, nil
	}
	w := worker{c: c, col: col}
	var room [most]Figure
	figures := room[:]
	if len(c.steps) > most {
		figures = make([]Figure, len(c.steps))
	}
	for i := range c.steps {
		figures[i] = w.step(i, figures)
	}
	last := figures[len(c.steps)-1]
	v := Value{Num: last.Num, Kind: c.Kind, Approx: last.Approx}
	if c.steps[len(c.steps)-1].op == opRound {
		v.Story = w.story
	}
	return v, w.remarks
}

// Span returns where in the file a node is written that a Remark is about.
func (c *Checked) Span(node int) source.Span { return c.f.place(c.f.nodes[node].span) }

// Words returns the operand that a Remark about a node is of, as it is written: what is rounded, what is divided by.
func (c *Checked) Words(node int) string {
	n := &c.f.nodes[node]
	switch n.op {
	case opRound, opRoot:
		n = &c.f.nodes[n.a]
	case opDiv:
		n = &c.f.nodes[n.b]
	}
	return c.f.words(n.span)
}

type worker struct {
	c       *Checked
	col     *Column
	story   Story // of the last rounding
	remarks []Remark
}

// step works one node from the figures of those before it.
func (w *worker) step(i int, figures []Figure) Figure {
	s := &w.c.steps[i]
	var a, b Figure
	if s.op > opList && s.a != none {
		a = figures[s.a]
	}
	if s.op > opList && s.b != none {
		b = figures[s.b]
	}
	out := Figure{Approx: a.Approx || b.Approx}
	switch s.op {
	case opNumber:
		out.Num = s.num
	case opList:
		out.Num = w.c.lists[int(s.a)+w.col.Size]
	case opName:
		return w.col.Figures[s.place]
	case opAsk:
		return w.ask(s, a, b)
	case opPi:
		return Figure{s.num, true}
	case opNegate:
		out.Num = a.Num.Neg()
	case opAdd:
		out.Num = a.Num.Add(b.Num)
	case opSub:
		out.Num = a.Num.Sub(b.Num)
	case opMul:
		out.Num = a.Num.Mul(b.Num)
	case opDiv:
		out.Num = a.Num.Div(b.Num)
	case opMin:
		return lesser(a, b, a.Num.Cmp(b.Num))
	case opMax:
		return lesser(a, b, b.Num.Cmp(a.Num))
	case opAbs:
		out.Num = a.Num.Abs()
	case opRoot:
		root, exact := measure.Root(a.Num)
		out = Figure{root, a.Approx || !exact}
	case opShare, opConvert:
		out.Num = a.Num.Mul(s.num)
	case opRecast:
		out.Num = a.Num
	case opRound:
		out.Num = w.round(i, s, a, b, figures)
		out.Approx = false // a number of the series is exact, whatever it came from
	}
	if out.Num.IsLost() && s.op > opAsk && s.op != opRound && !a.Num.IsLost() && !b.Num.IsLost() {
		w.lost(i, s.op, b)
	}
	return out
}

// lesser returns a where it compares below b or alike, and whichever is lost.
func lesser(a, b Figure, compared int) Figure {
	if compared > 0 || b.Num.IsLost() && !a.Num.IsLost() {
		return b
	}
	return a
}

// ask gives a value of a piece.
func (w *worker) ask(s *step, a, b Figure) Figure {
	var room [2]measure.Num
	given := room[:0]
	if s.a != none {
		given = append(given, a.Num)
	}
	if s.b != none {
		given = append(given, b.Num)
	}
	return w.col.Ask(int(s.place), given)
}

// lost remarks on a result that did not come out, though what it was made of had.
func (w *worker) lost(i int, o op, b Figure) {
	what := TooLarge
	switch {
	case o == opDiv && b.Num.Sign() == 0:
		what = DividedByZero
	case o == opRoot:
		what = NoRoot
	}
	w.remarks = append(w.remarks, Remark{What: what, Node: i})
}

// round takes a figure to its series, and keeps the story.
func (w *worker) round(i int, s *step, x, by Figure, figures []Figure) measure.Num {
	step, offset := one, measure.Num{}
	switch s.series {
	case toEven:
		step = measure.Int(2)
	case toOdd:
		step, offset = measure.Int(2), one
	case toMultiple, toQuantity:
		step = by.Num
		if s.c != none {
			offset = figures[s.c].Num
		}
	}
	if x.Num.IsLost() || step.IsLost() || offset.IsLost() {
		return measure.Lost
	}
	if step.Sign() <= 0 {
		w.remarks = append(w.remarks, Remark{What: NoSeries, Node: i, From: step})
		return measure.Lost
	}
	st, least := roundTo(x.Num, s.way, step, offset, s.open)
	st.Tie = st.Tie && !x.Approx
	switch {
	case st.made().IsLost():
		w.remarks = append(w.remarks, Remark{What: TooLarge, Node: i})
	case least:
		w.remarks = append(w.remarks, Remark{What: Least, Node: i, From: x.Num, Lower: st.Lower})
	case st.Tie:
		w.remarks = append(w.remarks, Remark{What: Tie, Node: i, From: x.Num, Lower: st.Lower, Upper: st.Upper})
	}
	w.story = st
	return st.made()
}

// roundTo finds the neighbours of a number in a series, which begins at offset unless it is open. It says whether the number
// would have gone below that beginning.
func roundTo(x measure.Num, way Way, step, offset measure.Num, open bool) (st Story, least bool) {
	st = Story{Way: way, From: x, Step: step, Offset: offset}
	st.Lower, st.Upper = measure.Neighbours(x, step, offset)
	if !open && st.Lower.Less(offset) {
		least = st.made().Less(offset)
		st.Lower, st.Upper = offset, offset
		return st, least
	}
	st.Tie = way == Nearest && st.Lower != st.Upper && x.Sub(st.Lower) == st.Upper.Sub(x)
	return st, false
}

// made is the neighbour that the rounding takes.
func (s Story) made() measure.Num {
	switch s.Way {
	case Up:
		return s.Upper
	case Down:
		return s.Lower
	}
	if s.From.Sub(s.Lower).Less(s.Upper.Sub(s.From)) {
		return s.Lower
	}
	return s.Upper
}
