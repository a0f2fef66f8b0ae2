package ledger

import (
	"foundrow/internal/notation"
	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

// A Kind is what a place is.
type Kind uint8

const (
	Stitches Kind = iota // worked stitches
	Spaces               // chains made over nothing: one place for each, however many chains it has
	Turnings             // a beginning or turning chain
	Chains               // loose chains of which each is a place: a foundation, chains added at an edge
	Rings                // a ring, which takes any number
	Ends                 // row-ends
	kinds
)

// A Face is how a place is met.
type Face uint8

const (
	Top Face = iota
	Post
	FreeLoop // the other side of a chain
	InSpace
	Gap // between two stitches
	RowEnd
)

// A Span is N places of one row from From, met along or against their making. Places are numbered from 0 as they were made;
// a span against the making begins at From+N-1. Of row-ends, From and N count the workings of the row.
type Span struct {
	Row  int32
	From int32
	N    int32
	Back bool
	Face Face
}

// Made is N places made alike, one after the other.
type Made struct {
	Kind    Kind
	Stands  bool  // it can be worked into, as some turning chains cannot
	Counted bool  // it is in the printed number
	Of      int32 // which stitch, by its place in Book.Known: of a turning chain, what it stands for; 0 is none that is known
	N       int
	Chains  int  // of each space, of a turning chain
	Whole   int  // of a space that is part of a beginning chain or closed by a tall join: what it may be called by
	Each    int  // how many of them went into one place; 0 and 1 are one
	Unit    int  // which shell or other group of the row they belong to, from 1; 0 for none
	Into    Span // where they went; N of 0 for what goes nowhere
}

// A Row is what one row made, and how many times it was worked alike one upon the other. Foundations, starts and added chains are
// rows with no Times.
type Row struct {
	Made     []Made // in the order they were made; never changed
	Places   int
	Count    int // of stitches, as its claim counts them
	Times    int
	Halves   int // what its row-end measures, in halves of an sc row: sc 2, hdc 3, dc 4
	Number   int // of its first working; 0 when it has none
	Line     int // of the block
	Side     notation.Side
	Round    bool
	Picked   bool     // worked along edges to begin the piece: a row, but none of those it numbers
	Units    []string // the names of its units, as they were numbered from 1; empty for groups without a name
	Tally    Tally    // of one working
	Unworked []Span   // what it left of the row below, live still
}

// A Tally says what became of the places that a row found. In every row, and for each kind,
// Found = Used + Skipped + Passed + Left.
type Tally struct {
	Found, Used, Skipped, Passed, Left [kinds]int32
}

// An Edge is anything live: spans in the order they are met. A round is an edge read in a circle.
type Edge struct {
	Book  *Book
	Spans []Span
	Round bool
}

// A Printed is one written line of rows, with what is printed after its last working.
type Printed struct {
	Line    int // of the block
	Row     int // the row of its last working; -1 when it could not be worked
	From    int // the number of rows of the piece before it
	Rows    int // how many rows it is
	Label   *notation.Label
	Side    notation.Side
	Span    source.Span
	Count   int  // as the claim counts it, else all that stand and are counted
	Open    bool // the row could not be worked out: Count is the claim, or -1 when there is none
	Changed bool // the count differs from that of the row before
}

// A Mark is where a marker is.
type Mark struct {
	Name  string
	Row   int
	Place int
}

// A Taken is what a piece used of an edge of another piece, and what it left there.
type Taken struct {
	Piece, Which string
	Left         Edge
	Copies       int // how many pieces made alike were used up before it
}

// A Book is a piece worked in one size. It is not changed once it is returned.
type Book struct {
	Rows    []Row
	Known   []stitch.Stitch // the first is none
	Printed []Printed
	Marks   []Mark
	Taken   []Taken
	Habits  Habits // under which it was read
	Closes  bool   // every row came out, by use and by count

	last       Edge
	foundation Edge
	mirrored   bool // right and left are exchanged: worked reversed
	start      int  // the first row of the row-ends that count: after a new start
	numbered   []numbered
}

// numbered finds the workings of the rows by their numbers.
type numbered struct {
	number int
	row    int
	count  int
}
