package stitch

import (
	"slices"
	"strings"
)

// A pair is one thing called differently in the two systems.
type pair struct {
	us, uk string
	entry  *Entry
	skips  bool // only where it skips something: "miss 2 sts", not "do not miss the last post"
}

// pairs are what is translated in running text. Every US writing has a UK writing of its own and the reverse, so that a text comes
// back as it was; short forms are paired with short forms for that reason.
var pairs = func() []pair {
	var all []pair
	for i := range dictionary {
		e := &dictionary[i]
		if e.Class != Plain && e.Class != Slip && e.Class != Foundation && e.Class != Chains {
			continue
		}
		all = append(all, pair{us: e.US.Abbr, uk: e.UK.Abbr, entry: e})
		if e.US.Words != e.UK.Words {
			all = append(all, pair{us: e.US.Words, uk: e.UK.Words, entry: e})
		}
	}
	short := func(us, uk, name string) {
		all = append(all, pair{us: us, uk: uk, entry: Stitch{Name: name}.Find()})
	}
	short("half double", "half treble", "hdc")
	short("double-crochet", "treble", "dc")
	short("treble", "double treble", "tr")
	short("double treble", "triple treble", "dtr")
	short("triple treble", "quadruple treble", "trtr")
	return append(all, pair{us: "gauge", uk: "tension"}, pair{us: "skip", uk: "miss", skips: true}, pair{us: "skipping", uk: "missing", skips: true},
		pair{us: "yo", uk: "yrh"}, pair{us: "color", uk: "colour"}, pair{us: "colors", uk: "colours"})
}()

// pairsIn finds the pairs by the first word of their writing in the terms, longest first.
var pairsIn = [2]map[string][]pair{sortPairs(US), sortPairs(UK)}

func sortPairs(t Terms) map[string][]pair {
	m := make(map[string][]pair, len(pairs))
	for _, p := range pairs {
		first := firstWord(p.in(t))
		m[first] = append(m[first], p)
	}
	for _, list := range m {
		slices.SortStableFunc(list, func(a, b pair) int { return len(b.in(t)) - len(a.in(t)) })
	}
	return m
}

func (p pair) in(t Terms) string {
	if t == UK {
		return p.uk
	}
	return p.us
}

func firstWord(s string) string {
	for i := range len(s) {
		if !letter(s[i]) {
			return s[:i]
		}
	}
	return s
}

func letter(c byte) bool { return c|0x20 >= 'a' && c|0x20 <= 'z' }

// match finds the pair whose writing begins with the word between two offsets, and where it stands: behind the FP of FPdc.
func match(text string, from, end int, t Terms) (int, int, *pair) {
	word := lower(text[from:end])
	if p, to := matchAt(text, from, word, t); p != nil {
		return from, to, p
	}
	if len(word) > 2 && (word[:2] == "fp" || word[:2] == "bp") {
		if p, to := matchAt(text, from+2, word[2:], t); p != nil && p.entry != nil && p.entry.Class == Plain {
			return from + 2, to, p
		}
	}
	return 0, 0, nil
}

func matchAt(text string, from int, word string, t Terms) (*pair, int) {
	for _, first := range []string{word, strings.TrimSuffix(word, "s")} {
		list := pairsIn[t][first]
		for i := range list {
			p := &list[i]
			writing := p.in(t)
			to := from + len(writing)
			if to > len(text) || !strings.EqualFold(text[from:to], writing) {
				continue
			}
			after := to
			if after < len(text) && text[after] == 's' && p.entry != nil {
				after++
			}
			if after < len(text) && letter(text[after]) {
				continue
			}
			if p.skips && !skipsSomething(text[to:]) {
				continue
			}
			return p, to
		}
	}
	return nil, 0
}

// skipsSomething reports whether stitches to skip are named next, so that "skip" is the trade's word.
func skipsSomething(rest string) bool {
	rest = strings.TrimLeft(rest, " ")
	rest = strings.TrimPrefix(rest, "the ")
	if rest == "" {
		return false
	}
	if rest[0] >= '0' && rest[0] <= '9' || rest[0] == '{' {
		return true
	}
	switch lower(firstWord(rest)) {
	case "next", "first", "last", "st", "sts", "ch", "one", "two", "three", "four", "five", "sp", "every", "each", "all", "stitch", "stitches", "this", "that":
		return true
	}
	return false
}

// Translate returns running text with its stitches in other terms, for a reader. "\dc" comes out as "dc".
func Translate(text string, from, to Terms) string { return carry(text, from, to, false) }

// Carry translates like Translate but for reading in again: what is left alone keeps its backslash, and a word that would be taken for a
// stitch of the other terms gets one, so that carrying a text there and back gives it as it was.
func Carry(text string, from, to Terms) string { return carry(text, from, to, true) }

// A piece of a text that is carried over: a word that stays, or a stitch in its new terms.
type piece struct {
	from, to int  // in the new text
	term     bool // it was translated
}

func carry(text string, from, to Terms, again bool) string {
	if !strings.Contains(text, "\\") && from == to {
		return text
	}
	plain, pieces := restate(text, from, to)
	if !again {
		return plain
	}
	return escape(plain, pieces, to)
}

// restate writes a text in other terms without any backslashes, and tells its words.
func restate(text string, from, to Terms) (string, []piece) {
	var b strings.Builder
	b.Grow(len(text) + 16)
	var pieces []piece
	add := func(s string, term bool) {
		pieces = append(pieces, piece{b.Len(), b.Len() + len(s), term})
		b.WriteString(s)
	}
	for i := 0; i < len(text); {
		c := text[i]
		switch {
		case c == '\\' && i+1 < len(text) && letter(text[i+1]):
			end := wordEnd(text, i+1)
			add(text[i+1:end], false)
			i = end
		case !letter(c):
			b.WriteByte(c)
			i++
		default:
			end := wordEnd(text, i)
			start, stop, p := match(text, i, end, from)
			if p == nil {
				add(text[i:end], false)
				i = end
				continue
			}
			word := text[start:stop]
			if from != to {
				word = likeCase(p.in(to), word)
			}
			add(text[i:start]+word, true)
			i = stop
		}
	}
	return b.String(), pieces
}

// escape puts a backslash before every word that would be taken for a stitch, or for a part of one, when the text is read again.
func escape(text string, pieces []piece, terms Terms) string {
	var b strings.Builder
	b.Grow(len(text) + 16)
	done, reach := 0, 0 // reach is how far the stitch before goes when it is read again
	for _, p := range pieces {
		_, stop, found := match(text, p.from, wordEnd(text, p.from), terms)
		if p.from < reach || !p.term && found != nil {
			b.WriteString(text[done:p.from])
			b.WriteByte('\\')
			done, reach = p.from, 0
		}
		if p.term && stop > p.to {
			reach = stop
		}
	}
	b.WriteString(text[done:])
	return b.String()
}

func wordEnd(text string, i int) int {
	for i < len(text) && letter(text[i]) {
		i++
	}
	return i
}

// likeCase returns a word in the capitals of the one it stands for: "Sc" becomes "Dc", "SC" becomes "DC".
func likeCase(word, like string) string {
	first, rest := like[0] >= 'A' && like[0] <= 'Z', false
	for i := 1; i < len(like); i++ {
		if c := like[i]; c >= 'A' && c <= 'Z' {
			rest = true
		} else if letter(c) {
			rest = false
			break
		}
	}
	switch {
	case first && rest:
		return strings.ToUpper(word)
	case first:
		return strings.ToUpper(word[:1]) + word[1:]
	}
	return word
}
