package notation

// till reads how far a run of stitches goes: "across", "to last 3 sts", "to next ch-2 sp".
func (p *parser) till() (Extent, bool) {
	if !p.is(wAcross, wAround, wAll, wAlong, wTo, wTill, wUntil, wUp, wWithin, wFor, wRnd) {
		return Extent{}, false
	}
	i := p.i
	e, ok := p.extent()
	if ok {
		switch e.Kind {
		case Times, MoreTimes, InAll, RepeatN:
			p.i = i
			return Extent{}, false
		}
	}
	return e, ok
}

// extent reads how far, or how often; nothing is consumed when neither is said.
func (p *parser) extent() (Extent, bool) {
	i := p.i
	e, ok := p.extentHere()
	if !ok {
		p.i = i
		return Extent{}, false
	}
	e.Span = p.since(i)
	return e, true
}

func (p *parser) extentHere() (Extent, bool) {
	switch {
	case p.is(wAcross, wAround, wAll, wAlong) || p.is(wRnd) && p.low(0) == "round":
		return p.across()
	case p.is(wTo, wTill, wUntil) || p.is(wUp) && p.isAt(1, wTo) || p.is(wWithin):
		return p.until()
	case p.is(wFor) && p.lengthAt(1):
		p.i++
		return p.length(UntilMeasures)
	}
	return p.times()
}

// across reads "across", "around", "all the way around", "across row", "across to last 3 sts", "across, ending …" leaves the ending.
func (p *parser) across() (Extent, bool) {
	if p.eat(wAll) {
		p.eat(wManner)
		if !p.is(wAcross, wAround, wAlong) && !p.is(wRnd) {
			return Extent{}, false
		}
	}
	if p.is(wAcross, wAround) && p.isAt(1, wNext, wSame, wThat, wPost, wEach, wEvery, wFirst, wLast) || p.is(wAlong) {
		return Extent{}, false
	}
	around := !p.is(wAcross)
	p.i++
	if e, ok := p.extentTo(); ok {
		return e, true
	}
	switch {
	case p.is(wRow, wRnd) && !p.numberAt(1), p.is(wPiece, wSide):
		p.i++
	case p.is(wBack, wFront, wTop) || p.is(unknown) && !p.at(0).is && len(p.low(0)) > 3: // "across back", "across sleeve"
		if next := p.at(1); next.kind == tComma || next.kind == tStop || next.kind == tSemi || next.kind == tEnd || next.kind == tOpen {
			p.i++
		}
	}
	return Extent{Kind: AcrossRow, Around: around}, true
}

// extentTo reads a further "to …" behind across.
func (p *parser) extentTo() (Extent, bool) {
	i := p.i
	if p.is(wTo, wTill, wUntil, wWithin) || p.is(wUp) && p.isAt(1, wTo) {
		if e, ok := p.until(); ok {
			return e, true
		}
	}
	p.i = i
	return Extent{}, false
}

func (p *parser) numberAt(k int) bool {
	t := p.at(k)
	return t.kind == tNumber || t.kind == tSlot || t.kind == tWord && t.word == wNumberWord || t.kind == tOpen
}

