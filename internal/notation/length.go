package notation

import (
	"strconv"

	"foundrow/internal/measure"
)

// fits reads "band fits around neck", "strap is long enough": as long as it takes.
func (p *parser) fits() bool {
	i := p.i
	for k := 0; k < 4 && p.is(unknown, wPiece, wIt, wEdge, wBe, wLong, wWork) && !p.at(0).is; k++ {
		low := p.low(0)
		p.i++
		if low == "fits" || low == "reaches" || low == "meets" || low == "enough" {
			p.restOfPhrase()
			return true
		}
	}
	p.i = i
	return false
}

// lengthAt reports whether a number with a unit of length stands k tokens on.
func (p *parser) lengthAt(k int) bool {
	t := p.at(k)
	if t.kind != tNumber && t.kind != tSlot {
		return false
	}
	if p.kindAt(k+1, tOpen) {
		k = p.t[p.i+k+1].n - p.i
	}
	return p.isUnit(k + 1)
}

func (p *parser) isUnit(k int) bool { return p.isAt(k, wUnit) || p.isAt(k, wIn) && p.low(k) == "in" }

// length reads "piece measures 12 in (30.5 cm)", "piece is 20 cm long", "desired length", "{length}".
func (p *parser) length(kind ExtentKind) (Extent, bool) {
	e := Extent{Kind: kind}
	for k := 0; k < 6 && !p.numberNext() && !p.kindAt(0, tNumber) && p.kindAt(0, tWord); k++ {
		if p.eat(wDesired) {
			for p.kindAt(0, tWord) && p.low(0) == "length" {
				p.i++
			}
			return e, true
		}
		p.i++
	}
	switch t := p.at(0); {
	case t.kind == tNumber:
		e.Measure = decimal(p.text[t.from:t.to])
		e.Length = Count{Said: true, Plain: t.n, Span: t.span()}
		if !t.decimal {
			if c, ok := p.count(); ok {
				e.Length = c
			}
		} else {
			p.i++
		}
	case t.kind == tSlot:
		e.Length, _ = p.count()
	default:
		return Extent{}, false
	}
	if p.isUnit(0) {
		e.Unit = p.low(0)
		if e.Unit == "in" || e.Unit == "ins" || e.Unit == "inches" {
			e.Unit = "inch"
		}
		p.i++
		p.eatKind(tStop)
	}
	if open := p.at(0); open.kind == tOpen && open.n < p.end {
		for k := p.i + 1; k < open.n; k++ {
			if p.t[k].word == wUnit || p.t[k].low == "in" {
				p.i = open.n + 1 // the same in the other unit
				break
			}
		}
	}
	if p.low(0) == "when" {
		p.restOfPhrase() // "when slightly stretched"
	}
	for p.kindAt(0, tWord) && (p.is(wLong, wFrom, wBeg, wBeginning, wTotal, wDown, wMeasures) || p.low(0) == "length" || p.low(0) == "deep" || p.low(0) == "wide") {
		p.i++
	}
	return e, true
}

// decimal reads a number with or without a fraction.
func decimal(s string) measure.Num {
	n, scale := int64(0), int64(1)
	seen := false
	for i := range len(s) {
		switch {
		case s[i] == '.':
			seen = true
		case scale < 1_000_000 && n < most:
			n = 10*n + int64(s[i]-'0')
			if seen {
				scale *= 10
			}
		}
	}
	return measure.Ratio(n, scale)
}

// decimalText writes a number of at most six decimals: "30.5".
func decimalText(n measure.Num) string {
	over, under := n.Over(), n.Under()
	s := strconv.FormatInt(over/under, 10)
	rest := over % under
	if rest == 0 {
		return s
	}
	s += "."
	for k := 0; rest > 0 && k < 6; k++ {
		rest *= 10
		s += strconv.FormatInt(rest/under, 10)
		rest %= under
	}
	return s
}
