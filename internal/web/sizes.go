package web

import "foundrow/internal/page"

// sizes are the sizes, one a row, so that a reader finds everything about hers on one line: whom it fits, what comes out and
// the ease between them. A pattern of one size has a list.
func (w *writer) sizes() {
	s := &w.page.Sizes
	if len(s.Groups) == 0 && s.Key == "" {
		return
	}
	switch {
	case s.Key == "":
		w.oneSize(s)
	case len(s.Groups) == 0:
		w.put(`<p>`).text(s.Range).put(`</p>`)
	default:
		w.sizeTable(s)
	}
	if s.Tried != "" {
		w.put(`<p>`).text(s.Tried).put(`</p>`)
	}
	if len(s.Notes) > 0 {
		w.put(`<ul class="small">`)
		for _, n := range s.Notes {
			w.put(`<li>`).text(n).put(`</li>`)
		}
		w.put(`</ul>`)
	}
}

func (w *writer) oneSize(s *page.Sizes) {
	w.put(`<dl>`)
	for _, g := range s.Groups {
		w.put(`<div><dt>`).text(g.Label).put(`</dt>`)
		for _, c := range g.Columns {
			w.put(`<dd>`).text(c.Label).put(`: <b>`).text(c.Cells[0].First).put(`</b>`)
			if c.Cells[0].Second != "" {
				w.put(` [`).text(c.Cells[0].Second).put(`]`)
			}
			w.put(`</dd>`)
		}
		w.put(`</div>`)
	}
	w.put(`</dl>`)
}

// How many columns beside the size names show on a narrow screen, on a wide one and on a sheet of paper. On a screen more are
// moved sideways into sight; on paper their second unit is broken into two lines.
const (
	columnsOfAPhone  = 2
	columnsOfAScreen = 6
	columnsOfASheet  = 8
)

func (w *writer) sizeTable(s *page.Sizes) {
	columns := 0
	for _, g := range s.Groups {
		columns += len(g.Columns)
	}
	switch {
	case columns > columnsOfAScreen:
		w.put(`<p class="hint always">Move the table sideways to see the rest of it.</p>`)
	case columns > columnsOfAPhone:
		w.put(`<p class="hint">Move the table sideways to see the rest of it.</p>`)
	}
	w.put(`<div class="scroll" tabindex="0" role="group" aria-label="Table of sizes"><table class="sizes`)
	if columns > columnsOfASheet {
		w.put(` packed`)
	}
	w.put(`"><caption>One size a row</caption><thead><tr><th scope="col" rowspan="2">Size</th>`)
	for _, g := range s.Groups {
		w.put(`<th scope="colgroup" class="group" colspan="`).number(len(g.Columns)).put(`">`).text(g.Label).put(`</th>`)
	}
	w.put(`</tr><tr>`)
	for _, g := range s.Groups {
		for i, c := range g.Columns {
			w.put(`<th scope="col"`).first(i).put(`>`).text(c.Label).put(`</th>`)
		}
	}
	w.put(`</tr></thead><tbody>`)
	for size, name := range s.Names {
		w.put(`<tr><th scope="row">`).text(name).put(` <small>`).text(s.Hands[size]).put(`</small></th>`)
		for _, g := range s.Groups {
			for i, c := range g.Columns {
				w.put(`<td`).first(i).put(`>`).cell(c, size).put(`</td>`)
			}
		}
		w.put(`</tr>`)
	}
	w.put(`</tbody></table></div>`)
}

// first marks the column that begins a group.
func (w *writer) first(column int) *writer {
	if column == 0 {
		w.put(` class="group"`)
	}
	return w
}

func (w *writer) cell(c page.Column, size int) *writer {
	if size >= len(c.Cells) {
		return w
	}
	w.text(c.Cells[size].First)
	if second := c.Cells[size].Second; second != "" {
		w.put(` <small>`).text(second).put(`</small>`)
	}
	return w
}
