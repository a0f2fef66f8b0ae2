package proof

import (
	"path/filepath"
	"testing"

	"foundrow/internal/grade"
	"foundrow/internal/manuscript"
)

// BenchmarkCheck is the technical edit of one worked pattern, the nine-size garment of the demonstration studio.
func BenchmarkCheck(b *testing.B) {
	studio, _ := manuscript.ReadStudio(readFile(b, content+"/studio.toml"))
	name := filepath.Join(content, "patterns", "orfleet-pullover", "pattern.md")
	p, _ := manuscript.ReadPattern(readFile(b, name), "orfleet-pullover", studio, manuscript.Published())
	g, _ := grade.Work(p)
	b.ReportAllocs()
	for b.Loop() {
		Check(g, studio)
	}
}
