package formula

import (
	"foundrow/internal/measure"
	"foundrow/internal/source"
)

// A Scope is what a formula is checked in: what its words stand for.
type Scope struct {
	Tape   measure.Tape
	Body   bool     // lengths written in the formula are of a body, and cross between cm and inch physically
	Sizes  []string // the sizes of the pattern, for which a list must have a number each
	Gauges []Gauge

	// Name says what a name stands for: its place among the figures of a Column (or the number by which Column.Ask knows it, when
	// it is a value of a piece), and its kind. For a name it does not know it makes the finding itself and says Unknown.
	Name func(Name) (place int, kind Kind)
}

// A Gauge is what was counted over what was measured, the lengths in the tape's unit. Zero stitches or rows were not counted.
type Gauge struct {
	Name           string
	Stitches, Over measure.Num
	Rows, RowsOver measure.Num
}

// perLength returns how many of a kind of count lie on one unit of the tape, and whether they were counted.
func (g Gauge) perLength(k Kind) (measure.Num, bool) {
	count, over := g.Stitches, g.Over
	if k == Rows {
		count, over = g.Rows, g.RowsOver
	}
	return count.Div(over), count.Sign() > 0 && over.Sign() > 0
}

// Checked is a formula with its kinds and names settled, ready to be worked in any size. The zero value works out as unknown.
type Checked struct {
	Kind  Kind
	f     *Formula
	steps []step
	lists []measure.Num // in the unit of the tape
}

// A step is a node as it is worked: its number in the tape's unit, or what it is multiplied by; the place of its name.
type step struct {
	op      op
	way     Way
	series  series
	open    bool // a rounding may go below the first of its series: lengths and masses
	a, b, c int16
	place   int32
	num     measure.Num
}

// checker goes through the nodes of one formula in the order of working.
type checker struct {
	f        *Formula
	s        *Scope
	kinds    [mostNodes]Kind
	steps    []step
	lists    []measure.Num
	findings source.Findings
}

// Check settles the kinds of a formula before anything is worked. Whatever is unknown because of a finding elsewhere fits
// everywhere and makes no finding here.
func (f *Formula) Check(s *Scope) (Checked, source.Findings) {
	if !f.IsRead() {
		return Checked{}, nil
	}
	c := checker{f: f, s: s, steps: make([]step, len(f.nodes))}
	known := true
	for i := range f.nodes {
		c.kinds[i] = c.kind(int16(i))
		known = known && c.kinds[i] != Unknown
	}
	out := Checked{Kind: c.kinds[len(f.nodes)-1], f: f}
	if known && len(c.findings) == 0 {
		out.steps, out.lists = c.steps, c.lists
	}
	return out, c.findings
}

// kind settles one node and returns what it makes.
func (c *checker) kind(i int16) Kind {
	n, st := &c.f.nodes[i], &c.steps[i]
	*st = step{op: n.op, way: n.way, series: n.series, a: n.a, b: n.b, c: n.c, num: n.num}
	switch n.op {
	case opNumber:
		st.num = c.inTape(n.num, n.unit)
		return n.kind
	case opList:
		return c.list(n)
	case opName, opAsk:
		place, kind := c.s.Name(c.f.names[n.name])
		st.place = int32(place)
		return kind
	case opPi:
		st.num = measure.Pi
		return Number
	case opNegate, opAbs, opShare:
		return c.kinds[n.a]
	case opRoot:
		return c.root(n)
	case opAdd, opSub, opMin, opMax:
		return c.alike(n)
	case opMul:
		return c.product(n)
	case opDiv:
		return c.quotient(n)
	case opConvert:
		return c.convert(n, st)
	case opRecast:
		return c.recast(n)
	}
	return c.round(n, st)
}

// inTape brings a number with a unit to what values are held in: the tape's unit, or grams.
func (c *checker) inTape(n measure.Num, u measure.Unit) measure.Num {
	switch {
	case u == measure.NoUnit:
		return n
	case u.IsMass():
		return measure.Grams(n, u)
	case c.s.Body:
		return c.s.Tape.Body(n, u)
	}
	return c.s.Tape.Garment(n, u)
}

