package notation

import (
	"strings"

	"foundrow/internal/stitch"
)

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
