package notation

import (
	"strconv"
	"strings"

	"foundrow/internal/stitch"
)

// foreignStitch reads a stitch of the other terms where it can be nothing else, with a finding.
func (p *parser) foreignStitch(t *token) (stitch.Stitch, bool) {
	if t.kind != tWord || t.word != unknown || t.is || t.begins || len(t.low) > 12 {
		return stitch.Stitch{}, false
	}
	if terms, marked := stitch.Marks(t.low); !marked || terms == p.in.Terms {
		return stitch.Stitch{}, false
	}
	s, ok := stitch.Word(t.low, p.in.Terms.Other())
	if ok {
		p.reportForeign(t, s.In(p.in.Terms))
	}
	return s, ok
}

// reportForeign reports a word of the other terms, once.
func (p *parser) reportForeign(t *token, write string) {
	for _, f := range p.foreignAt {
		if f == t.from {
			return
		}
	}
	p.foreignAt = append(p.foreignAt, t.from)
	other := p.in.Terms.Other()
	p.report(t.span(), "wrong-terms", quoted(p.text[t.from:t.to])+" is a "+upper(other)+" term; this pattern is written in "+upper(p.in.Terms)+" terms", "write "+quoted(write)+", or say terms = "+strconv.Quote(other.String()))
}

func upper(t stitch.Terms) string {
	if t == stitch.UK {
		return "UK"
	}
	return "US"
}

// stitchHere reads the longest stitch that begins at the next token.
func (p *parser) stitchHere() (stitch.Stitch, bool) {
	i := p.i
	if s, ok := p.special(); ok {
		return s, true
	}
	switch {
	case p.is(wBeg, wBeginning, wStanding, wHalf, wStarting):
		manner := [...]stitch.Manner{stitch.Beginning, stitch.Standing, stitch.Half}[0]
		switch {
		case p.is(wStanding):
			manner = stitch.Standing
		case p.is(wHalf):
			manner = stitch.Half
		}
		if p.is(wHalf) {
			if s, n := p.readStitch(); n > 1 { // half double crochet
				p.i += n
				return s, true
			}
		}
		p.i++
		if s, ok := p.stitchHere(); ok && s.Manner == stitch.Usual && (manner != stitch.Half || s.Find() == nil || s.Find().Class == stitch.Unit) {
			s.Manner = manner
			return s, true
		}
		p.i = i
		return stitch.Stitch{}, false
	case p.kindAt(0, tNumber):
		return p.unitOf()
	}
	t := p.at(0)
	if s, ok := p.foreignStitch(t); ok {
		p.i++
		return s, true
	}
	if t.kind != tWord || !t.is && !t.begins && t.word != wLoops && t.word != wBack && t.word != wFront && t.word != unknown {
		return stitch.Stitch{}, false
	}
	if t.is && !t.begins && !p.mayChange(1) {
		p.i++
		return t.stitch, true
	}
	s, n := p.readStitch()
	if n == 0 {
		return stitch.Stitch{}, false
	}
	p.i += n
	if e := s.Find(); e != nil && e.Class == stitch.Plain && s.Together == 0 {
		if u, ok := p.unitAfter(s); ok {
			return u, true
		}
	}
	return s, true
}

// mayChange reports whether the token k on could belong to a stitch that ends before it: "dc dec", "dc 2 tog", "sc BLO".
func (p *parser) mayChange(k int) bool {
	t := p.at(k)
	switch t.kind {
	case tHyphen:
		t = p.at(k + 1)
		return t.is && p.unitClass(t.stitch)
	case tWord:
		switch t.word {
		case wInc, wDec, wLoops, wBack, wFront, wThrough, wBoth:
			return true
		case wNext:
			return (p.isAt(k+2, wSt) && p.isAt(k+3, wTog)) || p.isAt(k+2, wTog)
		}
		return t.low == "third" || t.is && p.unitClass(t.stitch)
	case tNumber:
		return t.n >= 2 && t.n <= 9 && (p.isAt(k+1, wTog) || p.isAt(k+1, wSt) && p.isAt(k+2, wTog))
	case tOrdinal:
		return t.n == 3 && p.isAt(k+1, wLoop)
	}
	return false
}

// readStitch reads a stitch of the dictionary without passing over it, and says how many tokens it takes.
func (p *parser) readStitch() (stitch.Stitch, int) {
	var words [8]string
	n := 0
	for n < len(words) {
		w := p.low(n)
		if w == "" {
			break
		}
		words[n] = w
		n++
	}
	return stitch.Read(words[:n], p.in.Terms)
}

func (p *parser) unitClass(s stitch.Stitch) bool {
	e := s.Find()
	return e == nil || e.Class == stitch.Unit
}

// unitOf reads "3-dc cluster", "5-tr cluster", "3-dc cl".
func (p *parser) unitOf() (stitch.Stitch, bool) {
	t := p.at(0)
	if !p.kindAt(1, tHyphen) || t.n < 1 || t.n > 50 {
		return stitch.Stitch{}, false
	}
	i := p.i
	p.i += 2
	of, n := p.readStitch()
	if e := of.Find(); n == 0 || e == nil || e.Class != stitch.Plain || of != of.Base() {
		p.i = i
		return stitch.Stitch{}, false
	}
	p.i += n
	p.eatKind(tHyphen)
	if p.eat(wGroup) {
		return stitch.Stitch{Name: "group", Of: of.Name, Members: uint8(t.n)}, true
	}
	unit, ok := p.stitchHere()
	if !ok || !p.unitClass(unit) || unit.Of != "" {
		p.i = i
		return stitch.Stitch{}, false
	}
	unit.Of, unit.Members = of.Name, uint8(t.n)
	return unit, true
}

// unitAfter reads the unit of "dc cluster", "hdc puff".
func (p *parser) unitAfter(of stitch.Stitch) (stitch.Stitch, bool) {
	i := p.i
	p.eatKind(tHyphen)
	u, ok := p.unitHere(of)
	if !ok {
		p.i = i
	}
	return u, ok
}

func (p *parser) unitHere(of stitch.Stitch) (stitch.Stitch, bool) {
	t := p.at(0)
	if t.kind != tWord || !t.is || of.Post != stitch.NoPost || of.Loop != stitch.BothLoops {
		return stitch.Stitch{}, false
	}
	if e := t.stitch.Find(); e == nil || e.Class != stitch.Unit || e.Name == "V-st" {
		return stitch.Stitch{}, false
	}
	p.i++
	u := t.stitch
	u.Of = of.Name
	return u, true
}

// special reads a name of the pattern's own, in whatever capitals, several of them with an s.
func (p *parser) special() (stitch.Stitch, bool) {
	if len(p.specials) == 0 || p.done() {
		return stitch.Stitch{}, false
	}
	t := p.at(0)
	if t.kind != tWord && t.kind != tNumber {
		return stitch.Stitch{}, false
	}
	best, until := "", 0
	limit := p.windowEnd()
	for _, name := range p.specials {
		if len(name) <= len(best) || t.from+len(name) > limit || !strings.EqualFold(p.text[t.from:t.from+len(name)], name) {
			continue
		}
		end := t.from + len(name)
		if end < limit && (p.text[end] == 's' || p.text[end] == 'S') {
			end++
		}
		if end < limit && (isLetter(p.text[end]) || isDigit(p.text[end])) {
			continue
		}
		best, until = name, end
	}
	if best == "" {
		return stitch.Stitch{}, false
	}
	for !p.done() && p.at(0).from < until {
		p.i++
	}
	return stitch.Stitch{Name: best}, true
}
