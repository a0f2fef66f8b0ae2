package manuscript

import (
	"strings"
	"testing"

	"github.com/yuin/goldmark/text"

	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// sixKB is a pattern of the usual size: the pullover with as many paragraphs more as fill it up.
func sixKB(b *testing.B) *source.File {
	words := readFile(b, "pullover.md").Text
	for len(words) < 6<<10 {
		words += "\nWork {front} sts in the back loops, then *turn* and [go on](#hem) until the piece measures {chest - 4 cm}, ending with a row of {hem} sts.\n"
	}
	return source.NewFile("pattern.md", words)
}

// BenchmarkReadPattern reads a whole pattern; BenchmarkMarkdownAlone is what package goldmark takes of that, and
// BenchmarkFrontMatter what its front matter takes.
func BenchmarkReadPattern(b *testing.B) {
	f := sixKB(b)
	tables := Published()
	b.SetBytes(int64(len(f.Text)))
	b.ReportAllocs()
	for b.Loop() {
		if _, fs := ReadPattern(f, "millrace", pattern.Studio{}, tables); len(fs) > 0 {
			b.Fatal(fs)
		}
	}
}

func BenchmarkMarkdownAlone(b *testing.B) {
	f := sixKB(b)
	var fs source.Findings
	cut := cutFront(f, true, &fs)
	b.SetBytes(int64(len(f.Text)))
	b.ReportAllocs()
	for b.Loop() {
		markdown.Parse(text.NewReader([]byte(f.Text[cut.rest:])))
	}
}

func BenchmarkFrontMatter(b *testing.B) {
	f := sixKB(b)
	var fs source.Findings
	cut := cutFront(f, true, &fs)
	head := source.NewFile("pattern.md", strings.Clone(f.Text[:cut.rest]))
	tables := Published()
	b.ReportAllocs()
	for b.Loop() {
		ReadPattern(head, "millrace", pattern.Studio{}, tables)
	}
}
