package ledger

import (
	"foundrow/internal/notation"
	"foundrow/internal/source"
)

// A reach is an edge of another piece that this one is taking stitches from as it goes.
type reach struct {
	piece, which string
	left         Edge
	known        bool
	copy         int // which of several pieces made alike it is of, from 0
}

// reachFor finds the edge that a name means, as much of it as is left.
func (h *hand) reachFor(e *notation.Edge) *reach {
	for i := range h.foreign {
		if f := &h.foreign[i]; f.piece == e.Piece && f.which == e.Which {
			h.another(f, e)
			return f
		}
	}
	edge, ok := h.edge(e, 0)
	if !ok {
		h.report(NoSuchEdge, source.Error, e.Span, 0, [2]string{e.Piece, e.Which})
	}
	h.foreign = append(h.foreign, reach{e.Piece, e.Which, edge, ok, 0})
	return &h.foreign[len(h.foreign)-1]
}

// another goes on to the same edge of the next piece made alike, where the one before is used up.
func (h *hand) another(f *reach, e *notation.Edge) {
	if !f.known || f.left.Stitches() > 0 {
		return
	}
	if edge, ok := h.edge(e, f.copy+1); ok {
		f.left, f.copy = edge, f.copy+1
	}
}

// edge finds a live edge, of another piece or of this one; copy counts the pieces made alike.
func (h *hand) edge(e *notation.Edge, copy int) (Edge, bool) {
	which := e.Which
	if e.Row.Said {
		n, ok := h.number(&e.Row, 0)
		if !ok {
			return Edge{}, false
		}
		which = "row " + digits(n)
	}
	if e.Piece == "" || e.Piece == h.p.Name {
		h.b.last = h.so.live
		return h.b.Edge(which)
	}
	if h.p.Edges == nil {
		return Edge{}, false
	}
	return h.p.Edges(e.Piece, which, copy)
}

// takeFrom takes n stitches of an edge of another piece.
func (h *hand) takeFrom(e *notation.Edge, n int) bool {
	f := h.reachFor(e)
	if !f.known {
		return false
	}
	if has := f.left.Stitches(); has < n {
		h.report(RunOut, source.Error, e.Span, 1, [2]string{e.Piece, e.Which}, n, has)
		n = has
	}
	_, f.left = f.left.Cut(n)
	h.s.begun = true
	return true
}

// reach works a stitch into an edge of another piece, which takes it up there.
func (h *hand) reach(k *craft, c *notation.Make, t *notation.Target, count int) {
	n, ok := h.number(&t.Count, 1)
	if !ok {
		return
	}
	if t.Each && !t.Count.Said || t.Till.Kind == notation.AcrossRow {
		n = h.reachFor(t.Edge).left.Stitches()
	}
	if !h.takeFrom(t.Edge, n) || k.slip {
		return
	}
	made := n
	if count > 1 && count != n {
		made = n * count
	}
	h.emit(h.madeOf(k.made, k.makes*made))
}

// otherSide works along the free loops of a chain: those that lie ahead in the row, else those of the foundation.
func (h *hand) otherSide(k *craft, c *notation.Make, t *notation.Target, count int, rest []notation.Clause) {
	if !h.s.other && h.ahead2(want{what: otherSide}) == 0 {
		h.turnCorner(true)
		defer func() {
			h.s.other = false
			h.recount()
		}()
	}
	at := *t
	at.Where = notation.Next
	if t.Each || !t.Count.Said && !t.Noun.Chains.Said && c.Form == notation.Bare {
		at.Where = notation.Everywhere
	}
	if h.s.other {
		if c.Form == notation.NumberFirst && !t.Count.Said { // "4 sc along the other side"
			h.spread(k, want{what: otherSide}, count, 1)
			return
		}
		h.places(k, c, &at, count, rest)
		return
	}
	n, ok := h.number(&t.Count, 1)
	if !ok {
		return
	}
	h.spread(k, want{what: otherSide}, n, count)
}

// ahead2 counts places ahead of any weight.
func (h *hand) ahead2(w want) int {
	n := 0
	for i, off := h.s.run, h.s.off; i < len(h.s.runs); i, off = i+1, 0 {
		if r := &h.s.runs[i]; h.accepts(r, w) {
			n += r.n - off
		}
	}
	return n
}

