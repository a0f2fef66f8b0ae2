package notation

import "foundrow/internal/stitch"

// noun reads what places or counted things are called; nothing is consumed when there is none.
func (p *parser) noun() (Noun, bool) {
	i := p.i
	if n, ok := p.chainNoun(); ok {
		return n, true
	}
	p.i = i
	switch {
	case p.eat(wSt), p.low(0) == "place" && p.eat(wPlace):
		return Noun{Kind: AnyStitch}, true
	case p.is(wSp, wLoop):
		t := p.at(0)
		p.i++
		p.eat(wSp)
		return Noun{Kind: ASpace, Loop: t.word == wLoop}, true
	case p.eat(wRing):
		return Noun{Kind: ARing}, true
	case p.eat(wTch), p.eatAll(wTurning, wCh):
		return Noun{Kind: TurningCh, Chains: p.chainsAfter()}, true
	case p.is(wBeg, wBeginning, wStarting, wTurning) && p.isAt(1, wCh):
		p.i += 2
		return Noun{Kind: TurningCh, Chains: p.chainsAfter()}, true
	case p.is(wBeg, wBeginning, wStarting) && p.kindAt(1, tNumber) && p.isAt(2, wCh):
		p.i++
		n, ok := p.chainNoun()
		n.Kind = TurningCh
		return n, ok
	case p.eat(wRowEnd), p.isAt(1, wEnd) && p.eatAll(wRow, wEnd):
		return Noun{Kind: ARowEnd}, true
	case p.is(wRow) && !p.numberAt(1) && (p.isAt(-1, wEach, wEvery, wOther, wAlt, wPrev) || p.kindAt(-1, tNumber) || p.kindAt(-1, tOrdinal)):
		p.i++
		return Noun{Kind: ARowEnd}, true
	case p.is(wCorner):
		p.i++
		if n, ok := p.noun(); ok {
			n.Name = "corner"
			return n, true
		}
		return Noun{Kind: AUnit, Name: "corner"}, true
	case p.eat(wGroup):
		return Noun{Kind: AUnit, Name: "group"}, true
	case p.eat(wPair):
		return Noun{Kind: AUnit, Name: "pair"}, true
	case p.eat(wSection):
		return Noun{Kind: AUnit, Name: "section"}, true
	case p.eat(wRep):
		return Noun{Kind: ARepeat}, true
	case p.eat(wPatt):
		p.eat(wRep)
		return Noun{Kind: ARepeat}, true
	}
	if s, ok := p.stitchHere(); ok {
		return p.stitchNoun(s), true
	}
	if name, ok := p.unitName(); ok {
		return Noun{Kind: AUnit, Name: name}, true
	}
	return Noun{}, false
}

// stitchNoun is what a stitch is called as a place.
func (p *parser) stitchNoun(s stitch.Stitch) Noun {
	if e := s.Find(); e == nil || e.Class == stitch.Unit {
		p.eat(wGroup)
		return Noun{Kind: AUnit, Stitch: s}
	}
	if e := s.Find(); e.Class == stitch.Ring {
		return Noun{Kind: ARing}
	}
	if p.is(wRowEnd) || p.is(wRow) && p.isAt(1, wEnd) {
		p.i++
		p.eat(wEnd)
		return Noun{Kind: ARowEnd, Stitch: s}
	}
	p.eat(wSt) // "each sc st"
	return Noun{Kind: AStitch, Stitch: s}
}

// unitNames are things that patterns count without defining them as stitches.
var unitNames = map[string]string{
	"box": "box", "boxes": "box", "square": "square", "squares": "square", "sq": "square", "point": "point", "points": "point",
	"petal": "petal", "petals": "petal", "wedge": "wedge", "wedges": "wedge", "scallop": "scallop", "scallops": "scallop", "motif": "motif",
	"motifs": "motif", "ridge": "ridge", "ridges": "ridge", "rib": "rib", "ribs": "rib", "granny": "granny", "arch": "arch", "arches": "arch",
	"leaf": "leaf", "leaves": "leaf", "opening": "opening", "openings": "opening", "spike": "spike", "spikes": "spike", "spoke": "spoke", "spokes": "spoke",
}

