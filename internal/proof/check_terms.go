package proof

import (
	"slices"
	"strings"

	"foundrow/internal/pattern"
)

// Which words tell the terms apart: dc, tr, treble and dtr stand in both, so that only these give a text away.
// Source: funcrochetdesigns.com and attic24.typepad.com on terms by country; craftydogblog.blogspot.com 2011/01 ("sc" is never UK);
// hilandonubes.com/crochet and ruleofthejewel.blog for skip and miss, gauge and tension.
var (
	onlyOf = [2][]string{pattern.US: {"sc", "hdc"}, pattern.UK: {"htr"}}
	inFull = [2][][2]string{pattern.US: {{"single", "crochet"}, {"half", "double"}}, pattern.UK: {{"half", "treble"}}}
	terms  = [2]string{pattern.US: "US", pattern.UK: "UK"}
)

func other(t pattern.Terms) pattern.Terms { return pattern.US + pattern.UK - t }

// otherTerms finds stitches of the other terms in the text and in the gauges; those of rows are package notation's to find.
func otherTerms(e *edit) []note {
	mine, theirs := e.pattern.Terms, other(e.pattern.Terms)
	var notes []note
	say := func(n note, written string) {
		n.message = "`" + written + "` is a " + terms[theirs] + " term, and this pattern is written in " + terms[mine] + " terms"
		n.fix = "write the " + terms[mine] + ` term, or \` + written + " to leave the word as it is in both editions"
		notes = append(notes, n)
	}
	for _, p := range e.passages {
		if p.inRows() {
			continue
		}
		for i, w := range p.words {
			if w.kind != plainWord {
				continue
			}
			if isStitchOf(w.low, theirs) {
				say(note{span: w.span}, w.text)
			}
			for _, pair := range inFull[theirs] {
				if w.low == pair[0] {
					if next := afterHyphen(p.words, i); next < len(p.words) && p.words[next].low == pair[1] {
						say(note{span: w.span.Through(p.words[next].span)}, e.pattern.File.Slice(w.span.Through(p.words[next].span)))
					}
				}
			}
		}
	}
	for _, g := range e.pattern.Gauges {
		for w := range strings.FieldsSeq(strings.ToLower(g.Stitch)) {
			if isStitchOf(w, theirs) {
				say(note{span: g.Name.Span}, w)
			}
		}
	}
	return notes
}

// afterHyphen returns the place of the next word, past one hyphen.
func afterHyphen(words []word, i int) int {
	if i+1 < len(words) && words[i+1].low == "-" {
		return i + 2
	}
	return i + 1
}

// isStitchOf reports whether a word is a stitch that only those terms have, however it is worked: "sc2tog", "FPhdc", "fsc".
func isStitchOf(low string, t pattern.Terms) bool {
	if !slices.ContainsFunc(onlyOf[t], func(s string) bool { return strings.Contains(low, s) }) {
		return false
	}
	low, _, _ = strings.Cut(low, "2tog")
	low, _, _ = strings.Cut(low, "3tog")
	low = strings.TrimSuffix(low, "s")
	for _, prefix := range []string{"", "fp", "bp", "bl", "fl", "f", "e"} {
		if rest, ok := strings.CutPrefix(low, prefix); ok && slices.Contains(onlyOf[t], rest) {
			return true
		}
	}
	return false
}

// otherWords finds the words that are not stitches and still belong to one of the two terms: skip and miss, gauge and tension.
// All four are plain English as well, so that each counts only where it is said the trade's way.
func otherWords(e *edit) []note {
	var notes []note
	for _, p := range e.passages {
		if p.inRows() {
			continue
		}
		for i, w := range p.words {
			instead := ""
			switch {
			case e.pattern.Terms == pattern.US && w.is("miss", "missing", "missed") && stitchFollows(p.words, i):
				instead = "skip"
			case e.pattern.Terms == pattern.UK && w.is("skip", "skipping", "skipped") && stitchFollows(p.words, i):
				instead = "miss"
			case e.pattern.Terms == pattern.US && w.is("tension") && isMeasured(p, i):
				instead = "gauge"
			case e.pattern.Terms == pattern.UK && w.is("gauge") && isMeasured(p, i):
				instead = "tension"
			default:
				continue
			}
			notes = append(notes, note{
				span:    w.span,
				message: "`" + w.text + "` is the " + terms[other(e.pattern.Terms)] + " word, and this pattern is written in " + terms[e.pattern.Terms] + " terms",
				fix:     "the " + terms[e.pattern.Terms] + " word is " + instead,
			})
		}
	}
	return notes
}

// stitchFollows reports whether what is skipped is a stitch: "skip next 2 sts", "miss one chain".
func stitchFollows(words []word, i int) bool {
	for j := i + 1; j < len(words) && j <= i+4 && words[j].sentence == words[i].sentence; j++ {
		switch w := words[j]; {
		case countOf(w.low) != 0 || w.is("space", "spaces", "sp", "sps"):
			return j > i+1
		case w.kind == number || w.kind == value, w.is("next", "the", "a", "one", "two", "three", "first", "last", "every", "each", "ch-1", "ch-2"):
		default:
			return false
		}
	}
	return false
}

// isMeasured reports whether tension or gauge is the swatch's, not the hand's: as a heading, with a swatch, or as what is to be met.
func isMeasured(p passage, i int) bool {
	if p.kind == heading {
		return true
	}
	near := func(j int, any ...string) bool {
		return j >= 0 && j < len(p.words) && p.words[j].sentence == p.words[i].sentence && p.words[j].is(any...)
	}
	if near(i+1, "square", "swatch", "swatches", "sample", "samples") {
		return true
	}
	for j := i - 1; j >= i-3; j-- {
		if near(j, "check", "obtain", "obtaining", "achieve", "meet", "match", "matches", "get") {
			return true
		}
		if !near(j, "the", "your", "this", "that", "correct", "right", "given", "stated", "same") {
			return false
		}
	}
	return false
}

// unusedStitch finds special stitches that no row, no sentence and no other special stitch works.
func unusedStitch(e *edit) []note {
	var hows strings.Builder
	for _, s := range e.pattern.Special {
		hows.WriteString(flat(s.How.Text))
	}
	var notes []note
	for _, s := range e.pattern.Special {
		if e.pattern.File.Slice(s.Abbr.Span) != s.Abbr.Text {
			continue // shared by the whole studio: defined elsewhere, and not for this pattern alone
		}
		if e.mentions(s.Abbr.Text) || e.mentions(s.Name) || holds(hows.String(), s.Abbr.Text) {
			continue
		}
		notes = append(notes, note{
			span:    s.Abbr.Span,
			message: "the special stitch `" + s.Abbr.Text + "` is defined and no row works it",
			fix:     "take [special." + s.Abbr.Text + "] out, or see whether a row should say " + s.Abbr.Text,
		})
	}
	return notes
}
