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

// state is what the row in hand has found and done.
type state struct {
	runs  []run // what it met, in order
	run   int   // the next place: its run,
	off   int   // how many places of that are gone,
	sub   int   // and how many chains of the space that is open
	left  int   // stitches ahead
	total int   // stitches found

	found, used, skipped, passed, given [kinds]int32

	short   int // places asked for beyond the last
	holes   int // stitches passed to reach the last ones
	passing int // stitches passed to reach one of another name
	fit     fit
	open    bool // something in it could not be read
	claim   int  // of a row that could not be worked out; -1 for none
	hidden  bool // a space or shell was worked in that only the pattern knows of,
	elastic bool // and something was worked as often as it fits
	dead    bool // a chain was worked in that does not stand

	// Where the hook is.
	last    place
	begun   bool   // something has been worked
	soft    bool   // last was a space: stitches beside it may be passed
	ofUnit  bool   // last was one of a shell, of which the rest may be passed
	entered bool   // the hook is in the next place already, by slip stitches
	that    bool   // the next space is the one just named
	wrapped bool   // the gap between the last stitch and the first has been worked in
	other   bool   // it goes along the other side of the chain
	ends    bool   // it goes along row-ends
	missing string // a name that nothing ahead answers to

	// The beginning chain.
	base         place // what it stands on
	chained      bool  // it has taken the first place
	skippedFirst bool  // of which it was said that it is skipped
	tchain       int   // chains passed over at the hook
	based        bool  // they count as a stitch

	// Groups and repeats.
	in      place // everything goes into it
	inside  bool
	unit    int // the group in hand; 0 for none
	units   int
	names   []string // of the units, by their number less one
	again   bool     // this is not the first time of a repeat,
	fresh   bool     // and nothing has been worked in it yet
	repeats int
	loop    stitch.Loop // for all that follows
	loops   bool

	skips    []Span // skipped, and not worked since
	unworked []Span
	chains   []insert
	slips    int // slip stitches worked as fabric
	joined   bool
	entry    int // one more than the place where the next round begins; -1 for the last place

	// Only for taking back: where the Made of the row end and the last of them, and what else it had added to.
	made    int
	tail    Made
	rows    int
	reports int
	errors  int
	marks   int
}

// fit is how the last repeat that was to be worked as often as it fits came out.
type fit struct {
	asked bool
	use   int // stitches in one repeat
	over  int // stitches there were for it
	times int
	span  source.Span
	kept  int // where the row says to the last so many: how many, and one
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
	s.rows, s.reports, s.errors, s.marks = len(h.b.Rows), len(h.reports), h.errors, len(h.b.Marks)
	return s
}

func (h *hand) rewind(s state) {
	h.s = s
	h.made = h.made[:s.made]
	if s.made > h.first {
		h.made[s.made-1] = s.tail
	}
	h.b.Rows, h.reports, h.b.Marks = h.b.Rows[:s.rows], h.reports[:s.reports], h.b.Marks[:s.marks]
	h.errors = s.errors
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
func (h *hand) counted() int { return counted(h.made[h.first:], h.chainsAre()) }

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
