package shaping

// An Act is what a step does.
type Act uint8

const (
	// Toward loses or gains, whichever way the count has to go.
	Toward Act = iota
	Lose
	Gain
	// Leave leaves stitches unworked, or bound off, which alone may use up all of them.
	Leave
	// WorkEven works plain rows.
	WorkEven
)

// A Step is one part of shaping written out step by step: so many stitches at an edge, on which rows, how often. The first event
// of a step stands one interval after the last of the step before.
type Step struct {
	Act      Act
	Stitches int  // at one edge, each time; of no meaning to WorkEven
	Every    int  // every n-th row; 0 is 1
	On       Side // Right or Wrong: every row of that side, whatever Every says
	Times    int  // how often; of WorkEven how many rows
	ToEnd    bool // as often as it takes
}

// Given is a number that may be left out.
type Given struct {
	N    int
	Said bool
}

// Say is a number that was said.
func Say(n int) Given { return Given{n, true} }

// StepsWant is shaping asked for in steps. One step at most goes to the end: until the count is To, or where that is not said, for as
// long as rows and stitches last.
type StepsWant struct {
	From  int
	To    Given
	Over  Given // rows; those left are plain at the end
	Ends  int   // edges shaped alike: 2 for both ends of a row; 0 is 1
	First Side  // of the first row; Either for rounds
	Steps []Step
}

// With returns the want with one number changed to what was offered.
func (w StepsWant) With(o Offer) StepsWant {
	switch o.Key {
	case KeyFrom:
		w.From = o.Values[0]
	case KeyTo:
		w.To = Say(o.Values[0])
	case KeyOver:
		w.Over = Say(o.Values[0])
	}
	return w
}

// SolveSteps works steps one after the other, finds how often the one that goes to the end is worked, and refuses what does not sum
// to the counts and rows that were said.
func SolveSteps(w StepsWant) (Schedule, *Refusal) {
	s, refused := w.solve()
	if refused == nil {
		return s, nil
	}
	try := func(key Key, n int) bool {
		o := Offer{key, []int{n}}
		if _, again := w.With(o).solve(); n == 0 && key == KeyTo || n < 0 || again != nil {
			return false
		}
		refused.Offers = append(refused.Offers, o)
		return true
	}
	switch refused.Reason {
	case OddChange:
		near := w.largestStep() * max(1, w.Ends)
		for _, way := range [2]int{1, -1} {
			for d := 1; d <= near && !try(KeyTo, w.To.N+way*d); d++ {
			}
		}
	case StepsDiffer, NothingLeft:
		if to := s.To; w.To.Said && to != w.To.N {
			try(KeyTo, to)
			try(KeyFrom, w.From+w.To.N-to)
		}
		if !w.To.Said && s.To < 1 {
			try(KeyFrom, w.From+1-s.To)
		}
	case TooFewRows, TooFewStitches:
		try(KeyOver, s.Rows)
		if open := w.open(); w.To.Said && open >= 0 {
			for d := 1; d <= abs(w.To.N-w.From) && !try(KeyTo, w.To.N+d*w.back()); d++ {
			}
		}
	}
	return Schedule{}, refused
}

func (w StepsWant) largestStep() int {
	largest := 1
	for _, st := range w.Steps {
		largest = max(largest, st.Stitches)
	}
	return largest
}

// back is the way from the count that is wanted to that at the beginning.
func (w StepsWant) back() int {
	if w.To.N < w.From {
		return 1
	}
	return -1
}

// open returns the step that goes to the end, or -1.
func (w StepsWant) open() int {
	for i, st := range w.Steps {
		if st.ToEnd {
			return i
		}
	}
	return -1
}

// solve works a want. What it returns beside a refusal is what the steps come to.
func (w StepsWant) solve() (Schedule, *Refusal) {
	if r := w.sensible(); r != nil {
		return Schedule{}, r
	}
	open, times := w.open(), 0
	if open >= 0 {
		var r *Refusal
		if times, r = w.often(open); r != nil {
			s, _ := w.work(0)
			return s, r
		}
	}
	s, last := w.work(times)
	switch {
	case s.Rows > most:
		return Schedule{}, refuse(TooLarge, "the steps take more than ", most, " rows")
	case !last:
		return s, refuse(NothingLeft, "the steps take ", w.From-s.To, " of ", counted(w.From, "stitch"))
	case w.To.Said && s.To != w.To.N:
		return s, refuse(StepsDiffer, "the steps go from ", w.From, " to ", s.To, ", not to ", w.To.N)
	case w.Over.Said && s.Rows > w.Over.N:
		return s, refuse(TooFewRows, "the steps take ", counted(s.Rows, "row"), ", but there are ", w.Over.N)
	}
	if w.Over.Said {
		if s.To == 0 && w.Over.N > s.Rows {
			return s, refuse(TooFewStitches, "no stitch is left for the last ", counted(w.Over.N-s.Rows, "row"))
		}
		s.put(Run{Every: w.Over.N - s.Rows, Times: 1})
		s.Rows = w.Over.N
	}
	return s, nil
}

