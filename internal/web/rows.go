package web

import (
	"strings"

	"foundrow/internal/page"
	"foundrow/internal/prose"
)

// piece writes a worked piece: its name, what is asked of the whole of it, and its rows one below the other.
func (w *writer) piece(p *page.Piece) {
	title, asks := p.Title, p.Asks // "Hem", "make 2"
	if strings.EqualFold(strings.TrimSpace(title), strings.TrimSpace(w.heading)) {
		title = "" // the heading above it says it
	}
	w.put(`<figure class="piece" aria-label="`).attr(p.Title).put(`">`)
	if title != "" || asks != "" {
		w.put(`<figcaption>`)
		if title != "" {
			w.put(`<b>`).text(title).put(`</b> `)
		}
		w.text(asks).put(`</figcaption>`)
	}
	w.put(`<ol>`)
	for i := range p.Lines {
		w.row(&p.Lines[i])
	}
	w.put(`</ol></figure>`)
}

// broad is how many letters fit in the column of labels; a longer label stands above its row.
const broad = 16

func (w *writer) row(l *page.Line) {
	switch {
	case l.Kind == page.NoteLine:
		w.put(`<li class="note">`)
	case len(l.Label) == 0 || len(l.Only) > 0 || w.width(l.Label) > broad:
		w.put(`<li class="broad">`)
	default:
		w.put(`<li>`)
	}
	if len(l.Label)+len(l.Only) > 0 || l.Film >= 0 {
		w.put(`<span class="label">`).line(l.Label)
		if l.Side != "" {
			w.put(` <span class="side">`).text(l.Side).put(`</span>`)
		}
		if len(l.Only) > 0 {
			w.put(` <span class="only">`).line(l.Only).put(`</span>`)
		}
		w.film(l.Film).put(`</span> `)
	}
	w.put(`<span class="work">`).line(l.Text)
	if len(l.Count) > 0 {
		w.put(` <span class="count">`).line(l.Count).put(`</span>`)
	}
	w.put(`</span></li>`)
}

// width is about how many letters a line takes up.
func (w *writer) width(l prose.Line) int {
	n := 0
	for _, part := range l {
		switch part := part.(type) {
		case prose.Text:
			n += len(part)
		case prose.Slot:
			n += len(w.words(part.Index))
		case *prose.Marked:
			n += w.width(part.Line)
		}
	}
	return n
}
