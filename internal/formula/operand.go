package formula

import (
	"foundrow/internal/measure"
	"foundrow/internal/source"
)

// operand reads a number, a list, a share, a name, a function or a value in brackets.
func (p *parser) operand() int16 {
	switch p.tok.kind {
	case number:
		return p.number(int32(p.tok.from))
	case word:
		return p.word()
	case '(':
		return p.bracketed()
	}
	p.missing()
	return 0
}

func (p *parser) bracketed() int16 {
	open := p.tok
	var n int16
	if p.enter() {
		p.next()
		n = p.value()
		p.closing(open)
		if !p.failed {
			p.f.nodes[n].span, p.f.nodes[n].inside = span{int32(open.from), int32(p.last.to)}, true
		}
	}
	p.nested--
	return n
}

// closing reads the bracket that closes an open one.
func (p *parser) closing(open token) {
	switch {
	case p.tok.kind == ')':
		p.next()
	case p.tok.kind == end:
		p.fail(open, "this bracket is never closed", "write a ) where it ends")
	default:
		p.stray()
	}
}

// number reads: NUMBER [ list ] [ unit ] · NUMBER "%" "of" operand. The number begins at its sign, which was read.
func (p *parser) number(at int32) int16 {
	n := node{op: opNumber, kind: Number, a: none, b: none, c: none, at: at, span: span{from: at}}
	if n.num = p.figure(); int(at) < p.tok.from {
		n.num = n.num.Neg()
	}
	p.next()
	if p.tok.kind == '(' {
		p.list(&n)
	}
	switch {
	case p.tok.kind == '%':
		return p.share(n)
	case p.tok.kind == word || p.tok.kind == '"':
		if kind, unit, ok := parseUnit(p.text(p.tok)); ok {
			n.kind, n.unit = kind, unit
			p.next()
		} else {
			p.behindNumber(n)
		}
	}
	return p.add(n)
}

// figure returns the number that the next token is.
func (p *parser) figure() measure.Num {
	if p.tok.kind != number {
		return measure.Num{}
	}
	if p.tok.to-p.tok.from > mostDigits+1 {
		p.fail(p.tok, "a number of more than "+measure.Int(mostDigits).String()+" digits is too long to reckon with", "")
		return measure.Num{}
	}
	n, _ := measure.Parse(p.text(p.tok))
	return n
}

// list reads the rest of the trade's list, whose first number stands before its brackets: 54 (55, 55, 55, 57) (57, 57, 57, 57)
func (p *parser) list(n *node) {
	n.op, n.a = opList, int16(len(p.f.lists))
	p.f.lists = append(p.f.lists, n.num)
	for p.tok.kind == '(' {
		open := p.tok
		p.next()
		for {
			p.entry()
			if p.tok.kind != ',' {
				break
			}
			p.next()
		}
		if p.tok.kind == word || p.tok.kind == '"' {
			p.fail(p.tok, "in a list the unit stands behind the last bracket", "write the unit once: 54 (55, 57) "+p.text(p.tok))
		} else if p.tok.kind != ')' && p.tok.kind != end {
			p.noEntry()
		}
		p.closing(open)
	}
	n.b = int16(len(p.f.lists))
	if int(n.b-n.a) > mostListed || len(p.f.lists) > mostNodes {
		p.fail(p.last, "no list has more than "+measure.Int(mostListed).String()+" numbers", "")
	}
	n.num = measure.Num{}
}

// entry reads one number of a list.
func (p *parser) entry() {
	negative := p.tok.kind == '-'
	if negative {
		p.next()
	}
	if p.tok.kind != number {
		if negative {
			p.fail(p.last, "a list of values has a number for every size", "write the number of this size instead of the dash")
		} else {
			p.noEntry()
		}
		return
	}
	x := p.figure()
	if negative {
		x = x.Neg()
	}
	if len(p.f.lists) <= mostNodes {
		p.f.lists = append(p.f.lists, x)
	}
	p.next()
}

// noEntry reports what is no number in the brackets of a list.
func (p *parser) noEntry() {
	p.fail(p.tok, "a bracket behind a number holds the numbers of the other sizes, and "+p.said(p.tok)+" is none", "write * before the bracket to multiply; a list is written 54 (55, 57)")
}

