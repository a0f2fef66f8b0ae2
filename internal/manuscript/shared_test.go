package manuscript_test

import (
	"testing"

	"foundrow/internal/manuscript"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// TestSharedStitches: a stitch of the studio's is a pattern's own where the pattern names it, in the pattern's terms, unless the
// pattern says itself what it is.
func TestSharedStitches(t *testing.T) {
	stitches, findings := manuscript.ReadStitches(source.NewFile("content/stitches/low.toml",
		"[special.peb]\nname = \"pebble\"\nhow = \"3 dc in next st\"\n[special.knot]\nname = \"knot\"\nhow = \"a knot of her own\"\n[special.wave]\nname = \"wave\"\nhow = \"sc in next st\"\n"))
	if len(findings) > 0 {
		t.Fatal(findings)
	}
	front := "```toml\ntitle = \"Shared\"\nkind = \"other\"\nterms = \"uk\"\n[special.wave]\nname = \"low wave\"\nhow = \"dc in next st\"\n```\n\n"
	text := front + "Work pebbles, no knots.\n\n```rows strip\nFoundation: Ch 4.\nRow 1: Dc in 2nd ch from hook and in each ch across. (3 sts)\nRow 2: Ch 1, turn, peb in each st across. (9 sts)\nRow 3: Ch 1, turn, wave in each st across.\n```\n"
	p, findings := manuscript.ReadPattern(source.NewFile("pattern.md", text), "shared", pattern.Studio{Stitches: stitches}, manuscript.Published())
	if len(findings) > 0 {
		t.Fatal(findings)
	}
	if len(p.Special) != 2 || p.Special[0].Name != "low wave" || p.Special[1].Abbr.Text != "peb" {
		t.Fatalf("the pattern has %+v", p.Special)
	}
	if peb := p.Special[1]; peb.How.Text != "3 tr in next st" || len(peb.Worked) != 1 {
		t.Errorf("peb is %q, %d clauses", peb.How.Text, len(peb.Worked))
	}
}
