package page

import "slices"

// A Card is the summary of a page that the catalogue, the feed and links to it take, so that they need not have the page.
type Card struct {
	Slug     string `json:"slug"`
	Title    string `json:"title"`
	Summary  string `json:"summary,omitempty"`
	Kind     string `json:"kind,omitempty"`
	Skill    string `json:"skill,omitempty"`
	Weights  []int  `json:"weights,omitempty"` // standard yarn weights
	Released string `json:"released,omitempty"`
	Version  string `json:"version,omitempty"`
	Sizes    string `json:"sizes,omitempty"` // "XS to 5X"
	Photo    string `json:"photo,omitempty"` // the file beside the page
	Alt      string `json:"alt,omitempty"`
}

// Card returns the page's summary.
func (p *Page) Card() Card {
	c := Card{
		Slug: p.Slug, Title: p.Title, Summary: p.Summary, Kind: p.Kind, Skill: p.Skill, Weights: p.Weights,
		Released: p.Released, Version: p.Version, Sizes: p.Sizes.Range,
	}
	if len(p.Photos) > 0 {
		c.Photo, c.Alt = p.Photos[0].File, p.Photos[0].Alt
	}
	return c
}

// Tags are what a card says of its pattern in a few words each: "Hat", "Easy", "Light (3)", "XS to 5X".
func (c Card) Tags() []string {
	var out []string
	for _, tag := range append([]string{capital(c.Kind), capital(c.Skill), c.Sizes}, c.weightNames()...) {
		if tag != "" {
			out = append(out, tag)
		}
	}
	return out
}

func (c Card) weightNames() []string {
	var out []string
	for _, w := range c.Weights {
		out = append(out, WeightName(w))
	}
	return slices.Compact(out)
}
