package site

import (
	"cmp"
	"encoding/json"
	"slices"
	"strings"

	"foundrow/internal/page"
)

// pattern brings a pattern into the site. One that is barred, or while everything is blocked, is worked for its findings alone.
func (b *build) pattern(l leaf) (*Result, error) {
	if !b.free(l) {
		return b.work(l).result(), nil
	}
	if r := b.recalled(l.part); r != nil {
		return r, nil
	}
	w := b.work(l)
	r := w.result()
	if r.State == Published {
		if err := b.set(w, r); err != nil {
			return nil, err
		}
		r.Summary = summary(w.pages[0].Card())
	}
	b.Memory.keep(l.part, r)
	return r, nil
}

// plainText reads a plain page for what it says, for the menu above all. It returns what was worked as well, unless the result
// was remembered.
func (b *build) plainText(l leaf) (*Result, *worked) {
	part := "menu/" + l.slug
	if r := b.recalled(part); r != nil {
		return r, nil
	}
	w := b.work(l)
	r := w.result()
	if r.State == Published {
		r.Summary = summary(entry{page.Link{Address: l.address, Title: w.pages[0].Title}, w.plain.Order})
	}
	b.Memory.keep(part, r)
	return r, w
}

// plainPage brings a plain page into the site, of which the text was read.
func (b *build) plainPage(l leaf, text *Result, w *worked) (*Result, error) {
	if text.State != Published || !b.free(l) {
		return text, nil
	}
	whole := *text
	if r := b.recalled(l.part); r != nil {
		whole.Outputs = r.Outputs
		return &whole, nil
	}
	if w == nil {
		w = b.work(l)
	}
	r := &Result{}
	if err := b.set(w, r); err != nil {
		return nil, err
	}
	b.Memory.keep(l.part, r)
	whole.Outputs = r.Outputs
	return &whole, nil
}

// free reports whether a leaf can be published, as far as that does not depend on what it says.
func (b *build) free(l leaf) bool { return !b.blocked && l.barred == nil }

// An entry is what a plain page tells the menu.
type entry struct {
	page.Link
	Order int `json:"order,omitzero"`
}

// openMenu makes the menu of the plain pages that are published, now or still.
func (b *build) openMenu(texts []*Result) {
	var entries []entry
	for i, l := range b.plan.leaves {
		if !l.plain {
			continue
		}
		text := texts[i].Summary
		if texts[i].State != Published || !b.free(l) {
			text = b.Before[l.part].Summary
		}
		var e entry
		if json.Unmarshal(text, &e) == nil {
			entries = append(entries, e)
		}
	}
	last := func(e entry) int { // those without a place come last
		if e.Order == 0 {
			return 1
		}
		return 0
	}
	slices.SortStableFunc(entries, func(a, b entry) int {
		return cmp.Or(cmp.Compare(last(a), last(b)), cmp.Compare(a.Order, b.Order), strings.Compare(a.Title, b.Title))
	})
	var said []string
	for _, e := range entries {
		b.menu = append(b.menu, e.Link)
		said = append(said, e.Address, e.Title)
	}
	b.digests[Look{At: atMenu}] = digestOfAll(said)
}

// collect returns what is published now: what was made, and of what has an error, what stays as it was published before.
func (b *build) collect(assets *Result, results []*Result) Site {
	var s Site
	kept := map[string]bool{}
	add := func(p Part) {
		if !kept[p.Name] {
			kept[p.Name] = true
			s.Parts = append(s.Parts, p)
		}
	}
	if !b.blocked {
		add(Part{Name: b.assets, Outputs: names(assets.Outputs)})
	}
	for i, l := range b.plan.leaves {
		r := results[i]
		before, stands := b.Before[l.part]
		switch {
		case r.State == Nothing:
			continue
		case r.State == Unreleased:
			s.Unreleased = append(s.Unreleased, l.file)
			continue
		case r.State == Published && b.free(l):
			add(Part{Name: l.part, Uses: b.assets, Summary: r.Summary, Outputs: names(r.Outputs)})
		case stands:
			s.Stayed = append(s.Stayed, l.file)
			add(Part{l.part, before.Uses, before.Summary, before.Outputs})
			add(Part{Name: before.Uses, Outputs: b.Before[before.Uses].Outputs})
		default:
			s.LeftOut = append(s.LeftOut, l.file)
			continue
		}
		if !l.plain {
			s.Patterns++
		}
	}
	return s
}

func names(outputs []Made) []string {
	all := make([]string, len(outputs))
	for i, o := range outputs {
		all[i] = o.Name
	}
	return all
}

// parts are the names under which something may be remembered of this studio.
func (b *build) parts() map[string]bool {
	all := map[string]bool{"assets": true, "catalogue": true}
	for _, l := range b.plan.leaves {
		all[l.part] = true
		if l.plain {
			all["menu/"+l.slug] = true
		}
	}
	return all
}