// list holds the numbers of a list against the sizes.
func (c *checker) list(n *node) Kind {
	if c.lists == nil {
		c.lists = make([]measure.Num, len(c.f.lists))
	}
	for i := n.a; i < n.b; i++ {
		c.lists[i] = c.inTape(c.f.lists[i], n.unit)
	}
	if said, sizes := int(n.b-n.a), len(c.s.Sizes); said != sizes {
		offered := "one size"
		if sizes > 1 {
			offered = count(sizes, "size") + ", " + source.SizeNames(c.s.Sizes, c.s.Sizes)
		}
		c.report(n.span, "list-length", "this list has "+count(said, "number")+", and the pattern has "+offered, "write one number for each size, smallest first")
	}
	return n.kind
}

func count(n int, noun string) string {
	if n != 1 {
		noun += "s"
	}
	return measure.Int(int64(n)).String() + " " + noun
}

func (c *checker) root(n *node) Kind {
	if k := c.kinds[n.a]; k != Number && k != Unknown {
		c.report(c.f.nodes[n.a].span, "kinds", "a root is of a plain number, and "+c.said(n.a)+" is "+c.a(n.a), "")
		return Unknown
	}
	return c.kinds[n.a]
}

// alike settles what can only be done with two of a kind; a plain number beside a count is that many of it.
func (c *checker) alike(n *node) Kind {
	a, b := c.kinds[n.a], c.kinds[n.b]
	switch {
	case a == Unknown || b == Unknown:
		return Unknown
	case a == b, b == Number && a.IsCount():
		return a
	case a == Number && b.IsCount():
		return b
	case a == Number:
		return c.ofWhat(n.a, n.b)
	case b == Number:
		return c.ofWhat(n.b, n.a)
	}
	return c.mixed(n)
}

func (c *checker) product(n *node) Kind {
	a, b := c.kinds[n.a], c.kinds[n.b]
	switch {
	case a == Unknown || b == Unknown:
		return Unknown
	case a == Number:
		return b
	case b == Number:
		return a
	}
	fix := ""
	if b.IsCount() {
		fix = "write " + c.operand(n.b) + " as number"
	}
	both := " and " + c.said(n.b) + " is " + c.a(n.b)
	if a == b {
		both = " and so is " + c.said(n.b)
	}
	c.report(c.sign(n), "kinds", c.said(n.a)+" is "+c.a(n.a)+both+": one of two things multiplied must be a plain number", fix)
	return Unknown
}

func (c *checker) quotient(n *node) Kind {
	a, b := c.kinds[n.a], c.kinds[n.b]
	switch {
	case a == Unknown || b == Unknown:
		return Unknown
	case b == Number:
		return a
	case a == b:
		return Number
	case a == Number:
		c.report(c.sign(n), "kinds", c.said(n.a)+" is a plain number and cannot be divided by "+c.a(n.b), c.overKind(n))
		return Unknown
	}
	return c.mixed(n)
}

// overKind offers what was meant by a number over a quantity: 1/2 inch is half an inch.
func (c *checker) overKind(n *node) string {
	over, under := c.f.nodes[n.a], c.f.nodes[n.b]
	if over.op == opNumber && under.op == opNumber && under.num.Sign() != 0 {
		return "write " + over.num.Div(under.num).Decimal(3) + " " + wordOf(under.kind, under.unit, false)
	}
	if c.kinds[n.b].IsCount() {
		return "write " + c.operand(n.b) + " as number"
	}
	return ""
}

// round settles a rounding: its series is of the kind that is rounded.
func (c *checker) round(n *node, st *step) Kind {
	kind := c.kinds[n.a]
	for _, of := range [2]int16{n.b, n.c} {
		if of == none {
			continue
		}
		beside := node{op: opRound, a: n.a, b: of, at: n.at, span: n.span}
		switch k := c.alike(&beside); {
		case k == Unknown:
			return Unknown
		case kind == Number:
			kind = k
		}
	}
	st.open = kind == Length || kind == Mass
	if n.series <= toOdd && st.open {
		what := [...]string{"a whole number", "an even number", "an odd number"}[n.series]
		c.report(c.tail(n), "kinds", what+" of what? "+c.said(n.a)+" is "+c.a(n.a), "write rounded to the nearest 1 "+c.unit(kind))
		return Unknown
	}
	return kind
}
