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
)

// A Page is a pattern, or a plain page of the studio, ready to be set.
type Page struct {
	Studio  Studio
	Menu    []Link // the studio's plain pages; empty until the one who knows them all fills it in
	Address string
	Print   string // the address of the printable page; empty when there is none

	Slug, Title, Summary string
	Kind, Skill          string
	Weights              []int
	Version              string
	Released, Day        string // "2026-04-02", "2 April 2026"; empty while it is not out
	Terms                string // "US terms"; empty on a plain page
	GaugeWord            string // "Gauge", or "Tension" in UK terms
	Facts                []Fact
	Photos               []Photo
	Film                 Film

	Sizes         Sizes
	Yarns         []Yarn
	Hooks         []Hook
	Notions       []Notion
	Gauges        []Gauge
	Abbreviations []Abbreviation
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

// A Special is a stitch of the pattern's own.
type Special struct{ Short, Name, How string }

// A Credit names somebody and what she did.
type Credit struct{ Role, Name string }

// Of makes the page of a pattern.
func Of(g *grade.Grade, studio pattern.Studio) (*Page, source.Findings) {
	p := g.Pattern
	page, findings := textOf(g, studio)
	page.Address, page.Print = PatternAddress(p.Slug), PrintAddress(p.Slug)
	page.Kind, page.Skill = p.Kind.Text, p.Skill.Text
	page.Version, page.Released, page.Day = p.Version, p.Released, day(p.Released)
	page.Terms, page.GaugeWord = termsWords(p.Terms), capital(gaugeWord(p.Terms))
	for _, y := range p.Yarns {
		if WeightName(y.Weight) != "" {
			page.Weights = append(page.Weights, y.Weight)
		}
	}
	page.Intro, page.Text = opening(page.Text)
	page.Film = filmOf(p.Film)
	page.Sizes = sizes(g)
	page.Facts = facts(page)
	needed := amountsOf(g)
	page.Yarns, page.Hooks, page.Notions = yarns(p, needed), hooks(p), notions(p, needed)
	page.Gauges, page.Abbreviations = gauges(p), abbreviations(p)
	for _, s := range p.Special {
		page.Special = append(page.Special, Special{s.Abbr.Text, s.Name, s.How.Text})
	}
	page.Notes, page.Cautions, page.Counts = notes(p, page.Sizes), cautions(p), countsOf(g)
	page.Credits, page.Sources = credits(p), sources(p)
	return page, findings
}

// OfPlain makes a plain page: about, the handbook.
func OfPlain(g *grade.Grade, plain *pattern.Plain, studio pattern.Studio) (*Page, source.Findings) {
	page, findings := textOf(g, studio)
	page.Address = PlainAddress(plain.Slug)
	page.Version, page.Released, page.Day = plain.Version, plain.Released, day(plain.Released)
	return page, findings
}

// textOf makes what every page has: its title, and its text with the slots filled.
func textOf(g *grade.Grade, studio pattern.Studio) (*Page, source.Findings) {
	p := g.Pattern
	page := &Page{
		Studio: studioOf(studio), Slug: p.Slug, Title: p.Title.Text, Summary: p.Summary.Text,
		Text: p.Text, Slots: filled(p, g.Slots), Pieces: pieces(p),
	}
	page.Contents = contents(page)
	var findings source.Findings
	for _, photo := range p.Photos {
		if photo.Alt == "" {
			findings.Ask(p.File, photo.From.Span, "no-alt", "the photo "+photo.From.Text+" has no alt text, so a reader who cannot see it learns nothing",
				`say what it shows: alt = "the pullover from the back, worn"`)
		}
		page.Photos = append(page.Photos, Photo{photo.From.Text, photo.Alt, caption(photo)})
	}
	return page, findings
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

func termsWords(t pattern.Terms) string {
	if t == pattern.UK {
		return "UK terms"
	}
	return "US terms"
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

// contents are the headings of the highest level in the text.
func contents(p *Page) []Link {
	highest := 7
	for _, b := range p.Text {
		if h, is := b.(*prose.Heading); is {
			highest = min(highest, h.Level)
		}
	}
	var out []Link
	for _, b := range p.Text {
		if h, is := b.(*prose.Heading); is && h.Level == highest && h.ID != "" {
			out = append(out, Link{"#" + h.ID, h.Line.Words(p.words)})
		}
	}
	return out
}

func (p *Page) words(slot int) string {
	if slot < len(p.Slots) {
		return p.Slots[slot].All
	}
	return unknown
}
