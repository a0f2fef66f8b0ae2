package ledger

import (
	"foundrow/internal/notation"
	"foundrow/internal/source"
)

// The rules of what can be wrong with a row. Each has a section in the handbook.
const (
	CountDiffers  = "count-differs"    // the printed count is not what the row makes
	LeftOver      = "left-over"        // stitches of the row below are not used
	RunOut        = "run-out"          // the row asks for more than there is
	DoesNotFit    = "does-not-fit"     // a repeat does not come out
	WrongStitch   = "wrong-stitch"     // the count is right and the use is not: another stitch is meant
	Foundation    = "foundation"       // the chain is not what row 1 needs
	UnknownStitch = "stitch-unknown"   // nothing says what the stitch is worked as
	RowReference  = "row-reference"    // a row that is to be repeated is not there, or not the one that is meant
	RowNumbers    = "row-numbers"      // numbers that jump, come twice or do not agree with a repetition
	AfterOff      = "after-fasten-off" // a row where the yarn is cut
	UntilPassed   = "until-passed"     // the number is passed over
	UntilNever    = "until-never"      // the number is never reached
	UntilWithin   = "until-within"     // the number is met inside the rows that are repeated
	SeamDiffers   = "seam-differs"     // the two sides of a seam bring different numbers
	PickUp        = "pick-up"          // stitches picked up along row-ends do not come out
	TurningChain  = "turning-chain"    // nothing says whether a chain counts
	Habit         = "habit"            // the piece closes if it is read in another way
	Parity        = "parity"           // a side that is not the side which faces
	NoSuchEdge    = "unknown-edge"     // an edge that no piece leaves
	NoSuchMarker  = "unknown-marker"   // a marker that is not there
	TooLarge      = "count-too-large"  // more than ten million
	Unchecked     = "count-unchecked"  // a count that nothing here can be compared with
	Passed        = "passed-over"      // stitches passed to reach one of another name
)

// A RowName is how a report names a row: "row 3", "left neck row 1", "the next round".
type RowName struct {
	Words  string
	Number int
	Round  bool
}

// A Report is one thing found in one size: what rule, where, and the numbers, but no sentence. Reports can be compared.
type Report struct {
	Rule     string
	Severity source.Severity
	Span     source.Span
	Row      RowName
	Way      uint8 // which of a rule's sentences; each rule has its own
	Numbers  [4]int
	Words    [2]string
}

// name is how the row that is being worked is named.
func (h *hand) name() RowName { return h.row.name }

// report adds a report about the row being worked.
func (h *hand) report(rule string, severity source.Severity, span source.Span, way uint8, words [2]string, numbers ...int) {
	r := Report{Rule: rule, Severity: severity, Span: span, Row: h.name(), Way: way, Words: words}
	copy(r.Numbers[:], numbers)
	h.reports = append(h.reports, r)
}

// fail reports an error of use or count.
func (h *hand) fail(rule string, span source.Span, way uint8, numbers ...int) {
	h.errors++
	h.report(rule, source.Error, span, way, [2]string{}, numbers...)
}

func nameOf(l *notation.Label, number int) RowName {
	return RowName{Words: l.Words, Number: number, Round: l.Round}
}
