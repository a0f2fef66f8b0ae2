package notation

// again reads a row that says nothing but to work as another: "Rows 4-9: rep row 3", "Row 5: as Row 2 (24 sc)".
func (p *parser) again(at placed, l Label) Line {
	if !p.is(wRep, wAs, wSame, wWork) {
		return nil
	}
	i, fs := p.i, len(p.fs)
	a := &Again{placed: at, Label: l}
	if !p.againRows(a) {
		p.i, p.fs = i, p.fs[:fs]
		return nil
	}
	var b body
	for !p.done() {
		k := p.i
		p.between()
		if p.done() {
			break
		}
		switch p.at(0).kind {
		case tDash, tEquals:
			if p.dashed(&b) && len(b.claims) > 0 {
				continue
			}
		case tOpen:
			if p.at(0).n < p.end && p.bracketAt(p.i) == claim {
				p.bracket(&b, 0)
				continue
			}
		default:
			if p.againMore(a, &b) {
				continue
			}
		}
		p.i = k
		p.between()
		if p.is(wFasten, wCut, wTurn, wJoin, wDo, wChange) {
			var claims []Claim
			a.Then, claims = p.clauses()
			b.claims = append(b.claims, claims...)
			break
		}
		p.i, p.fs = i, p.fs[:fs]
		return nil
	}
	a.Claims = b.claims
	p.namedTwice(a.Rows)
	return a
}

// namedTwice reports a row that a repetition names twice.
func (p *parser) namedTwice(rows []Range) {
	for i, r := range rows {
		for _, before := range rows[:i] {
			if r.From.Said && r.From.equal(&before.From) && r.To.equal(&before.To) {
				p.report(r.From.Span, "row-reference", "row "+p.text[r.From.Span.From:r.From.Span.To]+" is named twice", "see which rows are meant")
				return
			}
		}
	}
}

// againRows reads "rep rows 2 and 3", "as Row 4", "work as for row 2", "same as 2d row", "repeat last 2 rows", with how often.
func (p *parser) againRows(a *Again) bool {
	switch {
	case p.eat(wRep):
		if !p.is(wRow, wRnd, wLast, wPrev, wFirst, wThis, wThat, wFrom) && !p.kindAt(0, tOrdinal) {
			return false
		}
	case p.eat(wAs), p.eatAll(wSame, wAs), p.eatAll(wWork, wAs), p.eatAll(wWork, wSame, wAs):
		if p.low(0) == "given" {
			p.i++
		}
		p.eat(wFor)
	case p.is(wWork) && p.isAt(1, wRow, wRnd) && p.kindAt(2, tNumber):
		p.i++
	default:
		return false
	}
	p.eat(wThis, wThat)
	p.eat(wFrom)
	if p.eat(wLast, wPrev) {
		a.Last = one
		if c, ok := p.count(); ok {
			a.Last = c
		}
		a.Round = p.is(wRnd)
		if !p.eat(wRow, wRnd) {
			return false
		}
	} else {
		a.Round = p.namesRounds()
		rows, ok := p.rowsNamed()
		if !ok {
			return false
		}
		a.Rows = rows
	}
	if p.is(wFor) && p.isAt(1, wPatt) {
		p.i += 2
	}
	if p.kindAt(0, tComma) && p.numberAt(1) {
		p.i++
	}
	if p.is(wFor) && p.numberAt(1) && (a.Last.Said || len(a.Rows) == 1 && !a.Rows[0].To.Said) { // "repeat row 2 for 15 rows"
		k := p.i
		p.i++
		if c, ok := p.count(); ok && p.eat(wRow, wRnd) {
			a.Extent = Extent{Kind: Times, Count: c, Span: p.since(k)}
			return true
		}
		p.i = k
	}
	for {
		e, ok := p.extent()
		if !ok {
			return true
		}
		if e.Kind == MoreTimes || e.Kind == Times {
			e.Count = p.timesInSizes(e)
		}
		if a.Extent.Kind == NotSaid {
			a.Extent = e
		}
	}
}

// againMore reads what follows the rows repeated: "ending with row 2", "reversing all shaping", "20 rows in all", "until …".
func (p *parser) againMore(a *Again, b *body) bool {
	i := p.i
	switch {
	case p.eat(wEnding, wEnd):
		p.eat(wWith, wOn, wAfter)
		p.eat(wA)
		if rows, ok := p.rowsNamed(); ok {
			a.Ending = rows
			return true
		}
		if p.is(wRS, wWS) {
			a.EndSide = RightSide
			if p.is(wWS) {
				a.EndSide = WrongSide
			}
			p.i++
			p.eat(wRow, wRnd)
			return true
		}
	case p.eat(wReversing):
		p.eat(wAll)
		p.eat(wShaping)
		a.Reversed = true
		return true
	}
	p.i = i
	if e, ok := p.extent(); ok && a.Extent.Kind == NotSaid {
		a.Extent = e
		return true
	}
	p.i = i
	if p.bareClaim(b) || p.wordyClaim(b) {
		return true
	}
	if p.numberNext() {
		if cs, ok := p.claimList(false); ok && cs[0].Noun.Kind != NoNoun {
			b.claims = append(b.claims, cs...)
			return true
		}
	}
	p.i = i
	return false
}
