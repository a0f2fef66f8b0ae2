// Package grade works a pattern in every size: it orders the values, works each formula for each size, and finds what the
// rounded counts really make.
//
// It walks the plan and calls package formula; the wording of what it finds out is package page's job. That every name is new,
// every size given once and every table complete, package manuscript has seen to.
//
// The name of a finished measurement means two things. Counts are made from the wish ("chest" in a formula of [counts] or in a
// row), and what they make of it is what the text prints ("chest" in a paragraph, under [sample], in another `made`).
package grade

import (
	"foundrow/internal/formula"
	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// A Grade is a pattern with every value worked in every size. All slices by size are in the order of Sizes; a pattern without
// sizes has one, named "". A number that could not be worked out, because of a finding, is lost.
type Grade struct {
	Pattern  *pattern.Pattern
	Sizes    []string
	Values   []Value // in the order of the file: body, measures, counts, amounts
	Finished []Finished
	Slots    [][]formula.Value // by slot of the pattern, then by size
	Pieces   []Piece           // worked, in the order they are begun in the file
	Yarn     []YarnNeed        // of the yarns that were weighed, in the order of the file
}

// Value returns a body measurement, measure or count by its name, and nil where there is none.
func (g *Grade) Value(name string) *Value {
	for i := range g.Values {
		if v := &g.Values[i]; v.Name == name && v.Role != Amount {
			return v
		}
	}
	return nil
}

// A Value is a named value in every size.
type Value struct {
	Name   string
	Label  string
	Role   Role
	Kind   formula.Kind
	BySize []formula.Value
	Pinned []bool // the designer's own choice, by size; nil when there is none
}

// A Role is the table of the front matter a value comes from.
type Role uint8

const (
	Body   Role = iota
	Wish        // a measure before rounding; what is made where there is no wish for it
	Count       // of stitches or rows, or a plain whole number
	Amount      // how much of a yarn is needed ("main.needs" as stated, "main.weight" as worked out) or how many of a notion ("buttons")
)

// A Finished measurement is what the rounded counts make, in the tape's unit, with the ease that results.
type Finished struct {
	Name  string
	Label string
	Made  []measure.Num // lost where it is not said how the counts make it: the query asks for `made`
	Wish  []measure.Num // nil when the pattern states only what is made
	Body  []measure.Num // the body measurement it is compared with; nil when there is none
	Ease  []measure.Num // Made less Body, in the tape's unit; nil when there is no body
}

// Work works a pattern in every size it offers.
func Work(p *pattern.Pattern) (*Grade, source.Findings) {
	w := newPlan(p)
	w.sizes = make([]int, len(w.scopes[inRows].Sizes))
	for i := range w.sizes {
		w.sizes[i] = i
	}
	return w.grade()
}

// grade orders the plan, works it in its sizes and makes a grade of what came out.
func (w *plan) grade() (*Grade, source.Findings) {
	w.walk()
	w.workSizes()
	w.lookOver()
	w.remark()
	w.examine()
	g := &Grade{Pattern: w.p, Slots: w.slotValues, Pieces: w.bench.pieces}
	for _, s := range w.sizes {
		g.Sizes = append(g.Sizes, w.scopes[inRows].Sizes[s])
	}
	g.Values = make([]Value, 0, len(w.entries))
	for i := range w.entries {
		if e := &w.entries[i]; e.named {
			g.Values = append(g.Values, Value{Name: e.name.Text, Label: e.label, Role: e.role, Kind: e.kind, BySize: e.bySize, Pinned: e.pinned})
		}
	}
	for i := range w.entries {
		if e := &w.entries[i]; e.what == finished {
			g.Finished = append(g.Finished, w.finished(e))
		}
	}
	w.yarns(g)
	return g, w.findings
}
