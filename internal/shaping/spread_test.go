package shaping

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func spreads(largest int) *rapid.Generator[SpreadWant] {
	return rapid.Custom(func(t *rapid.T) SpreadWant {
		w := SpreadWant{
			Over: rapid.IntRange(1, largest).Draw(t, "over"), Events: rapid.IntRange(0, largest).Draw(t, "events"),
			Event: Event(rapid.IntRange(0, int(Between)).Draw(t, "event")), Layout: Layout(rapid.IntRange(0, int(Sections)).Draw(t, "layout")),
			Order: Order(rapid.IntRange(0, int(Alternate)).Draw(t, "order")), Symmetric: rapid.Bool().Draw(t, "symmetric"),
			Most: rapid.SampledFrom([]int{0, 1, 1, 2, 3}).Draw(t, "most"),
		}
		if rapid.Bool().Draw(t, "plain") {
			w.PlainEnds = rapid.IntRange(0, max(1, largest/8)).Draw(t, "plain ends")
		}
		if spoil := rapid.IntRange(0, 60).Draw(t, "spoilt") - 50; spoil > 0 {
			w.Events -= spoil * largest
		}
		return w
	})
}

func mirror(row []int) bool {
	back := slices.Clone(row)
	slices.Reverse(back)
	return slices.Equal(row, back)
}

// written lays a spread out stitch by stitch: 0 is a plain stitch, n an event of n.
func written(s Spread) []int {
	var out []int
	for _, g := range s.Groups {
		for range g.Times {
			out = append(append(out, make([]int, g.Plain)...), g.Events)
		}
	}
	return append(out, make([]int, s.Plain)...)
}

func placed(t *rapid.T, w SpreadWant, s Spread) {
	used, made, events, doubles := 0, 0, 0, 0
	var gaps []int
	gap := 0
	for _, n := range written(s) {
		if n == 0 {
			used, made, gap = used+1, made+1, gap+1
			continue
		}
		used += [...]int{1, 1 + n, n, 0}[w.Event]
		made += [...]int{1 + n, 1, 0, n}[w.Event]
		events += n
		doubles = max(doubles, n)
		gaps, gap = append(gaps, gap), 0
	}
	gaps = append(gaps, gap)
	if used != w.Over || made != s.After || events != w.Events || s.Over != w.Over || doubles > max(1, w.Most) {
		t.Fatalf("%+v: %+v uses %d, makes %d, has %d events, %d in one place", w, s, used, made, events, doubles)
	}
	if events == 0 {
		return
	}
	if gaps[0] < w.PlainEnds || gap < w.PlainEnds {
		t.Fatalf("%+v: the ends of %+v are not plain", w, s)
	}
	if w.Symmetric {
		row := written(s)
		if row = row[w.PlainEnds : len(row)-w.PlainEnds]; w.Layout == Round && slices.Contains(row, 0) {
			row = row[:len(row)-1] // what closes the round stands between its end and its beginning
		}
		if !mirror(row) {
			t.Fatalf("%+v: %+v does not read the same from both ends", w, s)
		}
	}
	if inner := gaps[1 : len(gaps)-1]; len(inner) > 0 && doubles == 1 {
		if slices.Max(inner)-slices.Min(inner) > 1 {
			t.Fatalf("%+v: the gaps of %+v are not even", w, s)
		}
		if ends := gaps[0] + gap - 2*w.PlainEnds; w.Layout == Flat && w.Order < OneRate && !w.Symmetric && (ends > slices.Max(inner)+1 || ends < slices.Min(inner)-1) {
			t.Fatalf("%+v: the ends of %+v are not half an interval", w, s)
		}
		if ends := gaps[0] + gap - 2*w.PlainEnds; w.Layout == Flat && w.Symmetric && w.Event != Between && (ends > slices.Max(inner)+2 || ends < slices.Min(inner)-2) {
			t.Fatalf("%+v: the ends of %+v are not near half an interval", w, s)
		}
		if w.Event == Between && slices.Min(inner) == 0 {
			t.Fatalf("%+v: two stitches are made in one gap: %+v", w, s)
		}
	}
	if w.Event == Between && (gaps[0] == 0 || w.Layout != Round && gap == 0) {
		t.Fatalf("%+v: a stitch is made outside the row: %+v", w, s)
	}
	if last := s.Positions(); len(last) == 0 || last[len(last)-1] != w.Over-s.Plain {
		t.Fatalf("%+v: the last event of %+v is at %v", w, s, last)
	}
}

// TestSpreadsSum: what a spread uses is the row below and its events are those asked for, or it is refused, and every offer is
// itself possible.
func TestSpreadsSum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := spreads(rapid.SampledFrom([]int{12, 60, 300}).Draw(t, "largest")).Draw(t, "want")
		s, refused := SolveSpread(w)
		if refused == nil {
			placed(t, w, s)
			return
		}
		if refused.Why == "" {
			t.Fatalf("%+v is refused without a reason", w)
		}
		for _, o := range refused.Offers {
			s, again := SolveSpread(w.With(o))
			if again != nil {
				t.Fatalf("%+v: %s is offered, but %s", w, o, again.Why)
			}
			placed(t, w.With(o), s)
		}
	})
}

// fits tries every row of events and plain stitches for a want of few stitches: whether one uses all of the row below.
func fits(w SpreadWant) bool {
	if w.Events < 0 || w.Over < 2*w.PlainEnds {
		return false
	}
	var row []int
	var try func(left, events int) bool
	try = func(left, events int) bool {
		if events == 0 {
			full := append(append(make([]int, w.PlainEnds), row...), make([]int, left+w.PlainEnds)...)
			between := w.Event != Between || full[0] == 0 && full[len(full)-1] == 0
			return between && left >= 0 && (!w.Symmetric || mirror(full))
		}
		if left > 0 {
			row = append(row, 0)
			ok := try(left-1, events)
			row = row[:len(row)-1]
			if ok {
				return true
			}
		}
		for n := 1; n <= min(events, max(1, w.Most)); n++ {
			if uses := [...]int{1, 1 + n, n, 0}[w.Event]; uses <= left && !(w.Event == Between && (n > 1 || len(row) > 0 && row[len(row)-1] > 0)) {
				row = append(row, n)
				ok := try(left-uses, events-n)
				row = row[:len(row)-1]
				if ok {
					return true
				}
			}
		}
		return false
	}
	return try(w.Over-2*w.PlainEnds, w.Events)
}

// TestSpreadRefusedOnlyWhereNothingFits: what is refused fits in no arrangement of the row, even an uneven one.
func TestSpreadRefusedOnlyWhereNothingFits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := spreads(9).Draw(t, "want")
		w.Layout = Flat
		_, refused := SolveSpread(w)
		switch {
		case refused == nil && !fits(w):
			t.Fatalf("%+v is placed, but does not fit", w)
		case refused != nil && refused.Reason != NothingLeft && fits(w):
			t.Fatalf("%+v is refused because %s, but it fits", w, refused.Why)
		}
	})
}
