package ledger

import (
	"slices"

	"foundrow/internal/notation"
	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

// foundation makes what the first row is worked into.
func (h *hand) foundation(l *notation.Foundation) {
	h.row = aside(0, l.At(), "foundation")
	chains, made := 0, 0
	var of stitch.Stitch
	isRing := false
	for _, c := range l.Body {
		if !h.holds(c.For()) {
			continue
		}
		switch c := c.(type) {
		case *notation.Chain:
			n, ok := h.number(&c.Count, 1)
			if !ok {
				h.so.open = true
				return
			}
			chains += n
		case *notation.Make:
			e := c.Stitch.Find()
			switch {
			case e != nil && e.Class == stitch.Foundation:
				n, ok := h.number(&c.Count, 1)
				if !ok {
					h.so.open = true
					return
				}
				made += n
				of = c.Stitch
			case e != nil && (e.Class == stitch.Ring || e.Class == stitch.Slip):
				isRing = true
			}
		case *notation.Join, *notation.Travel:
			isRing = true
		case *notation.UnreadClause:
			h.so.open = true
		}
	}
	if h.s.open {
		h.so.open = true
	}
	h.s = state{}
	switch {
	case isRing:
		h.startOn(1, &Made{Kind: Rings, Stands: true})
	case made > 0:
		h.startOn(made, h.madeOf(h.sheet.one(of), 0))
		row := len(h.b.Rows) - 1
		h.b.foundation = h.freeLoops(row, made)
		h.so.main = h.sheet.one(stitch.Stitch{Name: of.Name[1:]})
		h.so.count = made
	case chains > 0:
		h.startOn(chains, h.loose(0))
		row := len(h.b.Rows) - 1
		h.b.foundation = h.freeLoops(row, chains)
		h.so.turn = true
		h.so.chained = chains
		h.so.chainSpan = l.At()
	}
	h.so.fresh = true
	h.usedFoundation = false
	h.claimed2(l.Claims)
}

// freeLoops is the other side of a chain or a row of foundation stitches.
func (h *hand) freeLoops(row, n int) Edge {
	return Edge{Book: h.b, Spans: []Span{{Row: int32(row), N: int32(n), Face: FreeLoop}}}
}

// onFoundation reports whether the row is the first on a chain.
func (h *hand) onFoundation() bool { return h.so.chained > 0 && h.onChain() }

// trimFoundation leaves out of the foundation edge the chains that row 1 passed over at the hook.
func (h *hand) trimFoundation() {
	s := &h.s
	if h.so.chained == 0 || s.tchain == 0 || len(h.b.foundation.Spans) != 1 {
		return
	}
	n := h.so.chained - s.tchain
	if s.based {
		n++
	}
	h.b.foundation.Spans = []Span{{Row: h.b.foundation.Spans[0].Row, N: int32(max(n, 0)), Face: FreeLoop}}
}

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
	case len(l.Body) > 0:
		h.startOver(l)
	default:
		h.startCount(l)
	}
	h.so.side = notation.NoSide
	h.claimed2(l.Claims)
}

