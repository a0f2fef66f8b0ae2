package notation

// dashed reads the count behind a dash or an equals sign. A dash before anything else only separates.
func (p *parser) dashed(b *body) bool {
	p.i++
	i := p.i
	if p.wordyClaim(b) {
		return true
	}
	if cs, ok := p.claimList(false); ok && p.closesRow(p.i) {
		b.claims = append(b.claims, cs...)
		return true
	}
	p.i = i
	return len(b.out) > 0
}

// bareClaim reads a count that is a sentence of its own at the end of a row: "Join. 42 sc."
func (p *parser) bareClaim(b *body) bool {
	if len(b.out) == 0 || len(b.stars) > 0 || !p.numberNext() && !p.kindAt(0, tOpen) {
		return false
	}
	i := p.i
	before := p.t[i-1].kind
	if before != tStop && before != tColon && !((before == tComma || before == tSemi) && endsRow(b.out[len(b.out)-1])) {
		return false
	}
	cs, ok := p.claimList(false)
	if !ok || !p.done() && !p.kindAt(0, tStop) || !p.closesRow(p.i) {
		p.i = i
		return false
	}
	for _, c := range cs {
		switch c.Noun.Kind {
		case NoNoun:
			ok = false
		case AStitch, AUnit, AChain: // "Ch 1, turn, 36 sc." works them
			ok = ok && (before == tStop || before == tColon) && rowDone(b.out[len(b.out)-1]) && makesAny(b.out)
		}
	}
	if !ok {
		p.i = i
		return false
	}
	b.claims = append(b.claims, cs...)
	return true
}

// endsRow reports whether a clause is the last that a row works.
func endsRow(c Clause) bool {
	switch c := c.(type) {
	case *Turn:
		return !c.Not
	case *Join:
		return !c.Not
	case *Fasten:
		return true
	}
	return false
}

// makesAny reports whether anything is worked by the clauses.
func makesAny(cs []Clause) bool {
	for _, c := range cs {
		switch c := c.(type) {
		case *Make, *Evenly, *Like:
			return true
		case *Group:
			if makesAny(c.Body) {
				return true
			}
		case *Repeat:
			if makesAny(c.Body) {
				return true
			}
		}
	}
	return false
}

// rowDone reports whether a clause works to the end of a row, so that a number behind it can only be a count.
func rowDone(c Clause) bool {
	switch c := c.(type) {
	case *Turn, *Join, *Fasten, *Repeat, *Yarn, *Leave, *Like:
		return true
	case *Make:
		return c.In.Till.Kind == AcrossRow || c.In.Where == Last || c.In.Where == Everywhere || c.In.Where == Remaining || c.LastIn != nil || c.In.Where == TopOf
	case *Group:
		return c.Extent.Kind != NotSaid || c.In != nil && (c.In.Each || c.In.Where == Last)
	case *Chain:
		return c.Says == ChainUnsaid
	}
	return false
}

// wordyClaim reads a count told in words: "In all 15 hdc", "you should have 17 shells", "making 32 crosses in all", "for a total of 36 sts".
func (p *parser) wordyClaim(b *body) bool {
	i := p.i
	switch {
	case p.eatAll(wIn, wAll), p.eatAll(wIn, wTotal):
	case p.is(wTotal):
		p.i++
	case p.is(wSt) && (p.isAt(1, wCount) && (p.kindAt(2, tColon) || p.kindAt(2, tEquals) || p.kindAt(2, tNumber) || p.isAt(2, wBe)) || (p.kindAt(1, tColon) || p.kindAt(1, tEquals)) && p.kindAt(2, tNumber)):
		p.i++
		p.eat(wCount)
		p.eat(wBe)
	case p.is(wFor) && (p.isAt(1, wA) && p.isAt(2, wTotal) || p.isAt(1, wTotal)):
		p.i += 2
		p.eat(wTotal)
	case p.is(wMaking) && len(b.out) > 0 && p.claimToEnd(1):
		p.i++
	case p.is(wYou, wThere):
		p.i++
		p.eat(wNow)
		p.eat(wShould)
		p.eat(wNow)
		if !p.eat(wHave, wBe) {
			p.i = i
			return false
		}
		p.eat(wNow)
		for p.low(0) == "a" || p.is(wTotal) || p.is(wOf) {
			p.i++
		}
	default:
		return false
	}
	for p.kindAt(0, tColon) || p.kindAt(0, tComma) || p.kindAt(0, tEquals) || p.is(wOf) || p.kindAt(0, tDash) {
		p.i++
	}
	cs, ok := p.claimList(false)
	if !ok {
		p.i = i
		return false
	}
	b.claims = append(b.claims, cs...)
	return true
}

// claimToEnd reports whether a claim that says "in all" begins k tokens on.
func (p *parser) claimToEnd(k int) bool {
	i := p.i
	defer func() { p.i = i }()
	p.i += k
	cs, ok := p.claimList(false)
	return ok && cs[0].Noun.Kind != NoNoun && (p.done() || p.kindAt(0, tStop) || p.isAt(-1, wAll, wTotal))
}
