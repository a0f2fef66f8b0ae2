// Package source holds the files a designer wrote, places in them, and the findings that point at those places.
//
// A finding is for the designer; an error is the machine failing; a panic is our bug. Source knows nothing of what
// a file says: package manuscript reads it.
package source

import (
	"sort"
	"strings"
	"unicode/utf8"
)

// A File is one text file of a studio, as it was read. Text is never changed, so offsets stay those of the file.
type File struct {
	Name string // slash-separated, relative to where the command was run from
	Text string

	lines []int // offset at which each line begins
}

// NewFile returns the file with its lines indexed.
func NewFile(name, text string) *File {
	lines := make([]int, 1, 1+strings.Count(text, "\n"))
	for i := range len(text) {
		if text[i] == '\n' {
			lines = append(lines, i+1)
		}
	}
	return &File{Name: name, Text: text, lines: lines}
}

// A Span is a run of bytes in a file, From inclusive, To exclusive. The zero Span is the start of the file.
type Span struct{ From, To int }

// At returns the empty span at an offset.
func At(offset int) Span { return Span{offset, offset} }

// Through returns the span from the start of s to the end of t.
func (s Span) Through(t Span) Span { return Span{s.From, t.To} }

// Shift returns the span moved by n bytes: what a parser of part of a file found, in the whole file.
func (s Span) Shift(n int) Span { return Span{s.From + n, s.To + n} }

// A Place is a span as a person finds it: the file, the line and the column, both from 1, the column in characters.
// Text is the whole line and Width the number of characters to underline, so that a finding can be shown long after
// the file was forgotten.
type Place struct {
	File   string
	Line   int
	Column int
	Width  int
	Text   string
}

// Place resolves a span. A span outside the file is moved to its nearer end; one over several lines is underlined to
// the end of its first.
func (f *File) Place(s Span) Place {
	if f == nil {
		return Place{}
	}
	from := min(max(s.From, 0), len(f.Text))
	to := min(max(s.To, from), len(f.Text))
	line := sort.Search(len(f.lines), func(i int) bool { return f.lines[i] > from })
	start, end := 0, len(f.Text)
	if line > 0 {
		start = f.lines[line-1]
	}
	if line < len(f.lines) {
		end = f.lines[line] - 1
	}
	to = min(to, max(end, from))
	return Place{
		File:   f.Name,
		Line:   max(line, 1),
		Column: 1 + utf8.RuneCountInString(f.Text[start:from]),
		Width:  utf8.RuneCountInString(f.Text[from:to]),
		Text:   strings.TrimRight(f.Text[start:max(end, start)], "\r"),
	}
}

// Slice returns the text of a span.
func (f *File) Slice(s Span) string {
	from := min(max(s.From, 0), len(f.Text))
	return f.Text[from:min(max(s.To, from), len(f.Text))]
}
