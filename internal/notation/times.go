package notation

import "foundrow/internal/source"

// looseTimes reads a number of times that stands as a clause of its own: "…, 8 times".
func (p *parser) looseTimes() (Extent, bool) {
	if p.kindAt(0, tWord) && !p.is(wOnce, wTwice, wThrice, wX, wAnother, wTotal, wA, wFor, wNumberWord) {
		return Extent{}, false
	}
	i := p.i
	e, ok := p.times()
	if !ok || p.is(wIn) {
		p.i = i
		return Extent{}, false
	}
	return e, true
}

// applyTimes gives a loose number of times to what it is said of: the open repeat, the group before, or the row so far.
func (p *parser) applyTimes(b *body, closed int, e Extent) bool {
	if n := len(b.stars); n > 0 {
		p.close(b, b.stars[n-1], e)
		return true
	}
	if len(b.out) == 0 {
		return false
	}
	switch before := b.out[len(b.out)-1].(type) {
	case *Repeat:
		if closed > 0 || before.Extent.Kind == NotSaid {
			before.Extent = e
			return true
		}
	case *Group:
		if before.Extent.Kind == NotSaid {
			before.Extent = e
			return true
		}
	}
	from := 0
	for from < len(b.out) && opens(b.out[from]) {
		from++
	}
	if from == len(b.out) {
		return false
	}
	g := &Group{Body: append([]Clause{}, b.out[from:]...), Bracket: '[', Extent: e}
	g.Span = source.Span{From: g.Body[0].At().From, To: e.Span.To}
	b.out = append(b.out[:from], g)
	return true
}

// opens reports whether a clause belongs to the start of a row rather than to what a repeat of the whole row repeats.
func opens(c Clause) bool {
	switch c := c.(type) {
	case *Turn, *Yarn, *Remark, *Rejoin, *Through, *Counts:
		return true
	case *Chain:
		return c.Says != ChainUnsaid
	}
	return false
}

// times reads "6 times", "x 6", "6x", "*6", "twice", "once more", "3 more times", "3 times more", "a total of 3 times", "3 times in all".
func (p *parser) times() (Extent, bool) {
	switch p.at(0).kind {
	case tNumber, tSlot, tWord, tStar, tOpen:
	default:
		return Extent{}, false
	}
	i := p.i
	e, ok := p.timesHere()
	if !ok {
		p.i = i
		return Extent{}, false
	}
	e.Span = p.since(i)
	return e, true
}

func (p *parser) timesHere() (Extent, bool) {
	switch {
	case p.eat(wX):
		c, ok := p.count()
		return Extent{Kind: Times, Count: c}, ok
	case p.kindAt(0, tStar) && p.open == 0 && p.at(0).n == 1 && p.kindAt(-1, tShut) && p.kindAt(1, tNumber) && (!p.kindAt(2, tWord) || p.isAt(2, wTimes)):
		p.i++
		c, ok := p.count()
		return Extent{Kind: Times, Count: c}, ok
	case p.is(wA) && p.isAt(1, wTotal) && p.isAt(2, wOf):
		p.i += 3
		return p.totalTimes()
	case p.is(wTotal) && p.isAt(1, wOf):
		p.i += 2
		return p.totalTimes()
	case p.is(wFor) && (p.isAt(1, wA) && p.isAt(2, wTotal) || p.isAt(1, wTotal)):
		p.i += 2
		p.eat(wTotal)
		p.eat(wOf)
		return p.totalTimes()
	case p.eat(wAnother):
		c, ok := p.timesWord()
		if !ok {
			c, ok = p.count()
			p.eat(wTimes)
		}
		return Extent{Kind: MoreTimes, Count: c}, ok
	}
	c, ok := p.timesWord()
	if ok {
		c = p.timesList(c)
	} else {
		if c, ok = p.count(); !ok {
			return Extent{}, false
		}
		switch {
		case p.is(wMore) && p.isAt(1, wTimes):
			p.i += 2
			return Extent{Kind: MoreTimes, Count: c}, true
		case p.eat(wTimes):
		case p.is(wX) && !p.numberAt(1):
			p.i++
		default:
			return Extent{}, false
		}
	}
	switch {
	case p.eat(wMore):
		return Extent{Kind: MoreTimes, Count: c}, true
	case p.eatAll(wIn, wAll), p.eatAll(wIn, wTotal), p.eat(wTotal):
		return Extent{Kind: InAll, Count: c}, true
	}
	return Extent{Kind: Times, Count: c}, true
}

var one = Count{Said: true, Plain: 1}

func (p *parser) totalTimes() (Extent, bool) {
	c, ok := p.timesWord()
	if !ok {
		c, ok = p.count()
		ok = p.eat(wTimes) && ok // else a claim: "for a total of 36 sts"
	}
	return Extent{Kind: InAll, Count: c}, ok
}

// timesList reads the other sizes of "twice (three times, four times)".
func (p *parser) timesList(c Count) Count {
	open := p.at(0)
	if open.kind != tOpen || open.n >= p.end || len(p.in.Sizes) < 2 {
		return c
	}
	list := []Entry{{N: c.Plain}}
	ok := true
	p.within(p.i+1, open.n, func() {
		for ok && !p.done() {
			n, word := p.timesWord()
			if !word {
				n.Plain, ok = p.number()
				p.eat(wTimes)
			}
			list = append(list, Entry{N: n.Plain})
			p.eatKind(tComma)
		}
	})
	if !ok || len(list) != len(p.in.Sizes) {
		return c
	}
	p.i = open.n + 1
	return Count{Said: true, List: list, Span: c.Span}
}

// timesWord reads once, twice, thrice.
func (p *parser) timesWord() (Count, bool) {
	t := p.at(0)
	n := 0
	switch {
	case p.eat(wOnce):
		n = 1
	case p.eat(wTwice):
		n = 2
	case p.eat(wThrice):
		n = 3
	default:
		return Count{}, false
	}
	return Count{Said: true, Plain: n, Span: t.span()}, true
}

// timesInSizes reads the other sizes of "twice more (6 mos. 3 times more) (9 mos. 4 times more)": each bracket names a size.
func (p *parser) timesInSizes(e Extent) Count {
	c := e.Count
	if c.List != nil || c.Slot > 0 {
		return c
	}
	var by []Entry
	for p.kindAt(0, tOpen) && p.t[p.i].n < p.end {
		open := p.t[p.i]
		size, n := -1, 0
		p.within(p.i+1, open.n, func() {
			size = p.sizeHere()
			if x, ok := p.times(); ok && size >= 0 && x.Kind == e.Kind {
				n = x.Count.Plain
			} else {
				size = -1
			}
		})
		if size < 0 {
			break
		}
		if by == nil {
			by = make([]Entry, len(p.in.Sizes))
			for k := range by {
				by[k].N = c.Plain
			}
		}
		by[size].N = n
		p.i = open.n + 1
	}
	if by == nil {
		return c
	}
	return Count{Said: true, List: by, Span: c.Span}
}
