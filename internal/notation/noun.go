package notation

import (
	"strings"

	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

// stitchHere reads the longest stitch that begins at the next token.
func (p *parser) stitchHere() (stitch.Stitch, bool) {
	i := p.i
	if s, ok := p.special(); ok {
		return s, true
	}
	switch {
	case p.is(wBeg, wBeginning, wStanding, wHalf, wStarting):
		manner := [...]stitch.Manner{stitch.Beginning, stitch.Standing, stitch.Half}[0]
		switch {
		case p.is(wStanding):
			manner = stitch.Standing
		case p.is(wHalf):
			manner = stitch.Half
		}
		if p.is(wHalf) {
			if s, n := p.readStitch(); n > 1 { // half double crochet
				p.i += n
				return s, true
			}
		}
		p.i++
		if s, ok := p.stitchHere(); ok && s.Manner == stitch.Usual && (manner != stitch.Half || s.Find() == nil || s.Find().Class == stitch.Unit) {
			s.Manner = manner
			return s, true
		}
		p.i = i
		return stitch.Stitch{}, false
	case p.kindAt(0, tNumber):
		return p.unitOf()
	}
	t := p.at(0)
	if s, ok := p.foreignStitch(t); ok {
		p.i++
		return s, true
	}
	if t.kind != tWord || !t.is && !t.begins && t.word != wLoops && t.word != wBack && t.word != wFront && t.word != unknown {
		return stitch.Stitch{}, false
	}
	if t.is && !t.begins && !p.mayChange(1) {
		p.i++
		return t.stitch, true
	}
	s, n := p.readStitch()
	if n == 0 {
		return stitch.Stitch{}, false
	}
	p.i += n
	if e := s.Find(); e != nil && e.Class == stitch.Plain && s.Together == 0 {
		if u, ok := p.unitAfter(s); ok {
			return u, true
		}
	}
	return s, true
}

// mayChange reports whether the token k on could belong to a stitch that ends before it: "dc dec", "dc 2 tog", "sc BLO".
func (p *parser) mayChange(k int) bool {
	t := p.at(k)
	switch t.kind {
	case tHyphen:
		t = p.at(k + 1)
		return t.is && p.unitClass(t.stitch)
	case tWord:
		switch t.word {
		case wInc, wDec, wLoops, wBack, wFront, wThrough, wBoth:
			return true
		case wNext:
			return (p.isAt(k+2, wSt) && p.isAt(k+3, wTog)) || p.isAt(k+2, wTog)
		}
		return t.low == "third" || t.is && p.unitClass(t.stitch)
	case tNumber:
		return t.n >= 2 && t.n <= 9 && (p.isAt(k+1, wTog) || p.isAt(k+1, wSt) && p.isAt(k+2, wTog))
	case tOrdinal:
		return t.n == 3 && p.isAt(k+1, wLoop)
	}
	return false
}

// readStitch reads a stitch of the dictionary without passing over it, and says how many tokens it takes.
func (p *parser) readStitch() (stitch.Stitch, int) {
	var words [8]string
	n := 0
	for n < len(words) {
		w := p.low(n)
		if w == "" {
			break
		}
		words[n] = w
		n++
	}
	return stitch.Read(words[:n], p.in.Terms)
}

func (p *parser) unitClass(s stitch.Stitch) bool {
	e := s.Find()
	return e == nil || e.Class == stitch.Unit
}

// unitOf reads "3-dc cluster", "5-tr cluster", "3-dc cl".
func (p *parser) unitOf() (stitch.Stitch, bool) {
	t := p.at(0)
	if !p.kindAt(1, tHyphen) || t.n < 1 || t.n > 50 {
		return stitch.Stitch{}, false
	}
	i := p.i
	p.i += 2
	of, n := p.readStitch()
	if e := of.Find(); n == 0 || e == nil || e.Class != stitch.Plain || of != of.Base() {
		p.i = i
		return stitch.Stitch{}, false
	}
	p.i += n
	p.eatKind(tHyphen)
	if p.eat(wGroup) {
		return stitch.Stitch{Name: "group", Of: of.Name, Members: uint8(t.n)}, true
	}
	unit, ok := p.stitchHere()
	if !ok || !p.unitClass(unit) || unit.Of != "" {
		p.i = i
		return stitch.Stitch{}, false
	}
	unit.Of, unit.Members = of.Name, uint8(t.n)
	return unit, true
}

// unitAfter reads the unit of "dc cluster", "hdc puff".
func (p *parser) unitAfter(of stitch.Stitch) (stitch.Stitch, bool) {
	i := p.i
	p.eatKind(tHyphen)
	u, ok := p.unitHere(of)
	if !ok {
		p.i = i
	}
	return u, ok
}

func (p *parser) unitHere(of stitch.Stitch) (stitch.Stitch, bool) {
	t := p.at(0)
	if t.kind != tWord || !t.is || of.Post != stitch.NoPost || of.Loop != stitch.BothLoops {
		return stitch.Stitch{}, false
	}
	if e := t.stitch.Find(); e == nil || e.Class != stitch.Unit || e.Name == "V-st" {
		return stitch.Stitch{}, false
	}
	p.i++
	u := t.stitch
	u.Of = of.Name
	return u, true
}

// special reads a name of the pattern's own, in whatever capitals, several of them with an s.
func (p *parser) special() (stitch.Stitch, bool) {
	if len(p.specials) == 0 || p.done() {
		return stitch.Stitch{}, false
	}
	t := p.at(0)
	if t.kind != tWord && t.kind != tNumber {
		return stitch.Stitch{}, false
	}
	best, until := "", 0
	limit := p.windowEnd()
	for _, name := range p.specials {
		if len(name) <= len(best) || t.from+len(name) > limit || !strings.EqualFold(p.text[t.from:t.from+len(name)], name) {
			continue
		}
		end := t.from + len(name)
		if end < limit && (p.text[end] == 's' || p.text[end] == 'S') {
			end++
		}
		if end < limit && (isLetter(p.text[end]) || isDigit(p.text[end])) {
			continue
		}
		best, until = name, end
	}
	if best == "" {
		return stitch.Stitch{}, false
	}
	for !p.done() && p.at(0).from < until {
		p.i++
	}
	return stitch.Stitch{Name: best}, true
}

// windowEnd is the offset at which the window ends.
func (p *parser) windowEnd() int {
	if p.end > 0 && p.end <= len(p.t) {
		return p.t[p.end-1].to
	}
	return p.here()
}

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
	case p.is(wRow) && !p.numberAt(1):
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

// spanFrom is the span of the text between two offsets.
func spanFrom(from, to int) source.Span { return source.Span{From: from, To: max(from, to)} }
