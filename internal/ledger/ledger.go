// Package ledger works a piece: every row of it, in one size, from numbers that it is given. It keeps two accounts of each row, what
// it makes and which places of the row below it uses up, and reports where either does not come out.
//
// It does not know what values are or how they are worked out (package grade asks for them and hands over the numbers), nor how rows
// are written (package notation), and it says nothing in sentences: Findings words what it reports.
package ledger

import (
	"foundrow/internal/notation"
	"foundrow/internal/stitch"
)

// A Piece is what Work needs to know to work one piece in one size. Only Block is required.
type Piece struct {
	Name     string
	Block    *notation.Block
	Sizes    []string // the sizes offered, in order; empty for one size
	Size     int      // which of them is worked
	Turning  []Turning
	Specials []Special
	Reversed bool    // worked as another piece, mirrored: right and left change places
	Habits   *Habits // read it so and no other way; nil for the default and what can be found by changing one

	// Count gives a count in this size: n, or absent where the size has none; ok is false where it has no value, and the row is
	// left open without a report. Left nil, plain numbers and lists are read and values are not.
	Count func(notation.Count) (n int, absent, ok bool)
	// Edges gives the live edges of pieces that are worked already. What a piece takes of them stands in Book.Taken.
	// Copy counts the pieces that are made alike, from 0 for the first of which something is left.
	Edges func(piece, which string, copy int) (Edge, bool)
	// Rows gives how many rows make a length, for "until piece measures". Left nil, such rows are left open.
	Rows func(length notation.Extent) (rows int, ok bool)
}

// A Turning is a statement of the front matter: what the turning chain of a stitch counts as.
type Turning struct {
	Stitch string // its name in US terms
	Counts bool
}

// A Special is a stitch of the pattern's own. How, where it could be read, is what it is worked as, and then gives the rest.
type Special struct {
	Name        string
	Uses, Makes int           // 0 is 1
	Tall        stitch.Stitch // the stitch it is as tall as
	How         []notation.Clause
}

// Habits are what the written notation leaves open. The zero value is the default reading.
type Habits struct {
	Repeats RepeatHabit
	Chain   ChainHabit
	Numbers NumberHabit
	Chains  bool // each chain counts as a stitch
}

// RepeatHabit is what "rep from * 3 times" means.
type RepeatHabit uint8

const (
	More  RepeatHabit = iota // three more times, four in all
	InAll                    // three in all
)

// ChainHabit is what a beginning chain counts as.
type ChainHabit uint8

const (
	AsUsual ChainHabit = iota // as the pattern states, else as the height of the stitch has it
	Counts
	CountsNot
	StandsUncounted // it is worked into like a stitch, and left out of the printed number
)

// NumberHabit is what "3 sc" means where no place is named.
type NumberHabit uint8

const (
	Run      NumberHabit = iota // one in each of the next three
	OnePlace                    // three in the next one
)

// Work works a piece in one size. The reports are in the order of the rows; a book is returned whatever they say.
func Work(p Piece) (*Book, []Report) {
	books, reports := WorkSizes([]Piece{p})
	return books[0], reports[0]
}
