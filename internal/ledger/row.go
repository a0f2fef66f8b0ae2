package ledger

import (
	"slices"

	"foundrow/internal/notation"
	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

// words are what a line of rows says, the same in every size.
type words struct {
	line   int
	body   []notation.Clause
	claims []notation.Claim
	counts *notation.Counts // what it says of its chain, where it does so apart from it
	label  *notation.Label
	span   source.Span
	round  bool
	side   notation.Side
	opens  *opening // how it opens, once that was looked at
	split  bool     // some of it is for some sizes only
	slips  bool     // slip stitches are all it works: they are its fabric
	plain  bool     // nothing in it looks further than the row below or does anything but make stitches
}

// A text is a row to be worked: what it says, and how it is called.
type text struct {
	*words
	number int
	name   RowName
	span   source.Span
	side   notation.Side
	claims []notation.Claim // those that hold for this working
	odd    bool             // it is worked as another row says, whose claims do not hold
}

func (w *words) text() text { return text{words: w, span: w.span, side: w.side} }

// A before is everything a row may change, for taking it back.
type before struct {
	so      progress
	made    []Made
	rows    int
	reports int
	marks   int
	said    int
	errors  int
	asked   bool
	usedF   bool
	foreign []reach
	numbers int
}

func (h *hand) before() before {
	return before{h.so, h.made, len(h.b.Rows), len(h.reports), len(h.b.Marks), len(h.said), h.errors, h.asked, h.usedFoundation, slices.Clone(h.foreign), len(h.b.numbered)}
}

func (h *hand) back(b before) {
	h.so, h.errors, h.asked, h.usedFoundation, h.foreign = b.so, b.errors, b.asked, b.usedF, b.foreign
	h.made, h.b.Rows, h.reports = b.made, h.b.Rows[:b.rows], h.reports[:b.reports]
	h.b.Marks, h.said, h.b.numbered = h.b.Marks[:b.marks], h.said[:b.said], h.b.numbered[:b.numbers]
}

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
		if need := 16 + 2*(len(h.made)-h.first); cap(h.made)-len(h.made) < need {
			// a new stretch of room, so that no row is copied together with all those before it
			h.made = make([]Made, 0, max(2*need, 160))
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

// resume goes on where stitches were left, for a row that joins the yarn again in the next free stitch, or in a stitch of a row that
// left some.
func (h *hand) resume(body []notation.Clause) {
	for _, c := range body {
		var t *notation.Target
		switch c := c.(type) {
		case *notation.Yarn, *notation.Remark, *notation.Turn:
			continue
		case *notation.Skip:
			t = &c.In
		case *notation.Rejoin:
			t = &c.In
		}
		if t == nil {
			return
		}
		if n, ok := h.number(&t.Row, 0); ok && t.Row.Said {
			if e, live := h.b.Edge("row " + digits(n)); live {
				h.takeUp(e.Spans)
				return
			}
		}
		switch t.Where {
		case notation.Next, notation.Skipped, notation.Remaining:
			for i := len(h.b.Rows) - 1; i >= h.b.start; i-- {
				if spans := h.b.Rows[i].Unworked; (Edge{Book: h.b, Spans: spans}).Stitches() > 0 {
					h.takeUp(spans)
					h.b.Rows[i].Unworked = nil
					return
				}
			}
		}
		return
	}
}

// takeUp makes stitches live that a row had left.
func (h *hand) takeUp(spans []Span) {
	h.b.Known = h.sheet.stitches
	h.so.live = Edge{Book: h.b, Spans: spans}
	h.so.turn, h.so.still, h.so.joined, h.so.begin, h.so.entry, h.so.shown = false, true, false, nil, 0, -1
}

// afterCut reports a row that goes on where the yarn was fastened off, without joining it again or another.
func (h *hand) afterCut(t text) {
	if h.so.cut.To == 0 {
		return
	}
	h.so.cut.To = 0
	if t.words != nil && t.label.Yarn != "" {
		return
	}
	for _, c := range t.body {
		switch c := c.(type) {
		case *notation.Rejoin, *notation.Yarn:
			return
		case *notation.Make:
			if c.Stitch.Manner == stitch.Standing {
				return
			}
		}
	}
	h.report(AfterOff, source.Error, t.span, 0, [2]string{})
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

// placed is how many places the row in hand has made.
func (h *hand) placed() int {
	n := 0
	for i := h.first; i < len(h.made); i++ {
		n += h.made[i].N
	}
	return n
}

// counted is how many stitches the row in hand has made that count.
func (h *hand) counted() int { return counted(h.made[h.first:], h.chainsCount()) }

// counted adds up what counts as a stitch.
func counted(made []Made, chains bool) int {
	n := 0
	for i := range made {
		switch m := &made[i]; m.Kind {
		case Stitches, Turnings:
			if m.Counted {
				n += m.N
			}
		case Spaces:
			if chains {
				n += m.N * m.Chains
			}
		case Chains, Ends:
			n += m.N
		}
	}
	return n
}

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
	for i := range s.found {
		s.given[i] = max(s.given[i], 0)
	}
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
		h.so.live = h.around2(at, places)
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

// around2 is the edge of a row in which chains were made and worked back along: their free loops stand in the edge.
func (h *hand) around2(row, places int) Edge {
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

// rowHeight is the height of a row at its end, in halves of an sc row.
func (h *hand) rowHeight(made []Made) int {
	for i := len(made) - 1; i >= 0; i-- {
		if m := &made[i]; m.Kind == Stitches || m.Kind == Turnings && m.Stands {
			return height(*h.of(m))
		}
	}
	return 2
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
