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
		h.often(c.Body, nil, &c.Extent, c.At(), rest)
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

// lastTime works the last time of a repeat: what it keeps of the body, then its ending.
func (h *hand) lastTime(e ending, keep int) {
	if keep > 0 {
		h.seq(e.body[:min(keep, len(e.body))], false)
	}
	h.seq(e.words, false)
}

// often works clauses as often as an extent has it, within another repeat: to a space, to the last stitches, to a marker.
func (h *hand) often(body, _ []notation.Clause, e *notation.Extent, span source.Span, rest []notation.Clause) {
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

// candidates is how many fewer times than fit a repeat is tried, before what follows it is said not to come out.
const candidates = 4

// fit works a repeat that goes as often as it fits, and all that follows it: as often as it can, or a few times fewer where only
// that lets the rest of the row close it.
func (h *hand) fit(body []notation.Clause, e ending, rest []notation.Clause) {
	keep, to := -1, e.extent.Kind
	stop, stopping := want{}, false
	switch to {
	case notation.ToLast, notation.UntilLeft:
		if w := h.wants(&e.extent.Noun); w.what != space {
			keep = h.keep(e.extent)
		}
	case notation.ToNext:
		stop, stopping = h.wants(&e.extent.Noun), true
	}
	var marks [candidates + 1]state
	times, use, floor := 0, 0, 0
	start := h.s.left
	h.trial++
	leaps := !stopping && to != notation.ToMarker && to != notation.UntilMade && even(body)
	for {
		if leaps && times == 2 && use > 0 && h.alone() { // all but the last few times at once
			if n := h.leap(&marks[0], &marks[1], (h.s.left-max(keep, 0))/use-candidates-1); n > 0 {
				times += n
				floor = times
			}
			leaps = false
		}
		m := h.mark()
		marks[times%len(marks)] = m
		if stopping {
			if n, ok := h.until(want{}, stop); ok && n == 0 {
				h.s.that = true
				break
			}
		}
		if to == notation.ToMarker && h.untilMark(want{}, e.extent.Name) == 0 {
			break
		}
		if to == notation.UntilMade {
			if n, _ := h.number(&e.extent.Count, 0); h.tally(e.extent.Noun) >= n {
				break
			}
		}
		h.s.again, h.s.fresh, h.s.elastic = times > 0, true, true
		h.seq(body, false)
		if h.s.short > m.short || keep >= 0 && h.s.left < keep || h.tired() {
			h.rewind(m)
			break
		}
		h.s.repeats++
		use = m.left - h.s.left
		times++
		if !h.moved(&m) { // it takes nothing: once is all that can be meant
			marks[times%len(marks)] = h.mark()
			break
		}
	}
	h.trial--
	h.s.fit = fit{}
	if times == 0 { // not even once: work it as it is written, and see what is missing
		h.seq(body, false)
		h.s.repeats++
		h.seq(rest, true)
		return
	}
	over := start
	if keep >= 0 {
		over -= keep
	} else if n, _ := h.needs(rest); n > 0 {
		over -= n
	}
	told := fit{asked: true, use: use, over: over, times: times, span: e.span}
	if e.cut() == len(body) && (keep >= 0 || stopping || to == notation.ToMarker || to == notation.UntilMade) {
		h.s.fit = told
		h.seq(rest, true)
		return
	}
	if h.trial == 0 && h.tries(marks[:], times, times-floor, e, rest, told) {
		return
	}
	if h.trial > 0 {
		h.rewind(marks[times%len(marks)])
	} else { // what was tried has written over the last times: work them again
		back := min(candidates-1, times-floor)
		h.rewind(marks[(times-back)%len(marks)])
		for i := range back {
			h.s.again, h.s.fresh, h.s.elastic = times-back+i > 0, true, true
			h.seq(body, false)
			h.s.repeats++
		}
	}
	h.s.fit = told
	h.seq(e.words, false)
	h.seq(rest, true)
}

// tries works the rest of the row after fewer and fewer times, each with what endings it may have, until it closes.
func (h *hand) tries(marks []state, times, back int, e ending, rest []notation.Clause, told fit) bool {
	h.trial++
	defer func() { h.trial-- }()
	so := h.so
	for fewer := 0; fewer < candidates && fewer <= back; fewer++ {
		for _, keep := range e.cuts() {
			h.rewind(marks[(times-fewer)%len(marks)])
			h.so, h.split = so, nil
			h.s.fit = told
			before := h.mark()
			h.s.again = times > fewer
			h.lastTime(e, keep)
			if h.s.short == before.short {
				h.seq(rest, true)
			}
			if h.s.short == before.short && h.s.holes == before.holes && h.s.passing == before.passing && h.open() == 0 {
				h.s.fit = fit{}
				return true
			}
		}
	}
	h.so, h.split = so, nil
	return false
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
