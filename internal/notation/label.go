package notation

import (
	"foundrow/internal/stitch"
	"strings"
)

// labelled reads a line that begins with the name of a row; nil when it has none.
func (p *parser) labelled(at placed) Line {
	i := p.i
	l, ok := p.label()
	if !ok {
		p.i = i
		return nil
	}
	if only := p.sizesOnly(); only != nil {
		at.Only = only
	}
	if a := p.again(at, l); a != nil {
		return a
	}
	return p.row(at, l)
}

// row reads the body of a row.
func (p *parser) row(at placed, l Label) Line {
	r := &Row{placed: at, Label: l}
	r.Body, r.Claims = p.clauses()
	return r
}

// label reads the name of a row, through what separates it from what is worked.
func (p *parser) label() (Label, bool) {
	i := p.i
	for _, read := range []func() (Label, bool){p.ordinalLabel, p.rowLabel, p.bareLabel} {
		p.i = i
		if l, ok := read(); ok {
			l.Span = p.since(i)
			p.labelEnd()
			return l, true
		}
	}
	p.i = i
	return Label{}, false
}

// labelEnd passes over what stands between a label and the row.
func (p *parser) labelEnd() {
	for p.kindAt(0, tColon) || p.kindAt(0, tStop) || p.kindAt(0, tDash) || p.kindAt(0, tComma) || p.kindAt(0, tEquals) {
		p.i++
	}
}

// ordinalLabel reads "1st row", "2nd and 4th rnds", "8th and alt rnds", "3rd and every other row", "5th to 9th rows".
func (p *parser) ordinalLabel() (Label, bool) {
	var l Label
	for {
		c, ok := p.ordinal()
		if !ok && p.eat(wFirst) {
			c, ok = Count{Said: true, Plain: 1, Span: p.since(p.i - 1)}, true
		}
		if !ok {
			return l, false
		}
		r := Range{From: c}
		if p.eat(wTo) || p.eatKind(tHyphen) || p.eatKind(tDash) {
			if r.To, ok = p.ordinal(); !ok {
				return l, false
			}
		}
		l.Numbers = append(l.Numbers, r)
		if p.kindAt(0, tComma) && (p.kindAt(1, tOrdinal) || p.isAt(1, wAnd)) {
			p.i++
		}
		if !p.is(wAnd) && !p.kindAt(0, tOrdinal) {
			break
		}
		p.eat(wAnd)
		if p.alternate() {
			l.Every = AndAlternate
			break
		}
	}
	if !p.is(wRow, wRnd) {
		return l, false
	}
	l.Round = p.is(wRnd)
	p.i++
	p.about(&l)
	return l, true
}

// alternate reads "alt", "alternate", "every other", "every alternate", "all even".
func (p *parser) alternate() bool {
	i := p.i
	p.eat(wEvery, wEach, wAll)
	p.eat(wNext)
	if p.eat(wAlt, wOther) || p.i > i && (p.low(0) == "even" || p.low(0) == "odd") && p.isAt(1, wRow, wRnd) {
		if p.low(0) == "even" || p.low(0) == "odd" {
			p.i++
		}
		return true
	}
	p.i = i
	return false
}

// rowLabel reads "Row 3 (RS)", "Rnds 9-16", "Armhole Rows 2-5 (7, 8, 11)", "Next 5 (6, 7, 9) rows", "Inc row", "R5", "Row (22, 24, 26)".
func (p *parser) rowLabel() (Label, bool) {
	var l Label
	i := p.i
	named := p.labelWords()
	if named > 0 {
		l.Words = stitch.Carry(strings.TrimSpace(p.text[p.t[i].from:p.t[p.i-1].to]), p.in.Terms, stitch.US)
	}
	if p.numberNext() && (named > 0) { // "Next 5 (6, 7, 9) rows"
		c, ok := p.count()
		if !ok || !p.is(wRow, wRnd) {
			return l, false
		}
		l.Times = c
	}
	if !p.is(wRow, wRnd) || p.low(0) == "round" && p.isAt(1, wPost) {
		return l, false
	}
	short := len(p.low(0)) == 1
	l.Round, l.Short = p.is(wRnd), short
	p.i++
	if p.low(0) == "no" || p.low(0) == "number" {
		p.i++
		p.eatKind(tStop)
	}
	if !l.Times.Said {
		if rs, ok := p.rowNumbers(); ok {
			l.Numbers = rs
		} else if short || named == 0 {
			return l, false
		}
	}
	if len(l.Numbers) > 0 && named == 0 && p.is(wOf) && p.kindAt(1, tWord) && (p.kindAt(2, tColon) || p.kindAt(2, tOpen)) { // "Rnd 1 of edging:"
		l.Words = capital(stitch.Carry(p.text[p.at(1).from:p.at(1).to], p.in.Terms, stitch.US))
		p.i += 2
		named = 1
	}
	if p.is(wAnd) {
		k := p.i
		p.i++
		if p.alternate() {
			l.Every = AndAlternate
			p.eat(wRow, wRnd)
		} else {
			p.i = k
		}
	}
	if named > 0 && p.done() {
		return l, false
	}
	p.about(&l)
	if named > 0 && !(p.kindAt(0, tColon) || p.kindAt(0, tStop) || p.kindAt(0, tDash) || p.kindAt(0, tEnd)) {
		return l, false
	}
	return l, true
}

