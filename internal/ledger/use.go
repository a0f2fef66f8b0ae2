package ledger

import (
	"foundrow/internal/notation"
	"foundrow/internal/source"
)

// trouble is what is wrong with the use a row makes of what it found.
type trouble struct {
	kind  string // the rule; empty when everything is accounted for
	way   uint8
	used  int
	found int
	over  int
	span  source.Span
}

// unused looks at what a row has left over, run out of, or cannot fit.
func (h *hand) unused() trouble {
	s := &h.s
	if s.open || h.so.open {
		return trouble{}
	}
	left := h.open()
	t := trouble{found: s.total, span: h.row.span}
	t.used = s.total - left - s.holes + s.short
	if left == 0 && s.holes == 0 && s.short == 0 {
		return trouble{}
	}
	t.over = left + s.holes
	switch {
	case s.fit.asked && s.fit.times > 0 && s.fit.uneven():
		t.kind, t.span = DoesNotFit, s.fit.span
		t.used, t.found, t.over = s.fit.use, s.fit.over, mod(s.fit.over, s.fit.use)
	case s.short > 0:
		t.kind = RunOut
	default:
		t.kind = LeftOver
		if s.holes == 0 && left > 0 {
			t.way = 1 // at the end
		}
		if s.soft && s.last.made != nil && s.last.made.Kind == Spaces {
			t.way = 2 // spaces
		}
	}
	if h.so.chained > 0 && !s.other {
		t.kind = Foundation
		t.way = 0
		t.found = h.so.chained
		t.used = h.so.chained + s.short - left - s.holes
		if f := s.fit; f.asked && f.times > 0 && f.uneven() {
			over := mod(f.over, f.use)
			t.way = 1
			t.over = f.use
			down, up := h.so.chained-over, h.so.chained-over+f.use
			t.used = up
			if over <= f.use/2 && down > 0 && over < f.use-over {
				t.used = down
			}
		}
	}
	return t
}

// uneven reports whether the repeat does not come out over what there was for it.
func (f fit) uneven() bool { return f.use > 0 && mod(f.over, f.use) != 0 }

func mod(a, b int) int {
	if b <= 0 {
		return 0
	}
	return ((a % b) + b) % b
}

// check compares a row with its claims and reports what does not come out. One row makes one finding.
func (h *hand) check(t trouble, made int) {
	h.so.shown = -1
	if h.s.hidden && h.s.elastic && !h.s.open {
		// a start that only counts stitches says nothing of spaces, so that what goes as often as it fits cannot be told
		h.s.open = true
		h.report(Unchecked, source.Query, h.row.span, 1, [2]string{})
	}
	if h.s.open {
		h.openRow()
		return
	}
	claim, got, want, differs := h.compare(made)
	if h.s.dead && t.kind == "" && !differs {
		h.fail(TurningChain, h.row.span, 1)
		return
	}
	if h.s.passing > 0 && t.kind == "" && claim == nil {
		h.report(Passed, source.Query, h.row.span, 0, [2]string{}, h.s.passing)
	}
	switch {
	case t.kind == "":
		if differs {
			h.fail(CountDiffers, claim.Span, 0, got, want, h.so.count)
			h.differ(claim, want)
		} else if f := h.s.fit; f.kept > 0 && f.uneven() {
			h.report(DoesNotFit, source.Query, f.span, 3, [2]string{}, f.kept-1, f.kept-1+mod(f.over, f.use))
		}
		return
	case t.kind == LeftOver && t.way != 0 && !differs && claim != nil:
		// the row stops short and its count agrees: usual, and mostly left unsaid
		h.report(LeftOver, source.Query, t.span, 3, [2]string{}, t.used, t.found, t.over, made)
		return
	case !differs && claim != nil && t.kind == LeftOver:
		h.fail(WrongStitch, t.span, 0, t.used, t.found, made)
		return
	}
	printed := -1
	if differs {
		printed = want
		h.differ(claim, want)
	}
	h.fail(t.kind, t.span, t.way, t.used, t.found, t.over, printed)
}

// differ remembers the printed number, from which the next row may have to go on.
func (h *hand) differ(c *notation.Claim, want int) {
	if c != nil && c.Per == "" && !c.Groups.Said && c.Change == 0 && c.Noun.Kind != notation.ASpace && c.Noun.Kind != notation.AUnit {
		h.so.shown = want
	}
}

// openRow is a row that could not be worked out: the next one starts from its claim.
func (h *hand) openRow() {
	for i := range h.row.claims {
		c := &h.row.claims[i]
		if n, ok := h.claimed(c); ok && c.Per == "" && c.Change == 0 && !c.Groups.Said {
			h.s.claim = n
			return
		}
	}
	h.s.claim = -1
}

// open is how many places ahead nothing accounts for.
func (h *hand) open() int {
	s := &h.s
	if s.soft || s.hidden {
		if s.last.made == nil || s.last.made.Kind != Spaces {
			return 0
		}
		return h.spacesLeft()
	}
	if s.other && s.left == 1 {
		return 0 // the first chain, which has been worked already
	}
	if s.left > 0 && s.ofUnit && h.restOfUnit() == s.left {
		return 0
	}
	return s.left
}

// restOfUnit is how many stitches ahead belong to the shell that was worked into last.
func (h *hand) restOfUnit() int {
	s := &h.s
	n := 0
	for i, off := s.run, s.off; i < len(s.runs); i, off = i+1, 0 {
		r := &s.runs[i]
		if h.weight(r) > 0 && off < r.n {
			if !sameUnit(s.last.made, r.made) {
				return n
			}
			n += h.weight(r) * (r.n - off)
		}
	}
	return n
}

// spacesLeft counts the spaces ahead that are like the one worked into last.
func (h *hand) spacesLeft() int {
	s := &h.s
	n := 0
	for i, off := s.run, s.off; i < len(s.runs); i, off = i+1, 0 {
		if r := &s.runs[i]; r.made.Kind == Spaces && r.made.Chains == s.last.made.Chains && off < r.n {
			n += r.n - off
		}
	}
	return n
}
