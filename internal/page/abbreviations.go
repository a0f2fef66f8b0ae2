package page

import (
	"maps"
	"slices"
	"strings"

	"foundrow/internal/formula"
	"foundrow/internal/pattern"
	"foundrow/internal/prose"
)

// An Abbreviation is one abbreviation of the written rows with the words it stands for.
type Abbreviation struct{ Short, Words string }

// inBothTerms are the abbreviations that mean the same in US and UK terms. The marker's "m" is left out: it is the metre of
// every yarn.
// Source: Craft Yarn Council's www.YarnStandards.com, Crochet Abbreviations Master List.
var inBothTerms = []Abbreviation{
	{"alt", "alternate"}, {"approx", "approximately"}, {"beg", "begin, beginning"}, {"bet", "between"}, {"BL", "back loop"},
	{"BLO", "back loop only"}, {"bo", "bobble"}, {"BP", "back post"}, {"CC", "contrasting colour"}, {"ch", "chain"},
	{"ch-sp", "chain space"}, {"CL", "cluster"}, {"cont", "continue"}, {"dec", "decrease"}, {"FL", "front loop"},
	{"FLO", "front loop only"}, {"foll", "following"}, {"FP", "front post"}, {"inc", "increase"}, {"lp", "loop"},
	{"MC", "main colour"}, {"patt", "pattern"}, {"pc", "popcorn stitch"}, {"pm", "place marker"}, {"prev", "previous"},
	{"ps", "puff stitch"}, {"rem", "remaining"}, {"rep", "repeat"}, {"rnd", "round"}, {"RS", "right side"}, {"sh", "shell"},
	{"sl m", "slip marker"}, {"sl st", "slip stitch"}, {"sm", "slip marker"}, {"sp", "space"}, {"st", "stitch"},
	{"t-ch", "turning chain"}, {"tbl", "through back loop"}, {"tch", "turning chain"}, {"tog", "together"}, {"WS", "wrong side"},
}

// inTerms are the stitches, whose names differ. Decreases ("sc3tog"), post stitches ("FPdc") and extended stitches follow from
// their names.
// Source: Craft Yarn Council's www.YarnStandards.com, master list and term differences; the UK abbreviation of the quadruple
// treble is from memory.
var inTerms = [...][]Abbreviation{
	pattern.US: {
		{"sc", "single crochet"}, {"hdc", "half double crochet"}, {"dc", "double crochet"}, {"tr", "treble crochet"},
		{"dtr", "double treble crochet"}, {"trtr", "triple treble crochet"}, {"sk", "skip"}, {"yo", "yarn over"}, {"yoh", "yarn over hook"},
	},
	pattern.UK: {
		{"ss", "slip stitch"}, {"dc", "double crochet"}, {"htr", "half treble crochet"}, {"tr", "treble crochet"},
		{"dtr", "double treble crochet"}, {"trtr", "triple treble crochet"}, {"ttr", "triple treble crochet"},
		{"qtr", "quadruple treble crochet"}, {"yoh", "yarn over hook"}, {"yrh", "yarn round hook"},
	},
}

// modifiers stand before a stitch and are read with it.
// Source: Craft Yarn Council's www.YarnStandards.com, master list; read off its FPdc, BPtr, esc and so on.
var modifiers = []Abbreviation{{"FP", "front post"}, {"BP", "back post"}, {"e", "extended"}}

// dictionaries hold the abbreviations of US and UK terms by their small letters.
var dictionaries = [...]map[string]Abbreviation{
	pattern.US: dictionary(inTerms[pattern.US]),
	pattern.UK: dictionary(inTerms[pattern.UK]),
}

func dictionary(stitches []Abbreviation) map[string]Abbreviation {
	d := map[string]Abbreviation{}
	for _, a := range slices.Concat(inBothTerms, stitches) {
		d[strings.ToLower(a.Short)] = a
	}
	for _, m := range modifiers {
		for _, s := range stitches {
			d[strings.ToLower(m.Short+s.Short)] = Abbreviation{m.Short + s.Short, m.Words + " " + s.Words}
		}
	}
	return d
}

// abbreviations lists every abbreviation that the pattern's rows, text and gauges use, and no other, in alphabetical order.
// Special stitches are explained by themselves.
func abbreviations(p *pattern.Pattern) []Abbreviation {
	u := usedWords{dictionary: dictionaries[p.Terms], found: map[string]Abbreviation{}, special: map[string]bool{}, seen: map[string]bool{}}
	for _, s := range p.Special {
		u.special[s.Abbr.Text] = true
	}
	for _, s := range p.Special {
		u.line(s.How.Text)
	}
	for _, piece := range p.Pieces {
		for _, l := range piece.Lines {
			u.line(l.Lead.Words(gap))
			u.line(l.Line.Words(gap))
		}
	}
	prose.Walk(p.Text, func(l prose.Line) { u.line(l.Words(gap)) })
	for _, s := range p.Slots {
		if s.Form == pattern.Counted {
			u.line(noun(s, formula.Stitches))
		}
	}
	for _, g := range p.Gauges {
		u.line(g.Stitch)
		if g.Stitches.Sign() > 0 {
			u.line("sts")
		}
	}
	return slices.SortedFunc(maps.Values(u.found), func(a, b Abbreviation) int {
		return strings.Compare(strings.ToLower(a.Short), strings.ToLower(b.Short))
	})
}

// gap stands for a value: the words on its two sides are two words.
func gap(int) string { return "0" }

type usedWords struct {
	dictionary map[string]Abbreviation
	found      map[string]Abbreviation // by their small letters
	special    map[string]bool
	seen       map[string]bool // words that need not be looked up again
}

// line looks at every word of a line, and at two words together for the abbreviations written in two ("sl st").
func (u *usedWords) line(text string) {
	last := ""
	for i := 0; i < len(text); {
		start := i
		for i < len(text) && inWord(text[i]) {
			i++
		}
		word := text[start:i]
		if strings.EqualFold(last, "sl") && text[start-1] == ' ' && u.note(last+" "+word) { // the abbreviations of two words begin so
			last = ""
		} else {
			if !u.seen[word] {
				u.seen[word] = true
				u.word(word)
			}
			last = word
		}
		for i < len(text) && !inWord(text[i]) {
			i++
		}
	}
}

func inWord(c byte) bool {
	return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '-'
}

// word notes a word, also with figures at its ends ("sc5", "2tr", "ch-3"), for several ("sts") and worked together ("sc3tog").
func (u *usedWords) word(written string) {
	const figures = "0123456789-"
	word := strings.Trim(written, figures)
	if word == "" || u.special[written] || u.special[word] || u.note(word) {
		return
	}
	if many, plural := strings.CutSuffix(word, "s"); plural && u.note(many) {
		return
	}
	stitch, together := strings.CutSuffix(word, "tog")
	base := strings.TrimRight(stitch, figures)
	if together && base != stitch {
		if a, known := u.dictionary[strings.ToLower(base)]; known {
			u.found[strings.ToLower(word)] = Abbreviation{a.Short + stitch[len(base):] + "tog", a.Words + " " + stitch[len(base):] + " together"}
		}
	}
}

// note notes an abbreviation in the spelling of the table, or in small letters where the pattern writes it so.
func (u *usedWords) note(word string) bool {
	small := strings.ToLower(word)
	a, known := u.dictionary[small]
	if !known {
		return false
	}
	if word == small {
		a.Short = small
	}
	u.found[small] = a
	return true
}
