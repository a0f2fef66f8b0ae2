package ledger

import (
	"foundrow/internal/notation"
	"foundrow/internal/source"
)

// workRow works a row. Where it does not come out, it is tried with names of stitches taken loosely, and upon the number that the row
// before printed, if that was another than it made.
func (h *hand) workRow(t text) {
	b := h.before()
	if h.attempt(t) {
		return
	}
	if h.named {
		h.back(b)
		h.sloppy = true
		ok := h.attempt(t)
		h.sloppy = false
		if ok {
			h.report(Passed, source.Query, t.span, 1, [2]string{})
			return
		}
	}
	if like, ok := onlyLike(t.body); ok && len(like.Rows) == 1 && !like.Rows[0].To.Said && len(t.claims) > 0 {
		if said, _ := h.number(&like.Rows[0].From, 0); h.meantOther(t, said, like.At(), b) {
			return
		}
	}
	if n := b.so.shown; n >= 0 && !b.so.open {
		h.back(b)
		h.startOn(n, h.madeOf(h.base(), 0))
		h.so.turn, h.so.begin, h.so.joined, h.so.cut = b.so.turn, b.so.begin, b.so.joined, b.so.cut
		if h.attempt(t) {
			return
		}
	}
	h.back(b)
	h.attempt(t)
}

// meantOther tries, for a row that says what row said says and does not come out, whether it comes out as one of the rows told lately:
// then that is the row which is meant.
func (h *hand) meantOther(t text, said int, span source.Span, b before) bool {
	as := h.so.count // what it leaves as it is written
	for n := b.so.number; n > max(0, b.so.number-8); n-- {
		other, found := h.find(n)
		if !found || n == said {
			continue
		}
		if _, again := onlyLike(other.body); again {
			continue
		}
		h.back(b)
		try := t
		try.words = other
		if h.attempt(try) {
			h.row = t
			h.fail(RowReference, span, 4, said, n, as, h.so.count)
			h.so.count = as
			return true
		}
	}
	return false
}

// onlyLike is the reference that a row consists of.
func onlyLike(body []notation.Clause) (*notation.Like, bool) {
	var like *notation.Like
	for _, c := range body {
		switch c := c.(type) {
		case *notation.Like:
			if like != nil {
				return nil, false
			}
			like = c
		case *notation.Turn, *notation.Chain, *notation.Remark, *notation.Join:
		default:
			return nil, false
		}
	}
	return like, like != nil
}

// attempt works a row once. It reports false when the row does not come out, by use or by count.
func (h *hand) attempt(t text) bool {
	errors := h.errors
	h.row = t
	h.limit = min(patience, h.steps+rowful)
	h.named = false
	cut := h.so.cut.To > 0
	h.afterCut(t)
	if cut {
		h.resume(t.body)
	}
	first := h.so.begin
	if first != nil && beginsWithChain(t.body) {
		first = nil
	}
	h.so.begin = nil
	for body := t.body; ; {
		if need := 16 + (len(h.made)-h.first)*5/4; cap(h.made)-len(h.made) < need {
			// a new stretch of room, so that no row is copied together with all those before it
			h.made = make([]Made, 0, max(4*need, 256))
		}
		h.first = len(h.made)
		turned := h.turned(body)
		h.so.turn, h.so.still = false, false
		if h.so.live.Book == nil && !h.so.open {
			h.ringFor(body)
		}
		h.lay(turned)
		h.split = nil
		h.flip(turned)
		if first != nil {
			h.chain(first, body, true)
			first = nil
		}
		h.seq(body, true)
		if h.split == nil {
			break
		}
		body = h.split
		h.row.claims = nil
		h.short()
	}
	h.row = t
	if h.tired() && !h.gaveUp {
		h.gaveUp, h.s.open = true, true
		h.fail(TooLarge, t.span, 1)
	}
	h.close()
	return h.errors == errors
}

func beginsWithChain(body []notation.Clause) bool {
	_, ok := firstOf[*notation.Chain](body)
	return ok
}

// turned reports whether the work is turned before a row: it is between rows and is not between rounds, unless either says so.
func (h *hand) turned(body []notation.Clause) bool {
	if h.so.turn {
		return true
	}
	still := h.so.still
	for _, c := range body {
		switch c := c.(type) {
		case *notation.Turn:
			return !c.Not
		case *notation.Chain, *notation.Remark, *notation.Yarn, *notation.Counts, *notation.Through, *notation.Rejoin, *notation.Marker:
			continue
		}
		break
	}
	return !h.row.round && !still && !h.so.joined && h.so.rows > 0
}

// flip keeps which side faces.
func (h *hand) flip(turned bool) {
	t := &h.row
	side := h.so.side
	if turned {
		side = facing(side)
	}
	if t.side != notation.NoSide {
		if side != notation.NoSide && side != t.side && h.so.rows > 0 {
			h.report(Parity, source.Query, t.span, uint8(t.side), [2]string{})
		}
		side = t.side
	}
	h.so.side = side
}

// ringFor begins a piece that names no foundation: on a ring where its first row goes into one, or makes its own stitches.
func (h *hand) ringFor(body []notation.Clause) {
	if fromHook(body) {
		return
	}
	h.b.Rows = append(h.b.Rows, Row{Made: []Made{{Kind: Rings, N: 1, Stands: true}}, Places: 1, Line: h.row.line})
	h.so.live = h.edgeOf(len(h.b.Rows)-1, 1)
}
