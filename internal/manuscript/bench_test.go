package manuscript

import (
	"testing"

	"github.com/BurntSushi/toml"
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

// BenchmarkReadPattern reads a whole pattern. BenchmarkLibraries is what packages goldmark and toml take of that: the rest is
// places, keys, formulas and the tree of package prose.
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

func BenchmarkLibraries(b *testing.B) {
	f := sixKB(b)
	var fs source.Findings
	cut := cutFront(f, true, &fs)
	b.Run("goldmark", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			markdown.Parse(text.NewReader([]byte(f.Text[cut.rest:])))
		}
	})
	b.Run("toml", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			var values map[string]any
			if _, err := toml.Decode(f.Slice(cut.toml), &values); err != nil {
				b.Fatal(err)
			}
		}
	})
}
