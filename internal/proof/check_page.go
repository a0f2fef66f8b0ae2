package proof

import (
	"strconv"
	"strings"

	"foundrow/internal/prose"
	"foundrow/internal/source"
)

// skippedHeading finds headings more than one step below the one before: a reader who goes by headings misses the step.
// Source: W3C, Web Content Accessibility Guidelines 2.2, technique G141; skipping is advised against, not forbidden.
func skippedHeading(e *edit) []note {
	var notes []note
	last := 0
	e.headings(func(h *prose.Heading) {
		if last > 0 && h.Level > last+1 {
			notes = append(notes, note{
				span:    h.Span,
				message: "a heading of step " + strconv.Itoa(h.Level) + " follows one of step " + strconv.Itoa(last),
				fix:     "write it with " + strings.Repeat("#", last+1),
			})
		}
		last = h.Level
	})
	return notes
}

// emptyHeading finds headings without words.
func emptyHeading(e *edit) []note {
	var notes []note
	e.headings(func(h *prose.Heading) {
		if strings.TrimSpace(h.Line.Words(func(int) string { return "0" })) == "" {
			notes = append(notes, note{span: h.Span, message: "a heading says nothing", fix: "name the section, or take the heading out"})
		}
	})
	return notes
}

func (e *edit) headings(visit func(*prose.Heading)) {
	var walk func(blocks []prose.Block)
	walk = func(blocks []prose.Block) {
		for _, b := range blocks {
			switch b := b.(type) {
			case *prose.Heading:
				visit(b)
			case *prose.Quote:
				walk(b.Blocks)
			case *prose.List:
				for _, item := range b.Items {
					walk(item)
				}
			}
		}
	}
	walk(e.pattern.Text)
}

// speechless finds pictures in the text that say nothing to whoever cannot see them: without words, or with the name of the file.
func speechless(e *edit) []note {
	var notes []note
	prose.Walk(e.pattern.Text, func(l prose.Line) {
		images(l, func(i *prose.Image) {
			words := strings.TrimSpace(i.Alt.Words(nil))
			switch {
			case words == "":
				notes = append(notes, note{
					span: i.Span, message: "the picture " + i.From + " has no words for a reader who cannot see it",
					fix: "say what it shows: ![the back neck, the two raglan lines meeting it](" + i.From + ")",
				})
			case strings.Contains(i.From, words) && strings.Contains(words, "."), strings.EqualFold(words, "photo"), strings.EqualFold(words, "image"), strings.EqualFold(words, "picture"):
				notes = append(notes, note{
					span: i.Span, message: "`" + words + "` does not say what the picture shows",
					fix: "say what a maker should see in it",
				})
			}
		})
	})
	return notes
}

func images(l prose.Line, visit func(*prose.Image)) {
	for _, part := range l {
		switch part := part.(type) {
		case *prose.Image:
			visit(part)
		case *prose.Marked:
			images(part.Line, visit)
		case *prose.Link:
			images(part.Line, visit)
		}
	}
}

// unversioned finds patterns that are out and have no version: a correction could not be told from what it corrects.
func unversioned(e *edit) []note {
	if e.pattern.Released == "" || e.pattern.Version != "" {
		return nil
	}
	at := strings.Index(e.pattern.File.Text, "released")
	span := source.Span{From: max(at, 0), To: max(at, 0) + len("released")}
	return []note{{span: span, message: "the pattern is released and has no version", fix: `write version = "1.0" below it; the page prints both`}}
}

// noContact finds studios that makers cannot write to.
func noContact(e *edit) []note {
	if strings.TrimSpace(e.studio.Contact) != "" || e.studio.File == nil {
		return nil
	}
	return []note{{file: e.studio.File, message: "studio.toml has no `contact`, so that a maker who finds a mistake cannot say so", fix: `write contact = "hello@…"`}}
}
