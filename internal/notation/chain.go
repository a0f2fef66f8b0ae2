package notation

// chain reads "ch 3", "ch3", "chain 3", "ch-3", with what it is said to count as.
func (p *parser) chain() (Clause, bool) {
	i := p.i
	p.i++
	p.eatKind(tHyphen)
	p.eatKind(tStop)
	c, ok := p.count()
	if !ok {
		if p.low(i-p.i) == "ch" && (p.is(wTurn) || p.kindAt(0, tComma)) {
			c, ok = one, true // "ch, turn"
		}
	}
	if !ok || p.is(wSp, wLoop) {
		p.i = i
		return nil, false
	}
	return p.chainRest(c, i), true
}

// chainRest reads what follows a chain that only says what it is for: "to turn", "for thumb", "for first dc".
func (p *parser) chainRest(c Count, i int) Clause {
	ch := &Chain{Count: c}
	if c.plain() && c.Plain == 0 {
		p.report(p.since(i), "no-chain", "a chain of none is no chain", "write how many, or leave it out")
	}
	switch {
	case p.is(wTo) && p.isAt(1, wCount): // "ch 3 to count as first dc"
		p.i++
		if cs, ok := p.countsHere(); ok {
			ch.Says, ch.As, ch.Plus = cs.Says, cs.As, cs.Plus
		} else {
			p.i--
		}
	case p.is(wTo) && p.isAt(1, wTurn):
		// the turn is read as a clause of its own: "ch 5 to turn" is "ch 5, turn"
		p.i++
	case p.is(wFor) && !p.lengthAt(1):
		k := p.i
		p.i++
		p.eat(wA, wFirst)
		if s, ok := p.stitchHere(); ok {
			ch.Says, ch.As = SaysCounts, s
			break
		}
		p.i = k
		p.eatFor()
	case p.is(wCounting, wCount) && p.isAt(1, wAs):
		cs, ok := p.countsHere()
		if ok {
			ch.Says, ch.As, ch.Plus = cs.Says, cs.As, cs.Plus
		}
	}
	ch.placed = p.placed(i)
	return ch
}
