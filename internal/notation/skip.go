package notation

import "foundrow/internal/stitch"

// onlyOn reads "work on first 20 sts only".
func (p *parser) onlyOn() (Clause, bool) {
	i := p.i
	if !p.eatAll(wWork, wOn) && !p.eatAll(wWorking, wOn) {
		return nil, false
	}
	var t Target
	k := p.i
	if !p.place(&t) || !p.isAt(-1, wOnly) || t.Where != First && t.Where != Last && t.Where != Next && t.Where != Same {
		p.i = i
		return nil, false
	}
	t.Span = p.since(k)
	return &Within{placed: p.placed(i), In: t}, true
}

// skip reads "sk 2 sts", "miss next ch-1 sp", "skip that sp", "sk 3 ch (counts as dc)".
func (p *parser) skip() (Clause, bool) {
	i := p.i
	if terms, marked := stitch.Marks(p.low(0)); marked && terms != p.in.Terms || p.low(0) == "missing" && p.in.Terms == stitch.US || p.low(0) == "skipping" && p.in.Terms == stitch.UK {
		p.reportForeign(p.at(0), map[stitch.Terms]string{stitch.US: "sk", stitch.UK: "miss"}[p.in.Terms])
	}
	p.i++
	var t Target
	k := p.i
	p.eat(wOver)
	if p.kindAt(0, tComma) || p.done() {
		t.Count = one
	} else if !p.skipped(&t) {
		p.want("what is skipped: 2 sts, next ch, ch-1 sp")
		return nil, false
	}
	t.Span = p.since(min(k, p.i-1))
	p.eatFor()
	return &Skip{placed: p.placed(i), In: t}, true
}

func (p *parser) skipped(t *Target) bool {
	if p.is(wTo) { // "skip to next ch-2 sp"
		e, ok := p.extent()
		t.Till = e
		return ok
	}
	if !p.place(t) {
		return false
	}
	t.Till, _ = p.till()
	for p.kindAt(0, tWord) && p.low(0) == "nearest" {
		p.i++
		p.eat(wHook)
		t.Where = FromHook
	}
	return true
}

// leave reads "leave last 4 sts unworked", "leaving rem sts unworked", "leave the rest", "leave 5".
func (p *parser) leave() (Clause, bool) {
	i := p.i
	for k := 1; k < 6 && p.kindAt(k, tWord); k++ { // "leaving a long tail for sewing"
		if p.low(k) == "tail" || p.isAt(k, wYarn) {
			p.restOfPhrase()
			return p.remark(i), true
		}
	}
	p.i++
	var t Target
	k := p.i
	if !p.place(&t) {
		for p.kindAt(0, tWord) && (p.is(unknown, wOf, wRow, wRnd)) {
			p.i++
		}
		if p.i == k {
			return nil, false
		}
		t.Where, t.Noun = Remaining, Noun{Kind: AnyStitch}
	}
	t.Span = p.since(k)
	if t.Where == Remaining && p.kindAt(0, tColon) {
		for !p.done() && !p.kindAt(0, tStop) { // what becomes of the rest is told for the reader
			p.i++
		}
	}
	p.eat(wUnworked)
	for p.kindAt(0, tWord) && p.is(wFree) {
		p.i++
	}
	p.eatFor()
	return &Leave{placed: p.placed(i), In: t}, true
}
