package manuscript

import (
	"bytes"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"
)

// markdown reads CommonMark with tables, and values in braces. It is made once and shared: making one costs as much as reading
// a short page, and it keeps nothing of the texts it reads.
var markdown = goldmark.New(
	goldmark.WithExtensions(extension.Table),
	goldmark.WithParserOptions(parser.WithInlineParsers(
		util.Prioritized(braces{}, 150), // after code, in which braces are left alone, and before links, whose words may have values
	)),
).Parser()

// A slotNode stands in the tree of package goldmark where a value stands. Its text runs between two offsets.
type slotNode struct {
	ast.BaseInline
	open, shut int // before the opening and after the closing brace
}

var kindSlot = ast.NewNodeKind("Slot")

// Kind implements ast.Node.
func (*slotNode) Kind() ast.NodeKind { return kindSlot }

// Dump implements ast.Node.
func (n *slotNode) Dump(source []byte, level int) { ast.DumpHelper(n, source, level, nil, nil) }

// braces reads {value}. A brace that is not closed on its line stays text and is reported when the text is gone through.
type braces struct{}

// Trigger implements parser.InlineParser.
func (braces) Trigger() []byte { return []byte{'{'} }

// Parse implements parser.InlineParser.
func (braces) Parse(_ ast.Node, block text.Reader, _ parser.Context) ast.Node {
	line, segment := block.PeekLine()
	shut := bytes.IndexAny(line[1:], "{}")
	if shut < 0 || line[1+shut] != '}' {
		return nil
	}
	width := shut + 2
	block.Advance(width)
	return &slotNode{open: segment.Start, shut: segment.Start + width}
}
