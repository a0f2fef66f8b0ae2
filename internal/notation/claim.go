package notation

import (
	"strings"

	"foundrow/internal/stitch"
)

// claimsIn reports whether the tokens between two places are claims and nothing else.
func (p *parser) claimsIn(from, to int) (ok bool) {
	far, wanted := p.far, p.wanted
	p.within(from, to, func() {
		_, ok = p.claimList(true)
		for p.eatKind(tStop) {
		}
		ok = ok && p.done()
	})
	p.far, p.wanted = far, wanted
	return ok
}

// claimList reads counts of what a row leaves: "82 dc, 4 ch-2 sps", "11, 11, 12 shells", "4 groups of 7 dc". Whole says that the
// window holds nothing else; otherwise it stops at the end of the sentence.
func (p *parser) claimList(whole bool) ([]Claim, bool) {
	var out []Claim
	only := p.sizesOnly()
	for !p.done() {
		c, ok := p.claim(whole)
		if !ok {
			break
		}
		if only != nil {
			c.Only = *only
		}
		out = append(out, c)
		i := p.i
		if !p.betweenClaims(whole) {
			break
		}
		for p.betweenClaims(whole) {
			p.i++
		}
		if p.chainBetween() {
			break
		}
		if !p.numberNext() && !p.kindAt(0, tOpen) || !p.claimFollows(whole) {
			p.i = i
			break
		}
	}
	return out, len(out) > 0
}

// betweenClaims reports whether the next token separates two counts; within brackets a dash or a colon may: "(36 sts: 20 sc, 16 hdc)".
func (p *parser) betweenClaims(whole bool) bool {
	switch p.at(0).kind {
	case tComma, tSemi, tPlus:
		return true
	case tDash, tColon, tEquals:
		return whole
	}
	return p.is(wAnd)
}

// claimFollows reports whether another claim, and not something to work, comes next: "…, 4 ch-2 sps".
func (p *parser) claimFollows(whole bool) bool {
	i := p.i
	defer func() { p.i = i }()
	c, ok := p.claim(whole)
	return ok && (c.Noun.Kind != NoNoun || c.Per != "") && !p.is(wIn, wOver, wAround, wTimes)
}

// chainBetween reads "ch 1 between" behind a count of stitches.
func (p *parser) chainBetween() bool {
	i := p.i
	if p.eat(wCh) {
		p.chainsAfter()
		p.eat(wSp)
		if p.eat(wBetween) {
			p.restOfPhrase()
			return true
		}
	}
	p.i = i
	return false
}

// claim reads one count and what it counts.
func (p *parser) claim(whole bool) (Claim, bool) {
	i := p.i
	var c Claim
	for p.is(wTotal, wNow, wYou, wHave, wShould) || p.is(wA) && p.isAt(1, wTotal) || p.is(wFor) && p.isAt(1, wA, wTotal) || p.kindAt(0, tColon) || p.kindAt(0, tEquals) || p.is(wOf) {
		p.i++
	}
	if n, ok := p.commaList(); ok {
		c.Count = n
	} else if n, ok := p.count(); ok {
		c.Count = n
	} else {
		p.i = i
		return Claim{}, false
	}
	p.eat(wMore, wTotal)
	if p.is(wGroup) && p.isAt(1, wOf) && p.kindAt(2, tNumber) {
		p.i += 2
		c.Groups = c.Count
		c.Count, _ = p.count()
	}
	p.eat(wUnworked, wRemaining)
	if n, ok := p.countedNoun(); ok {
		c.Noun = n
	}
	p.eat(wSt)
	p.qualify(&c)
	if whole && c.Noun.Kind == NoNoun && c.Per == "" {
		p.part(&c)
	}
	if whole && p.kindAt(0, tOpen) {
		return Claim{}, false
	}
	c.Span = p.since(i)
	return c, true
}

// part reads the part of the piece that a number is of: "16 each sleeve", "58 back".
func (p *parser) part(c *Claim) {
	i := p.i
	p.eat(wEach)
	for k := 0; k < 3 && p.is(unknown, wFront, wBack, wLeft, wRight, wSide) && !p.at(0).is && len(p.low(0)) > 3; k++ {
		p.i++
	}
	if !p.done() && !p.kindAt(0, tComma) && !p.kindAt(0, tSemi) {
		p.i = i
		return
	}
	s := p.since(i)
	c.Per = strings.ToLower(p.text[s.From:s.To])
	if p.i == i {
		c.Per = ""
	}
}

