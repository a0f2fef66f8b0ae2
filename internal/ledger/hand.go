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

// A place is where the hook went.
type place struct {
	made *Made
	span Span
}

// state is what the row in hand has done.
type state struct {
	wrapped bool // the gap between the last stitch and the first has been worked in
	runs    []run
	run     int // the next place: the run,
	off     int // how many of its places are gone,
	sub     int // and how many chains of the space that is open
	left    int // stitches ahead

	found, used, skipped, passed, given [kinds]int32

	made    int // for taking back: where the Made end,
	tail    Made
	rows    int
	reports int
	marks   int

	total        int // stitches found
	last         place
	base         place
	begun        bool // something has been worked
	chained      bool // the beginning chain has taken the first place
	entered      bool // the hook is in the next place already
	soft         bool // the last place was a space: stitches beside it may be passed
	hidden       bool // a place was taken that only the pattern knows of
	elastic      bool // something was worked as often as it fits
	dead         bool // a chain was worked into that does not stand
	in           place
	inside       bool // everything goes into in
	unit         int
	units        int
	names        []string
	loop         stitch.Loop
	loops        bool
	short        int    // places asked for beyond the last
	holes        int    // stitches passed to reach the last ones
	passing      int    // stitches passed to reach one of another name
	skips        []Span // skipped, and not worked since
	gone         []Span // slip-stitched along
	repeats      int
	fit          fit
	joined       bool
	entry        int  // one more than the place where the next round begins; -1 for the last place
	open         bool // something in it could not be read
	chains       []insert
	slips        int    // slip stitches worked as fabric
	again        bool   // this is not the first time of a repeat,
	fresh        bool   // and nothing has been worked in it yet
	other        bool   // the hook goes along the other side of the chain
	ends         bool   // along row-ends
	ofUnit       bool   // the last place was one of a shell, of which the rest is passed
	missing      string // a name that nothing ahead answers to
	that         bool   // the next space is the one just named
	tchain       int    // chains passed over at the hook
	based        bool   // they count as a stitch
	claim        int    // of a row that could not be worked out; -1 for none
	unworked     []Span
	skippedFirst bool // the place that the beginning chain stands on was said to be skipped
}

// fit is how the last repeat that was to be worked as often as it fits came out.
type fit struct {
	asked bool
	use   int // stitches in one repeat
	over  int // stitches there were for it
	times int
	span  source.Span
}

// An insert is a chain made in the middle of a row and worked back along: its free loops stand before place at.
type insert struct {
	row int
	at  int
	n   int
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

// mark remembers the row as it is now; rewind takes it back to there.
func (h *hand) mark() state {
	s := h.s
	s.made = len(h.made)
	if s.made > h.first {
		s.tail = h.made[s.made-1]
	}
	s.rows, s.reports, s.marks = len(h.b.Rows), len(h.reports), len(h.b.Marks)
	return s
}

func (h *hand) rewind(s state) {
	h.s = s
	h.made = h.made[:s.made]
	if s.made > h.first {
		h.made[s.made-1] = s.tail
	}
	h.b.Rows, h.reports, h.b.Marks = h.b.Rows[:s.rows], h.reports[:s.reports], h.b.Marks[:s.marks]
}

// weight is what one place of a run counts for when stitches are counted along the live edge.
func (h *hand) weight(r *run) int {
	if r.face == FreeLoop {
		if h.s.other {
			return 1
		}
		return 0
	}
	if h.chainsCount() && r.made.Kind == Spaces {
		return r.made.Chains
	}
	return weight(r)
}

// lay lays out the live edge as the row meets it.
func (h *hand) lay(turned bool) {
	h.buf = h.buf[:0]
	live := h.so.live
	for i, n := 0, len(live.Spans); i < n; i++ {
		if s := live.Spans[i]; !turned {
			h.buf = live.Book.layOut(h.buf, s)
		} else {
			s = live.Spans[n-1-i]
			s.Back = !s.Back
			h.buf = live.Book.layOut(h.buf, s)
		}
	}
	h.s = state{runs: h.buf, names: h.s.names[:0]}
	for i := range h.buf {
		r := &h.buf[i]
		h.s.found[r.made.Kind] += int32(r.n)
		h.s.left += h.weight(r) * r.n
	}
	h.s.total = h.s.left
	if h.so.entry > 0 && h.so.joined {
		h.enter(h.so.entry - 1)
	}
}

// enter begins a round at a place: what lies before it is met at the end.
func (h *hand) enter(number int) {
	for i := range h.s.runs {
		r := &h.s.runs[i]
		off := number - r.from
		if r.back {
			off = -off
		}
		if off >= 0 && off < r.n {
			h.s.run, h.s.off = i, off
			h.rotate()
			h.s.entered = true
			return
		}
	}
}

// rotate moves what lies before the next place to the end of the round.
func (h *hand) rotate() {
	s := &h.s
	runs := make([]run, 0, len(s.runs)+1)
	cut := s.runs[s.run]
	before := cut
	before.n = s.off
	if cut.back {
		cut.from -= s.off
	} else {
		cut.from += s.off
	}
	cut.n -= s.off
	runs = append(append(runs, cut), s.runs[s.run+1:]...)
	runs = append(runs, s.runs[:s.run]...)
	if before.n > 0 {
		runs = append(runs, before)
	}
	s.runs, s.run, s.off, s.missing = runs, 0, 0, ""
	h.steps += len(runs) / 4
	s.left = 0
	for i := range runs {
		s.left += h.weight(&runs[i]) * runs[i].n
	}
}

// insertRun puts places in front of the next one.
func (h *hand) insertRun(r run) {
	s := &h.s
	runs := make([]run, 0, len(s.runs)+2)
	runs = append(runs, s.runs[:s.run]...)
	at := s.run
	if s.run < len(s.runs) {
		cut := s.runs[s.run]
		if s.off > 0 {
			before := cut
			before.n = s.off
			runs = append(runs, before)
			at++
			if cut.back {
				cut.from -= s.off
			} else {
				cut.from += s.off
			}
			cut.n -= s.off
		}
		runs = append(runs, r, cut)
		runs = append(runs, s.runs[s.run+1:]...)
	} else {
		runs = append(runs, r)
	}
	s.runs, s.run, s.off, s.sub, s.missing = runs, at, 0, 0, ""
	h.steps += len(runs) / 4
	s.found[r.made.Kind] += int32(r.n)
	s.left += h.weight(&r) * r.n
	s.total += h.weight(&r) * r.n
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
