package notation

import (
	"strings"

	"foundrow/internal/source"
)

// within reads the tokens between two places as a window of their own.
func (p *parser) within(from, to int, read func()) {
	i, end := p.i, p.end
	p.i, p.end = from, to
	read()
	p.i, p.end = i, end
}

// words returns the next words as written, up to n of them.
func (p *parser) words(n int) string {
	i := p.i
	for n > 0 && p.kindAt(0, tWord) {
		p.i++
		n--
	}
	s := p.since(i)
	return strings.ToLower(p.text[s.From:s.To])
}

// windowEnd is the offset at which the window ends.
func (p *parser) windowEnd() int {
	if p.end > 0 && p.end <= len(p.t) {
		return p.t[p.end-1].to
	}
	return p.here()
}

var nothing = token{kind: tEnd, lexeme: &wordless}

// at returns the token k places on.
func (p *parser) at(k int) *token {
	if p.i+k >= p.end || p.i+k < 0 {
		return &nothing
	}
	return &p.t[p.i+k]
}

// is reports whether the next token is one of the words.
func (p *parser) is(words ...word) bool { return p.isAt(0, words...) }

func (p *parser) isAt(k int, words ...word) bool {
	t := p.at(k)
	if t.kind != tWord {
		return false
	}
	for _, w := range words {
		if t.word == w {
			return true
		}
	}
	return false
}

// eat passes over the next token when it is one of the words.
func (p *parser) eat(words ...word) bool {
	if p.is(words...) {
		p.i++
		return true
	}
	return false
}

// eatAll passes over the words when all of them come next, in order.
func (p *parser) eatAll(words ...word) bool {
	for k, w := range words {
		if !p.isAt(k, w) {
			return false
		}
	}
	p.i += len(words)
	return true
}

func (p *parser) kindAt(k int, kd kind) bool { return p.at(k).kind == kd }

// eatKind passes over the next token when it is of the kind.
func (p *parser) eatKind(kd kind) bool {
	if p.kindAt(0, kd) {
		p.i++
		return true
	}
	return false
}

// low is the word k places on, in small letters as the dictionary wants it; empty for anything else.
func (p *parser) low(k int) string {
	t := p.at(k)
	switch t.kind {
	case tWord:
		return t.low
	case tNumber, tOrdinal:
		return small(p.text[t.from:t.to])
	}
	return ""
}

// done reports whether the window is read to its end.
func (p *parser) done() bool { return p.i >= p.end }

// here is the place of the next token.
func (p *parser) here() int {
	if p.i < len(p.t) {
		return p.t[p.i].from
	}
	return p.sc.to
}

// since is the span of the tokens read from the i-th on.
func (p *parser) since(i int) source.Span {
	if i >= p.i {
		return source.At(p.here())
	}
	return source.Span{From: p.t[i].from, To: p.t[p.i-1].to}
}

// want notes what could have stood at the next token, for the finding if nothing else can be made of it.
func (p *parser) want(what string) {
	if p.i >= p.far {
		p.far, p.wanted = p.i, what
	}
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
