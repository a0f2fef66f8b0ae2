package web

import "foundrow/internal/page"

// written is the written text with its tables and pieces. Its headings stand below the page's own of the given level.
func (w *writer) written(level int) {
	w.level, w.deeper = level, level-1
	w.blocks(w.page.Text)
}

// key says which place in a list is which size. It stays in sight beside the instructions.
func (w *writer) key() {
	if key := w.page.Sizes.Key; key != "" {
		w.put(`<p class="key"><span>Sizes</span> <b>`).figures(key).put(`</b></p>`)
	}
}

// facts are what the pattern is, with links to the like of it.
func (w *writer) facts() {
	if len(w.page.Facts) == 0 {
		return
	}
	w.put(`<dl class="facts">`)
	for _, f := range w.page.Facts {
		w.put(`<div><dt>`).text(f.Label).put(`</dt><dd>`)
		if f.Address != "" {
			w.put(`<a href="`).attr(page.Relative(w.from, f.Address)).put(`">`).text(f.Value).put(`</a>`)
		} else {
			w.text(f.Value)
		}
		w.put(`</dd></div>`)
	}
	w.put(`</dl>`)
}

// contents is the way to the sections of the page and to the parts of the instructions.
func (w *writer) contents() {
	p, before := w.page, len(w.b)
	w.put(`<nav class="contents" aria-label="On this page"><ul>`)
	empty := len(w.b)
	for _, s := range [...]struct {
		there     bool
		id, title string
	}{
		{len(p.Sizes.Groups) > 0 || p.Sizes.Key != "", "_sizes", "Sizes"},
		{len(p.Yarns)+len(p.Hooks)+len(p.Notions) > 0, "_materials", "Materials"},
		{len(p.Gauges) > 0, "_gauge", p.GaugeWord},
		{len(p.Cautions) > 0, "_cautions", "Safety"},
		{len(p.Abbreviations) > 0, "_abbreviations", "Abbreviations"},
		{len(p.Special) > 0, "_special", "Special stitches"},
		{len(p.Notes) > 0, "_reading", "How to read this"},
	} {
		if s.there {
			w.put(`<li><a href="#`).put(s.id).put(`">`).text(s.title).put(`</a></li>`)
		}
	}
	if len(p.Text) > 0 {
		w.put(`<li><a href="#_instructions">Instructions</a>`)
		if len(p.Contents) > 0 {
			w.put(`<ul>`)
			for _, l := range p.Contents {
				w.put(`<li><a href="`).attr(l.Address).put(`">`).text(l.Title).put(`</a></li>`)
			}
			w.put(`</ul>`)
		}
		w.put(`</li>`)
	}
	if len(p.Counts) > 0 {
		w.put(`<li><a href="#_counts">Where the numbers come from</a></li>`)
	}
	if len(w.b) == empty {
		w.b = w.b[:before]
		return
	}
	w.put(`</ul></nav>`)
}

func (w *writer) photos(photos []page.Photo) {
	if len(photos) == 0 {
		return
	}
	w.put(`<div class="photos">`)
	for i, photo := range photos {
		w.put(`<figure><img src="`).beside(photo.File).put(`" alt="`).attr(photo.Alt).put(`"`)
		if i > 0 {
			w.put(` loading="lazy"`)
		}
		w.put(` decoding="async">`)
		if photo.Caption != "" {
			w.put(`<figcaption>`).text(photo.Caption).put(`</figcaption>`)
		}
		w.put(`</figure>`)
	}
	w.put(`</div>`)
}

// entry writes a term and what is to say of it.
func (w *writer) entry(term, words string) {
	w.put(`<div><dt>`).text(term).put(`</dt><dd>`).text(words).put(`</dd></div>`)
}

func (w *writer) cautions() {
	if len(w.page.Cautions) == 0 {
		return
	}
	w.put(`<dl>`)
	for _, c := range w.page.Cautions {
		w.entry(c.Title, c.Text)
	}
	w.put(`</dl><p>`).text(page.CautionsClosing).put(`</p>`)
}