// claimed2 checks the count behind a foundation or a start.
func (h *hand) claimed2(claims []notation.Claim) {
	if len(claims) == 0 || h.so.open || len(h.b.Rows) == 0 {
		return
	}
	h.row.claims = claims
	h.recheckLast(claims)
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

func (h *hand) countedIn(row int) int { return counted(h.b.Rows[row].Made, h.chainsCount()) }

// startEdges starts on edges, in the order they are named: what is taken of them becomes a row of this piece.
func (h *hand) startEdges(l *notation.Start) {
	var made []Made
	known := true
	h.corners4(l)
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

// around are the edges of a piece as hands meet them with the right side facing: down the left side, along the foundation, up the right
// side and back along the last row.
var around = [...]string{"left", "foundation", "right", "last"}

// corners4 reports edges of one piece that are named the other way round than the side that faces has them.
func (h *hand) corners4(l *notation.Start) {
	want := 1
	if h.facesFirst() == notation.WrongSide {
		want = -1
	}
	n := len(l.Edges)
	for i := range l.Edges {
		if i == n-1 && !l.Around {
			break
		}
		a, b := &l.Edges[i], &l.Edges[(i+1)%n]
		if a.Piece != b.Piece || n < 2 {
			continue
		}
		x, y := slices.Index(around[:], a.Which), slices.Index(around[:], b.Which)
		if x < 0 || y < 0 {
			continue
		}
		if turn := (y - x + 4) % 4; turn == 1 && want < 0 || turn == 3 && want > 0 {
			h.report(PickUp, source.Error, b.Span, 3, [2]string{a.Which, b.Which}, want)
			return
		}
	}
}

// facesFirst is the side that the first row behind the start is marked with.
func (h *hand) facesFirst() notation.Side {
	for _, l := range h.p.Block.Lines[h.row.line+1:] {
		switch l := l.(type) {
		case *notation.Row:
			return l.Label.Side
		case *notation.Start, *notation.Foundation:
			return notation.NoSide
		}
	}
	return notation.NoSide
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

// cutEdge takes what a start names of an edge: its first or last stitches, the part between two markers, all of it.
func (h *hand) cutEdge(e *notation.Edge) (Edge, bool) {
	if e.Piece == "" || e.Piece == h.p.Name {
		edge, ok := h.edge(e, 0)
		if !ok {
			h.fail(NoSuchEdge, e.Span, 0)
			return Edge{}, false
		}
		part, _ := h.partOf(edge, e)
		return part, true
	}
	f := h.reachFor(e)
	if !f.known {
		return Edge{}, false
	}
	part, left := h.partOf(f.left, e)
	f.left = left
	return part, true
}

func (h *hand) partOf(edge Edge, e *notation.Edge) (part, left Edge) {
	has := edge.Stitches()
	short := func(n int) {
		if n > has {
			h.errors++
			h.report(RunOut, source.Error, e.Span, 1, [2]string{e.Piece, e.Which}, n, has)
		}
	}
	switch {
	case e.First.Said:
		n, _ := h.number(&e.First, has)
		short(n)
		return edge.Cut(n)
	case e.Last.Said:
		n, _ := h.number(&e.Last, has)
		short(n)
		left, part = edge.Cut(max(has-n, 0))
		return part, left
	case e.From != "" || e.To != "":
		return h.between2(edge, e)
	}
	return edge, Edge{Book: edge.Book}
}

// between2 cuts an edge between two markers, both marked stitches with it.
func (h *hand) between2(edge Edge, e *notation.Edge) (part, left Edge) {
	from, to := 0, edge.Stitches()
	if edge.Book == nil {
		return edge, edge
	}
	if e.From != "" {
		n, ok := edge.markAt(e.From)
		if !ok {
			h.report(NoSuchMarker, source.Error, e.Span, 0, [2]string{e.From})
		}
		from = n
	}
	if e.To != "" {
		n, ok := edge.markAt(e.To)
		if !ok {
			h.report(NoSuchMarker, source.Error, e.Span, 0, [2]string{e.To})
			n = to - 1
		}
		to = n + 1
	}
	before, rest := edge.Cut(from)
	part, after := rest.Cut(max(to-from, 0))
	return part, before.Join(after)
}

// markAt is how many stitches lie before a marker along an edge.
func (e Edge) markAt(name string) (int, bool) {
	for _, m := range slices.Backward(e.Book.Marks) {
		if m.Name != name {
			continue
		}
		n := 0
		for _, r := range e.runs() {
			if r.row == m.Row {
				o := m.Place - r.from
				if r.back {
					o = -o
				}
				if o >= 0 && o < r.n {
					return n + o*weight(&r), true
				}
			}
			n += r.n * weight(&r)
		}
	}
	return 0, false
}

// seam joins two edges, which must bring equal numbers.
func (h *hand) seam(l *notation.Seam) {
	var n [2]int
	for i := range l.Edges {
		e := &l.Edges[i]
		edge, ok := h.edge(e, 0)
		if !ok {
			h.report(NoSuchEdge, source.Error, e.Span, 0, [2]string{e.Piece, e.Which})
			return
		}
		part, _ := h.partOf(edge, e)
		n[i] = part.Stitches()
	}
	if n[0] != n[1] {
		h.errors++
		a, b := l.Edges[0], l.Edges[1]
		h.report(SeamDiffers, source.Error, l.At(), 0, [2]string{edgeName(a, h.p.Name), edgeName(b, h.p.Name)}, n[0], n[1])
	}
}

func edgeName(e notation.Edge, own string) string {
	if e.Piece == "" {
		if own == "" {
			return e.Which
		}
		return own + "." + e.Which
	}
	return e.Piece + "." + e.Which
}
