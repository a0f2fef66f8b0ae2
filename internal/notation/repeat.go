package notation

import "foundrow/internal/source"

// star reads a star: it opens a repeat, closes one, or marks where the last time stops.
func (p *parser) star(b *body, closed int) bool {
	i := p.i
	rank := p.at(0).n
	if rank == 1 && p.open == 0 && p.kindAt(-1, tShut) && p.kindAt(1, tNumber) && (!p.kindAt(2, tWord) || p.isAt(2, wTimes)) { // "(…) *8"
		if e, ok := p.times(); ok {
			return p.applyTimes(b, closed, e)
		}
	}
	for k := len(b.stars) - 1; k >= 0; k-- {
		if b.stars[k].rank != rank {
			continue
		}
		p.i++
		s := b.stars[k]
		p.closePair(b, s)
		return true
	}
	p.i = i + 1
	if n := len(b.stars); n > 0 && rank > b.stars[n-1].rank && !p.ownRepeat(rank) {
		b.stars[n-1].mark = len(b.out) - b.stars[n-1].at + 1
		return true
	}
	b.stars = append(b.stars, star{rank: rank, at: len(b.out), token: i})
	p.open++
	return true
}

// ownRepeat reports whether a repeat of the rank is closed by its own stars further on: "rep from **".
func (p *parser) ownRepeat(rank int) bool {
	for k := p.i; k < p.end; k++ {
		t := &p.t[k]
		if t.kind == tStar && t.n == rank && p.t[k-1].kind == tWord && p.t[k-1].word == wFrom {
			return true
		}
	}
	return false
}

// closePair ends a repeat at its second star and reads how often, which may be said by a phrase of its own: "*…*; rep from * to *
// twice more", "*…* 5 times", "*…*, rep around".
func (p *parser) closePair(b *body, s star) {
	p.eatKind(tHyphen)
	if e, ok := p.extent(); ok {
		p.close(b, s, e)
		p.endings(b)
		return
	}
	if t, ok := p.inBehind(); ok {
		r := p.close(b, s, Extent{})
		g := &Group{placed: r.placed, Body: r.Body, Bracket: '(', In: &t}
		b.out[len(b.out)-1] = g
		return
	}
	p.close(b, s, Extent{})
	b.closed = len(b.out)
}

// inBehind reads a place straight behind a closing star: "*dc, ch 1, dc* in next st".
func (p *parser) inBehind() (Target, bool) {
	if !p.is(wIn) {
		return Target{}, false
	}
	return p.target()
}

// close ends the repeat that a star opened; whatever was opened within it is reported as never closed.
func (p *parser) close(b *body, s star, e Extent) *Repeat {
	for n := len(b.stars) - 1; n >= 0 && b.stars[n].token != s.token; n-- {
		p.unclosedStar(b, b.stars[n])
		b.stars = b.stars[:n]
	}
	b.stars = b.stars[:len(b.stars)-1]
	p.open = len(b.stars)
	at := min(s.at, len(b.out))
	r := &Repeat{Body: append([]Clause{}, b.out[at:]...), Stars: s.rank, Extent: e}
	r.Until = s.mark
	if r.Until > 0 {
		r.Until--
	}
	r.placed = placed{Span: source.Span{From: p.t[s.token].from, To: max(p.t[s.token].to, p.t[p.i-1].to)}, Only: p.only}
	b.out = append(b.out[:at], r)
	return r
}

