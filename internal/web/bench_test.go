package web

import "testing"

// BenchmarkPattern sets a garment in nine sizes: 100 µs for a page of 24 KB is the most it may take.
func BenchmarkPattern(b *testing.B) {
	l, findings := Load(nil)
	if len(findings) > 0 {
		b.Fatal(findings)
	}
	p := pullover(b)
	out, err := l.Pattern(p)
	if err != nil {
		b.Fatal(err)
	}
	b.SetBytes(int64(len(out)))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := l.Pattern(p); err != nil {
			b.Fatal(err)
		}
	}
}
