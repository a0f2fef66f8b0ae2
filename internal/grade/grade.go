// Package grade works a pattern in every size: it orders the values, works each formula for each size, and finds what the
// rounded counts really make.
//
// It walks the plan and calls package formula; the wording of what it finds out is package page's job.
package grade

import (
	"foundrow/internal/formula"
	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// A Grade is a pattern with every value worked in every size. All slices by size are in the order of Sizes; a pattern without
// sizes has one, named "".
type Grade struct {
	Pattern  *pattern.Pattern
	Sizes    []string
	Values   []Value // in the order of the file: body, measures, counts
	Finished []Finished
	Slots    [][]formula.Value // by slot of the pattern, then by size
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
	Body Role = iota
	Wish      // a measure before rounding
	Count
)

// A Finished measurement is what the rounded counts make, in the tape's unit, with the ease that results.
type Finished struct {
	Name  string
	Label string
	Made  []measure.Num
	Wish  []measure.Num
	Body  []measure.Num // the body measurement it is compared with; nil when there is none
	Ease  []measure.Num // Made less Body, in the tape's unit; nil when there is no body
}

// A Maker is one body and one pair of hands: the values put in the place of a table's and of the pattern's gauges. The zero
// value changes nothing.
type Maker struct {
	Size   string                 // the size whose other measurements are taken
	Body   map[string]measure.Num // in the tape's unit
	Gauges map[string]pattern.Gauge
}

// Work works a pattern in every size it offers.
func Work(p *pattern.Pattern) (*Grade, source.Findings) {
	return &Grade{Pattern: p, Sizes: p.Sizes.Names}, nil
}

// WorkFor works a pattern for one maker, as one more size.
func WorkFor(p *pattern.Pattern, m Maker) (*Grade, source.Findings) {
	return &Grade{Pattern: p, Sizes: []string{m.Size}}, nil
}
