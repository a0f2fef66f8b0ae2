package web

import (
	"strings"

	"foundrow/internal/page"
)

// materials are yarn, hooks and what else is needed.
func (w *writer) materials() {
	p := w.page
	if len(p.Yarns)+len(p.Hooks)+len(p.Notions) == 0 {
		return
	}
	w.put(`<dl>`)
	if len(p.Yarns) > 0 {
		w.put(`<div><dt>Yarn</dt>`)
		for i := range p.Yarns {
			w.yarn(&p.Yarns[i])
		}
		w.put(`</div>`)
	}
	if len(p.Hooks) > 0 {
		w.put(`<div><dt>Hook</dt>`)
		for _, h := range p.Hooks {
			w.put(`<dd>`).titled(h.Title).put(`<b>`).text(h.Size).put(`</b>`)
			if h.Note != "" {
				w.put(`, `).text(h.Note)
			}
			w.put(`</dd>`)
		}
		w.put(`<dd>or whichever gives you the `).text(strings.ToLower(p.GaugeWord)).put(`</dd></div>`)
	}
	if len(p.Notions) > 0 {
		w.put(`<div><dt>Also</dt>`)
		for _, n := range p.Notions {
			w.put(`<dd>`).text(n.What)
			if n.Amount.All != "" {
				w.put(`: <b>`).figures(n.Amount.All).put(`</b>`)
			}
			w.put(`</dd>`)
		}
		w.put(`</div>`)
	}
	w.put(`</dl>`)
}

func (w *writer) titled(title string) *writer {
	if title != "" {
		w.text(title).put(`: `)
	}
	return w
}

func (w *writer) yarn(y *page.Yarn) {
	w.put(`<dd>`).titled(y.Title).put(`<b>`).text(y.Wanted).put(`</b>`)
	if y.Weight != "" {
		w.put(`, weight <a href="`).attr(page.Relative(w.from, y.WeightAddress)).put(`">`).text(y.Weight).put(`</a>`)
	}
	if y.Made != "" {
		w.put(`, `).text(y.Made)
	}
	w.put(`</dd>`)
	if y.Ball != "" {
		w.put(`<dd>A ball holds `).text(y.Ball).put(`</dd>`)
	}
	for i, need := range y.Needs {
		if i == 0 {
			w.put(`<dd>You need <b>`)
		} else {
			w.put(`<dd>or <b>`)
		}
		w.figures(need.All).put(`</b></dd>`)
	}
}

// gauges are the gauges as sentences.
func (w *writer) gauges() {
	if len(w.page.Gauges) == 0 {
		return
	}
	w.put(`<ul>`)
	for _, g := range w.page.Gauges {
		w.put(`<li>`)
		if g.Title != "" {
			w.put(`<b>`).text(g.Title).put(`</b> `)
		}
		w.text(g.Sentence).put(`</li>`)
	}
	w.put(`</ul>`)
}
