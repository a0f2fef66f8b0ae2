package shaping

// An Event is what is spread along a row, by the stitches it uses.
type Event uint8

const (
	// Increase works two stitches in one.
	Increase Event = iota
	// Decrease works two stitches as one.
	Decrease
	// Skip leaves a stitch out.
	Skip
	// Between makes a stitch between two others, using none.
	Between
)

// uses is how many stitches of the row below an event takes that changes the count by n.
func (e Event) uses(n int) int { return [...]int{1, 1 + n, n, 0}[e] }

// change is what n of an event do to the count.
func (e Event) change(n int) int {
	if e == Decrease || e == Skip {
		return -n
	}
	return n
}

// A Layout is where the events stand between the ends of the row.
type Layout uint8

const (
	// Flat keeps half an interval at each end, so that nothing stands at an edge.
	Flat Layout = iota
	// Round ends every interval with an event, the last one closing the round.
	Round
	// Sections parts the row into equal pieces with an event between each two.
	Sections
)

// A SpreadWant is events asked for along one row.
type SpreadWant struct {
	Over      int // stitches of the row below
	Events    int // increases or decreases
	Event     Event
	Layout    Layout
	Order     Order
	Symmetric bool // the row reads the same from both ends, whatever Order says
	PlainEnds int  // stitches kept plain at each end besides
	Most      int  // increases or decreases in one place, where there is no room for one in each; 0 is 1: never doubled
}

// With returns the want with one number changed to what was offered.
func (w SpreadWant) With(o Offer) SpreadWant {
	switch o.Key {
	case KeyOver:
		w.Over = o.Values[0]
	case KeyEvents:
		w.Events = o.Values[0]
	case KeyMost:
		w.Most = o.Values[0]
	case KeyPlainEnds:
		w.PlainEnds = o.Values[0]
	case KeySymmetric:
		w.Symmetric = false
	}
	return w
}

// A Spread is events that are placed: groups one after the other, then plain stitches. What all of it uses is Over, what it makes
// is After.
type Spread struct {
	Over, After int
	Event       Event
	Groups      []Group
	Plain       int // stitches after the last event
}

// A Group is some plain stitches and an event, worked a number of times. Events is how many increases or decreases stand in the one
// place: 1 but for a doubled one.
type Group struct{ Plain, Events, Times int }

// Positions returns the stitches of the row below, counted from 1, in which the events are worked: of a decrease the last it uses, of
// one between two stitches the one before it.
func (s Spread) Positions() []int {
	var out []int
	at := 0
	for _, g := range s.Groups {
		for range g.Times {
			at += g.Plain + s.Event.uses(g.Events)
			out = append(out, at)
		}
	}
	return out
}

// SolveSpread places events as evenly as they go: the plain stitches between two differ by one at most. It refuses what does not
// fit, and a symmetry that whole stitches do not have.
func SolveSpread(w SpreadWant) (Spread, *Refusal) {
	s, refused := w.place()
	if refused == nil {
		return s, nil
	}
	try := func(key Key, n int) bool {
		o := Offer{key, []int{n}}
		if _, again := w.With(o).place(); again != nil || n == 0 && key == KeyEvents {
			return false
		}
		refused.Offers = append(refused.Offers, o)
		return true
	}
	switch refused.Reason {
	case NotSymmetric:
		try(KeyEvents, w.Events-1)
		try(KeyEvents, w.Events+1)
		try(KeyOver, w.Over-1)
		try(KeyOver, w.Over+1)
		try(KeySymmetric, 0)
	case TooFewStitches:
		for n := w.Events - 1; n > 0 && !try(KeyEvents, n); n-- {
		}
		for n := w.Over + 1; n <= 2*w.Events+2*w.PlainEnds+2 && !try(KeyOver, n); n++ {
		}
		for n := max(1, w.Most) + 1; n <= threeInOne && !try(KeyMost, n); n++ {
		}
		for n := w.PlainEnds - 1; n >= 0 && !try(KeyPlainEnds, n); n-- {
		}
	}
	return Spread{}, refused
}

// threeInOne is the most increases in one place that are offered: four stitches in one. Common practice, no source.
const threeInOne = 3

// place solves a want or says why it cannot be.
func (w SpreadWant) place() (Spread, *Refusal) {
	if r := w.sensible(); r != nil {
		return Spread{}, r
	}
	s := Spread{Over: w.Over, After: w.Over + w.Event.change(w.Events), Event: w.Event}
	if w.Events == 0 {
		s.Plain = w.Over
		return s, nil
	}
	within := w.Over - 2*w.PlainEnds
	places := w.Events
	switch w.Event {
	case Increase:
		places = min(places, within)
	case Decrease:
		places = min(places, within-w.Events) // so that each has one stitch more than it takes away
	}
	plain := within - w.Events*w.Event.uses(1)
	least := 0 // plain stitches that there must be
	if w.Event == Between {
		least = w.Events + [...]int{2*w.edge() - 1, 0, 1}[w.Layout]
	}
	ok := true
	switch {
	case places <= 0 || (w.Events-1)/places >= max(1, w.Most) || places == w.Events && plain < least:
		return Spread{}, refuse(TooFewStitches, counted(w.Events, w.noun()), " do not fit in ", counted(within, "stitch"))
	case places < w.Events:
		ok = w.doubled(&s, places)
	case w.Layout == Flat:
		ok = w.flat(&s, plain)
	default:
		ok = w.gaps(&s, plain)
	}
	if !ok {
		return Spread{}, refuse(NotSymmetric, counted(w.Events, w.noun()), " over ", counted(w.Over, "stitch"), " cannot read the same from both ends")
	}
	w.keepEnds(&s)
	return s, nil
}

// sensible refuses what no row can be made of.
func (w SpreadWant) sensible() *Refusal {
	switch {
	case min(w.Over, w.Events, w.PlainEnds, w.Most) < 0:
		return refuse(Negative, "a number of the spread is below zero, and nothing can be worked a negative number of times")
	case max(w.Over, w.Events, w.PlainEnds, w.Most) > most:
		return refuse(TooLarge, "no row has more than ", most, " stitches")
	case w.Over == 0:
		return refuse(NothingLeft, "no stitch is there to begin with")
	case w.Over < 2*w.PlainEnds:
		return refuse(TooFewStitches, counted(2*w.PlainEnds, "plain stitch"), " do not fit in ", w.Over)
	case w.Event == Skip && w.Events == w.Over:
		return refuse(NothingLeft, "skipping ", w.Events, " of ", counted(w.Over, "stitch"), " leaves none")
	}
	return nil
}

// edge is the plain stitches that an end of the row needs: a stitch made between two others must have one on either side.
func (w SpreadWant) edge() int {
	if w.Event == Between && w.PlainEnds == 0 {
		return 1
	}
	return 0
}

func (w SpreadWant) noun() string {
	return [...]string{"increase", "decrease", "skip", "increase"}[w.Event]
}
