package grade_test

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"foundrow/internal/grade"
	"foundrow/internal/manuscript"
	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// spun reads and works a pattern in sizes S and M, M being the sample, of front matter about yarn and of blocks of rows.
func spun(t interface{ Fatal(...any) }, front, rows string) (*grade.Grade, source.Findings) {
	text := "```toml\ntitle = \"Yarn\"\nkind = \"other\"\nterms = \"us\"\n" + front + "```\n\n" + rows
	p, findings := manuscript.ReadPattern(source.NewFile("pattern.md", text), "yarn", pattern.Studio{}, manuscript.Published())
	if findings.Errors() {
		t.Fatal(text, findings)
	}
	return grade.Work(p)
}

const (
	two  = "[sizes]\noffer = [\"S\", \"M\"]\nsample = \"M\"\n"
	ball = "ball = { weighs = \"50 g\", runs = \"100 m\" }\n"
)

// block is rows of so many single crochet in S and in M, without a chain.
func block(name, opening string, s, m int) string {
	return fmt.Sprintf("```rows %s\nStart: %d (%d) sts.\nRow 1: %ssc in each st across.\n```\n\n", name, s, m, opening)
}

// TestYarn: what is used, in grams by size, of each yarn, and what was found.
func TestYarn(t *testing.T) {
	for _, c := range []struct{ what, front, rows, want, found string }{
		{"the sample is what it weighs, a smaller size less", two + "[yarn.main]\n" + ball + "[sample.measured]\nweighs = \"40 g\"\n",
			block("front", "", 10, 20), "main 20 40", ""},
		{"two are made", two + "[yarn.main]\n" + ball + "[sample.measured]\nweighs = \"40 g\"\n",
			block("front", "", 10, 20) + strings.Replace(block("sleeve", "", 10, 10), "rows sleeve", "rows sleeve, make 2", 1), "main 30 40", ""},
		{"a half double is 1.48 single, a double 1.92", "[yarn.main]\n" + ball + "[yarn.main.swatch]\nsc = \"100 g of 100 sts\"\n",
			"```rows a\nStart: 10 sts.\nRow 1: sc in next 5 sts, hdc in next 5 sts.\nRow 2: dc in each st across.\n```\n", "main 31.6", ""},
		{"taller ones by their height, together less the head they share", "[yarn.main]\n" + ball + "[yarn.main.swatch]\nsc = \"100 g of 100 sts\"\n",
			"```rows a\nStart: 10 sts.\nRow 1: tr in each st across.\nRow 2: dc2tog across.\n```\n", "main 46.1", ""},
		{"a swatch is believed", "[yarn.main]\n" + ball + "swatch = { sc = \"10 g of 100 sts\", hdc = \"30 g of 100 sts\" }\n",
			"```rows a\nStart: 10 sts.\nRow 1: hdc in each st across.\n```\n", "main 3", ""},
		{"each yarn by itself", two + "[yarn.A]\n" + ball + "[yarn.B]\n" + ball + "[sample.measured]\nweighs = { A = \"30 g\", B = \"8 g\" }\n",
			block("front", "With A, ", 10, 20) + block("edge", "With B, ", 8, 4), "A 15 30, B 16 8", ""},
		{"together, by what each takes", two + "[yarn.A]\n" + ball + "[yarn.B]\n" + ball + "[sample.measured]\nweighs = \"48 g\"\n",
			block("front", "With A, ", 10, 20) + block("edge", "With B, ", 4, 4), "A 20 40, B 8 8", ""},
		{"together, one twice as heavy to the metre", two + "[yarn.A]\n" + ball + "[yarn.B]\nball = { weighs = \"100 g\", runs = \"100 m\" }\n[sample.measured]\nweighs = \"60 g\"\n",
			block("front", "With A, ", 10, 20) + block("edge", "With B, ", 5, 5), "A 20 40, B 20 20", ""},
		{"the colour in the label, and the one in hand", two + "[yarn.A]\n" + ball + "[yarn.B]\n" + ball + "[sample.measured]\nweighs = { A = \"30 g\", B = \"20 g\" }\n",
			"```rows a\nStart: 10 (20) sts.\nRow 1 (A): sc in each st across.\nRow 2 (B): Ch 1, turn, sc in each st across.\nRow 3: Turn, sc in next 4 sts, change to A, leave remaining sts unworked.\n```\n", "A 15 30, B 11.77 20", ""},
		{"rows repeated in their colours", "[yarn.A]\n" + ball + "[yarn.B]\n" + ball + "swatch = { sc = \"10 g of 10 sts\" }\n",
			"```rows a\nStart: 10 sts.\nRow 1 (A): sc in each st across.\nRow 2 (B): Turn, sc in each st across.\nRepeat rows 1 and 2 twice more.\nRow 7 (B): Repeat row 1.\n```\n", "B 40", ""},
		{"what a piece begins on was made before", two + "[yarn.A]\n" + ball + "[yarn.B]\n" + ball + "[sample.measured]\nweighs = { A = \"33 g\", B = \"20 g\" }\n",
			"```rows a\nFoundation: With A, ch {10 * 2}.\nRow 1: Sc in each ch across.\n```\n\n```rows b\nStart: a.foundation.\nRow 1: With B, sc in each st across.\n```\n", "A 33 33, B 20 20", ""},
		{"foundation stitches, and a row over nothing", "[yarn.main]\n" + ball + "swatch = { fsc = \"10 g of 10 sts\", dc = \"30 g of 10 sts\", ch = \"1 g of 10 sts\" }\n",
			"```rows a\nFoundation: Fsc 7.\n```\n\n```rows b\nStart: (3 dc, ch 2) 4 times.\n```\n", "main 43.8", ""},
		{"rows that do not say", two + "[yarn.A]\n" + ball + "[yarn.B]\n" + ball + "[sample.measured]\nweighs = \"48 g\"\n",
			block("front", "", 10, 20) + block("edge", "With B, ", 4, 4), "A 20 40, B 8 8", "yarn-unsaid"},
		{"rows in two", two + "[yarn.A]\n" + ball + "[yarn.B]\n" + ball + "[sample.measured]\nweighs = \"40 g\"\n",
			"```rows a\nStart: 10 (20) sts.\nRow 1: With A, sc in next 5 sts, with B, sc in each st to end.\n```\n", "A 10 20, B 10 20", "yarn-unsaid"},
		{"weighed and in no row", two + "[yarn.A]\n" + ball + "[yarn.B]\n" + ball + "[sample.measured]\nweighs = { A = \"30 g\", B = \"2 g\" }\n",
			block("front", "With A, ", 10, 20), "A 15 30, B 2 2", "yarn-unsaid"},
		{"nobody knows which size was weighed", "[sizes]\noffer = [\"S\", \"M\"]\n[yarn.main]\n" + ball + "[sample.measured]\nweighs = \"40 g\"\n",
			block("front", "", 10, 20), "", "sample"},
		{"a row does not come out in the smaller size", two + "[yarn.main]\n" + ball + "[sample.measured]\nweighs = \"40 g\"\n",
			"```rows a\nStart: 10 (20) sts.\nRow 1: sc in next 20 sts.\n```\n", "main ? 40", "run-out"},
		{"less is stated than is used", two + "[yarn.main]\n" + ball + "needs = \"60 (80) m\"\n[sample.measured]\nweighs = \"40 g\"\n",
			block("front", "", 10, 20), "main 20 40", "needs-short"},
		{"enough is stated", two + "[yarn.main]\n" + ball + "margin = \"0%\"\nneeds = \"40 (80) m\"\n[sample.measured]\nweighs = \"40 g\"\n",
			block("front", "", 10, 20), "main 20 40", ""},
		{"too few balls", two + "[yarn.main]\n" + ball + "needs = \"1 (1)\"\n[sample.measured]\nweighs = \"49 g\"\n",
			block("front", "", 10, 20), "main 24.5 49", "needs-short"},
		{"a swatch of no stitch", "[yarn.main]\n" + ball + "swatch = { hdx = \"3 g of 20 sts\", sc = \"10 g of 10 sts\" }\n",
			"```rows a\nStart: 10 sts.\nRow 1: sc in each st across.\n```\n", "main 10", "unknown-name"},
	} {
		t.Run(c.what, func(t *testing.T) {
			g, findings := spun(t, c.front, c.rows)
			var got []string
			for _, y := range g.Yarn {
				said := y.Yarn
				for _, used := range y.Used {
					if used.IsLost() {
						said += " ?"
						continue
					}
					said += " " + used.Decimal(2)
				}
				got = append(got, said)
			}
			if used := strings.Join(got, ", "); used != c.want {
				t.Errorf("used up: %q, want %q", used, c.want)
			}
			if found := rules(findings); found != c.found {
				t.Errorf("found %q, want %q: %v", found, c.found, findings)
			}
		})
	}
}

