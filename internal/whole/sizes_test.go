package whole

import (
	"testing"

	"foundrow/internal/formula"
	"foundrow/internal/grade"
	"foundrow/internal/measure"
)

// TestSizesInOrder holds every demonstration pattern in every size it offers: counts are whole and not below none, girths of the body and
// of the thing made rise with every size, other widths and lengths never fall.
func TestSizesInOrder(t *testing.T) {
	files := demonstration(t)
	nine := 0
	for _, slug := range files.slugs(t) {
		g := files.readPattern(t, slug)
		inOrder(t, g)
		if len(g.Sizes) == 9 {
			nine++
		}
	}
	if nine == 0 {
		t.Error("no pattern has nine sizes")
	}
}

func inOrder(t *testing.T, g *grade.Grade) {
	t.Helper()
	girths := map[string]bool{}
	for _, b := range g.Pattern.Sizes.Body {
		girths[b.Name] = b.Girth
	}
	for _, v := range g.Values {
		nums := make([]measure.Num, len(v.BySize))
		for i, n := range v.BySize {
			nums[i] = n.Num
			if n.Num.IsLost() || v.Kind.IsCount() && (!n.Num.IsWhole() || n.Num.Sign() < 0) {
				t.Errorf("%s is %s in %s", v.Name, n.Num, g.Sizes[i])
			}
		}
		if v.Kind == formula.Length {
			rises(t, v.Name, nums, girths[v.Name])
		}
	}
	for _, f := range g.Finished {
		rises(t, "what is made of "+f.Name, f.Made, f.Body != nil)
	}
}

// rises holds that a measurement does not fall from size to size, or that it is more in each.
func rises(t *testing.T, name string, bySize []measure.Num, strictly bool) {
	t.Helper()
	for i := 1; i < len(bySize); i++ {
		if c := bySize[i].Cmp(bySize[i-1]); c < 0 || c == 0 && strictly {
			t.Errorf("%s: size %d has %s and size %d has %s", name, i, bySize[i-1], i+1, bySize[i])
		}
	}
}
