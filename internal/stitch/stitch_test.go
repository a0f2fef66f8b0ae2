package stitch_test

import (
	"strings"
	"testing"

	"foundrow/internal/stitch"
)

// TestLadder holds the names to the published pairs.
// Source: Craft Yarn Council's www.YarnStandards.com, term differences; trtr and qtr one page, abbreviation from memory.
func TestLadder(t *testing.T) {
	for _, pair := range [][4]string{
		{"sl st", "ss", "slip stitch", "slip stitch"},
		{"ch", "ch", "chain", "chain"},
		{"sc", "dc", "single crochet", "double crochet"},
		{"hdc", "htr", "half double crochet", "half treble crochet"},
		{"dc", "tr", "double crochet", "treble crochet"},
		{"tr", "dtr", "treble crochet", "double treble crochet"},
		{"dtr", "trtr", "double treble crochet", "triple treble crochet"},
		{"trtr", "qtr", "triple treble crochet", "quadruple treble crochet"},
		{"sc2tog", "dc2tog", "single crochet 2 stitches together", "double crochet 2 stitches together"},
		{"hdc2tog", "htr2tog", "half double crochet 2 stitches together", "half treble crochet 2 stitches together"},
		{"dc2tog", "tr2tog", "double crochet 2 stitches together", "treble crochet 2 stitches together"},
		{"tr2tog", "dtr2tog", "treble crochet 2 stitches together", "double treble crochet 2 stitches together"},
		{"FPdc", "FPtr", "front post double crochet", "front post treble crochet"},
		{"BPdc", "BPtr", "back post double crochet", "back post treble crochet"},
		{"FPsc", "FPdc", "front post single crochet", "front post double crochet"},
		{"esc", "edc", "extended single crochet", "extended double crochet"},
		{"fsc", "fdc", "foundation single crochet", "foundation double crochet"},
	} {
		s, n := stitch.Read(strings.Fields(pair[0]), stitch.US)
		if n == 0 {
			t.Errorf("%s is not known in US terms", pair[0])
			continue
		}
		again, n := stitch.Read(strings.Fields(pair[1]), stitch.UK)
		if n == 0 || again != s {
			t.Errorf("UK %s is %v, US %s is %v", pair[1], again, pair[0], s)
		}
		for i, got := range []string{s.In(stitch.US), s.In(stitch.UK), s.Words(stitch.US), s.Words(stitch.UK)} {
			if got != pair[i] {
				t.Errorf("%s is named %q, want %q", pair[0], got, pair[i])
			}
		}
	}
}

// TestMechanics holds what stitches take, leave and stand to the published figures: turning chains 0 to 6 (seven pages agree), which of
// them count (six do; hdc is the contested one), heights in chains.
func TestMechanics(t *testing.T) {
	for _, want := range []struct {
		name                  string
		uses, makes           int
		chains, turning, half int
		counts                stitch.Counts
	}{
		{"sl st", 1, 1, 0, 0, 1, stitch.NotCounted},
		{"sc", 1, 1, 1, 1, 2, stitch.NotCounted},
		{"hdc", 1, 1, 2, 2, 3, stitch.Unsettled},
		{"dc", 1, 1, 3, 3, 4, stitch.Counted},
		{"tr", 1, 1, 4, 4, 6, stitch.Counted},
		{"dtr", 1, 1, 5, 5, 8, stitch.Counted},
		{"trtr", 1, 1, 6, 6, 10, stitch.Counted},
	} {
		e := stitch.Stitch{Name: want.name}.Find()
		if e.Uses != want.uses || e.Makes != want.makes || e.Chains != want.chains || e.Turning != want.turning || e.Halves != want.half || e.Counts != want.counts {
			t.Errorf("%s: %+v", want.name, e)
		}
	}
	for word, want := range map[string][2]int{"sc2tog": {2, 1}, "dc5tog": {5, 1}, "inc": {1, 2}, "dec": {2, 1}, "invdec": {2, 1}, "bobble": {1, 1}, "shell": {1, 5}, "V-st": {1, 2}, "picot": {0, 0}, "fsc": {0, 1}} {
		s, ok := stitch.Word(word, stitch.US)
		if !ok || s.Uses() != want[0] || s.Makes() != want[1] {
			t.Errorf("%s takes %d and makes %d, want %v", word, s.Uses(), s.Makes(), want)
		}
	}
}

