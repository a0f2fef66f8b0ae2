package stitch_test

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"foundrow/internal/stitch"
)

func TestTranslate(t *testing.T) {
	for _, c := range []struct{ us, uk string }{
		{"Work sc in each st, then hdc.", "Work dc in each st, then htr."},
		{"A sc2tog is worked over 2 sts; FPdc around the post.", "A dc2tog is worked over 2 sts; FPtr around the post."},
		{"The ridge is half double crochet in the third loop.", "The ridge is half treble crochet in the third loop."},
		{"Single crochet and double crochet alternate.", "Double crochet and treble crochet alternate."},
		{"Join with a sl st.", "Join with a ss."},
		{"Check your gauge before you begin.", "Check your tension before you begin."},
		{"Skip 2 sts, skip the next st.", "Miss 2 sts, miss the next st."},
		{"You may skip ahead.", "You may skip ahead."},
		{"20 sc, 14 dc", "20 dc, 14 tr"},
		{"5sc", "5dc"},
		{"SC in CAPITALS", "DC in CAPITALS"},
		{"scarf, described, trick", "scarf, described, trick"},
		{"{sc} stays a value's name? no: it is a word", "{dc} stays a value's name? no: it is a word"},
		{"the dtr and the trtr", "the trtr and the qtr"},
		{"change color", "change colour"},
	} {
		if got := stitch.Translate(c.us, stitch.US, stitch.UK); got != c.uk {
			t.Errorf("%q in UK terms is %q, want %q", c.us, got, c.uk)
		}
		if got := stitch.Translate(c.uk, stitch.UK, stitch.US); got != c.us {
			t.Errorf("%q in US terms is %q, want %q", c.uk, got, c.us)
		}
	}
}

// TestLeftAlone: a word behind a backslash is not translated, and the backslash is not shown.
func TestLeftAlone(t *testing.T) {
	for text, want := range map[string]string{`\dc is a vitamin`: "dc is a vitamin", `in \dc and dc`: "in dc and tr", `a \hdc too`: "a hdc too"} {
		if got := stitch.Translate(text, stitch.US, stitch.UK); got != want {
			t.Errorf("%q is %q, want %q", text, got, want)
		}
	}
	if got := stitch.Translate(`a \tr stays`, stitch.US, stitch.US); got != "a tr stays" {
		t.Errorf("in its own terms: %q", got)
	}
}

// TestTextComesBack carries running text to the other terms and back: it is the same, whatever words of either system stand in it.
func TestTextComesBack(t *testing.T) {
	words := []string{"sc", "hdc", "dc", "tr", "htr", "dtr", "trtr", "qtr", "ss", "sl st", "ch", "treble", "double crochet", "half treble", "half double", "gauge", "tension",
		"skip 2", "miss 2", "skip", "miss", "yo", "yrh", "color", "colour", "FPdc", "bptr", "sc2tog", "Sc", "DC", "fsc", "the", "and", "scarf", `\dc`, `\htr`, `\x`, "quad tr", "double-crochet", "trebles", "esc", "edc"}
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 8).Draw(t, "words")
		parts := make([]string, n)
		for i := range parts {
			parts[i] = rapid.SampledFrom(words).Draw(t, "word")
		}
		text := strings.Join(parts, ", ")
		for _, from := range []stitch.Terms{stitch.US, stitch.UK} {
			canonical := stitch.Carry(stitch.Carry(text, from, from.Other()), from.Other(), from)
			there := stitch.Carry(canonical, from, from.Other())
			if back := stitch.Carry(there, from.Other(), from); back != canonical {
				t.Fatalf("%q in %s terms\n%q there\n%q back", canonical, from, there, back)
			}
			if plain := strings.ReplaceAll(canonical, `\`, ""); plain != strings.ReplaceAll(text, `\`, "") {
				t.Fatalf("%q comes back as %q", text, canonical)
			}
		}
	})
}
