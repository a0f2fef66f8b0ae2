package formula

import (
	"strings"

	"foundrow/internal/measure"
)

// String prints the formula in its canonical form: one space between words, brackets only where they are needed, every rounding
// in full. Reading that again gives the same formula; it is what a maker's browser is sent. A formula that could not be read is
// printed as written.
func (f *Formula) String() string {
	if !f.IsRead() {
		return f.Text
	}
	p := printer{f: f}
	p.print(int16(len(f.nodes)-1), rounds)
	return p.b.String()
}

// binding is how tightly an operation holds its operands together; an operand that binds less than its place asks for stands
// in brackets.
type binding uint8

const (
	rounds   binding = iota // a, rounded …
	converts                // a in stitches at body + 1
	sums
	products
	signs
	recasts // a as rows, 90% of a
	operands
	above // what nothing binds like: always in brackets
)

type printer struct {
	f *Formula
	b strings.Builder
}

// binds returns how tightly a node binds.
func (p *printer) binds(i int16) binding {
	n := p.f.nodes[i]
	switch n.op {
	case opRound:
		return rounds
	case opConvert:
		return converts
	case opAdd, opSub:
		if p.binds(n.a) == converts {
			return converts // what is added behind a conversion goes with it
		}
		return sums
	case opMul, opDiv:
		return products
	case opNegate:
		return signs
	case opRecast, opShare:
		return recasts
	case opList:
		if p.f.lists[n.a].Sign() < 0 {
			return signs
		}
	}
	return operands
}

// print writes a node, in brackets if it binds less tightly than the place it stands in.
func (p *printer) print(i int16, place binding) {
	if p.binds(i) < place {
		p.b.WriteByte('(')
		p.node(i)
		p.b.WriteByte(')')
		return
	}
	p.node(i)
}

func (p *printer) node(i int16) {
	n := p.f.nodes[i]
	switch n.op {
	case opNumber:
		p.number(n)
	case opList:
		p.list(n)
	case opName, opAsk:
		p.name(n)
	case opPi:
		p.b.WriteString("pi")
	case opNegate:
		p.b.WriteByte('-')
		if p.listFirst(n.a) { // a sign right before a list is that of its first number
			p.print(n.a, above)
		} else {
			p.print(n.a, signs)
		}
	case opAdd, opSub:
		p.print(n.a, converts)
		p.b.WriteString([...]string{" + ", " - "}[n.op-opAdd])
		p.print(n.b, products)
	case opMul, opDiv:
		p.print(n.a, products)
		p.b.WriteString([...]string{" * ", " / "}[n.op-opMul])
		p.print(n.b, signs)
	case opMin, opMax, opAbs, opRoot:
		p.b.WriteString([...]string{"min", "max", "abs", "root"}[n.op-opMin])
		p.b.WriteByte('(')
		p.values(i, n.op)
		p.b.WriteByte(')')
	case opShare:
		p.b.WriteString(figure(n.num.Mul(measure.Int(100))) + "% of ")
		p.print(n.a, recasts)
	case opConvert:
		p.print(n.a, converts)
		p.b.WriteString(" in " + kindWord(n))
		if n.gauge != "" {
			p.b.WriteString(" at " + n.gauge)
		}
	case opRecast:
		if p.f.nodes[n.a].op == opShare { // "90% of a as rows" is 90% of all that follows
			p.print(n.a, above)
		} else {
			p.print(n.a, recasts)
		}
		p.b.WriteString(" as " + kindWord(n))
	case opRound:
		p.rounding(n)
	}
}

// listFirst reports whether an operand, printed without brackets, begins with a list.
func (p *printer) listFirst(i int16) bool {
	for p.f.nodes[i].op == opRecast {
		i = p.f.nodes[i].a
	}
	return p.f.nodes[i].op == opList
}

// values writes what stands in the brackets of a function: min(min(a, b), c) is min(a, b, c).
func (p *printer) values(i int16, function op) {
	n := p.f.nodes[i]
	if p.f.nodes[n.a].op == function && n.b != none {
		p.values(n.a, function)
	} else {
		p.print(n.a, converts)
	}
	if n.b != none {
		p.b.WriteString(", ")
		p.print(n.b, converts)
	}
}

func (p *printer) number(n node) {
	if n.percent {
		p.b.WriteString(figure(n.num.Mul(measure.Int(100))) + "%")
		return
	}
	p.b.WriteString(figure(n.num))
	if w := wordOf(n.kind, n.unit, n.num == measure.Int(1)); w != "" {
		p.b.WriteString(" " + w)
	}
}

func (p *printer) list(n node) {
	for i, x := range p.f.lists[n.a:n.b] {
		if n.percent {
			x = x.Mul(measure.Int(100))
		}
		switch i {
		case 0:
		case 1:
			p.b.WriteString(" (")
		default:
			p.b.WriteString(", ")
		}
		p.b.WriteString(figure(x))
	}
	p.b.WriteByte(')')
	if n.percent {
		p.b.WriteByte('%')
	}
	if w := wordOf(n.kind, n.unit, false); w != "" {
		p.b.WriteString(" " + w)
	}
}

func (p *printer) name(n node) {
	name := p.f.names[n.name]
	p.b.WriteString(name.Text)
	if name.Of != "" {
		p.b.WriteString("." + name.Of)
	}
	if n.a == none {
		return
	}
	p.b.WriteByte('(')
	p.print(n.a, converts)
	if n.b != none {
		p.b.WriteString(", ")
		p.print(n.b, converts)
	}
	p.b.WriteByte(')')
}

func (p *printer) rounding(n node) {
	p.print(n.a, converts)
	p.b.WriteString(", rounded " + [...]string{Up: "up to ", Down: "down to ", Nearest: "to the nearest "}[n.way])
	switch n.series {
	case toWhole:
		p.b.WriteString("whole")
	case toEven:
		p.b.WriteString("even")
	case toOdd:
		p.b.WriteString("odd")
	case toMultiple:
		p.b.WriteString("multiple of ")
		p.print(n.b, operands)
		if n.c != none {
			p.b.WriteString(" + ")
			p.print(n.c, operands)
		}
	case toQuantity:
		p.print(n.b, operands)
	}
}

// kindWord is what stands behind "in" and "as".
func kindWord(n node) string {
	switch {
	case n.unit != measure.NoUnit:
		return n.unit.String()
	case n.kind == Number:
		return "number"
	}
	return n.kind.String()
}

// figure prints a number that was written as a decimal, to its last digit.
func figure(n measure.Num) string {
	places := 0
	for x := n.Abs(); !x.IsWhole() && places < mostDigits+3; places++ {
		x = x.Mul(measure.Int(10))
	}
	return n.Decimal(places)
}
