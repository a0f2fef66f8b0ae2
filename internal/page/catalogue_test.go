package page

import (
	"slices"
	"strings"
	"testing"

	"foundrow/internal/pattern"
)

var shelf = []Card{
	{Slug: "weir", Title: "Weir Blanket", Kind: "blanket", Skill: "easy", Weights: []int{4, 5}, Released: "2025-11-30"},
	{Slug: "sluice", Title: "Sluice Hat", Kind: "hat", Skill: "easy", Weights: []int{4}, Released: "2026-01-20"},
	{Slug: "draft", Title: "Draft Socks", Kind: "socks", Skill: "complex", Weights: []int{1, 1}},
	{Slug: "eel", Title: "Eel Hat", Kind: "hat", Skill: "basic", Released: "2026-01-20"},
}

func TestCatalogues(t *testing.T) {
	pages := Catalogues(pattern.Studio{Title: "Tannery Lane"}, shelf, nil)
	var got []string
	for _, c := range pages {
		var slugs []string
		for _, card := range c.Shown {
			slugs = append(slugs, card.Slug)
		}
		got = append(got, c.Address+" | "+c.Title+" | "+c.Count+" | "+strings.Join(slugs, " "))
	}
	want := []string{
		" | All patterns | 4 patterns | draft eel sluice weir",
		"kind/hat/ | Hats | 2 patterns | eel sluice",
		"kind/blanket/ | Blankets | 1 pattern | weir",
		"kind/socks/ | Socks | 1 pattern | draft",
		"skill/basic/ | Skill: Basic | 1 pattern | eel",
		"skill/easy/ | Skill: Easy | 2 patterns | sluice weir",
		"skill/complex/ | Skill: Complex | 1 pattern | draft",
		"weight/1/ | Yarn weight: Super Fine (1) | 1 pattern | draft",
		"weight/4/ | Yarn weight: Medium (4) | 2 patterns | sluice weir",
		"weight/5/ | Yarn weight: Bulky (5) | 1 pattern | weir",
	}
	if !slices.Equal(got, want) {
		t.Errorf("the catalogue has\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	for _, c := range pages {
		var here []string
		for _, f := range c.Filters {
			for _, choice := range f.Choices {
				if choice.Here {
					here = append(here, choice.Address)
				}
			}
		}
		if on := strings.Join(here, " "); on != c.Address {
			t.Errorf("on %q the choice marked is %q", c.Address, on)
		}
	}
}

func TestNoPatternsYet(t *testing.T) {
	pages := Catalogues(pattern.Studio{}, nil, nil)
	if len(pages) != 1 || len(pages[0].Filters) != 0 || pages[0].Count != "0 patterns" {
		t.Errorf("an empty studio has %+v", pages)
	}
}
