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

// longestShort is how many letters an abbreviation of one word has at most: "FPhdc2tog".
const longestShort = 10

// Used gathers the abbreviations that texts use. The zero value has met none.
type Used struct {
	met       [2][]bool
	decreases []Stitch
}

// Read notes every abbreviation of the terms that stands in a text, by itself ("sc"), behind figures ("3dc", "ch-3") or for several
// ("sts"), and stitches worked together ("sc2tog"). A word behind a backslash is none.
func (u *Used) Read(text string, t Terms) {
	if u.met[t] == nil {
		u.met[t] = make([]bool, len(shortsIn[t].all))
	}
	for i := 0; i < len(text); {
		from := i
		for i < len(text) && (letter(text[i]) || digit(text[i])) {
			i++
		}
		if i == from {
			i++
			continue
		}
		if from > 0 && text[from-1] == '\\' {
			continue
		}
		for from < i && digit(text[from]) {
			from++
		}
		if from == i || i-from > longestShort {
			continue
		}
		word := text[from:i]
		if shortsIn[t].begun[lower(word)] {
			if end := wordEnd(text, i+1); i < len(text) && text[i] == ' ' && u.note(text[from:end], t) {
				i = end
				continue
			}
		}
		if !u.note(word, t) {
			u.note(strings.TrimSuffix(word, "s"), t)
		}
	}
}

// note notes a word if it is an abbreviation, in the capitals it is printed in or with one more at its start.
func (u *Used) note(word string, t Terms) bool {
	low, list := lower(word), &shortsIn[t]
	if at, known := list.at[low]; known {
		u.met[t][at] = u.met[t][at] || written(word, &list.all[at])
		return u.met[t][at]
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

// written reports whether a word is meant as the abbreviation: RS and WS have their capitals, and "St" is a saint.
func written(word string, s *short) bool {
	switch {
	case word == s.as:
		return true
	case s.word == "":
		return true // "Sc", "SC", "fpdc"
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
