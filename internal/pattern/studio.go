package pattern

import (
	"foundrow/internal/measure"
	"foundrow/internal/source"
)

// A Studio is what studio.toml says: whose patterns these are and how they are printed where a pattern says nothing itself.
type Studio struct {
	File     *source.File
	Title    string
	Address  string // where the site is published: "https://example.org/"
	Language string // of the pages: "en"
	Terms    Terms  // the terms a page opens with
	Tape     measure.Tape
	Rights   string    // the line about copyright and use
	Contact  string    // where makers write to
	Editions []Terms   // the terms each pattern is published in, the ones a page opens with first
	Stitches []Special // shared by its patterns: content/stitches
}

// A Plain is a page of the studio that is not a pattern: about, the handbook. Its values are those of a pattern without sizes.
type Plain struct {
	Pattern     // title, summary, text, slots
	Order   int // its place among the pages in the menu; pages without one come last, by title
}
