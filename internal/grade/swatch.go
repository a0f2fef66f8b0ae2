package grade

import (
	"slices"

	"foundrow/internal/formula"
	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// A Reading is what was counted over what was measured on one part of a swatch, the lengths in the tape's unit. What is zero was not
// counted.
type Reading struct {
	Stitches, Width measure.Num
	Rows, Height    measure.Num
}

// A Swatch is what readings of one state come to: how many stitches and how many rows to a length.
type Swatch struct{ Stitches, Rows Spread }

// A Spread is a mean between the least and the greatest of Readings. Where nothing was read all are zero.
type Spread struct {
	Readings          int
	Mean, Least, Most measure.Num
}

// Apart is how far the readings lie apart, as a share of their mean.
func (s Spread) Apart() measure.Num {
	if s.Readings == 0 {
		return measure.Num{}
	}
	return s.Most.Sub(s.Least).Div(s.Mean)
}

// Measure brings readings to a length. The mean is all that was counted over all that was measured, so that a longer reading, which is
// the better one, weighs more.
func Measure(readings []Reading, over measure.Num) Swatch {
	var s Swatch
	var stitches, width, rows, height measure.Num
	for _, r := range readings {
		s.Stitches.read(r.Stitches, r.Width, over, &stitches, &width)
		s.Rows.read(r.Rows, r.Height, over, &rows, &height)
	}
	return s
}

// read adds one reading to a spread, and to what was counted and measured in all.
func (s *Spread) read(count, length, over measure.Num, counted, measured *measure.Num) {
	if count.Sign() <= 0 || length.Sign() <= 0 {
		return
	}
	*counted, *measured = counted.Add(count), measured.Add(length)
	one := count.Div(length).Mul(over)
	if s.Readings == 0 || one.Less(s.Least) {
		s.Least = one
	}
	if s.Readings == 0 || s.Most.Less(one) {
		s.Most = one
	}
	s.Readings++
	s.Mean = counted.Div(*measured).Mul(over)
}

// InGauge works a pattern with one of its gauges replaced; what is zero in the new one stays. Kept has the counts as they are written
// out now, made in the new gauge; Anew has them counted again from it. A name that is no gauge's changes nothing.
func InGauge(p *pattern.Pattern, name string, by pattern.Gauge) (kept, anew *Grade) {
	q := *p
	q.Gauges = slices.Clone(p.Gauges)
	for i := range q.Gauges {
		if g := &q.Gauges[i]; g.Name.Text == name {
			n := overlaid(gauge(*g), gauge(by))
			g.Stitches, g.Over, g.Rows, g.RowsOver = n.Stitches, n.Over, n.Rows, n.RowsOver
		}
	}
	q.Sample = nil // it was made in the other gauge
	anew, _ = Work(&q)
	now, _ := Work(p)
	q.Pins = nil
	for _, v := range now.Values {
		if v.Role == Count {
			q.Pins = append(q.Pins, asItIs(v))
		}
	}
	kept, _ = Work(&q)
	return kept, anew
}

// asItIs is a count pinned to what it is in every size.
func asItIs(v Value) pattern.Pin {
	pin := pattern.Pin{Name: pattern.Words{Text: v.Name}}
	for s, n := range v.BySize {
		if n.Num.IsWhole() && !n.Num.IsLost() {
			text := n.Num.String()
			f, _ := formula.Parse(source.NewFile("", text), 0, text)
			pin.Parts = append(pin.Parts, pattern.Part{Sizes: []int{s}, Formula: f})
		}
	}
	return pin
}
