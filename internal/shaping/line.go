package shaping

import (
	"slices"
	"strings"
)

// A Form is how a word of a line is printed.
type Form uint8

const (
	// Text stands as it is.
	Text Form = iota
	// Nth is a place in a row: "4th".
	Nth
	// Often is how many times: "once", "4 times".
	Often
	// Counted is a number with what it counts: "1 stitch", "4 stitches". Text names one of it.
	Counted
)

// A Word is text, or a slot with one number a size.
type Word struct {
	Form   Form
	Text   string
	BySize []int
}

// Line is the same words for all sizes with a slot wherever a number stands, so that a page can set the numbers of all sizes side by
// side. A run that a size does not have is worked 0 times there, every so many rows as in a size that has it.
//
// A page that shows one size alone takes Schedule.Words of that size instead, which says less.
func Line(bySize []Schedule, m Manner) []Word {
	runs := make([][]Run, len(bySize))
	for size, s := range bySize {
		runs[size] = s.Runs
	}
	var out []Word
	var before column[kind, Run]
	for i, c := range aligned(runs, m.kind) {
		if i > 0 {
			out = append(out, Word{Text: ", then "})
		}
		lend(c.bySize, neverWorked)
		out = append(out, m.words(c, before)...)
		before = c
	}
	if out == nil {
		return []Word{{Text: "work even"}}
	}
	return out
}

// lend gives sizes without a part that of the nearest size before that has one, or after, once it is emptied.
func lend[T comparable](bySize []T, emptied func(T) T) {
	var none T
	from := slices.IndexFunc(bySize, func(p T) bool { return p != none })
	for i, p := range bySize {
		if p != none {
			from = i
		} else {
			bySize[i] = emptied(bySize[from])
		}
	}
}

// neverWorked is a run worked 0 times; plain rows are 0 rows.
func neverWorked(r Run) Run {
	r.Times = 0
	if r.Change == 0 {
		r.Every = 0
	}
	return r
}

// A kind is all that must agree for runs of different sizes to be said in one clause: the words before and behind the stitches.
type kind struct{ verb, where string }

func (m Manner) kind(r Run) kind {
	_, where := m.place(r.Change)
	switch {
	case r.Change == 0:
		return kind{verb: "work "}
	case r.Leave:
		return kind{"leave ", " unworked " + where + " "}
	case r.Change < 0:
		return kind{"decrease ", " " + where + " "}
	}
	return kind{"increase ", " " + where + " "}
}

// A column is a part of a line: what each size has of one kind there, the zero value where it has nothing.
type column[K comparable, T any] struct {
	kind   K
	bySize []T
}

// aligned lays the parts of all sizes beside each other, in their order, kind by kind.
func aligned[K comparable, T any](bySize [][]T, kindOf func(T) K) []column[K, T] {
	var out []column[K, T]
	for size, parts := range bySize {
		at := 0
		for _, p := range parts {
			found := at
			for found < len(out) && out[found].kind != kindOf(p) {
				found++
			}
			if found == len(out) { // no size before has such a part from here on: it stands where this size needs it
				found = at
				out = slices.Insert(out, at, column[K, T]{kindOf(p), make([]T, len(bySize))})
			}
			out[found].bySize[size] = p
			at = found + 1
		}
	}
	return out
}

// words sets one clause. What the clause before says the same in all sizes is not said again.
func (m Manner) words(c, before column[kind, Run]) []Word {
	n := len(c.bySize)
	stitches, every, times := make([]int, n), make([]int, n), make([]int, n)
	same := before.kind == c.kind
	for i, r := range c.bySize {
		every[i], times[i] = r.Every, r.Times
		stitches[i], _ = m.place(r.Change)
		same = same && before.bySize[i].Change == r.Change
	}
	switch {
	case c.kind.where == "":
		return []Word{{Text: c.kind.verb}, {Form: Counted, Text: m.row(), BySize: every}, {Text: " even"}}
	case same:
		words := strings.Fields(c.kind.where)
		return append([]Word{{Text: words[len(words)-1] + " "}}, m.rows(every, times)...)
	}
	return append([]Word{{Text: c.kind.verb}, {Form: Counted, Text: "stitch", BySize: stitches}, {Text: c.kind.where}}, m.rows(every, times)...)
}

// rows sets on which rows a clause is worked.
func (m Manner) rows(every, times []int) []Word {
	switch {
	case all(every, 1) && all(times, 1):
		return []Word{{Text: "the next " + m.row()}}
	case all(every, 1):
		return []Word{{Text: "every " + m.row() + " "}, {Form: Often, BySize: times}}
	case all(every, 2):
		return []Word{{Text: "every other " + m.row() + " "}, {Form: Often, BySize: times}}
	}
	return []Word{{Text: "every "}, {Form: Nth, BySize: every}, {Text: " " + m.row() + " "}, {Form: Often, BySize: times}}
}

// all reports whether every size has this number.
func all(bySize []int, n int) bool {
	return !slices.ContainsFunc(bySize, func(m int) bool { return m != n })
}

// SpreadLine is the same for spreads: the groups of all sizes side by side. Names are those of the event.
func SpreadLine(bySize []Spread, names ...string) []Word {
	groups, plain := make([][]Group, len(bySize)), make([]int, len(bySize))
	for size, s := range bySize {
		groups[size], plain[size] = s.Groups, s.Plain
	}
	var out []Word
	for _, c := range aligned(groups, func(g Group) int { return g.Events }) {
		sts, times := make([]int, len(bySize)), make([]int, len(bySize))
		lend(c.bySize, func(g Group) Group { g.Times = 0; return g })
		for size, g := range c.bySize {
			sts[size], times[size] = g.Plain, g.Times
		}
		event := Group{Events: c.kind, Times: 1}.words(names)
		out = append(out, Word{Text: "("}, Word{Form: Counted, Text: "st", BySize: sts}, Word{Text: ", " + event + ") "}, Word{Form: Often, BySize: times})
		out = append(out, Word{Text: ", "})
	}
	if all(plain, 0) {
		return out[:max(0, len(out)-1)]
	}
	return append(out, Word{Form: Counted, Text: "st", BySize: plain})
}
