package notation

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
			if t.Where == First || t.Nth.Said && t.Nth.plain() && t.Nth.Plain == 1 {
				p.report(p.since(i), "foundation", "nothing is worked into the 1st ch from the hook: the loop on the hook comes out of it", "write 2nd, or 3rd, 4th for taller stitches")
			}
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
