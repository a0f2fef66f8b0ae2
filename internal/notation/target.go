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
	if first.kind != tWord {
		return false
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

// prepared reports whether a place may begin without a preposition: "sc next 12", "sc each st".
func (p *parser) prepared() bool { return p.is(wNext, wEach, wEvery, wSame, wFirst, wLast) }

// finish reads how far a place goes on.
func (p *parser) finish(t *Target, i int) {
	if t.Till.Kind == NotSaid && p.kindAt(0, tWord) {
		t.Till, _ = p.till()
	}
	t.Span = p.since(i)
}

// loopsHere reads the name of loops into p.loop.
func (p *parser) loopsHere() bool {
	t := p.at(0)
	if !(t.kind == tWord && (t.word == wLoops || t.word == wBack || t.word == wFront || t.word == wBoth || t.word == wThrough || t.low == "third") || t.kind == tOrdinal && t.n == 3) {
		return false
	}
	var words [4]string
	n := 0
	for n < len(words) && p.low(n) != "" {
		words[n] = p.low(n)
		n++
	}
	l, used := stitch.ReadLoop(words[:n])
	if used == 0 {
		return false
	}
	p.i += used
	p.loop, p.loops = l, true
	return true
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

// which reads the words before the noun, and the noun.
func (p *parser) which(t *Target) bool {
	said := false
	for {
		switch {
		case p.eat(wEach, wEvery), p.is(wAll) && !p.isAt(1, wAround, wAcross) && p.eat(wAll):
			t.Each = true
			p.eat(wOf)
			if p.eat(wOther, wAlt) {
				t.Every = 2
			} else if o, ok := p.ordinal(); ok {
				t.Every = o.Plain
			}
			if t.Where == Unsaid {
				t.Where = Everywhere
			}
		case p.eat(wNext):
			t.set(Next)
		case p.is(wThat):
			p.i++
			t.set(Same)
			t.That = true
		case p.eat(wSame), p.is(wThis) && p.isAt(1, wSt, wSp, wCh) && p.eat(wThis):
			t.set(Same)
		case p.eat(wFirst):
			t.set(First)
		case p.kindAt(0, tOrdinal) && p.at(0).n == 1 && !p.at(0).decimal:
			p.i++
			t.set(First)
		case p.eat(wLast):
			t.set(Last)
		case p.is(wEnd) && p.isAt(1, wCh, wSt, wSp):
			p.i++
			t.Where = Last
		case p.eat(wRemaining):
			t.Where = Remaining
		case p.eat(wSkipped):
			t.Where = Skipped
		case p.eat(wAny):
			t.Where, t.Any = Next, true
		case p.eat(wPrev):
			t.Prev = true
		case p.eat(wJoining):
			t.Where = Joining
			p.eat(wSt, wSp)
			return true
		case p.eat(wMarked):
			t.Where = Marked
		case p.eat(wCentre, wMiddle):
			p.eat(wOf)
			if p.eat(wRing) {
				t.Where, t.Noun = InRing, Noun{Kind: ARing}
				return true
			}
			t.Where = CentreOf
		case p.eat(wTop):
			p.eat(wOf)
			t.Where = TopOf
		case p.eat(wBase):
			p.eat(wOf)
			t.Where = Same
			n, ok := p.noun()
			if ok && n.Kind == AChain && !n.Chains.Said {
				n.Chains = p.chainsAfter()
			}
			t.Of = n
			t.Base = true
			return ok
		default:
			if o, ok := p.ordinal(); ok {
				t.Nth = o
				said = true
				continue
			}
			return p.nounOf(t, said)
		}
		said = true
	}
}

// set notes which place it is; behind "top of" or "center" it says which of the things that have one.
func (t *Target) set(where Where) {
	if t.Where == TopOf || t.Where == CentreOf {
		t.OfWhere = where
		return
	}
	t.Where = where
}

// nounOf reads the number and the noun of a place, either of which may be left out behind a word that says which.
func (p *parser) nounOf(t *Target, said bool) bool {
	i := p.i
	if n, ok := p.chainNoun(); ok && n.Kind == ASpace || ok && n.Chains.Said {
		t.Noun = n // "3ch-sp": the number is the chains'
	} else {
		p.i = i
		p.eat(wA)
		if c, ok := p.count(); ok {
			t.Count = c
			said = true
		}
		if p.kindAt(0, tNumber) && p.kindAt(1, tHyphen) {
			if n, ok := p.noun(); ok { // "next 5-dc shell"
				t.Noun = n
				return true
			}
		}
		if p.is(wNext) && t.Where == Everywhere { // "each of 2 next"
			p.i++
			t.Where = Next
		}
		if p.eat(wSkipped) {
			t.Where = Skipped
		}
		if p.eat(wRemaining) {
			t.Where = Remaining
		}
		if p.eat(wFree) {
			said = true
		}
		name := p.adjective()
		n, ok := p.noun()
		if !ok && !said {
			p.want("a place: next st, each st, ch-2 sp, ring")
			return false
		}
		if t.Where == TopOf && n.Kind == AChain && !n.Chains.Said && t.Count.Said { // "top of 3ch"
			n.Chains, t.Count = t.Count, Count{}
		}
		if n.Kind == AChain && !n.Chains.Said && t.Where == TopOf { // "top of ch 3"
			n.Chains = p.chainsAfter()
		}
		if name != "" {
			n.Name = name
		}
		t.Noun = n
	}
	if t.Each {
		p.alsoNouns(t)
	}
	if p.eat(wLeft) {
		t.Where = Remaining
	}
	switch t.Noun.Kind {
	case ARing:
		t.Where = InRing
	case ASpace:
		if t.Where == Unsaid {
			t.Where = InSpace
		}
	case TurningCh:
		if t.Where == Unsaid && !t.Nth.Said {
			t.Where = TopOf
		}
	case ARowEnd:
		t.Where = RowEnds
	}
	return true
}

// alsoNouns reads the further nouns of "each st and ch", "each dc and ch-1 sp".
func (p *parser) alsoNouns(t *Target) {
	for p.is(wAnd) && !t.Count.Said {
		i := p.i
		p.i++
		p.eat(wIn)
		p.eat(wEach)
		n, ok := p.noun()
		if !ok || n.Kind == AStitch && p.is(wIn) { // "in each dc and dc in each sp"
			p.i = i
			return
		}
		t.Also = append(t.Also, n)
	}
}

// whereOf reads what follows the noun: "from hook", "of next shell", "of ch-5", "2 rows below", "as joining".
func (p *parser) whereOf(t *Target) bool {
	for {
		i := p.i
		switch {
		case p.eatAll(wFrom, wHook):
			t.Where = FromHook
		case p.is(wOf, wFrom, wIn) && p.ofWhat(t):
		case t.Where == Same && p.is(wAs, wWhere):
			p.sameAs(t)
		case p.is(wAt) && p.isAt(1, wBase):
			p.i += 2
			p.eat(wOf)
			t.Of, _ = p.noun()
			t.Where, t.Base, t.Noun = Same, true, Noun{}
		case t.Noun.Kind == ASpace && p.is(wBetween):
			var between Target
			p.i++
			if !p.place(&between) {
				p.i = i
				return true
			}
			if between.Where == First && p.is(wAnd) { // "sp between first and second hdc"
				k := p.i
				p.i++
				if _, ok := p.ordinal(); ok {
					between.Noun, _ = p.noun()
				} else {
					p.i = k
				}
			}
			between.OfWhere, between.Where = between.Where, Between
			if t.Each {
				between.Each, between.OfWhere = true, Everywhere
			}
			*t = between
			return true
		case p.is(wAlong, wDown) && t.Name == "" && t.Where != OtherSide && (t.Noun.Kind == ARowEnd || t.Noun.Kind == AChain || t.Noun.Kind == AnyStitch):
			var along Target
			if !p.alongEdge(&along) || along.Name == "" {
				p.i = i
				return true
			}
			t.Name = along.Name
		case p.eat(wOnly):
		case p.low(0) == "made" || p.low(0) == "worked" || p.low(0) == "just":
			p.i++
		case p.is(wBehind) && p.kindAt(1, tWord): // "sk st behind fptr"
			p.i++
			p.eat(wEach)
			if _, ok := p.noun(); !ok {
				p.i = i
				return true
			}
		case p.rowsBelow(t):
		case p.is(wOn, wAlong, wDown, wUp, wAcross) && p.isAt(1, wOther, wOpposite) && p.isAt(2, wSide):
			p.i += 3
			t.OfWhere, t.Where = t.Where, OtherSide
			if p.eat(wOf) {
				p.eat(wFoundation, wBeginning, wStarting)
				p.noun()
			}
		default:
			p.i = i
			return true
		}
		if p.i == i {
			return true
		}
	}
}

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

// rowEnds reads what follows "in end of": "each row", "each of previous 11 rows", "next row".
func (p *parser) rowEnds(t *Target) {
	for {
		switch {
		case p.eat(wEach, wEvery):
			t.Each = true
			if p.eat(wOther) {
				t.Every = 2
			}
			p.eat(wOf)
		case p.eat(wPrev):
			t.Prev = true
		case p.at(0).is && p.isAt(1, wRow, wRnd): // "in the end of each dc row"
			t.Noun = Noun{Kind: ARowEnd, Stitch: p.at(0).stitch}
			p.i += 2
			return
		case p.eat(wNext, wLast, wFirst):
		case p.eat(wRow, wRnd, wRowEnd):
			t.Noun = Noun{Kind: ARowEnd}
			return
		default:
			c, ok := p.count()
			if !ok {
				t.Noun = Noun{Kind: ARowEnd}
				return
			}
			t.Count = c
		}
	}
}

// alongEdge reads "along the long edge", "down side", "up other side", "along row ends", "across the bottom".
func (p *parser) alongEdge(t *Target) bool {
	i := p.i
	across, along := p.is(wAcross), p.is(wAlong, wAcross)
	p.i++
	if p.is(wTo, wUntil, wTill) || p.done() || p.kindAt(0, tComma) {
		p.i = i
		return false
	}
	if !across && (p.eat(wRowEnd) || p.isAt(1, wEnd) && p.eatAll(wRow, wEnd)) {
		t.Where, t.Noun = RowEnds, Noun{Kind: ARowEnd}
		return true
	}
	if p.kindAt(0, tEdge) {
		return p.edgePlace(t)
	}
	name := ""
	from := p.t[i].from
	for k := 0; k < 6 && p.kindAt(0, tWord); k++ {
		switch {
		case p.eatAll(wSide, wEdge), p.eat(wEdge), p.eat(wSide):
			name = p.text[from:p.t[p.i-1].to]
			if p.eat(wOf) {
				p.eat(wA)
				p.eat(wFoundation, wBeginning, wStarting)
				switch {
				case p.eat(wPiece):
				case p.is(wCh):
					t.Where = OtherSide
					p.i++
					return true
				case p.kindAt(0, tWord):
					p.i++
				}
				name = p.text[from:p.t[p.i-1].to]
			}
			t.Where, t.Name = RowEnds, name
			if along && (p.t[i+1].word == wOther || p.t[i+1].word == wOpposite) && !p.isAt(-1, wPiece) && p.low(-2) != "long" {
				t.Where, t.Name = OtherSide, ""
			}
			return true
		case p.is(wOther, wOpposite, wLong, wRight, wLeft, wFront, wBack, unknown, wEach, wFirst, wLast):
			p.i++
		case p.is(wFoundation, wBeginning, wStarting) && p.isAt(1, wCh):
			p.i += 2
			t.Where = OtherSide
			return true
		default:
			k = 6
		}
	}
	if !across && p.i > i+1 && p.t[p.i-1].word == unknown {
		t.Where, t.Name = RowEnds, p.text[from:p.t[p.i-1].to]
		return true
	}
	p.i = i
	return false
}

// edgePlace reads an edge of a piece as a place: "body.left", "next st of body.left".
func (p *parser) edgePlace(t *Target) bool {
	e := p.edgeName()
	t.Edge = &e
	if t.Where == Unsaid && !t.Each {
		t.Where = Next
	}
	return true
}

// edgeName reads "hem.left".
func (p *parser) edgeName() Edge {
	t := p.at(0)
	p.i++
	e := Edge{Piece: p.text[t.from:t.n], Which: p.text[t.n+1 : t.to], Span: t.span()}
	p.edges = append(p.edges, e)
	return e
}
