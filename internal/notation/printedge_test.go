package notation

import (
	"strings"
	"testing"

	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

// An edge is in words where a maker reads it, and under its name where it is to be read in again.
func TestPrintEdges(t *testing.T) {
	for _, c := range []struct{ line, words string }{
		{"Start: hem.left, 1 hdc in each row-end.", "the left edge of the hem, 1 hdc in each row-end"},
		{"Start: first 55 sts of back_yoke.last.", "first 55 sts of the last row of the back yoke"},
		{"Start: body.last from marker a to marker b.", "the last row of the body from marker a to marker b"},
		{"Seam: hem.last to hem.foundation.", "the last row of the hem to the foundation of the hem"},
		{"Row 1: Sl st in next st of body.left.", "Sl st in next st of the left edge of the body"},
		{"Row 1: Sl st in next 2 sts of neckline.last.", "Sl st in next 2 sts of the last row of the neckline"},
	} {
		f := source.NewFile("case.md", c.line)
		b, fs := Parse(Input{File: f, Body: source.Span{To: len(c.line)}})
		if len(fs) > 0 {
			t.Fatalf("%s: %v", c.line, fs)
		}
		var words strings.Builder
		for _, part := range Print(b.Lines[0], stitch.US).Body {
			words.WriteString(part.Text)
		}
		if words.String() != c.words {
			t.Errorf("%s reads %q, want %q", c.line, words.String(), c.words)
		}
		if again := Source(b.Lines[0], stitch.US, nil); strings.TrimSuffix(again, ".") != strings.TrimSuffix(c.line, ".") {
			t.Errorf("%s is written %q", c.line, again)
		}
	}
}
