package grade

import (
	"cmp"
	"slices"

	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// Swept is what came of a sweep. Every pair that was tried and lies inside the Good bounds of Own, Stitches and Rows came out, row
// by row; what lies between two that were tried was not tried.
type Swept struct {
	Pattern  *pattern.Pattern
	Pairs    int     // tried
	CameOut  int     // of them, without an error
	Own      []Range // in every tension inside Stitches and Rows
	InHers   []Range // the same measurements in the designer's own tension alone: no narrower
	Stitches Range   // tension, as a share more or less than the designer's
	Rows     Range
	Met      []Met    // what was found, errors first, the most frequent first
	Smallest *Example // nil when everything came out
}

// A Range is one measurement or tension: from where to where it was tried, and from where to where every row comes out, whatever the
// others are inside theirs.
type Range struct {
	Name, Label string
	Tried, Good Bounds
	None        bool // there is no such range
}

// Bounds are a least and a greatest, both in it.
type Bounds struct{ From, To measure.Num }

// Met is a finding of some pairs: the same rule at the same place. Queries that every pair meets are the pattern's own, and left
// out.
type Met struct {
	Pairs   int
	Nearest Example // of the pairs that meet it, the one nearest to a size
	Finding source.Finding
}

// An Example is one pair, with what is found in it.
type Example struct {
	Size     string
	Own      []Change
	Tension  Tension
	Findings source.Findings
}

// A Change is a measurement that is not the size's.
type Change struct {
	Name, Label string
	Is, InSize  measure.Num
}

// Sum adds up the parts of a grid, in their order.
func (g *Grid) Sum(parts [][]Trial) *Swept {
	trials := slices.Concat(parts...)
	s := &Swept{Pattern: g.p, Pairs: len(trials)}
	var nearest *Trial
	for i := range trials {
		t := &trials[i]
		if !t.fails {
			s.CameOut++
		} else if nearest == nil || g.far(t).Less(g.far(nearest)) {
			nearest = t
		}
	}
	if nearest != nil {
		e := g.shrink(nearest)
		s.Smallest = &e
	}
	s.Met = g.gather(trials)
	ranges := g.box(trials, nil)
	s.Own, s.Stitches, s.Rows = ranges[:len(g.axes)], ranges[len(g.axes)], ranges[len(g.axes)+1]
	hers := slices.DeleteFunc(slices.Clone(trials), func(t Trial) bool { return !g.tensions[t.tension].IsHers() })
	s.InHers = g.box(hers, ranges)[:len(g.axes)]
	return s
}

// far is how far a pair is from its size: measurements in steps from one size to the next, tensions in twentieths.
func (g *Grid) far(t *Trial) measure.Num {
	b, hands := g.bodies[t.body], g.tensions[t.tension]
	sum := hands.Stitches.Abs().Add(hands.Rows.Abs()).Mul(measure.Int(20))
	for i, own := range b.own {
		if in := g.axes[i].bySize[b.size]; !own.IsLost() && !in.IsLost() {
			sum = sum.Add(own.Sub(in).Abs().Div(g.axes[i].step))
		}
	}
	return sum
}

// gather counts what the trials met.
func (g *Grid) gather(trials []Trial) []Met {
	type count struct {
		spot    spot
		pairs   int
		nearest *Trial
	}
	var counts []count
	at := map[spot]int{}
	for i := range trials {
		t := &trials[i]
		for _, m := range t.met {
			k, there := at[m]
			if !there {
				k = len(counts)
				at[m], counts = k, append(counts, count{spot: m, nearest: t})
			}
			if counts[k].pairs++; g.far(t).Less(g.far(counts[k].nearest)) {
				counts[k].nearest = t
			}
		}
	}
	slices.SortStableFunc(counts, func(a, b count) int {
		return cmp.Or(cmp.Compare(a.spot.severity, b.spot.severity), cmp.Compare(b.pairs, a.pairs), cmp.Compare(a.spot.line, b.spot.line), cmp.Compare(a.spot.column, b.spot.column))
	})
	var out []Met
	for _, c := range counts {
		if c.spot.severity == source.Query && c.pairs == len(trials) {
			continue
		}
		m := Met{Pairs: c.pairs, Nearest: g.example(g.bodies[c.nearest.body], g.tensions[c.nearest.tension])}
		for _, f := range m.Nearest.Findings {
			if f.Rule == c.spot.rule && f.Place.Line == c.spot.line && f.Place.Column == c.spot.column {
				m.Finding = f
				break
			}
		}
		out = append(out, m)
	}
	return out
}

// example works one pair by itself.
func (g *Grid) example(b body, t Tension) Example {
	e := Example{Size: g.sizes[b.size], Tension: t}
	e.Findings, _ = g.stand(t).work(b)
	for i, own := range b.own {
		if in := g.axes[i].bySize[b.size]; !own.IsLost() && (in.IsLost() || own.Cmp(in) != 0) {
			e.Own = append(e.Own, Change{g.axes[i].name, g.axes[i].label, own, in})
		}
	}
	e.Findings.Sort()
	return e
}

// shrink brings a pair that fails as near to its size as it still fails: what it can fail without is left out, and of the rest the
// difference is halved down to the marks of a tape and hundredths of a tension.
func (g *Grid) shrink(t *Trial) Example {
	b, hands := g.bodies[t.body], g.tensions[t.tension]
	b.own = slices.Clone(b.own)
	fails := func() bool {
		_, fails := g.stand(hands).work(b)
		return fails
	}
	for i := range b.own {
		if was := b.own[i]; !was.IsLost() {
			if b.own[i] = measure.Lost; fails() {
				continue
			}
			b.own[i] = was
			nearer(&b.own[i], g.axes[i].bySize[b.size], g.mark(), fails)
		}
	}
	nearer(&hands.Stitches, measure.Num{}, percent(1), fails)
	nearer(&hands.Rows, measure.Num{}, percent(1), fails)
	return g.example(b, hands)
}

// nearer brings one number of a pair that fails to the usual one, where it fails still, or as near to it as halving finds.
func nearer(n *measure.Num, usual, mark measure.Num, fails func() bool) {
	far := *n
	if far == usual || usual.IsLost() {
		return
	}
	if *n = usual; fails() {
		return
	}
	near := usual
	for {
		*n = measure.Nearest(near.Add(far).Div(measure.Int(2)), mark, measure.Num{})
		if *n == near || *n == far {
			break
		}
		if fails() {
			far = *n
		} else {
			near = *n
		}
	}
	*n = far
}
