package shaping

import (
	"math/bits"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// wants draws what may be asked for: mostly what could be worked, and now and then a number that makes no sense.
func wants(largest int) *rapid.Generator[Want] {
	count, few := rapid.IntRange(0, largest), rapid.IntRange(0, max(1, largest/8))
	return rapid.Custom(func(t *rapid.T) Want {
		w := Want{
			From: count.Draw(t, "from"), To: count.Draw(t, "to"), Over: count.Draw(t, "over"),
			Each:  rapid.SampledFrom([][]int{{2}, {2}, {2}, {1}, {1}, {-2}, {4, 2}, {4, 2}, {2, 4}, {3, 2}, {-4, -2}, {5}, {6, 4}, {2, 1}}).Draw(t, "each"),
			First: rapid.SampledFrom([]Side{Right, Wrong, Either}).Draw(t, "first"), On: rapid.SampledFrom([]Side{Either, Right, Wrong}).Draw(t, "on"),
			Rows:   rapid.SampledFrom([]Parity{AnyNumber, AnyNumber, AnyNumber, Even, Odd}).Draw(t, "parity"),
			AtOnce: rapid.Bool().Draw(t, "at once"), Order: Order(rapid.IntRange(0, int(Alternate)).Draw(t, "order")),
		}
		if rapid.Bool().Draw(t, "narrow") {
			w.AtMost, w.PlainAtStart, w.PlainAtEnd = few.Draw(t, "at most"), few.Draw(t, "plain at start"), few.Draw(t, "plain at end")
		}
		if rapid.Bool().Draw(t, "whole") { // a change that the events reach
			w.From += 1 + 6*abs(w.Each[0]) + 6*abs(w.Each[len(w.Each)-1])
			w.To = w.From + abs(w.Each[0])*rapid.IntRange(-6, 6).Draw(t, "first changes") + abs(w.Each[len(w.Each)-1])*rapid.IntRange(-6, 6).Draw(t, "last changes")
		}
		if spoil := rapid.IntRange(0, 80).Draw(t, "spoilt") - 60; spoil >= 0 && spoil < 9 {
			switch spoil {
			case 0:
				w.From = -1
			case 1:
				w.To = -2
			case 2:
				w.Over = -1
			case 3:
				w.AtMost = -1
			case 4:
				w.PlainAtStart = -1
			case 5:
				w.PlainAtEnd = -1
			default:
				w.Each = [][]int{{}, {0}, {2, -1}}[spoil-6]
			}
		}
		return w
	})
}

// keeps holds a schedule against all that was asked of it.
func keeps(t rapid.TB, w Want, s Schedule) {
	rows, change := 0, 0
	for _, r := range s.Runs {
		rows += r.Every * r.Times
		change += r.Change * r.Times
		if r.Every < 1 || r.Times < 1 {
			t.Fatalf("%+v: a run of nothing in %+v", w, s)
		}
	}
	if rows != w.Over || s.Rows != w.Over || s.From != w.From || s.From+change != w.To || s.To != w.To {
		t.Fatalf("%+v: the runs %+v make %d rows and a change of %d", w, s.Runs, rows, change)
	}
	changes, counts, events := s.Changes(), s.Counts(), s.Events()
	if len(counts) > 0 && counts[len(counts)-1] != w.To {
		t.Fatalf("%+v: the last row has %d", w, counts[len(counts)-1])
	}
	last, smaller := 0, false
	for i, c := range changes {
		row := i + 1
		if s.At(row) != c || slices.Contains(events, row) != (c != 0) {
			t.Fatalf("%+v: row %d is told in two ways", w, row)
		}
		if c == 0 {
			continue
		}
		if !slices.Contains(w.Each, abs(c)) && !slices.Contains(w.Each, -abs(c)) || sign(c) != sign(w.To-w.From) {
			t.Fatalf("%+v: row %d changes %d", w, row, c)
		}
		if w.On != Either && w.First != Either && s.Side(row) != w.On || row <= w.PlainAtStart || row > w.Over-w.PlainAtEnd || last > 0 && row-last < w.AtMost {
			t.Fatalf("%+v: no event may stand in row %d: %+v", w, row, s)
		}
		if len(w.Each) == 2 && abs(c) == abs(w.Each[1]) {
			smaller = true
		} else if smaller && w.Each[0] != w.Each[1] {
			t.Fatalf("%+v: the changes are not in their order: %+v", w, s)
		}
		last = row
	}
	evenly(t, w, s, events)
}

// evenly checks that the intervals between events are of two sizes at most that are neighbours, and that the first is no longer.
func evenly(t rapid.TB, w Want, s Schedule, events []int) {
	if len(events) == 0 {
		return
	}
	step := 1
	if w.First != Either && w.On != Either {
		step = 2
	}
	least, largest := 0, 0
	for i := 1; i < len(events); i++ {
		d := events[i] - events[i-1]
		if least == 0 {
			least, largest = d, d
		}
		least, largest = min(least, d), max(largest, d)
	}
	first := events[0] - w.PlainAtStart
	if largest-least > step || w.AtOnce && first > step || len(events) > 1 && first > largest+step {
		t.Fatalf("%+v: the intervals run from %d to %d, the first is %d", w, least, largest, first)
	}
	if plain := s.Rows - events[len(events)-1]; w.Order < OneRate && !w.AtOnce && plain >= w.PlainAtEnd+step {
		t.Fatalf("%+v: %d rows are left plain at the end", w, plain)
	}
}

func sign(n int) int {
	switch {
	case n < 0:
		return -1
	case n > 0:
		return 1
	}
	return 0
}

// TestSchedulesSum: the rows of a schedule sum to the rows given and its events to the change asked, or it is refused, and every
// offer is itself possible.
func TestSchedulesSum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := wants(rapid.SampledFrom([]int{12, 60, 300}).Draw(t, "largest")).Draw(t, "want")
		s, refused := Solve(w)
		if refused == nil {
			keeps(t, w, s)
			return
		}
		offered(t, w, refused)
	})
}

