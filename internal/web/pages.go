package web

import (
	"bytes"
	"html/template"
	"strings"

	"foundrow/internal/page"
)

// A Setting is what templates are given. Words are as a reader sees them; the blocks of type HTML are finished markup, ready to
// be put in place, and empty where there is nothing to show. Everything is worked out before a template begins: templates
// choose and order, and do no arithmetic.
type Setting struct {
	Studio        page.Studio
	Title         string // of the window: "Millrace Pullover · Tannery Lane"
	Description   string
	Canonical     string        // the page's full address, where the studio's is known
	Style, Script string        // links; Script is empty where there is none
	Home          string        // the link to the front page
	Menu          template.HTML // the studio's plain pages, as many as there is room for
	Pages         template.HTML // all of them, where they are more
	Foot          template.HTML // rights, whom to write to, whose tables were used

	// Of a pattern and of a plain page. Key to Credits are empty on a plain page.
	Pattern       *page.Page
	Editions      []Edition
	Print         string // the link to the page for printing
	Back          string // the link from it to the page for the screen
	Running       string // the line at the foot of every printed sheet
	Photo, Photos template.HTML
	Intro         template.HTML // what is said before the instructions
	Text          template.HTML
	Key           template.HTML // which place in a list is which size
	Facts         template.HTML
	Contents      template.HTML
	Cautions      template.HTML
	Sizes         template.HTML
	Materials     template.HTML
	Gauges        template.HTML
	Abbreviations template.HTML
	Special       template.HTML
	Notes         template.HTML
	Counts        template.HTML
	Credits       template.HTML

	// Of a page of the catalogue.
	Catalogue *page.Catalogue
	Filters   template.HTML
	Cards     template.HTML
}

// An Edition leads to the same page in other terms.
type Edition struct {
	Terms string // "UK terms"
	Link  string
	Full  string // the same, as the studio's address has it where that is known
}

// usual is the room made for a page before it is set: most pattern pages fit.
const usual = 32 << 10

// Pattern sets a pattern's page.
func (l *Layouts) Pattern(p *page.Page) ([]byte, error) {
	s, w := l.pattern.begin(p.Studio, p.Address, p.Title, p.Menu)
	s.Pattern, s.Description = p, p.Summary
	s.Print = page.Relative(p.Address, p.Print)
	for _, e := range p.Editions {
		s.Editions = append(s.Editions, editionOf(p.Studio, e.Terms, p.Address, e.Address))
	}
	w.page = p
	w.pattern(s)
	w.cut(&s.Photos).photos(p.Photos)
	w.cut(&s.Contents).contents()
	w.cut(&s.Counts).counts()
	return l.pattern.set(s, w)
}

// Print sets a pattern's page for paper.
func (l *Layouts) Print(p *page.Page) ([]byte, error) {
	s, w := l.paper.begin(p.Studio, p.Print, p.Title, nil)
	s.Pattern = p
	s.Canonical = canonical(p.Studio, p.Address)
	s.Back = page.Relative(p.Print, p.Address)
	for _, e := range p.Editions {
		s.Editions = append(s.Editions, editionOf(p.Studio, e.Terms, p.Print, e.Print))
	}
	s.Running = p.Title
	if p.Version != "" {
		s.Running += ", version " + p.Version
	}
	w.page = p
	w.pattern(s)
	w.cut(&s.Photo).photos(p.Photos[:min(1, len(p.Photos))])
	return l.paper.set(s, w)
}

// pattern writes the blocks that the page for the screen and the one for paper share.
func (w *writer) pattern(s *Setting) {
	w.cut(&s.Facts).facts()
	w.cut(&s.Cautions).cautions()
	w.cut(&s.Sizes).sizes()
	w.cut(&s.Materials).materials()
	w.cut(&s.Gauges).gauges()
	w.cut(&s.Abbreviations).abbreviations()
	w.cut(&s.Special).special()
	w.cut(&s.Notes).notes()
	w.cut(&s.Key).key()
	w.cut(&s.Intro).blocks(w.page.Intro)
	w.cut(&s.Text).written(2)
	w.cut(&s.Credits).credits()
	w.cut(&s.Foot).foot(s.Studio, w.page.Sources)
}

// Plain sets a plain page.
func (l *Layouts) Plain(p *page.Page) ([]byte, error) {
	s, w := l.plain.begin(p.Studio, p.Address, p.Title, p.Menu)
	s.Pattern, s.Description = p, p.Summary
	w.page = p
	w.cut(&s.Photos).photos(p.Photos)
	w.cut(&s.Text).written(1)
	w.cut(&s.Foot).foot(p.Studio, p.Sources)
	return l.plain.set(s, w)
}

// Catalogue sets one page of the catalogue.
func (l *Layouts) Catalogue(c *page.Catalogue) ([]byte, error) {
	s, w := l.catalogue.begin(c.Studio, c.Address, c.Title, c.Menu)
	s.Catalogue = c
	if c.Address == "" {
		s.Title = c.Studio.Title
	}
	w.cut(&s.Filters).filters(c)
	w.cut(&s.Cards).cards(c)
	w.cut(&s.Foot).foot(c.Studio, nil)
	return l.catalogue.set(s, w)
}

// begin makes what every page has around it.
func (sh *sheet) begin(studio page.Studio, address, title string, menu []page.Link) (*Setting, *writer) {
	s := &Setting{
		Studio: studio, Title: title, Canonical: canonical(studio, address),
		Home: page.Relative(address, ""), Style: page.Relative(address, sh.style),
	}
	if studio.Title != "" && studio.Title != title {
		s.Title += " · " + studio.Title
	}
	if sh.script != "" {
		s.Script = page.Relative(address, sh.script)
	}
	w := &writer{from: address, b: make([]byte, 0, usual)}
	w.cut(&s.Menu).menu(menu)
	w.cut(&s.Pages).pages(menu)
	return s, w
}

// set cuts the blocks and puts them into the template.
func (sh *sheet) set(s *Setting, w *writer) ([]byte, error) {
	w.finish()
	b := bytes.NewBuffer(make([]byte, 0, len(w.b)+4<<10))
	if err := sh.template.Execute(b, s); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

func editionOf(studio page.Studio, terms, from, to string) Edition {
	e := Edition{Terms: terms, Link: page.Relative(from, to)}
	if e.Full = canonical(studio, to); e.Full == "" {
		e.Full = e.Link
	}
	return e
}

func canonical(studio page.Studio, address string) string {
	if studio.Address == "" {
		return ""
	}
	return strings.TrimSuffix(studio.Address, "/") + "/" + address
}
