package ledger

import (
	"foundrow/internal/notation"
	"foundrow/internal/source"
)

// An ending is how the last time of a repeat differs.
type ending struct {
	body    []notation.Clause
	extent  *notation.Extent
	until   int  // how many clauses the last time has, where it stops at a mark
	last    bool // it does stop there
	words   []notation.Clause
	instead []notation.Clause
	span    source.Span
}

// asFits reports whether a clause is a repeat that goes as often as it fits.
func (h *hand) asFits(c notation.Clause) ([]notation.Clause, ending, bool) {
	var e ending
	switch c := c.(type) {
	case *notation.Repeat:
		e = ending{body: c.Body, extent: &c.Extent, until: c.Until, last: c.Last, words: c.Ending, instead: c.Instead, span: c.At()}
	case *notation.Group:
		if c.In != nil {
			return nil, e, false
		}
		e = ending{body: c.Body, extent: &c.Extent, words: c.Ending, instead: c.Instead, span: c.At()}
		if c.Extent.Kind == notation.NotSaid {
			return nil, e, false
		}
	default:
		return nil, e, false
	}
	switch e.extent.Kind {
	case notation.Times, notation.InAll, notation.MoreTimes, notation.RepeatN:
		return nil, e, false
	}
	return e.body, e, true
}

// repeat works a repeat that says how often, or one within another.
func (h *hand) repeat(c *notation.Repeat, rest []notation.Clause) {
	switch c.Extent.Kind {
	case notation.Times, notation.InAll, notation.MoreTimes, notation.RepeatN:
		n := h.times(&c.Extent)
		if !c.Last && len(c.Ending) == 0 {
			h.over(c.Body, n)
			return
		}
		if n <= 0 {
			return
		}
		h.over(c.Body, n-1)
		h.s.again = n > 1
		e := ending{body: c.Body, until: c.Until, last: c.Last, words: c.Ending, instead: c.Instead}
		h.lastTime(e, e.cut())
		h.s.repeats++
	default:
		h.often(c.Body, &c.Extent, rest)
	}
}

// cut is how many clauses of the body the last time keeps, as far as the words settle it; -1 when what fits must.
func (e *ending) cut() int {
	switch {
	case e.last:
		return e.until
	case len(e.words) == 0:
		return len(e.body)
	case len(e.instead) > 0:
		return max(len(e.body)-len(e.instead), 0)
	}
	if _, chain := e.words[0].(*notation.Chain); chain {
		for i := len(e.body) - 1; i >= 0; i-- {
			if _, ok := e.body[i].(*notation.Chain); ok {
				return i
			}
		}
	}
	return -1
}

// cuts are the parts of the body that may stand before the ending, as numbers of clauses.
func (e *ending) cuts() []int {
	switch cut := e.cut(); {
	case cut == len(e.body):
		return []int{0}
	case cut >= 0:
		return []int{cut}
	}
	cuts := []int{0}
	for n := len(e.body) - 1; n > 0; n-- {
		cuts = append(cuts, n)
	}
	return cuts
}

// lastTime works the last time of a repeat: what it keeps of the body, then its ending.
func (h *hand) lastTime(e ending, keep int) {
	if keep > 0 {
		h.seq(e.body[:min(keep, len(e.body))], false)
	}
	h.seq(e.words, false)
}

// often works clauses as often as an extent has it, within another repeat: to a space, to the last stitches, to a marker.
func (h *hand) often(body []notation.Clause, e *notation.Extent, rest []notation.Clause) {
	s := &h.s
	keep, stop := 0, want{}
	stopping := false
	switch e.Kind {
	case notation.ToLast, notation.UntilLeft:
		keep = h.keep(e)
	case notation.ToNext:
		stop, stopping = h.wants(&e.Noun), true
	case notation.AcrossRow:
		n, w := h.needs(rest)
		if keep = n; w.what == space {
			stop, stopping = w, true
		}
	}
	for {
		if stopping {
			if n, ok := h.until(want{}, stop); ok && n == 0 {
				s.that = true
				return
			}
		}
		if e.Kind == notation.ToMarker && h.untilMark(want{}, e.Name) == 0 {
			return
		}
		if e.Kind == notation.UntilMade {
			if n, _ := h.number(&e.Count, 0); h.tally(e.Noun) >= n {
				return
			}
		}
		m := h.mark()
		h.s.again = s.repeats > 0
		h.seq(body, false)
		if h.s.short > m.short || h.s.left < keep || !h.moved(&m) || h.tired() {
			h.rewind(m)
			return
		}
		s.repeats++
	}
}

// moved reports whether anything of the row below was taken since.
func (h *hand) moved(m *state) bool {
	s := &h.s
	return s.run != m.run || s.off != m.off || s.sub != m.sub
}
