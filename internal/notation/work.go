package notation

import "foundrow/internal/stitch"

// chain reads "ch 3", "ch3", "chain 3", "ch-3", with what it is said to count as.
func (p *parser) chain() (Clause, bool) {
	i := p.i
	p.i++
	p.eatKind(tHyphen)
	p.eatKind(tStop)
	c, ok := p.count()
	if !ok {
		if p.low(i-p.i) == "ch" && (p.is(wTurn) || p.kindAt(0, tComma)) {
			c, ok = one, true // "ch, turn"
		}
	}
	if !ok || p.is(wSp, wLoop) {
		p.i = i
		return nil, false
	}
	return p.chainRest(c, i), true
}

// chainRest reads what follows a chain that only says what it is for: "to turn", "for thumb", "for first dc".
func (p *parser) chainRest(c Count, i int) Clause {
	ch := &Chain{Count: c}
	switch {
	case p.is(wTo) && p.isAt(1, wTurn):
		// the turn is read as a clause of its own: "ch 5 to turn" is "ch 5, turn"
		p.i++
	case p.is(wFor) && !p.lengthAt(1):
		k := p.i
		p.i++
		p.eat(wA, wFirst)
		if s, ok := p.stitchHere(); ok {
			ch.Says, ch.As = SaysCounts, s
			break
		}
		p.i = k
		p.eatFor()
	case p.is(wCounting, wCount) && p.isAt(1, wAs):
		cs, ok := p.countsHere()
		if ok {
			ch.Says, ch.As, ch.Plus = cs.Says, cs.As, cs.Plus
		}
	}
	ch.placed = p.placed(i)
	return ch
}

// countsHere reads "counts as dc", "counting as dc and ch 1" up to the next comma or stop.
func (p *parser) countsHere() (Counts, bool) {
	i, end := p.i, p.i
	for end < p.end && p.t[end].kind != tComma && p.t[end].kind != tStop && p.t[end].kind != tSemi {
		end++
	}
	var c Counts
	ok := false
	p.within(i, end, func() { c, ok = p.countsAs() })
	if ok {
		p.i = end
	}
	return c, ok
}

// slip reads a slip stitch: a join, a move along, or a stitch like another.
func (p *parser) slip(b *body) ([]Clause, bool) { return p.slipCount(Count{}, p.i) }

func (p *parser) slipCount(c Count, i int) ([]Clause, bool) {
	k := p.i
	s, ok := p.stitchHere()
	if !ok || s.Name != "sl st" {
		p.i = k
		return nil, false
	}
	if p.eatAll(wTo, wJoin) {
		j := &Join{}
		if t, ok := p.target(); ok {
			j.In = t
		}
		j.placed = p.placed(i)
		return p.single(j), true
	}
	m := &Make{Stitch: s, Count: c}
	if c.Said {
		m.Form = NumberFirst
	} else {
		p.after(m)
	}
	t, ok := p.target()
	if !ok && p.eat(wTo) { // "sl st to first sc"
		t, ok = p.placeTo(p.i - 1)
	}
	switch {
	case !ok:
		if e, said := p.till(); said && e.Kind == ToNext { // "sl st across to next ch-3 sp"
			t := Target{Where: Next, Noun: e.Noun, Span: e.Span}
			return p.single(&Travel{placed: p.placed(i), Stitch: m.Stitch, Count: m.Count, In: []Target{t}}), true
		} else if said {
			m.In = Target{Where: RestUnnamed, Till: e, Span: e.Span}
		}
		m.placed = p.placed(i)
		return p.single(m), true
	case p.eatAll(wTo, wJoin), p.eatAll(wAnd, wJoin), p.eatAll(wTo, wClose):
		return p.single(&Join{placed: p.placed(i), In: t}), true
	}
	if p.loops {
		m.Stitch.Loop = p.loop
	}
	m.In = t
	p.trailingLoop(m)
	if m.Stitch.Loop != stitch.BothLoops && t.Where != Same || t.Each || t.Till.Kind == AcrossRow || t.Till.Kind == ToLast {
		m.placed = p.placed(i)
		return p.single(m), true
	}
	if joinsIn(&t) && !c.Said {
		ring := p.formsRing()
		return p.single(&Join{placed: p.placed(i), In: t, Slip: true, Ring: ring}), true
	}
	tr := &Travel{Stitch: m.Stitch, Count: m.Count, In: []Target{t}}
	for p.is(wAnd) && p.isAt(1, wIn) {
		k := p.i
		p.i++
		t, ok := p.target()
		if !ok {
			p.i = k
			break
		}
		tr.In = append(tr.In, t)
	}
	tr.placed = p.placed(i)
	return p.single(tr), true
}

