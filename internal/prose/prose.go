// Package prose holds a written text as a tree of blocks and lines, with slots where values stand.
//
// It is what a manuscript is read into and what a page is set from: the tree is the same for every size, and a size is no
// more than a column of strings for its slots. Prose knows no Markdown (package manuscript reads it) and no HTML (package
// web writes it).
package prose

import "foundrow/internal/source"

// A Block is one block of a text: *Heading, *Paragraph, *List, *Table, *Quote, *Code, *Break or *Piece.
type Block interface{ block() }

// A Heading opens a section. Film is the moment of the film it belongs to, in seconds, or -1.
type Heading struct {
	Level int // 1 to 6
	ID    string
	Film  int
	Line  Line
	Span  source.Span
}

// A Paragraph is a run of text.
type Paragraph struct {
	Line Line
	Span source.Span
}

// A List holds items, each of them blocks. Start is the first number of an ordered list.
type List struct {
	Ordered bool
	Tight   bool // items are single paragraphs set without space between
	Start   int
	Items   [][]Block
}

// A Table has one heading row and the rows below it, all of the same number of cells.
type Table struct {
	Align []Align
	Head  []Line
	Rows  [][]Line
	Span  source.Span
}

// Align is how the cells of a column stand.
type Align uint8

const (
	Plain Align = iota
	Left
	Centre
	Right
)

// A Quote holds blocks set apart.
type Quote struct{ Blocks []Block }

// Code is text shown as it is written.
type Code struct {
	Info string // the words after the opening fence
	Text string
	Span source.Span
}

// A Break is a rule across the page.
type Break struct{}

// A Piece stands where a worked piece is printed; Index counts the pieces of the pattern in order.
type Piece struct {
	Index int
	Span  source.Span
}

func (*Heading) block()   {}
func (*Paragraph) block() {}
func (*List) block()      {}
func (*Table) block()     {}
func (*Quote) block()     {}
func (*Code) block()      {}
func (*Break) block()     {}
func (*Piece) block()     {}

// A Line is text with what stands in it.
type Line []Inline

// An Inline is a part of a line: Text, Slot, *Marked, *Link, *Image, CodeText or Newline.
type Inline interface{ inline() }

// Text is words as they are.
type Text string

// A Slot stands where a value is printed; Index counts the slots of the text in order.
type Slot struct{ Index int }

// Marked is emphasis: Strong is set bold.
type Marked struct {
	Strong bool
	Line   Line
}

// A Link leads to an address: one of another site, of a page of this one, or of a heading of the same page.
type Link struct {
	To   string
	Line Line
	Span source.Span
}

// An Image shows a file that lies beside the manuscript.
type Image struct {
	From string
	Alt  Line
	Span source.Span
}

// CodeText is code within a line.
type CodeText string

// A Newline ends a line within a paragraph; Hard ones are kept when the text is set.
type Newline struct{ Hard bool }

func (Text) inline()     {}
func (Slot) inline()     {}
func (*Marked) inline()  {}
func (*Link) inline()    {}
func (*Image) inline()   {}
func (CodeText) inline() {}
func (Newline) inline()  {}

// Words returns the plain words of a line; fill gives the words of a slot, and a nil fill leaves slots out.
func (l Line) Words(fill func(slot int) string) string {
	var b []byte
	return string(l.appendWords(b, fill))
}

func (l Line) appendWords(b []byte, fill func(int) string) []byte {
	for _, part := range l {
		switch part := part.(type) {
		case Text:
			b = append(b, part...)
		case CodeText:
			b = append(b, part...)
		case Slot:
			if fill != nil {
				b = append(b, fill(part.Index)...)
			}
		case *Marked:
			b = part.Line.appendWords(b, fill)
		case *Link:
			b = part.Line.appendWords(b, fill)
		case *Image:
			b = part.Alt.appendWords(b, fill)
		case Newline:
			b = append(b, ' ')
		}
	}
	return b
}

// Walk calls visit for every line of the blocks, in the order of reading.
func Walk(blocks []Block, visit func(Line)) {
	for _, b := range blocks {
		switch b := b.(type) {
		case *Heading:
			visit(b.Line)
		case *Paragraph:
			visit(b.Line)
		case *List:
			for _, item := range b.Items {
				Walk(item, visit)
			}
		case *Table:
			for _, cell := range b.Head {
				visit(cell)
			}
			for _, row := range b.Rows {
				for _, cell := range row {
					visit(cell)
				}
			}
		case *Quote:
			Walk(b.Blocks, visit)
		}
	}
}
