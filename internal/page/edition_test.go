package page

import (
	"strings"
	"testing"

	"foundrow/internal/grade"
	"foundrow/internal/manuscript"
	"foundrow/internal/pattern"
	"foundrow/internal/prose"
	"foundrow/internal/source"
)

// textOf are the words of all of a page's text, a line of it a line.
func textOf(p *Page) string {
	var b strings.Builder
	prose.Walk(append(append([]prose.Block{}, p.Intro...), p.Text...), func(l prose.Line) {
		b.WriteString(l.Words(func(i int) string { return p.Slots[i].All }) + "\n")
	})
	return strings.TrimSpace(b.String())
}

// The text names its stitches in the terms of the edition, and leaves alone what the designer marks.
func TestTextInBothTerms(t *testing.T) {
	for _, c := range []struct{ terms, text, us, uk string }{
		{"us", "Work a sc, then a dc2tog.", "Work a sc, then a dc2tog.", "Work a dc, then a tr2tog."},
		{"us", "Half double crochet is a **double\ncrochet** cut short.", "Half double crochet is a double crochet cut short.", "Half treble crochet is a treble crochet cut short."},
		{"us", "A single\ncrochet.", "A single crochet.", "A double crochet."},
		{"us", "Skip {n} sts, skip dinner.", "Skip 4 sts, skip dinner.", "Miss 4 sts, skip dinner."},
		{"us", "What I call a \\dc, and `dc` in code.", "What I call a dc, and dc in code.", "What I call a dc, and dc in code."},
		{"us", "Meet the gauge; yo twice.", "Meet the gauge; yo twice.", "Meet the tension; yrh twice."},
		{"uk", "Meet the tension, miss 2 sts and work a htr.", "Meet the gauge, skip 2 sts and work a hdc.", "Meet the tension, miss 2 sts and work a htr."},
		{"us", "## A sc edge", "A sc edge", "A dc edge"},
		{"us", "- sc\n- [tr](#x)", "sc\ntr", "dc\ndtr"},
		{"us", "| hdc | Rows |\n| --- | --- |\n| sc | 2 |", "hdc\nRows\nsc\n2", "htr\nRows\ndc\n2"},
		{"us", "> sc\n\nNothing here.", "sc\nNothing here.", "dc\nNothing here."},
	} {
		pages, _ := Of(graded(t, "terms = \""+c.terms+"\"\n[counts]\nn = \"4 sts\"", c.text), bothTerms)
		if got := textOf(pages[0]); got != c.us {
			t.Errorf("%q in US terms is\n%s\nwant\n%s", c.text, got, c.us)
		}
		if got := textOf(pages[1]); got != c.uk {
			t.Errorf("%q in UK terms is\n%s\nwant\n%s", c.text, got, c.uk)
		}
	}
}

// Everything that names a stitch is in the terms of the page, and the list of abbreviations has what it uses and no more.
func TestEditions(t *testing.T) {
	g := graded(t, `
summary = "A sc square, which is a double crochet square to others."
[hook.main]
size = "4 mm"
note = "for the sc rows"
[gauge.main]
stitch = "sc blo"
stitches = 16
rows = 18
[notions]
markers = { what = "A marker for the tr", amount = 2 }
[turning]
hdc = "does not count"
[special.pb]
name = "dc pebble"
how = "dc4tog in next st"
[special.tuft]
name = "tuft"
how = "a loose knot of dc"
[photo.front]
file = "front.jpg"
alt = "Rows of sc"`, "Ch loosely.\n\n"+rows(`
Throughout: shell = 5 dc in one st.
Foundation: Ch 12.
Row 1 (RS): Sc in 2nd ch from hook and in each ch across. (11 sts)
Row 2: Ch 1, turn, sc in first st, sk 2 sts, shell in next st, sk 2 sts, pb in next st, sc in last 4 sts.`))
	pages, _ := Of(g, bothTerms)
	for i, want := range []string{
		`US terms patterns/case/ patterns/case/print/
A sc square, which is a double crochet square to others.
for the sc rows; A marker for the tr; Rows of sc
16 sts and 18 rows in sc BLO = 10 cm [4 inches], blocked, with a 4 mm hook
pb (dc pebble): Dc4tog in next st
tuft (tuft): a loose knot of dc
shell (): 5 dc in 1 st
The turning chain of hdc does not count as a stitch.
BLO, ch, dc, dc4tog, hdc, RS, sc, sk, st, tr, WS
UK terms patterns/case/uk/ patterns/case/uk/print/`,
		`UK terms patterns/case/uk/ patterns/case/uk/print/
A dc square, which is a treble crochet square to others.
for the dc rows; A marker for the dtr; Rows of dc
16 sts and 18 rows in dc BLO = 10 cm [4 inches], blocked, with a 4 mm hook
pb (tr pebble): Tr4tog in next st
tuft (tuft): a loose knot of tr
shell (): 5 tr in 1 st
The designer writes in US terms. Here every stitch has its name in UK terms; the work and the counts are the same.
The turning chain of htr does not count as a stitch.
BLO, ch, dc, dtr, htr, RS, st, tr, tr4tog, WS
US terms patterns/case/ patterns/case/print/`,
	} {
		p := pages[i]
		lines := []string{p.Terms + " " + p.Address + " " + p.Print, p.Summary, p.Hooks[0].Note + "; " + p.Notions[0].What + "; " + p.Photos[0].Alt, p.Gauges[0].Sentence}
		for _, s := range p.Special {
			lines = append(lines, s.Short+" ("+s.Name+"): "+s.How.Words(func(i int) string { return p.Slots[i].All }))
		}
		lines = append(lines, p.Notes[:len(p.Notes)-1]...)
		var short []string
		for _, a := range p.Abbreviations {
			short = append(short, a.Short)
		}
		lines = append(lines, strings.Join(short, ", "))
		for _, e := range p.Editions {
			lines = append(lines, e.Terms+" "+e.Address+" "+e.Print)
		}
		if got := strings.Join(lines, "\n"); got != want {
			t.Errorf("\n%s\nwant\n%s", got, want)
		}
	}
}

