// Package manuscript reads the files of a studio into values: patterns, plain pages, size tables, shared stitches, studio.toml.
//
// It takes texts and returns what they say, with a finding for everything that cannot stand; it opens no file (package site
// does), works no value (package grade does) and reads no row of crochet (package notation does). It alone knows Markdown and
// TOML: everybody else sees packages pattern and prose.
package manuscript

import (
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// ReadPattern reads content/patterns/<slug>/pattern.md. It always returns a pattern, as much of it as could be read.
func ReadPattern(f *source.File, slug string, studio pattern.Studio, tables Tables) (*pattern.Pattern, source.Findings) {
	return &pattern.Pattern{Slug: slug, File: f, Tape: studio.Tape}, nil
}

// ReadPlain reads content/pages/<slug>.md.
func ReadPlain(f *source.File, slug string, studio pattern.Studio) (*pattern.Plain, source.Findings) {
	return &pattern.Plain{Pattern: pattern.Pattern{Slug: slug, File: f, Tape: studio.Tape}}, nil
}

// ReadStudio reads content/studio.toml.
func ReadStudio(f *source.File) (pattern.Studio, source.Findings) {
	return pattern.Studio{File: f}, nil
}

// ReadStitches reads content/stitches/<name>.toml.
func ReadStitches(f *source.File) ([]pattern.Special, source.Findings) { return nil, nil }

// SizeTable is a table of body measurements.
type SizeTable struct{ Name string }

// Tables are the size tables a pattern may name.
type Tables struct{ list []SizeTable }

// Published returns the built-in tables.
func Published() Tables { return Tables{} }

// With returns the tables with a studio's own, which replace those of the same name.
func (t Tables) With(own ...SizeTable) Tables { return t }

// ReadSizes reads content/sizes/<table>.toml.
func ReadSizes(f *source.File) (SizeTable, source.Findings) { return SizeTable{}, nil }
