package manuscript

import (
	"testing"

	"foundrow/internal/pattern"
)

func TestPullover(t *testing.T) {
	f := readFile(t, "pullover.md")
	p, fs := ReadPattern(f, "millrace", pattern.Studio{}, Published())
	must(t, fs)
	_ = p
}
