package notation

import (
	"strings"

	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

// sentences are what a Throughout: line may say.
var sentences = []string{
	"ch 3 counts as dc", "ch 2 does not count as a st", "ch 3 stands but is not in the count", "rep n times means n in all", "rep n times means n more",
	"3 sc means sc in each of next 3 sts", "3 sc means 3 sc in one st", "each ch counts as a st", "ch-2 sp counts as 2 sts", "shell = 5 dc in one st",
	"counts are of dc", "work in BLO",
}

// rule reads a rule of the piece, one of a closed list of sentences.
func (p *parser) rule(at placed) Line {
	i := p.i
	r := &Rule{placed: at}
	if p.ruleSays(r) {
		p.rest0(at)
		return r
	}
	s := source.Span{From: p.t[i].from, To: at.Span.To}
	p.report(s, "unknown-rule", quoted(p.text[s.From:s.To])+" is no rule that can be kept", "write one of: "+strings.Join(sentences, "; "))
	return &Unread{at, p.text[at.Span.From:at.Span.To]}
}

func (p *parser) ruleSays(r *Rule) bool {
	i := p.i
	for _, read := range []func(*Rule) bool{p.chainRule, p.repeatRule, p.numberRule, p.defineRule, p.countRule} {
		p.i = i
		if read(r) {
			return true
		}
	}
	return false
}

// chainRule reads what a chain counts as.
func (p *parser) chainRule(r *Rule) bool {
	p.eat(wEach, wEvery, wA)
	p.eat(wFirst)
	switch {
	case p.is(wCh), p.kindAt(0, tNumber) && p.isAt(1, wCh), p.kindAt(0, tNumber) && p.kindAt(1, tHyphen):
		n, ok := p.chainNoun()
		if !ok && p.kindAt(0, tNumber) {
			r.Chain, _ = p.count()
			p.eatKind(tHyphen)
			ok = p.eat(wCh)
		}
		if !ok {
			return false
		}
		if n.Chains.Said {
			r.Chain = n.Chains
		} else if c, ok := p.count(); ok {
			r.Chain = c
		}
		r.Noun = n
	case p.is(wBeg, wBeginning, wStarting, wTurning, wTch):
		n, ok := p.noun()
		if !ok {
			return false
		}
		r.Noun, r.Chain = n, n.Chains
	default:
		return false
	}
	for p.is(wAt, wIn, wOf, wBeg, wBeginning, wStarting, wEach, wEvery, wRow, wRnd, wThroughout, wAll, wEnd, wA) || p.kindAt(0, tWord) && p.low(0) == "made" || p.kindAt(0, tWord) && (p.low(0) == "always" || p.low(0) == "never") {
		if p.low(0) == "never" {
			break
		}
		p.i++
	}
	never := p.low(0) == "never"
	if never {
		p.i++
	}
	if p.low(0) == "stands" {
		p.i++
		p.restOfPhrase()
		r.Kind = ChainStands
		return true
	}
	k := p.i
	c, ok := p.countsHere()
	if !ok {
		p.i = k
		if p.is(wBe) && p.isAt(1, wNot) {
			p.restOfPhrase()
			c.Says, ok = SaysNot, true
		}
	}
	if !ok {
		return false
	}
	p.eatThroughout()
	switch {
	case c.Says == SaysNot || never:
		r.Kind = ChainDoesNotCount
	case r.Noun.Kind == ASpace || r.Noun.Kind == AChain && !r.Chain.Said && c.As == (stitch.Stitch{}):
		r.Kind = ChainsAreStitches
	default:
		r.Kind = ChainCounts
	}
	r.Stitch, r.Plus, r.Sts = c.As, c.Plus, c.Sts
	return true
}

func (p *parser) eatThroughout() {
	p.eatKind(tComma)
	if p.low(0) == "here" {
		p.i++
		p.eat(wAnd)
	}
	p.eat(wThroughout)
}

// repeatRule reads what a number of repeats means.
func (p *parser) repeatRule(r *Rule) bool {
	if !p.eat(wRep) {
		return false
	}
	for !p.done() && !p.kindAt(0, tStop) && p.low(0) != "means" {
		p.i++
	}
	if p.low(0) != "means" {
		return false
	}
	p.i++
	for !p.done() && !p.kindAt(0, tStop) {
		switch {
		case p.is(wAll, wTotal):
			r.Kind = RepeatIsTotal
			p.restOfPhrase()
			return true
		case p.is(wMore):
			r.Kind = RepeatIsMore
			p.restOfPhrase()
			return true
		}
		p.i++
	}
	return false
}

// numberRule reads what a number before a stitch means.
func (p *parser) numberRule(r *Rule) bool {
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

// defineRule reads what a name stands for: "shell = 5 dc in one st", "V-st: (dc, ch 1, dc)".
func (p *parser) defineRule(r *Rule) bool {
	from := p.at(0).from
	k := 0
	for k < 6 && (p.kindAt(k, tWord) || p.kindAt(k, tNumber) || p.kindAt(k, tHyphen) || p.kindAt(k, tOpen) || p.kindAt(k, tShut)) {
		k++
	}
	if k == 0 || !p.kindAt(k, tEquals) && !p.kindAt(k, tColon) {
		return false
	}
	name := strings.TrimSpace(p.text[from:p.t[p.i+k-1].to])
	r.Kind, r.Name = Defines, name
	if s, n := p.readStitch(); n == k {
		r.Stitch = s
	} else {
		r.Stitch = stitch.Stitch{Name: name}
	}
	p.i += k + 1
	r.How, _ = p.clauses()
	return len(r.How) > 0
}

// countRule reads what the counts count.
func (p *parser) countRule(r *Rule) bool {
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

// learnNames collects the names that the block defines itself, so that they are known in every row of it.
func (p *parser) learnNames(from, to int) {
	for from < to {
		end := strings.IndexByte(p.text[from:to], '\n')
		if end < 0 {
			end = to
		} else {
			end += from
		}
		line := strings.TrimSpace(p.text[from:end])
		if rest, ok := cutFold(line, "throughout:"); ok {
			if at := strings.IndexByte(rest, '='); at > 0 && at < 40 {
				name := strings.TrimSpace(rest[:at])
				if _, known := stitch.Word(name, p.in.Terms); !known && name != "" && !strings.EqualFold(name, "join") {
					p.specials = append(p.specials[:len(p.specials):len(p.specials)], name)
				}
			}
		}
		from = end + 1
	}
}

// cutFold is strings.CutPrefix without regard to capitals.
func cutFold(s, prefix string) (string, bool) {
	if len(s) < len(prefix) || !strings.EqualFold(s[:len(prefix)], prefix) {
		return s, false
	}
	return s[len(prefix):], true
}
