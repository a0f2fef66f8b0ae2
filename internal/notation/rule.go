package notation

import (
	"strings"

	"foundrow/internal/source"
)

// sentences are what a Throughout: line may say.
var sentences = []string{
	"ch 3 counts as dc", "ch 2 does not count as a st", "ch 3 stands but is not in the count", "rep from * n times means n in all",
	"rep from * n times means n more", "3 sc means sc in each of next 3 sts", "3 sc means 3 sc in one st", "each ch counts as a st",
	"each ch-2 sp counts as 2 sts", "each sl st counts as a st", "shell = 5 dc in one st", "bs makes 1 st in 1 st", "counts are of dc",
}

// rules reads a Throughout: line: one or more rules of the piece, each a sentence of a closed list.
func (p *parser) rules(at placed) []Line {
	var out []Line
	end := p.end
	for !p.done() {
		i := p.i
		stop := p.i
		for stop < end && p.t[stop].kind != tSemi && p.t[stop].kind != tStop {
			if p.t[stop].kind == tOpen && p.t[stop].n < end {
				stop = p.t[stop].n
			}
			stop++
		}
		p.end = stop
		one := at
		if stop > i {
			one.Span = source.Span{From: p.t[i].from, To: p.t[stop-1].to}
			if len(out) == 0 {
				one.Span.From = at.Span.From
			}
			out = p.rule(one, out)
		}
		p.i, p.end = stop, end
		for p.kindAt(0, tSemi) || p.kindAt(0, tStop) {
			p.i++
		}
	}
	if len(out) == 0 {
		out = append(out, p.lost(at, max(p.i-1, 0), "a rule of the piece"))
	}
	return out
}

// rule reads one sentence and adds it to those of its line.
func (p *parser) rule(at placed, out []Line) []Line {
	i := p.i
	r := &Rule{placed: at}
	fs := len(p.fs)
	for _, read := range []func(*Rule) bool{p.chainRule, p.repeatRule, p.numberRule, p.makesRule, p.countRule, p.defineRule} {
		p.i = i
		*r = Rule{placed: at}
		if read(r) && (p.done() || len(p.fs) > fs) {
			return append(out, r)
		}
		p.fs = p.fs[:fs]
	}
	p.i = i
	if n := len(out); n > 0 {
		if before, ok := out[n-1].(*Rule); ok && before.Kind == Defines && p.isFirst() {
			before.First = true
			return out
		}
	}
	s := source.Span{From: p.t[i].from, To: at.Span.To}
	text := p.text[s.From:s.To]
	p.report(s, "unknown-rule", quoted(text)+" is no rule that can be kept", "write one of: "+strings.Join(sentences, "; "))
	return append(out, &Unread{at, "Throughout: " + text})
}

// isFirst reads what may follow a definition: "that dc is the first dc of the new round".
func (p *parser) isFirst() bool {
	for p.kindAt(0, tWord) && !p.is(wBe) {
		p.i++
	}
	return p.eat(wBe) && p.eat(wFirst)
}

// repeatRule reads what a number of repeats means: "rep from * n times means n more", "\"rep from * 6 times\" means 7 in all".
func (p *parser) repeatRule(r *Rule) bool {
	times := 0
	switch t := p.at(0); {
	case t.kind == tQuote && strings.Contains(small(p.text[t.from:t.to]), "rep"):
		times = numberInside(p.text[t.from:t.to])
		p.i++
	case p.is(wRep):
		for !p.done() && p.low(0) != "means" && !p.kindAt(0, tEquals) {
			if t := p.at(0); t.kind == tNumber || t.kind == tWord && t.word == wNumberWord {
				times, _ = p.number()
				continue
			}
			if p.eat(wOnce) {
				times = 1
				continue
			}
			p.i++
		}
	default:
		return false
	}
	for p.kindAt(0, tWord) && p.low(0) != "means" {
		p.i++
	}
	if p.low(0) != "means" && !p.kindAt(0, tEquals) {
		return false
	}
	p.i++
	n := 0
	for !p.done() {
		if k, ok := p.number(); ok {
			n = k
			continue
		}
		switch {
		case p.is(wAll, wTotal):
			r.Kind = RepeatIsTotal
			if times > 0 && n == times+1 {
				r.Kind = RepeatIsMore
			}
			p.restOfRule()
			return n == 0 || times == 0 || n == times || n == times+1
		case p.is(wMore):
			r.Kind = RepeatIsMore
			p.restOfRule()
			return true
		}
		p.i++
	}
	return false
}

// numberInside returns the last number in a quotation: 6 of "rep from * 6 times", 1 of "rep from * once".
func numberInside(s string) int {
	n := 0
	for _, w := range strings.FieldsFunc(small(s), func(r rune) bool { return r == ' ' || r == '"' }) {
		switch v, ok := numberWords[w]; {
		case ok:
			n = v
		case w == "once":
			n = 1
		case w == "twice":
			n = 2
		case w[0] >= '0' && w[0] <= '9' && len(w) < 5:
			n = 0
			for i := 0; i < len(w) && isDigit(w[i]); i++ {
				n = 10*n + int(w[i]-'0')
			}
		}
	}
	return n
}

// numberRule reads what a number before a stitch means: "3 sc means sc in each of next 3 sts".
func (p *parser) numberRule(r *Rule) bool {
	if p.kindAt(0, tQuote) {
		return false
	}
	if _, ok := p.count(); !ok {
		return false
	}
	if _, ok := p.stitchHere(); !ok || p.low(0) != "means" {
		return false
	}
	p.i++
	p.count()
	if _, ok := p.stitchHere(); !ok {
		return false
	}
	t, ok := p.target()
	if !ok {
		return false
	}
	r.Kind = NumberFirstIsOnePlace
	if t.Each || t.Count.Said && t.Count.Plain > 1 {
		r.Kind = NumberFirstIsRun
	}
	return true
}

// countRule reads what the counts count: "counts are of dc", "sts = dc + ch-1 spaces".
func (p *parser) countRule(r *Rule) bool {
	if p.is(wSt) && p.kindAt(1, tEquals) {
		p.i += 2
		for !p.done() {
			n, ok := p.noun()
			if !ok {
				return false
			}
			if n.Kind == ASpace || n.Kind == AChain {
				r.Noun, r.Chain = n, n.Chains
			}
			if !p.eatKind(tPlus) {
				p.eat(wAnd)
			}
		}
		r.Kind = ChainsAreStitches
		return r.Noun.Kind != NoNoun
	}
	if !p.eat(wCount) {
		return false
	}
	p.eat(wBe)
	p.eat(wOf)
	n, ok := p.countedNoun()
	if !ok {
		return false
	}
	p.eat(wOnly)
	r.Kind, r.Noun = CountOf, n
	return true
}
