package grade_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"foundrow/internal/grade"
	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

const skirt = "```toml\n" + `title = "A skirt"
kind  = "skirt"
terms = "us"
[gauge.body]
stitches = 14
rows = 10
[gauge.band]
stitches = 20
rows = 22
[sizes]
table = "women"
offer = "XS to 5X"
sample = "M"
[measures.round]
body = "hip"
ease = "4 cm"
[measures]
length = "60 cm"
[counts]
around = "round in stitches at body, rounded to the nearest multiple of 8"
tall   = "length in rows at body, rounded up to whole"
band   = "waist in stitches at band, rounded up to even"
[own]
length = "as long as you like"
` + "```\n\n{around} {tall} {band}\n"

func skirtFor(t testing.TB, m grade.Maker) (*grade.Grade, source.Findings) {
	t.Helper()
	p, findings := read(t, "skirt.md", skirt)
	if len(findings) > 0 {
		t.Fatal(findings)
	}
	return grade.WorkFor(p, m)
}

func cm(n int64) measure.Num { return measure.Int(n) }

// TestMaker: one body, one pair of hands. The women's table has, in M, a hip of 40 inches (101.6 cm) and a waist of 30 (76.2).
func TestMaker(t *testing.T) {
	for _, c := range []struct {
		name  string
		maker grade.Maker
		comes string // size, around, tall, band, made, ease
	}{
		{"the size as it is", grade.Maker{Size: "M"}, "M 144 60 154 102.86 1.26"},
		{"no size and no body: the sample's", grade.Maker{}, "M 144 60 154 102.86 1.26"},
		{"her hip", grade.Maker{Size: "M", Body: map[string]measure.Num{"hip": cm(110)}}, "M 160 60 154 114.29 4.29"},
		{"her length", grade.Maker{Size: "M", Body: map[string]measure.Num{"length": cm(75)}}, "M 144 75 154 102.86 1.26"},
		{"the size nearest to her hip", grade.Maker{Body: map[string]measure.Num{"hip": cm(118)}}, "XL 168 60 194 120 2"},
		{"the size nearest to all of her", grade.Maker{Body: map[string]measure.Num{"hip": cm(118), "waist": cm(77)}}, "L 168 60 154 120 2"},
		{"her stitches", grade.Maker{Size: "M", Gauges: map[string]pattern.Gauge{"body": {Stitches: cm(16), Over: cm(10)}}}, "M 168 60 154 105 3.4"},
		{"her rows", grade.Maker{Size: "M", Gauges: map[string]pattern.Gauge{"body": {Rows: cm(12)}}}, "M 144 72 154 102.86 1.26"},
		{"both her gauges", grade.Maker{Size: "M", Gauges: map[string]pattern.Gauge{
			"body": {Stitches: cm(15), Rows: cm(11)}, "band": {Stitches: cm(9), Over: cm(5)},
		}}, "M 160 66 138 106.67 5.07"},
	} {
		g, findings := skirtFor(t, c.maker)
		for _, f := range findings {
			if f.Rule != "tie" {
				t.Errorf("%s: %s", c.name, f)
			}
		}
		got := g.Sizes[0]
		for _, name := range []string{"around", "tall", "band"} {
			got += " " + g.Value(name).BySize[0].Num.Decimal(2)
		}
		if got += " " + g.Finished[0].Made[0].Decimal(2) + " " + g.Finished[0].Ease[0].Decimal(2); got != c.comes {
			t.Errorf("%s: %s, wanted %s", c.name, got, c.comes)
		}
	}
}

