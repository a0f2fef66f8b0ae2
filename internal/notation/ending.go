package notation

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