// TestEveryNameIsRead reads every name of the dictionary, in every spelling, plain, round a post and worked together.
func TestEveryNameIsRead(t *testing.T) {
	for _, e := range stitch.Entries() {
		if e.Source == "" {
			t.Errorf("%s names no source", e.Name)
		}
		for _, terms := range []stitch.Terms{stitch.US, stitch.UK} {
			names := e.In(terms)
			words, _, _ := strings.Cut(names.Words, ":")
			for _, name := range append([]string{names.Abbr, words}, names.Also...) {
				s, n := stitch.Read(strings.Fields(name), terms)
				if n != len(strings.Fields(name)) {
					t.Errorf("%q is read to word %d in %s terms", name, n, terms)
				} else if s.Name != e.Name && first(name, terms) != s.Name {
					t.Errorf("%q is %q in %s terms, want %q", name, s.Name, terms, e.Name)
				}
			}
			variants := []stitch.Stitch{{Name: e.Name}}
			if e.Class == stitch.Plain {
				variants = append(variants, stitch.Stitch{Name: e.Name, Post: stitch.FrontPost}, stitch.Stitch{Name: e.Name, Together: 3},
					stitch.Stitch{Name: e.Name, Loop: stitch.BackLoop}, stitch.Stitch{Name: e.Name, Post: stitch.BackPost, Together: 2})
			}
			for _, want := range variants {
				if got, n := stitch.Read(strings.Fields(want.In(terms)), terms); got != want || n != len(strings.Fields(want.In(terms))) {
					t.Errorf("%q is read as %+v in %s terms, want %+v", want.In(terms), got, terms, want)
				}
			}
		}
	}
}

// first is the entry that a spelling shared by several belongs to: the one that comes first.
func first(name string, terms stitch.Terms) string {
	for _, e := range stitch.Entries() {
		names := e.In(terms)
		for _, n := range append([]string{names.Abbr, names.Words}, names.Also...) {
			if strings.EqualFold(n, name) {
				return e.Name
			}
		}
	}
	return ""
}

func TestRead(t *testing.T) {
	for _, want := range []struct {
		text  string
		terms stitch.Terms
		name  string // in US terms
		words int
	}{
		{"half double crochet in next st", stitch.US, "hdc", 3},
		{"double crochet", stitch.UK, "sc", 2},
		{"doubles", stitch.UK, "sc", 1},
		{"treble", stitch.UK, "dc", 1},
		{"close double crochet", stitch.UK, "sc", 3},
		{"sc blo in each st", stitch.US, "sc BLO", 2},
		{"BLO sc in each st", stitch.US, "sc BLO", 2},
		{"front post dc", stitch.US, "FPdc", 3},
		{"fp tr 2 rows below", stitch.US, "FPtr", 2},
		{"dc dec", stitch.US, "dc2tog", 2},
		{"dc 2 tog", stitch.US, "dc2tog", 3},
		{"sc next 2 sts tog", stitch.US, "sc2tog", 5},
		{"blsc", stitch.US, "sc BLO", 1},
		{"s.c", stitch.US, "sc", 1},
		{"quad tr2tog", stitch.US, "quad tr2tog", 2},
		{"rtrf", stitch.UK, "FPdc", 1},
		{"V-sts", stitch.US, "V-st", 1},
		{"htr", stitch.US, "", 0},
		{"sc", stitch.UK, "", 0},
		{"hdc", stitch.UK, "", 0},
		{"table", stitch.US, "", 0},
		{"sc1tog", stitch.US, "", 0},
	} {
		s, n := stitch.Read(strings.Fields(want.text), want.terms)
		if n != want.words || n > 0 && s.In(stitch.US) != want.name {
			t.Errorf("%q in %s terms is %q of %d words, want %q of %d", want.text, want.terms, s.In(stitch.US), n, want.name, want.words)
		}
	}
}

// TestMarks: only sc, hdc, skip and gauge mark US terms, only htr, miss and tension UK; dc, tr and treble are in both.
func TestMarks(t *testing.T) {
	for word, want := range map[string]string{"sc": "us", "hdc": "us", "hdc2tog": "us", "FPsc": "us", "skip": "us", "gauge": "us", "htr": "uk", "miss": "uk", "tension": "uk",
		"dc": "", "tr": "", "dtr": "", "treble": "", "ss": "", "ch": "", "dc2tog": ""} {
		terms, marked := stitch.Marks(word)
		got := ""
		if marked {
			got = terms.String()
		}
		if got != want {
			t.Errorf("%s marks %q, want %q", word, got, want)
		}
	}
}

func TestAbbreviations(t *testing.T) {
	dc := stitch.Stitch{Name: "dc"}
	list := stitch.Abbreviations([]stitch.Stitch{dc, {Name: "sc"}, dc, {Name: "dc", Together: 2}, {Name: "shell"}}, []string{"sk", "st", "rep"}, stitch.UK)
	var got []string
	for _, a := range list {
		got = append(got, a.Short+" = "+a.Words)
	}
	want := "dc = double crochet; miss = miss; rep = repeat; st = stitch; tr = treble crochet; tr2tog = treble crochet 2 stitches together"
	if strings.Join(got, "; ") != strings.Replace(want, "miss = miss; ", "", 1) {
		t.Errorf("the list is %s", strings.Join(got, "; "))
	}
}
