package stitch

import (
	"slices"
	"strings"
)

// A short is an abbreviation that the house style prints: of a stitch, or one of the other words.
type short struct {
	as     string
	stitch Stitch
	word   string // in US terms, of one that is no stitch
}

// shorts are the abbreviations of one system of terms.
type shorts struct {
	all   []short
	at    map[string]int  // where each stands in the list, by its writing in small letters
	begun map[string]bool // the first words of those of two words: "sl" of "sl st"
	pairs [26 * 26]bool   // the two letters that each begins with
}

var shortsIn = [2]shorts{shortsOf(US), shortsOf(UK)}

// shortsOf lists the abbreviations of the terms. Units are printed in full, so they have none.
func shortsOf(t Terms) shorts {
	l := shorts{at: map[string]int{}, begun: map[string]bool{}}
	add := func(s short) {
		low := strings.ToLower(s.as)
		if _, there := l.at[low]; there {
			return
		}
		l.at[low] = len(l.all)
		l.all = append(l.all, s)
		if first, _, two := strings.Cut(low, " "); two {
			l.begun[first] = true
		}
		l.pairs[int(low[0]-'a')*26+int(low[1]-'a')] = true
	}
	for i := range dictionary {
		e := &dictionary[i]
		s := Stitch{Name: e.Name}
		if e.Class == Unit {
			continue
		}
		add(short{as: s.In(t), stitch: s})
		if e.Class == Plain && !strings.Contains(e.In(t).Abbr, " ") {
			for _, post := range [...]Post{FrontPost, BackPost} {
				s.Post = post
				add(short{as: s.In(t), stitch: s})
			}
		}
	}
	for _, u := range usages {
		as := u.us
		if t == UK {
			as = u.uk
		}
		add(short{as: as, word: u.us})
	}
	return l
}

// longestShort is how many letters an abbreviation of one word has at most: "FPhdc12tog".
const longestShort = 10

// Used gathers the abbreviations that texts use. The zero value has met none.
type Used struct {
	met       [2][]bool
	decreases []Stitch
}

// Read notes every abbreviation of the terms that stands in a text, by itself ("sc"), behind figures ("3dc", "ch-3") or for several
// ("sts"), and stitches worked together ("sc2tog"). A word behind a backslash is none.
func (u *Used) Read(text string, t Terms) {
	list := &shortsIn[t]
	if u.met[t] == nil {
		u.met[t] = make([]bool, len(list.all))
	}
	for i := 0; i < len(text); i++ {
		if !letter(text[i]) {
			continue
		}
		from := i
		for i < len(text) && (letter(text[i]) || digit(text[i])) {
			i++
		}
		if i-from > longestShort || i-from < 2 || !list.begins(text[from], text[from+1]) || from > 0 && text[from-1] == '\\' {
			continue
		}
		word := text[from:i]
		if u.note(word, t) {
			continue
		}
		if word[len(word)-1] == 's' && u.note(word[:len(word)-1], t) {
			continue
		}
		if i < len(text) && text[i] == ' ' && list.begun[lower(word)] {
			if end := wordEnd(text, i+1); u.note(text[from:end], t) {
				i = end
			}
		}
	}
}

// begins reports whether some abbreviation begins with two letters, so that most words of a text need not be looked up.
func (l *shorts) begins(a, b byte) bool {
	if !letter(b) {
		return false
	}
	return l.pairs[int(a|0x20-'a')*26+int(b|0x20-'a')]
}

// note notes a word if it is an abbreviation.
func (u *Used) note(word string, t Terms) bool {
	low, list := lower(word), &shortsIn[t]
	if at, known := list.at[low]; known {
		u.met[t][at] = u.met[t][at] || written(word, &list.all[at])
		return true
	}
	if !strings.HasSuffix(low, "tog") {
		return false
	}
	base, together, ok := cutTog(low)
	if !ok {
		return false
	}
	at, known := list.at[base]
	if !known || list.all[at].word != "" || list.all[at].stitch.Find().Class != Plain {
		return false
	}
	s := list.all[at].stitch
	s.Together = together
	if !slices.Contains(u.decreases, s) {
		u.decreases = append(u.decreases, s)
	}
	return true
}

// written reports whether a word is meant as the abbreviation: RS and WS have their capitals, and "St" is a saint. Stitches may be
// written in any: "Sc", "SC", "fpdc".
func written(word string, s *short) bool {
	switch {
	case word == s.as || s.word == "":
		return true
	case s.as == "st":
		return false
	}
	return word[1:] == s.as[1:] && word[0]|0x20 == s.as[0]
}

func digit(c byte) bool { return c >= '0' && c <= '9' }

// Abbreviations returns the list of what was met, in the terms.
func (u *Used) Abbreviations(t Terms) []Abbreviation {
	stitches := slices.Clone(u.decreases)
	var words []string
	for terms, met := range u.met {
		for i, used := range met {
			switch s := &shortsIn[terms].all[i]; {
			case !used:
			case s.word != "":
				words = append(words, s.word)
			default:
				stitches = append(stitches, s.stitch)
			}
		}
	}
	return Abbreviations(stitches, words, t)
}
