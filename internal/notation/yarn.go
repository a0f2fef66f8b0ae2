package notation

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
		if name == "" {
			return p.remark(i), true // "carry unused colour"
		}
		return &Yarn{placed: p.placed(i), Name: name, How: "drop"}, true
	}
	return nil, false
}
