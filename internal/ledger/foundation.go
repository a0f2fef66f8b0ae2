package ledger

import (
	"foundrow/internal/notation"
	"foundrow/internal/stitch"
)

// foundation makes what the first row is worked into.
func (h *hand) foundation(l *notation.Foundation) {
	h.row = aside(0, l.At(), "foundation")
	h.found(l.Body)
	h.checkStart(l.Claims)
}

// founds reports whether nothing but a foundation is made: chains, foundation stitches, a ring.
func founds(body []notation.Clause) bool {
	for _, c := range body {
		switch c := c.(type) {
		case *notation.Chain, *notation.Join, *notation.Remark:
		case *notation.Make:
			if e := c.Stitch.Find(); e == nil || e.Class != stitch.Foundation && e.Class != stitch.Ring && e.Class != stitch.Slip {
				return false
			}
		default:
			return false
		}
	}
	return true
}

// found makes a foundation: a ring, a row of foundation stitches, a chain.
func (h *hand) found(body []notation.Clause) {
	chains, made := 0, 0
	var of stitch.Stitch
	isRing := false
	for _, c := range body {
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
	case isRing && chains > 0 && h.aroundChain():
		h.startOn(chains, h.loose(0))
		h.b.foundation = h.freeLoops(len(h.b.Rows)-1, chains)
		h.so.chained, h.so.joined, h.row.round = chains, true, true
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
	}
	h.so.fresh = true
	h.usedFoundation = false
}

// aroundChain reports whether the first round goes into the stitches of a joined chain, as for a cowl, and not into the ring that it
// makes: "hdc in each ch around" as against "12 dc in ring".
func (h *hand) aroundChain() bool {
	for _, l := range h.p.Block.Lines {
		row, is := l.(*notation.Row)
		if !is || !h.holds(row.For()) {
			continue
		}
		m := h.firstWorked(row.Body)
		if m == nil {
			return false
		}
		switch m.In.Where {
		case notation.First, notation.Next, notation.Everywhere, notation.Remaining, notation.Same:
			return m.In.Noun.Kind == notation.AChain || m.In.Noun.Kind == notation.AnyStitch
		}
		return false
	}
	return false
}

// freeLoops is the other side of a chain or a row of foundation stitches.
func (h *hand) freeLoops(row, n int) Edge {
	return Edge{Book: h.b, Spans: []Span{{Row: int32(row), N: int32(n), Face: FreeLoop}}}
}

// checkStart checks the count behind a foundation or a start.
func (h *hand) checkStart(claims []notation.Claim) {
	if len(claims) == 0 || h.so.open || len(h.b.Rows) == 0 {
		return
	}
	h.row.claims = claims
	h.recheckLast(claims)
}
