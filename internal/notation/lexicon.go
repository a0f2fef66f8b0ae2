package notation

import "foundrow/internal/stitch"

// numberWords are the values of numbers written out.
var numberWords = map[string]int{
	"zero": 0, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10, "eleven": 11,
	"twelve": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15, "sixteen": 16, "seventeen": 17, "eighteen": 18, "nineteen": 19,
	"twenty": 20, "thirty": 30, "forty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80, "ninety": 90, "hundred": 100,
}

// ordinalWords are the values of ordinals written out, but for first, which is a place of its own.
var ordinalWords = map[string]int{
	"second": 2, "third": 3, "fourth": 4, "fifth": 5, "sixth": 6, "seventh": 7, "eighth": 8, "ninth": 9, "tenth": 10, "eleventh": 11, "twelfth": 12,
}

// A lexeme is what the scanner knows of a written word.
type lexeme struct {
	low     string // its letters, small
	stitch  stitch.Stitch
	word    word
	is      bool  // it is a stitch by itself
	begins  bool  // it may begin a stitch of several words
	ordinal uint8 // of "second", "third", …
	value   uint8 // of "one", "twenty", …
}

// wordless is the lexeme of tokens that are no words.
var wordless lexeme

// lexicon holds every known word, for each system of terms.
var lexicon = [2]map[string]*lexeme{learn(stitch.US), learn(stitch.UK)}

func learn(t stitch.Terms) map[string]*lexeme {
	m := make(map[string]*lexeme, 900)
	know := func(w string) *lexeme {
		if m[w] == nil {
			m[w] = &lexeme{low: w}
		}
		return m[w]
	}
	for _, s := range spelled {
		for _, w := range fields(s.as) {
			know(w).word = s.word
		}
	}
	for w, n := range numberWords {
		know(w).value = uint8(n)
	}
	for w, n := range ordinalWords {
		know(w).ordinal = uint8(n)
	}
	for first, longest := range stitch.Beginnings(t) {
		l := know(first)
		l.begins = longest > 1
		l.stitch, l.is = stitch.Word(first, t)
	}
	for _, w := range []string{"front", "back", "fp", "bp"} {
		know(w).begins = true
	}
	return m
}

// fields splits at spaces.
func fields(s string) []string {
	var words []string
	from := 0
	for i := 0; i <= len(s); i++ {
		if i == len(s) || s[i] == ' ' {
			if i > from {
				words = append(words, s[from:i])
			}
			from = i + 1
		}
	}
	return words
}
