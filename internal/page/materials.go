package page

import (
	"slices"
	"strconv"
	"strings"

	"foundrow/internal/measure"
	"foundrow/internal/pattern"
)

// A Yarn is one yarn of the materials.
type Yarn struct {
	Title         string // "Main"; empty when the pattern has one yarn only
	Wanted        string
	Weight        string // "Light (3)"
	WeightAddress string // the catalogue's page of that weight
	Made          string // colour and fibre: "slate, 100% wool"
	Ball          string // "50 g [1.8 oz], 120 m [131 yd]"
	Needs         []Slot // as stated, "950 (1070) m [1039 (1170) yd]" and "9 (10) balls"; as worked out, all in one
}

// A Hook is one hook of the materials.
type Hook struct {
	Title string // empty when the pattern has one hook only
	Size  string // "4.5 mm (US 7)"
	Note  string
}

// A Notion is a thing needed that is neither yarn nor hook.
type Notion struct {
	What   string
	Amount Slot // empty when the number is not said
}

// A Gauge is one gauge as a sentence.
type Gauge struct {
	Title    string // empty when the pattern has one gauge only
	Sentence string
}

func yarns(p *pattern.Pattern, needed amounts) []Yarn {
	out := make([]Yarn, 0, len(p.Yarns))
	for _, y := range p.Yarns {
		yarn := Yarn{Wanted: y.Wanted, Made: joined(", ", y.Colour, y.Fibre), Needs: needed.ofYarn(y)}
		if len(y.Amounts) == 0 {
			yarn.Needs = workedOut(p, y, needed)
		}
		if len(p.Yarns) > 1 {
			yarn.Title = Name(y.Name.Text)
		}
		if yarn.Weight = WeightName(y.Weight); yarn.Weight != "" {
			yarn.WeightAddress = FilterAddress(byWeight, strconv.Itoa(y.Weight))
		}
		var ball []string
		if y.Weighs.Sign() > 0 {
			ball = append(ball, masses([]measure.Num{y.Weighs}).All)
		}
		if y.Runs.Sign() > 0 {
			ball = append(ball, yarnLengths([]measure.Num{y.Runs}).All)
		}
		yarn.Ball = strings.Join(ball, ", ")
		out = append(out, yarn)
	}
	return out
}

// workedOut words what the rows take of a yarn, with what it was worked out from: "495 g [17.5 oz], 1139 m [1246 yd], 10 balls;
// worked out from the weighed sample with 10% to spare".
func workedOut(p *pattern.Pattern, y pattern.Yarn, needed amounts) []Slot {
	grams := nums(needed.values[y.Name.Text+".weight"])
	if len(grams) == 0 {
		return nil
	}
	said := []Slot{masses(grams)}
	if metres := nums(needed.values[y.Name.Text+".length"]); len(metres) > 0 {
		for i, n := range metres {
			metres[i] = needed.tape.BodyInCentimetres(n).Div(measure.Int(100))
		}
		said = append(said, yarnLengths(metres))
	}
	if whole := needed.values[y.Name.Text+".balls"]; len(whole) > 0 {
		said = append(said, counted(numbers(whole), "balls"))
	}
	from := "; worked out from a weighed swatch"
	if slices.ContainsFunc(p.Weighed, func(on pattern.Weighed) bool { return on.Yarn.Text == "" || on.Yarn.Text == y.Name.Text }) {
		from = "; worked out from the weighed sample"
	}
	if y.Margin.Sign() > 0 {
		from += " with " + y.Margin.Mul(measure.Int(100)).Decimal(1) + "% to spare"
	}
	all, bySize := make([]string, len(said)), make([]string, len(grams))
	same := true
	for i, s := range said {
		all[i] = s.All
		same = same && s.BySize == nil
	}
	out := Slot{All: strings.Join(all, ", ") + from}
	if same {
		return []Slot{out}
	}
	for size := range bySize {
		for i, s := range said {
			all[i] = s.In(size)
		}
		bySize[size] = strings.Join(all, ", ") + from
	}
	out.BySize = bySize
	return []Slot{out}
}

