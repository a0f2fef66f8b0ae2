package notation

import "foundrow/internal/stitch"

// target reads where the hook goes, from its preposition to how far it goes on. Nothing is consumed when there is none. A loop
// named on the way is kept in p.loop.
func (p *parser) target() (t Target, ok bool) {
	ok = p.targetTo(&t)
	return t, ok
}

// targetTo is target for a place that is kept: targets are large. It leaves the zero Target when there is none.
func (p *parser) targetTo(t *Target) bool {
	i := p.i
	p.loop, p.loops = stitch.BothLoops, false
	if !p.targetHere(t) {
		p.i = i
		*t = Target{}
		return false
	}
	p.finish(t, i)
	return true
}

func (p *parser) targetHere(t *Target) bool {
	first := p.at(0)
	if first.kind != tWord || first.word == wNumberWord {
		t.Where, t.Noun = Next, Noun{Kind: AnyStitch}
		return p.rowsBelow(t) // "mosaic dc 3 rows below"
	}
	switch first.word {
	case wIn:
		if p.isAt(1, wEnd, wSide) && p.isAt(2, wOf) { // "in end of each row"
			p.i += 3
			t.Where = RowEnds
			p.rowEnds(t)
			return true
		}
		if p.otherSide(t) {
			return true
		}
	case wOn, wAt, wUnder:
		if p.otherSide(t) {
			return true
		}
	case wAlong, wDown, wUp, wAcross:
		if p.otherSide(t) {
			return true
		}
		if !p.is(wAcross) || !p.isAt(1, wFirst, wNext, wLast) {
			return p.alongEdge(t)
		}
	case wWhere:
		p.i++
		for p.kindAt(0, tWord) && p.is(wJoining, wJoin, wYou, unknown, wYarn, wBe) {
			p.i++
		}
		t.Where = Joining
		return true
	case wBetween:
		return p.betweenThem(t)
	case wOver:
		p.i++
		if !p.place(t) {
			return false
		}
		t.Over = !t.Each // "over each loop" is in each
		return true
	case wThrough:
		if p.isAt(1, wBoth) && p.isAt(2, wThickness, wSide) {
			p.i += 3
			t.Where = Both
			return true
		}
		if !p.loopsHere() {
			return false
		}
		p.eat(wOnly)
		return !p.eat(wOf) || p.place(t)
	case wAround, wRnd:
		if first.word == wRnd && first.low != "round" {
			return false
		}
		p.i++
		t.Around = p.eat(wPost)
		p.eat(wOf)
		return p.place(t) && (t.Where != Unsaid || t.Noun.Kind != NoNoun)
	case wNext, wEach, wEvery, wSame, wFirst, wLast: // "sc next 12", "sc each st": no preposition
		p.i--
	default:
		return false
	}
	p.i++
	p.eat(wTo) // "in to"
	if !p.place(t) {
		p.want("a place: next st, each st, ch-2 sp, ring")
		return false
	}
	return true
}

// otherSide reads "in other side of each of next 8 ch", "along opposite side of foundation ch".
func (p *parser) otherSide(t *Target) bool {
	if !p.isAt(1, wOther, wOpposite) || !p.isAt(2, wSide) || !p.isAt(3, wOf) {
		return false
	}
	i := p.i
	p.i += 4
	p.eat(wFoundation, wBeginning, wStarting)
	if !p.place(t) {
		p.i = i
		*t = Target{}
		return false
	}
	t.OfWhere, t.Where = t.Where, OtherSide
	return true
}

// betweenThem reads "between next 2 sts", "between first and second hdc", "between" alone.
func (p *parser) betweenThem(t *Target) bool {
	p.i++
	if p.is(wFirst) && p.isAt(1, wAnd) {
		p.i += 2
		if _, ok := p.ordinal(); !ok {
			return false
		}
		t.Noun, _ = p.noun()
		t.Where, t.OfWhere = Between, First
		return true
	}
	if !p.place(t) && !p.done() && !p.kindAt(0, tComma) && !p.kindAt(0, tStop) && !p.kindAt(0, tSemi) {
		return false
	}
	t.OfWhere, t.Where = t.Where, Between
	return true
}

// finish reads how far a place goes on.
func (p *parser) finish(t *Target, i int) {
	if t.Till.Kind == NotSaid && p.kindAt(0, tWord) {
		t.Till, _ = p.till()
	}
	t.Span = p.since(i)
}

// place reads a place behind its preposition.
func (p *parser) place(t *Target) bool {
	if p.loopsHere() {
		p.eat(wOnly)
		if !p.eat(wOf) && !p.prepared() && !p.is(wFirst, wLast, wRemaining) {
			t.Where = Unsaid
			return true // "in BLO across": the loops only
		}
	}
	if p.kindAt(0, tEdge) {
		return p.edgePlace(t)
	}
	start := p.i
	if !p.which(t) {
		p.i = start
		return false
	}
	return p.whereOf(t)
}

// prepared reports whether a place may begin without a preposition: "sc next 12", "sc each st".
func (p *parser) prepared() bool { return p.is(wNext, wEach, wEvery, wSame, wFirst, wLast) }
