// Package formula reads, checks and works the formulas of a pattern: "chest / 2 in stitches at body, rounded to the nearest
// multiple of 6 + 2". Every value has a kind, arithmetic is exact, and a mistake is found at the column where it was made.
//
// It knows nothing of crochet beyond kinds and gauges, nor which name stands for what: package grade tells it.
package formula

import "foundrow/internal/measure"

// A Kind is what a value counts or measures.
type Kind uint8

const (
	Unknown Kind = iota // not known because of an earlier finding: fits everything, so that one mistake makes one finding
	Number
	Length // in the unit of the pattern's tape
	Mass   // in grams
	Stitches
	Rows
)

// String returns the kind as it is named in findings and in proof --json.
func (k Kind) String() string {
	return [...]string{"unknown", "number", "length", "mass", "stitches", "rows"}[k]
}

// IsCount reports whether values of the kind must be whole.
func (k Kind) IsCount() bool { return k == Stitches || k == Rows }

// A Value is a number with its kind and its story.
type Value struct {
	Num    measure.Num
	Kind   Kind
	Approx bool // pi or a root is in it: no tie is reported of it
	Story  Story
}

// Way is the direction of a rounding.
type Way uint8

const (
	NotRounded Way = iota
	Up
	Down
	Nearest
)

// A Story says what a value was before it was made whole, and by which rule: Step and Offset name the series Offset,
// Step + Offset, 2·Step + Offset, … . Lower and Upper are the neighbours in the series, equal when From is in it.
type Story struct {
	Way          Way
	From         measure.Num
	Step, Offset measure.Num
	Lower, Upper measure.Num
	Tie          bool
}
