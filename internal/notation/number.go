package notation

import (
	"strconv"

	"foundrow/internal/source"
)

// number reads one whole number, in figures or words: "12", "twenty-four", "one hundred and eight".
func (p *parser) number() (int, bool) {
	switch t := p.at(0); {
	case t.kind == tNumber && !t.decimal:
		p.i++
		return t.n, true
	case t.kind == tWord && t.word == wNumberWord:
		return p.numberWords(), true
	}
	return 0, false
}

func (p *parser) numberWords() int {
	total := int(p.at(0).value)
	p.i++
	for {
		k := 0
		if p.kindAt(0, tHyphen) || total >= 100 && p.is(wAnd) {
			k = 1
		}
		if !p.isAt(k, wNumberWord) {
			return total
		}
		n := int(p.at(k).value)
		switch {
		case n == 100 && total > 0 && total < 10 && k == 0:
			total *= 100
		case total%10 == 0 && total%100 >= 20 && n < 10, total > 0 && total%100 == 0 && n < 100:
			total += n
		default:
			return total
		}
		p.i += k + 1
	}
}

// numberNext reports whether a count begins here.
func (p *parser) numberNext() bool {
	t := p.at(0)
	return t.kind == tNumber && !t.decimal || t.kind == tSlot || t.kind == tWord && t.word == wNumberWord
}

// count reads a number as it may stand anywhere in a row: plain, a value, or the trade's list for the sizes in any of its shapes.
func (p *parser) count() (Count, bool) {
	i := p.i
	switch t := p.at(0); {
	case t.kind == tSlot:
		p.i++
		return Count{Said: true, Slot: t.n + 1, Span: t.span()}, true
	case t.kind == tOpen:
		if list, ok := p.numbersIn(p.i); ok && len(list) == len(p.in.Sizes) && len(list) > 1 {
			p.i = t.n + 1
			return Count{Said: true, List: list, Span: p.since(i)}, true
		}
		return Count{}, false
	case t.kind == tDash && p.kindAt(1, tOpen):
		if list, ok := p.numbersIn(p.i + 1); ok && len(list) == len(p.in.Sizes)-1 && len(list) > 1 {
			p.i = p.t[p.i+1].n + 1
			return Count{Said: true, List: append([]Entry{{Absent: true}}, list...), Span: p.since(i)}, true
		}
		return Count{}, false
	}
	n, ok := p.number()
	if !ok {
		return Count{}, false
	}
	c := Count{Said: true, Plain: n}
	if list := p.rest(n); len(list) > 1 {
		c.Plain, c.List = 0, list
	}
	c.Span = p.since(i)
	return c, true
}

// rest reads what follows the first number of a list, or returns nil when it is no list: "24 (26, 28)", "62 (68, 74) (98, 104)",
// "64 (64) 70 (70) 70", "49-61-61", "12/14/16".
func (p *parser) rest(first int) []Entry {
	sizes := len(p.in.Sizes)
	if t := p.at(0); (t.kind == tHyphen || t.kind == tSlash) && sizes > 1 {
		if list := p.strung(first, t.kind, sizes); list != nil {
			return list
		}
	}
	if !p.kindAt(0, tOpen) {
		return nil
	}
	i := p.i
	if list := p.bracketed(first); list != nil {
		return list
	}
	return p.notList(i)
}

// bracketed reads the brackets behind the first number of a list as long as they make one of the sizes; nothing is consumed otherwise.
func (p *parser) bracketed(first int) []Entry {
	i, sizes := p.i, len(p.in.Sizes)
	list := []Entry{{N: first}}
	for len(list) < sizes {
		t := p.at(0)
		more, ok := []Entry{{N: t.n}}, t.kind == tNumber && len(list) > 1 && p.kindAt(-1, tShut)
		if t.kind == tOpen {
			more, ok = p.numbersIn(p.i)
		}
		if !ok {
			break
		}
		list = append(list, more...)
		p.i++
		if t.kind == tOpen {
			p.i = t.n + 1
		}
	}
	if len(list) != sizes || sizes < 2 {
		p.i = i
		return nil
	}
	return list
}

