package ledger

import (
	"slices"

	"foundrow/internal/notation"
	"foundrow/internal/source"
)

// againLine repeats whole rows: a number of times, for the rows of its label, or until something is so.
func (h *hand) againLine(i int, l *notation.Again) {
	h.row = h.sheet.again(i, l)
	stretches, ok := h.numbers(&l.Label)
	if !ok {
		return
	}
	rows := 0
	for _, s := range stretches {
		rows += s.to - s.from + 1
	}
	if len(l.Label.Numbers) > 0 {
		if rows == 0 {
			return
		}
		h.row.name.Number = stretches[0].from
		h.begins(&l.Label, stretches[0].from)
		h.row = h.sheet.again(i, l)
		h.row.number = stretches[0].from
		h.row.name = nameOf(&l.Label, stretches[0].from)
	} else {
		h.catchUp(0)
	}
	if n, ok := h.number(&l.Label.Times, 0); ok && l.Label.Times.Said {
		rows = n
	}
	cycle := h.meant(l.Rows, l.Last, l.At())
	from := h.so.worked
	if len(cycle) == 0 {
		h.so.open = h.so.open || len(l.Rows) > 0 || l.Last.Said
		if n := len(stretches); n > 0 {
			h.so.number = stretches[n-1].to
		}
		return
	}
	if len(cycle) == 1 && rows <= 1 && len(l.Claims) > 0 && l.Extent.Kind == notation.NotSaid {
		h.once(cycle[0], l)
		h.print(h.sheet.again(i, l), from)
		return
	}
	switch e := &l.Extent; e.Kind {
	case notation.UntilLeft, notation.UntilMade, notation.ToLast:
		h.untilCount(cycle, l)
	case notation.UntilMeasures:
		h.untilLong(cycle, l)
	case notation.NotSaid, notation.AcrossRow:
		n := len(cycle)
		if rows > 0 {
			n = rows
		}
		h.cycle(cycle, n)
	default:
		n := h.rowTimes(e) * len(cycle)
		if rows > 0 && n != rows {
			h.report(RowNumbers, source.Error, l.Label.Span, 3, [2]string{}, rows, n)
		}
		h.cycle(cycle, n)
	}
	h.endAgain(i, l, from)
}

// once works a row that another row says, with the count printed behind it.
func (h *hand) once(w *words, l *notation.Again) {
	t := h.next(w, h.row)
	t.claims, t.odd = l.Claims, false
	b := h.before()
	if !h.attempt(t) {
		said := 0
		if len(l.Rows) == 1 {
			said, _ = h.number(&l.Rows[0].From, 0)
		}
		if said == 0 || !h.meantOther(t, said, l.At(), b) {
			h.back(b)
			h.workRow(t)
		}
	}
	h.so.worked++
	h.tell(t.number, t.number, w)
}

// endAgain checks the count printed behind a repetition.
func (h *hand) endAgain(i int, l *notation.Again, from int) {
	if h.so.worked > from && len(h.b.Rows) > 0 {
		h.row.claims, h.row.odd = l.Claims, false
		h.row.name = nameOf(&l.Label, h.so.number)
		if h.so.number == 0 || len(l.Label.Numbers) == 0 {
			h.row.name.Number = h.so.number
		}
		if h.so.open {
			h.s.open = true
		}
		h.recheckLast(l.Claims)
	}
	h.print(h.sheet.again(i, l), from)
}

// rowTimes is how many more times an extent has rows worked.
func (h *hand) rowTimes(e *notation.Extent) int {
	n, ok := h.number(&e.Count, 1)
	if !ok {
		return 0
	}
	if e.Kind == notation.InAll {
		return max(n-1, 0)
	}
	return max(n, 0)
}

// meant finds the rows that a reference means, each as often as it is named.
func (h *hand) meant(rows []notation.Range, last notation.Count, span source.Span) []*words {
	var out []*words
	if len(rows) == 0 {
		n, ok := h.number(&last, 1)
		if !ok || n <= 0 {
			return nil
		}
		for k := h.so.number - n + 1; k <= h.so.number; k++ {
			w, found := h.find(k)
			if !found || n > tallest {
				h.fail(RowReference, span, 3, n, max(h.so.number, 0))
				return nil
			}
			out = append(out, w)
		}
		return out
	}
	for _, r := range rows {
		from, ok := h.number(&r.From, 0)
		to := from
		if ok && r.To.Said {
			to, ok = h.number(&r.To, from)
		}
		if !ok {
			continue
		}
		for n := from; n <= to && len(out) < tallest; n++ {
			w, found := h.find(n)
			if !found {
				way := uint8(0)
				if n == h.row.number && h.row.number > 0 {
					way = 1
				} else if n > h.so.number {
					way = 2
				}
				h.fail(RowReference, span, way, n)
				return nil
			}
			out = append(out, w)
		}
	}
	return out
}

// cycle works n rows, going round the words. Once a round finds what the round before it found, the rest are as those were.
func (h *hand) cycle(said []*words, n int) {
	line := h.row
	first := h.so.number + 1
	before := h.around[:0]
	for i := 0; i < n; i++ {
		w := said[i%len(said)]
		t := h.next(w, line)
		if i%len(said) == 0 && i > 0 {
			if len(said) == 1 && h.steady(t) {
				h.again(n - i)
				break
			}
			if len(said) > 1 && h.settled(before, said, t) {
				h.copyRows(len(said), n-i)
				break
			}
		}
		if i > tallest {
			h.report(TooLarge, source.Error, line.span, 0, [2]string{}, n)
			break
		}
		h.workRow(t)
		h.so.worked++
		if i%len(said) == 0 {
			before = append(before[:0], h.buf...)
		}
		if h.tired() {
			break
		}
	}
	h.around = before
	h.tell(first, h.so.number, said...)
	h.row = line
}

// next makes words the next row, repeated by a line.
func (h *hand) next(w *words, line text) text {
	t := text{words: w, number: h.so.number + 1, span: line.span, odd: true}
	t.name = RowName{Words: w.label.Words, Number: t.number, Round: w.label.Round}
	return t
}

// settled reports whether the next round of a cycle finds what the round before it found.
func (h *hand) settled(before []run, said []*words, t text) bool {
	for _, w := range said {
		if !w.plain {
			return false
		}
	}
	buf := h.buf
	h.buf = before
	ok := h.steady(t)
	h.buf = buf
	return ok
}

// copyRows enters n more rows like the last size of them.
func (h *hand) copyRows(size, n int) {
	at := len(h.b.Rows) - size
	if at < 0 {
		return
	}
	if n > tallest {
		h.report(TooLarge, source.Error, h.row.span, 0, [2]string{}, n)
		n = tallest
	}
	h.b.Rows = slices.Grow(h.b.Rows, n)
	for i := range n {
		row := h.b.Rows[at+i%size]
		h.so.number++
		row.Number = h.so.number
		h.b.Rows = append(h.b.Rows, row)
		h.b.numbered = append(h.b.numbered, numbered{row.Number, len(h.b.Rows) - 1, 1})
	}
	h.so.worked += n
	h.so.rows += n
	if n%2 == 1 {
		h.so.side = facing(h.so.side)
	}
	last := len(h.b.Rows) - 1
	row := &h.b.Rows[last]
	h.so.live = h.edgeOf(last, row.Places)
	h.so.count = row.Count
}
