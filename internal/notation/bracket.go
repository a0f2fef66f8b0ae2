package notation

import (
	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

// A bracketKind is what a bracket holds.
type bracketKind uint8

const (
	group bracketKind = iota
	list              // numbers for the sizes
	remark
	claim
)

// bracketAt decides what the bracket at token i holds. The order of the questions matters and is told in the architecture: numbers
// only after a number are a list, which count has taken before anybody asks here; then remarks, then claims, else it is a group.
func (p *parser) bracketAt(i int) bracketKind {
	to := p.t[i].n
	if to >= p.end {
		return group
	}
	if _, ok := p.numbersIn(i); ok {
		if i > 0 && p.expectsNumber(i-1) && to-i > 2 {
			return list
		}
		return claim
	}
	if p.onlyNames(i, to) {
		return remark
	}
	closes := p.closesRow(to + 1)
	if closes && p.t[i+1].kind != tWord && p.claimsIn(i+1, to) { // "58 dc counting turning ch"
		return claim
	}
	if p.remarkIn(i, to) && !p.toldHow(to+1) {
		return remark
	}
	if closes && p.claimsIn(i+1, to) {
		return claim
	}
	return group
}

// expectsNumber reports whether a number for the sizes may follow token i: "next (50, 54, 58)", "sc (3, 4, 4)".
func (p *parser) expectsNumber(i int) bool {
	t := &p.t[i]
	return t.kind == tWord && (t.is || t.word == wNext || t.word == wIn || t.word == wFirst || t.word == wLast || t.word == wSkip || t.word == wCh || t.word == wOf)
}

// toldHow reports whether token i says how often or where the bracket before it is worked, so that it is no remark.
func (p *parser) toldHow(i int) bool {
	if i >= p.end {
		return false
	}
	t := &p.t[i]
	if t.kind == tNumber || t.kind == tSlot {
		return i+1 < p.end && (p.t[i+1].kind == tOpen || p.t[i+1].kind == tWord && (p.t[i+1].word == wTimes || p.t[i+1].word == wX || p.t[i+1].word == wMore))
	}
	switch t.word {
	case wX, wTwice, wOnce, wThrice, wIn, wAcross, wAround:
		return t.kind == tWord
	}
	return false
}

// remarkIn reports whether the bracket from token i to its end says something about the work rather than working it.
func (p *parser) remarkIn(i, to int) bool {
	for k := i + 1; k < to; k++ {
		t := &p.t[k]
		if t.kind != tWord {
			continue
		}
		switch t.word {
		case wCounting, wNot, wDo, wSkipped, wThroughout, wFacing, wRS, wWS, wWhich, wBe:
			return true
		case wCount:
			return k > i+1 || p.t[k].low != "count"
		}
		if k == i+1 && remarkWords[t.low] {
			return true
		}
	}
	return false
}

// onlyNames reports whether the bracket holds a name and nothing to work, and is not told how often or where: "(sleeve)".
func (p *parser) onlyNames(i, to int) bool {
	for k := i + 1; k < to; k++ {
		t := &p.t[k]
		switch {
		case t.kind != tWord || t.is || t.begins && t.word != wFront && t.word != wBack:
			return false
		case t.word == unknown && len(t.low) > 3, t.word == wFront, t.word == wBack, t.word == wLeft, t.word == wRight, t.word == wFirst, t.word == wSide, t.word == wFor:
		default:
			return false
		}
	}
	if to+1 >= p.end {
		return to > i+1
	}
	next := &p.t[to+1]
	return to > i+1 && (next.kind == tComma || next.kind == tStop || next.kind == tSemi)
}

// remarkWords begin a bracket that only explains.
var remarkWords = map[string]bool{
	"see": true, "note": true, "same": true, "that": true, "this": true, "these": true, "here": true, "mark": true, "pm": true, "optional": true,
	"you": true, "it": true, "if": true, "tip": true, "photo": true, "i.e": true, "ie": true, "eg": true, "first": true, "corner": true, "beg": true, "shell": true,
	"v-st": true, "made": true, "as": true, "a": true, "all": true, "or": true, "remember": true, "make": true, "and": true, "right": true, "left": true, "side": true,
}

// closesRow reports whether nothing is worked from token i on: only joins, turns, further counts and remarks.
func (p *parser) closesRow(i int) bool {
	for i < p.end {
		t := &p.t[i]
		switch t.kind {
		case tComma, tStop, tSemi, tDash, tColon:
			i++
			continue
		case tOpen:
			if t.n >= p.end {
				return false
			}
			i = t.n + 1
			continue
		case tWord:
			switch t.word {
			case wTurn, wJoin, wFasten, wDo, wCh, wCut, wPlace, wMarker, wMarked, wChange, wWith, wDrop, wWithout, wLeave, wRemove, wMove, wStuff, wWork, wContinue, wNot:
				return true
			}
			return t.low == "sl" || t.low == "ss" || t.low == "mark" || t.low == "stuff" || t.low == "invisible"
		case tQuote:
			return true
		}
		return false
	}
	return true
}

// within reads the tokens between two places as a window of their own.
func (p *parser) within(from, to int, read func()) {
	i, end := p.i, p.end
	p.i, p.end = from, to
	read()
	p.i, p.end = i, end
}

// bracket reads a bracket as a clause, a claim, or words about the clause before it.
func (p *parser) bracket(b *body, closed int) bool {
	i := p.i
	to := p.t[i].n
	if to >= p.end { // never closed: read on as though it were not there
		p.i++
		return true
	}
	switch p.bracketAt(i) {
	case claim:
		var cs []Claim
		p.within(i+1, to, func() { cs, _ = p.claimList(true) })
		b.claims = append(b.claims, cs...)
		p.i = to + 1
		b.closed = closed
		return true
	case list:
		return false
	case remark:
		p.i = to + 1
		b.closed = closed
		p.remarkBracket(b, i, to)
		return true
	}
	if to == i+2 && len(b.out) == 0 && p.yarnAlone(i+1) { // "Row 5: (A) sc in each st"
		p.i = i + 1
		y := &Yarn{Name: p.yarnWords(), How: "with"}
		p.i = to + 1
		y.placed = p.placed(i)
		b.out = append(b.out, y)
		return true
	}
	g := p.groupBody()
	p.groupRest(b, g, i)
	return true
}

// yarnAlone reports whether token k is the name of a yarn.
func (p *parser) yarnAlone(k int) bool {
	i := p.i
	p.i = k
	ok := p.yarnName(0)
	p.i = i
	return ok
}

// groupBody reads the clauses of the bracket at the next token.
func (p *parser) groupBody() *Group {
	i := p.i
	to := p.t[i].n
	g := &Group{Bracket: p.t[i].bracket}
	if g.Bracket != '[' {
		g.Bracket = '('
	}
	last, open := p.last, p.open
	p.open = 0
	p.within(i+1, to, func() { g.Body, _ = p.clauses() })
	p.open = open
	if len(g.Body) == 0 {
		p.last = last
	}
	p.i = to + 1
	return g
}

// groupRest reads how often and where a group is worked, in either order.
func (p *parser) groupRest(b *body, g *Group, i int) {
	for range 3 {
		k := p.i
		if g.Extent.Kind == NotSaid {
			p.eatKind(tHyphen)
			if e, ok := p.extent(); ok {
				g.Extent = e
				continue
			}
			p.i = k
		}
		if g.In == nil {
			p.eat(wWorking)
			if t, ok := p.target(); ok {
				in := t
				g.In = &in
				continue
			}
			p.i = k
		}
		break
	}
	if g.Extent.Kind == NotSaid && g.In != nil && p.kindAt(0, tComma) {
		k := p.i
		p.i++
		if e, ok := p.looseTimes(); ok {
			g.Extent = e
		} else {
			p.i = k
		}
	}
	p.eatFor()
	if g.In == nil && g.Extent.Kind == NotSaid && p.countsInGroup(b, g, i) {
		return
	}
	g.placed = p.placed(i)
	b.out = append(b.out, g)
}

// countsInGroup reads "ch 4 (dc, ch 1)": what the chain straight before it stands for.
func (p *parser) countsInGroup(b *body, g *Group, i int) bool {
	n := len(b.out)
	if n == 0 || i == 0 || p.t[i-1].kind == tComma || p.t[i-1].kind == tSemi || p.t[i-1].kind == tStop || len(g.Body) == 0 || len(g.Body) > 2 {
		return false
	}
	ch, ok := b.out[n-1].(*Chain)
	if !ok || ch.Says != ChainUnsaid {
		return false
	}
	m, ok := g.Body[0].(*Make)
	if !ok || m.Count.Said || m.In.Said() {
		return false
	}
	if len(g.Body) == 2 {
		c, ok := g.Body[1].(*Chain)
		if !ok {
			return false
		}
		ch.Plus = c.Count
	}
	ch.Says, ch.As = SaysCounts, m.Stitch
	ch.Span.To = p.since(i).To
	return true
}

// eatFor passes over "for corner", "for thumb".
func (p *parser) eatFor() {
	if !p.is(wFor) || p.lengthAt(1) {
		return
	}
	i := p.i
	p.i++
	for k := 0; k < 4 && p.is(wCorner, unknown, wLeft, wRight, wFront, wBack, wFirst, wOther, wA, wSide, wLoop, wTurning, wTch, wCh, wEdge) && !p.at(0).is; k++ {
		p.i++
	}
	if p.i == i+1 {
		p.i = i
	}
}

// remarkBracket reads words in brackets about what stands before them: what a chain counts as, or a remark.
func (p *parser) remarkBracket(b *body, i, to int) {
	span := source.Span{From: p.t[i].from, To: p.t[to].to}
	var c Counts
	ok, counts := false, false
	p.within(i+1, to, func() {
		c, ok = p.countsAs()
		for k := i + 1; k < to; k++ {
			counts = counts || p.t[k].word == wCount
		}
		for k := p.i; ok && k < to; k++ { // "counts as dc and something of a chain" must not be half understood
			ok = p.t[k].word != wCh && p.t[k].kind != tNumber
		}
	})
	if !ok && counts {
		u := &UnreadClause{placed: placed{Span: span, Only: p.only}, Text: p.text[span.From:span.To], Wanted: "what the chain counts as: (counts as dc, ch 1)"}
		b.out, b.unread = append(b.out, u), append(b.unread, u)
		return
	}
	if !ok {
		text := stitch.Carry(p.text[p.t[i].to:p.t[to].from], p.in.Terms, stitch.US)
		b.out = append(b.out, &Remark{placed{Span: span, Only: p.only}, text, true})
		return
	}
	if n := len(b.out); n > 0 {
		switch before := b.out[n-1].(type) {
		case *Skip:
			c.Skipped = true
		case *Make:
			c.Skipped = c.Skipped || before.In.Where == FromHook
		}
		if ch, is := b.out[n-1].(*Chain); is && ch.Says == ChainUnsaid {
			ch.Says, ch.As, ch.Plus = c.Says, c.As, c.Plus
			ch.Span.To = span.To
			return
		}
	}
	c.placed = placed{Span: span, Only: p.only}
	b.out = append(b.out, &c)
}

// countsAs reads what a chain counts as, up to the end of the window: "counts as dc", "does not count as a st", "not a st", "counts as
// dc, ch 2", "counts as dc + ch 2", "skipped 2 ch count as dc".
func (p *parser) countsAs() (Counts, bool) {
	c := Counts{}
	p.eat(wThis, wThat, wBeg, wBeginning, wTurning, wTch)
	p.eat(wFirst)
	if p.eat(wSkipped) {
		c.Skipped = true
	}
	if p.is(wBeg, wBeginning, wTurning) {
		p.i++
	}
	p.number()
	p.eat(wBeg, wTurning)
	if p.eat(wCh) {
		p.chainsAfter()
	}
	if p.low(0) == "sts" || p.low(0) == "st" {
		p.i++
	}
	not := false
	switch {
	case p.is(wDo) && p.isAt(1, wNot):
		p.i += 2
		not = true
	case p.is(wDo):
		not = p.low(0) == "don't" || p.low(0) == "doesn't"
		p.i++
	case p.eat(wNot):
		not = true
	}
	p.eat(wBe)
	if p.eat(wNot) {
		not = true
	}
	counted := p.eat(wCount) || p.eat(wCounting)
	if !counted && !not && !p.is(wAs) || not && !counted && !p.is(wA, wSt, wAs) {
		return c, false
	}
	if !p.eat(wAs) {
		p.eat(wIn)
	}
	if not {
		c.Says = SaysNot
		for !p.done() {
			p.i++
		}
		return c, true
	}
	c.Says = SaysCounts
	p.eat(wA)
	if t := p.at(0); !p.eat(wFirst) && t.kind == tOrdinal && t.n == 1 {
		p.i++
	}
	if n, ok := p.count(); ok && n.Plain != 1 {
		c.Sts = n
	}
	if s, ok := p.stitchHere(); ok {
		c.As = s
	} else if !p.eat(wSt) {
		p.eat(wFirst)
		p.eat(wSt)
	}
	p.eatKind(tComma)
	p.eatKind(tPlus)
	if p.eat(wAnd) || p.low(0) == "plus" && p.eat(unknown) {
		p.eatKind(tComma)
	}
	if p.eat(wCh) {
		p.eatKind(tHyphen)
		c.Plus, _ = p.count()
		p.eat(wSp)
	} else if n, ok := p.count(); ok && p.eat(wCh) {
		c.Plus = n
	}
	return c, true
}
