// Package page holds what a reader sees, as plain values: every word, figure and list finished, nothing left to work out or to
// phrase. A page is a fixed skeleton with slots; a size is a column of strings for them.
//
// Its wording is the trade's. It knows no markup and no paper: packages web and paper set what stands here.
package page

import (
	"strconv"

	"foundrow/internal/grade"
	"foundrow/internal/pattern"
	"foundrow/internal/prose"
	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

// A Page is a pattern in the terms of one edition, or a plain page of the studio, ready to be set.
type Page struct {
	Studio  Studio
	Menu    []Link // the studio's plain pages; empty until the one who knows them all fills it in
	Address string
	Beside  string // the address where its photos and other files lie: that of its first edition
	Print   string // the address of the printable page; empty when there is none

	Slug, Title, Summary string
	Kind, Skill          string
	Weights              []int
	Version              string
	Released, Day        string // "2026-04-02", "2 April 2026"; empty while it is not out
	Terms                string // "US terms"; empty on a plain page
	GaugeWord            string // "Gauge", or "Tension" in UK terms
	Editions             []Edition
	Facts                []Fact
	Photos               []Photo
	Film                 Film

	Sizes         Sizes
	Yarns         []Yarn
	Hooks         []Hook
	Notions       []Notion
	Gauges        []Gauge
	Abbreviations []stitch.Abbreviation
	Special       []Special
	Notes         []string
	Cautions      []Caution
	Counts        []Count

	Contents []Link        // the first headings of the text
	Intro    []prose.Block // what a pattern's text says before its first heading
	Text     []prose.Block // the rest, or the whole of a plain page
	Slots    []Slot
	Pieces   []Piece

	Credits []Credit
	Sources []string // of the tables used, in the words their owners ask for
}

// An Edition is the same pattern in other terms.
type Edition struct {
	Terms   string // "UK terms"
	Address string
	Print   string
}

// A Studio is whose pages these are.
type Studio struct {
	Title, Address, Language string
	Rights                   string
	Contact, ContactLink     string // "hello@example.org", "mailto:hello@example.org"
}

// A Link is a page or a place and its name.
type Link struct {
	Address string `json:"address"`
	Title   string `json:"title"`
}

// A Fact is one line of what a pattern is, with the page of the catalogue that shows the like of it.
type Fact struct{ Label, Value, Address string }

// A Photo is a picture beside the page.
type Photo struct{ File, Alt, Caption string }

// A Credit names somebody and what she did.
type Credit struct{ Role, Name string }

// Of makes the pages of a pattern: one in the terms of each edition of the studio, those that a page opens with first. Without
// editions there is one page, in the pattern's own terms.
func Of(g *grade.Grade, studio pattern.Studio) ([]*Page, source.Findings) {
	p := g.Pattern
	common, slots, findings := basis(g, studio)
	common.Beside = PatternAddress(p.Slug)
	common.Kind, common.Skill = p.Kind.Text, p.Skill.Text
	common.Version, common.Released, common.Day = p.Version, p.Released, day(p.Released)
	for _, y := range p.Yarns {
		if WeightName(y.Weight) != "" {
			common.Weights = append(common.Weights, y.Weight)
		}
	}
	common.Film, common.Sizes = filmOf(p.Film), sizes(g)
	needed := amountsOf(g)
	common.Yarns, common.Cautions, common.Counts = yarns(p, needed), cautions(p), countsOf(g)
	common.Credits, common.Sources = credits(p), sources(p)

	editions, worked, used := editionsOf(p, studio), workedPieces(g, slots), usedInText(g)
	pages := make([]*Page, len(editions))
	for i, terms := range editions {
		s := newSetter(p, terms, worked, slots)
		if i == 0 {
			s.used = used
		}
		pages[i] = s.edition(common, needed)
		pages[i].Address = editionAddress(p.Slug, terms, i == 0)
		pages[i].Print = PrintAddress(pages[i].Address)
	}
	for i, page := range pages {
		page.Slots, page.Abbreviations = slots.all, used.Abbreviations(editions[i])
		for _, other := range pages {
			if other != page {
				page.Editions = append(page.Editions, Edition{other.Terms, other.Address, other.Print})
			}
		}
	}
	return pages, findings
}

// OfPlain makes a plain page: about, the handbook.
func OfPlain(g *grade.Grade, plain *pattern.Plain, studio pattern.Studio) (*Page, source.Findings) {
	page, slots, findings := basis(g, studio)
	page.Address = PlainAddress(plain.Slug)
	page.Beside = page.Address
	page.Version, page.Released, page.Day = plain.Version, plain.Released, day(plain.Released)
	s := newSetter(g.Pattern, g.Pattern.Terms, workedPieces(g, slots), slots)
	s.text(page)
	page.Slots = slots.all
	return page, findings
}

// basis makes what every page has and every edition shares: its title, its photos, and the values of its text.
func basis(g *grade.Grade, studio pattern.Studio) (*Page, *slotList, source.Findings) {
	p := g.Pattern
	page := &Page{Studio: studioOf(studio), Slug: p.Slug, Title: p.Title.Text}
	slots := &slotList{g: g, all: filled(p, g.Slots), made: map[madeSlot]int{}}
	var findings source.Findings
	for _, photo := range p.Photos {
		if photo.Alt == "" {
			findings.Ask(p.File, photo.From.Span, "no-alt", "the photo "+photo.From.Text+" has no alt text, so a reader who cannot see it learns nothing",
				`say what it shows: alt = "the pullover from the back, worn"`)
		}
	}
	return page, slots, findings
}

// opening cuts the text before its first heading. A text without headings, or one that works before the first, has no opening.
func opening(text []prose.Block) (intro, rest []prose.Block) {
	for i, b := range text {
		switch b.(type) {
		case *prose.Heading:
			return text[:i], text[i:]
		case *prose.Piece:
			return nil, text
		}
	}
	return nil, text
}

func studioOf(s pattern.Studio) Studio {
	out := Studio{Title: s.Title, Address: s.Address, Language: s.Language, Rights: s.Rights, Contact: s.Contact, ContactLink: contactLink(s.Contact)}
	if out.Language == "" {
		out.Language = "en"
	}
	return out
}

// facts are the lines at the head of a pattern.
func facts(p *Page) []Fact {
	var out []Fact
	add := func(label, value, address string) {
		if value != "" {
			out = append(out, Fact{label, value, address})
		}
	}
	add("Kind", capital(p.Kind), FilterAddress(byKind, p.Kind))
	add("Skill", capital(p.Skill), FilterAddress(bySkill, p.Skill))
	for i, w := range p.Weights {
		if i == 0 || w != p.Weights[i-1] {
			add("Yarn weight", WeightName(w), FilterAddress(byWeight, strconv.Itoa(w)))
		}
	}
	add("Sizes", p.Sizes.Range, "")
	add("Written in", p.Terms, "")
	add("Version", p.Version, "")
	add("Released", p.Day, "")
	return out
}
