package grade

import (
	"foundrow/internal/measure"
	"foundrow/internal/notation"
	"foundrow/internal/pattern"
	"foundrow/internal/stitch"
)

// measuredShares are how much yarn one stitch takes, single crochet being 1: 10.6, 15.7 and 20.4 inches of yarn to an inch of a
// single row, in worsted with a 5 mm hook.
// Source: windchilde.com/bluedepth, crochet yarn estimating (measured).
var measuredShares = map[string]measure.Num{
	"sc": measure.Int(1), "hdc": measure.Ratio(148, 100), "dc": measure.Ratio(192, 100),
}

var (
	// perHalf is what every half of a single crochet row adds to a stitch: from sc to dc, which is two of them taller, 0.92 were
	// measured. All other heights are extrapolated by it; slip stitch comes to 0.54, treble to 2.84.
	perHalf = measure.Ratio(46, 100)

	// chainShare is from memory: a chain takes about three times its own length of yarn, where single crochet takes 10.6.
	chainShare = measure.Ratio(3, 10)
)

// stems is how many stitches a unit has that does not say so, and what they are.
// Source: the chart keys of the standard stitch symbols (3-dc cluster, 3-hdc puff, 5-dc popcorn); the bobble is common practice.
var stems = map[string]struct {
	members uint8
	of      string
}{
	"cluster": {3, "dc"}, "puff": {3, "hdc"}, "popcorn": {5, "dc"}, "bobble": {5, "dc"},
}

// share returns how much yarn a stitch takes, single crochet being 1, and whether that was measured: otherwise it is extrapolated by
// its height. Stitches worked together, or into one head, are as much as each of them less the loops that they share.
func (w *plan) share(s stitch.Stitch) (share measure.Num, measured bool) {
	if own := w.specialNamed(s.Name); own != nil {
		if all := w.shares(own.Worked); all.Sign() > 0 {
			return all, false
		}
		tall, _ := stitch.Word(own.Height, w.p.Terms)
		return byHeight(tall), false
	}
	legs := s.Together
	one := stitch.Stitch{Name: s.Name}
	if unit, isUnit := stems[s.Name]; isUnit {
		legs, one.Name = unit.members, unit.of
		if s.Members > 0 {
			legs = s.Members
		}
		if s.Of != "" {
			one.Name = s.Of
		}
	}
	share, measured = measuredShares[one.Name]
	if !measured {
		share = byHeight(one)
	}
	if legs > 1 {
		n := int64(legs)
		return share.Mul(measure.Int(n)).Sub(chainShare.Mul(measure.Int(n - 1))), false
	}
	return share, measured && s.Post == stitch.NoPost
}

// byHeight extrapolates a stitch by its height. One whose height is not known is taken for single crochet.
func byHeight(s stitch.Stitch) measure.Num {
	e := s.Find()
	switch {
	case e == nil || e.Halves == 0:
		return measure.Int(1)
	case e.Class == stitch.Chains:
		return chainShare
	}
	share := measure.Int(1).Add(perHalf.Mul(measure.Int(int64(e.Halves - 2))))
	if e.Class == stitch.Foundation {
		share = share.Add(chainShare) // it makes the chain it stands on
	}
	return share
}

// specialNamed finds a stitch of the pattern's own.
func (w *plan) specialNamed(name string) *pattern.Special {
	for i := range w.p.Special {
		if w.p.Special[i].Abbr.Text == name {
			return &w.p.Special[i]
		}
	}
	return nil
}

// shares adds up what a stitch of the pattern's own is made of.
func (w *plan) shares(how []notation.Clause) measure.Num {
	var all measure.Num
	for _, c := range how {
		switch c := c.(type) {
		case *notation.Make:
			if w.specialNamed(c.Stitch.Name) == nil { // one that is made of itself has no end
				one, _ := w.share(c.Stitch)
				all = all.Add(one.Mul(plainly(c.Count)))
			}
		case *notation.Chain:
			all = all.Add(chainShare.Mul(plainly(c.Count)))
		case *notation.Group:
			all = all.Add(w.shares(c.Body).Mul(plainly(c.Extent.Count)))
		case *notation.Repeat:
			all = all.Add(w.shares(c.Body).Mul(plainly(c.Extent.Count)))
		}
	}
	return all
}

// plainly is a count of how a stitch is made, 1 where it is not said.
func plainly(c notation.Count) measure.Num {
	if c.Said && c.Plain > 0 {
		return measure.Int(int64(c.Plain))
	}
	return measure.Int(1)
}

// A scale says what one stitch weighs in one yarn: as its swatches say, or else its share of what a single crochet weighs.
type scale struct {
	swatches []swatched
	single   measure.Num // what single crochet weighs: in grams where there is a swatch, otherwise beside that of the other yarns
}

type swatched struct {
	stitch stitch.Stitch
	each   measure.Num // grams
}

// of returns what one stitch weighs, and whether that rests on a measurement.
func (sc *scale) of(s stitch.Stitch, w *plan) (each measure.Num, measured bool) {
	for _, sw := range sc.swatches {
		if sw.stitch.Name == s.Name && sw.stitch.Together == s.Together && sw.stitch.Post == s.Post {
			return sw.each, true
		}
	}
	share, measured := w.share(s)
	return share.Mul(sc.single), measured
}

// scales makes a scale of every yarn. A single crochet takes as much length of one yarn as of another, so that without swatches a
// thick yarn is as much heavier as its balls say.
func (w *plan) scales() []scale {
	all := make([]scale, len(w.p.Yarns))
	density := make([]measure.Num, len(all)) // grams to the metre; all 1 where a ball does not say
	known := true
	for i, y := range w.p.Yarns {
		density[i] = y.Weighs.Div(y.Runs)
		known = known && y.Weighs.Sign() > 0 && y.Runs.Sign() > 0
	}
	first := measure.Int(1)
	found := false
	for i := range all {
		if !known {
			density[i] = measure.Int(1)
		}
		if all[i] = w.swatchScale(&w.p.Yarns[i]); all[i].swatches != nil && !found {
			first, found = all[i].single.Div(density[i]), true
		}
	}
	for i := range all {
		if all[i].swatches == nil {
			all[i].single = first.Mul(density[i])
		}
	}
	return all
}

// swatchScale reads the swatches of a yarn. What single crochet weighs in it, all of them together say.
func (w *plan) swatchScale(y *pattern.Yarn) scale {
	var sc scale
	var grams, shares measure.Num
	for _, sw := range y.Swatch {
		words := fields(sw.Stitch.Text)
		s, n := stitch.Read(words, w.p.Terms)
		if own := w.specialNamed(sw.Stitch.Text); own != nil {
			s, n = stitch.Stitch{Name: own.Abbr.Text}, len(words)
		}
		if n != len(words) {
			w.report(sw.Stitch.Span, "unknown-name", "the swatch of yarn "+y.Name.Text+" is of "+sw.Stitch.Text+", which is no stitch", "write the stitch as the rows do: hdc = \"12 g of 300 sts\"")
			continue
		}
		sc.swatches = append(sc.swatches, swatched{s, sw.Grams.Div(sw.Stitches)})
		share, _ := w.share(s)
		grams, shares = grams.Add(sw.Grams), shares.Add(share.Mul(sw.Stitches))
	}
	if sc.swatches != nil {
		sc.single = grams.Div(shares)
	}
	return sc
}
