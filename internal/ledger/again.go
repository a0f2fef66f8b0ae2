package ledger

import (
	"foundrow/internal/notation"
	"foundrow/internal/source"
)

// againLine repeats whole rows: a number of times, for the rows of its label, or until something is so.
func (h *hand) againLine(i int, l *notation.Again) {
	h.row = text{line: i, span: l.At(), label: &l.Label, name: nameOf(&l.Label, 0)}
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
		h.row.span, h.row.line, h.row.label = l.At(), i, &l.Label
		h.row.name = nameOf(&l.Label, stretches[0].from)
	} else {
		h.catchUp(0)
	}
	if n, ok := h.number(l.Label.Times, 0); ok && l.Label.Times.Said {
		rows = n
	}
	cycle := h.meant(l.Rows, l.Last, l.At())
	from := h.worked
	if len(cycle) == 0 {
		h.so.open = h.so.open || len(l.Rows) > 0 || l.Last.Said
		if n := len(stretches); n > 0 {
			h.so.number = stretches[n-1].to
		}
		return
	}
	for k := range cycle {
		cycle[k].claims, cycle[k].odd = nil, true
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

// endAgain checks the count printed behind a repetition.
func (h *hand) endAgain(i int, l *notation.Again, from int) {
	if h.worked > from && len(h.b.Rows) > 0 {
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
	t := text{line: i, span: l.At(), label: &l.Label}
	h.print(t, from)
}

// recheckLast checks claims against the last row there is.
func (h *hand) recheckLast(claims []notation.Claim) {
	if len(claims) == 0 {
		return
	}
	last := &h.b.Rows[len(h.b.Rows)-1]
	if h.s.open {
		h.openRow()
		h.so.count = h.s.claim
		if h.s.claim >= 0 {
			h.startOn(h.s.claim, Made{Kind: Stitches, Stitch: h.so.main, Stands: true, Counted: true})
		}
		return
	}
	made, first := h.made, h.first
	h.made, h.first = last.Made, 0
	h.check(trouble{}, h.counted())
	h.so.count = h.shownCount(h.counted())
	h.made, h.first = made, first
}

// rowTimes is how many more times an extent has rows worked.
func (h *hand) rowTimes(e *notation.Extent) int {
	n, ok := h.number(e.Count, 1)
	if !ok {
		return 0
	}
	if e.Kind == notation.InAll {
		return max(n-1, 0)
	}
	return max(n, 0)
}

// meant finds the rows that a reference means, each as often as it is named.
func (h *hand) meant(rows []notation.Range, last notation.Count, span source.Span) []text {
	var out []text
	if len(rows) == 0 {
		n, ok := h.number(last, 1)
		if !ok || n <= 0 {
			return nil
		}
		if n > len(h.told) {
			h.fail(RowReference, span, 3, n, len(h.told))
			return nil
		}
		for _, t := range h.told[len(h.told)-n:] {
			out = append(out, t.text)
		}
		return out
	}
	for _, r := range rows {
		from, ok := h.number(r.From, 0)
		to := from
		if ok && r.To.Said {
			to, ok = h.number(r.To, from)
		}
		if !ok {
			continue
		}
		for n := from; n <= to && len(out) < 10_000; n++ {
			t, found := h.find(n)
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
			out = append(out, t)
		}
	}
	return out
}

// find is the row told last under a number.
func (h *hand) find(n int) (text, bool) {
	for i := len(h.told) - 1; i >= 0; i-- {
		if h.told[i].number == n {
			return h.told[i].text, true
		}
	}
	for _, d := range h.later {
		if d.from <= n && n <= d.to {
			return d.text, true
		}
	}
	if h.so.alternate != nil && (n-h.so.pair)%2 == 0 && n <= h.so.number {
		return *h.so.alternate, true
	}
	return text{}, false
}

// cycle works n rows, going round the texts. Once a round finds what the round before it found, the rest are as those were.
func (h *hand) cycle(texts []text, n int) {
	if n > most {
		h.report(TooLarge, source.Error, h.row.span, 0, [2]string{}, n)
		return
	}
	line := h.row
	if len(texts) == 1 {
		h.more(texts[0], n)
		h.restore(line)
		return
	}
	var before []run
	for i := 0; i < n; i++ {
		if i%len(texts) == 0 && i > 0 {
			if h.settled(before, texts) {
				h.copyRows(len(texts), n-i)
				break
			}
		}
		t := texts[i%len(texts)]
		h.next(&t, line)
		h.workRow(t)
		h.worked++
		h.tell(t, nil)
		if i%len(texts) == 0 {
			before = append(before[:0], h.buf...)
		}
		if h.steps > patience {
			break
		}
	}
	h.restore(line)
}

func (h *hand) restore(line text) {
	h.row.line, h.row.span, h.row.label, h.row.name = line.line, line.span, line.label, line.name
}

// next makes a repeated row the next one.
func (h *hand) next(t *text, line text) {
	t.number = h.so.number + 1
	t.name = RowName{Number: t.number, Round: t.label != nil && t.label.Round}
	if t.label != nil {
		t.name.Words = t.label.Words
	}
	t.side = 0
	t.span = line.span
}

// more works one row n more times.
func (h *hand) more(t text, n int) {
	line := h.row
	for i := 0; i < n; i++ {
		h.next(&t, line)
		if more := n - i; h.steady(t) && h.row.span == t.span && i > 0 {
			h.b.Rows[len(h.b.Rows)-1].Times += more
			h.worked += more
			h.so.number += more
			h.so.rows += more
			if more%2 == 1 && !t.round {
				h.so.side = facing(h.so.side)
			}
			if len(h.b.numbered) > 0 {
				h.b.numbered[len(h.b.numbered)-1].count += more
			}
			h.told = append(h.told, told{h.so.number, h.so.words, t.round, t})
			return
		}
		h.workRow(t)
		h.worked++
		h.tell(t, nil)
		if h.steps > patience {
			return
		}
	}
}

// settled reports whether the next round of a cycle finds what the round before it found.
func (h *hand) settled(before []run, texts []text) bool {
	for i := range texts {
		for _, c := range texts[i].body {
			switch c.(type) {
			case *notation.Turn, *notation.Chain, *notation.Make, *notation.Repeat, *notation.Group, *notation.Join, *notation.Through, *notation.Remark, *notation.Skip:
			default:
				return false
			}
		}
	}
	buf := h.buf
	h.buf = before
	ok := h.steady(texts[0])
	h.buf = buf
	return ok
}

// copyRows enters n more rows like the last size of them.
func (h *hand) copyRows(size, n int) {
	at := len(h.b.Rows) - size
	if at < 0 {
		return
	}
	for i := range n {
		row := h.b.Rows[at+i%size]
		h.so.number++
		row.Number = h.so.number
		h.b.Rows = append(h.b.Rows, row)
		h.b.numbered = append(h.b.numbered, numbered{row.Number, len(h.b.Rows) - 1, 1})
	}
	h.worked += n
	h.so.rows += n
	if n%2 == 1 {
		h.so.side = facing(h.so.side)
	}
	last := len(h.b.Rows) - 1
	row := &h.b.Rows[last]
	h.so.live = Edge{Book: h.b, Spans: []Span{{Row: last, N: row.Places}}}
	h.so.count = row.Count
	for i := max(len(h.told)-size, 0); i < len(h.told); i++ {
		h.told[i].number += n - n%size
	}
}

// untilCount repeats rows until a number of stitches remains. It is looked at after every row.
func (h *hand) untilCount(texts []text, l *notation.Again) {
	target, ok := h.number(l.Extent.Count, 0)
	if !ok {
		return
	}
	line := h.row
	ending := h.endingRow(l)
	for h.so.count != target {
		start := h.so.count
		for i := range texts {
			before := h.so.count
			t := texts[i]
			h.next(&t, line)
			h.workRow(t)
			h.worked++
			h.tell(t, nil)
			now := h.so.count
			switch {
			case h.so.open || h.steps > patience:
				h.restore(line)
				return
			case now == target:
				h.restore(line)
				if i < len(texts)-1 && ending != texts[i].line {
					h.report(UntilWithin, source.Query, l.Extent.Span, 0, [2]string{}, target, i+1, len(texts))
				}
				return
			case before < target && now > target, before > target && now < target:
				h.restore(line)
				h.fail(UntilPassed, l.Extent.Span, 0, target, before, now)
				return
			}
		}
		if now := h.so.count; now == start || (now > start) != (target > start) {
			h.restore(line)
			h.fail(UntilNever, l.Extent.Span, 0, target, start, now)
			return
		}
	}
	h.restore(line)
}

// endingRow is the line of the row that "ending with row 2" names, -1 when none is named.
func (h *hand) endingRow(l *notation.Again) int {
	for _, r := range l.Ending {
		if n, ok := h.number(r.From, 0); ok {
			if t, found := h.find(n); found {
				return t.line
			}
		}
	}
	return -1
}

// untilLong repeats rows until the piece is as long as is said.
func (h *hand) untilLong(texts []text, l *notation.Again) {
	if h.p.Rows == nil {
		h.cycle(texts, len(texts))
		return
	}
	rows, ok := h.p.Rows(l.Extent)
	if !ok {
		h.cycle(texts, len(texts))
		return
	}
	n := rows - h.worked
	if n <= 0 {
		return
	}
	side := h.so.side
	if n%2 == 1 {
		side = facing(side)
	}
	if l.EndSide != notation.NoSide && side != notation.NoSide && side != l.EndSide {
		n++
	}
	if last := h.endingRow(l); last >= 0 {
		for len(texts) > 0 && texts[(n-1)%len(texts)].line != last && n < rows+len(texts) {
			n++
		}
	}
	h.cycle(texts, n)
}
