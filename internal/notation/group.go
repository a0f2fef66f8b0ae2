package notation

import (
	"strings"

	"foundrow/internal/source"
)

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

// unbracketed makes a group of "3 dc, ch 2, 3 dc in next ch-2 sp", which is worked in one place though nothing says so. The stitches are
// alike and stand either side of a chain, and only the last of them is told where it goes: a space or a corner, or a stitch that takes
// several. It is asked about, because it could be read stitch by stitch.
func (p *parser) unbracketed(b *body) {
	end := len(b.out) - 1
	if end < 0 {
		return
	}
	last, ok := b.out[end].(*Make)
	if !ok || !last.In.onePlace() || last.And {
		return
	}
	from, low := end, 0
	if n := len(b.stars); n > 0 {
		low = b.stars[n-1].at
	}
	for from-2 >= low {
		chain, isChain := b.out[from-1].(*Chain)
		m, isMake := b.out[from-2].(*Make)
		if !isChain || !isMake || chain.Says != ChainUnsaid || m.In.Said() || m.Stitch != last.Stitch || m.Form != last.Form || last.In.Where != Same && !m.Count.equal(&last.Count) {
			break
		}
		from -= 2
	}
	inStitch := last.In.Noun.Kind == AnyStitch || last.In.Noun.Kind == AStitch
	if from == end || inStitch && (last.Form != NumberFirst || last.Count.plain() && last.Count.Plain < 2) {
		return
	}
	in := last.In
	last.In = Target{}
	g := &Group{Body: append([]Clause{}, b.out[from:]...), Bracket: '(', In: &in}
	g.Span = source.Span{From: b.out[from].At().From, To: last.Span.To}
	g.Only = last.Only
	b.out = append(b.out[:from], g)
	w := writer{terms: p.in.Terms}
	w.clause(g)
	var said strings.Builder
	for _, part := range w.take() {
		part.writeTo(&said, func(int) string { return "n" })
	}
	p.fs.Ask(p.in.File, g.Span, "group-unsaid", quoted(p.text[g.Span.From:g.Span.To])+" is taken as worked all in one place", "write "+said.String())
}

// onePlace reports whether a target is a single place that several stitches may go into.
func (t *Target) onePlace() bool {
	if !t.Said() || t.Count.Said || t.Each || t.Nth.Said || t.Till.Kind != NotSaid || t.Over {
		return false
	}
	switch t.Noun.Kind {
	case ASpace, AnyStitch, AStitch:
		return t.Where == Next || t.Where == Same || t.Where == InSpace || t.Where == First || t.Where == Last
	case AUnit:
		return t.Noun.Name == "corner"
	}
	return false
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
