package stitch

import (
	"strings"
	"testing"
)

// What is listed is what is used and nothing else, in the terms that are asked for.
func TestUsed(t *testing.T) {
	for _, c := range []struct {
		terms  Terms
		text   string
		us, uk string
	}{
		{US, "Sc in 2nd ch from hook and in each ch across.", "ch, sc", "ch, dc"},
		{US, "3hdc in next ch-2 sp, sk 2 sts, sl st in next st.", "ch, hdc, sk, sl st, sp, st", "ch, htr, sp, ss, st"},
		{US, "Sc BLO to last 3 sts, dc3tog.", "BLO, dc3tog, sc, st", "BLO, dc, st, tr3tog"},
		{US, "FPdc around next st, bptr around next st.", "BPtr, FPdc, st", "BPdtr, FPtr, st"},
		{US, "rep from * around, join; Rnd 3", "rep, rnd", "rep, rnd"},
		{US, "Tea with the cat at St Just, 120 m of yarn, a single sheet.", "", ""},
		{US, "what they call a \\dc here", "", ""},
		{US, "quad tr in next st", "quad tr, st", "quint tr, st"},
		{US, "Yo, pull up a loop (RS) (ws)", "RS, yo", "RS, yrh"},
		{UK, "Htr in each st, miss 1, ss to join, dc2tog.", "hdc, sc2tog, sk, sl st, st", "dc2tog, htr, ss, st"},
		{UK, "Sc in each st.", "st", "st"},
	} {
		var u Used
		u.Read(c.text, c.terms)
		for terms, want := range []string{US: c.us, UK: c.uk} {
			var got []string
			for _, a := range u.Abbreviations(Terms(terms)) {
				got = append(got, a.Short)
			}
			if strings.Join(got, ", ") != want {
				t.Errorf("%s %q, listed in %s terms: %v, want %s", c.terms, c.text, Terms(terms), got, want)
			}
		}
	}
}

// Source: Craft Yarn Council, master list and term differences (www.YarnStandards.com).
func TestUsedWords(t *testing.T) {
	for _, c := range []struct {
		terms       Terms
		text, words string
	}{
		{US, "hdc3tog", "half double crochet 3 stitches together"},
		{UK, "htr3tog", "half treble crochet 3 stitches together"},
		{US, "FPsc", "front post single crochet"},
		{UK, "FPtr", "front post treble crochet"},
		{US, "esc", "extended single crochet"},
		{UK, "miss 2 sts", "stitch"}, // a word that is none needs no line
	} {
		var u Used
		u.Read(c.text, c.terms)
		if got := u.Abbreviations(c.terms); len(got) != 1 || got[0].Words != c.words {
			t.Errorf("%s %s: %v, want %s", c.terms, c.text, got, c.words)
		}
	}
}
