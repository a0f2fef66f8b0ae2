package shaping

import "slices"

// A Want is shaping that is asked for: from one count to another over a number of rows.
type Want struct {
	From, To int // stitches before and after
	Over     int // rows, the plain ones among them

	// Each is how many stitches one event changes, both ends together: 2, or at most two numbers, [4, 2], the first worked first and
	// no more of the larger than needed. Without a sign it goes the way from From to To; below zero it only takes away.
	Each []int

	First        Side   // of the first row; Either for rounds
	On           Side   // the rows that may have an event
	AtMost       int    // events stand at least so many rows apart; 0 and 1 ask nothing
	PlainAtStart int    // rows worked plain before the counting begins
	PlainAtEnd   int    // at least so many rows plain after the last event
	Rows         Parity // what Over must be, so that all sizes go on from the same side
	AtOnce       bool   // the first event stands in the first row that may have one, not at the end of an interval
	Order        Order
}

// With returns the want with one number changed to what was offered.
func (w Want) With(o Offer) Want {
	switch o.Key {
	case KeyFrom:
		w.From = o.Values[0]
	case KeyTo:
		w.To = o.Values[0]
	case KeyOver:
		w.Over = o.Values[0]
	case KeyEach:
		w.Each = o.Values
	case KeyOn:
		w.On = Either
	case KeyAtMost:
		w.AtMost = o.Values[0]
	case KeyPlainAtStart:
		w.PlainAtStart = o.Values[0]
	case KeyPlainAtEnd:
		w.PlainAtEnd = o.Values[0]
	}
	return w
}

// places are the rows that may have an event: n of them, step rows apart, the first at row first; at least gap of them lie from one
// event to the next.
type places struct{ first, step, n, gap int }

func (w Want) places() places {
	p := places{first: w.PlainAtStart + 1, step: 1}
	if w.First != Either && w.On != Either {
		p.step = 2
		if side(w.First, p.first) != w.On {
			p.first++
		}
	}
	p.gap = max(1, (w.AtMost+p.step-1)/p.step)
	switch last := w.Over - w.PlainAtEnd; {
	case w.First == Either && w.On == Wrong: // rounds have no wrong side
	case last >= p.first:
		p.n = (last-p.first)/p.step + 1
	}
	return p
}

// side returns which side a row shows.
func side(first Side, row int) Side {
	if first == Either || row%2 == 1 {
		return first
	}
	return Right + Wrong - first
}

// room is how many events the places have room for.
func (p places) room() int {
	if p.n == 0 {
		return 0
	}
	return (p.n-1)/p.gap + 1
}

// A tally is how many events there are of the larger change and of the smaller.
type tally struct {
	larger, smaller       int // stitches of one event, without sign
	ofLarger, ofSmaller   int
	largerFirst, decrease bool
}

func (t tally) events() int { return t.ofLarger + t.ofSmaller }

// change is what the i-th event, from 0, does to the count.
func (t tally) change(i int) int {
	c := t.larger
	if t.largerFirst && i >= t.ofLarger || !t.largerFirst && i < t.ofSmaller {
		c = t.smaller
	}
	if t.decrease {
		return -c
	}
	return c
}

// tally divides the change into events, with as few of the larger as fit in the room. It reports OddChange where no events sum to
// it, TooFewRows where none that do fit.
func (w Want) tally(room int) (tally, Reason) {
	change := w.To - w.From
	t := tally{decrease: change < 0}
	if change == 0 {
		return t, Possible
	}
	if len(w.Each) == 0 || len(w.Each) > 2 || slices.Contains(w.Each, 0) || slices.Min(w.Each) < 0 && slices.Max(w.Each) > 0 {
		return t, BadEach
	}
	if w.Each[0] < 0 && change > 0 {
		return t, WrongWay
	}
	first, last := abs(w.Each[0]), abs(w.Each[len(w.Each)-1])
	t.larger, t.smaller, t.largerFirst = max(first, last), min(first, last), first >= last
	reason := OddChange
	for change = abs(change); t.ofLarger*t.larger <= change; t.ofLarger++ {
		if rest := change - t.ofLarger*t.larger; rest%t.smaller == 0 {
			if t.ofSmaller = rest / t.smaller; t.events() <= room {
				return t, Possible
			}
			reason = TooFewRows
		}
		if t.larger == t.smaller {
			break
		}
	}
	return t, reason
}

// fewest is the least number of events that sum to the change, wherever they may go; 0 where none do.
func (t tally) fewest(change int) int {
	for ofLarger := abs(change) / t.larger; ofLarger >= 0; ofLarger-- {
		if rest := abs(change) - ofLarger*t.larger; rest%t.smaller == 0 {
			return ofLarger + rest/t.smaller
		}
	}
	return 0
}

// check returns why a want cannot be worked, or Possible, and what was found on the way. It makes no words, because it is also asked
// for every offer.
func (w Want) check() (places, tally, Reason) {
	switch {
	case max(w.From, w.To, w.Over, w.AtMost, w.PlainAtStart, w.PlainAtEnd) > most || slices.ContainsFunc(w.Each, func(n int) bool { return n > most || n < -most }):
		return places{}, tally{}, TooLarge
	case min(w.From, w.To, w.Over, w.AtMost, w.PlainAtStart, w.PlainAtEnd) < 0:
		return places{}, tally{}, Negative
	case w.From == 0 || w.To == 0:
		return places{}, tally{}, NothingLeft
	case w.wrongParity():
		return places{}, tally{}, RowParity
	}
	p := w.places()
	if w.PlainAtStart+w.PlainAtEnd > w.Over {
		return p, tally{}, TooFewRows
	}
	t, reason := w.tally(p.room())
	return p, t, reason
}

func (w Want) wrongParity() bool {
	return w.Rows == Even && w.Over%2 != 0 || w.Rows == Odd && w.Over%2 == 0
}

func (w Want) possible() bool {
	_, _, reason := w.check()
	return reason == Possible
}

func abs(n int) int { return max(n, -n) }
