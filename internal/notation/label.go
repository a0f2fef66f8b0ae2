package notation

import (
	"strings"

	"foundrow/internal/stitch"
)

// labelled reads a line that begins with the name of a row; nil when it has none.
func (p *parser) labelled(at placed) Line {
	i := p.i
	yarn := ""
	if p.yarnName(0) && p.kindAt(1, tColon) && p.isAt(2, wRow, wRnd) { // "A) Row 3:"
		yarn = p.yarnWords()
		p.i++
	}
	l, ok := p.label()
	if !ok {
		p.i = i
		return nil
	}
	if l.Yarn == "" {
		l.Yarn = yarn
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
		if t.kind != tWord || t.word == wRow || t.word == wRnd || t.word == wRep || t.word == wWork || t.word == wContinue || t.word == wAs {
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
