package notation

import "foundrow/internal/stitch"

// chainRule reads what a chain, or a slip stitch, counts as: "ch 2 at start of a row does not count", "ch 3 stands for the first st",
// "the skipped ch 3 is the first dc", "ch 4 = dc, ch 1", "chains count as sts".
func (p *parser) chainRule(r *Rule) bool {
	p.eat(wEach, wEvery, wA, wAll)
	p.eat(wFirst)
	closing := p.low(0) == "closing"
	if closing {
		p.i++
	}
	if s, n := p.readStitch(); n > 0 && s.Name == "sl st" {
		p.i += n
		if p.eat(wTo) {
			p.i++
		}
		if p.eat(wAnd) {
			return p.closingRule(r)
		}
		r.Noun = Noun{Kind: AStitch, Stitch: s}
		return p.slipRule(r)
	}
	if p.eat(wSkipped) {
		r.Skipped = true
	}
	n, ok := p.ruleChain()
	if !ok {
		return false
	}
	r.Noun, r.Chain = n, n.Chains
	for p.is(wAt, wIn, wOf, wBeg, wBeginning, wStarting, wEach, wEvery, wRow, wRnd, wThroughout, wAll, wEnd, wA, wBefore) || p.low(0) == "made" || p.low(0) == "always" {
		p.i++
	}
	return p.chainSaid(r)
}

// ruleChain reads the chain that a rule is about.
func (p *parser) ruleChain() (Noun, bool) {
	i := p.i
	if p.is(wTurning, wBeg, wBeginning, wStarting) && p.isAt(1, wCh) || p.is(wTch) {
		n, ok := p.noun()
		if ok && !n.Chains.Said {
			n.Chains = p.chainsAfter()
		}
		return n, ok
	}
	if p.is(wCh) {
		n, ok := p.chainNoun()
		if ok && !n.Chains.Said && n.Kind == AChain {
			n.Chains, _ = p.count()
		}
		if ok && p.is(wAt) && !n.Chains.Said { // "the chain at the start of every round"
			n.Kind = TurningCh
		}
		return n, ok
	}
	if c, ok := p.count(); ok {
		p.eatKind(tHyphen)
		if p.eat(wCh) {
			if p.eatKind(tHyphen); p.eat(wSp, wLoop) {
				return Noun{Kind: ASpace, Chains: c}, true
			}
			return Noun{Kind: AChain, Chains: c}, true
		}
	}
	p.i = i
	return Noun{}, false
}

// chainSaid reads what is said of a chain.
func (p *parser) chainSaid(r *Rule) bool {
	switch {
	case p.low(0) == "stands" && p.isAt(1, wFor):
		p.i += 2
		r.Kind = ChainCounts
		return p.countedAs(r)
	case p.low(0) == "stands":
		p.restOfRule()
		r.Kind = ChainStands
		return true
	case p.low(0) == "never":
		p.restOfRule()
		r.Kind = ChainDoesNotCount
		return true
	case p.is(wBe) && p.isAt(1, wNot), p.is(wBe) && p.low(1) == "never":
		p.i += 2
		r.Kind = ChainDoesNotCount
		p.eat(wA)
		if !p.eat(wSt) && !p.eat(wCount) {
			return false
		}
		p.restOfRule()
		return true
	case p.is(wBe) && (p.isAt(1, wFirst) || p.isAt(1, wA) && p.at(2).is), p.kindAt(0, tEquals):
		p.i++
		r.Kind = ChainCounts
		return p.countedAs(r)
	}
	c, ok := p.countsHere()
	if !ok && p.low(0) == "doesn't" {
		p.restOfRule()
		r.Kind = ChainDoesNotCount
		return true
	}
	if !ok {
		return false
	}
	r.Stitch, r.Plus, r.Sts = c.As, c.Plus, c.Sts
	if p.kindAt(0, tComma) && p.isAt(1, wCh) && !c.Plus.Said { // "counts as dc, ch 1"
		k := p.i
		p.i += 2
		p.eatKind(tHyphen)
		if r.Plus, ok = p.count(); !ok {
			p.i = k
		}
	}
	switch {
	case c.Says == SaysNot:
		r.Kind = ChainDoesNotCount
	case r.Noun.Kind == ASpace || r.Noun.Kind == AChain && !r.Chain.Said && c.As == (stitch.Stitch{}):
		r.Kind = ChainsAreStitches
	default:
		r.Kind = ChainCounts
	}
	p.restOfRule()
	return true
}

// countedAs reads "first dc", "a tr", "dc, ch 2" to the end of the sentence.
func (p *parser) countedAs(r *Rule) bool {
	p.eat(wA)
	p.eat(wFirst)
	p.eat(wA)
	s, ok := p.stitchHere()
	if !ok && !p.eat(wSt) {
		return false
	}
	r.Stitch = s
	k := p.i
	if p.eatKind(tComma) || p.eat(wAnd) || p.eatKind(tPlus) {
		if p.eat(wCh) {
			p.eatKind(tHyphen)
			r.Plus, _ = p.count()
		} else {
			p.i = k
		}
	}
	p.restOfRule()
	return true
}

// restOfRule passes over the rest of a sentence whose rule is plain: "… throughout", "… and the first st goes into the base of it".
func (p *parser) restOfRule() {
	if p.kindAt(0, tComma) && p.isAt(1, wCh) {
		return // another rule, which must not be lost
	}
	for !p.done() {
		p.i++
	}
}

// slipRule reads "sl st counts as a st", "a sl st is a real stitch, not a join", "sl sts to travel make nothing".
func (p *parser) slipRule(r *Rule) bool {
	p.eat(wSt)
	if p.eat(wTo) {
		p.i++
	}
	switch {
	case p.is(wBe) && p.isAt(1, wA), p.is(wCount) && p.isAt(1, wAs):
		r.Kind = SlipsAreStitches
	case p.is(wMake) && p.low(1) == "nothing", p.is(wDo), p.is(wBe) && p.isAt(1, wNot):
		r.Kind = SlipsDoNotCount
	default:
		return false
	}
	p.restOfRule()
	return true
}

// closingRule reads "the closing sl st and ch 1 are not counted".
func (p *parser) closingRule(r *Rule) bool {
	n, ok := p.ruleChain()
	if !ok {
		return false
	}
	r.Noun, r.Chain = n, n.Chains
	return p.chainSaid(r)
}
