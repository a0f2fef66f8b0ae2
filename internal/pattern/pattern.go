// Package pattern holds a pattern as its designer wrote it: names, formulas and text, nothing worked out.
//
// Package manuscript reads one from a file; package grade works it in every size.
package pattern

import (
	"foundrow/internal/formula"
	"foundrow/internal/measure"
	"foundrow/internal/notation"
	"foundrow/internal/prose"
	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

// Words are written words with their place. The zero Words is "not said".
type Words struct {
	Text string
	Span source.Span
}

// A Pattern is one pattern file.
type Pattern struct {
	Slug string // the name of its folder, and of its page
	File *source.File
	Tape measure.Tape

	Title    Words
	Kind     Words // garment, hat, bag, …: see Kinds
	Summary  Words
	Released string // year-month-day; empty while it is not out
	Version  string
	Skill    Words // basic, easy, intermediate, complex
	Terms    Terms
	Wearer   Wearer

	Yarns    []Yarn
	Hooks    []Hook
	Gauges   []Gauge
	Sizes    Sizes
	Body     []Definition // body measurements of the pattern's own
	Measures []Measure
	Counts   []Definition
	Pins     []Pin
	Notions  []Notion
	Turning  []Turning
	Sample   []Assertion
	Weighed  []Weighed // what the sample weighs: all of it, or each yarn for itself
	Special  []Special
	Own      []Own
	Film     Film
	Photos   []Photo
	Credits  []Credit
	Tested   []Tested

	Text   []prose.Block
	Slots  []Slot
	Pieces []Piece

	Unread  []Unread // tables of the front matter that are kept and not worked
	Partial bool     // part of the front matter could not be read: a name that is not found may have stood there
}

// Unread is a table of the front matter that was kept as it is written: "shaping.raglan" with its keys and values in order.
// A value is the text of the file; a string stands without its quotes.
type Unread struct {
	Name    Words
	Entries []UnreadEntry
}

// UnreadEntry is one key of an unread table, dotted where tables stand in it, and its value.
type UnreadEntry struct{ Key, Value Words }

// Terms is which names of the stitches a pattern is written in.
type Terms = stitch.Terms

const (
	US = stitch.US
	UK = stitch.UK
)

// Kinds are the kinds of things patterns are for, the catalogue's first filter.
var Kinds = []string{"garment", "hat", "bag", "shawl", "blanket", "toy", "socks", "mittens", "home", "motif", "skirt", "other"}

// Skills are the project levels.
// Source: Craft Yarn Council, Project Levels (www.YarnStandards.com).
var Skills = []string{"basic", "easy", "intermediate", "complex"}

// A Wearer decides which cautions are shown.
type Wearer string

const (
	Adult Wearer = "adult"
	Child Wearer = "child"
	Baby  Wearer = "baby"
	Pet   Wearer = "pet"
	None  Wearer = "none"
)

// A Yarn is one yarn of a pattern: what is asked for and what one ball of it holds.
type Yarn struct {
	Name    Words // its name in the front matter: "main"
	Wanted  string
	Weight  int // standard yarn weight 0 to 7; -1 when not said
	Colour  string
	Fibre   string
	Weighs  measure.Num  // grams in a ball; 0 when not said
	Runs    measure.Num  // metres in a ball; 0 when not said
	Margin  measure.Num  // the share of it that is bought to spare: 1/10
	Swatch  []Swatch     // what its stitches weigh
	Amounts []Definition // what each size needs, where it is stated rather than worked out
}

// A Swatch is what so many of one stitch weigh in a yarn.
type Swatch struct {
	Stitch   Words
	Grams    measure.Num
	Stitches measure.Num
}

// A Weighed is what was put on the scale of the sample. Yarn is empty where all yarns were weighed together.
type Weighed struct {
	Yarn  Words
	Grams measure.Num
	Span  source.Span
}

// A Hook is a hook of a pattern, by its diameter.
type Hook struct {
	Name Words
	Size measure.Num // millimetres
	Note string
}

// A Gauge is what was counted over what was measured.
type Gauge struct {
	Name     Words
	Stitch   string
	Stitches measure.Num // over Over; 0 when not said
	Rows     measure.Num // over RowsOver; 0 when not said
	Over     measure.Num // in the tape's unit
	RowsOver measure.Num // in the tape's unit
	Hook     string
	State    string // blocked, hung, as worn, relaxed
	Written  GaugeForm
}

// GaugeForm keeps how a gauge was stated, for printing it back.
type GaugeForm struct {
	Over    string // "4 inch"; empty for the usual 10 cm
	Rounds  string // of a motif: "1 to 3"
	Across  string // of a motif: "10 cm"
	Repeats int    // of a stitch pattern, of Of stitches each
	Of      int
}

// Sizes says which sizes are offered, from which table.
type Sizes struct {
	Table  Words    // empty when the offered sizes are only names
	Names  []string // in order; empty for a pattern of one size
	Long   []string // the published names, where they differ
	Sample int      // the size the designer made; -1 when not said
	Take   string   // upper, middle, lower; empty for the usual of each measurement
	Body   []BodyMeasurement
	Wearer Wearer // of the table
	Credit string // the source a table asks to be named by
	Span   source.Span
}

// A BodyMeasurement is a published measurement in the sizes offered: in the tape's unit for formulas, and the table's own cells
// for printing. Ranges stay ranges.
type BodyMeasurement struct {
	Name  string
	Label string        // "bust"
	How   string        // how it is taken
	Value []measure.Num // measure.Lost in a size for which the table leaves the cell empty
	Cells []BodyCell
	Girth bool
	Mark  string // how well the row is attested, in words; empty for a studio's own
}

// A BodyCell is what a table prints for one size, never converted: where a table has one unit only, the other is worked out at
// 2.54 cm to the inch on the tape's grid, and Worked names it.
type BodyCell struct {
	LowCm, HighCm     measure.Num
	LowInch, HighInch measure.Num
	Worked            measure.Unit // the unit the table does not print; NoUnit when it prints both
	Misprint          string       // what is wrong with the cell, where it is known to be
}

// A Definition gives a value for every size: one formula for all, or one for each of several sets of sizes.
type Definition struct {
	Name  Words
	Parts []Part
}

// A Part is a formula and the sizes it holds for, as indexes; nil for all.
type Part struct {
	Sizes   []int
	Formula *formula.Formula
}

// A Measure is a measurement: finished (with a body measurement and ease) or a wish or constant of the pattern's own.
type Measure struct {
	Definition        // its value before rounding, where it is written as a formula
	Body       Words  // the body measurement it goes round or along
	Ease       []Part // a length, or a plain number: that share of the body
	Fit        Fit
	Made       *formula.Formula // what the rounded counts make; nil when it is found from the one count that uses the wish
	Label      string
	Finished   bool // written as a table: it is a measurement of the thing made
}

// A Fit is the ease that every size must still have after rounding, in the tape's unit. A side that is open is lost.
type Fit struct {
	Words     Words
	Low, High measure.Num
	Under     bool // High itself is no longer in it: the bands of a chart meet and do not overlap
	Set       bool
}

// A Pin is the designer's own choice of a count for some sizes.
type Pin struct {
	Name  Words
	Parts []Part
}

// A Notion is a thing needed that is neither yarn nor hook, with how many of it each size takes.
type Notion struct {
	Name   Words
	What   string
	Amount []Part
}

// A Turning says what the turning chain of a stitch counts as.
type Turning struct {
	Stitch Words
	Counts bool
	Says   Words
}

// An Assertion is what the designer's hands made in the sample size: it must be what the formula gives.
type Assertion struct {
	Name  Words
	Value *formula.Formula
}

// A Special is a stitch defined by the pattern.
type Special struct {
	Abbr        Words
	Name        string
	How         Words
	Uses, Makes measure.Num // 0 when not said
	Height      string
	Worked      []notation.Clause // How, where it could be read as rows are
	Terms       Terms             // of one that is shared by the studio: what its file is written in
}

// An Own is a measurement that a maker may put in for herself.
type Own struct {
	Name     Words
	Question string
}

// A Film is the recording a pattern belongs to.
type Film struct {
	Page Words
	File Words
	Runs int // seconds
}

// A Photo is a picture of the thing made.
type Photo struct {
	Name  Words
	From  Words
	Alt   string
	Shows string // the size shown
	Ease  string // on the model
}

// A Credit names somebody and what she did.
type Credit struct{ Role, Name string }

// A Tested names who made which sizes by hand.
type Tested struct {
	By    string
	Sizes []int
}

// A Slot is a value that stands in the text or in a row: a formula and how it is to be printed. Span runs from its opening brace
// through its closing one, whatever words the form takes in. One in a row is a Figure: how the row goes on is package notation's to
// read.
type Slot struct {
	Formula *formula.Formula
	Span    source.Span
	Form    SlotForm
	Noun    string // of a Counted slot, as it is written: "sts"
}

// SlotForm is how the words around a value change how it prints.
type SlotForm uint8

const (
	Figure  SlotForm = iota
	Ordinal          // {cap}th: 38th
	Times            // {n} times: once, twice, 3 times; the word is part of the slot
	Counted          // {n} sts: 1 st; the noun is part of the slot
)

// A Piece is a fenced block of rows, as written.
type Piece struct {
	Name      Words
	Gauge     Words
	Hook      Words
	Make      int   // how many are made alike; 1 when not said
	Continued bool  // goes on where the piece of that name stopped
	As        Words // the piece whose rows it works
	Reversed  bool
	Span      source.Span // from the opening fence through the closing one
	Body      source.Span // the rows between the fences, as they stand in the file
	Rows      *notation.Block
}
