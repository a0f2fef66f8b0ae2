package shaping

import (
	"strconv"
	"strings"
)

// A Manner is what the words of a schedule need besides its numbers.
type Manner struct {
	Ends int    // 2: the stitches of an event are shared by both ends of the row
	At   string // where the events stand, if not at each end: "at the neck edge"
	Row  string // "row" if left empty, or "round"
}

// place words where the stitches of an event stand, and how many there are at one end. Stitches that two ends cannot share are said
// for the row.
func (m Manner) place(change int) (stitches int, where string) {
	n := abs(change)
	switch {
	case m.Ends == 2 && n%2 == 0 && m.At == "":
		return n / 2, "at each end of"
	case m.Ends == 2 && n%2 == 0:
		return n / 2, m.At + " of"
	case m.At != "":
		return n, m.At + " of"
	}
	return n, "in"
}

func (m Manner) row() string {
	if m.Row == "" {
		return "row"
	}
	return m.Row
}

// Words says a schedule of one size in the trade's way, to stand in a sentence:
//
//	decrease 1 stitch at each end of every 6th row 4 times, then of every 8th row 3 times, then work 4 rows even
func (s Schedule) Words(m Manner) string {
	var clauses []string
	for i := 0; i < len(s.Runs); {
		b := s.said(i)
		same := i > 0 && s.Runs[i-1].Change == s.Runs[i].Change && s.Runs[i-1].Leave == s.Runs[i].Leave
		clauses = append(clauses, m.clause(s.Runs[i:i+b.length], b.times, i == 0, same))
		i += b.length * b.times
	}
	if len(clauses) == 0 {
		return "work even"
	}
	return strings.Join(clauses, ", then ")
}

// said returns the runs from one on that are said together: one, or several of one change that repeat.
func (s Schedule) said(from int) block {
	b := blockAt(s.Runs, from)
	for _, r := range s.Runs[from : from+b.length] {
		if r.Change != s.Runs[from].Change || r.Leave || r.Change == 0 {
			return block{from, 1, 1}
		}
	}
	return b
}

// clause words one run, or some that are worked a number of times. What the clause before says the same is not said again.
func (m Manner) clause(runs []Run, times int, first, same bool) string {
	r := runs[0]
	stitches, where := m.place(r.Change)
	if same {
		where = where[strings.LastIndexByte(where, ' ')+1:]
	}
	on := where + " " + m.intervals(runs, times, first, where == "in")
	switch {
	case r.Change == 0:
		return "work " + counted(r.Every, m.row()) + " even"
	case same:
		return on
	case r.Leave:
		return "leave " + counted(stitches, "stitch") + " unworked " + on
	case r.Change < 0:
		return "decrease " + counted(stitches, "stitch") + " " + on
	}
	return "increase " + counted(stitches, "stitch") + " " + on
}

// Sentence is Words with a capital and a full stop.
func (s Schedule) Sentence(m Manner) string {
	w := s.Words(m)
	return strings.ToUpper(w[:1]) + w[1:] + "."
}

// intervals words on which rows the events stand. Each says that the rows must be told apart: so many stitches in each of them.
func (m Manner) intervals(runs []Run, times int, first, each bool) string {
	if len(runs) == 1 {
		return m.interval(runs[0], first, each)
	}
	words := make([]string, len(runs))
	for i, r := range runs {
		words[i] = m.interval(r, false, each)
	}
	if len(runs) == 2 && runs[0].Times == 1 && runs[1].Times == 1 {
		return "every " + ordinal(runs[0].Every) + " and " + ordinal(runs[1].Every) + " " + m.row() + " by turn, " + howOften(times) + " each"
	}
	return "(" + strings.Join(words, ", ") + ") " + howOften(times)
}

func (m Manner) interval(r Run, first, each bool) string {
	row := m.row()
	switch {
	case r.Every == 1 && r.Times == 1:
		return "the next " + row
	case r.Every == 1 && each:
		return "each of the next " + counted(r.Times, row)
	case r.Every == 1:
		return "the next " + counted(r.Times, row)
	case r.Times == 1 && first:
		return "the " + ordinal(r.Every) + " " + row
	case r.Times == 1:
		return "the following " + ordinal(r.Every) + " " + row
	case r.Every == 2:
		return "every other " + row + " " + howOften(r.Times)
	}
	return "every " + ordinal(r.Every) + " " + row + " " + howOften(r.Times)
}

// Words says a spread of one size. Names are those of the event: the first of a single one, the second of a doubled one, and so on.
//
//	(9 sts, inc) 3 times, (10 sts, inc) twice, 5 sts
func (s Spread) Words(names ...string) string {
	var parts []string
	for _, b := range blocks(s.Groups) {
		var inner []string
		for _, g := range s.Groups[b.from : b.from+b.length] {
			inner = append(inner, g.words(names))
		}
		if b.times == 1 {
			parts = append(parts, inner...)
			continue
		}
		parts = append(parts, "["+strings.Join(inner, ", ")+"] "+howOften(b.times))
	}
	if s.Plain > 0 {
		parts = append(parts, counted(s.Plain, "st"))
	}
	return strings.Join(parts, ", ")
}

// words says a group.
func (g Group) words(names []string) string {
	event := ""
	switch {
	case g.Events <= len(names):
		event = names[g.Events-1]
	case len(names) > 0:
		event = names[0] + " by " + strconv.Itoa(g.Events)
	}
	switch {
	case g.Plain == 0 && g.Times == 1:
		return event
	case g.Plain == 0:
		return event + " " + howOften(g.Times)
	case g.Times == 1:
		return counted(g.Plain, "st") + ", " + event
	}
	return "(" + counted(g.Plain, "st") + ", " + event + ") " + howOften(g.Times)
}

// ordinal words a place in a row: "1st", "38th", "112th".
func ordinal(n int) string {
	if tens := n / 10 % 10; tens != 1 {
		switch n % 10 {
		case 1:
			return strconv.Itoa(n) + "st"
		case 2:
			return strconv.Itoa(n) + "nd"
		case 3:
			return strconv.Itoa(n) + "rd"
		}
	}
	return strconv.Itoa(n) + "th"
}

// howOften words how often: "once", "twice", "3 times".
func howOften(n int) string {
	switch n {
	case 1:
		return "once"
	case 2:
		return "twice"
	}
	return strconv.Itoa(n) + " times"
}
