package proof

import (
	"slices"
	"strings"

	"foundrow/internal/pattern"
)

// A part is a kind of notion that stays in the thing made. Needles, scissors and tapes are tools: every maker has them, and few
// patterns say where they are used.
// Source of the list: common practice, no source.
type part struct {
	name    string
	words   []string // that name it among the notions and in the text
	verbs   []string // that take it up, not far before its name: a text that only speaks of ribbon is no instruction
	by      []string // words that take it up by themselves
	counted bool     // so many of it: the amount has to be said
	small   bool     // can come off and be swallowed
}

var attach = []string{"sew", "sewing", "attach", "thread", "insert", "fix", "fasten", "add", "tie", "glue"}

var parts = []part{
	{name: "buttons", words: []string{"button", "buttons"}, verbs: attach, by: []string{"buttonhole", "buttonholes"}, counted: true, small: true},
	{name: "beads", words: []string{"bead", "beads"}, verbs: attach, counted: true, small: true},
	{name: "safety eyes", words: []string{"safety eye", "safety eyes"}, verbs: attach, counted: true, small: true},
	{name: "snaps", words: []string{"snap", "snaps", "press studs", "press stud", "poppers"}, verbs: attach, counted: true, small: true},
	{name: "toggles", words: []string{"toggle", "toggles"}, verbs: attach, counted: true, small: true},
	{name: "a zip", words: []string{"zip", "zipper", "zips", "zippers"}, verbs: attach},
	{name: "elastic", words: []string{"elastic"}, verbs: attach},
	{name: "ribbon", words: []string{"ribbon", "ribbons"}, verbs: attach},
	{name: "bells", words: []string{"bell", "bells"}, verbs: attach, counted: true, small: true},
	{name: "filling", words: []string{"filling", "stuffing", "fibrefill", "fiberfill", "polyfill", "wadding"},
		verbs: []string{"add", "use", "push"}, by: []string{"stuff", "fill"}},
	{name: "stitch markers", words: []string{"marker", "markers"}, verbs: []string{"place", "put", "move", "keep", "hang"}},
}

// lists reports whether the words of a notion name the part.
func (pt part) lists(n pattern.Notion) bool {
	text := flat(n.Name.Text + " " + n.What)
	return slices.ContainsFunc(pt.words, func(w string) bool { return strings.Contains(text, " "+w+" ") })
}

// taken returns the first place where the part is taken up.
func (pt part) taken(e *edit) (place, bool) {
	var all []place
	for _, name := range slices.Concat(pt.by, pt.words) {
		for _, at := range e.places(name) {
			if pt.isTaken(e.passages[at.passage], at.word, name, e.pattern.Kind.Text) {
				all = append(all, at)
				break
			}
		}
	}
	if len(all) == 0 {
		return place{}, false
	}
	return slices.MinFunc(all, place.compare), true
}

// isTaken reports whether a name of the part, or a word that takes it up, is an instruction where it stands. In a toy filling goes
// without saying; elsewhere "stuff" may be anything, unless it begins a sentence.
func (pt part) isTaken(p passage, i int, name, kind string) bool {
	if isLeft(p, i) {
		return false
	}
	if slices.Contains(pt.by, name) {
		return pt.counted || kind == "toy" || p.words[i].text != p.words[i].low
	}
	behind := i + 1 + strings.Count(name, " ")
	return p.leads(i, 5, pt.verbs...) && !p.follows(behind, 1, "band", "bands", "loop", "loops", "hole", "holes", "edge", "side", "placket", "stitch")
}

// isLeft reports whether a sentence leaves something out, or leaves it to the maker.
func isLeft(p passage, i int) bool {
	return p.says(i, "no", "without", "if", "optional", "instead", "never", "not", "nothing", "might", "could", "may", "unless")
}

// unlistedNotion finds parts that the text takes up and the notions do not list.
func unlistedNotion(e *edit) []note {
	var notes []note
	for _, pt := range parts {
		if slices.ContainsFunc(e.pattern.Notions, pt.lists) {
			continue
		}
		if at, found := pt.taken(e); found {
			w := e.passages[at.passage].words[at.word]
			notes = append(notes, note{
				span:    w.span,
				message: "`" + w.text + "` stands here, and the notions list no " + strings.TrimPrefix(pt.name, "a "),
				fix:     "list it under [notions], with how many each size takes",
			})
		}
	}
	return notes
}

// unusedNotion finds parts that are listed and that no sentence or row speaks of.
func unusedNotion(e *edit) []note {
	var notes []note
	for _, n := range e.pattern.Notions {
		for _, pt := range parts {
			if !pt.lists(n) || pt.name == "stitch markers" {
				continue
			}
			if !slices.ContainsFunc(slices.Concat(pt.words, pt.by), e.mentions) {
				notes = append(notes, note{
					span:    n.Name.Span,
					message: "the notions list " + pt.name + ", and nothing in the pattern uses them",
					fix:     "say where they go, or take `" + n.Name.Text + "` out of [notions]",
				})
			}
			break
		}
	}
	return notes
}

// countlessNotion finds parts of which it is not said how many it takes. Sizes left out of an amount are package manuscript's to find.
func countlessNotion(e *edit) []note {
	var notes []note
	for _, n := range e.pattern.Notions {
		i := slices.IndexFunc(parts, func(pt part) bool { return pt.counted && pt.lists(n) })
		if i < 0 {
			continue
		}
		if len(n.Amount) == 0 && !startsWithNumber(n.What) {
			notes = append(notes, note{
				span:    n.Name.Span,
				message: "the notions list " + parts[i].name + " and not how many",
				fix:     "write " + n.Name.Text + ` = { what = "` + n.What + `", amount = … }, one number or the list of one for each size`,
			})
		}
	}
	return notes
}

func startsWithNumber(s string) bool {
	s = strings.TrimSpace(s)
	return s != "" && isDigit(s[0])
}

// smallPart finds what can come off and choke in a thing for a baby. The caution itself is printed by package page.
// Source: 16 CFR 1501 (small parts for children under three); cansoid.com, on embroidering eyes instead.
func smallPart(e *edit) []note {
	wearer := e.pattern.Wearer
	if wearer == "" {
		wearer = e.pattern.Sizes.Wearer
	}
	if wearer != pattern.Baby {
		return nil
	}
	var notes []note
	for _, pt := range parts {
		if !pt.small {
			continue
		}
		if n := slices.IndexFunc(e.pattern.Notions, pt.lists); n >= 0 {
			notes = append(notes, chokes(pt, note{span: e.pattern.Notions[n].Name.Span}))
			continue
		}
		if at, found := pt.taken(e); found {
			notes = append(notes, chokes(pt, note{span: e.passages[at.passage].words[at.word].span}))
		}
	}
	return notes
}

func chokes(pt part, n note) note {
	n.message = "this is for a baby, and " + pt.name + " can come off and be swallowed"
	n.fix = "embroider instead, or close it with ties worked in one with the fabric"
	return n
}
