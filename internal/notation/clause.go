package notation

import "foundrow/internal/source"

// A star is a repeat that was opened and not yet closed.
type star struct {
	rank, at, token, mark int // mark is one more than the number of clauses before the ** within it
}

// A body is a list of clauses as it is read.
type body struct {
	out    []Clause
	stars  []star
	claims []Claim
	unread []*UnreadClause
	closed int // one more than the index of the repeat closed last by a pair of stars, while nothing else came
}

// clauses reads clauses to the end of the window. Claims met on the way are returned apart.
func (p *parser) clauses() ([]Clause, []Claim) {
	b := body{out: make([]Clause, 0, 8)}
	for {
		p.between()
		if p.done() {
			break
		}
		i := p.i
		if !p.step(&b) {
			p.i = i
			p.addUnread(&b, i)
		}
		if p.i == i {
			p.i++ // cannot happen; a loop that does not move is worse than a word that is lost
		}
	}
	for k := len(b.stars) - 1; k >= 0; k-- {
		p.unclosedStar(&b, b.stars[k])
	}
	for _, u := range b.unread {
		p.reportUnread(u)
	}
	return b.out, b.claims
}

// between passes over what only separates clauses.
func (p *parser) between() {
	for !p.done() {
		switch t := p.at(0); t.kind {
		case tComma, tSemi, tStop, tColon, tPlus:
			if t.kind == tStop {
				p.only = nil // "Sizes L and XL only:" holds to the end of its sentence
			}
			p.i++
		case tWord:
			switch t.word {
			case wThen, wNow, wAlso, wAgain:
				if p.goesOn(1) && t.word == wThen {
					return
				}
				p.i++
			case wAnd:
				if p.goesOn(1) {
					return
				}
				p.i++
			default:
				return
			}
		default:
			return
		}
	}
}

func (p *parser) addUnread(b *body, i int) {
	u := p.unread(i).(*UnreadClause)
	if n := len(b.out); n > 0 {
		if before, ok := b.out[n-1].(*UnreadClause); ok && before.Wanted != "" && (len(b.stars) == 0 || b.stars[len(b.stars)-1].at < n) {
			before.Span.To = u.Span.To
			before.Text = p.text[before.Span.From:before.Span.To]
			return
		}
	}
	b.out = append(b.out, u)
	b.unread = append(b.unread, u)
}

func (p *parser) unclosedStar(b *body, s star) {
	t := p.t[s.token]
	p.report(t.span(), "unclosed-star", quoted(p.text[t.from:t.to])+" opens a repeat that is never closed", "write `rep from * across`, `rep from * 4 more times` or a second star where it ends")
	r := &Repeat{placed: placed{Span: source.Span{From: t.from, To: p.here()}}, Body: append([]Clause{}, b.out[s.at:]...), Stars: s.rank}
	b.out = append(b.out[:s.at], r)
}

// step reads one clause, or a star, or a claim. It reports false when it cannot.
func (p *parser) step(b *body) bool {
	closed := b.closed
	b.closed = 0
	switch t := p.at(0); t.kind {
	case tStar:
		return p.star(b, closed)
	case tOpen:
		return p.bracket(b, closed)
	case tQuote:
		b.out = append(b.out, p.quotedClause())
		return true
	case tDash, tEquals:
		return p.dashed(b)
	case tShut, tHyphen, tSlash, tEdge:
		return false
	}
	if p.is(wSizes, wFor, wAll, wOther) || len(p.in.Sizes) > 0 && p.i > 0 && p.t[p.i-1].kind == tStop {
		if only := p.sizesOnly(); only != nil {
			p.only = only
			return true
		}
	}
	if t := p.at(0); t.kind == tWord && t.is && t.word == unknown && t.stitch.Name != "sl st" { // by far the commonest
		if c, ok := p.clause(b); ok {
			b.out = append(b.out, c...)
			p.unbracketed(b)
			return true
		}
		return false
	}
	if p.bareClaim(b) || p.wordyClaim(b) {
		return true
	}
	if p.is(wRep) || p.is(wWork) && p.kindAt(1, tStar) || p.is(wFrom) && p.kindAt(1, tStar) {
		return p.repeat(b, closed)
	}
	if t := p.at(0); (t.kind == tNumber || t.kind == tSlot) && p.isAt(1, wX) && p.kindAt(2, tOpen) && p.bracketAt(p.i+2) == group { // "6x (sc, inc)"
		i := p.i
		c, _ := p.count()
		p.i++
		g := p.groupBody()
		g.Extent = Extent{Kind: Times, Count: c, Span: c.Span}
		g.placed = p.placed(i)
		b.out = append(b.out, g)
		return true
	}
	if e, ok := p.looseTimes(); ok {
		return p.applyTimes(b, closed, e)
	}
	if p.is(wEnding, wEnd) || p.is(wWith) && p.isAt(1, wLast) {
		if p.ending(b, closed) {
			return true
		}
	}
	c, ok := p.clause(b)
	if !ok {
		return false
	}
	b.out = append(b.out, c...)
	p.unbracketed(b)
	return true
}