// joinsIn reports whether a slip stitch in the place closes a round when it comes at its end: the first stitch, the top of the
// beginning chain, a chain of it.
func joinsIn(t *Target) bool {
	switch {
	case t.Edge != nil:
		return false
	case t.Where == TopOf, t.Where == Joining:
		return true
	case t.Where == First && t.Noun.Kind != ASpace && !t.Count.Said:
		return true
	case t.Nth.Said && (t.Of.Kind == AChain || t.Of.Kind == TurningCh) && t.Where != Next:
		return true
	}
	return t.Noun.Kind == TurningCh
}

// placeTo reads a place behind "to".
func (p *parser) placeTo(i int) (Target, bool) {
	var t Target
	if !p.place(&t) {
		p.i = i
		return Target{}, false
	}
	p.finish(&t, i)
	return t, true
}

// join reads "join", "join with sl st in first sc", "join with ch 1 and hdc in top of ch-3", "join B in first st", "rejoin yarn in next
// free st".
func (p *parser) join() (Clause, bool) {
	i := p.i
	again := p.is(wRejoin)
	p.i++
	p.eat(wRnd)
	p.eat(wRing)
	if again || p.is(wYarn, wColour) || p.yarnName(0) {
		r := &Rejoin{}
		r.Yarn = p.yarnWords()
		p.joinsWith(r)
		if t, ok := p.target(); ok {
			r.In = t
		} else if p.eat(wTo) {
			if t, ok := p.placeTo(p.i - 1); ok {
				r.In = t
			}
		}
		p.joinsWith(r)
		r.placed = p.placed(i)
		return r, true
	}
	j := &Join{}
	if p.eat(wWith, wUsing) {
		p.eat(wA)
		if !p.joinWith(j) {
			p.i = i
			return nil, false
		}
	}
	if !j.In.Said() {
		if t, ok := p.target(); ok {
			j.In = t
		} else if p.eat(wTo) {
			if t, ok := p.placeTo(p.i - 1); ok {
				j.In = t
			}
		}
	}
	if s, n := p.readStitch(); n > 0 && s.Name == "sl st" && !j.In.Said() { // "join sl st in first sc"
		p.i += n
		if t, ok := p.target(); ok {
			j.In = t
		}
	}
	j.Ring = p.formsRing()
	p.eatFor()
	j.placed = p.placed(i)
	return j, true
}

// joinsWith reads the stitch that new yarn is joined with; a slip stitch needs no saying.
func (p *parser) joinsWith(r *Rejoin) {
	i := p.i
	if !p.eat(wWith, wUsing) {
		return
	}
	p.eat(wA)
	s, ok := p.stitchHere()
	if !ok {
		p.i = i
		return
	}
	if s.Name != "sl st" {
		r.With = s
	}
}

// formsRing reads "to form a ring".
func (p *parser) formsRing() bool {
	i := p.i
	if (p.eatAll(wTo, wForm) || p.eatAll(wTo, wMake) || p.eat(wForm) || p.eat(wIn)) && (p.eat(wA) || true) && p.eat(wRing) {
		return true
	}
	p.i = i
	return false
}

// joinWith reads what closes a round when it is not a slip stitch alone.
func (p *parser) joinWith(j *Join) bool {
	if low := p.low(0); (low == "invisible" || low == "seamless" || low == "inv") && p.isAt(1, wJoin) {
		p.i += 2
		return true
	}
	for {
		k := p.i
		switch {
		case p.is(wCh):
			c, ok := p.chain()
			if !ok {
				return false
			}
			j.With = append(j.With, c)
		default:
			n, _ := p.count()
			s, ok := p.stitchHere()
			if !ok {
				return false
			}
			if s.Name != "sl st" {
				j.With = append(j.With, &Make{placed: p.placed(k), Stitch: s, Count: n, Form: formOf(n)})
			}
		}
		if p.is(wAnd) && (p.isAt(1, wA) || p.at(1).is || p.kindAt(1, tNumber)) || p.kindAt(0, tComma) && p.at(1).is && p.isTallJoin(j) {
			p.i++
			p.eat(wA)
			continue
		}
		return true
	}
}

func formOf(c Count) Form {
	if c.Said {
		return NumberFirst
	}
	return Bare
}

// isTallJoin reports whether the join so far is a chain only, so that what follows the comma belongs to it.
func (p *parser) isTallJoin(j *Join) bool {
	if len(j.With) != 1 {
		return false
	}
	_, ok := j.With[0].(*Chain)
	return ok
}

