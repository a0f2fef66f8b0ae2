package web

import (
	"regexp"
	"strings"
	"testing"

	"foundrow/internal/formula"
	"foundrow/internal/grade"
	"foundrow/internal/measure"
	"foundrow/internal/page"
	"foundrow/internal/pattern"
	"foundrow/internal/prose"
	"foundrow/internal/source"
)

// nine are the sizes of the pullover, and its values in each. The figures are put down, not worked: what is tried here is how
// they are set.
var nine = []string{"XS", "S", "M", "L", "XL", "2X", "3X", "4X", "5X"}

var pulloverCounts = map[string][]int64{
	"front":    {62, 68, 74, 80, 86, 92, 98, 104, 110},
	"hem":      {9, 9, 9, 9, 9, 9, 9, 9, 9},
	"rib_rows": {96, 104, 114, 122, 132, 140, 150, 158, 168},
	"body":     {54, 55, 55, 55, 57, 57, 57, 57, 57},
	"cap":      {32, 34, 38, 40, 44, 46, 50, 52, 56},
	"cap_top":  {10, 12, 12, 14, 14, 16, 16, 18, 18},
	"buttons":  {1, 2, 2, 3, 3, 3, 4, 4, 4},
	"again":    {1, 2, 3, 3, 4, 4, 5, 5, 6},
}

func studio() pattern.Studio {
	return pattern.Studio{
		Title: "Tannery Lane", Address: "https://tannery.example/", Language: "en",
		Rights:  "© 2026 Tannery Lane. Print it for yourself; link to it rather than copy it.",
		Contact: "hello@tannery.example",
	}
}

// A draft is a manuscript in small: text in which {name} stands for a value.
type draft struct {
	p *pattern.Pattern
	g *grade.Grade
}

var slotText = regexp.MustCompile(`\{(\w+)\}(th| times| sts| rows)?`)

func (m *draft) line(text string) prose.Line {
	var line prose.Line
	for {
		at := slotText.FindStringSubmatchIndex(text)
		if at == nil {
			break
		}
		if at[0] > 0 {
			line = append(line, prose.Text(text[:at[0]]))
		}
		written := text[at[0]:at[1]]
		name := text[at[2]:at[3]]
		form := pattern.Figure
		switch {
		case strings.HasSuffix(written, "}th"):
			form = pattern.Ordinal
		case strings.HasSuffix(written, "} times"):
			form = pattern.Times
		case !strings.HasSuffix(written, "}"):
			form = pattern.Counted
		}
		noun := strings.TrimLeft(written[strings.IndexByte(written, '}')+1:], " ")
		line = append(line, prose.Slot{Index: len(m.p.Slots)})
		m.p.Slots = append(m.p.Slots, pattern.Slot{Form: form, Noun: noun})
		m.g.Slots = append(m.g.Slots, values(name))
		text = text[at[1]:]
	}
	if text != "" {
		line = append(line, prose.Text(text))
	}
	return line
}

func values(name string) []formula.Value {
	kind := formula.Stitches
	switch name {
	case "body":
		kind = formula.Length
	case "rib_rows":
		kind = formula.Rows
	case "buttons", "again":
		kind = formula.Number
	}
	var out []formula.Value
	for _, n := range pulloverCounts[name] {
		out = append(out, formula.Value{Num: measure.Int(n), Kind: kind})
	}
	return out
}

func (m *draft) heading(id, text string, film int) {
	m.p.Text = append(m.p.Text, &prose.Heading{Level: 2, ID: id, Film: film, Line: m.line(text)})
}

func (m *draft) para(text string) {
	m.p.Text = append(m.p.Text, &prose.Paragraph{Line: m.line(text)})
}

func (m *draft) rows(piece pattern.Piece, lines string) {
	for text := range strings.SplitSeq(strings.TrimSpace(lines), "\n") {
		lead, rest, found := strings.Cut(strings.TrimSpace(text), ": ")
		if !found {
			lead, rest = "", lead
		}
		piece.Lines = append(piece.Lines, pattern.RowLine{Lead: m.line(lead), Line: m.line(rest)})
	}
	m.p.Text = append(m.p.Text, &prose.Piece{Index: len(m.p.Pieces)})
	m.p.Pieces = append(m.p.Pieces, piece)
}