// notList reads brackets that make no list of the sizes. Several numbers straight after a number can be nothing else, so that they are
// taken for one of the wrong length; anything else is left alone.
func (p *parser) notList(i int) []Entry {
	more, ok := p.numbersIn(i)
	if !ok || len(more) < 2 || len(more) == len(p.in.Sizes) {
		return nil
	}
	end := p.t[i].n + 1
	list := append([]Entry{{N: p.t[i-1].n}}, more...)
	for end < p.end && p.t[end].kind == tOpen {
		again, ok := p.numbersIn(end)
		if !ok || len(again) == len(p.in.Sizes) || len(again) < 2 {
			break
		}
		list = append(list, again...)
		end = p.t[end].n + 1
	}
	p.i = end
	span := source.Span{From: p.t[i-1].from, To: p.t[end-1].to}
	p.report(span, "list-length", "a list of "+strconv.Itoa(len(list))+" numbers, but the pattern has "+sizesIn(len(p.in.Sizes)), "write one number for each size, `-` for a size that has none")
	sizes := max(len(p.in.Sizes), 1)
	for len(list) < sizes {
		list = append(list, Entry{Absent: true})
	}
	return list[:sizes]
}

func sizesIn(n int) string {
	if n <= 1 {
		return "one size"
	}
	return strconv.Itoa(n) + " sizes"
}

// strung reads a list strung together by hyphens or strokes: "49-61-61".
func (p *parser) strung(first int, by kind, sizes int) []Entry {
	i := p.i
	list := []Entry{{N: first}}
	for p.eatKind(by) {
		t := p.at(0)
		if t.kind != tNumber || t.decimal {
			break
		}
		list = append(list, Entry{N: t.n})
		p.i++
	}
	if len(list) != sizes || p.kindAt(-1, by) {
		p.i = i
		return nil
	}
	return list
}

// numbersIn returns the numbers of the bracket at token i, and whether it holds nothing else. Commas, colons, strokes and dashes
// may stand between; a dash in the place of a number is a size that has none.
func (p *parser) numbersIn(i int) ([]Entry, bool) {
	to := p.t[i].n
	if p.t[i].kind != tOpen || to >= p.end || to < i+2 || !mayList(&p.t[i+1]) || !mayList(&p.t[to-1]) {
		return nil, false
	}
	return p.numbersTo(i+1, to)
}

// mayList reports whether a token may begin or end a list of numbers.
func mayList(t *token) bool {
	return t.kind == tNumber || t.kind == tDash || t.kind == tHyphen || t.kind == tWord && t.word == wNumberWord
}

func (p *parser) numbersTo(from, to int) ([]Entry, bool) {
	i, end := p.i, p.end
	defer func() { p.i, p.end = i, end }()
	p.i, p.end = from, to
	var list []Entry
	fresh := true // a number may come
	for !p.done() {
		t := p.at(0)
		switch {
		case fresh && (t.kind == tDash || t.kind == tHyphen):
			list = append(list, Entry{Absent: true})
			p.i++
			fresh = false
		case !fresh && (t.kind == tComma || t.kind == tColon || t.kind == tHyphen || t.kind == tSlash || t.kind == tSemi || t.kind == tDash):
			p.i++
			fresh = true
		case fresh:
			n, ok := p.number()
			if !ok {
				return nil, false
			}
			list = append(list, Entry{N: n})
			fresh = false
		default:
			return nil, false
		}
	}
	return list, len(list) > 0 && !fresh
}

// ordinal reads "2nd", "{n}th", "third".
func (p *parser) ordinal() (Count, bool) {
	switch t := p.at(0); {
	case t.kind == tOrdinal && t.decimal:
		p.i++
		return Count{Said: true, Slot: t.n + 1, Span: t.span()}, true
	case t.kind == tOrdinal:
		p.i++
		return Count{Said: true, Plain: t.n, Span: t.span()}, true
	case t.kind == tWord && t.ordinal > 0:
		p.i++
		return Count{Said: true, Plain: int(t.ordinal), Span: t.span()}, true
	}
	return Count{}, false
}