func (w *writer) notes() {
	if len(w.page.Notes) == 0 {
		return
	}
	w.put(`<ul>`)
	for _, n := range w.page.Notes {
		w.put(`<li>`).text(n).put(`</li>`)
	}
	w.put(`</ul>`)
}

func (w *writer) abbreviations() {
	if len(w.page.Abbreviations) == 0 {
		return
	}
	w.put(`<dl class="short">`)
	for _, a := range w.page.Abbreviations {
		w.entry(a.Short, a.Words)
	}
	w.put(`</dl>`)
}

func (w *writer) special() {
	if len(w.page.Special) == 0 {
		return
	}
	w.put(`<dl>`)
	for _, s := range w.page.Special {
		w.put(`<div><dt>`).text(s.Short)
		if s.Name != "" {
			w.put(` (`).text(s.Name).put(`)`)
		}
		w.put(`</dt><dd>`).line(s.How).put(`</dd></div>`)
	}
	w.put(`</dl>`)
}

// counts are the counts with where each came from.
func (w *writer) counts() {
	if len(w.page.Counts) == 0 {
		return
	}
	w.put(`<dl>`)
	for _, c := range w.page.Counts {
		w.put(`<div><dt>`).text(c.Label).put(`</dt><dd><b>`).figures(c.Value.All).put(`</b>`)
		if c.Story.All != "" {
			w.put(`<br>`).text(c.Story.All)
		}
		if c.Pinned != "" && c.Pinned != c.Story.All {
			w.put(`<br>`).text(c.Pinned)
		}
		w.put(`</dd></div>`)
	}
	w.put(`</dl>`)
}

func (w *writer) credits() {
	if len(w.page.Credits) == 0 {
		return
	}
	w.put(`<dl>`)
	for _, c := range w.page.Credits {
		w.entry(c.Role, c.Name)
	}
	w.put(`</dl>`)
}

// inMasthead is how many plain pages the head of a page names; with more it leads to the list at the foot.
const inMasthead = 4

// menu is the way to the studio's plain pages.
func (w *writer) menu(links []page.Link) {
	if len(links) == 0 {
		return
	}
	if len(links) <= inMasthead {
		w.put(`<nav class="menu" aria-label="Studio"><ul>`).links(links)
	} else {
		w.put(`<nav class="menu many" aria-label="Studio"><ul>`).links(links[:inMasthead-1])
		w.put(`<li><a href="#_pages">All pages</a></li>`)
	}
	w.put(`</ul></nav>`)
}

// pages is the list of all plain pages at the foot, where the head has no room for them.
func (w *writer) pages(links []page.Link) {
	if len(links) > inMasthead {
		w.put(`<nav class="pages" id="_pages" aria-label="All pages"><ul>`).links(links)
		w.put(`</ul></nav>`)
	}
}

func (w *writer) links(links []page.Link) {
	for _, l := range links {
		w.put(`<li><a href="`).attr(page.Relative(w.from, l.Address))
		if l.Address == w.from {
			w.put(`" aria-current="page`)
		}
		w.put(`">`).text(l.Title).put(`</a></li>`)
	}
}

// foot is the line of rights, whom to write to, and whose tables were used.
func (w *writer) foot(s page.Studio, sources []string) {
	if s.Rights != "" {
		w.put(`<p>`).text(s.Rights).put(`</p>`)
	}
	if s.Contact != "" {
		w.put(`<p>Questions and corrections: `)
		if s.ContactLink != "" {
			w.put(`<a href="`).attr(s.ContactLink).put(`">`).text(s.Contact).put(`</a>`)
		} else {
			w.text(s.Contact)
		}
		w.put(`</p>`)
	}
	for _, credit := range sources {
		w.put(`<p>`).text(credit).put(`</p>`)
	}
}
