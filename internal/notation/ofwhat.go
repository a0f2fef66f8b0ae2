package notation

// ofWhat reads "of next shell", "of ch-5", "of last row", "of Rnd 2", "of chain", "of body.left".
func (p *parser) ofWhat(t *Target) bool {
	i := p.i
	in := p.is(wIn)
	p.i++
	if in && !(p.is(wRow, wRnd, wLast, wPrev, wBelow) && !p.isAt(1, wSt)) {
		p.i = i
		return false
	}
	if p.kindAt(0, tEdge) {
		return p.edgePlace(t)
	}
	p.eat(wA)
	switch {
	case p.is(wRow, wRnd) && !p.isAt(1, wBelow):
		round := p.is(wRnd)
		p.i++
		c, ok := p.count()
		if !ok {
			return true
		}
		t.Row, t.Round = c, round
		if n, ok := p.noun(); ok { // "ch-3 sp of Row 1 block"
			t.Of = n
		}
		return true
	case p.is(wLast, wPrev, wThis) && p.isAt(1, wRow, wRnd):
		p.i += 2
		return true
	case p.eatAll(wRow, wBelow), p.eatAll(wRnd, wBelow):
		return true
	case p.is(wFoundation, wBase) && p.isAt(1, wCh):
		p.i += 2
		return true
	case p.is(wCh) && !p.kindAt(1, tHyphen) && !p.kindAt(1, tNumber):
		p.i++
		if t.Nth.Said {
			t.Where = FromHook
		}
		return true
	case p.is(wRing):
		p.i++
		t.Where = InRing
		return true
	}
	where := Unsaid
	count := t.Count
	if p.is(wNext, wEach, wFirst, wLast, wSame, wThat) {
		switch p.at(0).word {
		case wNext:
			where = Next
		case wEach:
			where = Everywhere
		case wFirst:
			where = First
		case wLast:
			where = Last
		default:
			where = Same
		}
		p.i++
		if c, ok := p.count(); ok && !p.kindAt(0, tHyphen) {
			count = c
		} else if ok {
			p.i--
		}
	}
	n, ok := p.noun()
	if !ok {
		p.i = i
		return false
	}
	if n.Kind == AChain && !n.Chains.Said {
		n.Chains = p.chainsAfter()
	}
	t.Of, t.Count = n, count
	t.Each = t.Each || where == Everywhere
	if t.Nth.Said && t.Where == Unsaid {
		t.Where = where // "3rd dc of next shell"
	} else {
		t.OfWhere = where
	}
	if p.is(wOf) && p.ofRow(t) {
		return true
	}
	return true
}

// ofRow reads "of Row 1", "of Row 1 block", "of last rnd" behind a place already named.
func (p *parser) ofRow(t *Target) bool {
	i := p.i
	p.i++
	p.eat(wA)
	switch {
	case p.is(wLast, wPrev, wThis) && p.isAt(1, wRow, wRnd):
		p.i += 2
		return true
	case p.is(wRow, wRnd):
		round := p.is(wRnd)
		p.i++
		if c, ok := p.count(); ok {
			t.Row, t.Round = c, round
			return true
		}
	}
	p.i = i
	return false
}

// sameAs reads the words that say which place is meant: "as joining", "as sl st", "as last dc made", "where joined".
func (p *parser) sameAs(t *Target) {
	p.i++
	for {
		switch {
		case p.is(wFirst):
			p.i++
			t.OfWhere = First
		case p.is(wLast, wPrev):
			p.i++
			t.OfWhere = Last
		case p.is(wJoin, wJoining, wBe, wA, wThat) || p.kindAt(0, tWord) && p.low(0) == "made" || p.is(wWorking):
			p.i++
		default:
			i := p.i
			if n, ok := p.noun(); ok {
				if n.Kind == AChain && !n.Chains.Said {
					n.Chains = p.chainsAfter()
				}
				t.Of = n
				continue
			}
			p.i = i
			return
		}
	}
}

// rowsBelow reads "2 rows below", "in row below", "below".
func (p *parser) rowsBelow(t *Target) bool {
	i := p.i
	p.eat(wIn)
	p.eat(wFrom)
	if p.eat(wBelow) {
		t.Below = 1
		return true
	}
	n, ok := p.number()
	if !ok && p.eat(wRow, wRnd) && p.eat(wBelow) {
		t.Below = 1
		return true
	}
	if ok && n < 1000 && p.eat(wRow, wRnd) && p.eat(wBelow) {
		t.Below = n
		return true
	}
	p.i = i
	return false
}
