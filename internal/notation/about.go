package notation

import "foundrow/internal/stitch"

// about reads what a label says in brackets or behind it: the side that faces, the yarn, or a remark.
func (p *parser) about(l *Label) {
	for {
		i := p.i
		switch t := p.at(0); {
		case p.eat(wRS), p.is(wRight) && p.eatAll(wRight, wSide):
			l.Side = RightSide
		case p.eat(wWS), p.low(0) == "wrong" && p.isAt(1, wSide):
			if p.low(0) == "wrong" {
				p.i += 2
			}
			l.Side = WrongSide
		case t.kind == tComma && p.isAt(1, wRS, wWS):
			p.i++
		case t.kind == tOpen && t.n < p.end:
			if !p.labelBracket(l, t) {
				return
			}
		case p.is(wWith) && p.yarnName(1) && p.labelGoesOn():
			p.i++
			l.Yarn = p.yarnWords()
		default:
			return
		}
		if p.i == i {
			return
		}
	}
}

// labelGoesOn reports whether the label ends soon with a colon, so that "with A" belongs to it.
func (p *parser) labelGoesOn() bool {
	for k := 2; k < 5; k++ {
		if p.kindAt(k, tColon) {
			return true
		}
	}
	return false
}

// labelBracket reads "(RS)", "(B)", "(WS, A)", "(right cup only)", "(3 rounds)". One that may be the first group of the row is left
// alone.
func (p *parser) labelBracket(l *Label, open *token) bool {
	after := &p.t[open.n+1]
	ends := after.kind == tColon || after.kind == tStop || after.kind == tDash || after.kind == tOpen || after.kind == tComma || after.kind == tEnd
	side, yarn, known := NoSide, "", true
	p.within(p.i+1, open.n, func() {
		for !p.done() {
			switch {
			case p.eat(wRS), p.eatAll(wRight, wSide):
				side = RightSide
			case p.eat(wWS), p.low(0) == "wrong" && p.isAt(1, wSide):
				if p.low(0) == "wrong" {
					p.i += 2
				}
				side = WrongSide
			case p.kindAt(0, tComma), p.is(wFacing), p.is(wRow), p.is(wWith):
				p.i++
			case p.yarnName(0):
				yarn = p.yarnWords()
			default:
				known = false
				return
			}
		}
	})
	if !known && !ends {
		return false
	}
	if known {
		if side != NoSide {
			l.Side = side
		}
		if yarn != "" {
			l.Yarn = yarn
		}
	} else if l.Remark == "" {
		l.Remark = stitch.Carry(p.text[open.to:p.t[open.n].from], p.in.Terms, stitch.US)
	}
	p.i = open.n + 1
	return true
}
