package notation

// A bracketKind is what a bracket holds.
type bracketKind uint8

const (
	group bracketKind = iota
	list              // numbers for the sizes
	remark
	claim
)

// bracketAt decides what the bracket at token i holds. The order of the questions matters and is told in the architecture: numbers
// only after a number are a list, which count has taken before anybody asks here; then remarks, then claims, else it is a group.
func (p *parser) bracketAt(i int) bracketKind {
	to := p.t[i].n
	if to >= p.end {
		return group
	}
	if _, ok := p.numbersIn(i); ok {
		if i > 0 && p.expectsNumber(i-1) && to-i > 2 {
			return list
		}
		return claim
	}
	if p.onlyNames(i, to) {
		return remark
	}
	closes := p.closesRow(to + 1)
	if closes && p.t[i+1].kind != tWord && p.claimsIn(i+1, to) { // "58 dc counting turning ch"
		return claim
	}
	if p.remarkIn(i, to) && !p.toldHow(to+1) {
		return remark
	}
	if closes && p.claimsIn(i+1, to) {
		return claim
	}
	return group
}

// expectsNumber reports whether a number for the sizes may follow token i: "next (50, 54, 58)", "sc (3, 4, 4)".
func (p *parser) expectsNumber(i int) bool {
	t := &p.t[i]
	return t.kind == tWord && (t.is || t.word == wNext || t.word == wIn || t.word == wFirst || t.word == wLast || t.word == wSkip || t.word == wCh || t.word == wOf)
}

// toldHow reports whether token i says how often or where the bracket before it is worked, so that it is no remark.
func (p *parser) toldHow(i int) bool {
	if i >= p.end {
		return false
	}
	t := &p.t[i]
	if t.kind == tNumber || t.kind == tSlot {
		return i+1 < p.end && (p.t[i+1].kind == tOpen || p.t[i+1].kind == tWord && (p.t[i+1].word == wTimes || p.t[i+1].word == wX || p.t[i+1].word == wMore))
	}
	switch t.word {
	case wX, wTwice, wOnce, wThrice, wIn, wAcross, wAround:
		return t.kind == tWord
	}
	return false
}

// remarkIn reports whether the bracket from token i to its end says something about the work rather than working it.
func (p *parser) remarkIn(i, to int) bool {
	for k := i + 1; k < to; k++ {
		t := &p.t[k]
		if t.kind != tWord {
			continue
		}
		switch t.word {
		case wCounting, wNot, wDo, wSkipped, wThroughout, wFacing, wRS, wWS, wWhich, wBe:
			return true
		case wCount:
			return k > i+1 || p.t[k].low != "count"
		}
		if k == i+1 && remarkWords[t.low] {
			return true
		}
	}
	return false
}

// onlyNames reports whether the bracket holds a name and nothing to work, and is not told how often or where: "(sleeve)".
func (p *parser) onlyNames(i, to int) bool {
	for k := i + 1; k < to; k++ {
		t := &p.t[k]
		switch {
		case t.kind != tWord || t.is || t.begins && t.word != wFront && t.word != wBack:
			return false
		case t.word == unknown && len(t.low) > 3, t.word == wFront, t.word == wBack, t.word == wLeft, t.word == wRight, t.word == wFirst, t.word == wSide, t.word == wFor:
		default:
			return false
		}
	}
	if to+1 >= p.end {
		return to > i+1
	}
	next := &p.t[to+1]
	return to > i+1 && (next.kind == tComma || next.kind == tStop || next.kind == tSemi)
}

// remarkWords begin a bracket that only explains.
var remarkWords = map[string]bool{
	"see": true, "note": true, "same": true, "that": true, "this": true, "these": true, "here": true, "mark": true, "pm": true, "optional": true,
	"you": true, "it": true, "if": true, "tip": true, "photo": true, "i.e": true, "ie": true, "eg": true, "first": true, "corner": true, "beg": true, "shell": true,
	"v-st": true, "made": true, "as": true, "a": true, "all": true, "or": true, "remember": true, "make": true, "and": true, "right": true, "left": true, "side": true,
}

// closesRow reports whether nothing is worked from token i on: only joins, turns, further counts and remarks.
func (p *parser) closesRow(i int) bool {
	for i < p.end {
		t := &p.t[i]
		switch t.kind {
		case tComma, tStop, tSemi, tDash, tColon:
			i++
			continue
		case tOpen:
			if t.n >= p.end {
				return false
			}
			i = t.n + 1
			continue
		case tWord:
			switch t.word {
			case wTurn, wJoin, wFasten, wDo, wCh, wCut, wPlace, wMarker, wMarked, wChange, wWith, wDrop, wWithout, wLeave, wRemove, wMove, wStuff, wWork, wContinue, wNot:
				return true
			}
			return t.low == "sl" || t.low == "ss" || t.low == "mark" || t.low == "stuff" || t.low == "invisible"
		case tQuote:
			return true
		}
		return false
	}
	return true
}
