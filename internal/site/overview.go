package site

import (
	"encoding/json"
	"slices"
	"strings"
	"sync/atomic"

	"foundrow/internal/page"
	"foundrow/internal/source"
)

// An Overview is how the whole studio stands.
type Overview struct {
	Manuscripts []Manuscript    // by part
	Findings    source.Findings // all of them, those of the manuscripts as well
	Trouble     []error         // of ours
}

// Overview works whatever is not known to hold and says how the whole studio stands. It returns nil when stop, which may be nil,
// says so before it is done.
func (p *Preview) Overview(stop func() bool) *Overview {
	results := p.all(stop)
	if results == nil {
		return nil
	}
	b, o := p.build, &Overview{Findings: slices.Clone(p.findings)}
	pages := map[string]bool{}
	for _, c := range p.catalogue(results).pages {
		pages[c.Address] = true
	}
	for i, l := range b.plan.leaves {
		m := p.manuscript(l, results[i])
		m.Title = titleOf(results[i])
		p.readings[i].worked.Store(nil)
		if m.State == Nothing && m.Findings == nil {
			continue
		}
		o.Manuscripts = append(o.Manuscripts, m)
		o.Findings = append(o.Findings, m.Findings...)
		if err := p.readings[i].trouble; err != nil {
			o.Trouble = append(o.Trouble, err)
		}
	}
	o.Findings = append(o.Findings, b.danglers(results, pages)...)
	o.Findings.Sort()
	b.Memory.keepOnly(b.parts())
	return o
}

// titleOf is the title in what a result tells the catalogue or the menu.
func titleOf(r *Result) string {
	var told struct{ Title string }
	if len(r.Summary) > 0 {
		json.Unmarshal(r.Summary, &told) // it was written by summary
	}
	return told.Title
}

// Work returns what was done so far.
func (p *Preview) Work() Work {
	var w Work
	for _, n := range [...]struct{ to, from *int64 }{
		{&w.Read, &p.build.counts.Read}, {&w.Set, &p.build.counts.Set}, {&w.Replayed, &p.build.counts.Replayed},
		{&w.Layouts, &p.build.counts.Layouts}, {&w.Catalogue, &p.build.counts.Catalogue},
	} {
		*n.to = atomic.LoadInt64(n.from)
	}
	return w
}

// Catalogue makes the page of the catalogue that has an address: "" or "kind/hat/". There is none where no pattern is of that
// kind, and none can be made while the studio is blocked.
func (p *Preview) Catalogue(address string) (Output, bool, error) {
	if p.build.blocked {
		return Output{}, false, nil
	}
	s := p.catalogue(p.all(nil))
	s.mu.Lock()
	defer s.mu.Unlock()
	if o, done := s.set[address]; done {
		return o, true, nil
	}
	i := slices.IndexFunc(s.pages, func(c page.Catalogue) bool { return c.Address == address })
	if i < 0 {
		return Output{}, false, nil
	}
	layouts, _ := p.build.layouts()
	atomic.AddInt64(&p.build.counts.Catalogue, 1)
	data, err := layouts.Catalogue(&s.pages[i])
	if err != nil {
		return Output{}, false, err
	}
	o := Output{Name: page.FileAt(address), Digest: DigestOf(data), Data: data}
	s.set[address] = o
	return o, true, nil
}

// catalogue lays out the catalogue that some results make, unless that of the preview before is still right.
func (p *Preview) catalogue(results []*Result) *shelves {
	b := p.build
	said := []string{b.Program, string(b.digests[Look{At: atStudio}]), string(b.digests[Look{At: atLayouts}]), string(b.digests[Look{At: atMenu}])}
	head := len(said)
	for i, l := range b.plan.leaves {
		if l.plain || results[i].State == Nothing || results[i].State == Unreleased {
			continue
		}
		if results[i].State == Published && b.free(l) {
			said = append(said, string(results[i].Summary))
		} else if before, stands := b.Before[l.part]; stands {
			said = append(said, string(before.Summary))
		}
	}
	from := digestOfAll(said)
	if had := p.shelves.Load(); had != nil && had.from == from {
		return had
	}
	cards := make([]page.Card, len(said)-head)
	for i, text := range said[head:] {
		json.Unmarshal([]byte(text), &cards[i]) // it was written by summary
	}
	s := &shelves{from: from, pages: page.Catalogues(b.studio, cards, b.menu), set: map[string]Output{}}
	p.shelves.Store(s)
	return s
}

// Released reports whether a manuscript is out, or needs no date to be.
func (m Manuscript) Released() bool { return m.Plain || m.State != Unreleased }

// Slug is the last part of a manuscript's address.
func (m Manuscript) Slug() string { return m.Part[strings.IndexByte(m.Part, '/')+1:] }

// Parts are the manuscripts of the studio by their parts, in their order.
func (p *Preview) Parts() []string {
	parts := make([]string, len(p.build.plan.leaves))
	for i, l := range p.build.plan.leaves {
		parts[i] = l.part
	}
	return parts
}

// File is the manuscript of a part.
func (p *Preview) File(part string) string {
	if i, is := p.places[part]; is {
		return p.build.plan.leaves[i].file
	}
	return ""
}
