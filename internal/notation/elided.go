package notation

// goesOn reports whether a place begins k tokens on, or a number and a place: "and in each ch", "and 1 in next".
func (p *parser) goesOn(k int) bool {
	if p.isAt(k, wIn, wNext, wEach, wFirst, wLast, wEvery) {
		return true
	}
	t := p.at(k)
	return (t.kind == tNumber || t.kind == tWord && t.word == wNumberWord) && p.isAt(k+1, wIn)
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
	if last == nil || !last.In.Said() || last.In.Over { // "over same st and next 3 sts" is one stitch
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
