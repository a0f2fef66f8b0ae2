package grade

import (
	"slices"

	"foundrow/internal/formula"
	"foundrow/internal/ledger"
	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

// A YarnNeed is how much of one yarn each size takes, worked out from the stitches of all its pieces. Slices are by size of the grade;
// what could not be worked out is lost.
type YarnNeed struct {
	Yarn       string
	Used       []measure.Num // grams that are worked up: in the sample size, just what the sample weighs
	Grams      []measure.Num // with what is bought to spare
	Metres     []measure.Num // of as many grams; lost where it is not said what a ball weighs and how far it runs
	Balls      []measure.Num // whole ones, in which as many grams are
	Margin     measure.Num   // the share that is bought to spare
	FromSample bool          // scaled to the weighed sample; otherwise it rests on swatches alone
	Reckoned   []string      // stitches whose weight was neither measured nor weighed, in US terms
}

// yarns works out what each size takes of each yarn that was weighed, as part of the sample or as a swatch, and adds it to the
// values. A maker's own body is worked beside the sample, which is what the scale weighed.
func (w *plan) yarns(g *Grade) {
	if len(w.p.Yarns) == 0 || len(w.p.Pieces) == 0 {
		return
	}
	scales := w.scales()
	if len(w.p.Weighed) == 0 && !slices.ContainsFunc(scales, func(sc scale) bool { return sc.swatches != nil }) {
		return
	}
	sample := w.sampleSize()
	if sample < 0 && len(w.p.Weighed) > 0 {
		if !w.maker && len(w.sample) == 0 {
			w.report(w.p.Weighed[0].Span, "sample", "the sample weighs "+w.say(formula.Mass, w.p.Weighed[0].Grams)+", and it is not said which size it is", "write sample = \""+w.scopes[inRows].Sizes[0]+"\" under [sizes], or the size you made")
		}
		return
	}
	here := w.spend(scales)
	beside := here
	at := slices.Index(w.sizes, sample)
	if len(w.p.Weighed) > 0 && (at < 0 || w.maker) {
		beside, at = w.sampleAlone(sample, scales), 0
	}
	for i, y := range w.p.Yarns {
		need := YarnNeed{Yarn: y.Name.Text, Margin: y.Margin, Reckoned: here.reckoned[i]}
		switch grams, all, found := w.weighed(i, beside, at); {
		case found && !all.IsLost() && all.Sign() == 0:
			need.FromSample = true
			need.Used = slices.Repeat([]measure.Num{grams}, len(w.sizes))
			w.ask(y.Name.Span, "yarn-unsaid", w.say(formula.Mass, grams)+" of "+y.Name.Text+" were weighed, and no row is worked in it", "write With "+y.Name.Text+" where it is taken up; until then every size takes as much")
		case found:
			need.FromSample = true
			for _, spent := range here.grams[i] {
				need.Used = append(need.Used, spent.Div(all).Mul(grams))
			}
		case scales[i].swatches != nil:
			need.Used = here.grams[i]
		default:
			continue
		}
		need.buy(y.Weighs, y.Runs)
		g.Yarn = append(g.Yarn, need)
		w.addNeed(g, &need)
	}
	if len(g.Yarn) > 0 {
		w.askInks(here)
		w.examineNeeds(g)
	}
}

// sampleAlone works the size that the designer made by itself, as she made it.
func (w *plan) sampleAlone(sample int, scales []scale) spent {
	alone := newPlan(w.p)
	alone.sizes = []int{sample}
	alone.walk()
	alone.workSizes()
	return alone.spend(scales)
}

// weighed is what the scale said of a yarn, or of all of them, and what the rows of the sample come to: the same part of either is
// worked up. found is false where it was not weighed.
func (w *plan) weighed(yarn int, sample spent, at int) (grams, all measure.Num, found bool) {
	for _, on := range w.p.Weighed {
		switch on.Yarn.Text {
		case w.p.Yarns[yarn].Name.Text:
			return on.Grams, sample.grams[yarn][at], true
		case "":
			for _, bySize := range sample.grams {
				all = all.Add(bySize[at])
			}
			return on.Grams, all, true
		}
	}
	return measure.Num{}, measure.Num{}, false
}

// buy adds the margin, measures it off and counts the balls, in that order.
func (n *YarnNeed) buy(ballWeighs, ballRuns measure.Num) {
	for _, used := range n.Used {
		grams, metres, balls := used.Add(used.Mul(n.Margin)), measure.Lost, measure.Lost
		if ballWeighs.Sign() > 0 {
			balls = grams.Div(ballWeighs)
			if ballRuns.Sign() > 0 {
				metres = balls.Mul(ballRuns)
			}
			if !balls.IsLost() {
				balls = balls.Ceil()
			}
		}
		n.Grams, n.Metres, n.Balls = append(n.Grams, grams), append(n.Metres, metres), append(n.Balls, balls)
	}
}

// addNeed makes values of what is bought, in whole grams and metres: main.weight, main.length, main.balls.
func (w *plan) addNeed(g *Grade, n *YarnNeed) {
	add := func(of string, kind formula.Kind, nums []measure.Num, as func(measure.Num) measure.Num) {
		v := Value{Name: n.Yarn + "." + of, Role: Amount, Kind: kind, BySize: make([]formula.Value, len(nums))}
		known := false
		for s, num := range nums {
			if !num.IsLost() {
				known = true
				num = as(num.Ceil())
			}
			v.BySize[s] = formula.Value{Num: num, Kind: kind}
		}
		if known {
			g.Values = append(g.Values, v)
		}
	}
	same := func(num measure.Num) measure.Num { return num }
	add("weight", formula.Mass, n.Grams, same)
	add("length", formula.Length, n.Metres, func(m measure.Num) measure.Num { return w.p.Tape.Body(m, measure.Metre) })
	add("balls", formula.Number, n.Balls, same)
}

// spent is what the rows of each size take of each yarn: in grams by the swatches, otherwise in shares beside one another.
type spent struct {
	grams    [][]measure.Num // by yarn, then by size
	reckoned [][]string      // by yarn
	unsaid   []string        // pieces with rows that do not say their yarn
	shared   []string        // pieces with rows in several yarns
}

// spend adds up what all pieces take, as often as each is made. A size with a row that does not come out takes nobody knows what.
func (w *plan) spend(scales []scale) spent {
	out := spent{grams: make([][]measure.Num, len(scales)), reckoned: make([][]string, len(scales))}
	for i := range out.grams {
		out.grams[i] = make([]measure.Num, len(w.sizes))
	}
	for p := range w.bench.pieces {
		pc := &w.bench.pieces[p]
		var lines [][]int
		if len(scales) > 1 {
			lines = w.inksOfLines(pc)
		}
		for s := range w.sizes {
			if s >= len(pc.Books) || pc.Books[s] == nil || !pc.Books[s].Closes {
				for i := range out.grams {
					out.grams[i][s] = measure.Lost
				}
				continue
			}
			w.spendBook(pc, pc.Books[s], s, lines, scales, &out)
		}
	}
	return out
}

// spendBook adds what a piece takes in one size. Rows in several yarns take alike of each of them, and rows that do not say take the
// first: either is asked about.
func (w *plan) spendBook(pc *Piece, book *ledger.Book, s int, lines [][]int, scales []scale, out *spent) {
	copies := measure.Int(int64(max(1, w.p.Pieces[pc.Blocks[0]].Make)))
	for _, ink := range w.inks(pc, book, lines) {
		stretch := ledger.Book{Rows: workedRows(pc, book.Rows[ink.from:ink.to]), Known: book.Known}
		total := stretch.Total()
		yarns := ink.yarns
		if len(total) > 0 && len(yarns) != 1 {
			list := &out.shared
			if len(yarns) == 0 {
				list, yarns = &out.unsaid, []int{0}
			}
			note(list, pc.Name)
		}
		for _, y := range yarns {
			for _, k := range total {
				each, measured := scales[y].of(k.Stitch, w)
				if !measured && k.N > 0 {
					note(&out.reckoned[y], k.Stitch.In(stitch.US))
				}
				part := each.Mul(measure.Int(int64(k.N))).Mul(copies).Div(measure.Int(int64(len(yarns))))
				out.grams[y][s] = out.grams[y][s].Add(part)
			}
		}
	}
}

// note adds a name to a list once.
func note(list *[]string, name string) {
	if !slices.Contains(*list, name) {
		*list = append(*list, name)
	}
}

// askInks asks about rows whose words do not say which yarn they take. Where each yarn was weighed for itself, rows in several take
// their part of each.
func (w *plan) askInks(s spent) {
	if len(s.unsaid) > 0 {
		first := w.p.Yarns[0].Name.Text
		w.ask(w.pieceSpan(s.unsaid[0]), "yarn-unsaid", "rows of "+source.List(s.unsaid, "and")+" do not say which yarn they are worked in, and are reckoned in "+first,
			"write With "+first+", or another yarn, where each piece begins")
	}
	if len(s.shared) > 0 && !slices.ContainsFunc(w.p.Weighed, func(on pattern.Weighed) bool { return on.Yarn.Text != "" }) {
		w.ask(w.pieceSpan(s.shared[0]), "yarn-unsaid", "rows of "+source.List(s.shared, "and")+" are worked in several yarns, and are reckoned in equal parts of each",
			"weigh each yarn for itself: weighs = { "+w.p.Yarns[0].Name.Text+" = \"…\", "+w.p.Yarns[1].Name.Text+" = \"…\" }")
	}
}

func (w *plan) pieceSpan(name string) source.Span {
	return w.p.Pieces[w.bench.pieces[w.bench.byName[name]].Blocks[0]].Name.Span
}

// examineNeeds asks about amounts stated by hand that are less than what was worked out.
func (w *plan) examineNeeds(g *Grade) {
	for _, need := range g.Yarn {
		for _, y := range w.p.Yarns {
			if y.Name.Text != need.Yarn {
				continue
			}
			for _, d := range y.Amounts {
				i := slices.IndexFunc(g.Values, func(v Value) bool { return v.Role == Amount && v.Name == y.Name.Text+"."+d.Name.Text })
				if i >= 0 {
					w.examineNeed(d.Name.Span, &g.Values[i], &need)
				}
			}
		}
	}
}

func (w *plan) examineNeed(at source.Span, stated *Value, need *YarnNeed) {
	worked, unit := need.Balls, " balls"
	as := func(n measure.Num) measure.Num { return n }
	switch stated.Kind {
	case formula.Mass:
		worked, unit = need.Grams, " g"
	case formula.Length:
		worked, unit = need.Metres, " m"
		as = func(n measure.Num) measure.Num { return w.p.Tape.BodyInCentimetres(n).Div(measure.Int(100)) }
	}
	var short []int
	for s, v := range stated.BySize {
		if as(v.Num).Less(worked[s]) {
			short = append(short, s)
		}
	}
	if len(short) == 0 {
		return
	}
	spare := ""
	if need.Margin.Sign() > 0 {
		spare = " with " + need.Margin.Mul(measure.Int(100)).Decimal(1) + "% to spare"
	}
	said := w.inEach(len(short), func(i int) (int, string) {
		s := short[i]
		return s, as(stated.BySize[s].Num).Decimal(0) + unit + " for " + worked[s].Ceil().String()
	})
	_, names := w.in(short)
	w.ask(at, "needs-short", "less of "+need.Yarn+" is stated than the rows take"+spare+": "+said, "take the line out, so that the amounts worked out are printed, or weigh the sample again")
	w.findings[len(w.findings)-1].Sizes = names
}
