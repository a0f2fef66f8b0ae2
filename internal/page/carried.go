package page

import (
	"strings"

	"foundrow/internal/pattern"
	"foundrow/internal/prose"
	"foundrow/internal/stitch"
)

// A carrier carries running text from the terms it is written in to those of an edition. Code stays as it is, and so does a word
// behind a backslash, which is taken off.
type carrier struct{ from, to pattern.Terms }

func (c carrier) words(text string) string { return stitch.Translate(text, c.from, c.to) }

// stitch carries the words of a stitch: in the house style where they are nothing else, "sc BLO", otherwise as text.
func (c carrier) stitch(words string) string {
	fields := strings.Fields(words)
	if s, n := stitch.Read(fields, c.from); n > 0 && n == len(fields) {
		return s.In(c.to)
	}
	return c.words(words)
}

// blocks carries a text. What does not change is not made anew.
func (c carrier) blocks(blocks []prose.Block) []prose.Block {
	out := make([]prose.Block, len(blocks))
	for i, b := range blocks {
		out[i] = c.block(b)
	}
	return out
}

func (c carrier) block(b prose.Block) prose.Block {
	switch b := b.(type) {
	case *prose.Heading:
		if line, changed := c.line(b.Line); changed {
			other := *b
			other.Line = line
			return &other
		}
	case *prose.Paragraph:
		if line, changed := c.line(b.Line); changed {
			return &prose.Paragraph{Line: line, Span: b.Span}
		}
	case *prose.List:
		other := *b
		other.Items = make([][]prose.Block, len(b.Items))
		for i, item := range b.Items {
			other.Items[i] = c.blocks(item)
		}
		return &other
	case *prose.Table:
		other := *b
		other.Head = c.cells(b.Head)
		other.Rows = make([][]prose.Line, len(b.Rows))
		for i, row := range b.Rows {
			other.Rows[i] = c.cells(row)
		}
		return &other
	case *prose.Quote:
		return &prose.Quote{Blocks: c.blocks(b.Blocks)}
	}
	return b
}

func (c carrier) cells(cells []prose.Line) []prose.Line {
	out := make([]prose.Line, len(cells))
	for i, cell := range cells {
		out[i], _ = c.line(cell)
	}
	return out
}

// line carries a line, and reports whether it is another now.
func (c carrier) line(l prose.Line) (prose.Line, bool) {
	if c.from != c.to {
		l = unbroken(l)
	}
	var out prose.Line
	set := func(i int, in prose.Inline) {
		if out == nil {
			out = append(prose.Line{}, l...)
		}
		out[i] = in
	}
	for i, in := range l {
		switch in := in.(type) {
		case prose.Text:
			if c.from == c.to && strings.IndexByte(string(in), '\\') < 0 {
				continue
			}
			follows := ""
			if i+1 < len(l) {
				if _, is := l[i+1].(prose.Slot); is {
					follows = "{" // a number: "skip {n} sts" is the trade's word for it
				}
			}
			if text := strings.TrimSuffix(c.words(string(in)+follows), follows); text != string(in) {
				set(i, prose.Text(text))
			}
		case *prose.Marked:
			if line, changed := c.line(in.Line); changed {
				set(i, &prose.Marked{Strong: in.Strong, Line: line})
			}
		case *prose.Link:
			if line, changed := c.line(in.Line); changed {
				set(i, &prose.Link{To: in.To, Line: line, Span: in.Span})
			}
		case *prose.Image:
			if line, changed := c.line(in.Alt); changed {
				set(i, &prose.Image{From: in.From, Alt: line, Span: in.Span})
			}
		}
	}
	if out == nil {
		return l, false
	}
	return out, true
}

// unbroken joins what stands on both sides of a line end in the file, because a stitch may be named across it.
func unbroken(l prose.Line) prose.Line {
	var out prose.Line
	for i, in := range l {
		soft, is := in.(prose.Newline)
		if !is || soft.Hard || i == 0 || i+1 == len(l) {
			if out != nil {
				out = appendInline(out, in)
			}
			continue
		}
		if out == nil {
			out = append(make(prose.Line, 0, len(l)), l[:i]...)
		}
		out = appendInline(out, prose.Text(" "))
	}
	if out == nil {
		return l
	}
	return out
}

// appendInline adds a part to a line; text is joined to the text before it.
func appendInline(l prose.Line, in prose.Inline) prose.Line {
	if text, is := in.(prose.Text); is && len(l) > 0 {
		if before, is := l[len(l)-1].(prose.Text); is {
			l[len(l)-1] = before + text
			return l
		}
	}
	return append(l, in)
}
