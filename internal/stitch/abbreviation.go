package stitch

import (
	"slices"
	"strings"
)

// An Abbreviation is one line of the list at the head of a pattern.
type Abbreviation struct{ Short, Words string }

// A usage is a word of instructions that is no stitch, with what it is called in each system.
type usage struct{ us, uk, usWords, ukWords string }

// usages are the abbreviations that the house style prints.
// Source: Craft Yarn Council's www.YarnStandards.com, crochet abbreviations; miss from the term differences.
var usages = []usage{
	{"alt", "alt", "alternate", "alternate"}, {"beg", "beg", "beginning", "beginning"}, {"BLO", "BLO", "back loop only", "back loop only"},
	{"ch sp", "ch sp", "chain space", "chain space"}, {"cont", "cont", "continue", "continue"}, {"dec", "dec", "decrease", "decrease"},
	{"FLO", "FLO", "front loop only", "front loop only"}, {"FP", "FP", "front post", "front post"}, {"BP", "BP", "back post", "back post"},
	{"inc", "inc", "increase", "increase"}, {"patt", "patt", "pattern", "pattern"}, {"prev", "prev", "previous", "previous"},
	{"rem", "rem", "remaining", "remaining"}, {"rep", "rep", "repeat", "repeat"}, {"rnd", "rnd", "round", "round"}, {"RS", "RS", "right side", "right side"},
	{"sk", "miss", "skip", "miss"}, {"sp", "sp", "space", "space"}, {"st", "st", "stitch", "stitch"}, {"tch", "tch", "turning chain", "turning chain"},
	{"tog", "tog", "together", "together"}, {"WS", "WS", "wrong side", "wrong side"}, {"yo", "yrh", "yarn over", "yarn round hook"},
}

// Abbreviations returns the list for the stitches and the other words that a pattern uses, each once, in the order of the alphabet. Other
// words are given as the house style prints them in US terms ("sk", "rep", "st"); ones without an entry are left out.
func Abbreviations(stitches []Stitch, words []string, t Terms) []Abbreviation {
	seen := make(map[string]bool)
	var out []Abbreviation
	add := func(short, words string) {
		if short != "" && short != words && !seen[short] {
			seen[short] = true
			out = append(out, Abbreviation{short, words})
		}
	}
	for _, s := range stitches {
		e := s.Find()
		if e == nil {
			continue
		}
		s.Manner, s.Loop = Usual, BothLoops
		if e.Class == Unit {
			continue // printed in full
		}
		add(s.In(t), s.Words(t))
	}
	for _, w := range words {
		for _, u := range usages {
			if u.us != w {
				continue
			}
			if t == UK {
				add(u.uk, u.ukWords)
			} else {
				add(u.us, u.usWords)
			}
		}
	}
	slices.SortStableFunc(out, func(a, b Abbreviation) int {
		return strings.Compare(strings.ToLower(a.Short), strings.ToLower(b.Short))
	})
	return out
}
