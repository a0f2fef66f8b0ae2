package ledger

import (
	"slices"

	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

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

// stitched reports whether the row has worked anything but its beginning chain.
func (h *hand) stitched() bool {
	for i := h.first; i < len(h.made); i++ {
		if m := &h.made[i]; m.Kind == Stitches || m.Kind == Spaces && m.Whole == 0 {
			return true
		}
	}
	return false
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

// onlyChained reports whether nothing but a chain that is counted as a stitch has been made in the row.
func (h *hand) onlyChained() bool {
	made := h.made[h.first:]
	return len(made) == 1 && made[0].Kind == Turnings && made[0].Counted && h.s.base.made != nil
}
