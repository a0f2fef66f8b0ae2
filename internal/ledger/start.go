package ledger

import (
	"slices"

	"foundrow/internal/notation"
	"foundrow/internal/stitch"
)

// start begins the piece, or goes on with it, on stitches, row-ends, edges, or a row worked over nothing.
func (h *hand) start(l *notation.Start) {
	h.catchUp(0)
	h.so.cut.To = 0
	h.so.fresh = true
	h.so.begin = nil
	h.so.turn = false
	h.so.chained = 0
	h.so.joined = false
	h.b.start = len(h.b.Rows)
	h.b.Known = h.sheet.stitches
	h.s = state{}
	switch {
	case len(l.Edges) > 0:
		h.startEdges(l)
	case len(l.Body) > 0 && founds(l.Body):
		h.found(l.Body)
	case len(l.Body) > 0:
		h.startOver(l)
	default:
		h.startCount(l)
	}
	h.so.side = notation.NoSide
	h.checkStart(l.Claims)
}

// startCount starts on a number of stitches, row-ends, blocks.
func (h *hand) startCount(l *notation.Start) {
	n, ok := h.number(&l.Count, 0)
	if !ok || !l.Count.Said {
		h.so.open = true
		return
	}
	m := h.madeOf(h.sheet.one(stitch.Stitch{}), 0)
	switch l.Noun.Kind {
	case notation.ARowEnd:
		m.Kind = Ends
	case notation.AStitch, notation.AUnit:
		if l.Noun.Kind == notation.AStitch || h.single(l.Noun.Stitch) {
			m.Of = h.sheet.one(l.Noun.Stitch)
		}
	case notation.ASpace:
		m.Kind = Spaces
		m.Chains, _ = h.number(&l.Noun.Chains, 1)
	case notation.AChain:
		m = h.loose(0)
	}
	h.startOn(n, m)
	h.so.loose = h.unnamed(m)
	h.so.count = n
	h.so.joined = l.Around
	if m.Kind == Chains {
		h.so.turn, h.so.chained = true, n
		h.b.foundation = h.freeLoops(len(h.b.Rows)-1, n)
	}
}

// startOver works a row over nothing.
func (h *hand) startOver(l *notation.Start) {
	h.first = len(h.made)
	h.so.live = Edge{Book: h.b}
	h.lay(false)
	h.row.round = l.Around
	h.s.begun = true
	h.so.open = true // nothing is used
	h.seq(l.Body, false)
	h.so.open = false
	h.s.short = 0
	h.enterRow()
	h.b.Rows[len(h.b.Rows)-1].Times = 0
	h.so.count = h.countedIn(len(h.b.Rows) - 1)
	h.so.joined = l.Around
}

func (h *hand) countedIn(row int) int { return counted(h.b.Rows[row].Made, h.chainsAre()) }

// startEdges starts on edges, in the order they are named: what is taken of them becomes a row of this piece.
func (h *hand) startEdges(l *notation.Start) {
	var made []Made
	known := true
	h.checkOrder(l)
	for i := range l.Edges {
		part, ok := h.cutEdge(&l.Edges[i])
		known = known && ok
		for _, r := range part.runs() {
			m := *r.made
			m.N, m.Into = r.n, Span{}
			m.Of = h.sheet.one(part.Book.Known[m.Of])
			if r.face == FreeLoop && m.Kind == Stitches {
				m.Kind, m.Of = Chains, h.sheet.one(stitch.Stitch{Name: "ch"})
			}
			if n := len(made); n > 0 && merges(&made[n-1], &m) && m.Unit == 0 {
				made[n-1].N += m.N
				continue
			}
			made = append(made, m)
		}
	}
	places := 0
	for i := range made {
		places += made[i].N
	}
	h.b.Rows = append(h.b.Rows, Row{Made: made, Places: places, Line: h.row.line})
	row := len(h.b.Rows) - 1
	h.so.live = h.edgeOf(row, places)
	if places == 0 {
		h.so.live.Spans = nil
	}
	h.so.open, h.so.entry, h.so.shown = !known, 0, -1
	h.so.joined = l.Around
	h.so.count = h.countedIn(row)
	if len(l.Pickup) == 0 {
		return
	}
	h.row.round = l.Around
	h.first = len(h.made)
	h.lay(false)
	h.pickUp(l.Pickup)
	h.close()
	h.b.Rows[len(h.b.Rows)-1].Picked = true
	h.so.rows-- // not a row of its own in the numbering
	h.so.rows = max(h.so.rows, 0)
	h.so.number = 0
}

// pickUp works a pick-up all along the edges: "1 sc in each row-end", "1 sc in each st and row-end", "3 sc over every 2 rows".
func (h *hand) pickUp(clauses []notation.Clause) {
	if len(clauses) == 1 {
		if m, ok := clauses[0].(*notation.Make); ok && m.In.Each && !m.In.Count.Said && m.In.Every <= 1 {
			mixed := len(m.In.Also) > 0
			h.pickEach(m, mixed)
			return
		}
	}
	for _, c := range clauses { // "2 sc in each dc row-end, 1 sc in each sc row-end": each kind as it is met
		if m, ok := c.(*notation.Make); !ok || m.In.Where != notation.RowEnds || m.In.Noun.Stitch.Name == "" {
			h.seq(clauses, true)
			return
		}
	}
	s := &h.s
	for s.run < len(s.runs) {
		r := &s.runs[s.run]
		if s.off >= r.n {
			s.run, s.off = s.run+1, 0
			continue
		}
		i := slices.IndexFunc(clauses, func(c notation.Clause) bool { return c.(*notation.Make).In.Noun.Stitch.Name == h.of(r.made).Name })
		if i < 0 {
			s.holes += r.n - s.off
			h.passTo(s.run+1, want{})
			continue
		}
		m := clauses[i].(*notation.Make)
		count, _ := h.number(&m.Count, 1)
		h.spread(h.craftOf(m.Stitch, m.At()), want{what: rowEnd, name: h.of(r.made).Name}, r.n-s.off, count)
	}
}

// pickEach works a stitch in each place of the edges that the words name; of stitches and row-ends alike where both are named.
func (h *hand) pickEach(c *notation.Make, mixed bool) {
	k := h.craftOf(c.Stitch, c.At())
	h.so.main = h.sheet.one(stitch.Stitch{Name: c.Stitch.Name})
	count, _ := h.number(&c.Count, 1)
	w := h.targetWant(&c.In)
	if mixed || c.In.Where != notation.RowEnds {
		w = want{}
	}
	h.spread(k, w, h.ahead(w, 0), count)
}