func hooks(p *pattern.Pattern, carry carrier) []Hook {
	out := make([]Hook, 0, len(p.Hooks))
	for _, h := range p.Hooks {
		hook := Hook{Size: hookSize(h.Size), Note: carry.words(h.Note)}
		if len(p.Hooks) > 1 {
			hook.Title = Name(h.Name.Text)
		}
		out = append(out, hook)
	}
	return out
}

func gauges(p *pattern.Pattern, carry carrier) []Gauge {
	out := make([]Gauge, 0, len(p.Gauges))
	for _, g := range p.Gauges {
		gauge := Gauge{Sentence: gaugeSentence(p, g, carry)}
		if len(p.Gauges) > 1 {
			gauge.Title = Name(g.Name.Text)
		}
		out = append(out, gauge)
	}
	return out
}

// gaugeSentence words a gauge the way it was counted: "14 sts and 10 rows in hdc = 10 cm [4 inches], blocked, with a 4.5 mm
// hook".
func gaugeSentence(p *pattern.Pattern, g pattern.Gauge, carry carrier) string {
	over := func(n measure.Num) string { return lengths([]measure.Num{n}, p.Tape).All }
	in := ""
	if g.Stitch != "" {
		in = " in " + carry.stitch(g.Stitch)
	}
	var said string
	switch form := g.Written; {
	case form.Rounds != "":
		across := form.Across
		if g.Over.Sign() > 0 {
			across = over(g.Over)
		}
		said = "Rounds " + form.Rounds + in + " measure " + across + " across"
	case form.Repeats > 0:
		said = Counted(strconv.Itoa(form.Repeats), "repeats") + " of " + strconv.Itoa(form.Of) + " sts" + in + " = " + over(g.Over)
		if g.Rows.Sign() > 0 {
			said += "; " + counts(g.Rows, "rows") + " = " + over(g.RowsOver)
		}
	case g.Stitches.Sign() > 0 && g.Rows.Sign() > 0 && g.Over.Cmp(g.RowsOver) == 0:
		said = counts(g.Stitches, "sts") + " and " + counts(g.Rows, "rows") + in + " = " + over(g.Over)
	case g.Stitches.Sign() > 0 && g.Rows.Sign() > 0:
		said = counts(g.Stitches, "sts") + " = " + over(g.Over) + " and " + counts(g.Rows, "rows") + " = " + over(g.RowsOver) + in
	case g.Stitches.Sign() > 0:
		said = counts(g.Stitches, "sts") + in + " = " + over(g.Over)
	case g.Rows.Sign() > 0:
		said = counts(g.Rows, "rows") + in + " = " + over(g.RowsOver)
	}
	return said + ", " + stateWords(g.State) + hookOf(p, g)
}

func counts(n measure.Num, noun string) string { return Counted(n.Decimal(2), noun) }

// stateWords words how the swatch lay when it was measured.
func stateWords(state string) string {
	switch state {
	case "", "blocked":
		return "blocked"
	case "hung":
		return "blocked and hung"
	}
	return state
}

func hookOf(p *pattern.Pattern, g pattern.Gauge) string {
	for _, h := range p.Hooks {
		if h.Name.Text == g.Hook || g.Hook == "" && len(p.Hooks) == 1 {
			return ", with a " + h.Size.Decimal(3) + " mm hook"
		}
	}
	return ""
}

func notions(p *pattern.Pattern, needed amounts, carry carrier) []Notion {
	out := make([]Notion, 0, len(p.Notions))
	for _, n := range p.Notions {
		notion := Notion{What: carry.words(n.What)}
		if notion.What == "" {
			notion.What = Name(n.Name.Text)
		}
		if worked := needed.values[n.Name.Text]; worked != nil {
			notion.Amount = figures(worked, p.Tape)
		}
		out = append(out, notion)
	}
	return out
}

// joined joins the words that are there.
func joined(between string, words ...string) string {
	var out []string
	for _, w := range words {
		if w != "" {
			out = append(out, w)
		}
	}
	return strings.Join(out, between)
}
