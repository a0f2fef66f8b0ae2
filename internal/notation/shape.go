package notation

// change reads an increase or decrease that is more than a stitch: "inc 6 dc evenly spaced around", "dec 1 st at each end", "increase
// 1", "dec at beginning of row". "inc" and "dec" alone are stitches and are left to make.
func (p *parser) change() (Clause, bool) {
	i := p.i
	by := 1
	if p.is(wDec) {
		by = -1
	}
	p.i++
	if p.kindAt(0, tComma) || p.done() || p.is(wIn, wNext, wTimes, wX, wOver) || p.isAt(1, wTimes) || p.isAt(1, wX) {
		p.i = i
		return nil, false
	}
	if p.is(wAt, wEach) {
		if e, ok := p.atEnds(by, one, i); ok {
			return e, true
		}
	}
	c, ok := p.count()
	if !ok {
		p.i = i
		return nil, false
	}
	e := &Evenly{Change: by, Count: c}
	if s, ok := p.stitchHere(); ok {
		e.Stitch = s
	} else {
		p.eat(wSt)
	}
	if at, ok := p.atEnds(by, c, i); ok {
		return at, true
	}
	if !p.spaced(&e.Along) {
		p.i = i
		return nil, false
	}
	e.placed = p.placed(i)
	return e, true
}

// changes reads "6 increases evenly", "2 dec evenly around".
func (p *parser) changes(c Count, i int) (Clause, bool) {
	k := p.i
	by := 1
	if p.is(wDec) {
		by = -1
	}
	p.i++
	e := &Evenly{Change: by, Count: c}
	if !p.spaced(&e.Along) {
		p.i = k
		return nil, false
	}
	e.placed = p.placed(i)
	return e, true
}

// atEnds reads "at each end", "at beginning of row", "at both ends", "each end of row".
func (p *parser) atEnds(by int, c Count, i int) (Clause, bool) {
	k := p.i
	p.eat(wAt)
	e := &AtEnds{Change: by, Count: c, Start: true, End: true}
	switch {
	case p.is(wEach, wBoth) && p.isAt(1, wEnd, wSide, wEdge):
		p.i += 2
	case p.eat(wBeginning, wBeg, wStarting):
		e.End = false
		if p.is(wAnd) && p.isAt(1, wEnd) {
			p.i += 2
			e.End = true
		}
	case p.eat(wEnd):
		e.Start = false
	default:
		p.i = k
		return nil, false
	}
	if p.eat(wOf) {
		p.eat(wThis, wEach)
		if !p.eat(wRow, wRnd) {
			p.i = k
			return nil, false
		}
	}
	e.placed = p.placed(i)
	return e, true
}

// spaced reads "evenly", "evenly spaced", "spaced evenly", with what it goes along.
func (p *parser) spaced(t *Target) bool {
	k := p.i
	ok := p.eatAll(wEvenly, wSpaced) || p.eatAll(wSpaced, wEvenly) || p.eat(wEvenly)
	if !ok {
		p.i = k
		return false
	}
	if p.is(wAround) && p.isAt(1, unknown, wEdge, wPiece) && !p.at(1).is { // "evenly around armhole"
		from := p.i
		p.i += 2
		for p.is(unknown, wEdge) && !p.at(0).is {
			p.i++
		}
		s := p.since(from)
		*t = Target{Where: RowEnds, Name: p.text[s.From:s.To], Span: s}
	} else if e, said := p.till(); said {
		*t = Target{Where: RestUnnamed, Till: e, Span: e.Span}
	} else if got, said := p.target(); said {
		*t = got
	}
	return true
}

// evenly reads stitches whose places are not told one by one: "10 sc evenly down side", "3 sc over every 2 rows along the ribbing", "30 sc
// spaced evenly along the long side".
func (p *parser) evenly(m *Make, i int) (Clause, bool) {
	k := p.i
	if p.is(wEvenly, wSpaced) {
		e := &Evenly{Count: m.Count, Stitch: m.Stitch}
		if !p.spaced(&e.Along) {
			p.i = k
			return nil, false
		}
		if m.Count.Said || e.Along.Said() {
			e.placed = p.placed(i)
			p.last = m.Stitch
			return e, true
		}
		p.i = k
		return nil, false
	}
	if m.Count.Said && p.is(wOver, wIn, wFor) && p.isAt(1, wEvery, wEach) && (p.kindAt(2, tNumber) || p.isAt(2, wNumberWord)) && p.isAt(3, wRow, wRnd, wRowEnd) {
		e := &Evenly{Count: m.Count, Stitch: m.Stitch}
		p.i += 2
		over, _ := p.count()
		p.i++
		p.eat(wEnd)
		e.Per = [2]Count{m.Count, over}
		e.Count = Count{}
		if t, ok := p.target(); ok {
			e.Along = t
		} else if x, ok := p.till(); ok {
			e.Along = Target{Where: RestUnnamed, Till: x, Span: x.Span}
		}
		e.placed = p.placed(i)
		p.last = m.Stitch
		return e, true
	}
	return nil, false
}

