package proof

import (
	"slices"
	"strconv"
	"strings"

	"foundrow/internal/formula"
	"foundrow/internal/grade"
	"foundrow/internal/measure"
	"foundrow/internal/notation"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// unevenHalves finds halves of a count that is odd in some sizes only: rounded, the two halves no longer make the whole there.
func unevenHalves(e *edit) []note {
	var notes []note
	for _, d := range e.pattern.Counts {
		i := slices.IndexFunc(e.Values, func(v grade.Value) bool { return v.Name == d.Name.Text && v.Role == grade.Count })
		if i < 0 || !e.isHalf(d) {
			continue
		}
		var odd []string
		for s, v := range e.Values[i].BySize {
			if v.Story.Way != formula.NotRounded && v.Story.From.Under() == 2 {
				odd = append(odd, e.size(s))
			}
		}
		if len(odd) > 0 && len(odd) < e.sizes() {
			notes = append(notes, note{
				span: d.Name.Span, sizes: odd,
				message: "`" + d.Name.Text + "` is half of a count that is odd in " + source.SizeNames(odd, e.Sizes) + " and even in the other sizes, so that the halves do not match there",
				fix:     "round the whole to even, or add the odd stitch in words for these sizes",
			})
		}
	}
	return notes
}

// isHalf reports whether a count is half of another: "front / 2, rounded up to whole".
func (e *edit) isHalf(d pattern.Definition) bool {
	if len(d.Parts) != 1 || d.Parts[0].Formula == nil {
		return false
	}
	sum, _, _ := strings.Cut(d.Parts[0].Formula.Text, ",")
	name, by, halved := strings.Cut(sum, "/")
	if !halved || strings.TrimSpace(by) != "2" {
		return false
	}
	return slices.ContainsFunc(e.Values, func(v grade.Value) bool { return v.Name == strings.TrimSpace(name) && v.Kind.IsCount() })
}

// mixedSides finds pieces worked flat whose rows run on to a number that is odd in some sizes and even in others while more
// follows: there one size goes on with the right side facing and another with the wrong side.
func mixedSides(e *edit) []note {
	var notes []note
	for _, p := range e.passages {
		at, last := e.lastRow(p)
		if last == nil || !e.goesOn(p.piece, p.line) {
			continue
		}
		var odd, even []string
		for s, n := range last {
			whole, ok := n.Int()
			switch {
			case !ok:
			case whole%2 == 0:
				even = append(even, e.size(s))
			default:
				odd = append(odd, e.size(s))
			}
		}
		if len(odd) > 0 && len(even) > 0 {
			notes = append(notes, note{
				span: at, sizes: smaller(odd, even),
				message: "the rows end on an odd number in " + source.SizeNames(odd, e.Sizes) + " and on an even one in " + source.SizeNames(even, e.Sizes) + ", so that what follows meets the other side of the work",
				fix:     "round the count to even, or to odd, in every size",
			})
		}
	}
	return notes
}

// lastRow returns the last row that the label of a line counts to, in every size, where a value says so: "Rows 3 to {n}:". Rounds that
// are not turned have one side only.
func (e *edit) lastRow(p passage) (source.Span, []measure.Num) {
	words := p.words
	if p.kind != lead || len(words) < 4 || !words[0].is("rows") {
		return source.Span{}, nil
	}
	for i := len(words) - 1; i > 0; i-- {
		w := words[i]
		if w.kind != value || w.slot < 0 || int(w.slot) >= len(e.Slots) || !words[i-1].is("to", "-", "–") {
			continue
		}
		nums := make([]measure.Num, len(e.Slots[w.slot]))
		for s, v := range e.Slots[w.slot] {
			nums[s] = v.Num
		}
		return w.span, nums
	}
	return source.Span{}, nil
}

// goesOn reports whether rows follow a line of a piece, there or where the piece is continued, that are the same for all sizes.
func (e *edit) goesOn(piece, line int) bool {
	p := e.pattern.Pieces[piece]
	rest := p.Rows.Lines[line+1:]
	for _, later := range e.pattern.Pieces[piece+1:] {
		if later.Continued && later.Name.Text == p.Name.Text && later.Rows != nil {
			rest = slices.Concat(rest, later.Rows.Lines)
		}
	}
	for _, l := range rest {
		if only := l.For(); only.Rest || len(only.Names) > 0 {
			return false
		}
		if row, is := l.(*notation.Row); is && !row.Label.Round && (len(row.Label.Numbers) > 0 || row.Label.Words != "") {
			return true
		}
	}
	return false
}

func smaller(a, b []string) []string {
	if len(b) < len(a) {
		return b
	}
	return a
}

// endings finds counts over a stitch pattern of so many stitches that leave other stitches over in one size than in another: every
// size would end its rows differently. The gauge says how many stitches a repeat has.
func endings(e *edit) []note {
	var notes []note
	for _, g := range e.pattern.Gauges {
		of := measure.Int(int64(g.Written.Of))
		if g.Written.Of < 2 {
			continue
		}
		for _, d := range e.pattern.Counts {
			i := slices.IndexFunc(e.Values, func(v grade.Value) bool { return v.Name == d.Name.Text && v.Kind == formula.Stitches })
			if i < 0 || !e.madeAt(d, g) {
				continue
			}
			over := make([]measure.Num, 0, e.sizes())
			for _, v := range e.Values[i].BySize {
				over = append(over, v.Num.Sub(measure.Down(v.Num, of, measure.Num{})))
			}
			usual := commonest(over)
			var differing []string
			for s, n := range over {
				if n.Cmp(usual) != 0 {
					differing = append(differing, e.size(s))
				}
			}
			if len(differing) == 0 {
				continue
			}
			plus := ""
			if usual.Sign() > 0 {
				plus = " + " + usual.String()
			}
			notes = append(notes, note{
				span: d.Name.Span, sizes: differing,
				message: "`" + d.Name.Text + "` ends the repeat of " + strconv.Itoa(g.Written.Of) + " sts differently in " + source.SizeNames(differing, e.Sizes) + " than in the other sizes",
				fix:     "rounded to the nearest multiple of " + of.String() + plus + ", all sizes end alike",
			})
		}
	}
	return notes
}

// madeAt reports whether a count comes of a gauge.
func (e *edit) madeAt(d pattern.Definition, g pattern.Gauge) bool {
	return slices.ContainsFunc(d.Parts, func(p pattern.Part) bool {
		if p.Formula == nil {
			return false
		}
		text := flat(p.Formula.Text)
		return strings.Contains(text, " at "+g.Name.Text+" ") || len(e.pattern.Gauges) == 1 && strings.Contains(text, " in stitches ")
	})
}

// commonest returns the number met most often, the first of those met as often.
func commonest(nums []measure.Num) measure.Num {
	best, most := measure.Num{}, 0
	for _, n := range nums {
		times := 0
		for _, m := range nums {
			if m.Cmp(n) == 0 {
				times++
			}
		}
		if times > most {
			best, most = n, times
		}
	}
	return best
}
