package notation

import "foundrow/internal/stitch"

// slip reads a slip stitch: a join, a move along, or a stitch like another.
func (p *parser) slip(b *body) ([]Clause, bool) { return p.slipCount(Count{}, p.i) }

func (p *parser) slipCount(c Count, i int) ([]Clause, bool) {
	k := p.i
	s, ok := p.stitchHere()
	if !ok || s.Name != "sl st" {
		p.i = k
		return nil, false
	}
	if p.eatAll(wTo, wJoin) {
		j := &Join{}
		if t, ok := p.target(); ok {
			j.In = t
		}
		j.placed = p.placed(i)
		return p.single(j), true
	}
	m := &Make{Stitch: s, Count: c}
	if c.Said {
		m.Form = NumberFirst
	} else {
		p.after(m)
	}
	t, ok := p.target()
	if !ok && p.eat(wTo) { // "sl st to first sc"
		t, ok = p.placeTo(p.i - 1)
	}
	switch {
	case !ok:
		if e, said := p.till(); said && e.Kind == ToNext { // "sl st across to next ch-3 sp"
			t := Target{Where: Next, Noun: e.Noun, Span: e.Span}
			return p.single(&Travel{placed: p.placed(i), Stitch: m.Stitch, Count: m.Count, In: []Target{t}}), true
		} else if said {
			m.In = Target{Where: RestUnnamed, Till: e, Span: e.Span}
		}
		m.placed = p.placed(i)
		return p.single(m), true
	case p.eatAll(wTo, wJoin), p.eatAll(wAnd, wJoin), p.eatAll(wTo, wClose):
		return p.single(&Join{placed: p.placed(i), In: t}), true
	}
	if p.loops {
		m.Stitch.Loop = p.loop
	}
	m.In = t
	p.trailingLoop(m)
	if m.Stitch.Loop != stitch.BothLoops && t.Where != Same || t.Each || t.Till.Kind == AcrossRow || t.Till.Kind == ToLast {
		m.placed = p.placed(i)
		return p.single(m), true
	}
	if joinsIn(&t) && !c.Said {
		ring := p.formsRing()
		return p.single(&Join{placed: p.placed(i), In: t, Slip: true, Ring: ring}), true
	}
	tr := &Travel{Stitch: m.Stitch, Count: m.Count, In: []Target{t}}
	for p.is(wAnd) && p.isAt(1, wIn) {
		k := p.i
		p.i++
		t, ok := p.target()
		if !ok {
			p.i = k
			break
		}
		tr.In = append(tr.In, t)
	}
	tr.placed = p.placed(i)
	return p.single(tr), true
}

// joinsIn reports whether a slip stitch in the place closes a round when it comes at its end: the first stitch, the top of the
// beginning chain, a chain of it.
func joinsIn(t *Target) bool {
	switch {
	case t.Edge != nil:
		return false
	case t.Where == TopOf, t.Where == Joining:
		return true
	case t.Where == First && t.Noun.Kind != ASpace && !t.Count.Said:
		return true
	case t.Nth.Said && (t.Of.Kind == AChain || t.Of.Kind == TurningCh) && t.Where != Next:
		return true
	}
	return t.Noun.Kind == TurningCh
}

// placeTo reads a place behind "to".
func (p *parser) placeTo(i int) (Target, bool) {
	var t Target
	if !p.place(&t) {
		p.i = i
		return Target{}, false
	}
	p.finish(&t, i)
	return t, true
}