// pullover is a garment in nine sizes as long as such patterns are.
func pullover(t testing.TB) *page.Page {
	t.Helper()
	p := &pattern.Pattern{
		Slug: "millrace", File: source.NewFile("content/patterns/millrace/pattern.md", ""),
		Title: said("Millrace Pullover"), Kind: said("garment"), Summary: said("A boxy pullover in half double ridges, worked flat from the hem up & seamed."),
		Released: "2026-04-02", Version: "1.1", Skill: said("intermediate"),
		Yarns:  []pattern.Yarn{{Name: said("main"), Wanted: "Any smooth DK wool", Weight: 3, Colour: "slate", Weighs: measure.Int(50), Runs: measure.Int(120)}},
		Hooks:  []pattern.Hook{{Name: said("main"), Size: num("4.5")}, {Name: said("rib"), Size: num("3.75"), Note: "for the ribs"}},
		Photos: []pattern.Photo{{From: said("front.svg"), Alt: "The pullover worn, arms folded, seen from the front", Shows: "M", Ease: "9 cm"}},
		Gauges: []pattern.Gauge{
			{Name: said("body"), Stitch: "hdc", Stitches: measure.Int(14), Rows: measure.Int(10), Over: measure.Int(10), RowsOver: measure.Int(10), Hook: "main"},
			{Name: said("rib"), Stitch: "sc blo", Stitches: measure.Int(16), Rows: measure.Int(18), Over: measure.Int(10), RowsOver: measure.Int(10), Hook: "rib", State: "as worn"},
		},
		Sizes:    pattern.Sizes{Table: said("women"), Names: nine, Sample: 2, Wearer: pattern.Adult, Credit: "Source: Craft Yarn Council's www.YarnStandards.com"},
		Measures: []pattern.Measure{{Definition: pattern.Definition{Name: said("chest")}, Body: said("bust"), Finished: true}},
		Notions:  []pattern.Notion{{Name: said("needle"), What: "A blunt needle for seams"}},
		Turning:  []pattern.Turning{{Stitch: said("hdc")}},
		Special:  []pattern.Special{{Abbr: said("rdg"), Name: "ridge stitch", How: said("hdc in the loop below the back loop")}},
		Film:     pattern.Film{Page: said("https://films.example/w/millrace"), Runs: 1450},
		Credits:  []pattern.Credit{{Role: "technical editing", Name: "Oona Brandt"}},
		Tested:   []pattern.Tested{{By: "Ida Marsh", Sizes: []int{1, 5}}},
	}
	bust := pattern.BodyMeasurement{Name: "bust", Label: "bust", How: "around the fullest part, the tape not tight"}
	for i := range nine {
		inch := int64(28 + 4*i)
		bust.Cells = append(bust.Cells, pattern.BodyCell{
			LowInch: measure.Int(inch), HighInch: measure.Int(inch + 2), LowCm: measure.Int(71 + 10*int64(i)), HighCm: measure.Int(76 + 10*int64(i)),
		})
	}
	p.Sizes.Body = []pattern.BodyMeasurement{bust}
	g := &grade.Grade{Pattern: p, Sizes: nine}
	chest := grade.Finished{Name: "chest", Label: "chest"}
	long := grade.Finished{Name: "length", Label: "length"}
	for i := range nine {
		made := measure.Ratio(20*pulloverCounts["front"][i], 14)
		chest.Made = append(chest.Made, made)
		chest.Ease = append(chest.Ease, made.Sub(measure.Int(76+10*int64(i))))
		long.Made = append(long.Made, measure.Int(pulloverCounts["body"][i]))
	}
	g.Finished = []grade.Finished{chest, long}
	for _, name := range []string{"front", "hem", "rib_rows", "cap", "cap_top"} {
		v := grade.Value{Name: name, Role: grade.Count, BySize: values(name)}
		for i := range v.BySize {
			v.BySize[i].Story = formula.Story{Way: formula.Nearest, From: v.BySize[i].Num.Add(measure.Ratio(int64(i%3)-1, 8)), Step: measure.Int(6), Offset: measure.Int(2)}
		}
		if name == "front" {
			v.Pinned = make([]bool, 9)
			v.Pinned[3] = true
		}
		g.Values = append(g.Values, v)
	}
	m := &draft{p, g}
	m.heading("construction", "Construction", -1)
	m.para("Back and front are alike to the neck. The hem is worked sideways first; the body grows up from its row-ends to {body}, and the shoulders are seamed.")
	m.heading("hem", "Hem", 90)
	m.rows(pattern.Piece{Name: said("hem"), Gauge: said("rib"), Hook: said("rib"), Make: 2}, `
		Foundation: Ch {hem}.
		Row 1: Sc in 2nd ch from hook and in each ch across. ({hem} sts)
		Row 2: Ch 1, turn, sc blo in each st across.
		Rows 3 to {rib_rows}: Repeat row 2.`)
	for _, part := range []string{"Back", "Front", "Left sleeve", "Right sleeve"} {
		m.heading(strings.ReplaceAll(strings.ToLower(part), " ", "-"), part, 700)
		m.para("Along the long edge of a hem, right side up, with the body hook and room to spare for {front} sts.")
		m.rows(pattern.Piece{Name: said(strings.ReplaceAll(strings.ToLower(part), " ", "_")), Gauge: said("body"), Make: 1}, `
			Start: hem.left, 1 sc in each row-end. ({front} sts)
			Row 1 (RS): Ch 2, turn, hdc in each st across. ({front} sts)
			Row 2: Ch 2, turn, rdg in each st across.
			Repeat rows 1 and 2 {again} times.
			Film: 11:40
			Row 9 (RS): Ch 1, hdc2tog, hdc in each st to last 2 sts, hdc2tog. ({cap} sts)
			Note: The edge looks loose here; blocking settles it.
			Sizes M and 3X to 5X only: Work 2 more rows even, ending after a wrong side row.
			Row 10: Ch 2, turn, place a marker in the {cap}th st, hdc in each st across.
			Repeat rows 9 and 10 until {cap_top} sts remain.`)
	}
	m.heading("finishing", "Finishing", -1)
	m.p.Text = append(m.p.Text, &prose.Table{
		Head: []prose.Line{m.line("Seam"), m.line("Sts on each side")},
		Rows: [][]prose.Line{{m.line("Shoulder"), m.line("{cap_top}")}, {m.line("Side"), m.line("{cap}")}},
	}, &prose.List{Tight: true, Items: [][]prose.Block{
		{&prose.Paragraph{Line: m.line("Weave in every end.")}},
		{&prose.Paragraph{Line: prose.Line{prose.Text("Block to size: see "), &prose.Link{To: "../../pages/about.md", Line: prose.Line{prose.Text("how we block")}}, prose.Text(".")}}},
	}})
	page, findings := page.Of(g, studio())
	if len(findings) > 0 {
		t.Fatalf("the pullover has findings: %v", findings)
	}
	return page
}

func said(text string) pattern.Words { return pattern.Words{Text: text} }

func num(s string) measure.Num {
	n, _ := measure.Parse(s)
	return n
}
