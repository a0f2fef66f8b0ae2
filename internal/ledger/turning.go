package ledger

import (
	"foundrow/internal/notation"
	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

// A verdict is what a beginning chain is taken for.
type verdict struct {
	open   bool // neither the trade nor the pattern settles it
	stands bool // it takes the first place and can be worked into
	counts bool // it is in the printed number
	as     stitch.Stitch
	plus   int // chains beyond the stitch, which make a space
}

// verdict decides what a chain of n at the beginning of a row counts as: what the row says, what the rules of the piece say, what
// rows before have said, what the row itself shows, the front matter, and last the height of the stitch.
func (h *hand) verdict(c *notation.Chain, n int, o opening) verdict {
	if o.tall.Name == "" && h.so.main != 0 {
		o.tall = h.sheet.stitches[h.so.main].Base()
	}
	if n == 1 && len(h.rules) == 0 && h.row.counts == nil && (c == nil || c.Says == notation.ChainUnsaid) {
		return verdict{as: heightOf(1)} // by far the most rows
	}
	stated, as, plus := h.stated(c, n)
	usual := h.usual(n, o)
	if as.Name == "" {
		as = usual.as
	}
	if as.Name == "" {
		as = heightOf(n)
	}
	v := verdict{as: as, plus: usual.plus}
	if plus >= 0 && stated == Counts {
		v.plus = plus
	}
	how := stated
	if how == AsUsual {
		how = h.shown(n, o, usual)
		if usual.open && how == CountsNot {
			h.unsettled(n, usual.as)
		}
	}
	if n > 1 {
		h.moot.chain = true
		h.moot.stated = h.moot.stated || stated != AsUsual
		if h.habits.Chain != AsUsual && !(stated != AsUsual && v.plus > 0) {
			how = h.habits.Chain
		}
	}
	switch how {
	case Counts:
		v.stands, v.counts = true, true
	case StandsUncounted:
		v.stands = true
	default:
		v.plus = 0
	}
	return v
}

// stated is what has been said of a chain of n; plus is -1 where nothing was said of more chains than the stitch has.
func (h *hand) stated(c *notation.Chain, n int) (ChainHabit, stitch.Stitch, int) {
	if c != nil {
		switch c.Says {
		case notation.SaysCounts:
			plus, _ := h.number(&c.Plus, 0)
			h.said = append(h.said, saying{n, Counts, c.As})
			return Counts, c.As, plus
		case notation.SaysNot:
			h.said = append(h.said, saying{n, CountsNot, c.As})
			return CountsNot, c.As, -1
		}
	}
	if r := h.row.counts; r != nil && !r.Skipped {
		if r.Says == notation.SaysNot {
			return CountsNot, r.As, -1
		}
		plus, _ := h.number(&r.Plus, 0)
		return Counts, r.As, plus
	}
	for i := len(h.rules) - 1; i >= 0; i-- {
		r := h.rules[i]
		if chains, ok := h.number(&r.Chain, 0); !ok || chains > 0 && chains != n || chains == 0 && n == 1 && r.Kind != notation.ChainCounts {
			continue
		}
		as := r.Stitch
		switch r.Kind {
		case notation.ChainCounts:
			return Counts, as, h.beyondHeight(n, as)
		case notation.ChainDoesNotCount:
			return CountsNot, as, -1
		case notation.ChainStands:
			return StandsUncounted, as, -1
		}
	}
	for i := len(h.said) - 1; i >= 0; i-- {
		if h.said[i].chains == n {
			return h.said[i].as, h.said[i].stitch, -1
		}
	}
	return AsUsual, stitch.Stitch{}, -1
}

// beyondHeight is how many chains a counted chain has beyond the stitch that it is said to count as.
func (h *hand) beyondHeight(n int, as stitch.Stitch) int {
	e := as.Find()
	if e == nil || n <= e.Chains || n <= 3 {
		return -1
	}
	return n - e.Chains
}

// shown is what the row itself shows of its chain, and else the usual.
func (h *hand) shown(n int, o opening, usual verdict) ChainHabit {
	switch {
	case n == 1:
		return CountsNot
	case o.joinsTop, o.skips && n >= 2:
		return Counts
	}
	for i := range h.p.Turning {
		if t := &h.p.Turning[i]; t.Stitch == o.stitch.Tall().Name || o.stitch.Name == "" && t.Stitch == o.tall.Name {
			if t.Counts {
				return Counts
			}
			return CountsNot
		}
	}
	if usual.plus > 0 {
		return Counts
	}
	if !usual.counts {
		return CountsNot
	}
	if o.together || o.same {
		return CountsNot
	}
	return Counts
}

// usual is what a chain of n counts as by the height of the stitch the row is worked in.
func (h *hand) usual(n int, o opening) verdict {
	s := o.stitch.Tall()
	if e := s.Find(); e == nil || e.Class != stitch.Plain {
		s = o.tall
	}
	e := s.Find()
	if e == nil {
		return verdict{}
	}
	switch {
	case e.Chains < 2: // over sc a long chain is the first loop of lace
		if n >= 4 {
			return verdict{counts: true, as: stitch.Stitch{Name: "dc"}, plus: n - 3}
		}
		return verdict{counts: n == 3, as: stitch.Stitch{Name: "dc"}}
	case e.Counts == stitch.Unsettled:
		if n >= 4 {
			return verdict{counts: true, as: stitch.Stitch{Name: "dc"}, plus: n - 3}
		}
		return verdict{as: s, open: n == e.Turning}
	case n == e.Turning:
		return verdict{counts: e.Counts == stitch.Counted, as: s}
	case n > e.Turning && e.Counts == stitch.Counted:
		return verdict{counts: true, as: s, plus: n - e.Turning}
	}
	return verdict{as: s}
}

// unsettled asks once whether a chain counts that neither the pattern nor the trade settles.
func (h *hand) unsettled(n int, s stitch.Stitch) {
	if h.asked || h.habits.Chain != AsUsual || h.trial > 0 {
		return
	}
	for i := range h.p.Turning {
		if h.p.Turning[i].Stitch == s.Name {
			return
		}
	}
	h.asked = true
	h.report(TurningChain, source.Query, h.row.span, 0, [2]string{s.Name}, n)
}