// TestBought: the margin first, then metres, then whole balls.
func TestBought(t *testing.T) {
	g, _ := spun(t, two+"[yarn.main]\n"+ball+"[sample.measured]\nweighs = \"91 g\"\n", block("front", "", 10, 20))
	y := g.Yarn[0]
	if !y.FromSample || y.Grams[1].Decimal(3) != "100.1" || y.Metres[1].Decimal(3) != "200.2" || y.Balls[0].String() != "2" || y.Balls[1].String() != "3" {
		t.Errorf("91 g and a tenth are 100.1 g, 200.2 m, and 3 balls of 50 g: %+v", y)
	}
	for name, want := range map[string]string{"main.weight": "51 101", "main.length": "10100 20100", "main.balls": "2 3"} {
		var got string
		for _, v := range g.Values {
			if v.Name == name {
				got = v.BySize[0].Num.String() + " " + v.BySize[1].Num.String()
			}
		}
		if got != want {
			t.Errorf("%s is %q, want %q", name, got, want)
		}
	}
}

// TestReckoned: stitches that nobody has measured or weighed are named.
func TestReckoned(t *testing.T) {
	g, _ := spun(t, "[yarn.main]\n"+ball+"swatch = { tr = \"10 g of 100 sts\" }\n",
		"```rows a\nFoundation: Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across.\nRow 2: Ch 4 (counts as tr), turn, tr in next 8 sts, dtr in next st.\n```\n")
	if got := strings.Join(g.Yarn[0].Reckoned, " "); got != "ch dtr" {
		t.Errorf("reckoned: %q; sc was measured, tr weighed", got)
	}
}

