package stitch

import "strings"

// A spelling is one way of writing a stitch: its words in small letters.
type spelling struct {
	rest   []string // the words after the first; empty for a single word
	stitch Stitch
}

// spellings finds, for each system of terms, the stitches whose writing begins with a word, longest first.
var spellings = [2]map[string][]spelling{spell(US), spell(UK)}

func spell(t Terms) map[string][]spelling {
	m := make(map[string][]spelling, 4*len(dictionary))
	add := func(words []string, s Stitch) {
		at, list := 0, m[words[0]]
		for at < len(list) && len(list[at].rest) >= len(words)-1 {
			if len(list[at].rest) == len(words)-1 && strings.Join(list[at].rest, " ") == strings.Join(words[1:], " ") {
				return
			}
			at++
		}
		list = append(list, spelling{})
		copy(list[at+1:], list[at:])
		list[at] = spelling{words[1:], s}
		m[words[0]] = list
	}
	for i := range dictionary {
		e := &dictionary[i]
		names := e.In(t)
		s := Stitch{Name: e.Name}
		for _, name := range append([]string{names.Abbr, e.wordsOnly(t)}, names.Also...) {
			words := strings.Fields(strings.ToLower(name))
			add(words, s)
			for _, plural := range plurals(words[len(words)-1]) {
				add(append(append([]string{}, words[:len(words)-1]...), plural), s)
			}
			if e.Class == Plain && len(words) == 1 {
				for _, post := range []Post{FrontPost, BackPost} {
					add([]string{postPrefix[post] + words[0]}, Stitch{Name: e.Name, Post: post})
				}
			}
		}
	}
	if t == UK { // raised trebles, as UK magazines shorten them; from memory
		add([]string{"rtrf"}, Stitch{Name: "dc", Post: FrontPost})
		add([]string{"rtrb"}, Stitch{Name: "dc", Post: BackPost})
	}
	return m
}

// wordsOnly returns the name in words without what explains it: "increase" of "increase: 2 sts in one st".
func (e *Entry) wordsOnly(t Terms) string {
	words, _, _ := strings.Cut(e.In(t).Words, ":")
	return words
}

var postPrefix = [...]string{NoPost: "", FrontPost: "fp", BackPost: "bp"}

// plurals returns how a word may be written of several: "shells", "stitches", "V-sts".
func plurals(word string) []string {
	switch {
	case strings.HasSuffix(word, "stitch"):
		return []string{word + "es"}
	case strings.HasSuffix(word, "s") || strings.HasSuffix(word, "sh"):
		return []string{word + "es"}
	case word == "x", word == "v", word == "p", strings.HasSuffix(word, "."):
		return nil
	}
	return []string{word + "s"}
}

// Word returns the stitch that one written word names in the terms: "sc", "FPdc", "dc2tog", "shells". Capitals do not matter.
func Word(word string, t Terms) (Stitch, bool) {
	s, n := Read([]string{word}, t)
	return s, n == 1
}

// Read returns the stitch that the first words of a text name in the terms, and how many of them: 3 for "half double crochet". It
// takes the longest name there is; 0 words say that none begins here. A loop may stand before or behind: "BLO sc", "sc blo".
func Read(words []string, t Terms) (Stitch, int) {
	if len(words) == 0 {
		return Stitch{}, 0
	}
	if loop, n := ReadLoop(words); n > 0 {
		s, m := Read(words[n:], t)
		if m == 0 || s.Loop != BothLoops {
			return Stitch{}, 0
		}
		s.Loop = loop
		return s, n + m
	}
	if post, n := readPost(words); n > 0 {
		s, m := Read(words[n:], t)
		if e := s.Find(); m == 0 || s.Post != NoPost || e == nil || e.Class != Plain {
			return Stitch{}, 0
		}
		s.Post = post
		return s, n + m
	}
	s, n := readBase(words, t)
	if n == 0 {
		return Stitch{}, 0
	}
	if n < len(words) {
		if loop, m := ReadLoop(words[n:]); m > 0 {
			s.Loop = loop
			n += m
		}
	}
	return s, n
}

