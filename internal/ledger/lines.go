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

// work works every line of the piece.
func (h *hand) work() (*Book, []Report) {
	for i, l := range h.p.Block.Lines {
		h.only(i)
		if !h.holds(l.For()) {
			continue
		}
		h.line(i, l)
	}
	h.catchUp(0)
	h.b.last = h.so.live
	for _, f := range h.foreign {
		if f.known {
			h.b.Taken = append(h.b.Taken, Taken{f.piece, f.which, f.left, f.copy})
		}
	}
	h.b.Closes = h.errors == 0
	h.b.Known = h.sheet.stitches
	h.sheet.room, h.sheet.rows = h.made, len(h.b.Rows)
	return h.b, h.reports
}

func (h *hand) line(i int, l notation.Line) {
	switch l := l.(type) {
	case *notation.Foundation:
		h.foundation(l)
	case *notation.Start:
		h.row = aside(i, l.At(), "start")
		h.start(l)
	case *notation.Row:
		h.rowLine(i, l)
	case *notation.Again:
		h.againLine(i, l)
	case *notation.Rule:
		h.rules = append(h.rules, l)
		h.crafts = h.crafts[:0]
		h.chainsStated = h.chainsStated || l.Kind == notation.ChainsAreStitches
	case *notation.Mark:
		if n, ok := h.number(&l.In, 1); ok && n > 0 && len(h.b.Rows) > 0 {
			if l.Last {
				n = most
			}
			h.b.Marks = append(h.b.Marks, Mark{Name: l.Name, Row: len(h.b.Rows) - 1, Place: h.nthPlace(n)})
		}
	case *notation.Seam:
		h.row = aside(i, l.At(), "seam")
		h.seam(l)
	case *notation.Unread, *notation.Chart, *notation.Work:
		h.so.open = true
	}
}

// nthPlace is the place of the n-th stitch of the last row.
func (h *hand) nthPlace(n int) int {
	at := 0
	for i := range h.b.Rows[len(h.b.Rows)-1].Made {
		m := &h.b.Rows[len(h.b.Rows)-1].Made[i]
		r := run{made: m, n: m.N}
		if w := weight(&r); w > 0 {
			if n <= m.N {
				return at + n - 1
			}
			n -= m.N
		}
		at += m.N
	}
	return max(at-1, 0)
}

// aside is what is reported of a line that is no row.
func aside(line int, span source.Span, name string) text {
	return text{words: &words{line: line, label: &notation.Label{}, split: true}, span: span, name: RowName{Words: name}}
}

// wordsOf is what a line of rows says.
func wordsOf(i int, l *notation.Row) *words {
	w := &words{body: l.Body, claims: l.Claims, label: &l.Label, span: l.At(), line: i, round: l.Label.Round, side: l.Label.Side, plain: true}
	if w.split = forSome(l.Body); w.split {
		w.plain = false
	}
	w.slips = onlySlips(l.Body)
	for _, c := range l.Body {
		switch c := c.(type) {
		case *notation.Counts:
			w.counts = c
		case *notation.Join:
			w.round = w.round || !c.Not
		case *notation.Turn, *notation.Chain, *notation.Make, *notation.Repeat, *notation.Group, *notation.Through, *notation.Remark, *notation.Skip:
		default:
			w.plain = false
		}
	}
	return w
}

// onlySlips reports whether slip stitches are all that a row works.
func onlySlips(clauses []notation.Clause) bool {
	found := false
	for _, c := range clauses {
		switch c := c.(type) {
		case *notation.Travel:
			found = true
		case *notation.Make:
			if c.Stitch.Name != "sl st" {
				return false
			}
			found = true
		case *notation.Chain, *notation.Turn, *notation.Remark, *notation.Yarn, *notation.Marker, *notation.Through, *notation.Counts:
		default:
			return false
		}
	}
	return found
}

// forSome reports whether any of the clauses is for some sizes only.
func forSome(clauses []notation.Clause) bool {
	for _, c := range clauses {
		if o := c.For(); o.Rest || len(o.Names) > 0 {
			return true
		}
		switch c := c.(type) {
		case *notation.Group:
			if forSome(c.Body) || forSome(c.Ending) {
				return true
			}
		case *notation.Repeat:
			if forSome(c.Body) || forSome(c.Ending) {
				return true
			}
		}
	}
	return false
}

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
			h.later = append(h.later, due{r.from, r.to, w})
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

// meanwhile does what a line says that is no row: it fastens off, turns, places a marker in the last stitch.
func (h *hand) meanwhile(clauses []notation.Clause) {
	for _, c := range clauses {
		if !h.holds(c.For()) {
			continue
		}
		switch c := c.(type) {
		case *notation.Fasten:
			h.so.cut = c.At()
		case *notation.Rejoin:
			h.so.cut.To = 0
		case *notation.Turn:
			h.so.turn, h.so.still = !c.Not, c.Not
		case *notation.Chain:
			h.so.begin = c
		case *notation.Marker:
			if n := len(h.b.Rows); n > 0 && c.Does != "remove" {
				h.b.Marks = append(h.b.Marks, Mark{Name: c.Name, Row: n - 1, Place: max(h.b.Rows[n-1].Places-1, 0)})
			}
		case *notation.UnreadClause:
			h.so.open = true
		}
	}
}

func isNext(words string) bool { return words == "Next" || words == "next" }

// a stretch is a range of row numbers in this size.
type stretch struct{ from, to int }

// due is a row that is told before its turn comes: "Rows 4, 6 and 8".
type due struct {
	from, to int
	said     *words
}

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
		for i, d := range h.later {
			if d.from == next {
				h.later = slices.Delete(slices.Clone(h.later), i, i+1)
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

// rows works a row n times, numbered from first. Once it finds what it found the time before, the rest are as that was.
func (h *hand) rows(w *words, first, n int) {
	if n > most {
		h.report(TooLarge, source.Error, w.span, 0, [2]string{}, n)
		return
	}
	from := h.worked
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
		h.worked++
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
	h.worked += n
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

// print keeps what is printed of a line: the state after its last working.
func (h *hand) print(t text, from int) {
	p := Printed{Line: t.line, Row: len(h.b.Rows) - 1, From: from, Rows: h.worked - from, Label: t.label, Side: h.so.side, Span: t.span, Count: h.so.count, Open: h.s.open, Changed: h.so.changed}
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

// holds reports whether something that may be for some sizes only is for this one.
func (h *hand) holds(o notation.Only) bool {
	switch {
	case o.Rest:
		return !h.others.has(h.p.Size)
	case len(o.Names) == 0:
		return true
	}
	return h.named1(o.Names, h.p.Size)
}