func (p *parser) unitName() (string, bool) {
	name, ok := unitNames[p.low(0)]
	if ok {
		p.i++
	}
	return name, ok
}

// chainsAfter reads the chains of "tch-3", "beg ch 3".
func (p *parser) chainsAfter() Count {
	i := p.i
	p.eatKind(tHyphen)
	if c, ok := p.count(); ok && (c.Plain <= 20 || c.List != nil || c.Slot > 0) {
		return c
	}
	p.i = i
	return Count{}
}

// chainNoun reads "ch", "ch-2 sp", "ch 2 sp", "ch2sp", "ch sp", "2-ch loop", "3ch-sp", "ch-3", "ch-5 loop", "loop of chain".
func (p *parser) chainNoun() (Noun, bool) {
	var chains Count
	switch {
	case p.eat(wCh):
		k := p.i
		hyphen := p.eatKind(tHyphen)
		if hyphen && p.is(wSp, wLoop) {
			t := p.at(0)
			p.i++
			return Noun{Kind: ASpace, Loop: t.word == wLoop, Loose: true}, true
		}
		c, ok := p.count()
		if !ok {
			p.i = k
			if p.is(wSp, wLoop) {
				t := p.at(0)
				p.i++
				return Noun{Kind: ASpace, Loop: t.word == wLoop, Loose: true}, true
			}
			return Noun{Kind: AChain}, true
		}
		p.eatKind(tHyphen)
		if !hyphen && !p.is(wSp, wLoop, wCorner) && !p.isAt(-1, wSp) {
			p.i = k
			return Noun{Kind: AChain}, true
		}
		chains = c
		p.eat(wTch)
	case p.kindAt(0, tNumber) && (p.isAt(1, wCh) || p.kindAt(1, tHyphen) && p.isAt(2, wCh)):
		t := p.at(0)
		k := p.i
		p.i++
		hyphen := p.eatKind(tHyphen)
		p.i++
		if p.kindAt(0, tHyphen) && p.kindAt(1, tNumber) { // "next 1 ch-1 loop": the chains' number comes behind
			p.i = k
			return Noun{}, false
		}
		hyphen = p.eatKind(tHyphen) || hyphen
		if !hyphen && !p.is(wSp, wLoop) {
			p.i = k
			return Noun{}, false
		}
		chains = Count{Said: true, Plain: t.n, Span: t.span()}
	default:
		return Noun{}, false
	}
	if p.eat(wCorner) {
		p.eat(wSp, wLoop)
		return Noun{Kind: ASpace, Chains: chains, Name: "corner"}, true
	}
	if p.is(wSp, wLoop) {
		t := p.at(0)
		p.i++
		return Noun{Kind: ASpace, Chains: chains, Loop: t.word == wLoop}, true
	}
	return Noun{Kind: AChain, Chains: chains}, true
}

// nounAhead reports whether a noun begins at the next token, without reading it.
func (p *parser) nounAhead() bool {
	i := p.i
	_, ok := p.noun()
	p.i = i
	return ok
}

// adjective passes over one word that describes a noun: "raglan st", "thumb ch", "blue sc". It returns the word as written.
func (p *parser) adjective() string {
	t := p.at(0)
	if t.begins {
		if _, n := p.readStitch(); n > 0 {
			return "" // "quad tr"
		}
	}
	if t.kind != tWord || t.word != unknown && t.word != wFront && t.word != wBack && t.word != wLeft && t.word != wRight && t.word != wSide && t.word != wEdge || t.is || len(t.low) < 2 {
		return ""
	}
	p.i++
	if !p.nounAhead() {
		p.i--
		return ""
	}
	return t.low
}
