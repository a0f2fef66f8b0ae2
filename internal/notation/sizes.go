package notation

import (
	"strings"

	"foundrow/internal/source"
)

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
