package page

import (
	"slices"

	"foundrow/internal/formula"
	"foundrow/internal/grade"
	"foundrow/internal/pattern"
	"foundrow/internal/prose"
	"foundrow/internal/stitch"
)

// editionsOf are the terms that the pages of a pattern are in, the ones they open with first.
func editionsOf(p *pattern.Pattern, studio pattern.Studio) []pattern.Terms {
	if len(studio.Editions) == 0 {
		return []pattern.Terms{p.Terms}
	}
	return studio.Editions
}

// edition makes the page of one edition of what all editions share.
func (s *setter) edition(common *Page, needed amounts) *Page {
	p, carry := s.p, s.carrier()
	page := *common
	page.Terms, page.GaugeWord = termsWords(s.terms), capital(gaugeWord(s.terms))
	page.Facts = facts(&page)
	page.Hooks, page.Notions, page.Gauges = hooks(p, carry), notions(p, needed, carry), gauges(p, carry)
	page.Special, page.Notes = s.specials(), notes(p, page.Sizes, carry)
	s.text(&page)
	page.Intro, page.Text = opening(page.Text)
	return &page
}

func (s *setter) carrier() carrier { return carrier{s.p.Terms, s.terms} }

// text sets what a page says in running words, and its pieces.
func (s *setter) text(page *Page) {
	carry := s.carrier()
	page.Summary = carry.words(s.p.Summary.Text)
	page.Text, page.Pieces = carry.blocks(s.p.Text), s.pieces()
	page.Contents = contents(page.Text, s.slots.all)
	page.Photos = make([]Photo, len(s.p.Photos))
	for i, photo := range s.p.Photos {
		page.Photos[i] = Photo{photo.From.Text, carry.words(photo.Alt), carry.words(caption(photo))}
	}
}

// contents are the headings of the highest level in a text.
func contents(text []prose.Block, slots []Slot) []Link {
	highest := 7
	for _, b := range text {
		if h, is := b.(*prose.Heading); is {
			highest = min(highest, h.Level)
		}
	}
	var out []Link
	for _, b := range text {
		if h, is := b.(*prose.Heading); is && h.Level == highest && h.ID != "" {
			out = append(out, Link{"#" + h.ID, h.Line.Words(func(slot int) string {
				if slot < len(slots) {
					return slots[slot].All
				}
				return unknown
			})})
		}
	}
	return out
}

func termsWords(t pattern.Terms) string {
	if t == pattern.UK {
		return "UK terms"
	}
	return "US terms"
}

// gaugeWord is what the trade calls a gauge in the terms.
// Source: hilandonubes.com/crochet/info.cgi?id=3008 and three other lists of US and UK terms.
func gaugeWord(t pattern.Terms) string {
	if t == pattern.UK {
		return "tension"
	}
	return "gauge"
}

// usedInText gathers the abbreviations that a pattern uses outside of its rows.
func usedInText(g *grade.Grade) *stitch.Used {
	p, used := g.Pattern, new(stitch.Used)
	read := func(text string) { used.Read(text, p.Terms) }
	read(p.Summary.Text)
	prose.Walk(p.Text, func(l prose.Line) { readLine(l, p.Slots, read) })
	for _, h := range p.Hooks {
		read(h.Note)
	}
	for _, n := range p.Notions {
		read(n.What)
	}
	for _, photo := range p.Photos {
		read(photo.Alt)
	}
	for _, s := range p.Special {
		read(s.Name)
	}
	for _, g := range p.Gauges {
		read(carrier{p.Terms, p.Terms}.stitch(g.Stitch))
		if g.Stitches.Sign() > 0 || g.Written.Repeats > 0 {
			read("sts")
		}
	}
	for _, t := range p.Turning {
		read(t.Stitch.Text)
	}
	if slices.ContainsFunc(g.Values, func(v grade.Value) bool { return v.Role == grade.Count && v.Kind == formula.Stitches }) {
		read("sts") // of the counts and where they come from
	}
	return used
}

func readLine(l prose.Line, slots []pattern.Slot, read func(string)) {
	for _, in := range l {
		switch in := in.(type) {
		case prose.Text:
			read(string(in))
		case prose.Slot:
			if in.Index < len(slots) && slots[in.Index].Form == pattern.Counted {
				read(noun(slots[in.Index], formula.Stitches))
			}
		case *prose.Marked:
			readLine(in.Line, slots, read)
		case *prose.Link:
			readLine(in.Line, slots, read)
		case *prose.Image:
			readLine(in.Alt, slots, read)
		}
	}
}
