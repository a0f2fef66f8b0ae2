package grade

import (
	"slices"

	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// Steps says how closely a sweep looks. The zero value looks as closely as is usual.
type Steps struct {
	Pairs int // the most pairs of a body and a tension; 0 is 2,000
}

// A Grid is a pattern with every body and every tension it is to be tried for: makers between and beyond the sizes of its table.
// It is the same for the same pattern. Its parts may be tried at once.
type Grid struct {
	p        *pattern.Pattern
	sizes    []string
	axes     []axis
	tensions []Tension
	bodies   []body
}

// An axis is one measurement that a maker may choose, over the whole range that is tried.
type axis struct {
	name, label string
	ofBody      bool          // it is a measurement of the body, so it finds the nearest size
	bySize      []measure.Num // lost where a size has none
	low, high   measure.Num
	step        measure.Num // of one size to the next
}

// A Tension is how a maker's stitches and rows differ from the designer's, as shares: 1/20 is 5 % more of them to the same length.
type Tension struct{ Stitches, Rows measure.Num }

// IsHers reports whether a tension is the designer's own.
func (t Tension) IsHers() bool { return t.Stitches.Sign() == 0 && t.Rows.Sign() == 0 }

// A body is a size and what is measured otherwise: lost where it is as in the size.
type body struct {
	size int
	own  []measure.Num
}

// A Trial is what came of one pair.
type Trial struct {
	body, tension int
	met           []spot
	fails         bool
}

// A spot is where in the file a rule was met.
type spot struct {
	rule         string
	severity     source.Severity
	line, column int
}

// mostPairs keeps a sweep of the largest pattern to about a second.
const mostPairs = 2000

// Sweep tries a pattern for bodies between and beyond its sizes and for hands tighter and looser than the designer's, and returns
// where every row comes out. The findings say why a pattern cannot be swept; what is found in the trials stands in the result.
// To try the parts of a grid at once, see NewGrid.
func Sweep(p *pattern.Pattern, steps Steps) (*Swept, source.Findings) {
	g, findings := NewGrid(p, steps)
	if g == nil {
		return nil, findings
	}
	parts := make([][]Trial, g.Parts())
	for i := range parts {
		parts[i] = g.Try(i)
	}
	return g.Sum(parts), findings
}

// NewGrid lays out what a pattern is tried for. The grid is nil where the pattern has errors in its own sizes: these are returned.
func NewGrid(p *pattern.Pattern, steps Steps) (*Grid, source.Findings) {
	whole, findings := Work(p)
	if findings.Errors() {
		return nil, findings
	}
	g := &Grid{p: p, sizes: whole.Sizes}
	for _, o := range p.Own {
		if v := whole.Value(o.Name.Text); v != nil {
			if a, has := g.axis(v); has {
				g.axes = append(g.axes, a)
			}
		}
	}
	most := steps.Pairs
	if most <= 0 {
		most = mostPairs
	}
	star := starOfTensions()
	g.bodies = g.layBodies(max(1, most/len(star)))
	g.tensions = tensionsFor(most/len(g.bodies), star)
	if len(p.Gauges) == 0 {
		g.tensions = []Tension{{}}
	}
	return g, nil
}

// Parts is how many parts a grid has; each can be tried by itself.
func (g *Grid) Parts() int { return len(g.tensions) }

// Try tries one part of a grid: every body in one tension.
func (g *Grid) Try(part int) []Trial {
	s := g.stand(g.tensions[part])
	trials := make([]Trial, len(g.bodies))
	for i, b := range g.bodies {
		findings, fails := s.work(b)
		trials[i] = trialOf(findings, fails)
		trials[i].body, trials[i].tension = i, part
	}
	return trials
}

func trialOf(findings source.Findings, fails bool) Trial {
	t := Trial{fails: fails}
	for _, f := range findings {
		if s := (spot{f.Rule, f.Severity, f.Place.Line, f.Place.Column}); !slices.Contains(t.met, s) {
			t.met = append(t.met, s)
		}
	}
	return t
}

// axis lays out the range of a measurement: what the sizes have, and as much beyond them as one size is from the next. One that is
// alike in every size is tried a tenth less and a tenth more.
func (g *Grid) axis(v *Value) (axis, bool) {
	a := axis{name: v.Name, label: v.Label, ofBody: v.Role == Body}
	if a.label == "" {
		a.label = v.Name
	}
	var known []measure.Num
	for _, n := range v.BySize {
		a.bySize = append(a.bySize, n.Num)
		if !n.Num.IsLost() {
			known = append(known, n.Num)
		}
	}
	slices.SortFunc(known, measure.Num.Cmp)
	known = slices.Compact(known)
	if len(known) == 0 || known[0].Sign() <= 0 {
		return a, false
	}
	first, last := known[0], known[len(known)-1]
	below := first.Div(measure.Int(10))
	above := below
	if n := len(known); n > 1 {
		below, above = known[1].Sub(first), last.Sub(known[n-2])
	}
	a.step = below
	if a.low = g.tape(first.Sub(below)); a.low.Sign() <= 0 {
		a.low = first
	}
	a.high = g.tape(last.Add(above))
	return a, true
}

// tape is a length as a tape shows it: what a maker can measure.
func (g *Grid) tape(n measure.Num) measure.Num { return measure.Nearest(n, g.mark(), measure.Num{}) }

// mark is from one mark of the tape to the next.
func (g *Grid) mark() measure.Num {
	if g.p.Tape.Unit == measure.Inch {
		return measure.Ratio(1, 4)
	}
	return measure.Ratio(1, 2)
}

// at is the value of an axis for a body.
func (g *Grid) at(b body, axis int) measure.Num {
	if own := b.own[axis]; !own.IsLost() {
		return own
	}
	return g.axes[axis].bySize[b.size]
}

// Fails reports whether a row did not come out, or another error was found.
func (t Trial) Fails() bool { return t.fails }

// Maker is the maker of a trial, as WorkFor takes her.
func (g *Grid) Maker(t Trial) Maker { return g.maker(g.bodies[t.body], g.tensions[t.tension]) }

// maker is a body and a tension as a maker gives them.
func (g *Grid) maker(b body, t Tension) Maker {
	m := Maker{Size: g.sizes[b.size], Body: map[string]measure.Num{}}
	for i, own := range b.own {
		if !own.IsLost() {
			m.Body[g.axes[i].name] = own
		}
	}
	if !t.IsHers() {
		m.Gauges = t.gauges(g.p)
	}
	return m
}

// gauges are a pattern's gauges as they come out in a tension.
func (t Tension) gauges(p *pattern.Pattern) map[string]pattern.Gauge {
	one, out := measure.Int(1), make(map[string]pattern.Gauge, len(p.Gauges))
	for _, g := range p.Gauges {
		out[g.Name.Text] = pattern.Gauge{Stitches: g.Stitches.Mul(one.Add(t.Stitches)), Rows: g.Rows.Mul(one.Add(t.Rows))}
	}
	return out
}
