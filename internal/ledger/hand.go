package ledger

import (
	"foundrow/internal/notation"
	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

const (
	most     = 10_000_000 // no count may be larger
	patience = 1 << 20    // clauses worked before a piece is given up as endless
	rowful   = 1 << 16    // clauses worked in one row
	deepest  = 8          // how deep stitches are defined by stitches
)

// A hand works the rows of one piece. What it has done so far is in the book; what the next row needs to know of it is in so, and
// what the row in hand has done is in s. Both are plain values, so that a row or a part of one can be tried and taken back.
type hand struct {
	p              *Piece
	crafts         []crafted
	spans          []Span
	sheet          *sheet
	b              *Book
	habits         Habits
	reports        []Report
	moot           moot
	so             progress
	s              state
	row            text
	made           []Made
	first          int   // where those of the row begin
	buf            []run // the live edge as the row meets it
	steps          int
	limit          int // of steps
	gaveUp         bool
	deep           int               // in stitches that are defined by others
	split          []notation.Clause // what follows a turn in the middle of a row
	rules          []*notation.Rule
	said           []saying
	foreign        []reach
	sloppy         bool // names of stitches are taken loosely
	named          bool // stitches were passed to reach one of another name
	trial          int  // how many repeats are being tried out
	refs           int  // how deep row references are followed
	errors         int
	chainsStated   bool // the pattern says that each chain counts
	asked          bool // whether a chain counts has been asked
	worked         int  // rows
	told           []told
	later          []due
	others         sizes // that the lines before have named
	spare          []run
	around         []run
	stretches      []stretch
	usedFoundation bool
}

// progress is what the rows so far have left.
type progress struct {
	live      Edge
	open      bool            // what is live is not known
	loose     bool            // only the number of what is live is known
	chained   int             // chains of a foundation that nothing has been worked into
	shown     int             // what the last row printed, where it made something else; -1 otherwise
	begin     *notation.Chain // the chain made at the end of the last row
	turn      bool            // the last row ended by turning
	still     bool            // it said not to turn
	joined    bool            // it was joined: the edge is a circle
	entry     int             // one more than the place where the next round begins; 0 for the first
	number    int             // of the last row
	words     string          // before its number
	side      notation.Side
	main      int32       // worked last
	cut       source.Span // where the yarn was fastened off; To of 0 when it was not
	count     int         // of the last row
	changed   bool
	growth    int  // of the last row that changed the number
	rows      int  // since the start
	fresh     bool // the next row may have any number
	rounds    bool // the last row was called a round
	chainSpan source.Span
	alternate *words // works every second row until one is told
	pair      int
}

// saying is what a row has said its chain counts as.
type saying struct {
	chains int
	as     ChainHabit
	stitch stitch.Stitch
}

func newHand(p *Piece, s *sheet, habits Habits) *hand {
	h := &s.hand
	*h = hand{p: p, sheet: s, habits: habits, buf: h.buf[:0], spare: h.spare[:0], around: h.around[:0], told: h.told[:0], spans: h.spans}
	h.b = &Book{Habits: habits, mirrored: p.Reversed}
	h.made = s.room[len(s.room):]
	h.b.Rows = make([]Row, 0, s.rows+4)
	h.b.numbered = make([]numbered, 0, s.rows+4)
	h.b.Printed = make([]Printed, 0, len(p.Block.Lines))
	h.so.shown = -1
	h.so.fresh = true
	h.limit = patience
	return h
}

// step counts one more thing done, and tired says that a row, or the piece, has gone on for longer than any real one.
func (h *hand) step() { h.steps++ }

func (h *hand) tired() bool { return h.steps > h.limit }

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
