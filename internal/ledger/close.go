package ledger

import (
	"slices"
)

// short closes a part of a row after which the work was turned in the middle of it.
func (h *hand) short() {
	h.leaveRest()
	h.close()
}

// close ends a row: what it left is looked at, its claims are checked, and it goes into the book.
func (h *hand) close() {
	s := &h.s
	h.slipsCount()
	h.tallJoin()
	t := h.row
	if h.so.open {
		s.open = true
	}
	trouble := h.unused()
	made := h.counted()
	h.leaveRest()
	before := h.so.count
	h.check(trouble, made)
	h.trimFoundation()
	h.enterRow()
	h.so.count = h.shownCount(made)
	h.b.Rows[len(h.b.Rows)-1].Count = h.so.count
	if h.s.open {
		h.so.count = h.s.claim
		if h.s.claim >= 0 {
			h.startOn(h.s.claim, h.madeOf(h.base(), 0))
		}
	}
	if h.so.changed = h.so.count != before; h.so.changed && before > 0 {
		h.so.growth = h.so.count - before
	}
	h.so.number = max(t.number, 0)
	h.so.rows++
	h.so.chained = 0
	h.so.loose = false
}

// slipsCount leaves slip stitches out of the number where the row has other stitches.
func (h *hand) slipsCount() {
	if h.s.slips == 0 {
		return
	}
	others := false
	for i := h.first; i < len(h.made); i++ {
		if m := &h.made[i]; m.Kind == Stitches && h.of(m).Name != "sl st" {
			others = true
		}
	}
	if !others {
		return
	}
	for i := h.first; i < len(h.made); i++ {
		if m := &h.made[i]; m.Kind == Stitches && h.of(m).Name == "sl st" {
			m.Counted = false
		}
	}
}

// tallJoin finds a last loop that is closed by a tall stitch instead of being joined: the next round begins in it.
func (h *hand) tallJoin() {
	n := len(h.made)
	if !h.row.round || h.s.joined || n-h.first < 3 {
		return
	}
	last, loop := &h.made[n-1], &h.made[n-2]
	if last.Kind != Stitches || last.N != 1 || loop.Kind != Spaces || height(*h.of(last)) <= 2 {
		return
	}
	for i := h.first; i < n-2; i++ {
		if m := &h.made[i]; m.Kind == Spaces && m.Chains > loop.Chains {
			loop.Whole = m.Chains
			h.s.entry = h.placed() - 1
			h.s.joined = true
			return
		}
	}
}

// enterRow puts the row into the book and makes what it leaves live.
func (h *hand) enterRow() {
	s := &h.s
	end := len(h.made)
	made := h.made[h.first:end:end]
	at := len(h.b.Rows)
	places := h.placed()
	row := Row{
		Made: made, Places: places, Times: 1, Number: h.row.number, Line: h.row.line, Side: h.so.side, Round: h.row.round || s.joined,
		Tally: Tally{Found: s.found, Used: s.used, Skipped: s.skipped, Passed: s.passed, Left: s.given},
	}
	if len(s.unworked)+len(s.skips) > 0 {
		row.Unworked = slices.Concat(s.unworked, s.skips)
	}
	if len(s.names) > 0 {
		row.Units = slices.Clone(s.names)
	}
	row.Halves = h.rowHeight(made)
	h.b.Rows = append(h.b.Rows, row)
	if h.row.number > 0 {
		h.b.numbered = append(h.b.numbered, numbered{h.row.number, at, 1})
	}
	if len(s.chains) == 0 {
		h.so.live = h.edgeOf(at, places)
	} else {
		h.so.live = h.withLoops(at, places)
	}
	h.so.open = s.open
	h.so.joined = s.joined || h.row.round
	h.so.entry = 0
	switch {
	case s.entry < 0:
		h.so.entry = places
	case s.entry > 0:
		h.so.entry = s.entry
	}
}

// withLoops is the edge of a row in which chains were made and worked back along: their free loops stand in the edge.
func (h *hand) withLoops(row, places int) Edge {
	live := Edge{Book: h.b}
	from := 0
	for _, in := range h.s.chains {
		live.Spans = appendSpan(live.Spans, Span{Row: int32(row), From: int32(from), N: int32(in.at - from)})
		if n := in.n - 1; n > 0 {
			live.Spans = append(live.Spans, Span{Row: int32(in.row), N: int32(n), Face: FreeLoop})
		}
		from = in.at
	}
	live.Spans = appendSpan(live.Spans, Span{Row: int32(row), From: int32(from), N: int32(places - from)})
	return live
}

// edgeOf is all that a row made, n places of it.
func (h *hand) edgeOf(row, n int) Edge {
	if n <= 0 {
		return Edge{Book: h.b}
	}
	if len(h.spans) == cap(h.spans) {
		h.spans = make([]Span, 0, 64)
	}
	h.spans = append(h.spans, Span{Row: int32(row), N: int32(n)})
	at := len(h.spans)
	return Edge{Book: h.b, Spans: h.spans[at-1 : at : at]}
}

// startOn makes n places of a kind live, as though a row before had left them.
func (h *hand) startOn(n int, m *Made) {
	row := Row{Places: n, Line: h.row.line}
	if m.N = n; n > 0 {
		row.Made = []Made{*m}
	}
	h.b.Rows = append(h.b.Rows, row)
	h.so.live = h.edgeOf(len(h.b.Rows)-1, n)
	h.so.open, h.so.entry, h.so.shown = false, 0, -1
}

// mainOf is the stitch that most of a row is made of.
func mainOf(made []Made) int32 {
	best, most := int32(0), 0
	for i := range made {
		if m := &made[i]; m.Kind == Stitches && m.N > most {
			best, most = m.Of, m.N
		}
	}
	return best
}
