package notation

import (
	"strings"

	"foundrow/internal/source"
	"foundrow/internal/stitch"
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

// chainRule reads what a chain, or a slip stitch, counts as: "ch 2 at start of a row does not count", "ch 3 stands for the first st",
// "the skipped ch 3 is the first dc", "ch 4 = dc, ch 1", "chains count as sts".
func (p *parser) chainRule(r *Rule) bool {
	p.eat(wEach, wEvery, wA, wAll)
	p.eat(wFirst)
	closing := p.low(0) == "closing"
	if closing {
		p.i++
	}
	if s, n := p.readStitch(); n > 0 && s.Name == "sl st" {
		p.i += n
		if p.eat(wTo) {
			p.i++
		}
		if p.eat(wAnd) {
			return p.closingRule(r)
		}
		r.Noun = Noun{Kind: AStitch, Stitch: s}
		return p.slipRule(r)
	}
	if p.eat(wSkipped) {
		r.Skipped = true
	}
	n, ok := p.ruleChain()
	if !ok {
		return false
	}
	r.Noun, r.Chain = n, n.Chains
	for p.is(wAt, wIn, wOf, wBeg, wBeginning, wStarting, wEach, wEvery, wRow, wRnd, wThroughout, wAll, wEnd, wA, wBefore) || p.low(0) == "made" || p.low(0) == "always" {
		p.i++
	}
	return p.chainSaid(r)
}

// ruleChain reads the chain that a rule is about.
func (p *parser) ruleChain() (Noun, bool) {
	i := p.i
	if p.is(wTurning, wBeg, wBeginning, wStarting) && p.isAt(1, wCh) || p.is(wTch) {
		n, ok := p.noun()
		if ok && !n.Chains.Said {
			n.Chains = p.chainsAfter()
		}
		return n, ok
	}
	if p.is(wCh) {
		n, ok := p.chainNoun()
		if ok && !n.Chains.Said && n.Kind == AChain {
			n.Chains, _ = p.count()
		}
		if ok && p.is(wAt) && !n.Chains.Said { // "the chain at the start of every round"
			n.Kind = TurningCh
		}
		return n, ok
	}
	if c, ok := p.count(); ok {
		p.eatKind(tHyphen)
		if p.eat(wCh) {
			if p.eatKind(tHyphen); p.eat(wSp, wLoop) {
				return Noun{Kind: ASpace, Chains: c}, true
			}
			return Noun{Kind: AChain, Chains: c}, true
		}
	}
	p.i = i
	return Noun{}, false
}

// chainSaid reads what is said of a chain.
func (p *parser) chainSaid(r *Rule) bool {
	switch {
	case p.low(0) == "stands" && p.isAt(1, wFor):
		p.i += 2
		r.Kind = ChainCounts
		return p.countedAs(r)
	case p.low(0) == "stands":
		p.rest1()
		r.Kind = ChainStands
		return true
	case p.low(0) == "never":
		p.rest1()
		r.Kind = ChainDoesNotCount
		return true
	case p.is(wBe) && p.isAt(1, wNot), p.is(wBe) && p.low(1) == "never":
		p.i += 2
		r.Kind = ChainDoesNotCount
		p.eat(wA)
		if !p.eat(wSt) && !p.eat(wCount) {
			return false
		}
		p.rest1()
		return true
	case p.is(wBe) && (p.isAt(1, wFirst) || p.isAt(1, wA) && p.at(2).is), p.kindAt(0, tEquals):
		p.i++
		r.Kind = ChainCounts
		return p.countedAs(r)
	}
	c, ok := p.countsHere()
	if !ok && p.low(0) == "doesn't" {
		p.rest1()
		r.Kind = ChainDoesNotCount
		return true
	}
	if !ok {
		return false
	}
	r.Stitch, r.Plus, r.Sts = c.As, c.Plus, c.Sts
	if p.kindAt(0, tComma) && p.isAt(1, wCh) && !c.Plus.Said { // "counts as dc, ch 1"
		k := p.i
		p.i += 2
		p.eatKind(tHyphen)
		if r.Plus, ok = p.count(); !ok {
			p.i = k
		}
	}
	switch {
	case c.Says == SaysNot:
		r.Kind = ChainDoesNotCount
	case r.Noun.Kind == ASpace || r.Noun.Kind == AChain && !r.Chain.Said && c.As == (stitch.Stitch{}):
		r.Kind = ChainsAreStitches
	default:
		r.Kind = ChainCounts
	}
	p.rest1()
	return true
}

// countedAs reads "first dc", "a tr", "dc, ch 2" to the end of the sentence.
func (p *parser) countedAs(r *Rule) bool {
	p.eat(wA)
	p.eat(wFirst)
	p.eat(wA)
	s, ok := p.stitchHere()
	if !ok && !p.eat(wSt) {
		return false
	}
	r.Stitch = s
	k := p.i
	if p.eatKind(tComma) || p.eat(wAnd) || p.eatKind(tPlus) {
		if p.eat(wCh) {
			p.eatKind(tHyphen)
			r.Plus, _ = p.count()
		} else {
			p.i = k
		}
	}
	p.rest1()
	return true
}

// rest1 passes over the rest of a sentence whose rule is plain: "… throughout", "… and the first st goes into the base of it".
func (p *parser) rest1() {
	if p.kindAt(0, tComma) && p.isAt(1, wCh) {
		return // another rule, which must not be lost
	}
	for !p.done() {
		p.i++
	}
}

// slipRule reads "sl st counts as a st", "a sl st is a real stitch, not a join", "sl sts to travel make nothing".
func (p *parser) slipRule(r *Rule) bool {
	p.eat(wSt)
	if p.eat(wTo) {
		p.i++
	}
	switch {
	case p.is(wBe) && p.isAt(1, wA), p.is(wCount) && p.isAt(1, wAs):
		r.Kind = SlipsAreStitches
	case p.is(wMake) && p.low(1) == "nothing", p.is(wDo), p.is(wBe) && p.isAt(1, wNot):
		r.Kind = SlipsDoNotCount
	default:
		return false
	}
	p.rest1()
	return true
}

// closingRule reads "the closing sl st and ch 1 are not counted".
func (p *parser) closingRule(r *Rule) bool {
	n, ok := p.ruleChain()
	if !ok {
		return false
	}
	r.Noun, r.Chain = n, n.Chains
	return p.chainSaid(r)
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
			p.rest1()
			return n == 0 || times == 0 || n == times || n == times+1
		case p.is(wMore):
			r.Kind = RepeatIsMore
			p.rest1()
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

// ruleName reads the name that a rule gives a meaning to, with what stands behind it in brackets: "bs (bobble)".
func (p *parser) ruleName(until func() bool) (string, bool) {
	from := p.at(0).from
	to := from
	for k := 0; k < 8 && !p.done() && !until(); k++ {
		switch t := p.at(0); t.kind {
		case tOpen:
			if t.n >= p.end {
				return "", false
			}
			p.i = t.n + 1
		case tWord, tNumber, tHyphen:
			p.i++
			to = t.to
		default:
			return "", false
		}
	}
	return p.text[from:to], to > from && until()
}

// makesRule reads "bs (bobble) makes one st in one st", "cl3 uses 3 sts and makes 1".
func (p *parser) makesRule(r *Rule) bool {
	name, ok := p.ruleName(func() bool { return p.low(0) == "makes" || p.low(0) == "uses" })
	if !ok {
		return false
	}
	r.Kind, r.Name, r.Stitch = Defines, name, stitch.Stitch{Name: name}
	if s, known := stitch.Word(name, p.in.Terms); known {
		r.Stitch, r.Name = s, s.Name
	}
	for !p.done() {
		var c *Count
		switch p.low(0) {
		case "makes":
			c = &r.Makes
		case "uses", "in", "over", "from", "into":
			c = &r.Uses
		case "and", "":
			p.i++
			continue
		default:
			return false
		}
		p.i++
		if *c, ok = p.count(); !ok {
			return false
		}
		p.noun()
		p.eatKind(tComma)
	}
	return r.Makes.Said || r.Uses.Said
}

// defineRule reads what a name stands for: "shell = 5 dc in one st", "V-st: (dc, ch 1, dc)", "a block is ch 3 + 3 dc", "dec = 2 sts worked
// together".
func (p *parser) defineRule(r *Rule) bool {
	article := p.eat(wA)
	name, ok := p.ruleName(func() bool { return p.kindAt(0, tEquals) || p.kindAt(0, tColon) || article && p.is(wBe) })
	if !ok {
		return false
	}
	p.i++
	r.Kind, r.Name, r.Stitch = Defines, name, stitch.Stitch{Name: name}
	if s, n := stitch.Read(fields(small(name)), p.in.Terms); n > 0 && n == len(fields(name)) {
		r.Stitch, r.Name = s, s.Name
	}
	i := p.i
	if c, ok := p.count(); ok && p.eat(wSt) {
		p.eat(wWorking)
		if p.eat(wTog) {
			r.Uses, r.Makes = c, one
			return true
		}
	}
	p.i = i
	r.How, _ = p.clauses()
	return len(r.How) > 0
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

// learnNames collects the names that the block defines itself, so that they are known in every row of it.
func (p *parser) learnNames(from, to int) {
	for from < to {
		end := strings.IndexByte(p.text[from:to], '\n')
		if end < 0 {
			end = to
		} else {
			end += from
		}
		if rest, ok := cutFold(strings.TrimSpace(p.text[from:end]), "throughout:"); ok {
			for len(rest) > 0 {
				var sentence string
				sentence, rest, _ = strings.Cut(rest, ";")
				p.learnName(sentence)
			}
		}
		from = end + 1
	}
}

func (p *parser) learnName(sentence string) {
	at := len(sentence)
	for _, word := range []string{"=", " makes ", " uses ", " is ch "} {
		if k := strings.Index(sentence, word); k > 0 {
			at = min(at, k)
		}
	}
	name, _, _ := strings.Cut(sentence[:at], "(")
	name = strings.TrimSpace(name)
	for _, article := range []string{"a ", "A ", "the ", "The "} {
		name = strings.TrimPrefix(name, article)
	}
	if at == len(sentence) || name == "" || len(name) > 30 || name[0] == '"' || strings.EqualFold(name, "join") || strings.EqualFold(name, "sts") {
		return
	}
	words := fields(small(name))
	if s, n := stitch.Read(words, p.in.Terms); n == len(words) || words[0] == "ch" || s.Name == "ch" {
		return
	}
	p.specials = append(p.specials[:len(p.specials):len(p.specials)], name)
}

// cutFold is strings.CutPrefix without regard to capitals.
func cutFold(s, prefix string) (string, bool) {
	if len(s) < len(prefix) || !strings.EqualFold(s[:len(prefix)], prefix) {
		return s, false
	}
	return s[len(prefix):], true
}
