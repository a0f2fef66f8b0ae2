package notation

import (
	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

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
	if p.low(0) == "always" {
		p.i++
	}
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

// countsHere reads "counts as dc", "counting as dc and ch 1" up to the next comma or stop.
func (p *parser) countsHere() (Counts, bool) {
	i, end := p.i, p.i
	for end < p.end && p.t[end].kind != tComma && p.t[end].kind != tStop && p.t[end].kind != tSemi {
		end++
	}
	var c Counts
	ok := false
	p.within(i, end, func() { c, ok = p.countsAs() })
	if ok {
		p.i = end
	}
	return c, ok
}

// ownNoun is a place for clauses that begin with a noun: "turning ch as 1 dc", "other side: …".
func (p *parser) ownNoun() (Clause, bool) {
	i := p.i
	switch {
	case p.is(wOther, wOpposite) && p.isAt(1, wSide):
		p.i += 2
		if p.eat(wOf) {
			p.noun()
		}
		t := Target{Where: OtherSide, Span: p.since(i)}
		return &Along{placed: p.placed(i), In: t}, true
	case p.is(wTurning, wTch, wSkipped, wBeg) || p.is(wFirst) && p.isAt(1, wCh):
		if c, ok := p.countsHere(); ok {
			c.placed = p.placed(i)
			return &c, true
		}
		p.i = i
	}
	return nil, false
}
