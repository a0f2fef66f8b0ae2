package site

import (
	"encoding/json"
	"slices"
	"strings"
	"sync/atomic"

	"foundrow/internal/page"
)

// catalogue makes the pages of the catalogue from the cards of what is published, and returns their addresses.
func (b *build) catalogue(s *Site) (map[string]bool, error) {
	const part = "catalogue"
	if b.blocked {
		return b.oldCatalogue(s, part), nil
	}
	var cards []string
	for _, p := range s.Parts {
		if strings.HasPrefix(p.Name, "patterns/") {
			cards = append(cards, string(p.Summary))
		}
	}
	b.digests[Look{At: atCards}] = digestOfAll(cards)
	r := b.recalled(part)
	if r == nil {
		l := looks{build: b}
		for _, at := range [...]At{atProgram, atStudio, atLayouts, atMenu, atCards} {
			l.at(at, "")
		}
		r = &Result{Looks: l.list}
		if err := b.setCatalogue(r, cards); err != nil {
			return nil, err
		}
		b.Memory.keep(part, r)
	}
	s.Parts = append(s.Parts, Part{Name: part, Uses: b.assets, Outputs: names(r.Outputs)})
	return addressesOf(names(r.Outputs)), nil
}

func (b *build) setCatalogue(r *Result, texts []string) error {
	cards := make([]page.Card, len(texts))
	for i, text := range texts {
		if err := json.Unmarshal([]byte(text), &cards[i]); err != nil {
			return err
		}
	}
	layouts, _ := b.layouts()
	for _, c := range page.Catalogues(b.studio, cards, b.menu) {
		atomic.AddInt64(&b.counts.Catalogue, 1)
		data, err := layouts.Catalogue(&c)
		if err != nil {
			return err
		}
		if err := b.put(r, Output{Name: page.FileAt(c.Address), Digest: DigestOf(data), Data: data}); err != nil {
			return err
		}
	}
	return nil
}

// oldCatalogue keeps the catalogue that was published before.
func (b *build) oldCatalogue(s *Site, part string) map[string]bool {
	before, stands := b.Before[part]
	if stands {
		s.Parts = append(s.Parts, Part{part, before.Uses, before.Summary, before.Outputs})
		if !slices.ContainsFunc(s.Parts, func(p Part) bool { return p.Name == before.Uses }) {
			s.Parts = append(s.Parts, Part{Name: before.Uses, Outputs: b.Before[before.Uses].Outputs})
		}
	}
	return addressesOf(before.Outputs)
}

func addressesOf(outputs []string) map[string]bool {
	all := map[string]bool{}
	for _, name := range outputs {
		all[strings.TrimSuffix(name, "index.html")] = true
	}
	return all
}
