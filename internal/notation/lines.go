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
			p.rest0(at)
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
	from := p.at(k).from
	if p.i+k >= p.end {
		return ""
	}
	// what was dropped by the scanner stands before the token: begin behind the one before
	from = p.t[p.i+k-1].to
	return strings.TrimSpace(p.text[from:p.sc.to])
}

// rest0 reports words that are left at the end of a line whose every word should have been read.
func (p *parser) rest0(at placed) {
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
			p.rest0(at)
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
			p.rest0(at)
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
			p.rest0(at)
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
		if p.eat(wRow, wRnd) {
			p.rest0(at)
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
	p.rest0(at)
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

// sizesOnly reads "Sizes M and 3X to 5X only:", "Size L only:", "All other sizes:"; nothing is consumed otherwise.
func (p *parser) sizesOnly() *Only {
	if t := p.at(0); t.kind != tWord && t.kind != tNumber && t.kind != tOrdinal || t.is && t.word == unknown || len(p.in.Sizes) == 0 && !p.is(wSizes, wAll, wOther, wFor) {
		return nil
	}
	i := p.i
	var o Only
	p.eat(wFor)
	switch {
	case p.eatAll(wAll, wOther, wSizes), p.eatAll(wOther, wSizes):
		o.Rest = true
	case p.eat(wSizes):
		if !p.sizeNames(&o) {
			p.i = i
			return nil
		}
	default:
		if p.sizeAhead() < 0 || !p.sizeNames(&o) || !p.isAt(-1, wOnly) {
			p.i = i
			return nil
		}
	}
	p.eat(wOnly)
	if !p.eatKind(tColon) && !p.eatKind(tDash) {
		p.i = i
		return nil
	}
	o.Span = p.since(i)
	p.checkSizes(o)
	only := o
	return &only
}

// sizeAhead is sizeHere without reading.
func (p *parser) sizeAhead() int {
	i := p.i
	n := p.sizeHere()
	p.i = i
	return n
}

// sizeNames reads the names before "only" or the colon; "3X to 5X" is kept as it is written.
func (p *parser) sizeNames(o *Only) bool {
	from := p.i
	flush := func() {
		if p.i > from {
			o.Names = append(o.Names, p.text[p.t[from].from:p.t[p.i-1].to])
		}
	}
	for k := 0; k < 40 && !p.done(); k++ {
		switch t := p.at(0); {
		case t.kind == tColon || t.kind == tDash || p.is(wOnly):
			flush()
			p.eat(wOnly)
			return len(o.Names) > 0
		case t.kind == tComma || t.kind == tSlash || p.is(wAnd):
			flush()
			p.i++
			from = p.i
		case t.kind == tWord || t.kind == tNumber || t.kind == tHyphen || t.kind == tOrdinal:
			p.i++
		default:
			return false
		}
	}
	return false
}

// checkSizes reports names that are no sizes of the pattern.
func (p *parser) checkSizes(o Only) {
	for _, name := range o.Names {
		a, b, isRange := strings.Cut(name, " to ")
		ends := []string{a}
		if isRange {
			ends = append(ends, b)
		}
		for _, end := range ends {
			if sizeIndex(p.in.Sizes, end) >= 0 {
				continue
			}
			fix := "the sizes are " + source.List(p.in.Sizes, "and")
			if len(p.in.Sizes) == 0 {
				fix = "the pattern has one size: leave the line out, or list the sizes in [sizes]"
			} else if near := source.Nearest(end, p.in.Sizes); near != "" {
				fix = "did you mean " + near + "?"
			}
			p.report(o.Span, "unknown-size", quoted(end)+" is no size of this pattern", fix)
		}
	}
}

// Indexes returns which of the sizes an Only names, in order; nil for every size. Other sizes are those that none of the named
// before it took, which the caller knows.
func (o Only) Indexes(sizes []string) []int {
	var out []int
	for _, name := range o.Names {
		a, b, isRange := strings.Cut(name, " to ")
		from := sizeIndex(sizes, a)
		to := from
		if isRange {
			to = sizeIndex(sizes, b)
		}
		for i := from; i >= 0 && i <= to; i++ {
			out = append(out, i)
		}
	}
	return out
}

func sizeIndex(sizes []string, name string) int {
	for i, s := range sizes {
		if strings.EqualFold(s, strings.TrimSpace(name)) {
			return i
		}
	}
	return -1
}

// sizeHere reads the name of a size and returns its index, or -1.
func (p *parser) sizeHere() int {
	if p.done() {
		return -1
	}
	from, limit := p.at(0).from, p.windowEnd()
	best := -1
	for i, s := range p.in.Sizes {
		if from+len(s) > limit || !strings.EqualFold(p.text[from:from+len(s)], s) || best >= 0 && len(p.in.Sizes[best]) >= len(s) {
			continue
		}
		if end := from + len(s); end < limit && (isLetter(p.text[end]) || isDigit(p.text[end])) {
			continue
		}
		best = i
	}
	if best < 0 {
		return -1
	}
	end := from + len(p.in.Sizes[best])
	for !p.done() && p.at(0).from < end {
		p.i++
	}
	p.eatKind(tStop)
	return best
}

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
