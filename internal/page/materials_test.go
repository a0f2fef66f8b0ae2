package page

import (
	"testing"

	"foundrow/internal/formula"
	"foundrow/internal/grade"
	"foundrow/internal/pattern"
)

// TestWorkedOut: what was worked out of a yarn is one sentence, for all sizes and for each.
func TestWorkedOut(t *testing.T) {
	main := pattern.Yarn{Name: written("main"), Margin: num("0.1")}
	weighed := []pattern.Weighed{{}}
	for _, c := range []struct {
		what                 string
		yarn                 pattern.Yarn
		weighed              []pattern.Weighed
		grams, metres, balls string
		all, inTheSecond     string
	}{
		{"two sizes", main, weighed, "45 495", "10400 113900", "1 10",
			"45 (495) g [1.6 (17.5) oz], 104 (1139) m [114 (1246) yd], 1 (10) balls; worked out from the weighed sample with 10% to spare",
			"495 g [17.5 oz], 1139 m [1246 yd], 10 balls; worked out from the weighed sample with 10% to spare"},
		{"all alike", main, weighed, "45 45", "10400 10400", "1 1",
			"45 g [1.6 oz], 104 m [114 yd], 1 ball; worked out from the weighed sample with 10% to spare",
			"45 g [1.6 oz], 104 m [114 yd], 1 ball; worked out from the weighed sample with 10% to spare"},
		{"of a swatch, nothing to spare, no ball", pattern.Yarn{Name: written("main")}, nil, "45 50", "", "",
			"45 (50) g [1.6 (1.8) oz]; worked out from a weighed swatch", "50 g [1.8 oz]; worked out from a weighed swatch"},
		{"another yarn was weighed", pattern.Yarn{Name: written("main")}, []pattern.Weighed{{Yarn: written("B")}}, "45 45", "", "",
			"45 g [1.6 oz]; worked out from a weighed swatch", "45 g [1.6 oz]; worked out from a weighed swatch"},
	} {
		g := &grade.Grade{Pattern: &pattern.Pattern{Yarns: []pattern.Yarn{c.yarn}, Weighed: c.weighed}}
		add := func(name string, kind formula.Kind, figures string) {
			if figures != "" {
				g.Values = append(g.Values, grade.Value{Name: "main." + name, Role: grade.Amount, Kind: kind, BySize: valuesOf(kind, figures)})
			}
		}
		add("weight", formula.Mass, c.grams)
		add("length", formula.Length, c.metres)
		add("balls", formula.Number, c.balls)
		needs := yarns(g.Pattern, amountsOf(g))[0].Needs
		if len(needs) != 1 || needs[0].All != c.all || needs[0].In(1) != c.inTheSecond {
			t.Errorf("%s: %q, in the second %q", c.what, needs[0].All, needs[0].In(1))
		}
	}
	if needs := yarns(&pattern.Pattern{Yarns: []pattern.Yarn{main}}, amounts{})[0].Needs; needs != nil {
		t.Errorf("nothing was weighed, and %v is needed", needs)
	}
}
