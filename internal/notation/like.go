package notation

// like reads "as Row 4", "as for Row 2", "same as 2d row".
func (p *parser) like() (Clause, bool) {
	i := p.i
	switch {
	case p.eat(wAs):
	case p.eatAll(wSame, wAs), p.eatAll(wWork, wAs):
	default:
		return nil, false
	}
	p.eat(wFor)
	l := &Like{Round: p.namesRounds()}
	if rows, ok := p.rowsNamed(); ok {
		l.Rows = rows
	} else if p.eat(wLast, wPrev) && p.eat(wRow, wRnd) {
		l.Last = one
	} else {
		p.i = i
		return nil, false
	}
	l.Extent, _ = p.extent()
	l.placed = p.placed(i)
	return l, true
}

// likeRows reads "rep Row 2", "rep last row", "repeat rows 2 and 3" within a row.
func (p *parser) likeRows() (Clause, bool) {
	i := p.i
	if !p.eat(wRep) {
		return nil, false
	}
	l := &Like{Round: p.namesRounds()}
	if p.eat(wLast, wPrev) {
		l.Last = one
		if c, ok := p.count(); ok {
			l.Last = c
		}
		if !p.eat(wRow, wRnd) {
			p.i = i
			return nil, false
		}
	} else {
		rows, ok := p.rowsNamed()
		if !ok {
			p.i = i
			return nil, false
		}
		l.Rows = rows
	}
	if e, ok := p.extent(); ok {
		l.Extent = e
	}
	l.placed = p.placed(i)
	return l, true
}
