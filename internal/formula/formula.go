package formula

import (
	"foundrow/internal/measure"
	"foundrow/internal/source"
)

// A Formula is one formula as it was read. It never changes and may be worked by several goroutines at once.
type Formula struct {
	File *source.File
	Text string      // as written
	Span source.Span // in File

	// nodes stand in the order of working: operands before what is made of them, the whole last. There are none in a formula
	// that could not be read.
	nodes []node
	names []Name
	lists []measure.Num // the numbers of all lists, one after the other
}

// A Name is a word of a formula that stands for a value: "chest", or "cap.left.row_ends", a value of a worked piece.
type Name struct {
	Text  string      // the name of the value, or of the piece
	Of    string      // what is asked of the piece: "left.row_ends"; empty for a value
	Given int         // how many values stand in brackets behind it: 1 in "cap.stitches_after(3)"
	Span  source.Span // in the file
}

// Parse reads one formula, whose text begins at an offset of the file. It always returns a formula; one with findings works out
// as an unknown value.
func Parse(f *source.File, from int, text string) (*Formula, source.Findings) {
	return parse(f, from, text, false)
}

// ParseEase reads an ease: a length ("10 cm"), or a percentage of the body ("-10%"), which works out as a plain number.
func ParseEase(f *source.File, from int, text string) (*Formula, source.Findings) {
	return parse(f, from, text, true)
}

// Names returns the names a formula refers to, in the order they are written. Those of a formula that could not be read are the
// words in it that may be names, so that nothing is called unused because of a slip elsewhere. They are not to be changed.
func (f *Formula) Names() []Name { return f.names }

// IsRead reports whether the formula could be read.
func (f *Formula) IsRead() bool { return len(f.nodes) > 0 }

// op is what a node does with its operands.
type op uint8

const (
	opNumber op = iota // num
	opList             // lists[a:b], the value for each size
	opName             // names[name]
	opAsk              // names[name], a value of a piece, given those of a and b
	opPi
	opNegate  // a
	opAdd     // a + b
	opSub     // a - b
	opMul     // a * b
	opDiv     // a / b
	opMin     // of a and b
	opMax     // of a and b
	opAbs     // of a
	opRoot    // of a
	opShare   // num of a: 90% of chest
	opConvert // a in kind or unit, at gauge
	opRecast  // a as kind
	opRound   // a, to the series of b and c
)

// none marks an operand that is not there.
const none = -1

// A node is one operand or operation.
type node struct {
	op      op
	kind    Kind // of a number or list; of what is converted or recast to
	unit    measure.Unit
	way     Way
	series  series
	percent bool // a number or list is written as a percentage: of an ease
	a, b, c int16
	name    int16
	at, to  int32 // where its sign or word begins in the text, and where it ends
	num     measure.Num
	gauge   string
	span    span // with the brackets it stands in
	inside  bool // it stands in brackets
}

// span is a source.Span within the text of the formula.
type span struct{ from, to int32 }

// series is how the numbers to round to are named.
type series uint8

const (
	toWhole series = iota
	toEven
	toOdd
	toMultiple // of b, plus c
	toQuantity // b: 0.5 cm
)

// place brings a span of the text to the file.
func (f *Formula) place(s span) source.Span {
	return source.Span{From: int(s.from), To: int(s.to)}.Shift(f.Span.From)
}

// words returns what is written at a span.
func (f *Formula) words(s span) string { return f.Text[s.from:s.to] }
