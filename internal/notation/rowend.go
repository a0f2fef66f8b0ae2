package notation

// edgeAhead reports whether an edge begins at the next token.
func (p *parser) edgeAhead() bool {
	i := p.i
	_, ok := p.edge()
	p.i = i
	return ok
}

// edge reads live stitches of a piece: "hem.left", "first 55 sts of yoke.last", "body.last from marker a to marker b", "sts of row 5".
func (p *parser) edge() (Edge, bool) {
	i := p.i
	var e Edge
	var first, last Count
	switch {
	case p.eat(wFirst, wNext):
		first, _ = p.count()
		p.noun()
		if !p.eat(wOf) {
			p.i = i
			return e, false
		}
	case p.eat(wLast):
		last, _ = p.count()
		p.noun()
		if !p.eat(wOf) {
			p.i = i
			return e, false
		}
	case p.is(wSt) && p.isAt(1, wOf), p.is(wUnworked, wRemaining) && p.isAt(1, wSt) && p.isAt(2, wOf):
		p.eat(wUnworked, wRemaining)
		p.i += 2
	}
	switch {
	case p.kindAt(0, tEdge):
		e = p.edgeName()
	case p.i > i && p.is(wRow, wRnd):
		p.i++
		c, ok := p.labelNumber()
		if !ok {
			p.i = i
			return e, false
		}
		e.Which, e.Row = "row", c
	default:
		p.i = i
		return e, false
	}
	e.First, e.Last = first, last
	if p.is(wFrom) && p.isAt(1, wMarker) {
		p.i += 2
		e.From = p.markerName()
		if p.is(wTo) && p.isAt(1, wMarker) {
			p.i += 2
			e.To = p.markerName()
		}
	}
	e.Span = p.since(i)
	return e, true
}

// rowEnds reads what follows "in end of": "each row", "each of previous 11 rows", "next row".
func (p *parser) rowEnds(t *Target) {
	for {
		switch {
		case p.eat(wEach, wEvery):
			t.Each = true
			if p.eat(wOther) {
				t.Every = 2
			}
			p.eat(wOf)
		case p.eat(wPrev):
			t.Prev = true
		case p.at(0).is && p.isAt(1, wRow, wRnd): // "in the end of each dc row"
			t.Noun = Noun{Kind: ARowEnd, Stitch: p.at(0).stitch}
			p.i += 2
			return
		case p.eat(wNext, wLast, wFirst):
		case p.eat(wRow, wRnd, wRowEnd):
			t.Noun = Noun{Kind: ARowEnd}
			return
		default:
			c, ok := p.count()
			if !ok {
				t.Noun = Noun{Kind: ARowEnd}
				return
			}
			t.Count = c
		}
	}
}

// alongEdge reads "along the long edge", "down side", "up other side", "along row ends", "across the bottom".
func (p *parser) alongEdge(t *Target) bool {
	i := p.i
	across, along := p.is(wAcross), p.is(wAlong, wAcross)
	p.i++
	if p.is(wTo, wUntil, wTill) || p.done() || p.kindAt(0, tComma) {
		p.i = i
		return false
	}
	if !across && (p.eat(wRowEnd) || p.isAt(1, wEnd) && p.eatAll(wRow, wEnd)) {
		t.Where, t.Noun = RowEnds, Noun{Kind: ARowEnd}
		return true
	}
	if p.kindAt(0, tEdge) {
		return p.edgePlace(t)
	}
	name := ""
	from := p.t[i].from
	for k := 0; k < 6 && p.kindAt(0, tWord); k++ {
		switch {
		case p.eatAll(wSide, wEdge), p.eat(wEdge), p.eat(wSide):
			name = p.text[from:p.t[p.i-1].to]
			if p.eat(wOf) {
				p.eat(wA)
				p.eat(wFoundation, wBeginning, wStarting)
				switch {
				case p.eat(wPiece):
				case p.is(wCh):
					t.Where = OtherSide
					p.i++
					return true
				case p.kindAt(0, tWord):
					p.i++
				}
				name = p.text[from:p.t[p.i-1].to]
			}
			t.Where, t.Name = RowEnds, name
			if along && (p.t[i+1].word == wOther || p.t[i+1].word == wOpposite) && !p.isAt(-1, wPiece) && p.low(-2) != "long" {
				t.Where, t.Name = OtherSide, ""
			}
			return true
		case p.is(wTop, wOther, wOpposite, wLong, wRight, wLeft, wFront, wBack, unknown, wEach, wFirst, wLast):
			p.i++
		case p.is(wFoundation, wBeginning, wStarting) && p.isAt(1, wCh):
			p.i += 2
			t.Where = OtherSide
			return true
		default:
			k = 6
		}
	}
	if !across && p.i > i+1 && p.t[p.i-1].word == unknown {
		t.Where, t.Name = RowEnds, p.text[from:p.t[p.i-1].to]
		return true
	}
	p.i = i
	return false
}

// edgePlace reads an edge of a piece as a place: "body.left", "next st of body.left".
func (p *parser) edgePlace(t *Target) bool {
	e := p.edgeName()
	t.Edge = &e
	if t.Where == Unsaid && !t.Each {
		t.Where = Next
	}
	return true
}

// edgeName reads "hem.left".
func (p *parser) edgeName() Edge {
	t := p.at(0)
	p.i++
	e := Edge{Piece: p.text[t.from:t.n], Which: p.text[t.n+1 : t.to], Span: t.span()}
	p.edges = append(p.edges, e)
	return e
}
