package page

import (
	"strconv"

	"foundrow/internal/grade"
	"foundrow/internal/notation"
	"foundrow/internal/source"
)

// A slotList is the slots of all editions of a page: first those of the text, then those that rows need in words of their own.
type slotList struct {
	g    *grade.Grade
	all  []Slot
	made map[madeSlot]int
}

// A madeSlot names a slot by the place of its number, how it is printed, and the words that agree with it.
type madeSlot struct {
	at   source.Span
	as   notation.NumberForm
	many string
}

// absent is printed for a size that has no number in a list.
const absent = "–"

// behind joins the words behind a figure that agree with it, and returns the part that comes after them.
func behind(parts []notation.Part, i int) (one, many string, next int) {
	p, next := &parts[i], i+1
	if p.As == notation.Plural {
		return p.Text, p.Many, next
	}
	if p.As != notation.Figure {
		return "", "", next
	}
	for {
		at, space := next, ""
		if at < len(parts) && parts[at].Count == nil && parts[at].Text == " " {
			at, space = at+1, " "
		}
		if at >= len(parts) || parts[at].As != notation.Plural || parts[at].Count.Span != p.Count.Span {
			return one, many, next
		}
		one, many, next = one+space+parts[at].Text, many+space+parts[at].Many, at+1
	}
}

// slot returns the slot of a number in a row that is for some sizes, or for all. A value that is printed as its figure alone has one
// already.
func (l *slotList) slot(p *notation.Part, one, many string, holds []bool) int {
	if p.Count.Slot > 0 && p.As == notation.Figure && many == "" && holds == nil {
		return p.Count.Slot - 1
	}
	key := madeSlot{p.Count.Span, p.As, many}
	at, there := l.made[key]
	if !there {
		at = l.add(worded(held(l.entries(p.Count), holds), p.As, one, many))
		l.made[key] = at
	}
	return at
}

// held leaves out of a row's numbers those of sizes which the row is not for. Where the others agree, one number is enough.
func held(entries []entry, holds []bool) []entry {
	if holds == nil || len(entries) != len(holds) {
		return entries
	}
	var one []entry
	differ := false
	for i := range entries {
		switch {
		case !holds[i]:
			entries[i] = entry{absent, -1}
		case one == nil:
			one = entries[i : i+1]
		default:
			differ = differ || entries[i] != one[0]
		}
	}
	if differ || one == nil {
		return entries
	}
	return one
}

func (l *slotList) add(s Slot) int {
	l.all = append(l.all, s)
	return len(l.all) - 1
}

// worded words a number in a row.
func worded(entries []entry, as notation.NumberForm, one, many string) Slot {
	switch as {
	case notation.Ordinal:
		return ordinals(entries)
	case notation.TimesWord:
		return times(entries)
	case notation.Plural:
		return agreed(entries, one, many)
	}
	return agreeing(entries, one, many)
}

// entries are a count in every size.
func (l *slotList) entries(c *notation.Count) []entry {
	if slot := c.Slot - 1; slot >= 0 {
		if slot >= len(l.g.Slots) || len(l.g.Slots[slot]) == 0 {
			return []entry{{unknown, -1}}
		}
		out := make([]entry, len(l.g.Slots[slot]))
		for i, v := range l.g.Slots[slot] {
			out[i] = entry{l.all[slot].In(i), wholeOf(v)}
		}
		return out
	}
	out := make([]entry, len(c.List))
	for i, e := range c.List {
		if out[i] = (entry{absent, -1}); !e.Absent {
			out[i] = entry{strconv.Itoa(e.N), e.N}
		}
	}
	return out
}
