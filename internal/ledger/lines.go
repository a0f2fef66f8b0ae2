package ledger

import (
	"slices"

	"foundrow/internal/notation"
	"foundrow/internal/source"
)

// A told stretch of rows is one whose words are known and can be repeated.
type told struct {
	from, to int
	said     []*words // one after the other, over and over
}

// A due is a row that is told before its turn comes: "Rows 4, 6 and 8".
type due struct {
	from, to int
	said     *words
}

// A stretch is a range of row numbers in this size.
type stretch struct{ from, to int }

// rowLine works a line of one row or several.
func (h *hand) rowLine(i int, l *notation.Row) {
	w := h.sheet.words(i, l)
	if before, again, ok := h.thenAgain(l); ok {
		if h.works(before) {
			row := *l
			row.Body, row.Claims = before, nil
			h.rowOf(wordsOf(i, &row), &row)
			again.Label = notation.Label{Span: l.Label.Span, Round: l.Label.Round}
		}
		h.againLine(i, again)
		return
	}
	if c := continues(l.Body); c != nil {
		h.catchUp(0)
		h.goOn(w.text(), c)
		return
	}
	h.rowOf(w, l)
}

// rowOf works the rows that a line's label names.
func (h *hand) rowOf(w *words, l *notation.Row) {
	numbers, ok := h.numbers(&l.Label)
	if !ok {
		return
	}
	if len(l.Label.Numbers) == 0 && l.Label.Words == "" && !l.Label.Times.Said && !h.works(l.Body) {
		h.meanwhile(l.Body) // "Fasten off."
		return
	}
	if len(l.Label.Numbers) == 0 {
		n, ok := h.number(&l.Label.Times, 1)
		if !ok || n <= 0 {
			return
		}
		h.catchUp(0)
		if l.Label.Words != "" && !isNext(l.Label.Words) {
			h.so.words = l.Label.Words
		}
		h.rows(w, h.so.number+1, n)
		return
	}
	if len(numbers) == 0 {
		return
	}
	h.begins(&l.Label, numbers[0].from)
	for k, r := range numbers {
		if k > 0 && r.from != h.so.number+1 {
			h.due = append(h.due, due{r.from, r.to, w})
			continue
		}
		h.rows(w, r.from, r.to-r.from+1)
		h.catchUp(0)
	}
	if l.Label.Every == notation.AndAlternate {
		h.so.alternate, h.so.pair = w, numbers[len(numbers)-1].to
	}
}

// thenAgain takes a row apart that goes on by repeating rows: "…. Work as Row 2 until piece measures 30 cm".
func (h *hand) thenAgain(l *notation.Row) ([]notation.Clause, *notation.Again, bool) {
	for i, c := range l.Body {
		if like, ok := c.(*notation.Like); ok && like.Extent.Kind != notation.NotSaid {
			again := &notation.Again{Label: l.Label, Rows: like.Rows, Last: like.Last, Extent: like.Extent, Claims: l.Claims}
			again.Span = like.Span
			return l.Body[:i], again, true
		}
	}
	return nil, nil, false
}

func isNext(words string) bool { return words == "Next" || words == "next" }

// numbers is the label's row numbers in this size; ok is false for a line that this size does not have.
func (h *hand) numbers(l *notation.Label) ([]stretch, bool) {
	out := h.stretches[:0]
	for _, r := range l.Numbers {
		from, absent, ok := h.count(&r.From)
		if absent || !ok {
			return nil, false
		}
		to := from
		if r.To.Said {
			if to, absent, ok = h.count(&r.To); absent || !ok {
				return nil, false
			}
		}
		switch {
		case to < from-1:
			h.row.name = nameOf(l, from)
			h.report(RowNumbers, source.Error, l.Span, 0, [2]string{}, from, to)
			return nil, false
		case to < from:
			continue
		case to-from > most:
			h.row.name = nameOf(l, from)
			h.report(TooLarge, source.Error, l.Span, 0, [2]string{}, to)
			to = from
		}
		if n := len(out); n > 0 && out[n-1].to+1 == from {
			out[n-1].to = to
			continue
		}
		out = append(out, stretch{from, to})
	}
	h.stretches = out
	return slices.Clone(out), true
}

// begins checks that a row's number follows the last one.
func (h *hand) begins(l *notation.Label, n int) {
	switch {
	case l.Words != h.so.words && l.Words != "" || l.Round != h.so.rounds && n == 1:
		h.catchUp(0)
	case h.so.fresh:
	default:
		h.catchUp(n)
		if n != h.so.number+1 {
			h.row = aside(0, l.Span, "")
			h.row.name = nameOf(l, n)
			way := uint8(1)
			if n <= h.so.number {
				way = 2
			}
			h.report(RowNumbers, source.Error, l.Span, way, [2]string{}, n, h.so.number)
		}
	}
	h.so.words, h.so.rounds = l.Words, l.Round
	h.so.fresh = false
	h.so.number = n - 1
}

// catchUp works the rows that were told before their turn, and alternate rows, up to the one before number until; 0 is as far as
// they follow one another.
func (h *hand) catchUp(until int) {
	for range 10_000 {
		next := h.so.number + 1
		if until > 0 && next >= until {
			return
		}
		found := false
		for i, d := range h.due {
			if d.from == next {
				h.due = slices.Delete(slices.Clone(h.due), i, i+1)
				h.rows(d.said, d.from, d.to-d.from+1)
				found = true
				break
			}
		}
		if !found && until > 0 && h.so.alternate != nil && (next-h.so.pair)%2 == 0 {
			h.rows(h.so.alternate, next, 1)
			found = true
		}
		if !found {
			return
		}
	}
}
