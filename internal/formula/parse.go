package formula

import (
	"foundrow/internal/measure"
	"foundrow/internal/source"
)

// The bounds of a formula. A designer's formula has a dozen operands; these keep a slip, or somebody's joke, from costing more
// than it is worth. The canonical print of a formula inside them is inside them too.
const (
	mostBytes  = 1 << 16
	mostNodes  = 128
	mostNested = 40
	mostDigits = 15 // of a number: what can be multiplied by a gauge and still fit
	mostLetter = 60 // of a name
	mostListed = 64 // numbers in a list: nobody offers as many sizes
)

// parser reads by precedence. After its first finding it sees the end of the text everywhere, so that it unwinds by itself.
type parser struct {
	f        *Formula
	tok      token // the one to be read next
	last     token // the one read before
	nested   int
	ease     bool
	failed   bool
	findings source.Findings
}

func parse(file *source.File, from int, text string, ease bool) (*Formula, source.Findings) {
	f := &Formula{File: file, Text: text, Span: source.Span{From: from, To: from + len(text)}}
	p := parser{f: f, ease: ease}
	if len(text) > mostBytes {
		p.fail(token{end, 0, mostBytes}, "this formula is "+measure.Int(int64(len(text))).String()+" characters long", "give parts of it names of their own")
		return f, p.findings
	}
	f.nodes = make([]node, 0, 2+len(text)/6)
	p.next()
	if p.tok.kind == end && !p.failed {
		p.fail(p.tok, "nothing is written here", "write a formula such as 54 cm")
	}
	p.value()
	if p.tok.kind != end {
		p.stray()
	}
	if ease && !p.failed {
		p.bareEase()
	}
	if p.failed {
		f.nodes, f.lists, f.names = nil, nil, wordsOf(f)
	}
	return f, p.findings
}

// bareEase reports an ease that is a number with nothing behind it: as a share of the body, 20 would be twenty bodies more.
func (p *parser) bareEase() {
	n := p.f.nodes[len(p.f.nodes)-1]
	if n.op == opNegate {
		n = p.f.nodes[n.a]
	}
	if bare := n.op == opList || n.op == opNumber && n.num.Sign() != 0; bare && n.kind == Number && !n.percent {
		p.fail(token{end, int(n.span.from), int(n.span.to)}, p.f.Text+" what? an ease is a length, or a percentage of the body", "write "+p.f.Text+" cm, or "+p.f.Text+"%")
	}
}

// wordsOf returns every word of an unread formula that may be a name.
func wordsOf(f *Formula) (names []Name) {
	for t := scan(f.Text, 0); t.kind != end; t = scan(f.Text, t.to) {
		if w := f.Text[t.from:t.to]; t.kind == word && !IsReserved(w) {
			names = append(names, f.name(t))
		}
	}
	return names
}

// name makes a name of a word, which is a piece and what is asked of it when there is a dot in it.
func (f *Formula) name(t token) Name {
	n := Name{Text: f.Text[t.from:t.to], Span: f.place(span{int32(t.from), int32(t.to)})}
	for i := range n.Text {
		if n.Text[i] == '.' {
			n.Text, n.Of = n.Text[:i], n.Text[i+1:]
			break
		}
	}
	return n
}

// next goes on to the next token.
func (p *parser) next() {
	if p.failed {
		return
	}
	p.last, p.tok = p.tok, scan(p.f.Text, p.tok.to)
	if p.tok.kind == unknown {
		p.means(p.tok)
	}
}

// is reports whether the next token is a word.
func (p *parser) is(w string) bool { return p.tok.kind == word && p.text(p.tok) == w }

// skip reads a word if it is the next.
func (p *parser) skip(w string) bool {
	if !p.is(w) {
		return false
	}
	p.next()
	return true
}

func (p *parser) text(t token) string { return p.f.Text[t.from:t.to] }

// enter counts brackets and signs within each other. The caller leaves by itself.
func (p *parser) enter() bool {
	p.nested++
	if p.nested > mostNested {
		p.fail(p.tok, "brackets are nested more than "+measure.Int(mostNested).String()+" deep", "give the inner part a name of its own")
	}
	return !p.failed
}