// share reads: "%" "of" operand, or the end of an ease.
func (p *parser) share(n node) int16 {
	n.at = int32(p.tok.from)
	p.next()
	hundredth := measure.Ratio(1, 100)
	if p.ease && p.tok.kind == end && len(p.f.nodes) == 0 {
		n.percent, n.num = true, n.num.Mul(hundredth)
		if n.op == opList {
			for i := n.a; i < n.b; i++ {
				p.f.lists[i] = p.f.lists[i].Mul(hundredth)
			}
		}
		return p.add(n)
	}
	written := p.f.Text[n.span.from:p.last.to]
	switch {
	case n.op == opList:
		p.fail(p.last, "a share is one number for all sizes", "multiply by a list instead: 0.9 (0.9, 0.95) * …")
	case !p.is("of"):
		p.fail(token{number, int(n.span.from), p.last.to}, written+" of what?", "write "+written+" of …, with the name of a value")
	}
	p.next()
	n.op, n.num = opShare, n.num.Mul(hundredth)
	if p.enter() {
		n.a = p.recast(p.operand())
	}
	p.nested--
	return p.add(n)
}

// word reads a name, pi or a function.
func (p *parser) word() int16 {
	t := p.tok
	w := p.text(t)
	from := span{from: int32(t.from)}
	switch w {
	case "pi":
		p.next()
		return p.add(node{op: opPi, kind: Number, a: none, b: none, c: none, at: from.from, span: from})
	case "min", "max", "abs", "root":
		return p.function(w)
	}
	if IsReserved(w) {
		p.misplaced(t)
		return 0
	}
	if t.to-t.from > mostLetter {
		p.fail(t, "a name of more than "+measure.Int(mostLetter).String()+" letters", "give it a shorter one")
		return 0
	}
	name := p.f.name(t)
	p.next()
	n := node{op: opName, a: none, b: none, c: none, at: from.from, span: from}
	if p.tok.kind == '(' {
		if name.Of == "" {
			p.noFunction(t)
			return 0
		}
		n.a, n.b, name.Given = p.given(p.text(t))
	}
	name.Span.To = p.f.Span.From + p.last.to
	if name.Of != "" {
		n.op = opAsk
	}
	n.name = int16(len(p.f.names))
	p.f.names = append(p.f.names, name)
	return p.add(n)
}

// given reads the one or two values in brackets behind a name or a function.
func (p *parser) given(behind string) (a, b int16, count int) {
	a, b = none, none
	open := p.tok
	if p.enter() {
		p.next()
		a, count = p.conversion(), 1
		if p.tok.kind == ',' {
			p.comma(behind)
			b, count = p.conversion(), 2
		}
		p.closing(open)
	}
	p.nested--
	return a, b, count
}

// comma reads one between the values of a function.
func (p *parser) comma(function string) {
	p.next()
	if p.tok.kind == word && startsRounding(p.text(p.tok)) {
		p.fail(p.tok, "inside a function a rounding stands in brackets", "write "+function+"((…, rounded up to even), …)")
	}
}

// function reads min, max, abs or root and what stands in its brackets. Of more than two values, each goes with the result of
// those before it.
func (p *parser) function(w string) int16 {
	t := p.tok
	n := node{a: none, b: none, c: none, at: int32(t.from), span: span{from: int32(t.from)}}
	p.next()
	if p.tok.kind != '(' {
		p.fail(t, "`"+w+"` is a function and needs a value in brackets", "write "+w+"(…)")
		return 0
	}
	switch w {
	case "abs", "root":
		n.op = opAbs
		if w == "root" {
			n.op = opRoot
		}
		var count int
		n.a, n.b, count = p.given(w)
		if count > 1 {
			p.fail(t, "`"+w+"` takes one value", "")
		}
		return p.add(n)
	case "min":
		n.op = opMin
	default:
		n.op = opMax
	}
	open := p.tok
	if p.enter() {
		p.next()
		n.a = p.conversion()
		if p.tok.kind != ',' {
			p.fail(p.tok, "`"+w+"` takes two values or more", "write "+w+"(…, …)")
		}
		for p.tok.kind == ',' {
			p.comma(w)
			n.b = p.conversion()
			n.a = p.add(n)
		}
		p.closing(open)
	}
	p.nested--
	if !p.failed {
		p.f.nodes[n.a].to, p.f.nodes[n.a].span.to = int32(p.last.to), int32(p.last.to)
	}
	return n.a
}

// noFunction reports a name with brackets behind it.
func (p *parser) noFunction(t token) {
	w := p.text(t)
	fix := "write * before the bracket to multiply; functions are min, max, abs and root"
	if near := source.Nearest(w, functions); near != "" {
		fix = "write " + near + "(…)"
	}
	p.fail(t, "`"+w+"` is no function", fix)
}