// along says where what follows is worked.
func (h *hand) along(c *notation.Along) {
	switch c.In.Where {
	case notation.OtherSide:
		h.turnCorner(false)
	case notation.RowEnds:
		h.s.ends = true
	default:
		h.s.other, h.s.ends = false, false
		h.recount()
	}
}

// turnCorner brings the hook to the other side of the chain that the row goes along, or of the foundation.
func (h *hand) turnCorner(short bool) {
	s := &h.s
	if s.other {
		return
	}
	for i := range s.runs { // the chain this row has gone along
		if r := &s.runs[i]; r.made.Kind == Chains && r.face == Top && r.back && s.tchain > 0 {
			n := r.from + 1 - s.tchain - 1
			s.other = true
			if n > 0 {
				s.run, s.off = len(s.runs), 0
				if s.left > 0 {
					s.holes += s.left
				}
				h.insertRun(run{made: r.made, row: r.row, from: 1, n: n, face: FreeLoop})
			}
			h.recount()
			return
		}
	}
	e := h.b.foundation
	if h.usedFoundation {
		e = Edge{}
	}
	s.other = true
	for i := len(e.Spans) - 1; i >= 0; i-- {
		for _, r := range h.b.layOut(nil, e.Spans[i]) {
			h.insertRun(r)
		}
	}
	h.usedFoundation = true
	h.recount()
}

// recount adds up the stitches ahead anew.
func (h *hand) recount() {
	s := &h.s
	s.left = 0
	for i, off := s.run, s.off; i < len(s.runs); i, off = i+1, 0 {
		if r := &s.runs[i]; off < r.n {
			s.left += h.weight(r) * (r.n - off)
		}
	}
}

// rowEnds works along row-ends: those of the edge the row is on, else those of this piece.
func (h *hand) rowEnds(k *craft, c *notation.Make, t *notation.Target, count int) {
	at := h.s.run
	for at < len(h.s.runs) && at == h.s.run && h.s.off >= h.s.runs[at].n { // the run before is used up
		at++
	}
	onEnds := at < len(h.s.runs) && h.s.runs[at].made.Kind == Ends
	n, said := h.number(&t.Count, 0)
	switch {
	case onEnds:
		w := want{what: rowEnd, name: t.Noun.Stitch.Name}
		each := count
		switch {
		case t.Count.Said && !t.Each && count == n:
			each = 1
		case t.Count.Said:
		case t.Each:
			n = h.ahead(w, 0)
			if t.Till.Kind == notation.ToLast {
				n = h.ahead(w, h.keep(&t.Till))
			}
		case c.Form == notation.NumberFirst || c.Form == notation.NumberAfter: // "24 sc along the side": as many as are said
			h.evenlyOver(h.madeOf(k.made, k.makes*count))
			return
		case t.Where == notation.RowEnds:
			n = h.ahead(w, 0)
		}
		if t.Every > 1 {
			if n%t.Every != 0 {
				h.report(PickUp, source.Query, t.Span, 0, [2]string{}, t.Every, n)
			}
			h.everyOther(k, w, n, t.Every, each)
			return
		}
		h.spread(k, w, n, each)
		return
	case !t.Count.Said:
		n = h.b.RowEnds()
		if !t.Each { // "10 sc down side"
			h.s.begun = true
			h.emit(h.madeOf(k.made, k.makes*count))
			h.s.soft = false
			return
		}
	case !said:
		return
	}
	if has := h.endsHere(); n > has {
		h.report(PickUp, source.Error, t.Span, 1, [2]string{}, n, has)
	}
	h.s.begun = true
	if t.Every > 1 {
		n = (n + t.Every - 1) / t.Every
	}
	made := n
	if count > 1 && count != n {
		made = n * count
	}
	h.emit(h.madeOf(k.made, k.makes*made))
	h.s.last = place{&nowhere, Span{}}
}

// endsHere is how many rows have ended at the side of the piece; a piece that starts in the middle may have more.
func (h *hand) endsHere() int {
	n := h.b.RowEnds()
	if h.so.number > n && len(h.b.Rows) > 0 && h.b.Rows[0].Made != nil {
		n = h.so.number
	}
	if h.row.number-1 > n {
		n = h.row.number - 1
	}
	return n
}

// digits writes a number.
func digits(n int) string {
	if n < 10 {
		return string(rune('0' + max(n, 0)))
	}
	return digits(n/10) + digits(n%10)
}
