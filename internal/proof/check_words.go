package proof

import (
	"strings"

	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/prose"
	"foundrow/internal/source"
)

// A passage is a stretch of the file that a maker reads, cut into words and numbers that know their place. What is no reading is
// left out of it: code, addresses, tags, and a stitch name that a backslash leaves alone.
type passage struct {
	kind  passageKind
	piece int // of a row and its lead: the index of its piece
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
	places   int         // decimals written
	slot     int         // of a value: the index of its slot, -1 when it has none
	sentence int         // counted from 0 within the passage; a line of a table is one
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
	var all []passage
	add := func(kind passageKind, piece int, span source.Span) {
		if span.To > span.From {
			all = append(all, passage{kind: kind, piece: piece, span: span, words: cut(p.File, span, kind, p.Slots)})
		}
	}
	var walk func(blocks []prose.Block)
	walk = func(blocks []prose.Block) {
		for _, b := range blocks {
			switch b := b.(type) {
			case *prose.Heading:
				add(heading, -1, b.Span)
			case *prose.Paragraph:
				add(paragraph, -1, b.Span)
			case *prose.Table:
				add(table, -1, b.Span)
			case *prose.Quote:
				walk(b.Blocks)
			case *prose.List:
				for _, item := range b.Items {
					walk(item)
				}
			case *prose.Piece:
				if b.Index < 0 || b.Index >= len(p.Pieces) {
					continue
				}
				for _, l := range p.Pieces[b.Index].Lines {
					text := p.File.Slice(l.Span)
					colon, behind := colonOf(text), row
					if strings.HasPrefix(text, "Note:") {
						behind = paragraph
					}
					add(lead, b.Index, source.Span{From: l.Span.From, To: l.Span.From + colon})
					add(behind, b.Index, source.Span{From: l.Span.From + colon, To: l.Span.To})
				}
			}
		}
	}
	add(paragraph, -1, p.Summary.Span)
	walk(p.Text)
	return all
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
