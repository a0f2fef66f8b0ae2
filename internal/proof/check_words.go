package proof

import (
	"foundrow/internal/measure"
	"foundrow/internal/notation"
	"foundrow/internal/pattern"
	"foundrow/internal/prose"
	"foundrow/internal/source"
)

// A passage is a stretch of the file that a maker reads, cut into words and numbers that know their place. What is no reading is
// left out of it: code, addresses, tags, and a stitch name that a backslash leaves alone.
type passage struct {
	kind  passageKind
	piece int // of a row and its lead: the index of its piece, and of the line within it
	line  int
	span  source.Span
	words []word

	quantities []quantity // the numbers and lists among the words
}

type passageKind uint8

const (
	paragraph passageKind = iota
	heading
	table
	row  // a line of a piece behind its first colon
	lead // what stands before it: "Rows 3 to 8 (RS)"
)

// inRows reports whether the passage is part of a worked piece.
func (p passage) inRows() bool { return p.kind == row || p.kind == lead }

// A word is a word, a number, a mark, or a value in braces.
type word struct {
	kind     wordKind
	text     string      // as written; of a value its formula
	low      string      // in small letters
	num      measure.Num // of a number, and of an ordinal: "38th"
	slot     int32       // of a value: the index of its slot, -1 when it has none
	sentence int32       // counted from 0 within the passage; a line of a table is one
	span     source.Span
}

type wordKind uint8

const (
	plainWord wordKind = iota
	number
	ordinal
	mark
	value
)

// is reports whether the word, in small letters, is one of those given.
func (w word) is(any ...string) bool {
	for _, a := range any {
		if w.low == a {
			return true
		}
	}
	return false
}

// passages collects all that a pattern says to its makers, in the order of the file.
func passages(p *pattern.Pattern) []passage {
	c := cutter{file: p.File, slots: p.Slots, words: make([]word, 0, len(p.File.Text)/5)}
	c.take(paragraph, p.Summary.Span)
	c.blocks(p.Text, p.Pieces)
	at := 0
	for i := range c.passages { // the words are one array, which has moved while it grew
		c.passages[i].words = c.words[at : at+len(c.passages[i].words)]
		at += len(c.passages[i].words)
	}
	return c.passages
}

// blocks takes the blocks of a text, and the rows of pieces where these stand in it.
func (c *cutter) blocks(blocks []prose.Block, pieces []pattern.Piece) {
	for _, b := range blocks {
		switch b := b.(type) {
		case *prose.Heading:
			c.take(heading, b.Span)
		case *prose.Paragraph:
			c.take(paragraph, b.Span)
		case *prose.Table:
			c.take(table, b.Span)
		case *prose.Quote:
			c.blocks(b.Blocks, pieces)
		case *prose.List:
			for _, item := range b.Items {
				c.blocks(item, pieces)
			}
		case *prose.Piece:
			if 0 <= b.Index && b.Index < len(pieces) {
				c.rows(pieces[b.Index], b.Index)
			}
		}
	}
}

// rows takes the lines of a piece. A note among them is prose. One line of the file may be several of rules.
func (c *cutter) rows(p pattern.Piece, index int) {
	if p.Rows == nil {
		return
	}
	last := source.Span{}
	for i, l := range p.Rows.Lines {
		at, behind := l.At(), row
		if at == last {
			continue
		}
		last = at
		if _, is := l.(*notation.Note); is {
			behind = paragraph
		}
		colon := colonOf(c.file.Slice(at))
		taken := len(c.passages)
		c.take(lead, source.Span{From: at.From, To: at.From + colon})
		c.take(behind, source.Span{From: at.From + colon, To: at.To})
		for t := taken; t < len(c.passages); t++ {
			c.passages[t].piece, c.passages[t].line = index, i
		}
	}
}

// colonOf returns the offset behind the first colon outside of braces, or 0 when a line has none.
func colonOf(line string) int {
	depth := 0
	for i := range len(line) {
		switch line[i] {
		case '{':
			depth++
		case '}':
			depth--
		case ':':
			if depth <= 0 {
				return i + 1
			}
		}
	}
	return 0
}
