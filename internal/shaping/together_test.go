package shaping

import (
	"math/bits"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// pairs draws two wants over the same rows.
func pairs(largest int) *rapid.Generator[[2]Want] {
	return rapid.Custom(func(t *rapid.T) [2]Want {
		a, b := wants(largest).Draw(t, "first"), wants(largest).Draw(t, "second")
		b.Over, b.First, b.Rows = a.Over, a.First, a.Rows
		return [2]Want{a, b}
	})
}

// TestTogetherKeepsBoth: each of two schedules solved together is all that was asked of it, and the rows say what each does.
func TestTogetherKeepsBoth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := pairs(40).Draw(t, "wants")
		table, refused := SolveTogether(w[:]...)
		_, alone := Solve(w[0])
		_, other := Solve(w[1])
		if (refused == nil) != (alone == nil && other == nil) {
			t.Fatalf("%+v: %v together, %v and %v alone", w, refused, alone, other)
		}
		if refused != nil {
			return
		}
		for i, s := range table.Parts {
			together(t, w[i], s)
			for row, kind := range table.Rows {
				if kind.Has(i) != (s.At(row+1) != 0) {
					t.Fatalf("row %d of %+v does not say what part %d does", row+1, table, i)
				}
			}
		}
		var out []Rows
		for _, b := range table.Blocks() {
			for range b.Times {
				out = append(out, b.Rows...)
			}
		}
		if !slices.Equal(out, table.Rows) {
			t.Fatalf("the blocks of %+v are %+v", table, table.Blocks())
		}
	})
}

// together is keeps without what is asked of the intervals of a schedule that stands alone.
func together(t *rapid.T, w Want, s Schedule) {
	rows, change := 0, 0
	for _, r := range s.Runs {
		rows, change = rows+r.Every*r.Times, change+r.Change*r.Times
	}
	if rows != w.Over || w.From+change != w.To {
		t.Fatalf("%+v: the runs %+v make %d rows and a change of %d", w, s.Runs, rows, change)
	}
	last := 0
	for _, row := range s.Events() {
		if w.On != Either && w.First != Either && s.Side(row) != w.On || row <= w.PlainAtStart || row > w.Over-w.PlainAtEnd || last > 0 && row-last < w.AtMost {
			t.Fatalf("%+v: no event may stand in row %d: %+v", w, row, s)
		}
		last = row
	}
}

// TestApart: two wants whose events may stand as close as they like are solved apart exactly where their rows suffice.
func TestApart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := pairs(10).Draw(t, "wants")
		w[0].AtMost, w[1].AtMost = 0, 0
		table, refused := SolveApart(w[0], w[1])
		if refused == nil {
			if table.Apart() != nil {
				t.Fatalf("%+v share a row: %+v", w, table)
			}
			together(t, w[0], table.Parts[0])
			together(t, w[1], table.Parts[1])
			return
		}
		if refused.Reason != Collide {
			return
		}
		for set := range 1 << w[0].Over { // the rows of the first; the second has the others
			if mayIn(w[0], set) && mayIn(w[1], ^set) {
				t.Fatalf("%+v: refused because %s, but %b would do", w, refused.Why, set)
			}
		}
		for _, o := range refused.Offers {
			if _, again := SolveApart(w[0].With(o), w[1].With(o)); again != nil {
				t.Fatalf("%+v: %s is offered, but %s", w, o, again.Why)
			}
		}
	})
}

// mayIn reports whether the events of a want fit in a set of rows.
func mayIn(w Want, set int) bool {
	rows := 0
	for row := 1; row <= w.Over; row++ {
		if set&(1<<(row-1)) != 0 && row > w.PlainAtStart && row <= w.Over-w.PlainAtEnd && (w.On == Either || w.First == Either || side(w.First, row) == w.On) {
			rows++
		}
	}
	_, reason := w.tally(rows)
	return reason == Possible
}

func TestRowsAreNamed(t *testing.T) {
	body := Want{From: 80, To: 120, Over: 40, Each: []int{2}, First: Right, On: Right}
	sleeve := Want{From: 40, To: 70, Over: 40, Each: []int{2}, First: Right, On: Right}
	table, refused := SolveTogether(body, sleeve)
	if refused != nil {
		t.Fatal(refused.Why)
	}
	names := []string{"body", "sleeve"}
	var kinds []string
	for _, k := range table.Kinds() {
		kinds = append(kinds, k.Words(names))
	}
	// Where the body grows more often than the sleeve there is no row for the sleeve alone.
	if want := []string{"even", "body only", "both"}; !slices.Equal(kinds, want) {
		t.Errorf("the rows are %v, wanted %v", kinds, want)
	}
	both := 0
	for _, k := range table.Rows {
		if bits.OnesCount16(uint16(k)) == 2 {
			both++
		}
	}
	if both != 15 {
		t.Errorf("%d rows shape both, wanted 15", both)
	}
	if got := Rows(0b101).Words([]string{"front", "back", "sleeve"}); got != "front and sleeve" {
		t.Errorf("the row is called %q", got)
	}
	if got := Rows(0b111).Words([]string{"front", "back", "sleeve"}); got != "all" {
		t.Errorf("the row is called %q", got)
	}
}

// TestEdgesMeet: an armhole and a neck worked at the same time may use up a front.
func TestEdgesMeet(t *testing.T) {
	armhole := Schedule{From: 30, To: 18, Rows: 12, Runs: []Run{{Every: 1, Times: 12, Change: -1}}}
	neck := Schedule{From: 30, To: 12, Rows: 12, Runs: []Run{{Every: 3, Times: 1}, {Every: 1, Times: 9, Change: -2}}}
	table, refused := Together(armhole, neck)
	if refused != nil {
		t.Fatal(refused.Why)
	}
	if counts, refused := table.Counts(31, 1); refused != nil || counts[11] != 1 || counts[3] != 25 {
		t.Errorf("31 stitches come to %v, %v", counts, refused)
	}
	_, refused = table.Counts(28, 1)
	if refused == nil {
		t.Fatal("28 stitches were not refused")
	}
	if want := "the edges meet in row 12: 28 stitches are 3 too few"; refused.Why != want {
		t.Errorf("refused because %s, wanted %s", refused.Why, want)
	}
	if o := refused.Offers[0]; o.Key != KeyFrom || o.Values[0] != 31 {
		t.Errorf("%s is offered", o)
	}
	if refused := table.Apart(); refused == nil || refused.Why != "two are shaped in row 4 and in 8 more" {
		t.Errorf("not apart: %+v", refused)
	}
	if _, refused := Together(armhole, Schedule{Rows: 10}); refused == nil || refused.Which != 1 {
		t.Errorf("10 and 12 rows: %+v", refused)
	}
}
