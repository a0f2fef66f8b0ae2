package web

import "foundrow/internal/page"

// filters are the ways to narrow the catalogue, each choice a link to a page of its own.
func (w *writer) filters(c *page.Catalogue) {
	if len(c.Filters) == 0 {
		return
	}
	w.put(`<nav class="filters" aria-label="Narrow the catalogue"><p><a class="choice" href="`).attr(page.Relative(w.from, ""))
	if w.from == "" {
		w.put(`" aria-current="page`)
	}
	w.put(`">All patterns</a></p>`)
	for _, f := range c.Filters {
		w.put(`<h2>`).text(f.Label).put(`</h2><ul>`)
		for _, choice := range f.Choices {
			w.put(`<li><a class="choice" href="`).attr(page.Relative(w.from, choice.Address))
			if choice.Here {
				w.put(`" aria-current="page`)
			}
			w.put(`">`).text(choice.Label).put(` <span>`).number(choice.Count).put(`</span></a></li>`)
		}
		w.put(`</ul>`)
	}
	w.put(`</nav>`)
}

// cards are the patterns shown.
func (w *writer) cards(c *page.Catalogue) {
	if len(c.Shown) == 0 {
		w.put(`<p>No pattern is out yet.</p>`)
		return
	}
	w.put(`<ul class="cards">`)
	for i := range c.Shown {
		w.card(&c.Shown[i])
	}
	w.put(`</ul>`)
}

func (w *writer) card(c *page.Card) {
	address := page.PatternAddress(c.Slug)
	w.put(`<li class="card">`)
	if c.Photo != "" {
		w.put(`<img src="`).attr(spaced(page.Relative(w.from, address+c.Photo))).put(`" alt="`).attr(c.Alt).put(`" loading="lazy" decoding="async">`)
	} else {
		w.put(`<span class="swatch"></span>`)
	}
	w.put(`<h2><a href="`).attr(page.Relative(w.from, address)).put(`">`).text(c.Title).put(`</a></h2>`)
	if c.Summary != "" {
		w.put(`<p>`).text(c.Summary).put(`</p>`)
	}
	w.put(`<ul class="tags">`)
	for _, tag := range c.Tags() {
		w.put(`<li>`).text(tag).put(`</li>`)
	}
	if c.Released == "" {
		w.put(`<li class="unreleased">Not out yet</li>`)
	}
	w.put(`</ul></li>`)
}