// repeat reads a phrase that says to repeat: what stands between the stars, the brackets, the row so far, or other rows.
func (p *parser) repeat(b *body, closed int) bool {
	i := p.i
	if p.is(wRep) && (p.isAt(1, wRow, wRnd) || p.isAt(1, wLast) || p.isAt(1, wPrev) || p.kindAt(1, tOrdinal)) && len(b.stars) == 0 && closed == 0 {
		if l, ok := p.likeRows(); ok {
			b.out = append(b.out, l)
			return true
		}
		p.i = i
	}
	rank, to := p.repeatOf()
	e, said := p.extent()
	if said && e.Kind == Times {
		if p.t[i].word == wFrom { // "then from * to ** once"
			return p.partly(b, rank, to, e)
		}
		if closed == 0 {
			e.Kind = RepeatN // total or more: not settled here
		}
	}
	if !said && p.t[i].word == wFrom {
		p.i = i
		return false
	}
	switch {
	case len(b.stars) > 0:
		s := b.stars[len(b.stars)-1]
		for k := len(b.stars) - 1; rank > 0 && k >= 0; k-- {
			if b.stars[k].rank == rank {
				s = b.stars[k]
				break
			}
		}
		r := p.close(b, s, e)
		if e.Kind == NotSaid {
			r.Extent = Extent{Kind: AcrossRow, Span: p.since(i)}
		}
		p.endings(b)
		return true
	case closed > 0:
		if r, ok := b.out[closed-1].(*Repeat); ok && closed == len(b.out) {
			r.Extent = e
			if e.Kind == NotSaid {
				r.Extent = Extent{Kind: AcrossRow, Span: p.since(i)}
			}
			r.Span.To = p.since(i).To
			p.endings(b)
			return true
		}
	}
	if n := len(b.out); n > 0 && rank == 0 && p.t[i].word == wRep { // "…, turn. Repeat until …" repeats the row
		if _, ok := b.out[n-1].(*Turn); ok && said && (e.Kind == UntilMeasures || e.Kind == UntilMade || e.Kind == UntilLeft) {
			b.out = append(b.out, &Like{placed: p.placed(i), Last: one, Extent: e})
			return true
		}
	}
	if n := len(b.out); n > 0 && (rank == 0 || p.t[i].word == wRep) {
		if g, ok := b.out[n-1].(*Group); ok && rank == 0 && g.Extent.Kind == NotSaid && g.In == nil {
			g.Extent = e
			switch e.Kind {
			case NotSaid:
				g.Extent = Extent{Kind: AcrossRow, Span: p.since(i)}
			case RepeatN: // "(sc 2, inc) repeat 6 times" is 6 in all
				g.Extent.Kind = Times
			}
			p.endings(b)
			return true
		}
	}
	if rank > 0 {
		p.report(p.since(i), "unopened-star", quoted(p.text[p.t[i].from:p.t[p.i-1].to])+" repeats from a star that stands nowhere before it", "write * where the repeat begins")
		span := p.since(i)
		b.out = append(b.out, &UnreadClause{placed: placed{Span: span}, Text: p.text[span.From:span.To]})
		return true
	}
	return p.openFrom(b, e, p.since(i))
}

// openFrom makes a repeat of the row so far, as old texts mean by a bare "repeat".
func (p *parser) openFrom(b *body, e Extent, span source.Span) bool {
	from := 0
	for from < len(b.out) && opensRow(b.out[from]) {
		from++
	}
	if from == len(b.out) {
		return false
	}
	if e.Kind == NotSaid {
		e = Extent{Kind: AcrossRow, Span: span}
	}
	r := &Repeat{Body: append([]Clause{}, b.out[from:]...), Stars: 1, Extent: e}
	r.Span = source.Span{From: r.Body[0].At().From, To: span.To}
	b.out = append(b.out[:from], r)
	p.endings(b)
	return true
}

// opensRow reports whether a clause begins a row and is not repeated with it.
func opensRow(c Clause) bool {
	_, chain := c.(*Chain)
	return chain || opens(c)
}

// repeatOf reads what is repeated: "rep from *", "rep from * to **", "rep * to *", "rep *-*", "rep [ ]", "rep between *s". It returns
// the rank of the star it begins at and that of the mark it ends at.
func (p *parser) repeatOf() (rank, to int) {
	p.eat(wRep, wWork)
	p.eat(wThis, wThat)
	p.eat(wFrom, wBetween)
	if p.kindAt(0, tStar) {
		rank = p.at(0).n
		p.i++
		if p.low(0) == "s" {
			p.i++
		}
		if p.is(wTo, wAnd) && p.kindAt(1, tStar) || p.kindAt(0, tHyphen) && p.kindAt(1, tStar) || p.kindAt(0, tDash) && p.kindAt(1, tStar) {
			to = p.at(1).n
			p.i += 2
		}
		return rank, to
	}
	if t := p.at(0); t.kind == tOpen && t.n == p.i+1 { // "rep [ ] around"
		p.i += 2
	}
	for p.kindAt(0, tWord) && (p.low(0) == "brackets" || p.low(0) == "parentheses" || p.low(0) == "asterisk" || p.low(0) == "asterisks" || p.is(wPatt) || p.is(wFrom) || p.is(wIt) || p.low(0) == "sequence") {
		p.i++
	}
	if p.kindAt(0, tStar) {
		rank = p.at(0).n
		p.i++
	}
	return rank, to
}

// partly reads "then from * to ** once": what stands before the mark is worked again after the repeat.
func (p *parser) partly(b *body, rank, to int, e Extent) bool {
	for k := len(b.out) - 1; k >= 0; k-- {
		r, ok := b.out[k].(*Repeat)
		if !ok || rank > 0 && r.Stars != rank {
			continue
		}
		part := r.Body
		if r.Until > 0 && to > r.Stars {
			part = r.Body[:r.Until]
			r.Until = 0
		}
		b.out = append(b.out, &Group{placed: placed{Span: e.Span, Only: p.only}, Body: part, Bracket: '[', Extent: e})
		return true
	}
	return false
}
