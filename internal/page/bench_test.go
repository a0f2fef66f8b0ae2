package page

import (
	"os"
	"testing"

	"foundrow/internal/grade"
	"foundrow/internal/manuscript"
	"foundrow/internal/pattern"
)

// BenchmarkOf words the nine-size garment of the demonstration studio, in its own terms and in both.
func BenchmarkOf(b *testing.B) {
	data, err := os.ReadFile("../../content/patterns/orfleet-pullover/pattern.md")
	if err != nil {
		b.Fatal(err)
	}
	file, _ := manuscript.CheckText("pattern.md", data)
	p, _ := manuscript.ReadPattern(file, "orfleet-pullover", pattern.Studio{}, manuscript.Published())
	g, _ := grade.Work(p)
	for name, studio := range map[string]pattern.Studio{"own": {}, "both": bothTerms} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if pages, _ := Of(g, studio); len(pages[0].Slots) < 80 {
					b.Fatal("slots are missing")
				}
			}
		})
	}
}