func TestMakerUnknown(t *testing.T) {
	_, findings := skirtFor(t, grade.Maker{
		Size:   "6X",
		Body:   map[string]measure.Num{"hpi": cm(1), "around": cm(2), "round": cm(3)},
		Gauges: map[string]pattern.Gauge{"bodi": {}},
	})
	var got []string
	for _, f := range findings {
		got = append(got, f.Rule+": "+f.Message+"; "+f.Fix)
	}
	want := []string{
		"unknown-size: the pattern has no size 6X; take 2X",
		"unknown-name: the pattern takes no measurement named around; ",
		"unknown-name: the pattern takes no measurement named hpi; write hip",
		"unknown-name: the pattern takes no measurement named round; ",
		"unknown-name: the pattern has no gauge named bodi; write body",
	}
	for i, w := range want {
		if i >= len(got) || !strings.HasPrefix(got[i], w) {
			t.Fatalf("found\n%s\nwanted\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
		}
	}
	if len(got) != len(want) {
		t.Errorf("also found %v", got[len(want):])
	}
}

// TestMakerIsASize: a maker who gives what a size has gets what the size gets.
func TestMakerIsASize(t *testing.T) {
	p, _ := read(t, "skirt.md", skirt)
	all, _ := grade.Work(p)
	for s, size := range all.Sizes {
		hip, waist := all.Value("hip").BySize[s].Num, all.Value("waist").BySize[s].Num
		one, _ := grade.WorkFor(p, grade.Maker{Size: size, Body: map[string]measure.Num{"hip": hip, "waist": waist}})
		for i, v := range one.Values {
			if v.BySize[0] != all.Values[i].BySize[s] {
				t.Errorf("%s in %s is %v for a maker and %v in the size", v.Name, size, v.BySize[0].Num, all.Values[i].BySize[s].Num)
			}
		}
		if one.Finished[0].Made[0] != all.Finished[0].Made[s] || one.Slots[0][0] != all.Slots[0][s] {
			t.Errorf("%s comes to something else for a maker", size)
		}
	}
}

// TestRowsAreTwiceTheHalf is common practice, no source: a skirt worked sideways over the chains of half the hip, rounded up to
// even, has twice as many rows as that, so always a multiple of 4, at every gauge and in every size.
func TestRowsAreTwiceTheHalf(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		text := "```toml\ntitle = \"Sideways\"\nkind = \"skirt\"\nterms = \"us\"\n[gauge.body]\nstitches = " +
			fmt.Sprint(rapid.IntRange(6, 40).Draw(rt, "stitches")) + "\n[sizes]\ntable = \"women\"\noffer = \"XS to 5X\"\n[counts]\n" +
			"half = \"hip / 2 in stitches at body, rounded up to even\"\ntall = \"half as rows * 2\"\n```\n\n{tall}\n"
		p, findings := read(t, "sideways.md", text)
		g, more := grade.Work(p)
		if findings = append(findings, more...); len(findings) > 0 || len(g.Sizes) != 9 {
			rt.Fatal(g.Sizes, findings)
		}
		for s, v := range g.Value("tall").BySize {
			half, rows := g.Value("half").BySize[s], v.Num
			if half.Story.From.Sign() <= 0 || half.Num.Less(half.Story.From) || rows != half.Num.Add(half.Num) || rows.Over()%4 != 0 || !rows.IsWhole() {
				rt.Fatalf("%v rows over %v chains, from %v", rows, half.Num, half.Story.From)
			}
		}
	})
}

// TestOrderOfLines: the order in which lines stand makes no difference to what they come to.
func TestOrderOfLines(t *testing.T) {
	head, rest, _ := strings.Cut(skirt, "[counts]\n")
	counts, tail, _ := strings.Cut(rest, "[own]")
	lines := strings.SplitAfter(counts, "\n")
	lines = append(lines[:len(lines)-1], "one = \"two + 1\"\n", "two = \"three * 2\"\n", "three = \"around / 8\"\n", "four = \"one - three\"\n")
	text := func() string {
		return head + "[counts]\n" + strings.Join(lines, "") + "[own]" + tail + "{one} {four}\n"
	}
	p, _ := read(t, "skirt.md", text())
	want, _ := grade.Work(p)
	random := rand.New(rand.NewPCG(1, 2))
	for range 50 {
		random.Shuffle(len(lines), func(i, j int) { lines[i], lines[j] = lines[j], lines[i] })
		p, findings := read(t, "skirt.md", text())
		g, more := grade.Work(p)
		if findings = append(findings, more...); findings.Errors() {
			t.Fatal(findings)
		}
		for _, v := range want.Values {
			for s, x := range g.Value(v.Name).BySize {
				if x != v.BySize[s] {
					t.Fatalf("%s is %v in\n%s", v.Name, x.Num, strings.Join(lines, ""))
				}
			}
		}
	}
}

// TestMakerIsNotPinned: a choice made for the designer's gauge does not hold for another, nor does her sample.
func TestMakerIsNotPinned(t *testing.T) {
	text := strings.Replace(skirt, "[own]", "[pin]\naround = { M = 160 }\n[sample]\naround = 160\n[own]", 1)
	p, findings := read(t, "skirt.md", text)
	as, more := grade.WorkFor(p, grade.Maker{Size: "M"})
	hers, most := grade.WorkFor(p, grade.Maker{Size: "M", Gauges: map[string]pattern.Gauge{"body": {Stitches: cm(16)}}})
	for _, f := range append(append(findings, more...), most...) {
		t.Errorf("%s", f)
	}
	pinned, free := as.Value("around"), hers.Value("around")
	if pinned.BySize[0].Num != cm(160) || !pinned.Pinned[0] || pinned.BySize[0].Story.Upper != cm(152) {
		t.Errorf("the size as it is comes to %v", pinned.BySize[0])
	}
	if free.BySize[0].Num != cm(168) || free.Pinned != nil {
		t.Errorf("a maker's gauge comes to %v", free.BySize[0])
	}
}
