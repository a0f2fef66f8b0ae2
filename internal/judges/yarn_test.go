package judges

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"foundrow/internal/grade"
	"foundrow/internal/manuscript"
	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// A yarnFact is a published table of yarn amounts written as a pattern of which one size was weighed.
type yarnFact struct {
	ID, Spread, Counts, Rows string
	Sample                   int // from 1
	Within                   float64
	Gauge                    map[string]any // where the fact has none
	Wants                    []struct{ Yarn, Is string }
}

// gradingFacts returns the facts of testdata/cases/grading.toml by their names, with their sources.
func gradingFacts(t *testing.T) map[string]map[string]any {
	t.Helper()
	var all struct{ Fact []map[string]any }
	decode(t, "cases/grading.toml", &all)
	facts := map[string]map[string]any{}
	for _, f := range all.Fact {
		facts[f["id"].(string)] = f
	}
	return facts
}

// workYarn works a pattern of front matter and rows, written with a tape in inches.
func workYarn(t *testing.T, front, rows string) *grade.Grade {
	t.Helper()
	text := "```toml\ntitle = \"Yarn\"\nkind = \"other\"\nterms = \"us\"\nunits = \"inch\"\nwearer = \"none\"\n" + front + "```\n\n" + rows
	p, findings := manuscript.ReadPattern(source.NewFile("yarn/pattern.md", text), "yarn", pattern.Studio{}, manuscript.Published())
	stop(t, findings)
	g, findings := grade.Work(p)
	stop(t, findings)
	return g
}

// TestPublishedYarn works published amounts through real patterns: from the one size that is taken as weighed, the others come out
// within the spread that the source itself shows, and the weighed one exactly.
func TestPublishedYarn(t *testing.T) {
	facts := gradingFacts(t)
	var worked struct{ Fact []yarnFact }
	decode(t, "published/yarn.toml", &worked)
	numbers := 0
	for _, w := range worked.Fact {
		t.Run(w.ID, func(t *testing.T) {
			fact := facts[w.ID]
			if fact == nil {
				t.Fatal("no such fact in grading.toml")
			}
			g := workYarn(t, frontOf(t, w, fact), "```rows piece at body\n"+strings.TrimSpace(w.Rows)+"\n```\n")
			if len(g.Yarn) != len(w.Wants) {
				t.Fatalf("%d yarns were worked out, want %d", len(g.Yarn), len(w.Wants))
			}
			widest := 0.0
			for i, want := range w.Wants {
				for s := range g.Sizes {
					theirs, ours := number(t, fact[want.Is], s), g.Yarn[i].Used[s].Float()
					off := math.Abs(ours/theirs - 1)
					widest = max(widest, off)
					if s == w.Sample-1 && off != 0 || off > w.Within {
						t.Errorf("%s in size %s comes to %.0f yd, the source prints %.0f: %.0f %% off, %.0f are allowed: %s", want.Yarn, g.Sizes[s], ours, theirs, 100*off, 100*w.Within, w.Spread)
					}
					if s > 0 && g.Yarn[i].Used[s].Less(g.Yarn[i].Used[s-1]) {
						t.Errorf("%s falls in size %s", want.Yarn, g.Sizes[s])
					}
					numbers++
				}
			}
			t.Logf("%s: %.0f %% off at most, of %.0f", fact["source"], 100*widest, 100*w.Within)
		})
	}
	t.Logf("%d facts, %d published amounts", len(worked.Fact), numbers)
}

// frontOf writes the front matter of a fact. A ball of 100 g runs 100 yards, so that a gram is a yard.
func frontOf(t *testing.T, w yarnFact, fact map[string]any) string {
	t.Helper()
	var b strings.Builder
	var weighs, sizes []string
	for i := range fact[w.Wants[0].Is].([]any) {
		name := fmt.Sprint("no. ", i+1)
		if names, named := fact["sizes"].([]any); named {
			name = names[i].(string)
		}
		sizes = append(sizes, fmt.Sprintf("%q", name))
	}
	for _, want := range w.Wants {
		fmt.Fprintf(&b, "[yarn.%s]\nball = { weighs = \"100 g\", runs = \"100 yd\" }\n", want.Yarn)
		weighs = append(weighs, fmt.Sprintf("%s = \"%g g\"", want.Yarn, number(t, fact[want.Is], w.Sample-1)))
	}
	gauge, printed := fact["gauge"].(map[string]any)
	if !printed {
		gauge = w.Gauge
	}
	fmt.Fprintf(&b, "[gauge.body]\nstitches = %v\nrows = %v\nover = \"%v inch\"\n", gauge["sts"], gauge["rows"], gauge["over_in"])
	counts := w.Counts
	for key, value := range fact {
		counts = strings.ReplaceAll(counts, "<"+key+">", written(value))
	}
	fmt.Fprintf(&b, "[sizes]\noffer = [%s]\nsample = %s\n[counts]\n%s\n[sample.measured]\nweighs = { %s }\n", strings.Join(sizes, ", "), sizes[w.Sample-1], counts, strings.Join(weighs, ", "))
	return b.String()
}

