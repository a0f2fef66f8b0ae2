package ledger

import (
	"foundrow/internal/notation"
	"foundrow/internal/source"
)

// rows works a row n times, numbered from first. Once it finds what it found the time before, the rest are as that was.
func (h *hand) rows(w *words, first, n int) {
	if n > most {
		h.report(TooLarge, source.Error, w.span, 0, [2]string{}, n)
		return
	}
	from := h.so.worked
	t := w.text()
	t.name = RowName{Words: w.label.Words, Round: w.label.Round}
	for i := 0; i < n; i++ {
		t.number = first + i
		if len(w.label.Numbers) > 0 {
			t.name.Number = t.number
		}
		if i > 0 && h.steady(t) {
			h.again(n - i)
			h.recheck(w.claims)
			break
		}
		if i > tallest {
			h.report(TooLarge, source.Error, w.span, 0, [2]string{}, n)
			break
		}
		if i == n-1 {
			t.claims = w.claims // the count is that after the last of them
		}
		h.workRow(t)
		h.so.worked++
		if h.tired() {
			break
		}
	}
	h.tell(first, h.so.number, w)
	h.print(t, from)
}

// tallest is how many rows of a piece are worked one by one.
const tallest = 20_000

// again adds n more workings to the last row.
func (h *hand) again(n int) {
	h.b.Rows[len(h.b.Rows)-1].Times += n
	h.so.worked += n
	h.so.number += n
	h.so.rows += n
	if n%2 == 1 && !h.row.round {
		h.so.side = facing(h.so.side)
	}
	if k := len(h.b.numbered); k > 0 {
		h.b.numbered[k-1].count += n
	}
}

// tell remembers the words of rows, so that they can be repeated.
func (h *hand) tell(from, to int, said ...*words) {
	if from <= to {
		h.told = append(h.told, told{from, to, said})
	}
}

// find is what the row says that was told last under a number.
func (h *hand) find(n int) (*words, bool) {
	for i := len(h.told) - 1; i >= 0; i-- {
		if t := &h.told[i]; t.from <= n && n <= t.to {
			return t.said[(n-t.from)%len(t.said)], true
		}
	}
	for _, d := range h.due {
		if d.from <= n && n <= d.to {
			return d.said, true
		}
	}
	if h.so.alternate != nil && (n-h.so.pair)%2 == 0 && n <= h.so.number {
		return h.so.alternate, true
	}
	return nil, false
}

// steady reports whether the row, worked once more, would find just what it found before, so that it makes just what it made.
func (h *hand) steady(t text) bool {
	if !t.plain || h.so.begin != nil || h.so.open || h.s.open || len(h.s.chains) > 0 || h.so.shown >= 0 || h.so.entry > 0 || len(h.so.live.Spans) != 1 {
		return false
	}
	before := h.buf
	s := h.so.live.Spans[0]
	if h.turned(t.body) {
		s.Back = true
	}
	h.spare = h.so.live.Book.layOut(h.spare[:0], s)
	if len(h.spare) != len(before) {
		return false
	}
	for i := range before {
		if !sameShape(&before[i], &h.spare[i]) {
			return false
		}
	}
	return true
}

func sameShape(a, b *run) bool {
	m, o := a.made, b.made
	return a.n == b.n && a.face == b.face && m.Kind == o.Kind && m.Chains == o.Chains && m.Whole == o.Whole && m.Each == o.Each &&
		m.Stands == o.Stands && m.Counted == o.Counted && (m.Unit > 0) == (o.Unit > 0) && m.Of == o.Of
}

// recheck checks the claims of a row that was not worked again because nothing changes.
func (h *hand) recheck(claims []notation.Claim) {
	h.row.claims = claims
	h.first = len(h.made) - len(h.b.Rows[len(h.b.Rows)-1].Made)
	if len(claims) == 0 || h.first < 0 {
		return
	}
	h.check(trouble{}, h.counted())
	h.so.count = h.shownCount(h.counted())
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
			h.startOn(h.s.claim, h.madeOf(h.base(), 0))
		}
		return
	}
	made, first := h.made, h.first
	h.made, h.first = last.Made, 0
	h.check(trouble{}, h.counted())
	h.so.count = h.shownCount(h.counted())
	h.made, h.first = made, first
}

// print keeps what is printed of a line: the state after its last working.
func (h *hand) print(t text, from int) {
	p := Printed{Line: t.line, Row: len(h.b.Rows) - 1, From: from, Rows: h.so.worked - from, Label: t.label, Side: h.so.side, Span: t.span, Count: h.so.count, Open: h.s.open, Changed: h.so.changed}
	for i := range h.b.Printed {
		if q := &h.b.Printed[i]; q.Line == t.line {
			p.From = q.From
			p.Rows += q.Rows
			*q = p
			return
		}
	}
	h.b.Printed = append(h.b.Printed, p)
}
