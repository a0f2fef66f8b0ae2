package ledger

import (
	"slices"

	"foundrow/internal/notation"
	"foundrow/internal/source"
)

// marker places a marker where the hook is; moving it up is placing it again.
func (h *hand) marker(c *notation.Marker) {
	if c.Does == "remove" {
		return
	}
	at := h.placed() - 1
	if c.In.Said() && c.In.Where == notation.First {
		at = 0
	}
	if at >= 0 {
		h.b.Marks = append(h.b.Marks, Mark{Name: c.Name, Row: len(h.b.Rows), Place: at})
	}
}

// hasMark reports whether a marker of the name was ever placed.
func (h *hand) hasMark(name string) bool {
	return slices.ContainsFunc(h.b.Marks, func(m Mark) bool { return name == "" || m.Name == name })
}

// marked finds the run ahead in which a marker is, and how far into it. Rows that are worked plainly carry a marker up with them.
func (h *hand) marked(name string) (at, off int, ok bool) {
	s := &h.s
	for _, m := range slices.Backward(h.b.Marks) {
		if name != "" && m.Name != name {
			continue
		}
		for i, gone := s.run, s.off; i < len(s.runs); i, gone = i+1, 0 {
			r := &s.runs[i]
			if r.row != m.Row {
				continue
			}
			o := m.Place - r.from
			if r.back {
				o = -o
			}
			if o >= gone && o < r.n {
				return i, o, true
			}
		}
	}
	return 0, 0, false
}

// untilMark counts the places before a marker.
func (h *hand) untilMark(w want, name string) int {
	s := &h.s
	at, off, ok := h.marked(name)
	if !ok {
		if !h.hasMark(name) && !h.so.loose && h.trial == 0 {
			h.report(NoSuchMarker, source.Error, h.row.span, 0, [2]string{name})
		}
		return h.ahead(w, 0)
	}
	n := 0
	for i, gone := s.run, s.off; i <= at; i, gone = i+1, 0 {
		r := &s.runs[i]
		here := r.n
		if i == at {
			here = off
		}
		if h.accepts(r, w) {
			n += here - gone
		}
	}
	// a marker sits in a stitch: one in the very last is worked to, and with it
	if h.s.left == n+1 {
		return n + 1
	}
	return n
}

// toMark moves to the marked stitch.
func (h *hand) toMark(name string) {
	s := &h.s
	at, off, ok := h.marked(name)
	if !ok {
		return
	}
	if h.circle() && !s.begun {
		s.run, s.off = at, off
		h.rotate()
		return
	}
	h.passTo(at, want{})
	for s.off < off {
		h.passOne()
		s.holes++
	}
}