// until reads what follows "to", "till", "until", "up to", "to within".
func (p *parser) until() (Extent, bool) {
	p.eat(wUp)
	to := p.is(wTo, wTill)
	p.eat(wTo, wTill, wUntil)
	p.eat(wYou)
	p.eat(wReach)
	within := p.eat(wWithin)
	switch {
	case p.eat(wEnd):
		e := Extent{Kind: AcrossRow}
		if p.eat(wOf) {
			e.Around = p.is(wRnd)
			p.eat(wRow, wRnd, wCh)
		}
		return e, true
	case p.eatAll(wRow, wEnd):
		return Extent{Kind: AcrossRow}, true
	case p.eat(wLast), p.eatAll(wRemaining):
		c, _ := p.count()
		n := p.nounOrSt()
		p.eatAll(wBe, wLeft)
		p.eat(wRemain)
		return Extent{Kind: ToLast, Count: c, Noun: n}, true
	case p.eat(wCentre, wMiddle):
		c, _ := p.count()
		n, _ := p.noun()
		return Extent{Kind: ToCentre, Count: c, Noun: n}, true
	case to && p.eat(wNext, wFirst):
		if p.eat(wMarker) {
			return Extent{Kind: ToMarker}, true
		}
		n, ok := p.noun()
		return Extent{Kind: ToNext, Noun: n}, ok
	case to && (p.eat(wMarker) || p.eat(wMarked)):
		return Extent{Kind: ToMarker, Name: p.markerName()}, true
	case to && !p.numberNext() && p.nounAhead():
		n, ok := p.noun()
		return Extent{Kind: ToNext, Noun: n}, ok
	case p.fits():
		return Extent{Kind: UntilMeasures}, true
	case p.is(wPiece, wWork, wIt, wDesired, wRow) || p.lengthAt(0) || p.isAt(1, wMeasures) || p.kindAt(0, tWord) && p.low(0) == "sleeve":
		return p.length(UntilMeasures)
	case p.eat(wThere), p.is(wHave):
		p.eat(wBe, wHave)
	case p.is(wYou):
		p.eat(wYou)
		p.eat(wHave)
	}
	p.eat(wHave)
	c, ok := p.count()
	if !ok {
		return Extent{}, false
	}
	if p.eat(wMore) {
		return Extent{}, false
	}
	left := p.eat(wRemaining)
	var n Noun
	if p.is(wRow, wRnd) {
		n, _ = p.countedNoun()
		for p.is(wHave, wBe) || p.low(0) == "been" || p.low(0) == "completed" || p.is(wWorking, wDone) {
			p.i++
		}
	} else {
		n = p.nounOrSt()
	}
	if e, ok := p.beforeIt(c); ok && to {
		return e, true
	}
	p.eat(wBe)
	switch {
	case within, p.is(wFrom, wOf, wBefore) && p.eatBeforeEnd():
		return Extent{Kind: ToLast, Count: c, Noun: n}, true
	case p.eat(wRemain), p.eat(wRemaining), p.eat(wLeft), p.eatAll(wUnworked), left:
		return Extent{Kind: UntilLeft, Count: c, Noun: n}, true
	}
	if p.is(wBe) {
		p.i++
	}
	for p.kindAt(0, tWord) && p.low(0) == "made" || p.is(wWorking, wDone, wTotal) {
		p.i++
	}
	return Extent{Kind: UntilMade, Count: c, Noun: n}, true
}

// nounOrSt reads a noun; where it is left out, stitches are meant: "to last 3".
func (p *parser) nounOrSt() Noun {
	if n, ok := p.noun(); ok {
		return n
	}
	return Noun{Kind: AnyStitch}
}

// beforeIt reads "before marker", "before next ch-2 sp" behind a number of stitches.
func (p *parser) beforeIt(c Count) (Extent, bool) {
	i := p.i
	if !p.eat(wBefore) {
		return Extent{}, false
	}
	next := p.eat(wNext, wFirst)
	if p.eat(wMarker) || p.eat(wMarked) {
		p.eat(wSt)
		return Extent{Kind: ToMarker, Count: c, Name: p.markerName()}, true
	}
	if n, ok := p.noun(); ok && (next || n.Kind != AnyStitch) {
		return Extent{Kind: ToNext, Count: c, Noun: n}, true
	}
	p.i = i
	return Extent{}, false
}

// eatBeforeEnd reads "before end", "from end", "of end of row".
func (p *parser) eatBeforeEnd() bool {
	i := p.i
	p.i++
	p.eat(wA)
	if p.eat(wEnd) {
		if p.eat(wOf) {
			p.eat(wRow, wRnd)
		}
		return true
	}
	p.i = i
	return false
}
