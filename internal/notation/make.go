package notation

import (
	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

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
		if m.In.Where == Unsaid && m.In.Till.Kind != NotSaid && m.In.bare() {
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
	for p.is(wTight, wAlso) {
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
		if p.is(wTimes, wMore, wTog) || p.kindAt(0, tHyphen) || p.is(wRow, wRnd) && p.isAt(1, wBelow) {
			p.i = i
			return
		}
		m.Form, m.Count = NumberAfter, c
		p.eat(wSt) // "sc 40 sts along edge"
	}
}

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

// inYarn reads the yarn of "sc in next 10 sts in A".
func (p *parser) inYarn(m *Make) {
	if p.is(wIn, wWith, wUsing) && p.yarnName(1) && p.at(1).to-p.at(1).from <= 2 {
		p.i++
		m.Yarn = p.yarnWords()
	}
}

func (p *parser) clauseMake() (Clause, bool) {
	c, _ := p.count()
	return p.make(c)
}

func formOf(c Count) Form {
	if c.Said {
		return NumberFirst
	}
	return Bare
}
