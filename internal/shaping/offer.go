package shaping

import "sort"

// refusal words why a want cannot be worked and looks for the nearest that can.
func (w Want) refusal(p places, t tally, reason Reason) *Refusal {
	r := &Refusal{Reason: reason, Why: w.why(p, t, reason)}
	try := func(key Key, values ...int) bool {
		o := Offer{key, values}
		if !w.With(o).possible() {
			return false
		}
		r.Offers = append(r.Offers, o)
		return true
	}
	switch reason {
	case RowParity:
		try(KeyOver, w.Over-1)
		try(KeyOver, w.Over+1)
	case WrongWay:
		each := make([]int, len(w.Each))
		for i, n := range w.Each {
			each[i] = -n
		}
		try(KeyEach, each...)
	case BadEach:
		_ = try(KeyEach, 2) || try(KeyEach, 1)
	case NothingLeft:
		w.otherCounts(try)
	case OddChange:
		w.otherCounts(try)
		if len(w.Each) == 1 && t.larger > 1 {
			try(KeyEach, t.larger, 1)
		}
	}
	if len(r.Offers) == 0 && reason != TooLarge && reason != Negative {
		w.moreRoom(try)
	}
	return r
}

// otherCounts offers the nearest counts on either side that the events reach.
func (w Want) otherCounts(try func(Key, ...int) bool) {
	key, at, way := KeyTo, w.To, 1
	if w.From == 0 {
		key, at = KeyFrom, w.From
	}
	if w.From > w.To {
		way = -1
	}
	// Two numbers reach every count that can be reached within the product of both.
	far := 1
	for _, n := range w.Each {
		far *= abs(n)
	}
	far = min(far, most)
	change := abs(w.To - w.From)
	for d := 1; d <= far && d < change; d++ {
		if try(key, at-d*way) {
			break
		}
	}
	for d := 1; d <= far; d++ {
		if try(key, at+d*way) {
			return
		}
	}
}

// moreRoom offers more rows, fewer events and looser conditions.
func (w Want) moreRoom(try func(Key, ...int) bool) {
	least, step := w.Over, 1
	if w.Rows != AnyNumber {
		step = 2
		if w.wrongParity() {
			least++
		}
	}
	if n := sort.Search(most/step, func(i int) bool { return w.With(Offer{KeyOver, []int{least + i*step}}).possible() }); n < most/step {
		try(KeyOver, least+n*step)
	}
	way := 1
	if w.To < w.From {
		way = -1
	}
	larger := 0
	for _, n := range w.Each {
		larger = max(larger, abs(n))
	}
	// As far as events of the larger change alone go, or a little less.
	for d := min(w.places().room()*larger, abs(w.To-w.From)-1); d > 0; d-- {
		if try(KeyTo, w.From+d*way) {
			break
		}
	}
	if len(w.Each) == 1 {
		try(KeyEach, 2*w.Each[0], w.Each[0])
	}
	if w.On != Either {
		try(KeyOn, int(Either))
	}
	w.loosen(KeyAtMost, w.AtMost, try)
	w.loosen(KeyPlainAtStart, w.PlainAtStart, try)
	w.loosen(KeyPlainAtEnd, w.PlainAtEnd, try)
}

// loosen offers the largest value below the one asked for: the smaller the number, the more room.
func (w Want) loosen(key Key, value int, try func(Key, ...int) bool) {
	n := sort.Search(value, func(i int) bool { return w.With(Offer{key, []int{value - 1 - i}}).possible() })
	if n < value {
		try(key, value-1-n)
	}
}

// why words a reason.
func (w Want) why(p places, t tally, reason Reason) string {
	verb, noun := "gain", "increase"
	if w.To < w.From {
		verb, noun = "lose", "decrease"
	}
	change := abs(w.To - w.From)
	switch reason {
	case Negative:
		return w.below()
	case TooLarge:
		return join("no piece has more than ", most, " stitches or rows")
	case NothingLeft:
		if w.From == 0 {
			return "no stitch is there to begin with"
		}
		return join("from ", w.From, " to 0 leaves no stitch")
	case RowParity:
		return join("the rows are ", w.Over, ", but must be ", [...]string{"", "even", "odd"}[w.Rows])
	case BadEach:
		return "each event must change one number of stitches, or one of two that go the same way"
	case WrongWay:
		return join("from ", w.From, " to ", w.To, " gains stitches, but each event loses ", abs(w.Each[0]))
	case OddChange:
		if len(w.Each) == 1 {
			return join(counted(change, "stitch"), " to ", verb, " cannot be done in ", noun, "s of ", t.larger)
		}
		return join(counted(change, "stitch"), " to ", verb, " cannot be done in ", noun, "s of ", abs(w.Each[0]), " and ", abs(w.Each[1]))
	}
	if w.PlainAtStart+w.PlainAtEnd > w.Over {
		return join(counted(w.PlainAtStart+w.PlainAtEnd, "plain row"), " do not fit in ", counted(w.Over, "row"))
	}
	if w.First == Either && w.On == Wrong {
		return "rounds have no wrong-side rows"
	}
	need := join(counted(change, "stitch"), " to ", verb, " take ", counted(t.fewest(change), noun))
	switch {
	case p.gap > 1:
		return join(need, ", but ", counted(w.Over, "row"), " have room for ", p.room(), " that stand ", w.AtMost, " rows apart")
	case p.step == 2:
		return join(need, ", but only ", p.n, " of the ", counted(w.Over, "row"), " can have one")
	case p.n < w.Over:
		return join(need, ", but only ", p.n, " of the ", counted(w.Over, "row"), " are not plain")
	}
	return join(need, ", but there are only ", counted(w.Over, "row"))
}

// below names the first number that is below zero.
func (w Want) below() string {
	for _, n := range [...]struct {
		key   Key
		value int
	}{{KeyFrom, w.From}, {KeyTo, w.To}, {KeyOver, w.Over}, {KeyAtMost, w.AtMost}, {KeyPlainAtStart, w.PlainAtStart}, {KeyPlainAtEnd, w.PlainAtEnd}} {
		if n.value < 0 {
			return join(string(n.key), " comes to ", n.value, ", and nothing can be worked a negative number of times")
		}
	}
	return ""
}