// commaList reads the numbers of all sizes written without a bracket of their own: "11, 11, 12, 12, 12 shells".
func (p *parser) commaList() (Count, bool) {
	sizes := len(p.in.Sizes)
	if sizes < 2 {
		return Count{}, false
	}
	i := p.i
	var list []Entry
	for {
		n, ok := p.number()
		switch {
		case ok:
			list = append(list, Entry{N: n})
		case p.kindAt(0, tDash) || p.kindAt(0, tHyphen):
			list = append(list, Entry{Absent: true})
			p.i++
		default:
			p.i = i
			return Count{}, false
		}
		if len(list) == sizes {
			return Count{Said: true, List: list, Span: p.since(i)}, true
		}
		if !p.eatKind(tComma) && !p.eatKind(tSlash) && !p.eatKind(tColon) {
			p.i = i
			return Count{}, false
		}
	}
}

// countedNoun reads what a claim counts; a row may be counted too.
func (p *parser) countedNoun() (Noun, bool) {
	if p.is(wRow, wRnd) {
		p.i++
		return Noun{Kind: ARow, Round: p.isAt(-1, wRnd)}, true
	}
	i := p.i
	name := p.adjective()
	n, ok := p.noun()
	if !ok {
		p.i = i
		return Noun{}, false
	}
	if name != "" {
		n.Name = name
	}
	return n, true
}

// qualify reads what narrows a claim: "on each side", "inc'd", "counting turning ch", "when done".
func (p *parser) qualify(c *Claim) {
	for !p.done() {
		i := p.i
		switch {
		case p.is(wOn, wIn, wEach, wEvery, wOf) && p.each(c):
		case p.is(wEach) && (p.isAt(1, wRow, wRnd) || p.kindAt(1, tEnd)):
			p.i++
			p.eat(wRow, wRnd)
		case p.low(0) == "per":
			p.i++
			c.Per = "each " + p.words(1)
		case p.eat(wIncreased), p.is(wInc) && (p.isAt(1, unknown) || p.kindAt(1, tEnd) || p.kindAt(1, tShut)) && p.eat(wInc):
			c.Change = 1
		case p.eat(wDecreased):
			c.Change = -1
		case p.eat(wRemain), p.eat(wRemaining), p.eat(wLeft), p.eat(wTotal), p.eatAll(wIn, wAll), p.eatAll(wIn, wTotal), p.eat(wAround), p.eat(wAcross), p.eat(wNow):
		case p.low(0) == "made" || p.low(0) == "worked" || p.low(0) == "when" || p.is(wDone):
			p.i++
		case p.eatAll(wAt, wEnd):
			if p.eat(wOf) {
				p.eat(wRow, wRnd)
			}
		case p.is(wCounting) || p.is(wNot) && p.isAt(1, wCounting) || p.is(wWith, wWithout) && p.isAt(1, wTch, wTurning, wBeg) || p.kindAt(0, tComma) && (p.isAt(1, wCounting) || p.isAt(1, wNot) && p.isAt(2, wCounting)):
			p.counting(c)
		default:
			p.i = i
			return
		}
	}
}

// each reads "on each side", "each side", "in each section".
func (p *parser) each(c *Claim) bool {
	i := p.i
	p.eat(wOn, wIn, wOf)
	if !p.eat(wEach, wEvery) {
		p.i = i
		return false
	}
	if p.is(wSt, wRow, wRnd) || p.done() {
		p.i = i
		return false
	}
	c.Per = "each " + p.words(1)
	return c.Per != "each "
}

// counting reads whether the count has the turning chain in it, or leaves something out.
func (p *parser) counting(c *Claim) {
	p.eatKind(tComma)
	from := p.i
	without := p.is(wNot, wWithout) || p.low(0) == "excluding"
	p.eat(wNot)
	p.eat(wCounting, wWith, wWithout)
	tch := p.is(wTch, wTurning, wBeg, wCh, wBeginning)
	p.restOfPhrase()
	s := p.since(from)
	c.With = stitch.Carry(p.text[s.From:s.To], p.in.Terms, stitch.US)
	switch {
	case tch && without:
		c.Tch = SaysNot
	case tch:
		c.Tch = SaysCounts
	}
}