func readBase(words []string, t Terms) (Stitch, int) {
	first := lower(words[0])
	for _, sp := range spellings[t][first] {
		if len(sp.rest) >= len(words) {
			continue
		}
		n := 1 + len(sp.rest)
		if last := len(sp.rest); last > 0 && startWith(words[1:], sp.rest[:last-1]) { // "quad tr2tog"
			if base, together, ok := cutTog(lower(words[last])); ok && base == sp.rest[last-1] {
				s := sp.stitch
				s.Together = together
				return s, n
			}
		}
		if !startWith(words[1:], sp.rest) {
			continue
		}
		if s, m := readChange(sp.stitch, words[n:]); m > 0 {
			return s, n + m
		}
		return sp.stitch, n
	}
	if base, together, ok := cutTog(first); ok {
		if s, known := Word(base, t); known && s.Together == 0 {
			s.Together = together
			return s, 1
		}
	}
	if base, ok := strings.CutPrefix(first, "bl"); ok && len(base) > 1 {
		if s, known := Word(base, t); known && s.Loop == BothLoops && s.Find().Class == Plain {
			s.Loop = BackLoop
			return s, 1
		}
	}
	if base, ok := strings.CutPrefix(first, "fl"); ok && len(base) > 1 {
		if s, known := Word(base, t); known && s.Loop == BothLoops && s.Find().Class == Plain {
			s.Loop = FrontLoop
			return s, 1
		}
	}
	return Stitch{}, 0
}

// readChange reads what turns a plain stitch into an increase or a decrease: "dc dec", "hdc 2 tog", "sc inc".
func readChange(s Stitch, words []string) (Stitch, int) {
	if e := s.Find(); len(words) == 0 || e.Class != Plain {
		return s, 0
	}
	switch lower(words[0]) {
	case "dec", "decs", "decrease":
		s.Together = 2
		return s, 1
	case "inc", "incs", "increase":
		return Stitch{Name: "inc", Of: s.Name}, 1
	case "next": // "sc next 2 sts tog"
		if len(words) > 2 {
			if changed, n := readChange(s, words[1:]); n > 1 && changed.Together > 0 {
				return changed, n + 1
			}
		}
		return s, 0
	case "2tog", "3tog", "4tog", "5tog":
		s.Together = words[0][0] - '0'
		return s, 1
	}
	if len(words) > 1 && len(words[0]) == 1 && words[0][0] >= '2' && words[0][0] <= '9' {
		switch lower(words[1]) {
		case "tog", "together":
			s.Together = words[0][0] - '0'
			return s, 2
		case "sts", "stitches":
			if len(words) > 2 && (lower(words[2]) == "tog" || lower(words[2]) == "together") {
				s.Together = words[0][0] - '0'
				return s, 3
			}
		}
	}
	return s, 0
}

// cutTog takes "dc3tog" apart into "dc" and 3.
func cutTog(word string) (base string, together uint8, ok bool) {
	word, ok = strings.CutSuffix(word, "tog")
	digits := len(word)
	for digits > 0 && word[digits-1] >= '0' && word[digits-1] <= '9' {
		digits--
	}
	if !ok || digits == 0 || digits == len(word) || len(word)-digits > 2 {
		return "", 0, false
	}
	n := 0
	for _, d := range []byte(word[digits:]) {
		n = 10*n + int(d-'0')
	}
	return word[:digits], uint8(n), n >= 2
}

func readPost(words []string) (Post, int) {
	switch lower(words[0]) {
	case "fp":
		return FrontPost, 1
	case "bp":
		return BackPost, 1
	case "front", "back":
		if len(words) > 1 && lower(words[1]) == "post" {
			if lower(words[0]) == "front" {
				return FrontPost, 2
			}
			return BackPost, 2
		}
	}
	return NoPost, 0
}