// A studio says in which terms its pages are, and which of them open; one that says nothing leaves it to the pattern.
func TestEditionsOfStudio(t *testing.T) {
	for _, c := range []struct {
		editions []pattern.Terms
		want     string
	}{
		{nil, "US terms patterns/case/"},
		{[]pattern.Terms{pattern.UK}, "UK terms patterns/case/"},
		{[]pattern.Terms{pattern.UK, pattern.US}, "UK terms patterns/case/, US terms patterns/case/us/"},
	} {
		pages, _ := Of(graded(t, "", "A sc."), pattern.Studio{Editions: c.editions})
		var got []string
		for _, p := range pages {
			got = append(got, p.Terms+" "+p.Address)
			if p.Beside != "patterns/case/" {
				t.Errorf("%v: files lie at %s", c.editions, p.Beside)
			}
		}
		if strings.Join(got, ", ") != c.want {
			t.Errorf("%v: %v, want %s", c.editions, got, c.want)
		}
	}
}

// Whoever reads in other terms goes on reading in them.
func TestInEdition(t *testing.T) {
	first := &Page{Address: "patterns/hat/", Beside: "patterns/hat/"}
	other := &Page{Address: "patterns/hat/uk/", Beside: "patterns/hat/"}
	plain := &Page{Address: "about/", Beside: "about/"}
	for _, c := range []struct{ to, want string }{
		{"patterns/bag/", "patterns/bag/uk/"}, {"patterns/bag/#brim", "patterns/bag/uk/#brim"}, {"patterns/bag/print/", "patterns/bag/uk/print/"},
		{"patterns/hat/", "patterns/hat/uk/"}, {"patterns/bag/us/", "patterns/bag/us/"}, {"patterns/bag/front.jpg", "patterns/bag/front.jpg"},
		{"about/#x", "about/#x"}, {"", ""}, {"kind/hat/", "kind/hat/"},
	} {
		if got := other.InEdition(c.to); got != c.want {
			t.Errorf("from the other edition %q leads to %q, want %q", c.to, got, c.want)
		}
		for _, p := range []*Page{first, plain} {
			if got := p.InEdition(c.to); got != c.to {
				t.Errorf("from %s %q leads to %q", p.Address, c.to, got)
			}
		}
	}
}

// A page of the studio has rows too, in the studio's own terms.
func TestRowsOfPlainPage(t *testing.T) {
	file := source.NewFile("content/pages/lesson.md", "# A lesson\n\nWork a \\dc or a tr.\n\n"+rows("Foundation: Ch 11.\nRow 1: Dc in 2nd ch from hook and in each ch across."))
	plain, findings := manuscript.ReadPlain(file, "lesson", pattern.Studio{Terms: pattern.UK})
	g, more := grade.Work(&plain.Pattern)
	if findings = append(findings, more...); findings.Errors() {
		t.Fatal(findings)
	}
	p, _ := OfPlain(g, plain, pattern.Studio{Terms: pattern.UK})
	if got := textOf(p); got != "Work a dc or a tr." || p.Address != "lesson/" || p.Beside != "lesson/" || p.Editions != nil {
		t.Errorf("%q at %s", got, p.Address)
	}
	if len(p.Pieces) != 1 || len(p.Pieces[0].Lines) != 2 || p.Pieces[0].Lines[1].Count.Words(nil) != "(10 sts)" {
		t.Errorf("%+v", p.Pieces)
	}
}
