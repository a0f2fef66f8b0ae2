package proof

import (
	"cmp"
	"slices"
	"strings"
)

// A place is a word of a passage.
type place struct{ passage, word int }

func (a place) compare(b place) int {
	return cmp.Or(cmp.Compare(a.passage, b.passage), cmp.Compare(a.word, b.word))
}

// reading is what a pattern says to its makers, with every word to be found by itself.
type reading struct {
	passages []passage
	index    map[string][]place // by words in small letters
}

func newReading(all []passage) reading {
	r := reading{passages: all, index: make(map[string][]place, 512)}
	for p := range all {
		for w := range all[p].words {
			if low := all[p].words[w].low; all[p].words[w].kind != mark {
				r.index[low] = append(r.index[low], place{p, w})
			}
		}
	}
	return r
}

// mentions reports whether a phrase stands anywhere, in the singular or the plural.
func (r reading) mentions(phrase string) bool {
	phrase = strings.TrimSpace(flat(phrase))
	return phrase != "" && (len(r.places(phrase)) > 0 || len(r.places(phrase+"s")) > 0 || len(r.places(phrase+"es")) > 0)
}

// places returns where a phrase begins, in the order of the file. It is given in small letters.
func (r reading) places(phrase string) []place {
	words := strings.Fields(phrase)
	begun := r.index[words[0]]
	if len(words) == 1 {
		return begun
	}
	var all []place
	for _, at := range begun {
		if r.passages[at.passage].goesOn(at.word, words) {
			all = append(all, at)
		}
	}
	return all
}

// goesOn reports whether the words stand at a place, hyphens between them or not.
func (p passage) goesOn(i int, words []string) bool {
	for _, w := range words {
		if i < len(p.words) && p.words[i].low == "-" {
			i++
		}
		if i >= len(p.words) || p.words[i].low != w {
			return false
		}
		i++
	}
	return true
}

// sentence returns the words of the sentence that a word stands in.
func (p passage) sentence(i int) []word {
	from, to := i, i
	for from > 0 && p.words[from-1].sentence == p.words[i].sentence {
		from--
	}
	for to < len(p.words) && p.words[to].sentence == p.words[i].sentence {
		to++
	}
	return p.words[from:to]
}

// says reports whether the sentence that a word stands in has one of the words, in small letters.
func (p passage) says(i int, any ...string) bool {
	for _, w := range p.sentence(i) {
		if w.is(any...) {
			return true
		}
	}
	return false
}

// names reports whether the sentence that a word stands in has one of the names, as they are written.
func (p passage) names(i int, names []string) bool {
	return slices.ContainsFunc(p.sentence(i), func(w word) bool { return slices.Contains(names, w.text) })
}

// follows reports whether one of the words stands within so many places from i on, in the sentence of the word before.
func (p passage) follows(i, within int, any ...string) bool {
	for j := i; j < len(p.words) && j < i+within && i > 0 && p.words[j].sentence == p.words[i-1].sentence; j++ {
		if p.words[j].is(any...) {
			return true
		}
	}
	return false
}

// leads reports whether one of the words stands within so many places before a word, in its sentence.
func (p passage) leads(i, within int, any ...string) bool {
	for j := i - 1; j >= 0 && j >= i-within && p.words[j].sentence == p.words[i].sentence; j-- {
		if p.words[j].is(any...) {
			return true
		}
	}
	return false
}

// nearBefore reports whether one of the words stands next before a place, or next but one.
func (p passage) nearBefore(i int, any ...string) bool { return p.leads(i, 2, any...) }

// before returns the words of a sentence up to a place, in small letters.
func (p passage) before(i int) string {
	from := i
	for from > 0 && p.words[from-1].sentence == p.words[i].sentence {
		from--
	}
	var b strings.Builder
	for _, w := range p.words[from:i] {
		b.WriteString(" " + w.low)
	}
	return b.String() + " "
}

// flat returns the words of a text in small letters with a space around each.
func flat(text string) string {
	return " " + strings.Join(strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return strings.ContainsRune(" \t\n,.;:()[]*-", r) }), " ") + " "
}

// holds reports whether a flat text has the words of a phrase, the last in the singular or the plural.
func holds(text, phrase string) bool {
	phrase = strings.TrimSpace(flat(phrase))
	if phrase == "" {
		return false
	}
	return strings.Contains(text, " "+phrase+" ") || strings.Contains(text, " "+phrase+"s ") || strings.Contains(text, " "+phrase+"es ")
}
