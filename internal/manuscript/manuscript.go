// Package manuscript reads the files of a studio into values: patterns, plain pages, size tables, shared stitches, studio.toml.
//
// It takes texts and returns what they say, with a finding for everything that cannot stand; it opens no file (package site
// does), works no value (package grade does) and reads no row of crochet (package notation does). It alone knows Markdown and
// TOML: everybody else sees packages pattern and prose.
package manuscript

import (
	"foundrow/internal/pattern"
	"foundrow/internal/prose"
	"foundrow/internal/source"
)

// ReadPattern reads content/patterns/<slug>/pattern.md. It always returns a pattern, as much of it as could be read.
func ReadPattern(f *source.File, slug string, studio pattern.Studio, tables Tables) (*pattern.Pattern, source.Findings) {
	p := &pattern.Pattern{Slug: slug, File: f, Tape: studio.Tape, Terms: studio.Terms, Sizes: pattern.Sizes{Sample: -1}}
	var fs source.Findings
	cut := cutFront(f, true, &fs)
	p.Partial = !cut.has
	if cut.has {
		r := newReader(f, cut, p, tables, &fs)
		walk(r, patternKeys, r.root, p, "the front matter")
		p.Partial = !r.whole
		fs = append(fs, r.fs...)
	}
	if p.Wearer == "" {
		p.Wearer = p.Sizes.Wearer
	}
	if p.Wearer == "" {
		p.Wearer = pattern.None
	}
	fs = append(fs, readText(f, cut.rest, p)...)
	p.Special = append(p.Special, shared(p, f.Text[cut.rest:], studio.Stitches)...)
	fs = append(fs, readRows(p)...)
	fs.Sort()
	return p, fs
}

// ReadPlain reads content/pages/<slug>.md: a text with or without front matter. A page that gives no title has that of its first
// heading, which then stands over it and no longer in it.
func ReadPlain(f *source.File, slug string, studio pattern.Studio) (*pattern.Plain, source.Findings) {
	p := &pattern.Plain{Pattern: pattern.Pattern{Slug: slug, File: f, Tape: studio.Tape, Terms: studio.Terms, Wearer: pattern.None, Sizes: pattern.Sizes{Sample: -1}}}
	var fs source.Findings
	cut := cutFront(f, false, &fs)
	if cut.has {
		r := newReader(f, cut, &p.Pattern, Tables{}, &fs)
		walk(r, plainKeys, r.root, p, "the front matter of a page")
		p.Partial = !r.whole
		fs = append(fs, r.fs...)
	}
	fs = append(fs, readText(f, cut.rest, &p.Pattern)...)
	fs = append(fs, readRows(&p.Pattern)...)
	if p.Title.Text == "" && len(p.Text) > 0 {
		if h, ok := p.Text[0].(*prose.Heading); ok {
			p.Title = pattern.Words{Text: h.Line.Words(nil), Span: h.Span}
			p.Text = p.Text[1:]
		}
	}
	if p.Title.Text == "" {
		fs.Report(f, source.At(cut.rest), "missing-key", "the page has no title", "begin it with a heading: # About")
	}
	fs.Sort()
	return p, fs
}

// newReader reads the TOML of a front matter and makes ready for its keys.
func newReader(f *source.File, cut front, p *pattern.Pattern, tables Tables, fs *source.Findings) *reader {
	root, whole, found := readTOML(f, cut.toml)
	*fs = append(*fs, found...)
	return &reader{file: f, root: root, block: cut.open, whole: whole, scope: scope{p: p, tables: tables, taken: map[string]source.Span{}}}
}
