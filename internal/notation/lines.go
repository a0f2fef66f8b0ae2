package notation

import (
	"strconv"
	"strings"

	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

// named reads a line that begins with a word of the source format: "Foundation:", "Start:", "Note:", …; nil for any other.
func (p *parser) named(at placed) Line {
	i := p.i
	t := p.at(0)
	if t.kind != tWord {
		return nil
	}
	colon := p.kindAt(1, tColon)
	switch {
	case t.word == wFoundation && colon:
		p.i += 2
		f := &Foundation{placed: at}
		f.Body, f.Claims = p.clauses()
		return f
	case t.low == "start" && colon:
		p.i += 2
		return p.start(at)
	case t.low == "note" && colon, t.low == "notes" && colon:
		return &Note{at, stitch.Carry(p.rawFrom(2), p.in.Terms, stitch.US)}
	case t.word == wThroughout && colon:
		p.i += 2
		ls := p.rules(at)
		p.more = ls[1:]
		return ls[0]
	case t.low == "film" && colon:
		p.i += 2
		return p.film(at)
	case t.low == "seam" && colon:
		p.i += 2
		return p.seam(at)
	case t.low == "chart" && colon:
		p.i += 2
		if rows, ok := p.rowsNamed(); ok {
			p.lineEnds(at)
			return &Chart{at, rows}
		}
		return p.lost(at, i, "rows of the chart: Chart: rows 1 to 12.")
	case t.low == "lengthen" || t.low == "shorten":
		return p.lengthen(at)
	case t.word == wPlace && (p.isAt(1, wMarker) || p.isAt(1, wA) && p.isAt(2, wMarker)):
		if m := p.mark(at); m != nil {
			return m
		}
	case t.word == wWork && colon, t.low == "shape" || t.low == "shaping" && p.kindAt(1, tWord) && !p.isAt(1, wRow):
		if w := p.workLine(at); w != nil {
			return w
		}
	}
	p.i = i
	return nil
}

// rawFrom returns the text of the line from the token k places on, as written.
func (p *parser) rawFrom(k int) string {
	if p.i+k >= p.end {
		return ""
	}
	from := p.t[p.i+k-1].to // the scanner drops words, so that the token itself may stand behind some
	return strings.TrimSpace(p.text[from:p.sc.to])
}

// lineEnds reports words that are left at the end of a line whose every word should have been read.
func (p *parser) lineEnds(at placed) {
	for !p.done() && (p.kindAt(0, tStop) || p.kindAt(0, tComma)) {
		p.i++
	}
	if p.done() {
		return
	}
	s := source.Span{From: p.here(), To: at.Span.To}
	p.report(s, "unread", quoted(p.text[s.From:s.To])+" is not understood; expected the end of the line", "take it out, or make it a Note: line of its own")
}

// lost makes an unread line, with a finding.
func (p *parser) lost(at placed, i int, wanted string) Line {
	s := source.Span{From: p.t[i].from, To: at.Span.To}
	p.report(s, "unread", quoted(p.text[s.From:s.To])+" is not understood; expected "+wanted, "say it in the words of the handbook, or make it a Note: line")
	return &Unread{at, p.text[at.Span.From:at.Span.To]}
}

// start reads "Start: 38 row-ends.", "Start: hem.left, 1 sc in each row-end.", "Start: (3 dc, ch 2) 4 times.", "Start: first 55 sts of yoke.last".
func (p *parser) start(at placed) Line {
	s := &Start{placed: at}
	i := p.i
	if c, ok := p.count(); ok {
		if n, ok := p.countedNoun(); ok && (p.done() || p.kindAt(0, tStop)) {
			s.Count, s.Noun = c, n
			p.lineEnds(at)
			return s
		}
	}
	p.i = i
	for {
		e, ok := p.edge()
		if !ok {
			break
		}
		s.Edges = append(s.Edges, e)
		k := p.i
		if !p.eatKind(tComma) && !p.eat(wAnd) && !p.eat(wThen) {
			break
		}
		p.eat(wAnd)
		p.eat(wThen)
		if !p.edgeAhead() {
			p.i = k
			break
		}
	}
	if len(s.Edges) > 0 {
		p.eatKind(tComma)
		s.Around = p.eat(wAround)
		p.eatKind(tComma)
		s.Pickup, s.Claims = p.clauses()
		return s
	}
	s.Body, s.Claims = p.clauses()
	return s
}

// film reads a moment: "8:40", "1:02:03".
func (p *parser) film(at placed) Line {
	i := p.i
	seconds := 0
	for n := 0; n < 3 && p.kindAt(0, tNumber); n++ {
		t := p.at(0)
		if n > 0 && t.n > 59 {
			break
		}
		seconds = 60*seconds + t.n
		p.i++
		if !p.eatKind(tColon) {
			p.lineEnds(at)
			return &Film{at, seconds}
		}
	}
	return p.lost(at, i, "a moment of the film: Film: 8:40")
}

// seam reads "hem.last to hem.foundation".
func (p *parser) seam(at placed) Line {
	i := p.i
	a, ok := p.edge()
	if ok && p.eat(wTo, wWith, wAnd) {
		if b, ok := p.edge(); ok {
			p.lineEnds(at)
			return &Seam{at, [2]Edge{a, b}}
		}
	}
	return p.lost(at, i, "two edges: Seam: hem.last to hem.foundation.")
}

// lengthen reads "Lengthen or shorten here, in steps of 2 rows."
func (p *parser) lengthen(at placed) Line {
	i := p.i
	for !p.done() && !p.numberNext() {
		p.i++
	}
	l := &Lengthen{placed: at}
	if c, ok := p.count(); ok {
		l.Step = c
		if rows := p.is(wRow); p.eat(wRow, wRnd) {
			if rows && c.plain() && c.Plain%2 == 1 {
				p.fs.Ask(p.in.File, c.Span, "parity", "after one step of "+strconv.Itoa(c.Plain)+" rows what follows begins on the other side", "write steps of "+strconv.Itoa(c.Plain+1)+" rows")
			}
			p.lineEnds(at)
			return l
		}
		return p.lost(at, i, "rows: Lengthen or shorten here, in steps of 2 rows.")
	}
	return l
}

// mark reads "Place marker a in the 12th st."
func (p *parser) mark(at placed) Line {
	p.i++
	p.eat(wA)
	p.eat(wMarker)
	m := &Mark{placed: at, Name: p.markerName()}
	if m.Name == "" && p.kindAt(0, tWord) && p.isAt(1, wIn) {
		m.Name = p.text[p.at(0).from:p.at(0).to]
		p.i++
	}
	t, ok := p.target()
	if !ok {
		return nil
	}
	switch {
	case t.Nth.Said:
		m.In = t.Nth
	case t.Where == First && !t.Count.Said:
		m.In = one
	case t.Where == Last && !t.Count.Said:
		m.Last = true
	default:
		return nil
	}
	p.lineEnds(at)
	return m
}

// workLine reads "Work: shaping body and sleeve", "Shape body and sleeve.".
func (p *parser) workLine(at placed) Line {
	p.i++
	p.eatKind(tColon)
	if p.low(0) == "shaping" || p.low(0) == "spread" {
		p.i++
	}
	w := &Work{placed: at}
	for p.kindAt(0, tWord) {
		t := p.at(0)
		if t.word != wAnd {
			w.Names = append(w.Names, p.text[t.from:t.to])
		}
		p.i++
		p.eatKind(tComma)
	}
	p.eatKind(tStop)
	if len(w.Names) == 0 || !p.done() {
		return nil
	}
	return w
}

// unlabelled reads a line without the name of a row: a repeat of rows, shaping that goes on, or more of the row above.
func (p *parser) unlabelled(at placed) Line {
	i := p.i
	if p.is(wNext, wThen) && p.kindAt(1, tColon) {
		p.i += 2
	}
	k := p.i
	if l := p.again(at, Label{}); l != nil {
		return l
	}
	p.i = k
	if c, ok := p.goOn(at); ok && (p.done() || p.kindAt(0, tStop) || p.kindAt(0, tDash) || p.kindAt(0, tOpen)) {
		c.Only = nil // the line holds it
		r := &Row{placed: at, Body: []Clause{c}}
		more, claims := p.clauses()
		r.Body, r.Claims = append(r.Body, more...), claims
		return r
	}
	p.i = i
	return p.row(at, Label{})
}
