package notation

import "foundrow/internal/stitch"

// markerName reads the name of a marker: a single letter, or a colour.
func (p *parser) markerName() string {
	t := p.at(0)
	if t.kind == tWord && (len(t.low) == 1 || t.word == wA) && !p.isAt(0, wX) {
		p.i++
		return p.text[t.from:t.to]
	}
	return ""
}

func (p *parser) remark(i int) *Remark {
	s := p.since(i)
	text := p.text[s.From:s.To]
	if len(text) > 1 && text[0] >= 'A' && text[0] <= 'Z' && text[1] >= 'a' {
		text = string(text[0]|0x20) + text[1:]
	}
	return &Remark{p.placed(i), stitch.Carry(text, p.in.Terms, stitch.US), false}
}

// marker reads "place marker", "pm in last st", "mark last sc", "move m to the first of them", "remove marker".
func (p *parser) marker() (Clause, bool) {
	i := p.i
	m := &Marker{}
	switch {
	case p.is(wPlace):
		m.Does = "place"
		if pm := p.low(0) == "pm"; !pm && !p.isAt(1, wMarker) && !p.isAt(2, wMarker) {
			return nil, false
		}
		p.i++
	case p.is(wMove):
		m.Does = "move"
		p.i++
	case p.is(wRemove):
		m.Does = "remove"
		p.i++
	case p.low(0) == "mark":
		p.i++
		t := Target{}
		k := p.i
		if !p.place(&t) {
			p.i = i
			return nil, false
		}
		t.Span = p.since(k)
		m.Does, m.In = "place", t
		m.placed = p.placed(i)
		return m, true
	default:
		return nil, false
	}
	p.eat(wA)
	p.eat(wMarker)
	m.Name = p.markerName()
	if t, ok := p.target(); ok {
		m.In = t
	} else if p.eat(wTo) || p.is(wUp) {
		p.restOfPhrase()
	}
	m.placed = p.placed(i)
	return m, true
}

// quotedClause reads words of the designer's own with what they do: "…" (uses 3, makes 3).
func (p *parser) quotedClause() Clause {
	i := p.i
	t := p.at(0)
	q := &Quoted{Text: stitch.Carry(p.text[t.from+t.n:t.to-t.n], p.in.Terms, stitch.US)} // both marks are as long
	p.i++
	if open := p.at(0); open.kind == tOpen && open.n < p.end && (p.low(1) == "uses" || p.low(1) == "makes" || p.low(1) == "use") {
		p.within(p.i+1, open.n, func() {
			for !p.done() {
				switch {
				case p.low(0) == "uses":
					p.i++
					q.Uses, _ = p.count()
					p.noun()
				case p.low(0) == "makes":
					p.i++
					q.Makes, _ = p.count()
					if n, ok := p.noun(); ok {
						q.Stitch = n.Stitch
					}
				case p.kindAt(0, tComma), p.is(wAnd):
					p.i++
				default:
					p.report(p.at(0).span(), "unread", "a quoted clause says what it uses and makes, and "+quoted(p.text[p.at(0).from:p.at(0).to])+" is neither", "write (uses 3, makes 3)")
					p.i = p.end
				}
			}
		})
		p.i = open.n + 1
	} else {
		q.Bare = true
	}
	q.placed = p.placed(i)
	return q
}

// remarkHere reads words that change nothing.
func (p *parser) remarkHere() (Clause, bool) {
	i := p.i
	if p.eatAll(wAt, wEnd, wOf) { // "at end of the shoulder rows ch 20"
		for k := 0; k < 4 && p.kindAt(0, tWord); k++ {
			p.i++
			if p.isAt(-1, wRow, wRnd) {
				return p.remark(i), true
			}
		}
		p.i = i
	}
	if p.is(wFor) && !p.lengthAt(1) { // "for the left front,"
		p.restOfPhrase()
		plain := p.i > i+1
		for k := i + 1; k < p.i; k++ {
			plain = plain && p.t[k].kind == tWord && !p.t[k].is && p.t[k].word != wNumberWord
		}
		if plain {
			return p.remark(i), true
		}
		p.i = i
	}
	for _, r := range remarks {
		if p.eatWords(r) {
			p.restOfPhrase()
			return p.remark(i), true
		}
	}
	return nil, false
}

// remarks are the phrases, by their first words, that change neither what is used nor what is made. Anything else is unread.
var remarks = [][]string{
	{"as", "set"}, {"as", "established"}, {"pull", "tight"}, {"not", "counting"}, {"counting"}, {"including"}, {"excluding"},
	{"do", "not", "count"}, {"stuff"}, {"stuffing"}, {"weave", "in"}, {"mark", "this"}, {"mark", "row"}, {"mark", "rnd"}, {"begin", "stuffing"}, {"start", "stuffing"}, {"continue", "stuffing"},
	{"rs", "facing"}, {"ws", "facing"}, {"this", "is"}, {"keep"}, {"keeping"}, {"use"}, {"close"}, {"at", "same", "time"}, {"carrying"}, {"without", "widening"},
	{"without", "shaping"}, {"without", "increasing"}, {"evenly"}, {"hold"}, {"adjust"}, {"be", "careful"}, {"being", "careful"}, {"leave", "a", "long"}, {"leaving", "a"}, {"ch", "counts"},
	{"which", "makes"}, {"which"}, {"work", "in", "a", "spiral"}, {"mark", "as", "rs"}, {"sew"}, {"with", "rs"}, {"working", "over"}, {"now"}, {"flatten"}, {"fold"},
	{"or"}, {"working", "in", "front"}, {"working", "behind"}, {"working", "around"}, {"in", "front", "of"}, {"taking", "care"}, {"continuing"}, {"working", "in", "rounds"}, {"working", "in", "rows"}, {"work", "in", "rounds"}, {"work", "in", "rows"}, {"work", "in", "spiral"},
}
