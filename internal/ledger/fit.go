package ledger

import (
	"foundrow/internal/notation"
)

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
	if keep >= 0 && even(body) {
		told.kept = keep + 1
	}
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