// yarnName reports whether a yarn is named k tokens on: a letter or two in capitals, MC, CC, or a word the language does not know.
func (p *parser) yarnName(k int) bool {
	t := p.at(k)
	if t.kind != tWord || t.is && len(t.low) > 2 {
		return false
	}
	text := p.text[t.from:t.to]
	capital := text[0] >= 'A' && text[0] <= 'Z'
	switch {
	case capital && len(text) <= 2 && text != "In" && text != "X":
		return t.word != wRS && t.word != wWS
	case t.word == wA:
		return text == "A"
	case t.word == unknown && !t.is:
		return colours[t.low] || capital
	}
	return false
}

// colours are the commonest names that yarns are called by in a row.
var colours = map[string]bool{
	"black": true, "white": true, "red": true, "blue": true, "green": true, "yellow": true, "brown": true, "grey": true, "gray": true, "pink": true, "purple": true,
	"orange": true, "cream": true, "ecru": true, "beige": true, "navy": true, "teal": true, "gold": true, "silver": true, "contrast": true, "main": true,
	"new": true, "second": true, "next": true,
}

// yarnWords reads what a yarn is called: "yarn", "B", "new colour", "Color B". Yarn alone gives nothing.
func (p *parser) yarnWords() string {
	from := -1
	to := 0
	for {
		t := p.at(0)
		switch {
		case p.is(wYarn):
			p.i++
		case p.is(wColour):
			if from < 0 {
				from = t.from
			}
			to = t.to
			p.i++
		case p.yarnName(0) && !(p.is(wIn, wTo)):
			if from < 0 {
				from = t.from
			}
			to = t.to
			p.i++
		default:
			if from < 0 {
				return ""
			}
			return p.text[from:to]
		}
	}
}

// doNot reads "do not turn", "do not join", "do not fasten off", "don't turn".
func (p *parser) doNot() (Clause, bool) {
	i := p.i
	p.i++
	p.eat(wNot)
	switch {
	case p.eat(wTurn):
		return &Turn{placed: p.placed(i), Not: true}, true
	case p.eat(wJoin):
		p.eat(wRnd)
		if p.is(wOr) && p.isAt(1, wTurn) || p.is(wAnd) && p.isAt(1, wTurn) {
			p.i += 2
		}
		return &Join{placed: p.placed(i), Not: true}, true
	case p.eat(wFasten), p.eat(wCut):
		p.eat(wOff)
		p.eat(wYarn)
		return p.remark(i), true
	case p.eat(wWork), p.eat(wSkip):
		return nil, false
	}
	return nil, false
}

func (p *parser) remark(i int) *Remark {
	s := p.since(i)
	text := p.text[s.From:s.To]
	if len(text) > 1 && text[0] >= 'A' && text[0] <= 'Z' && text[1] >= 'a' {
		text = string(text[0]|0x20) + text[1:]
	}
	return &Remark{p.placed(i), stitch.Carry(text, p.in.Terms, stitch.US), false}
}

