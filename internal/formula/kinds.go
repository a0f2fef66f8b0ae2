package formula

import "foundrow/internal/measure"

var one = measure.Int(1)

// report adds a finding at a span of the formula.
func (c *checker) report(s span, rule, message, fix string) {
	c.findings.Report(c.f.File, c.f.place(s), rule, message, fix)
}

// said quotes an operand as it is written.
func (c *checker) said(i int16) string { return c.f.words(c.f.nodes[i].span) }

// operand quotes an operand for a fix, in brackets where it is more than one word.
func (c *checker) operand(i int16) string {
	switch c.f.nodes[i].op {
	case opNumber, opList, opName, opAsk, opPi, opMin, opMax, opAbs, opRoot:
		return c.said(i)
	}
	if c.f.nodes[i].inside {
		return c.said(i)
	}
	return "(" + c.said(i) + ")"
}

// a names the kind of an operand in a sentence.
func (c *checker) a(i int16) string {
	return [...]string{"unknown", "a plain number", "a length", "a mass", "stitches", "rows"}[c.kinds[i]]
}

// unit is the word a number of a kind would be written with in this pattern.
func (c *checker) unit(k Kind) string { return c.unitOf(k, k) }

// unitOf is the same for a kind that is to be converted to another.
func (c *checker) unitOf(from, to Kind) string {
	switch {
	case to == Mass:
		return measure.Gram.String()
	case from.IsCount():
		return wordOf(from, measure.NoUnit, false)
	case c.s.Tape.Unit == measure.Inch:
		return measure.Inch.String()
	}
	return measure.Centimetre.String()
}

// sign is the span of the sign between two operands, or of the second where none stands.
func (c *checker) sign(n *node) span {
	switch n.op {
	case opAdd, opSub, opMul, opDiv:
		return span{n.at, n.at + 1}
	}
	return c.f.nodes[n.b].span
}

// ofWhat reports a plain number beside a length or a mass: "4 what?".
func (c *checker) ofWhat(number, beside int16) Kind {
	n := c.f.nodes[number]
	it := ""
	if n.op != opNumber && n.op != opList {
		it = "it is a plain number, and "
	}
	c.report(n.span, "kinds", c.said(number)+" what? "+it+c.said(beside)+" is "+c.a(beside), "write "+c.quantity(number, c.unit(c.kinds[beside])))
	return Unknown
}

// quantity makes so much of a unit of a plain number.
func (c *checker) quantity(number int16, unit string) string {
	if o := c.f.nodes[number].op; o == opNumber || o == opList {
		return c.said(number) + " " + unit
	}
	return c.operand(number) + " * 1 " + unit
}

// mixed reports two kinds that do not go together, and offers to convert the second.
func (c *checker) mixed(n *node) Kind {
	cannot := "they cannot be compared"
	switch n.op {
	case opAdd:
		cannot = "they cannot be added"
	case opSub:
		cannot = "one cannot be taken from the other"
	case opDiv:
		cannot = "one cannot be divided by the other"
	case opRound:
		cannot = "one cannot be rounded to the other"
	}
	a, b := c.kinds[n.a], c.kinds[n.b]
	fix := ""
	switch {
	case a == Mass || b == Mass:
	case a.IsCount() && b.IsCount():
		fix = "write " + c.operand(n.b) + " as " + a.String() + ", if that is what you mean"
	case a == Length:
		fix = "write (" + c.said(n.b) + " in " + c.unit(Length) + c.atGauge() + ")"
	default:
		fix = "write (" + c.said(n.b) + " in " + a.String() + c.atGauge() + ")"
	}
	c.report(c.sign(n), "kinds", c.said(n.a)+" is "+c.a(n.a)+" and "+c.said(n.b)+" is "+c.a(n.b)+": "+cannot, fix)
	return Unknown
}

// atGauge names a gauge in a fix, where there is more than one.
func (c *checker) atGauge() string {
	if len(c.s.Gauges) == 1 {
		return ""
	}
	if len(c.s.Gauges) == 0 {
		return " at …"
	}
	return " at " + c.s.Gauges[0].Name
}