// TestSampleExactly: whatever the pieces are made of, the sample size takes exactly what the sample weighs, no other size loses its
// figures, and a size with more of every stitch takes more.
func TestSampleExactly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		stitches := rapid.SampledFrom([]string{"sc", "hdc", "dc", "tr", "dtr", "sl st", "esc"})
		yarns := rapid.IntRange(1, 3).Draw(t, "yarns")
		front := two
		grams := make([]string, yarns)
		var each []string
		for y := range yarns {
			name := string(rune('A' + y))
			front += "[yarn." + name + "]\n" + ball
			if rapid.Bool().Draw(t, "swatch") {
				front += fmt.Sprintf("swatch = { hdc = \"%d.%d g of %d sts\" }\n", rapid.IntRange(1, 40).Draw(t, "g"), rapid.IntRange(0, 9).Draw(t, "tenths"), rapid.IntRange(1, 400).Draw(t, "sts"))
			}
			grams[y] = fmt.Sprintf("%d.%d", rapid.IntRange(1, 900).Draw(t, "weighs"), rapid.IntRange(0, 9).Draw(t, "weighs tenths"))
			each = append(each, name+" = \""+grams[y]+" g\"")
		}
		together := rapid.Bool().Draw(t, "together")
		weighs := "{ " + strings.Join(each, ", ") + " }"
		if together {
			weighs = "\"" + grams[0] + " g\""
		}
		rows := ""
		for p := range rapid.IntRange(yarns, 5).Draw(t, "pieces") {
			n := rapid.IntRange(1, 300).Draw(t, "sts")
			more := n + rapid.IntRange(1, 50).Draw(t, "more")
			rows += fmt.Sprintf("```rows p%d, make %d\nStart: %d (%d) sts.\nRow 1: With %c, %s in each st across.\nRow 2: Turn, %s in each st across.\nRepeat row 2 %d more times.\n```\n\n",
				p, rapid.IntRange(1, 4).Draw(t, "make"), n, more, 'A'+p%yarns, stitches.Draw(t, "first"), stitches.Draw(t, "second"), rapid.IntRange(1, 90).Draw(t, "times"))
		}
		g, _ := spun(t, front+"[sample.measured]\nweighs = "+weighs+"\n", rows)
		if len(g.Yarn) != yarns {
			t.Fatalf("%d yarns of %d", len(g.Yarn), yarns)
		}
		var all measure.Num
		for y, need := range g.Yarn {
			want, _ := measure.Parse(grams[y])
			all = all.Add(need.Used[1])
			switch {
			case need.Used[0].IsLost() || need.Used[1].IsLost():
				t.Fatalf("%s is lost: %v", need.Yarn, need.Used)
			case !together && need.Used[1].Sub(want) != measure.Num{}:
				t.Fatalf("%s takes %s g in the sample, which weighs %s", need.Yarn, need.Used[1], grams[y])
			case !need.Used[0].Less(need.Used[1]):
				t.Fatalf("the smaller size takes %s g of %s, the larger %s", need.Used[0], need.Yarn, need.Used[1])
			}
		}
		if want, _ := measure.Parse(grams[0]); together && all.Sub(want) != (measure.Num{}) {
			t.Fatalf("all yarns come to %s g in the sample, which weighs %s", all, grams[0])
		}
	})
}

// TestYarnForMaker: her own body is worked beside the sample that was weighed.
func TestYarnForMaker(t *testing.T) {
	text := "```toml\ntitle = \"Yarn\"\nkind = \"other\"\nterms = \"us\"\n" + two + "[yarn.main]\n" + ball +
		"[gauge.body]\nstitches = 10\n[body]\nwrist = \"10 (20) cm\"\n[counts]\nwide = \"wrist in stitches at body, rounded up to whole\"\n[sample.measured]\nweighs = \"40 g\"\n```\n\n" +
		"```rows a\nStart: {wide} sts.\nRow 1: sc in each st across.\n```\n"
	p, findings := manuscript.ReadPattern(source.NewFile("pattern.md", text), "yarn", pattern.Studio{}, manuscript.Published())
	if findings.Errors() {
		t.Fatal(findings)
	}
	for _, c := range []struct {
		maker grade.Maker
		want  string
	}{
		{grade.Maker{Size: "S"}, "20"},
		{grade.Maker{Size: "M", Body: map[string]measure.Num{"wrist": measure.Int(30)}}, "60"},
	} {
		g, _ := grade.WorkFor(p, c.maker)
		if len(g.Yarn) != 1 || g.Yarn[0].Used[0].String() != c.want {
			t.Errorf("%+v takes %+v, want %s g", c.maker, g.Yarn, c.want)
		}
	}
}