// TestYarnByStitches: the weight of a blanket is its stitches times what a stitch of the swatch weighs.
// Source: sdrta.net, yarn for a blanket.
func TestYarnByStitches(t *testing.T) {
	fact := gradingFacts(t)["g-yarn-per-stitch"]
	g := workYarn(t, "[yarn.main]\nball = { weighs = \"100 g\", runs = \"200 m\" }\nmargin = \"0%\"\nswatch = { sc = \"17 g of 130 sts\" }\n"+
		fmt.Sprintf("[counts]\nacross = \"%v / 0.307, rounded down to whole\"\ntall = \"%v / 0.533, rounded down to whole\"\n", fact["width"], fact["length"]),
		"```rows blanket\nStart: {across} sts.\nRows 1 to {tall}: Sc in each st across.\n```\n")
	for name, is := range map[string]string{"across": "sts", "tall": "rows"} {
		if got := g.Value(name).BySize[0].Num; got.Cmp(measure.Int(fact[is].(int64))) != 0 {
			t.Errorf("%s is %s, the source has %v", name, got, fact[is])
		}
	}
	want := measure.Int(fact["stitches_in_all"].(int64)).Mul(measure.Ratio(17, 130))
	if y := g.Yarn[0]; y.FromSample || y.Used[0].Sub(want) != (measure.Num{}) {
		t.Errorf("%s g are used, the source's sum is %s", y.Used[0], want)
	}
}

// TestYarnByArea: in a fabric of one stitch to the square inch, stitches are the area. 64 square inches weigh 10 g, so 80 more weigh
// 12.5 g (kephrenknittingstudio.com, estimating yardage); a body and two sleeves have 1534 (lindysknitslaces.com, swatch to estimate
// yardage), and the sleeve's rows from 8 to 15 stitches have its trapezoid's 207.
func TestYarnByArea(t *testing.T) {
	fact := gradingFacts(t)["g-yarn-area"]
	const front = "[yarn.main]\nball = { weighs = \"50 g\", runs = \"100 m\" }\nswatch = { sc = \"10 g of 64 sts\" }\n"
	sleeve := "Start: 8 sts.\n"
	for row, more := range strings.Split("..+.+..+.+.+..+.+.", "") {
		if more == "+" {
			sleeve += fmt.Sprintf("Row %d: Sc in each st to last st, 2 sc in last st.\n", row+1)
		} else {
			sleeve += fmt.Sprintf("Row %d: Sc in each st across.\n", row+1)
		}
	}
	for _, c := range []struct {
		what, rows string
		area       int64
	}{
		{"8 by 8 inches", "```rows swatch\nStart: 8 sts.\nRows 1 to 8: Sc in each st across.\n```\n", 64},
		{"2 more inches round 40", "```rows more\nStart: 40 sts.\nRows 1 to 2: Sc in each st across.\n```\n", 80},
		{"one sleeve", "```rows sleeve\n" + sleeve + "```\n", fact["one_sleeve_area"].(int64)},
		{"body and sleeves", fmt.Sprintf("```rows body, make 2\nStart: %v sts.\nRows 1 to %v: Sc in each st across.\n```\n\n```rows sleeve, make 2\n%s```\n", fact["body_width"], fact["body_length"], sleeve), fact["total_area"].(int64)},
	} {
		if used := workYarn(t, front, c.rows).Yarn[0].Used[0]; used.Cmp(measure.Int(c.area).Mul(measure.Ratio(10, 64))) != 0 {
			t.Errorf("%s: %s g, want %d square inches of 6.4 to the gram", c.what, used, c.area)
		}
	}
}

// TestYarnInBalls: patterns that print grams print whole balls; up to there nothing is added, and one gram more takes a ball more.
// Source: garnstudio.com 181-31 and 168-12; craftorator 2582; thehappyunraveler.
func TestYarnInBalls(t *testing.T) {
	for name, of := range gradingFacts(t)["g-yarn-grams"] {
		list, is := of.(map[string]any)
		if !is {
			continue
		}
		for _, grams := range list["grams"].([]any) {
			for more, balls := range map[int64]int64{-1: grams.(int64) / 50, 0: grams.(int64) / 50, 1: grams.(int64)/50 + 1} {
				g := workYarn(t, fmt.Sprintf("[yarn.main]\nmargin = \"0%%\"\nball = { weighs = \"50 g\", runs = \"95 m\" }\n[sample.measured]\nweighs = \"%d g\"\n", grams.(int64)+more),
					"```rows piece\nStart: 8 sts.\nRow 1: Sc in each st across.\n```\n")
				if got := g.Yarn[0].Balls[0]; got.Cmp(measure.Int(balls)) != 0 {
					t.Errorf("%s: %d g are %s balls of 50 g, want %d", name, grams.(int64)+more, got, balls)
				}
			}
		}
	}
}

// TestYardsInMetres: the metres printed are the yards, up to the next ten.
// Source: Linda Skuja Varpa cardigan (swisscrochet.ch).
func TestYardsInMetres(t *testing.T) {
	fact := gradingFacts(t)["g-yarn-varpa"]
	for s, yards := range fact["yards"].([]any) {
		g := workYarn(t, fmt.Sprintf("[yarn.main]\nmargin = \"0%%\"\nball = { weighs = \"100 g\", runs = \"100 yd\" }\n[sample.measured]\nweighs = \"%v g\"\n", yards),
			"```rows piece\nStart: 8 sts.\nRow 1: Sl st in each st across.\n```\n")
		if got := measure.Up(g.Yarn[0].Metres[0], measure.Int(10), measure.Num{}); got.Cmp(measure.Int(fact["metres"].([]any)[s].(int64))) != 0 {
			t.Errorf("%v yd are %s m, up to ten; the source prints %v", yards, got, fact["metres"].([]any)[s])
		}
	}
}