// goOn reads a line that goes on over rows not written out: "cont in this manner, inc 6 sts on next and every following alt rnd to 72 sc",
// "Continue inc. 1 sc in each section every alternate rnd twice more", "work 6 rows in patt without shaping", "work even until …".
func (p *parser) goOn(at placed) (*Continue, bool) {
	i := p.i
	c := &Continue{placed: at}
	cont := p.eat(wContinue)
	if p.eat(wIn) || p.is(wThis) {
		p.eat(wThis, wSame)
		if !p.eat(wManner, wPatt) {
			p.i = i
			return nil, false
		}
		p.eatKind(tComma)
		cont = true
	}
	switch {
	case p.is(wInc, wDec):
		c.Change = 1
		if p.is(wDec) {
			c.Change = -1
		}
		p.i++
		c.Count = one
		if n, ok := p.count(); ok {
			c.Count = n
		}
		if s, ok := p.stitchHere(); ok {
			c.Stitch = s
		} else {
			p.eat(wSt)
		}
		if p.is(wIn, wAt) && p.isAt(1, wEach) {
			p.i += 2
			c.Each, _ = p.noun()
			if c.Each.Kind == NoNoun && p.eat(wEnd) {
				c.Each = Noun{Kind: AUnit, Name: "end"}
			}
		}
	case p.is(wWork) && (p.isAt(1, wIn) && p.isAt(2, wPatt) || p.isAt(1, wEvenly, wPlain) || p.isAt(1, wNumberWord) || p.kindAt(1, tNumber) || p.kindAt(1, tSlot) || p.kindAt(1, tDash) || p.kindAt(1, tOpen)) && p.eat(wWork):
		p.eat(wEvenly, wPlain)
		if n, ok := p.count(); ok {
			c.Rows = n
			p.eat(wMore)
			c.Round = p.is(wRnd)
			if !p.eat(wRow, wRnd) {
				p.i = i
				return nil, false
			}
			p.eat(wMore)
			p.eat(wEvenly, wPlain)
		}
	case cont:
	default:
		p.i = i
		return nil, false
	}
	c.Every = 1
	for {
		switch {
		case p.is(wIn, wOn) && p.isAt(1, wPatt, wManner), p.is(wIn) && p.isAt(1, wThis) && p.isAt(2, wManner):
			p.i += 2
			p.eat(wManner)
			if p.eat(wAs) {
				p.eat(wSet)
			}
		case c.Rows.Said && p.is(wIn) && p.at(1).is:
			p.i++
			c.Stitch, _ = p.stitchHere()
		case p.eatAll(wAs, wSet), p.eatAll(wWithout, wShaping):
		case p.is(wWithout):
			p.i++
			p.eat(wInc, wDec)
			p.eat(wShaping)
		case p.is(wOn, wEvery, wEach, wIn) && p.everyRow(c):
		case p.kindAt(0, tComma):
			p.i++
		default:
			if e, ok := p.extent(); ok && c.Extent.Kind == NotSaid {
				if len(p.in.Sizes) > 0 {
					e.Count = p.timesInSizes(e)
				}
				c.Extent = e
				continue
			}
			return c, true
		}
	}
}

// everyRow reads "on next and every following alt rnd", "every alternate rnd", "each row", "every other row".
func (p *parser) everyRow(c *Continue) bool {
	k := p.i
	p.eat(wOn, wIn)
	if p.is(wNext) && (p.isAt(1, wAnd) || p.isAt(1, wRow, wRnd)) {
		p.i++
		p.eat(wRow, wRnd)
		p.eat(wAnd)
		c.Next = true
	}
	p.eat(wThen)
	if p.eat(wEvery, wEach) {
		for p.eat(wNext) {
		}
		switch {
		case p.eat(wAlt, wOther):
			c.Every = 2
		default:
			if o, ok := p.ordinal(); ok {
				c.Every = o.Plain
			}
		}
		for p.eat(wNext) {
		}
	}
	c.Round = p.is(wRnd)
	if !p.eat(wRow, wRnd) {
		p.i = k
		return false
	}
	return true
}
