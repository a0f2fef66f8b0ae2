package ledger

import (
	"slices"

	"foundrow/internal/notation"
	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

// resume goes on where stitches were left, for a row that joins the yarn again in the next free stitch, or in a stitch of a row that
// left some.
func (h *hand) resume(body []notation.Clause) {
	for _, c := range body {
		var t *notation.Target
		switch c := c.(type) {
		case *notation.Yarn, *notation.Remark, *notation.Turn:
			continue
		case *notation.Skip:
			t = &c.In
		case *notation.Rejoin:
			t = &c.In
		}
		if t == nil {
			return
		}
		if n, ok := h.number(&t.Row, 0); ok && t.Row.Said {
			if e, live := h.b.Edge("row " + digits(n)); live {
				h.takeUp(e.Spans)
				return
			}
		}
		switch t.Where {
		case notation.Next, notation.Skipped, notation.Remaining:
			for i := len(h.b.Rows) - 1; i >= h.b.start; i-- {
				spans := h.b.Rows[i].Unworked
				if (Edge{Book: h.b, Spans: spans}).Stitches() > 0 && !slices.Contains(h.so.resumed, i) {
					h.takeUp(spans)
					h.so.resumed = append(h.so.resumed, i)
					return
				}
			}
		}
		return
	}
}

// takeUp makes stitches live that a row had left.
func (h *hand) takeUp(spans []Span) {
	h.b.Known = h.sheet.stitches
	h.so.live = Edge{Book: h.b, Spans: spans}
	h.so.turn, h.so.still, h.so.joined, h.so.begin, h.so.entry, h.so.shown = false, true, false, nil, 0, -1
}

// afterCut reports a row that goes on where the yarn was fastened off, without joining it again or another.
func (h *hand) afterCut(t text) {
	if h.so.cut.To == 0 {
		return
	}
	h.so.cut.To = 0
	if t.words != nil && t.label.Yarn != "" {
		return
	}
	for _, c := range t.body {
		switch c := c.(type) {
		case *notation.Rejoin, *notation.Yarn:
			return
		case *notation.Make:
			if c.Stitch.Manner == stitch.Standing {
				return
			}
		}
	}
	h.report(AfterOff, source.Error, t.span, 0, [2]string{})
}

// rejoin begins the yarn again: at the start of the live edge, in a place along a round, or where stitches were left.
func (h *hand) rejoin(c *notation.Rejoin, rest []notation.Clause) {
	h.so.cut.To = 0
	s := &h.s
	t := &c.In
	if s.begun {
		return
	}
	w := h.targetWant(t)
	switch {
	case t.Where == notation.Marked || t.Name != "" && h.hasMark(t.Name):
		h.toMark(t.Name)
		s.entered = true
	case h.circle() && (isSpace(w) || w.what == group):
		h.travelRound(w, 1)
	case w.what == space:
		h.travel(&notation.Travel{In: []notation.Target{*t}})
	}
	if c.With.Name != "" && c.With.Name != "sl st" {
		k := h.craftOf(c.With, c.At())
		if s.entered {
			w = want{what: anything}
		} else if w.what != space {
			w = want{}
		}
		h.spread(k, w, 1, 1)
	}
}
