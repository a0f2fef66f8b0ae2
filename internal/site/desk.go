package site

import (
	"slices"

	"foundrow/internal/grade"
	"foundrow/internal/page"
	"foundrow/internal/proof"
	"foundrow/internal/source"
)

// A Desk is a studio laid open to look into; nothing of it is published.
type Desk struct {
	build    *build
	findings source.Findings // of what all patterns share
}

// Open lays a studio open. Its error is ErrNoStudio.
func Open(files Files) (*Desk, error) {
	b := &build{Job: Job{Files: files}}
	findings, err := b.open()
	if err != nil {
		return nil, err
	}
	return &Desk{b, findings}, nil
}

// Patterns returns the names of the patterns in their order.
func (d *Desk) Patterns() []string {
	var slugs []string
	for _, l := range d.build.plan.leaves {
		if !l.plain {
			slugs = append(slugs, l.slug)
		}
	}
	return slugs
}

// Pattern works one pattern. The grade is nil where there is no text to work.
func (d *Desk) Pattern(slug string) (*grade.Grade, source.Findings) {
	findings := slices.Clone(d.findings)
	var worked *grade.Grade
	for _, l := range d.build.plan.leaves {
		if !l.plain && l.slug == slug {
			w := d.build.work(l)
			worked, findings = w.grade, append(append(findings, w.findings...), l.barred...)
		}
	}
	findings.Sort()
	return worked, findings
}

// Proof works the patterns of some names, or the whole studio with its pages and layouts if there are none, and returns an entry
// for each pattern, without its findings, which are all in the list. Patterns that are not released are proofread like others.
func (d *Desk) Proof(slugs []string) ([]proof.Pattern, source.Findings) {
	b := d.build
	whole := len(slugs) == 0
	leaves := b.plan.leaves
	if !whole {
		leaves = slices.DeleteFunc(slices.Clone(leaves), func(l leaf) bool { return l.plain || !slices.Contains(slugs, l.slug) })
	}
	n := len(leaves)
	results, entries, cards := make([]*Result, n), make([]proof.Pattern, n), make([]page.Card, n)
	each(leaves, nil, func(i int, l leaf) error {
		w := b.work(l)
		results[i], entries[i] = w.result(), proof.Of(l.slug, w.grade)
		if len(w.pages) > 0 {
			cards[i] = w.pages[0].Card()
		}
		return nil
	})
	findings := slices.Clone(d.findings)
	patterns, out := make([]proof.Pattern, 0, n), make([]page.Card, 0, n)
	for i, l := range leaves {
		findings = append(append(findings, results[i].Findings...), l.barred...)
		if l.plain {
			continue
		}
		patterns = append(patterns, entries[i])
		if results[i].State == Published {
			out = append(out, cards[i])
		}
	}
	if whole {
		b.openLayouts(&findings)
		_, mistakes := b.layouts()
		findings = append(append(findings, mistakes...), b.danglers(results, b.shelves(out))...)
	}
	findings.Sort()
	return patterns, findings
}

// shelves are the addresses of the catalogue's pages that some cards make.
func (b *build) shelves(cards []page.Card) map[string]bool {
	all := map[string]bool{}
	for _, c := range page.Catalogues(b.studio, cards, nil) {
		all[c.Address] = true
	}
	return all
}
