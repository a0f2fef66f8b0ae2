package notation

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