// add appends a node that ends with the last token read, and returns its place.
func (p *parser) add(n node) int16 {
	n.to = int32(p.last.to)
	n.span.to = n.to
	if len(p.f.nodes) == mostNodes {
		p.fail(p.last, "this formula has more than "+measure.Int(mostNodes).String()+" parts", "give some of it a name of its own")
		return 0
	}
	p.f.nodes = append(p.f.nodes, n)
	return int16(len(p.f.nodes) - 1)
}

// from is where an operand begins.
func (p *parser) from(operand int16) int32 {
	if int(operand) < len(p.f.nodes) {
		return p.f.nodes[operand].span.from
	}
	return 0
}

// value reads: conversion [ "," rounding ]
func (p *parser) value() int16 {
	n := p.conversion()
	if p.tok.kind == ',' {
		n = p.rounding(n)
	}
	return n
}

// conversion reads: sum { "in" kind-or-unit [ "at" gauge ] { ( "+" | "-" ) product } }
func (p *parser) conversion() int16 {
	n := p.sum()
	for p.is("in") {
		n = p.more(p.convert(n))
		if p.tok.kind == '*' || p.tok.kind == '/' {
			p.fail(p.tok, "behind a conversion only + and - go on", "write ("+p.f.Text[p.from(n):p.last.to]+") "+p.text(p.tok)+" …")
		}
	}
	return n
}

// convert reads: "in" kind-or-unit [ "at" gauge ]
func (p *parser) convert(n int16) int16 {
	c := node{op: opConvert, a: n, b: none, c: none, at: int32(p.tok.from), span: span{from: p.from(n)}}
	p.next()
	var ok bool
	if p.tok.kind == word || p.tok.kind == '"' {
		c.kind, c.unit, ok = parseKind(p.text(p.tok))
	}
	if !ok {
		p.convertsTo()
		return n
	}
	p.next()
	if p.skip("at") {
		if p.tok.kind != word || IsReserved(p.text(p.tok)) {
			p.fail(p.tok, "behind `at` the name of a gauge is missing", "write at body, if the gauge is called body")
			return n
		}
		c.gauge = p.text(p.tok)
		p.next()
	}
	return p.add(c)
}

// sum reads: [ "+" ] product { ( "+" | "-" ) product }
func (p *parser) sum() int16 {
	if p.tok.kind == '+' {
		p.next()
	}
	return p.more(p.product())
}

func (p *parser) more(n int16) int16 {
	for p.tok.kind == '+' || p.tok.kind == '-' {
		o := opAdd
		if p.tok.kind == '-' {
			o = opSub
		}
		n = p.binary(o, n, p.product)
	}
	return n
}

// product reads: signed { ( "*" | "/" ) signed }
func (p *parser) product() int16 {
	n := p.signed()
	for p.tok.kind == '*' || p.tok.kind == '/' {
		o := opMul
		if p.tok.kind == '/' {
			o = opDiv
		}
		n = p.binary(o, n, p.signed)
	}
	return n
}

// binary reads the sign of an operation and its right operand.
func (p *parser) binary(o op, left int16, operand func() int16) int16 {
	at := int32(p.tok.from)
	p.next()
	right := operand()
	return p.add(node{op: o, a: left, b: right, c: none, at: at, span: span{from: p.from(left)}})
}

// signed reads: { "-" } recast. The sign before a list is that of its first number.
func (p *parser) signed() int16 {
	if p.tok.kind != '-' {
		return p.recast(p.operand())
	}
	at := int32(p.tok.from)
	if first := scan(p.f.Text, p.tok.to); first.kind == number && scan(p.f.Text, first.to).kind == '(' {
		p.next()
		return p.recast(p.number(at))
	}
	var n int16
	if p.enter() {
		p.next()
		n = p.signed()
	}
	p.nested--
	return p.add(node{op: opNegate, a: n, b: none, c: none, at: at, span: span{from: at}})
}

// recast reads what may stand behind an operand: { "as" kind }
func (p *parser) recast(n int16) int16 {
	for p.is("as") {
		c := node{op: opRecast, a: n, b: none, c: none, at: int32(p.tok.from), span: span{from: p.from(n)}}
		p.next()
		var ok bool
		if c.kind, c.unit, ok = parseKind(p.text(p.tok)); !ok {
			p.fail(p.tok, "behind `as` comes a kind, not "+p.said(p.tok), "write as stitches, as rows or as number")
			return n
		}
		p.next()
		n = p.add(c)
	}
	return n
}
