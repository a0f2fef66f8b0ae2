package notation

// join reads "join", "join with sl st in first sc", "join with ch 1 and hdc in top of ch-3", "join B in first st", "rejoin yarn in next
// free st".
func (p *parser) join() (Clause, bool) {
	i := p.i
	again := p.is(wRejoin)
	p.i++
	p.eat(wRnd)
	p.eat(wRing)
	if again || p.is(wYarn, wColour) || p.yarnName(0) {
		r := &Rejoin{}
		r.Yarn = p.yarnWords()
		p.joinsWith(r)
		if t, ok := p.target(); ok {
			r.In = t
		} else if p.eat(wTo) {
			if t, ok := p.placeTo(p.i - 1); ok {
				r.In = t
			}
		}
		p.joinsWith(r)
		r.placed = p.placed(i)
		return r, true
	}
	j := &Join{}
	if p.eat(wWith, wUsing) {
		p.eat(wA)
		if !p.joinWith(j) {
			p.i = i
			return nil, false
		}
	}
	if !j.In.Said() {
		if t, ok := p.target(); ok {
			j.In = t
		} else if p.eat(wTo) {
			if t, ok := p.placeTo(p.i - 1); ok {
				j.In = t
			}
		}
	}
	if s, n := p.readStitch(); n > 0 && s.Name == "sl st" && !j.In.Said() { // "join sl st in first sc"
		p.i += n
		if t, ok := p.target(); ok {
			j.In = t
		}
	}
	j.Ring = p.formsRing()
	p.eatFor()
	j.placed = p.placed(i)
	return j, true
}

// joinsWith reads the stitch that new yarn is joined with; a slip stitch needs no saying.
func (p *parser) joinsWith(r *Rejoin) {
	i := p.i
	if !p.eat(wWith, wUsing) {
		return
	}
	p.eat(wA)
	s, ok := p.stitchHere()
	if !ok {
		p.i = i
		return
	}
	if s.Name != "sl st" {
		r.With = s
	}
}

// formsRing reads "to form a ring".
func (p *parser) formsRing() bool {
	i := p.i
	if p.eatAll(wTo, wForm) || p.eatAll(wTo, wMake) || p.eat(wForm) || p.eat(wIn) {
		p.eat(wA)
		if p.eat(wRing) {
			return true
		}
	}
	p.i = i
	return false
}

// joinWith reads what closes a round when it is not a slip stitch alone.
func (p *parser) joinWith(j *Join) bool {
	if low := p.low(0); (low == "invisible" || low == "seamless" || low == "inv") && p.isAt(1, wJoin) {
		p.i += 2
		return true
	}
	for {
		k := p.i
		switch {
		case p.is(wCh):
			c, ok := p.chain()
			if !ok {
				return false
			}
			j.With = append(j.With, c)
		default:
			n, _ := p.count()
			s, ok := p.stitchHere()
			if !ok {
				return false
			}
			if s.Name != "sl st" {
				j.With = append(j.With, &Make{placed: p.placed(k), Stitch: s, Count: n, Form: formOf(n)})
			}
		}
		if p.is(wAnd) && (p.isAt(1, wA) || p.at(1).is || p.kindAt(1, tNumber)) || p.kindAt(0, tComma) && p.at(1).is && p.isTallJoin(j) {
			p.i++
			p.eat(wA)
			continue
		}
		return true
	}
}

// isTallJoin reports whether the join so far is a chain only, so that what follows the comma belongs to it.
func (p *parser) isTallJoin(j *Join) bool {
	if len(j.With) != 1 {
		return false
	}
	_, ok := j.With[0].(*Chain)
	return ok
}

// doNot reads "do not turn", "do not join", "do not fasten off", "don't turn".
func (p *parser) doNot() (Clause, bool) {
	i := p.i
	p.i++
	p.eat(wNot)
	switch {
	case p.eat(wTurn):
		return &Turn{placed: p.placed(i), Not: true}, true
	case p.eat(wJoin):
		p.eat(wRnd)
		if p.is(wOr) && p.isAt(1, wTurn) || p.is(wAnd) && p.isAt(1, wTurn) {
			p.i += 2
		}
		return &Join{placed: p.placed(i), Not: true}, true
	case p.eat(wFasten), p.eat(wCut):
		p.eat(wOff)
		p.eat(wYarn)
		return p.remark(i), true
	case p.eat(wWork), p.eat(wSkip):
		return nil, false
	}
	return nil, false
}

// fasten reads "fasten off", "fasten off A", "break yarn", "cut yarn", "fo".
func (p *parser) fasten() (Clause, bool) {
	i := p.i
	cut := p.is(wCut)
	p.i++
	if !p.eat(wOff) && !cut {
		return nil, false
	}
	f := &Fasten{Yarn: p.yarnWords()}
	if p.eat(wAnd) && !p.eatAll(unknown, wIn, wEnd) {
		p.i--
	}
	f.placed = p.placed(i)
	return f, true
}
