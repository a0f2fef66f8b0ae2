package manuscript

import (
	"fmt"
	"strings"

	"foundrow/internal/prose"
)

// dump writes a text with one block a line, so that tests can show what was read: code between dots, emphasis between marks.
func dump(blocks []prose.Block, fill func(int) string) string {
	var b strings.Builder
	dumpBlocks(&b, blocks, "", fill)
	return b.String()
}

func dumpBlocks(b *strings.Builder, blocks []prose.Block, indent string, fill func(int) string) {
	for _, block := range blocks {
		b.WriteString(indent)
		switch block := block.(type) {
		case *prose.Heading:
			fmt.Fprintf(b, "%s %s ", strings.Repeat("#", block.Level), block.ID)
			if block.Film >= 0 {
				fmt.Fprintf(b, "@%d ", block.Film)
			}
			fmt.Fprintln(b, dumpLine(block.Line, fill))
		case *prose.Paragraph:
			fmt.Fprintln(b, "p "+dumpLine(block.Line, fill))
		case *prose.List:
			fmt.Fprintf(b, "list %d\n", block.Start)
			for _, item := range block.Items {
				fmt.Fprintln(b, indent+" -")
				dumpBlocks(b, item, indent+"  ", fill)
			}
		case *prose.Table:
			b.WriteString("table")
			for _, a := range block.Align {
				b.WriteString([...]string{" plain", " left", " centre", " right"}[a])
			}
			b.WriteString("\n")
			for _, row := range append([][]prose.Line{block.Head}, block.Rows...) {
				var cells []string
				for _, c := range row {
					cells = append(cells, dumpLine(c, fill))
				}
				fmt.Fprintln(b, indent+"  "+strings.Join(cells, " | "))
			}
		case *prose.Quote:
			fmt.Fprintln(b, "quote")
			dumpBlocks(b, block.Blocks, indent+" ", fill)
		case *prose.Code:
			fmt.Fprintf(b, "code %s %q\n", block.Info, block.Text)
		case *prose.Break:
			fmt.Fprintln(b, "break")
		case *prose.Piece:
			fmt.Fprintf(b, "piece %d\n", block.Index)
		}
	}
}

func dumpLine(l prose.Line, fill func(int) string) string {
	var b strings.Builder
	for _, part := range l {
		switch part := part.(type) {
		case prose.Text:
			b.WriteString(string(part))
		case prose.Slot:
			b.WriteString(fill(part.Index))
		case *prose.Marked:
			mark := "_"
			if part.Strong {
				mark = "*"
			}
			b.WriteString(mark + dumpLine(part.Line, fill) + mark)
		case *prose.Link:
			b.WriteString("[" + dumpLine(part.Line, fill) + "](" + part.To + ")")
		case *prose.Image:
			b.WriteString("![" + dumpLine(part.Alt, fill) + "](" + part.From + ")")
		case prose.CodeText:
			b.WriteString("·" + string(part) + "·")
		case prose.Newline:
			if part.Hard {
				b.WriteString("|")
			} else {
				b.WriteString(" ")
			}
		}
	}
	return b.String()
}
