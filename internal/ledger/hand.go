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

// A hand works the rows of one piece in one size. What it has done is in the book; what the next row needs to know of it is in so, and
// what the row in hand has done is in s. Both are plain values, so that a row or a part of one can be tried and taken back.
type hand struct {
	p       *Piece
	sheet   *sheet
	b       *Book
	habits  Habits
	moot    moot
	reports []Report
	errors  int // of the reports, those of use and count

	so   progress
	told []told // the rows so far, by their numbers
	due  []due  // rows that were told before their turn

	row   text // the one in hand
	s     state
	made  []Made // what it makes stands at the end, from first
	first int
	split []notation.Clause // what follows a turn in the middle of it
	named bool              // stitches were passed to reach one of another name

	// What the pattern has said so far.
	rules       []*notation.Rule
	said        []saying
	chainsCount bool  // each chain counts as a stitch
	asked       bool  // whether a turning chain counts has been asked
	others      sizes // that the lines before have named, for "All other sizes"

	foreign        []reach // edges of other pieces that stitches are taken from
	usedFoundation bool    // the other side of the foundation has been worked

	// How it goes about it.
	sloppy bool // names of stitches are taken loosely
	trial  int  // how many repeats are being tried out
	refs   int  // how deep references to rows are followed
	deep   int  // how deep it is in stitches that are defined by others
	steps  int  // things done, of which limit may be done before the row is given up
	limit  int
	gaveUp bool

	// Room that is used again and again.
	buf       []run // the live edge as the row met it
	spare     []run
	around    []run
	spans     []Span
	crafts    []crafted
	stretches []stretch
}

// progress is what the rows so far have left.
type progress struct {
	live    Edge
	open    bool // it is not known what is live,
	loose   bool // or only how many stitches are
	chained int  // chains of a foundation that nothing has been worked into yet
	shown   int  // what the last row printed, where it made something else; -1 otherwise

	begin   *notation.Chain // the chain made at the end of the last row belongs to the next
	turn    bool            // the last row ended by turning,
	still   bool            // or by saying not to
	joined  bool            // it was joined: the edge is a circle,
	entry   int             // one more than the place where the next round begins; 0 for the first
	cut     source.Span     // where the yarn was fastened off; To of 0 when it was not
	resumed []int           // rows whose stitches left unworked have been taken up since
	side    notation.Side   // the one that faced
	main    int32           // the stitch worked last

	number    int    // of the last row,
	words     string // what stood before it,
	rounds    bool   // and whether it was called a round
	fresh     bool   // the next row may have any number
	rows      int    // since the start
	worked    int    // rows in all
	alternate *words // works every second row, those that are even with pair, until one is told
	pair      int

	count   int  // of the last row
	changed bool // it was another before
	growth  int  // of the last row that changed it
}

// saying is what a row has said its chain counts as.
type saying struct {
	chains int
	as     ChainHabit
	stitch stitch.Stitch
}

func newHand(p *Piece, s *sheet, habits Habits) *hand {
	h := &s.hand
	*h = hand{p: p, sheet: s, habits: habits, limit: patience, buf: h.buf[:0], spare: h.spare[:0], around: h.around[:0], told: h.told[:0], spans: h.spans}
	h.b = &Book{Habits: habits, mirrored: p.Reversed}
	h.b.Rows = make([]Row, 0, s.rows+4)
	h.b.numbered = make([]numbered, 0, s.rows+4)
	h.b.Printed = make([]Printed, 0, len(p.Block.Lines))
	h.made = s.room[len(s.room):]
	h.so.shown, h.so.fresh = -1, true
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
	for _, row := range h.so.resumed {
		h.b.Rows[row].Unworked = nil
	}
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
		h.chainsCount = h.chainsCount || l.Kind == notation.ChainsAreStitches
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
