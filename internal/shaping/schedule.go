package shaping

// A Schedule is shaping that is solved: runs of rows, one after the other. Their rows sum to Rows and their changes take From to To.
type Schedule struct {
	From, To int
	Rows     int
	First    Side // of the first row
	Runs     []Run
}

// A Run is an event in every Every-th row, Times times, counted from the row of the event before; the rows between are plain. Change
// is what one event does to the count; in a run of plain rows it is 0. Leave says that the stitches are left unworked.
type Run struct {
	Every, Times int
	Change       int
	Leave        bool
}

// put adds a run, joined to the last where they agree.
func (s *Schedule) put(r Run) {
	if r.Every <= 0 || r.Times <= 0 {
		return
	}
	if r.Change == 0 {
		r = Run{Every: r.Every * r.Times, Times: 1}
	}
	if n := len(s.Runs); n > 0 {
		switch last := &s.Runs[n-1]; {
		case last.Change == 0 && r.Change == 0:
			last.Every += r.Every
			return
		case last.Every == r.Every && last.Change == r.Change && last.Leave == r.Leave:
			last.Times += r.Times
			return
		}
	}
	s.Runs = append(s.Runs, r)
}

// Plain returns the rows worked even at the end.
func (s Schedule) Plain() int {
	if n := len(s.Runs); n > 0 && s.Runs[n-1].Change == 0 {
		return s.Runs[n-1].Every
	}
	return 0
}

// Events returns the rows that have an event, counted from 1.
func (s Schedule) Events() []int {
	var rows []int
	row := 0
	for _, r := range s.Runs {
		if r.Change == 0 {
			row += r.Every
			continue
		}
		for range r.Times {
			row += r.Every
			rows = append(rows, row)
		}
	}
	return rows
}

// Changes returns what every row does to the count, 0 where it is plain.
func (s Schedule) Changes() []int {
	rows := make([]int, s.Rows)
	row := 0
	for _, r := range s.Runs {
		for range r.Times {
			row += r.Every
			rows[row-1] = r.Change
		}
	}
	return rows
}

// Counts returns the stitches after every row.
func (s Schedule) Counts() []int {
	rows := s.Changes()
	n := s.From
	for i, change := range rows {
		n += change
		rows[i] = n
	}
	return rows
}

// At returns what a row, counted from 1, does to the count.
func (s Schedule) At(row int) int {
	for _, r := range s.Runs {
		if row <= r.Every*r.Times {
			if row > 0 && row%r.Every == 0 {
				return r.Change
			}
			return 0
		}
		row -= r.Every * r.Times
	}
	return 0
}

// Side returns which side a row shows.
func (s Schedule) Side(row int) Side { return side(s.First, row) }

// Then returns the schedule with another worked after it. The other is taken to begin where this one ends: its count is not looked at.
func (s Schedule) Then(next Schedule) Schedule {
	out := Schedule{From: s.From, To: s.To + next.To - next.From, Rows: s.Rows + next.Rows, First: s.First}
	for _, runs := range [2][]Run{s.Runs, next.Runs} {
		for _, r := range runs {
			out.put(r)
		}
	}
	return out
}
