package web

import (
	"strings"
	"unicode/utf8"

	"foundrow/internal/page"
	"foundrow/internal/prose"
)

func (w *writer) blocks(blocks []prose.Block) {
	for _, b := range blocks {
		w.block(b)
	}
}

func (w *writer) block(b prose.Block) {
	switch b := b.(type) {
	case *prose.Heading:
		w.head(b)
	case *prose.Paragraph:
		w.put(`<p>`).line(b.Line).put(`</p>`)
	case *prose.List:
		w.list(b)
	case *prose.Table:
		w.table(b)
	case *prose.Quote:
		w.put(`<blockquote>`).blocks(b.Blocks)
		w.put(`</blockquote>`)
	case *prose.Code:
		w.put(`<pre tabindex="0"><code>`).text(b.Text).put(`</code></pre>`)
	case *prose.Break:
		w.put(`<hr>`)
	case *prose.Piece:
		if b.Index < len(w.page.Pieces) {
			w.piece(&w.page.Pieces[b.Index])
		}
	}
}

// head writes a heading. Levels are moved below those of the page and never jump, so that the outline is whole whatever the
// text began with.
func (w *writer) head(h *prose.Heading) {
	w.level = min(max(h.Level+w.deeper, 2+w.deeper), w.level+1, 6)
	w.put(`<h`).number(w.level)
	if h.ID != "" {
		w.put(` id="`).attr(h.ID).put(`"`)
	}
	w.put(`>`).line(h.Line).film(h.Film)
	w.put(`</h`).number(w.level).put(`>`)
	w.heading = h.Line.Words(w.words)
}

// film writes the link to a moment of the film, where there is one.
func (w *writer) film(seconds int) *writer {
	if seconds < 0 || w.page.Film.Address == "" {
		return w
	}
	w.put(` <a class="film" href="`)
	if moment := w.page.Film.Moment(seconds); w.page.Film.Local {
		w.beside(moment)
	} else {
		w.link(moment)
	}
	return w.put(`">Film `).text(page.Stamp(seconds)).put(`</a>`)
}

func (w *writer) list(l *prose.List) {
	tag := `ul>`
	if l.Ordered {
		tag = `ol>`
	}
	if l.Ordered && l.Start > 1 {
		w.put(`<ol start="`).number(l.Start).put(`">`)
	} else {
		w.put(`<`).put(tag)
	}
	for _, item := range l.Items {
		w.put(`<li>`)
		for _, b := range item {
			if p, is := b.(*prose.Paragraph); is && l.Tight {
				w.line(p.Line)
				continue
			}
			w.block(b)
		}
		w.put(`</li>`)
	}
	w.put(`</`).put(tag)
}

// table writes a table of the text in a box of its own, which scrolls where the page is narrow.
func (w *writer) table(t *prose.Table) {
	w.put(`<div class="scroll" tabindex="0" role="group" aria-label="Table`)
	if w.heading != "" {
		w.put(`: `).attr(w.heading)
	}
	w.put(`"><table><thead><tr>`)
	for i, cell := range t.Head {
		if len(cell) == 0 {
			w.put(`<td></td>`)
			continue
		}
		w.put(`<th scope="col"`).align(t.Align, i).put(`>`).line(cell).put(`</th>`)
	}
	w.put(`</tr></thead><tbody>`)
	named := len(t.Head) > 0 && len(t.Head[0]) == 0 // nothing is said of the first column: its cells name their rows
	for _, row := range t.Rows {
		w.put(`<tr>`)
		for i, cell := range row {
			if i == 0 && named {
				w.put(`<th scope="row"`).align(t.Align, i).put(`>`).line(cell).put(`</th>`)
				continue
			}
			w.put(`<td`).align(t.Align, i).put(`>`).line(cell).put(`</td>`)
		}
		w.put(`</tr>`)
	}
	w.put(`</tbody></table></div>`)
}

func (w *writer) align(align []prose.Align, column int) *writer {
	if column < len(align) {
		switch align[column] {
		case prose.Centre:
			w.put(` class="centre"`)
		case prose.Right:
			w.put(` class="right"`)
		}
	}
	return w
}

func (w *writer) line(l prose.Line) *writer {
	for _, part := range l {
		switch part := part.(type) {
		case prose.Text:
			w.text(string(part))
		case prose.Slot:
			w.slot(part.Index)
		case *prose.Marked:
			tag := `em>`
			if part.Strong {
				tag = `strong>`
			}
			w.put(`<`).put(tag).line(part.Line).put(`</`).put(tag)
		case *prose.Link:
			w.put(`<a href="`).link(part.To).put(`">`).line(part.Line).put(`</a>`)
		case *prose.Image:
			w.put(`<img src="`).beside(part.From).put(`" alt="`).attr(part.Alt.Words(w.words)).put(`" loading="lazy" decoding="async">`)
		case prose.CodeText:
			w.put(`<code>`).text(string(part)).put(`</code>`)
		case prose.Newline:
			if part.Hard {
				w.put(`<br>`)
			} else {
				w.put("\n")
			}
		}
	}
	return w
}

// slot writes a value, in bold.
func (w *writer) slot(index int) {
	w.put(`<b>`).figures(w.words(index)).put(`</b>`)
}

// wholeUpTo is how many letters of a list are kept on one line: more would not fit the narrowest screen.
const wholeUpTo = 22

// figures writes a list so that its lines end between brackets rather than within: each bracket is kept whole, the first with
// the figure before it. A figure alone, or a bracket too long for that, is written as it is.
func (w *writer) figures(list string) *writer {
	for {
		open := strings.IndexByte(list, '(')
		end := strings.IndexByte(list, ')')
		if open < 0 || end < open {
			return w.text(list)
		}
		from := open
		if before := strings.TrimRight(list[:open], " "); before != "" {
			from = 1 + strings.LastIndexByte(before, ' ')
		}
		w.text(list[:from])
		if whole := list[from : end+1]; utf8.RuneCountInString(whole) <= wholeUpTo {
			w.put(`<span>`).text(whole).put(`</span>`)
		} else {
			w.text(whole)
		}
		list = list[end+1:]
	}
}

// words are what a slot reads on a page for every size.
func (w *writer) words(slot int) string {
	if w.page == nil || slot < 0 || slot >= len(w.page.Slots) {
		return ""
	}
	return w.page.Slots[slot].All
}