// sensible refuses what no steps can be made of.
func (w StepsWant) sensible() *Refusal {
	least, largest, open := min(w.From, w.To.N, w.Over.N, w.Ends), max(w.From, w.To.N, w.Over.N), 0
	for _, st := range w.Steps {
		least = min(least, st.Stitches, st.Every, st.Times)
		largest = max(largest, st.Stitches, st.Every, st.Times)
		if st.ToEnd {
			open++
		}
	}
	switch {
	case least < 0:
		return refuse(Negative, "a number of the steps is below zero, and nothing can be worked a negative number of times")
	case largest > most || w.Ends > 2:
		return refuse(TooLarge, "no piece has more than ", most, " stitches or rows, or more than 2 ends")
	case w.From == 0:
		return refuse(NothingLeft, "no stitch is there to begin with")
	case open > 1:
		return refuse(NoEnd, open, " steps go to the end, but only one can")
	}
	// Rows and changes of all that is fixed must stay small enough to be summed.
	sum := 0
	for _, st := range w.Steps {
		if sum += st.Times * max(1, st.Every, st.Stitches); sum > most {
			return refuse(TooLarge, "the steps take more than ", most, " stitches or rows")
		}
	}
	return nil
}

// often finds how many times the open step is worked.
func (w StepsWant) often(open int) (int, *Refusal) {
	st := w.Steps[open]
	each := w.change(st)
	switch {
	case st.Act == WorkEven && !w.Over.Said:
		return 0, refuse(NoEnd, "even rows to the end need a number of rows")
	case st.Act != WorkEven && st.Stitches == 0:
		return 0, refuse(BadEach, "a step of no stitches never comes to an end")
	case st.Act == WorkEven || !w.To.Said && w.Over.Said:
		return w.asLongAs(func(s Schedule, last bool) bool { return s.Rows <= w.Over.N && last }), nil
	case !w.To.Said && each > 0:
		return 0, refuse(NoEnd, "increases to the end need a count or a number of rows")
	case !w.To.Said:
		return w.asLongAs(func(_ Schedule, last bool) bool { return last }), nil
	}
	fixed, _ := w.work(0)
	rest := w.To.N - fixed.To
	switch {
	case rest != 0 && (rest > 0) != (each > 0):
		return 0, refuse(StepsDiffer, "without those to the end the steps already go from ", w.From, " to ", fixed.To, ", past ", w.To.N)
	case rest%each != 0:
		return 0, refuse(OddChange, counted(abs(rest), "stitch"), " are left for the step to the end, which takes ", abs(each), " at a time")
	}
	return rest / each, nil
}

// asLongAs returns the largest number of times of the open step that still holds.
func (w StepsWant) asLongAs(holds func(Schedule, bool) bool) int {
	low, high := 0, most // low holds, or nothing does
	for low < high {
		middle := (low + high + 1) / 2
		if holds(w.work(middle)) {
			low = middle
		} else {
			high = middle - 1
		}
	}
	return low
}

// change is what one event of a step does to the count, at all ends together.
func (w StepsWant) change(st Step) int {
	n := st.Stitches * max(1, w.Ends)
	switch {
	case st.Act == WorkEven:
		return 0
	case st.Act == Gain, st.Act == Toward && w.To.Said && w.To.N > w.From:
		return n
	}
	return -n
}

// work lays the steps out, the open one worked so many times, and reports whether the stitches last: nothing may be worked on none,
// and only by leaving stitches may the last be used.
func (w StepsWant) work(times int) (s Schedule, last bool) {
	s = Schedule{From: w.From, To: w.From, First: w.First, Runs: make([]Run, 0, len(w.Steps)+1)}
	last = true
	put := func(st Step, every, n int) {
		if n == 0 {
			return
		}
		change := w.change(st)
		before := s.To
		s.put(Run{every, n, change, st.Act == Leave})
		s.Rows, s.To = s.Rows+every*n, s.To+change*n
		if before <= 0 || s.To < 0 || s.To == 0 && st.Act != Leave {
			last = false
		}
	}
	for _, st := range w.Steps {
		n, every := st.Times, max(1, st.Every)
		if st.ToEnd {
			n = times
		}
		switch {
		case st.Act == WorkEven:
			every = 1
		case w.First != Either && st.On != Either && n > 0:
			every = 2
			if side(w.First, s.Rows+1) == st.On { // the first of them stands in the very next row
				put(st, 1, 1)
				n--
			}
		}
		put(st, every, n)
	}
	return s, last
}
