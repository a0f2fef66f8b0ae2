package notation

import "foundrow/internal/stitch"

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

// through reads loops named for what follows: "FLO, …", "BLO: …", "working in back loops only", "both loops:".
func (p *parser) through() (Clause, bool) {
	i := p.i
	p.eat(wWorking)
	p.eat(wIn)
	p.eat(wThrough)
	if !p.loopsHere() {
		p.i = i
		return nil, false
	}
	p.eat(wOnly)
	switch t := p.at(0); {
	case t.kind == tComma, t.kind == tColon, t.kind == tSemi, t.kind == tEnd, t.kind == tStar, t.kind == tShut, t.kind == tStop, p.is(wAcross, wAround, wThroughout):
		p.eat(wAcross, wAround, wThroughout)
		return &Through{placed: p.placed(i), Loop: p.loop}, true
	}
	if p.i > i+1 && p.t[i].word == wWorking {
		p.eat(wOf)
		p.restOfPhrase()
		return &Through{placed: p.placed(i), Loop: p.loop}, true
	}
	p.i = i
	return nil, false
}
