package formula

// startsRounding reports whether a word may be the first of a rounding.
func startsRounding(w string) bool {
	switch w {
	case "rounded", "up", "down", "to", "the", "nearest":
		return true
	}
	return false
}

// rounding reads what stands behind a comma, in the long form or the short:
//
//	rounded to the nearest multiple of 6 + 2 · up to even · rounded down to a whole number · to the nearest 0.5 cm
func (p *parser) rounding(n int16) int16 {
	p.next()
	if p.tok.kind != word || !startsRounding(p.text(p.tok)) {
		p.afterComma()
		return n
	}
	r := node{op: opRound, a: n, b: none, c: none, at: int32(p.tok.from), span: span{from: p.from(n)}}
	p.skip("rounded")
	switch {
	case p.skip("up"):
		r.way = Up
	case p.skip("down"):
		r.way = Down
	}
	to := p.skip("to")
	p.skip("the")
	if p.skip("nearest") && r.way == NotRounded {
		r.way = Nearest
	}
	if r.way == NotRounded {
		p.fail(p.tok, "rounded which way?", "write rounded up to …, rounded down to … or rounded to the nearest …")
		return n
	}
	if to || p.tok.kind != end && p.tok.kind != ')' { // "rounded up" alone is up to whole
		p.roundTo(&r)
	}
	if p.tok.kind == ',' {
		p.fail(p.tok, "this is rounded already", "put what is rounded first in brackets: (…, rounded up to even), rounded …")
	}
	return p.add(r)
}

// roundTo reads: [ a | an ] ( whole | even | odd ) [ number ] · [ a ] multiple of M [ ( + | plus ) N ] · a quantity
func (p *parser) roundTo(r *node) {
	if !p.skip("a") {
		p.skip("an")
	}
	switch {
	case p.skip("whole"):
		p.skip("number")
	case p.skip("even"):
		r.series = toEven
		p.skip("number")
	case p.skip("odd"):
		r.series = toOdd
		p.skip("number")
	case p.skip("multiple"):
		p.multiple(r)
	case p.tok.kind == end, p.tok.kind == word && IsReserved(p.text(p.tok)) && !isValue(p.text(p.tok)):
		p.fail(p.tok, "rounded to what? not to "+p.said(p.tok), "write whole, even, odd, multiple of 6 + 2, or a quantity such as 0.5 cm")
	default:
		r.series = toQuantity
		r.b = p.operand()
	}
}

func (p *parser) multiple(r *node) {
	if !p.skip("of") {
		p.fail(p.tok, "a multiple of what?", "write multiple of 6, or multiple of 6 + 2")
		return
	}
	r.series = toMultiple
	r.b = p.operand()
	switch {
	case p.tok.kind == '+' || p.is("plus"):
		p.next()
		r.c = p.operand()
	case p.tok.kind == '-':
		p.fail(p.tok, "a multiple goes on with what is added to it", "write multiple of 6 + 5 for a multiple of 6 less 1")
	}
}
