package notation

import (
	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

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

// goesOn reports whether a place begins k tokens on, or a number and a place: "and in each ch", "and 1 in next".
func (p *parser) goesOn(k int) bool {
	if p.isAt(k, wIn, wNext, wEach, wFirst, wLast, wEvery) {
		return true
	}
	t := p.at(k)
	return (t.kind == tNumber || t.kind == tWord && t.word == wNumberWord) && p.isAt(k+1, wIn)
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

// make reads a stitch, with how many of it and where. The count is what stood before it.
func (p *parser) make(count Count) (Clause, bool) {
	i := p.i
	if count.Said {
		i = p.tokenAt(count.Span, i)
	}
	s, ok := p.stitchHere()
	if !ok || p.eatKind(tHyphen) {
		return nil, false
	}
	return p.makeRest(&Make{Stitch: s, Count: count, Form: formOf(count)}, i)
}

// tokenAt returns the index of the token a span begins with, looking back from i.
func (p *parser) tokenAt(s source.Span, i int) int {
	for i > 0 && p.t[i].from > s.From {
		i--
	}
	return i
}

// makeRest reads what follows the stitch: a number, how often, where.
func (p *parser) makeRest(m *Make, i int) (Clause, bool) {
	s := m.Stitch
	p.eat(wSt) // "dc st"
	p.aloud()
	if !m.Count.Said {
		p.after(m)
	}
	if c, ok := p.evenly(m, i); ok {
		return c, true
	}
	ok := p.targetTo(&m.In)
	if !ok {
		if e, said := p.till(); said {
			m.In = Target{Where: RestUnnamed, Till: e, Span: e.Span}
			ok = true
		}
	}
	if ok {
		if p.loops && s.Loop == stitch.BothLoops {
			m.Stitch.Loop = p.loop
		}
		if m.In.Where == Unsaid && m.In.Till.Kind != NotSaid {
			m.In.Where = RestUnnamed
		}
		p.trailingLoop(m)
		p.loops = false
	}
	p.inYarn(m)
	m.LastIn = p.lastOne()
	p.eatFor()
	p.last = s
	m.placed = p.placed(i)
	return m, true
}

// aloud passes over words that say how rather than what.
func (p *parser) aloud() {
	for p.is(wTight, wAlso, wPlain) || p.is(wEach) && p.kindAt(1, tComma) {
		p.i++
	}
}

// after reads the number behind a stitch: "sc 3", "sc3", "dc 5 times", "inc x 6", "sc2tog twice".
func (p *parser) after(m *Make) {
	if p.kindAt(0, tComma) || p.kindAt(0, tStop) || p.kindAt(0, tShut) || p.done() || p.is(wIn, wTo, wAcross, wAround, wOver, wUntil) {
		return
	}
	i := p.i
	if e, ok := p.times(); ok {
		switch e.Kind {
		case Times, InAll:
			m.Form, m.Count = TimesAfter, e.Count
			return
		}
		p.i = i
	}
	if p.kindAt(0, tOpen) && p.bracketAt(p.i) != list {
		return
	}
	if c, ok := p.count(); ok {
		if p.is(wTimes, wMore, wTog) || p.kindAt(0, tHyphen) || p.at(0).is && !p.is(wSt) && p.kindAt(0, tWord) && !p.kindAt(-1, tShut) && p.stitchBehind() {
			p.i = i
			return
		}
		m.Form, m.Count = NumberAfter, c
		p.eat(wSt) // "sc 40 sts along edge"
	}
}

// stitchBehind reports whether the number just read belongs to the stitch behind it: in "sc 3 hdc" it cannot be told, and the
// number goes with what follows only where a comma stood before, which is handled by the caller.
func (p *parser) stitchBehind() bool { return false }

// trailingLoop reads loops named behind the place: "sc in each st in back loop", "sc in next 5 sts BLO".
func (p *parser) trailingLoop(m *Make) {
	if !p.kindAt(0, tWord) {
		return
	}
	i := p.i
	p.eat(wIn)
	p.eat(wWorking)
	p.eat(wIn)
	if p.loopsHere() {
		p.eat(wOnly)
		m.Stitch.Loop = p.loop
		if e, ok := p.till(); ok && m.In.Till.Kind == NotSaid {
			m.In.Till = e
		}
		return
	}
	p.i = i
}

// lastOne reads ", the last one in top of beg ch-3", ", working last sc in top of ch 3".
func (p *parser) lastOne() *Target {
	if k := p.kindAt(0, tComma); !k || !p.isAt(1, wLast, wWith, wWorking, wMaking) {
		if k || !p.is(wLast, wWith, wWorking, wMaking) {
			return nil
		}
	}
	i := p.i
	p.eatKind(tComma)
	p.eat(wWith, wWorking, wMaking)
	if !p.eat(wLast) {
		p.i = i
		return nil
	}
	if p.low(0) == "one" {
		p.i++
	} else if _, ok := p.stitchHere(); !ok && !p.eat(wSt) {
		p.i = i
		return nil
	}
	loop, loops := p.loop, p.loops
	t, ok := p.target()
	p.loop, p.loops = loop, loops
	if !ok {
		p.i = i
		return nil
	}
	last := t // so that only a target that is there goes to the heap
	return &last
}

// numbered reads a clause that begins with a number: "5 sc", "2ch", "3 more dc in that ch", "2 in next".
func (p *parser) numbered(b *body) ([]Clause, bool) {
	i := p.i
	if s, ok := p.stitchHere(); ok { // "3-dc cluster"
		c, ok := p.makeRest(&Make{Stitch: s}, i)
		return p.single(c), ok
	}
	var c Count
	if p.is(wA) {
		p.i++
		c = Count{Said: true, Plain: 1, Span: p.since(i)}
	} else if got, ok := p.count(); ok {
		c = got
	} else {
		return nil, false
	}
	if p.is(wSt) && p.isAt(1, wOf) { // "16 stitches of close double crochet"
		p.i += 2
	}
	more := p.eat(wMore, wExtra)
	p.eatKind(tHyphen)
	if p.is(wCh) && !(p.kindAt(1, tHyphen) && !p.isAt(2, wSp)) {
		p.i++
		return p.single(p.chainRest(c, i)), true
	}
	if p.is(wInc, wDec) {
		if ch, ok := p.changes(c, i); ok {
			return p.single(ch), true
		}
	}
	if cs, ok := p.slipCount(c, i); ok {
		return cs, true
	}
	if m, ok := p.make(c); ok {
		m = p.joined(m, i)
		if mk, is := m.(*Make); is && more {
			mk.More = true
		} else if is && p.betweenEach(b, mk) {
			return nil, true
		}
		return p.withTail(m, i)
	}
	if p.last != (stitch.Stitch{}) && p.is(wIn, wOver, wBetween, wAround, wUnder, wOn, wPlain) {
		p.eat(wPlain)
		m := &Make{Stitch: p.last, Count: c, Form: NumberFirst}
		if t, ok := p.target(); ok {
			m.In = t
			m.placed = p.placed(i)
			return p.withTail(m, i)
		}
	}
	return nil, false
}

// joined reads stitches that "and" joins in one place: "bpdc and fpdc around next st". Only the last of them names it.
func (p *parser) joined(first Clause, i int) Clause {
	m, ok := first.(*Make)
	if !ok || m.In.Said() || !p.is(wAnd) {
		return first
	}
	k := p.i
	body := []Clause{first}
	for len(body) < 8 && p.eat(wAnd) {
		c, _ := p.count()
		next, ok := p.make(c)
		if !ok {
			break
		}
		n, ok := next.(*Make)
		if !ok {
			break
		}
		body = append(body, n)
		if n.In.Said() {
			if n.In.Where == RestUnnamed || n.In.Till.Kind != NotSaid && !n.In.Each {
				break
			}
			in := n.In
			n.In = Target{}
			n.Span.To = in.Span.From
			return &Group{placed: p.placed(i), Body: body, In: &in}
		}
	}
	p.i = k
	return first
}

// betweenEach reads "9 treble over each loop, 1 double between": both are worked in turn all along.
func (p *parser) betweenEach(b *body, m *Make) bool {
	if m.In.Where != Between || m.In.Noun.Kind != NoNoun || len(b.out) == 0 {
		return false
	}
	first, ok := b.out[len(b.out)-1].(*Make)
	if !ok || !first.In.Each {
		return false
	}
	each := *first
	each.In.Each, each.In.Where, each.In.Till = false, Next, Extent{}
	r := &Repeat{Body: []Clause{&each, m}, Stars: 1, Extent: Extent{Kind: AcrossRow, Span: m.Span}}
	r.Span = first.Span.Through(m.Span)
	b.out[len(b.out)-1] = r
	return true
}

// withTail wraps a stitch with a place in a group when it is told how often: "sc in next st 6 times".
func (p *parser) withTail(c Clause, i int) ([]Clause, bool) {
	m, ok := c.(*Make)
	if !ok || !m.In.Said() {
		return p.single(c), true
	}
	if p.eatAll(wTo, wJoin) || p.eatAll(wTo, wClose) { // "ch 1, hdc in first sc to join"
		in := m.In
		m.In = Target{}
		return p.single(&Join{placed: p.placed(i), With: []Clause{m}, In: in}), true
	}
	if p.kindAt(0, tComma) || p.kindAt(0, tStop) || p.kindAt(0, tSemi) || p.done() {
		return p.single(c), true
	}
	k := p.i
	if e, ok := p.times(); ok && (e.Kind == Times || e.Kind == InAll) {
		return p.single(&Group{placed: p.placed(i), Body: []Clause{m}, Extent: e}), true
	}
	p.i = k
	return p.single(c), true
}

// elided reads "and in each ch across", "and each st to end", "1 in next": the stitch before goes on.
func (p *parser) elided(b *body) ([]Clause, bool) {
	if len(b.out) == 0 {
		return nil, false
	}
	i := p.i
	and := p.eat(wAnd)
	and = p.eat(wThen) || and
	var n Count
	if and && !p.is(wIn) {
		n, _ = p.count()
	}
	if !p.goesOn(0) {
		p.i = i
		return nil, false
	}
	last := lastMake(b.out)
	if last == nil || !last.In.Said() {
		p.i = i
		return nil, false
	}
	t, ok := p.target()
	m := &Make{Stitch: last.Stitch, Count: n, Form: formOf(n), In: t, And: true}
	p.inYarn(m)
	if !ok || !and && p.at(0).kind != tComma && p.at(0).kind != tSemi && p.at(0).kind != tStop && !p.done() && !p.is(wAnd) {
		p.i = i
		return nil, false
	}
	if !n.Said { // "2 sc in first and last st"
		m.Count, m.Form = last.Count, last.Form
	}
	if p.loops {
		m.Stitch.Loop = p.loop
	}
	p.trailingLoop(m)
	p.inYarn(m)
	m.placed = p.placed(i)
	return p.single(m), true
}

// inYarn reads the yarn of "sc in next 10 sts in A".
func (p *parser) inYarn(m *Make) {
	if p.is(wIn, wWith, wUsing) && p.yarnName(1) && p.at(1).to-p.at(1).from <= 2 {
		p.i++
		m.Yarn = p.yarnWords()
	}
}

// startingIn reads "starting in 3rd ch from hook,": the chains before it are skipped.
func (p *parser) startingIn() (Clause, bool) {
	i := p.i
	if !p.eat(wStarting, wBeginning) {
		return nil, false
	}
	p.eat(wWith)
	t, ok := p.target()
	if !ok {
		var at Target
		ok = p.place(&at)
		t = at
	}
	if !ok || t.Where != FromHook || !t.Nth.Said || !t.Nth.plain() || t.Nth.Plain < 2 {
		p.i = i
		return nil, false
	}
	in := Target{Where: FromHook, Count: Count{Said: true, Plain: t.Nth.Plain - 1, Span: t.Nth.Span}, Noun: t.Noun, Span: p.since(i)}
	return &Skip{placed: p.placed(i), In: in}, true
}

// onTheWay reads "…, working 3 sc in each corner": it is met on the way of the clause before.
func (p *parser) onTheWay(b *body) ([]Clause, bool) {
	if !p.is(wWorking, wMaking) || len(b.out) == 0 {
		return nil, false
	}
	i := p.i
	p.i++
	if p.kindAt(0, tOpen) && p.bracketAt(p.i) == group {
		g := p.groupBody()
		if t, ok := p.target(); ok && t.Each {
			g.In, g.OnTheWay = &t, true
			g.placed = p.placed(i)
			return p.single(g), true
		}
	} else if cs, ok := p.numbered(b); ok && len(cs) == 1 {
		if m, ok := cs[0].(*Make); ok && m.In.Each {
			m.OnTheWay = true
			return cs, true
		}
	}
	p.i = i
	return nil, false
}

// lastMake returns the stitch worked last, behind which remarks may stand.
func lastMake(out []Clause) *Make {
	for k := len(out) - 1; k >= 0; k-- {
		switch c := out[k].(type) {
		case *Make:
			return c
		case *Counts, *Remark:
		default:
			return nil
		}
	}
	return nil
}

// targetFirst reads a place that stands before what is worked there: "in same ch (ch 1, dc) 3 times", "in next st work 3 dc",
// "along row ends 3 sc, 3 hdc".
func (p *parser) targetFirst(b *body) ([]Clause, bool) {
	i := p.i
	if p.low(0) == "rotate" || p.is(wTurn) {
		for p.kindAt(0, tWord) && (p.is(unknown, wTurn, wPiece, wWork, wTo, wAnd)) {
			p.i++
		}
	}
	p.eat(wWorking)
	t, ok := p.target()
	if !ok {
		p.i = i
		return nil, false
	}
	switch t.Where {
	case OtherSide, RowEnds, Both:
		p.eatKind(tComma)
		return p.single(&Along{placed: p.placed(i), In: t}), true
	}
	if t.Noun.Kind == ARepeat {
		p.i = i
		return nil, false
	}
	p.eatKind(tComma)
	p.eat(wWork, wMake)
	if p.kindAt(0, tOpen) && p.bracketAt(p.i) == group {
		g := p.groupBody()
		g.In = &t
		if e, ok := p.extent(); ok {
			g.Extent = e
		}
		g.placed = p.placed(i)
		return p.single(g), true
	}
	if cs, ok := p.clauseMake(); ok {
		if m, ok := cs.(*Make); ok && m.In.Where == Unsaid {
			m.In = t
			m.placed = p.placed(i)
			return p.single(m), true
		}
	}
	p.i = i
	return nil, false
}

func (p *parser) clauseMake() (Clause, bool) {
	c, _ := p.count()
	return p.make(c)
}

// looseTimes reads a number of times that stands as a clause of its own: "…, 8 times".
func (p *parser) looseTimes() (Extent, bool) {
	if p.kindAt(0, tWord) && !p.is(wOnce, wTwice, wThrice, wX, wAnother, wTotal, wA, wFor, wNumberWord) {
		return Extent{}, false
	}
	i := p.i
	e, ok := p.times()
	if !ok || p.is(wIn) {
		p.i = i
		return Extent{}, false
	}
	return e, true
}

// applyTimes gives a loose number of times to what it is said of: the open repeat, the group before, or the row so far.
func (p *parser) applyTimes(b *body, closed int, e Extent) bool {
	if n := len(b.stars); n > 0 {
		p.close(b, b.stars[n-1], e)
		return true
	}
	if len(b.out) == 0 {
		return false
	}
	switch before := b.out[len(b.out)-1].(type) {
	case *Repeat:
		if closed > 0 || before.Extent.Kind == NotSaid {
			before.Extent = e
			return true
		}
	case *Group:
		if before.Extent.Kind == NotSaid {
			before.Extent = e
			return true
		}
	}
	from := 0
	for from < len(b.out) && opens(b.out[from]) {
		from++
	}
	if from == len(b.out) {
		return false
	}
	g := &Group{Body: append([]Clause{}, b.out[from:]...), Bracket: '[', Extent: e}
	g.Span = source.Span{From: g.Body[0].At().From, To: e.Span.To}
	b.out = append(b.out[:from], g)
	return true
}

// opens reports whether a clause belongs to the start of a row rather than to what a repeat of the whole row repeats.
func opens(c Clause) bool {
	switch c := c.(type) {
	case *Turn, *Yarn, *Remark, *Rejoin, *Through, *Counts:
		return true
	case *Chain:
		return c.Says != ChainUnsaid
	}
	return false
}