// labelWords passes over the words before "row": "Armhole", "Left panel", "Next", "Inc". It returns how many there are.
func (p *parser) labelWords() int {
	k := 0
	for k < 6 {
		t := p.at(k)
		if t.kind == tHyphen {
			k++
			continue
		}
		if t.kind != tWord || t.word == wRow || t.word == wRnd || t.word == wRep || t.word == wWork || t.word == wContinue || t.word == wAs || t.word == wLast && k == 0 && p.isAt(k+1, wRow) && false {
			break
		}
		if t.is && !(t.word == wInc || t.word == wDec || t.word == wLong) && !p.isAt(k+1, wRow, wRnd) {
			return 0
		}
		switch t.word {
		case wIn, wTo, wOf, wCh, wTurn, wSkip, wJoin, wEach, wUntil, wWith, wSt, wSp, wFrom:
			return 0
		}
		k++
	}
	if !p.isAt(k, wRow, wRnd) && !(k > 0 && p.isAt(k-1, wNext) && p.numberAtRow(k)) {
		return 0
	}
	p.i += k
	return k
}

// numberAtRow reports whether a number of rows stands k tokens on: "5 (6, 7, 9) rows".
func (p *parser) numberAtRow(k int) bool {
	t := p.at(k)
	if t.kind != tNumber && t.kind != tSlot && !(t.kind == tWord && t.word == wNumberWord) {
		return false
	}
	k++
	if p.kindAt(k, tOpen) {
		k = p.t[p.i+k].n - p.i + 1
	}
	return p.isAt(k, wRow, wRnd)
}

// bareLabel reads "4.", "12)", "10:", "3, 4, 5.".
func (p *parser) bareLabel() (Label, bool) {
	var l Label
	if !p.kindAt(0, tNumber) {
		return l, false
	}
	for p.kindAt(0, tNumber) {
		c, _ := p.labelNumber()
		r := Range{From: c}
		if (p.kindAt(0, tHyphen) || p.is(wTo)) && p.kindAt(1, tNumber) {
			p.i++
			r.To, _ = p.labelNumber()
		}
		l.Numbers = append(l.Numbers, r)
		if !p.kindAt(0, tComma) && !p.is(wAnd) {
			break
		}
		p.i++
		p.eat(wAnd)
	}
	next := p.at(1)
	switch t := p.at(0); {
	case t.kind == tStop, t.kind == tColon, t.kind == tDash && len(l.Numbers) == 1:
	default:
		return l, false
	}
	l.Bare = true
	return l, next.kind != tEnd
}

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

// about reads what a label says in brackets or behind it: the side that faces, the yarn, or a remark.
func (p *parser) about(l *Label) {
	for {
		i := p.i
		switch t := p.at(0); {
		case p.eat(wRS), p.is(wRight) && p.eatAll(wRight, wSide):
			l.Side = RightSide
		case p.eat(wWS), p.low(0) == "wrong" && p.isAt(1, wSide):
			if p.low(0) == "wrong" {
				p.i += 2
			}
			l.Side = WrongSide
		case t.kind == tComma && p.isAt(1, wRS, wWS):
			p.i++
		case t.kind == tOpen && t.n < p.end:
			if !p.labelBracket(l, t) {
				return
			}
		case p.is(wWith) && p.yarnName(1) && p.labelGoesOn():
			p.i++
			l.Yarn = p.yarnWords()
		default:
			return
		}
		if p.i == i {
			return
		}
	}
}

// labelGoesOn reports whether the label ends soon with a colon, so that "with A" belongs to it.
func (p *parser) labelGoesOn() bool {
	for k := 2; k < 5; k++ {
		if p.kindAt(k, tColon) {
			return true
		}
	}
	return false
}

// labelBracket reads "(RS)", "(B)", "(WS, A)", "(right cup only)", "(3 rounds)". One that may be the first group of the row is left
// alone.
func (p *parser) labelBracket(l *Label, open *token) bool {
	after := &p.t[open.n+1]
	ends := after.kind == tColon || after.kind == tStop || after.kind == tDash || after.kind == tOpen || after.kind == tComma || after.kind == tEnd
	side, yarn, known := NoSide, "", true
	p.within(p.i+1, open.n, func() {
		for !p.done() {
			switch {
			case p.eat(wRS), p.eatAll(wRight, wSide):
				side = RightSide
			case p.eat(wWS), p.low(0) == "wrong" && p.isAt(1, wSide):
				if p.low(0) == "wrong" {
					p.i += 2
				}
				side = WrongSide
			case p.kindAt(0, tComma), p.is(wFacing), p.is(wRow), p.is(wWith):
				p.i++
			case p.yarnName(0):
				yarn = p.yarnWords()
			default:
				known = false
				return
			}
		}
	})
	if !known && !ends {
		return false
	}
	if known {
		if side != NoSide {
			l.Side = side
		}
		if yarn != "" {
			l.Yarn = yarn
		}
	} else if l.Remark == "" {
		l.Remark = stitch.Carry(p.text[open.to:p.t[open.n].from], p.in.Terms, stitch.US)
	}
	p.i = open.n + 1
	return true
}

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
	return a
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
