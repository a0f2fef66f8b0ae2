package notation

// rowNumbers reads "3", "3-10", "3 to 8", "4, 6 and 8", "2-5 (7, 8, 11)", "(22, 24, 26)", "5-14 [5-16, 5-18]", "4 - (21, 23, 25)".
func (p *parser) rowNumbers() ([]Range, bool) {
	var out []Range
	for {
		i := p.i
		c, ok := p.labelNumber()
		if !ok {
			p.i = i
			return out, len(out) > 0
		}
		r := Range{From: c}
		i = p.i
		if p.eatKind(tHyphen) || p.eat(wTo, wThrough) || p.eatKind(tDash) {
			p.eat(wRow, wRnd)
			if r.To, ok = p.labelNumber(); !ok {
				p.i = i
			} else {
				p.rangeBySize(&r)
			}
		}
		out = append(out, r)
		i = p.i
		if p.kindAt(0, tComma) && p.kindAt(1, tNumber) && p.isAt(2, wTimes, wMore, wX) { // "rows 2-5, 6 times"
			return out, true
		}
		sep := p.eatKind(tComma)
		sep = p.eat(wAnd) || sep
		p.eat(wRow, wRnd)
		if !sep || !p.kindAt(0, tNumber) && !p.kindAt(0, tSlot) || p.kindAt(0, tNumber) && (p.isAt(1, wCh) || p.at(1).is) {
			p.i = i
			return out, true
		}
	}
}

// labelNumber reads one row number: a number, a value, or a list for the sizes.
func (p *parser) labelNumber() (Count, bool) {
	i := p.i
	switch t := p.at(0); {
	case t.kind == tSlot, t.kind == tOpen:
		return p.count()
	case t.kind == tNumber && !t.decimal:
		p.i++
		c := Count{Said: true, Plain: t.n}
		if p.kindAt(0, tOpen) {
			if list := p.bracketed(t.n); list != nil {
				c.Plain, c.List = 0, list
			}
		}
		c.Span = p.since(i)
		return c, true
	}
	n, ok := p.number()
	return Count{Said: ok, Plain: n, Span: p.since(i)}, ok
}

// rangeBySize reads the ranges of the other sizes: "5-14 [5-16, 5-18]", "4-13 (4-16 for M, 4-19 for L)".
func (p *parser) rangeBySize(r *Range) {
	open := p.at(0)
	if open.kind != tOpen || open.n >= p.end || r.To.List != nil || r.To.Slot > 0 {
		return
	}
	sizes := len(p.in.Sizes)
	to := make([]Entry, sizes)
	for k := range to {
		to[k].N = r.To.Plain
	}
	found := 0
	p.within(p.i+1, open.n, func() {
		for !p.done() {
			p.number()
			if !p.eatKind(tHyphen) && !p.eat(wTo) {
				found = -1
				return
			}
			n, ok := p.number()
			if !ok {
				found = -1
				return
			}
			size := found + 1
			if p.eat(wFor) {
				size = p.sizeHere()
			}
			if size < 0 || size >= sizes {
				found = -1
				return
			}
			to[size].N = n
			found++
			p.eatKind(tComma)
			p.eat(wAnd)
		}
	})
	if found > 0 {
		r.To = Count{Said: true, List: to, Span: r.To.Span}
		p.i = open.n + 1
	}
}

// namesRounds reports whether the rows named next are called rounds.
func (p *parser) namesRounds() bool {
	for k := 0; k < 8; k++ {
		switch t := p.at(k); {
		case t.kind == tWord && (t.word == wRow || t.word == wRnd):
			return t.word == wRnd
		case t.kind == tEnd:
			return false
		}
	}
	return false
}

// rowsNamed reads the rows that are meant: "rows 2 and 3", "Rnd 2", "2d row", "row 2 of Back".
func (p *parser) rowsNamed() ([]Range, bool) {
	i := p.i
	if c, ok := p.ordinal(); ok {
		out := []Range{{From: c}}
		for p.is(wAnd) || p.kindAt(0, tComma) {
			k := p.i
			p.i++
			c, ok := p.ordinal()
			if !ok {
				p.i = k
				break
			}
			out = append(out, Range{From: c})
		}
		if p.eat(wRow, wRnd) {
			return out, true
		}
		p.i = i
		return nil, false
	}
	if !p.eat(wRow, wRnd) {
		return nil, false
	}
	rows, ok := p.rowNumbers()
	if !ok {
		p.i = i
	}
	return rows, ok
}
