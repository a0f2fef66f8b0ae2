package shaping

import (
	"math/bits"
	"slices"
	"sort"
)

// may are the rows that may have an event, out of some.
func (w Want) may(rows []int) []int {
	var out []int
	for _, row := range rows {
		if row > w.PlainAtStart && row <= w.Over-w.PlainAtEnd && (w.On == Either || w.First == Either || side(w.First, row) == w.On) {
			out = append(out, row)
		}
	}
	return out
}

// closest are as many of the rows as can have an event, from the first on.
func (w Want) closest(rows []int) []int {
	var out []int
	for _, row := range rows {
		if len(out) == 0 || row-out[len(out)-1] >= w.AtMost {
			out = append(out, row)
		}
	}
	return out
}

// among solves a want with events in some of the given rows only, as evenly as these are, or crowded where evenly would be too close
// and that is allowed. It reports false where these rows cannot keep its conditions.
func (w Want) among(rows []int, crowded bool) (Schedule, bool) {
	if _, _, reason := w.check(); reason != Possible {
		return Schedule{}, false
	}
	rows = w.may(rows)
	closest := w.closest(rows)
	t, reason := w.tally(len(closest))
	if reason != Possible {
		return Schedule{}, false
	}
	if s, ok := w.on(rows, t); ok || !crowded {
		return s, ok
	}
	return w.on(closest, t)
}

// on places events evenly among rows. It reports false where two come too close.
func (w Want) on(rows []int, t tally) (Schedule, bool) {
	s := Schedule{From: w.From, To: w.To, Rows: w.Over, First: w.First}
	s.put(Run{Every: w.PlainAtStart, Times: 1})
	at, last, event := -1, w.PlainAtStart, 0
	for _, st := range (places{n: len(rows), gap: 1}).intervals(t.events(), w.AtOnce, w.Order) {
		for range st.times {
			at += st.size
			if event > 0 && rows[at]-last < w.AtMost {
				return Schedule{}, false
			}
			s.put(Run{Every: rows[at] - last, Times: 1, Change: t.change(event)})
			last = rows[at]
			event++
		}
	}
	s.put(Run{Every: w.Over - last, Times: 1})
	return s, true
}

// Apart refuses schedules that have events in one row.
func (t Table) Apart() *Refusal {
	rows, first := 0, 0
	for i, k := range t.Rows {
		if bits.OnesCount16(uint16(k)) > 1 {
			if rows++; first == 0 {
				first = i + 1
			}
		}
	}
	switch rows {
	case 0:
		return nil
	case 1:
		return refuse(Collide, "two are shaped in row ", first)
	}
	return refuse(Collide, "two are shaped in row ", first, " and in ", rows-1, " more")
}

// SolveApart solves two wants over the same rows so that no row has an event of both. Where events must stand some rows apart it may
// miss a way that is very uneven; otherwise it refuses only what cannot be.
func SolveApart(first, second Want) (Table, *Refusal) {
	t, refused := SolveTogether(first, second)
	if refused != nil || t.Apart() == nil {
		return t, refused
	}
	if t, ok := apart(first, second); ok {
		return t, nil
	}
	refused = refuse(Collide, "the events of both need ", len(t.Parts[0].Events())+len(t.Parts[1].Events()), " rows of their own out of ", first.Over)
	for over := first.Over + 1; over <= 2*first.Over+2; over++ {
		longer := Offer{KeyOver, []int{over}}
		if _, ok := apart(first.With(longer), second.With(longer)); ok {
			refused.Offers = []Offer{longer}
			break
		}
	}
	return Table{}, refused
}

// apart looks for rows of their own for both: one want alone and the other in the rows that are left, either way round, then one
// with as few as it can of the rows that both may have.
func apart(first, second Want) (Table, bool) {
	rows := make([]int, first.Over)
	for i := range rows {
		rows[i] = i + 1
	}
	if t, ok := leaving(first, second, rows, rows); ok {
		return t, true
	}
	if t, ok := leaving(second, first, rows, rows); ok {
		t.Parts[0], t.Parts[1] = t.Parts[1], t.Parts[0]
		t, refused := Together(t.Parts...)
		return t, refused == nil
	}
	shared := second.may(first.may(rows))
	own := without(first.may(rows), shared)
	with := func(n int) []int {
		out := slices.Concat(own, shared[:n])
		slices.Sort(out)
		return out
	}
	fewest := sort.Search(len(shared), func(n int) bool { _, ok := first.among(with(n), true); return ok })
	return leaving(first, second, with(fewest), rows)
}

// leaving solves one want in some rows and the other in what it leaves of all.
func leaving(one, other Want, some, all []int) (Table, bool) {
	a, ok := one.among(some, true)
	if !ok {
		return Table{}, false
	}
	b, ok := other.among(without(all, a.Events()), true)
	if !ok {
		return Table{}, false
	}
	t, refused := Together(a, b)
	return t, refused == nil
}

// without returns the rows that are not among others.
func without(rows, others []int) []int {
	return slices.DeleteFunc(slices.Clone(rows), func(row int) bool { _, there := slices.BinarySearch(others, row); return there })
}
