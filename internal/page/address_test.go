package page

import (
	"path"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestRelative(t *testing.T) {
	for _, c := range []struct{ from, to, want string }{
		{"", "patterns/hat/", "patterns/hat/index.html"},
		{"", "", "index.html"},
		{"patterns/hat/", "", "../../index.html"},
		{"patterns/hat/", "patterns/hat/", "index.html"},
		{"patterns/hat/", "patterns/hat/print/", "print/index.html"},
		{"patterns/hat/", "patterns/hatch/", "../hatch/index.html"},
		{"patterns/hat/print/", "patterns/hat/front.jpg", "../front.jpg"},
		{"patterns/hat/", "assets/pattern-1f.css", "../../assets/pattern-1f.css"},
		{"kind/hat/", "weight/3/", "../../weight/3/index.html"},
		{"about/", "handbook/#rounding", "../handbook/index.html#rounding"},
	} {
		if got := Relative(c.from, c.to); got != c.want {
			t.Errorf("from %q to %q: %q, want %q", c.from, c.to, got, c.want)
		}
	}
}

// Followed from the page it stands on, a relative link leads to the file it was made for.
func TestRelativeLeadsThere(t *testing.T) {
	address := rapid.Custom(func(t *rapid.T) string {
		parts := rapid.SliceOfN(rapid.SampledFrom([]string{"patterns", "hat", "hatch", "print", "kind", "a"}), 0, 4).Draw(t, "parts")
		return strings.Join(append(parts, ""), "/")
	})
	rapid.Check(t, func(t *rapid.T) {
		from, to := address.Draw(t, "from"), address.Draw(t, "to")
		if got := path.Join("/", from, Relative(from, to)); got != "/"+FileAt(to) {
			t.Fatalf("from %q the link to %q leads to %q", from, to, got)
		}
	})
}

func TestTarget(t *testing.T) {
	const pattern, plain = "patterns/millrace/", "handbook/"
	for _, c := range []struct {
		from, to, want string
		ours           bool
	}{
		{pattern, "https://example.org/a.html", "https://example.org/a.html", false},
		{pattern, "mailto:a@example.org", "mailto:a@example.org", false},
		{pattern, "//example.org/a", "//example.org/a", false},
		{pattern, "#hem", "#hem", false},
		{pattern, "about", "about/", true},
		{pattern, "/about/", "about/", true},
		{pattern, "about/index.html", "about/", true},
		{pattern, "patterns/hat", "patterns/hat/", true},
		{pattern, "../hat/pattern.md", "patterns/hat/", true},
		{pattern, "../../pages/about.md#us", "about/#us", true},
		{pattern, "chart.pdf", "patterns/millrace/chart.pdf", true},
		{plain, "formulas.md#rounding", "formulas/#rounding", true},
		{plain, "../patterns/hat/pattern.md", "patterns/hat/", true},
		{plain, "kind/hat", "kind/hat/", true},
		{plain, "../../../../etc/passwd", "etc/passwd/", true},
	} {
		if got, ours := Target(c.from, c.to); got != c.want || ours != c.ours {
			t.Errorf("from %q, %q is %q, %v; want %q, %v", c.from, c.to, got, ours, c.want, c.ours)
		}
	}
}
