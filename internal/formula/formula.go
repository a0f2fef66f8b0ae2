package formula

import "foundrow/internal/source"

// A Formula is one formula as it was read. It never changes and may be worked by several goroutines at once.
type Formula struct {
	File *source.File
	Text string      // as written
	Span source.Span // in File
}

// Parse reads one formula, whose text begins at an offset of the file. It always returns a formula; one with findings works out
// as an unknown value.
func Parse(f *source.File, from int, text string) (*Formula, source.Findings) {
	return &Formula{File: f, Text: text, Span: source.Span{From: from, To: from + len(text)}}, nil
}

// ParseEase reads an ease: a length ("10 cm"), or a percentage of the body ("-10%"), which works out as a plain number.
func ParseEase(f *source.File, from int, text string) (*Formula, source.Findings) {
	return Parse(f, from, text)
}
