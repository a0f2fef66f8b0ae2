package notation

import (
	"strconv"

	"foundrow/internal/measure"
)

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
	n := Noun{Kind: AnyStitch}
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

// markerName reads the name of a marker: a single letter, or a colour.
func (p *parser) markerName() string {
	t := p.at(0)
	if t.kind == tWord && (len(t.low) == 1 || t.word == wA) && !p.isAt(0, wX) {
		p.i++
		return p.text[t.from:t.to]
	}
	return ""
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

// times reads "6 times", "x 6", "6x", "*6", "twice", "once more", "3 more times", "3 times more", "a total of 3 times", "3 times in all".
func (p *parser) times() (Extent, bool) {
	switch p.at(0).kind {
	case tNumber, tSlot, tWord, tStar, tOpen:
	default:
		return Extent{}, false
	}
	i := p.i
	e, ok := p.timesHere()
	if !ok {
		p.i = i
		return Extent{}, false
	}
	e.Span = p.since(i)
	return e, true
}

func (p *parser) timesHere() (Extent, bool) {
	switch {
	case p.eat(wX):
		c, ok := p.count()
		return Extent{Kind: Times, Count: c}, ok
	case p.kindAt(0, tStar) && p.open == 0 && p.at(0).n == 1 && p.kindAt(-1, tShut) && p.kindAt(1, tNumber) && (!p.kindAt(2, tWord) || p.isAt(2, wTimes)):
		p.i++
		c, ok := p.count()
		return Extent{Kind: Times, Count: c}, ok
	case p.is(wA) && p.isAt(1, wTotal) && p.isAt(2, wOf):
		p.i += 3
		return p.totalTimes()
	case p.is(wTotal) && p.isAt(1, wOf):
		p.i += 2
		return p.totalTimes()
	case p.is(wFor) && (p.isAt(1, wA) && p.isAt(2, wTotal) || p.isAt(1, wTotal)):
		p.i += 2
		p.eat(wTotal)
		p.eat(wOf)
		return p.totalTimes()
	case p.eat(wAnother):
		c, ok := p.timesWord()
		if !ok {
			c, ok = p.count()
			p.eat(wTimes)
		}
		return Extent{Kind: MoreTimes, Count: c}, ok
	}
	c, ok := p.timesWord()
	if ok {
		c = p.timesList(c)
	} else {
		if c, ok = p.count(); !ok {
			return Extent{}, false
		}
		switch {
		case p.is(wMore) && p.isAt(1, wTimes):
			p.i += 2
			return Extent{Kind: MoreTimes, Count: c}, true
		case p.eat(wTimes):
		case p.is(wX) && !p.numberAt(1):
			p.i++
		default:
			return Extent{}, false
		}
	}
	switch {
	case p.eat(wMore):
		return Extent{Kind: MoreTimes, Count: c}, true
	case p.eatAll(wIn, wAll), p.eatAll(wIn, wTotal), p.eat(wTotal):
		return Extent{Kind: InAll, Count: c}, true
	}
	return Extent{Kind: Times, Count: c}, true
}

var one = Count{Said: true, Plain: 1}

func (p *parser) totalTimes() (Extent, bool) {
	c, ok := p.timesWord()
	if !ok {
		c, ok = p.count()
		ok = p.eat(wTimes) && ok // else a claim: "for a total of 36 sts"
	}
	return Extent{Kind: InAll, Count: c}, ok
}

// timesList reads the other sizes of "twice (three times, four times)".
func (p *parser) timesList(c Count) Count {
	open := p.at(0)
	if open.kind != tOpen || open.n >= p.end || len(p.in.Sizes) < 2 {
		return c
	}
	list := []Entry{{N: c.Plain}}
	ok := true
	p.within(p.i+1, open.n, func() {
		for ok && !p.done() {
			n, word := p.timesWord()
			if !word {
				n.Plain, ok = p.number()
				p.eat(wTimes)
			}
			list = append(list, Entry{N: n.Plain})
			p.eatKind(tComma)
		}
	})
	if !ok || len(list) != len(p.in.Sizes) {
		return c
	}
	p.i = open.n + 1
	return Count{Said: true, List: list, Span: c.Span}
}

// timesWord reads once, twice, thrice.
func (p *parser) timesWord() (Count, bool) {
	t := p.at(0)
	n := 0
	switch {
	case p.eat(wOnce):
		n = 1
	case p.eat(wTwice):
		n = 2
	case p.eat(wThrice):
		n = 3
	default:
		return Count{}, false
	}
	return Count{Said: true, Plain: n, Span: t.span()}, true
}