// fasten reads "fasten off", "fasten off A", "break yarn", "cut yarn", "fo".
func (p *parser) fasten() (Clause, bool) {
	i := p.i
	cut := p.is(wCut)
	p.i++
	if !p.eat(wOff) && !cut {
		return nil, false
	}
	f := &Fasten{Yarn: p.yarnWords()}
	if p.eat(wAnd) && !p.eatAll(unknown, wIn, wEnd) {
		p.i--
	}
	f.placed = p.placed(i)
	return f, true
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

// yarn reads "with A", "change to B in last yo", "drop A", "carry unused colour".
func (p *parser) yarn() (Clause, bool) {
	i := p.i
	switch {
	case p.eat(wWith, wUsing):
		if p.is(wRS, wWS) || p.is(wRight) {
			for p.is(wRS, wWS, wRight, wSide, wFacing, wOf, wWork, wPiece, wYou) || p.low(0) == "wrong" {
				p.i++
			}
			return p.remark(i), true
		}
		if !p.yarnName(0) && !p.is(wColour) {
			p.i = i
			return nil, false
		}
		y := &Yarn{Name: p.yarnWords(), How: "with"}
		y.placed = p.placed(i)
		return y, true
	case p.is(wPull) && p.yarnName(1), p.is(wWith) && p.isAt(1, wPull):
		p.i++
		name := p.yarnWords()
		p.restOfPhrase()
		return &Yarn{placed: p.placed(i), Name: name, How: "change to"}, true
	case p.eat(wChange):
		p.eat(wYarn)
		p.eat(wColour)
		p.eat(wTo)
		name := p.yarnWords()
		p.restOfPhrase()
		return &Yarn{placed: p.placed(i), Name: name, How: "change to"}, true
	case p.low(0) == "pick" && p.isAt(1, wUp) && p.yarnName(2):
		p.i += 2
		name := p.yarnWords()
		return &Yarn{placed: p.placed(i), Name: name, How: "pick up"}, true
	case p.eat(wDrop):
		name := p.yarnWords()
		p.restOfPhrase()
		return &Yarn{placed: p.placed(i), Name: name, How: "drop"}, true
	}
	return nil, false
}

// restOfPhrase passes over the words up to the next comma, stop or bracket.
func (p *parser) restOfPhrase() {
	for !p.done() {
		switch p.at(0).kind {
		case tComma, tSemi, tStop, tOpen, tStar, tDash, tEquals, tShut:
			return
		}
		p.i++
	}
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
		if p.eat(wA, wIn) && false || !p.place(&t) {
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

// through reads loops named for what follows: "FLO, …", "BLO: …", "working in back loops only", "both loops:".
func (p *parser) through() (Clause, bool) {
	i := p.i
	p.eat(wWorking)
	p.eat(wIn)
	p.eat(wThrough)
	if !p.loopsHere() {
		p.i = i
		return nil, false
	}
	p.eat(wOnly)
	switch t := p.at(0); {
	case t.kind == tComma, t.kind == tColon, t.kind == tSemi, t.kind == tEnd, t.kind == tStar, t.kind == tShut, t.kind == tStop, p.is(wAcross, wAround, wThroughout):
		p.eat(wAcross, wAround, wThroughout)
		return &Through{placed: p.placed(i), Loop: p.loop}, true
	}
	if p.i > i+1 && p.t[i].word == wWorking {
		p.eat(wOf)
		p.restOfPhrase()
		return &Through{placed: p.placed(i), Loop: p.loop}, true
	}
	p.i = i
	return nil, false
}

// like reads "as Row 4", "as for Row 2", "same as 2d row".
func (p *parser) like() (Clause, bool) {
	i := p.i
	switch {
	case p.eat(wAs):
	case p.eatAll(wSame, wAs), p.eatAll(wWork, wAs):
	default:
		return nil, false
	}
	p.eat(wFor)
	l := &Like{Round: p.namesRounds()}
	if rows, ok := p.rowsNamed(); ok {
		l.Rows = rows
	} else if p.eat(wLast, wPrev) && p.eat(wRow, wRnd) {
		l.Last = one
	} else {
		p.i = i
		return nil, false
	}
	l.Extent, _ = p.extent()
	l.placed = p.placed(i)
	return l, true
}

// likeRows reads "rep Row 2", "rep last row", "repeat rows 2 and 3" within a row.
func (p *parser) likeRows() (Clause, bool) {
	i := p.i
	if !p.eat(wRep) {
		return nil, false
	}
	l := &Like{Round: p.namesRounds()}
	if p.eat(wLast, wPrev) {
		l.Last = one
		if c, ok := p.count(); ok {
			l.Last = c
		}
		if !p.eat(wRow, wRnd) {
			p.i = i
			return nil, false
		}
	} else {
		rows, ok := p.rowsNamed()
		if !ok {
			p.i = i
			return nil, false
		}
		l.Rows = rows
	}
	if e, ok := p.extent(); ok {
		l.Extent = e
	}
	l.placed = p.placed(i)
	return l, true
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

// ownNoun is a place for clauses that begin with a noun: "turning ch as 1 dc", "other side: …".
func (p *parser) ownNoun() (Clause, bool) {
	i := p.i
	switch {
	case p.is(wOther, wOpposite) && p.isAt(1, wSide):
		p.i += 2
		if p.eat(wOf) {
			p.noun()
		}
		t := Target{Where: OtherSide, Span: p.since(i)}
		return &Along{placed: p.placed(i), In: t}, true
	case p.is(wTurning, wTch, wSkipped, wBeg) || p.is(wFirst) && p.isAt(1, wCh):
		if c, ok := p.countsHere(); ok {
			c.placed = p.placed(i)
			return &c, true
		}
		p.i = i
	}
	return nil, false
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

// eatWords passes over the words when they come next.
func (p *parser) eatWords(words []string) bool {
	for k, w := range words {
		if p.low(k) != w {
			return false
		}
	}
	p.i += len(words)
	return true
}
