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
		if p.opensAgain(b, s) {
			break
		}
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

// opensAgain reports whether a star of a rank already open begins another repeat: nothing closed the first, and another is closed
// further on. It never does: the first would have no end.
func (p *parser) opensAgain(*body, star) bool { return false }

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

// endings reads what follows a repeat about its last time, behind whatever separates it.
func (p *parser) endings(b *body) {
	i := p.i
	for p.kindAt(0, tComma) || p.kindAt(0, tSemi) {
		p.i++
	}
	if p.is(wWorking, wWith) && p.isAt(1, wLast) {
		if m, ok := p.lastWorked(b); ok {
			switch r := b.out[len(b.out)-1].(type) {
			case *Repeat:
				r.Ending = []Clause{m}
			case *Group:
				r.Ending = []Clause{m}
			}
			return
		}
	}
	if p.is(wOmit) && p.omits(b) || p.is(wEnding, wEnd) && p.ending(b, len(b.out)) {
		return
	}
	p.i = i
}

// lastWorked reads "working last sc in top of beg ch-3" behind a repeat: where the last stitch of it goes.
func (p *parser) lastWorked(b *body) (*Make, bool) {
	i := p.i
	p.i += 2
	s, ok := p.stitchHere()
	if !ok {
		if m := lastIn(b.out[len(b.out)-1]); m != nil && (p.low(0) == "one" || p.is(wSt)) {
			p.i++
			s, ok = m.Stitch, true
		}
	}
	if t, said := p.target(); ok && said {
		return &Make{placed: p.placed(i), Stitch: s, In: t}, true
	}
	p.i = i
	return nil, false
}

// lastIn returns the stitch that a repeat works last.
func lastIn(c Clause) *Make {
	var body []Clause
	switch c := c.(type) {
	case *Make:
		return c
	case *Repeat:
		body = c.Body
	case *Group:
		body = c.Body
	}
	if len(body) == 0 {
		return nil
	}
	return lastIn(body[len(body)-1])
}

// omits reads "omitting last ch 2": the tail of the last time is left out.
func (p *parser) omits(b *body) bool {
	i := p.i
	p.i++
	p.eat(wLast)
	var instead []Clause
	to := p.endOfEnding()
	p.within(p.i, to, func() { instead, _ = p.clauses() })
	if len(instead) == 0 {
		p.i = i
		return false
	}
	p.i = to
	switch r := b.out[len(b.out)-1].(type) {
	case *Repeat:
		r.Instead = instead
		r.Span.To = p.since(i).To
	case *Group:
		r.Instead = instead
		r.Span.To = p.since(i).To
	default:
		p.i = i
		return false
	}
	return true
}

// ending reads "ending last rep at **", "ending last rep with ch 1 instead of ch 2", "ending with dc in top of tch", "end 1 dc in
// each of last 4 sts", "end with ch 2, 1 dc in last sc".
func (p *parser) ending(b *body, _ int) bool {
	i := p.i
	if !p.eat(wEnding, wEnd) || len(b.out) == 0 {
		p.i = i
		return false
	}
	if p.eat(wOn, wWith) && p.eat(wLast) || p.eat(wLast) {
		p.eat(wRep)
	}
	if p.eat(wLast) {
		p.eat(wRep)
	}
	if p.eat(wAt) && p.kindAt(0, tStar) {
		p.i++
		if r, ok := b.out[len(b.out)-1].(*Repeat); ok && r.Until > 0 {
			r.Last = true
			r.Span.To = p.since(i).To
			return true
		}
		p.i = i
		return false
	}
	if p.eat(wAfter) && p.kindAt(0, tStar) {
		p.i++
	}
	p.eat(wWith)
	from := p.i
	to := p.endOfEnding()
	if to == from {
		p.i = i
		return false
	}
	var ending, instead []Clause
	cut := to
	for k := from; k < to; k++ {
		if p.t[k].kind == tWord && p.t[k].word == wInstead {
			cut = k
		}
	}
	p.within(from, cut, func() { ending, _ = p.clauses() })
	if cut < to {
		k := cut + 1
		if k < to && p.t[k].kind == tWord && p.t[k].word == wOf {
			k++
		}
		p.within(k, to, func() { instead, _ = p.clauses() })
	}
	p.i = to
	switch r := b.out[len(b.out)-1].(type) {
	case *Repeat:
		r.Ending, r.Instead = ending, instead
		r.Span.To = p.since(i).To
	case *Group:
		r.Ending, r.Instead = ending, instead
		r.Span.To = p.since(i).To
	default:
		b.out = append(b.out, ending...)
	}
	return true
}

// endOfEnding finds where the ending stops: at a full stop, a semicolon, a claim, a turn or a join, or the chain before a turn.
func (p *parser) endOfEnding() int {
	k := p.i
	for k < p.end {
		t := &p.t[k]
		switch t.kind {
		case tStop, tSemi, tDash, tEquals, tStar:
			return k
		case tOpen:
			if p.bracketAt(k) == claim || t.n >= p.end {
				return k
			}
			k = t.n
		case tComma:
			if p.turnsBehind(k + 1) {
				return k
			}
		}
		k++
	}
	return k
}

// turnsBehind reports whether only a turn or a join, perhaps with its chain, stands from token k on.
func (p *parser) turnsBehind(k int) bool {
	i := p.i
	defer func() { p.i = i }()
	p.i = k
	if p.is(wTurn, wJoin, wFasten, wDo) || p.low(0) == "sl" || p.low(0) == "ss" {
		return true
	}
	if p.eat(wCh) {
		p.eatKind(tHyphen)
		p.count()
	} else if _, ok := p.count(); !ok || !p.eat(wCh) {
		return false
	}
	p.eatKind(tComma)
	p.eat(wAnd)
	return p.is(wTurn, wTo)
}