// clause reads one clause that begins with a word or a number. Most are one node; "sl st in next 2 sts and in next sp" may be more.
func (p *parser) clause(b *body) ([]Clause, bool) {
	if cs, ok := p.elided(b); ok {
		return cs, true
	}
	if t := p.at(0); t.kind == tWord && t.is && t.word == unknown && t.stitch.Name != "sl st" {
		i := p.i
		if c, ok := p.make(Count{}); ok {
			return p.withTail(p.joined(c, i), i)
		}
		p.i = i
	}
	if cs, ok := p.onTheWay(b); ok {
		return cs, true
	}
	p.eatFiller()
	i := p.i
	if c, ok := p.onlyOn(); ok {
		return p.single(c), true
	}
	if c, ok := p.startingIn(); ok {
		return p.single(c), true
	}
	one := func(c Clause, ok bool) ([]Clause, bool) {
		if !ok {
			p.i = i
			return nil, false
		}
		return p.single(c), true
	}
	if p.low(0) == "mark" {
		if c, ok := p.marker(); ok {
			return p.single(c), true
		}
	}
	if c, ok := p.ownNoun(); ok {
		return p.single(c), true
	}
	t := p.at(0)
	if t.kind == tNumber || t.kind == tSlot || t.kind == tWord && (t.word == wNumberWord || t.word == wA) || t.kind == tOpen {
		return p.numbered(b)
	}
	if t.kind != tWord {
		return nil, false
	}
	switch t.word {
	case wCh:
		if c, ok := p.chain(); ok {
			return p.single(c), true
		}
	case wTurn:
		if p.isAt(1, wTo) && p.isAt(2, wWork) {
			if c, ok := p.targetFirst(b); ok {
				return c, true
			}
			p.i = i
		}
		p.i++
		p.eat(wPiece, wWork)
		return one(&Turn{placed: p.placed(i)}, true)
	case wDo:
		if c, ok := p.doNot(); ok {
			return p.single(c), true
		}
	case wWithout:
		if p.eatAll(wWithout, wTurning) {
			return one(&Turn{placed: p.placed(i), Not: true}, true)
		}
	case wJoin, wRejoin:
		if c, ok := p.join(); ok {
			return p.single(c), true
		}
	case wFasten, wCut:
		if c, ok := p.fasten(); ok {
			return p.single(c), true
		}
	case wSkip:
		return one(p.skip())
	case wLeave:
		if c, ok := p.leave(); ok {
			return p.single(c), true
		}
	case wInc, wDec:
		if c, ok := p.change(); ok {
			return p.single(c), true
		}
	case wWith, wUsing, wChange, wDrop, wPull, unknown:
		if c, ok := p.yarn(); ok {
			return p.single(c), true
		}
	case wPlace, wMarker, wMove, wRemove:
		if c, ok := p.marker(); ok {
			return p.single(c), true
		}
	case wLoops, wBack, wFront, wBoth, wThrough, wWorking:
		if c, ok := p.through(); ok {
			return p.single(c), true
		}
	case wIn:
		if c, ok := p.through(); ok {
			return p.single(c), true
		}
	case wContinue, wAs, wSame, wWork:
		if c, ok := p.like(); ok {
			return p.single(c), true
		}
	}
	p.i = i
	if t.word == wWork || t.word == wContinue {
		if c, ok := p.goOn(placed{}); ok && c.Change == 0 && !c.Rows.Said {
			c.placed = p.placed(i)
			return p.single(c), true
		}
		p.i = i
	}
	if cs, ok := p.slip(b); ok {
		return cs, true
	}
	if c, ok := p.make(Count{}); ok {
		return p.withTail(p.joined(c, i), i)
	}
	if c, ok := p.targetFirst(b); ok {
		return c, true
	}
	if c, ok := p.remarkHere(); ok {
		return p.single(c), true
	}
	return nil, false
}

func (p *parser) placed(i int) placed { return placed{Span: p.since(i), Only: p.only} }

// eatFiller passes over verbs that say nothing more than what follows: "work 3 dc in ring", "make 21 trebles".
func (p *parser) eatFiller() {
	if p.is(wBeginning, wBeg) && p.isAt(1, wWith) || p.is(wStarting) && p.isAt(1, wWith) && p.isAt(2, wA) {
		p.i += 2
		if p.is(wA) {
			p.i++
		}
	}
	if p.low(0) == "pick" && p.isAt(1, wUp) && p.isAt(2, wAnd) {
		p.i += 3
	}
	for p.is(wWork, wMake, wMaking, wWorking) {
		next := p.at(1)
		switch {
		case next.kind == tNumber, next.kind == tSlot, next.kind == tOpen, next.is, next.kind == tWord && (next.word == wNumberWord || next.word == wA || next.begins || next.word == wIn || next.word == wCh || next.word == wInc || next.word == wDec):
			if p.is(wWorking) && (next.word == wIn || next.word == wLast) || next.word == wIn && p.isAt(2, wPatt) {
				return
			}
			p.i++
		default:
			return
		}
	}
}