func offered(t rapid.TB, w Want, refused *Refusal) {
	if refused.Why == "" || refused.Reason == Possible {
		t.Fatalf("%+v is refused without a reason", w)
	}
	for _, o := range refused.Offers {
		s, again := Solve(w.With(o))
		if again != nil {
			t.Fatalf("%+v: %s is offered, but %s", w, o, again.Why)
		}
		keeps(t, w.With(o), s)
	}
}

// canBe tries every set of rows and every tally of events for a want of few rows.
func canBe(w Want) bool {
	if min(w.From, w.To) < 1 || min(w.Over, w.AtMost, w.PlainAtStart, w.PlainAtEnd) < 0 || w.PlainAtStart+w.PlainAtEnd > w.Over ||
		w.Rows == Even && w.Over%2 == 1 || w.Rows == Odd && w.Over%2 == 0 {
		return false
	}
	if w.From == w.To {
		return true
	}
	if len(w.Each) == 0 || len(w.Each) > 2 || slices.Contains(w.Each, 0) || w.Each[0]*w.Each[len(w.Each)-1] < 0 || w.Each[0] < 0 && w.To > w.From {
		return false
	}
	room := 0
	for set := range 1 << w.Over {
		last, good := 0, true
		for row := 1; row <= w.Over; row++ {
			if set&(1<<(row-1)) == 0 {
				continue
			}
			shows := w.First
			if w.First != Either && row%2 == 0 {
				shows = Right + Wrong - w.First
			}
			if w.First == Either {
				shows = Right
			}
			good = good && row > w.PlainAtStart && row <= w.Over-w.PlainAtEnd && (w.On == Either || shows == w.On) && (last == 0 || row-last >= w.AtMost)
			last = row
		}
		if good {
			room = max(room, bits.OnesCount(uint(set)))
		}
	}
	for a := 0; a <= room; a++ {
		for b := 0; a+b <= room; b++ {
			if a*abs(w.Each[0])+b*abs(w.Each[len(w.Each)-1]) == abs(w.To-w.From) {
				return true
			}
		}
	}
	return false
}

// TestRefusedOnlyWhereNothingCanBe: what is refused cannot be worked by any choice of rows, and what is not refused can.
func TestRefusedOnlyWhereNothingCanBe(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := wants(11).Draw(t, "want")
		if _, refused := Solve(w); (refused == nil) != canBe(w) {
			t.Fatalf("%+v: refused %v, but whether it can be is %v", w, refused, canBe(w))
		}
	})
}

// TestEverySmallSchedule works every change over every few rows in every manner: more than 100,000 of them.
func TestEverySmallSchedule(t *testing.T) {
	solved, refusals := 0, map[Reason]int{}
	for over := range 21 {
		for change := -24; change <= 24; change++ {
			for _, each := range [][]int{{1}, {2}, {4, 2}, {3, 2}} {
				for manner := range 2 * 3 * 3 * 5 {
					w := Want{From: 25, To: 25 + change, Over: over, Each: each, First: Right, AtOnce: manner%2 == 1, On: Side(manner / 2 % 3), AtMost: manner / 6 % 3, Order: Order(manner / 18)}
					w.PlainAtEnd = over / 7
					s, refused := Solve(w)
					if refused == nil {
						keeps(t, w, s)
						solved++
						continue
					}
					refusals[refused.Reason]++
					if change%8 == 0 || over%8 == 0 { // the offers of some of them
						offered(t, w, refused)
					}
				}
			}
		}
	}
	t.Logf("%d solved, %d refused for their rows, %d for a change that does not divide", solved, refusals[TooFewRows], refusals[OddChange])
	if solved < 100_000 || len(refusals) != 2 {
		t.Errorf("%d were solved, %v refused", solved, refusals)
	}
}