// loopWords are the ways of naming loops, longest first.
var loopWords = []struct {
	words []string
	loop  Loop
}{
	{[]string{"through", "back", "loop", "only"}, BackLoop}, {[]string{"through", "front", "loop", "only"}, FrontLoop},
	{[]string{"through", "back", "loop"}, BackLoop}, {[]string{"through", "front", "loop"}, FrontLoop},
	{[]string{"back", "loop", "only"}, BackLoop}, {[]string{"front", "loop", "only"}, FrontLoop},
	{[]string{"back", "loops", "only"}, BackLoop}, {[]string{"front", "loops", "only"}, FrontLoop},
	{[]string{"third", "loop", "only"}, ThirdLoop}, {[]string{"3rd", "loop", "only"}, ThirdLoop},
	{[]string{"back", "loop"}, BackLoop}, {[]string{"back", "loops"}, BackLoop}, {[]string{"back", "lp"}, BackLoop}, {[]string{"back", "lps"}, BackLoop},
	{[]string{"back", "vein"}, BackLoop}, {[]string{"back", "veins"}, BackLoop}, {[]string{"back", "thread"}, BackLoop},
	{[]string{"front", "loop"}, FrontLoop}, {[]string{"front", "loops"}, FrontLoop}, {[]string{"front", "lp"}, FrontLoop}, {[]string{"front", "lps"}, FrontLoop},
	{[]string{"third", "loop"}, ThirdLoop}, {[]string{"3rd", "loop"}, ThirdLoop}, {[]string{"third", "loops"}, ThirdLoop}, {[]string{"3rd", "loops"}, ThirdLoop},
	{[]string{"back", "bump"}, BackBump}, {[]string{"back", "bumps"}, BackBump}, {[]string{"back", "bar"}, BackBump},
	{[]string{"through", "both", "loops"}, BothLoops}, {[]string{"through", "both", "lps"}, BothLoops}, {[]string{"both", "loops"}, BothLoops}, {[]string{"both", "lps"}, BothLoops},
	{[]string{"blo"}, BackLoop}, {[]string{"flo"}, FrontLoop}, {[]string{"bl"}, BackLoop}, {[]string{"fl"}, FrontLoop},
	{[]string{"blp"}, BackLoop}, {[]string{"flp"}, FrontLoop}, {[]string{"bls"}, BackLoop}, {[]string{"fls"}, FrontLoop},
	{[]string{"tbl"}, BackLoop}, {[]string{"tfl"}, FrontLoop}, {[]string{"bbo"}, BackBump}, {[]string{"3rdlo"}, ThirdLoop},
}

// ReadLoop returns the loop that the first words of a text name, and how many of them; 0 words when none begins here.
func ReadLoop(words []string) (Loop, int) {
	if len(words) == 0 {
		return BothLoops, 0
	}
	switch lower(words[0]) {
	case "through", "back", "front", "third", "3rd", "both", "blo", "flo", "bl", "fl", "blp", "flp", "bls", "fls", "tbl", "tfl", "bbo", "3rdlo":
	default:
		return BothLoops, 0
	}
	for _, l := range loopWords {
		if len(l.words) <= len(words) && startWith(words, l.words) {
			return l.loop, len(l.words)
		}
	}
	return BothLoops, 0
}

func startWith(words, wanted []string) bool {
	for i, w := range wanted {
		if !strings.EqualFold(words[i], w) {
			return false
		}
	}
	return true
}

// lower returns a word in small letters, without copying one that has no capitals.
func lower(word string) string {
	for i := range len(word) {
		if c := word[i]; c >= 'A' && c <= 'Z' || c >= 0x80 {
			return strings.ToLower(word)
		}
	}
	return word
}

// Marks returns the terms that a word belongs to and true, when it is a word of one system only: sc, hdc, skip and gauge are
// US; htr, miss and tension are UK. Everything else, dc and tr above all, is in both.
// Source: Craft Yarn Council's term differences; ruleofthejewel.blog and hilandonubes.com for skip and gauge.
func Marks(word string) (Terms, bool) {
	w := lower(word)
	if base, _, ok := cutTog(w); ok {
		w = base
	}
	w = strings.TrimPrefix(strings.TrimPrefix(w, "fp"), "bp")
	switch w {
	case "sc", "hdc", "skip", "sk", "gauge", "single crochet", "half double crochet", "half double":
		return US, true
	case "htr", "miss", "tension", "half treble crochet", "half treble":
		return UK, true
	}
	return US, false
}

// Beginnings calls yield for every word, in small letters, that a stitch's writing begins with in the terms, and the number of
// words of the longest such writing.
func Beginnings(t Terms) func(yield func(first string, longest int) bool) {
	return func(yield func(string, int) bool) {
		for first, list := range spellings[t] {
			if !yield(first, 1+len(list[0].rest)) {
				return
			}
		}
	}
}
