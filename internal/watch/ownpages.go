package watch

import (
	"bytes"
	"html/template"
	"strings"

	"foundrow/internal/proof"
	"foundrow/internal/site"
	"foundrow/internal/source"
)

// An ownPage is a page of the preview's own.
type ownPage struct {
	Style   template.CSS
	Title   string
	Address string

	// With all sizes side by side.
	Sizes  []string
	Values []lineOfSizes
	Pieces []piecesOfSizes

	Phones []phone

	// Of the whole studio.
	Waiting  bool
	Lists    []group
	Findings []findingSaid
	Count    string
}

// A lineOfSizes is a value or a row in all sizes, cell by cell; one cell spans them where they agree.
type lineOfSizes struct {
	Name, Unit string
	Cells      []cell
}

type cell struct {
	Text string
	Span int // over how many sizes, where it is more than one
}

type piecesOfSizes struct {
	Title string
	Sizes []string
	Rows  []lineOfSizes
}

// A phone is a frame as wide and high as a phone's, in pixels of a page.
type phone struct {
	Title, Link   string
	Width, Height int
}

// A group is some manuscripts of one kind.
type group struct {
	Title   string
	Entries []entry
}

type entry struct{ Title, Link, Said, Mark string }

// set sets a page of the preview's own.
func (p ownPage) set(name string) ([]byte, error) {
	p.Style = own.style
	var out bytes.Buffer
	err := own.ExecuteTemplate(&out, name, p)
	return out.Bytes(), err
}

// sizesPage shows a record with all sizes side by side.
func sizesPage(title string, r *record) ownPage {
	p := ownPage{Title: title, Sizes: r.sizes}
	if len(r.sizes) == 1 && r.sizes[0] == "" {
		p.Sizes = []string{"One size"}
	}
	for _, f := range r.values {
		p.Values = append(p.Values, lineOfSizes{f.name, f.unit, cellsOf(f.bySize, len(p.Sizes))})
	}
	for _, piece := range r.pieces {
		out := piecesOfSizes{Title: piece.title, Sizes: p.Sizes}
		for _, r := range piece.rows {
			out.Rows = append(out.Rows, lineOfSizes{r.label, "", cellsOf(r.bySize, len(p.Sizes))})
		}
		p.Pieces = append(p.Pieces, out)
	}
	return p
}

func cellsOf(bySize []string, sizes int) []cell {
	if len(bySize) == 1 && sizes > 1 {
		return []cell{{bySize[0], sizes}}
	}
	cells := make([]cell, len(bySize))
	for i, text := range bySize {
		cells[i].Text = text
	}
	return cells
}

// phonePage shows a page in two widths: that of a small phone and that of a usual one.
func phonePage(title, address string) ownPage {
	return ownPage{Title: title, Phones: []phone{
		{"A small phone, 320 wide", "/" + address, 320, 640},
		{"A usual phone, 390 wide", "/" + address, 390, 780},
	}}
}

// wholePage lists all there is in the studio, those that are not out among it, with all that was found.
func (s *studio) wholePage(m *moment) ownPage {
	p := ownPage{Title: "The whole studio"}
	s.mu.Lock()
	o := s.overview
	s.mu.Unlock()
	if p.Waiting = o == nil || o.moment != m.number; o == nil {
		return p
	}
	lists := [...]group{{Title: "Patterns"}, {Title: "Not out yet"}, {Title: "Pages"}}
	for _, one := range o.Manuscripts {
		e := entry{Title: one.Title, Link: "/" + one.Address, Said: foundSaid(one.Findings)}
		if e.Title == "" {
			e.Title = one.File
		}
		if one.State == site.Faulty {
			e.Mark = "faulty"
		}
		at := 0
		switch {
		case one.Plain:
			at = 2
		case !one.Released():
			at, e.Mark = 1, "draft-line"
		}
		lists[at].Entries = append(lists[at].Entries, e)
	}
	for _, l := range lists {
		if l.Entries != nil {
			p.Lists = append(p.Lists, l)
		}
	}
	p.Count = strings.ToUpper(proof.Count(o.Findings)[:1]) + proof.Count(o.Findings)[1:]
	for _, f := range o.Findings {
		p.Findings = append(p.Findings, findingSaid{f.Severity.String(), f.Message, placeOf(f), excerpt(f), f.Fix})
	}
	return p
}

// foundSaid words what was found of a manuscript; nothing where nothing was.
func foundSaid(found source.Findings) string {
	if len(found) == 0 {
		return ""
	}
	return proof.Count(found)
}

// pageAt makes the page at an address without the band, and tells which page of the site it is about.
func (s *studio) pageAt(at string) (html []byte, v view, address string, found bool) {
	var p ownPage
	var kind string
	m := s.now.Load()
	switch {
	case at == wholeAddress:
		v, p, kind = view{moment: m, standing: good, at: m.at}, s.wholePage(m), "whole"
	case strings.HasPrefix(at, sizesAddress):
		address = addressOf(strings.TrimPrefix(at, sizesAddress))
		if v, found = s.show(address + "index.html"); found && v.record != nil && v.of != nil {
			p, kind = sizesPage(v.of.Title, v.record), "sizes"
		}
	case strings.HasPrefix(at, phoneAddress):
		address = addressOf(strings.TrimPrefix(at, phoneAddress))
		if v, found = s.show(address + "index.html"); found {
			p, kind = phonePage(titleOf(v), address), "phone"
		}
	case strings.HasPrefix(at, "/") && !strings.HasPrefix(at, ownAddress):
		address = addressOf(at[1:])
		if v, found = s.show(address + "index.html"); found {
			return v.Data, v, address, true
		}
	}
	found = kind != ""
	if !found {
		v, address = view{moment: m, standing: good, at: m.at}, ""
		p, kind = ownPage{Title: "Nothing lies here", Address: at}, "missing"
	}
	html, err := p.set(kind)
	if err != nil {
		v.trouble = err.Error()
	}
	return html, v, address, found
}

func titleOf(v view) string {
	if v.of != nil && v.of.Title != "" {
		return v.of.Title
	}
	return "The catalogue"
}
