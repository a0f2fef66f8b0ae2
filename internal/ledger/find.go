package ledger

import (
	"foundrow/internal/notation"
	"foundrow/internal/stitch"
)

// A want is what kind of place is looked for.
type want struct {
	what   wanted
	post   stitch.Post
	chains int    // of a space: how many; 0 for any
	name   string // of a stitch, or of a unit
}

type wanted uint8

const (
	anyStitch  wanted = iota // a stitch, a loose chain, a row-end
	named                    // a stitch of that name
	chain                    // a chain: loose, or one of a space
	space                    // a chain space
	stitchOrCh               // "each st and ch"
	stitchOrSp               // "each st and ch-1 sp"
	turning                  // a turning chain that stands
	rowEnd
	group // a shell or other unit
	ring
	otherSide // the free loops of a chain: worked only when they are named
	anything  // whatever comes next
	anyLoop   // a space, or a turning chain that is as long
	corner    // the space in the middle of a corner
)

// wants is what a noun asks for.
func (h *hand) wants(n *notation.Noun) want {
	switch n.Kind {
	case notation.AStitch:
		if e := n.Stitch.Find(); e != nil && e.Class == stitch.Unit && !h.single(n.Stitch) {
			return want{what: group, name: n.Stitch.Name}
		}
		return want{what: named, name: n.Stitch.Name, post: n.Stitch.Post}
	case notation.AChain:
		return want{what: chain}
	case notation.ASpace:
		if n.Name == "corner" && h.corners() {
			return want{what: corner}
		}
		chains, _ := h.number(&n.Chains, 0)
		return want{what: space, chains: chains}
	case notation.TurningCh:
		return want{what: turning}
	case notation.ARing:
		return want{what: ring}
	case notation.ARowEnd:
		return want{what: rowEnd, name: n.Stitch.Name}
	case notation.AUnit, notation.ARepeat:
		if n.Name == "corner" && n.Stitch.Name == "" && h.corners() {
			return want{what: corner}
		}
		if n.Stitch.Name != "" && h.single(n.Stitch) {
			return want{what: named, name: n.Stitch.Name, post: n.Stitch.Post}
		}
		name := n.Name
		if n.Stitch.Name != "" {
			name = n.Stitch.Name
		}
		return want{what: group, name: name}
	}
	return want{}
}

// accepts reports whether a place of the run is what is looked for.
func (h *hand) accepts(r *run, w want) bool {
	m := r.made
	if r.face == FreeLoop {
		return w.what == otherSide
	}
	switch w.what {
	case anyStitch:
		return h.weight(r) > 0
	case named:
		return h.weight(r) > 0 && h.alike(m, w)
	case chain:
		return m.Kind == Chains || m.Kind == Spaces || m.Kind == Turnings && m.Stands
	case space:
		return m.Kind == Spaces && (w.chains == 0 || w.chains == m.Chains || w.chains == m.Whole)
	case corner:
		return r.corner
	case anyLoop:
		return (m.Kind == Spaces || m.Kind == Turnings && m.Stands) && (m.Chains == w.chains || m.Whole == w.chains)
	case stitchOrCh, stitchOrSp:
		return h.weight(r) > 0 || m.Kind == Spaces
	case turning:
		return m.Kind == Turnings || h.unnamed(m)
	case rowEnd:
		return m.Kind == Ends && (w.name == "" || w.name == h.of(m).Name)
	case group:
		return m.Unit > 0 || m.Each > 1
	case ring:
		return m.Kind == Rings
	case anything:
		return m.Kind != Turnings || m.Stands
	}
	return false
}

// alike reports whether a stitch answers to a name. Stitches whose kind is not known answer to every name.
func (h *hand) alike(m *Made, w want) bool {
	s := h.of(m)
	switch {
	case m.Kind == Chains || m.Kind == Spaces:
		return false
	case h.unnamed(m):
		return true
	case s.Name != w.name:
		return s.Of != "" && s.Of == w.name && s.Together > 0
	case w.post != stitch.NoPost:
		return s.Post == w.post
	}
	return true
}

// unnamed reports whether all that is known of a run is its number: it is of a start that only counts stitches.
func (h *hand) unnamed(m *Made) bool { return m.Kind == Stitches && m.Of == 0 }

// seek moves to the next place that is looked for, passing what may be passed, and returns its run; nil when there is none. Spaces
// are passed in silence, and stitches on the way to a space or to the rest of a shell; others are a hole in the row.
func (h *hand) seek(w want) *run {
	s := &h.s
	if w.what == space && w.chains > 0 && !h.circle() && !h.so.loose && !h.hasSpace(w.chains) {
		w.what = anyLoop // the chain at the edge is as good as a space: the last block of a corner-to-corner row
	}
	i, off := s.run, s.off
	for ; i < len(s.runs); i, off = i+1, 0 {
		r := &s.runs[i]
		if off >= r.n || !h.accepts(r, w) {
			if off < r.n && h.weight(r) > 0 && (w.what == rowEnd || w.what == ring) {
				return nil
			}
			continue
		}
		if i != s.run {
			h.passTo(i, w)
		}
		return r
	}
	return nil
}

// passTo passes everything before a run.
func (h *hand) passTo(i int, w want) {
	s := &h.s
	for s.run < i {
		r := &s.runs[s.run]
		n := r.n - s.off
		weight := h.weight(r)
		s.passed[r.made.Kind] += int32(n)
		stitches := weight * n
		if s.sub > 0 {
			s.passed[r.made.Kind]--
			s.used[r.made.Kind]++
			stitches -= s.sub
		}
		s.left -= stitches
		switch {
		case stitches == 0 || s.soft || w.what == space || w.what == anyLoop || w.what == corner || w.what == group || s.ofUnit && sameUnit(s.last.made, r.made):
		case w.what == named || w.what == chain:
			s.passing += stitches
			h.named = true
		default:
			s.holes += stitches
		}
		s.run, s.off, s.sub = s.run+1, 0, 0
	}
}

// sameUnit reports whether two runs of a row belong to the same shell.
func sameUnit(a, b *Made) bool { return a == b && a.Each > 1 || a.Unit > 0 && a.Unit == b.Unit }

// use takes n places of the run the hook is at, fewer where it has fewer, and returns them. A space that is worked chain by chain
// gives one chain at a time.
func (h *hand) use(n int, byChains bool) (Span, int) {
	s := &h.s
	r := &s.runs[s.run]
	h.s.begun = true
	if byChains && r.made.Kind == Spaces {
		span := r.span(s.off, 1)
		span.Face = InSpace
		n = min(n, r.made.Chains-s.sub)
		s.sub += n
		if h.chainsCount() {
			s.left -= n
		}
		if s.sub >= r.made.Chains {
			s.used[Spaces]++
			s.off, s.sub = s.off+1, 0
		}
		s.last = place{r.made, span}
		s.soft = false
		return span, n
	}
	if s.sub > 0 { // the rest of an opened space is passed
		s.used[Spaces]++
		s.left -= h.weight(r) - s.sub
		s.off, s.sub = s.off+1, 0
	}
	n = min(n, r.n-s.off)
	span := r.span(s.off, n)
	s.used[r.made.Kind] += int32(n)
	s.left -= h.weight(r) * n
	s.off += n
	s.soft, s.entered, s.ofUnit = false, false, false
	s.last.made, s.last.span = r.made, r.span(s.off-1, 1)
	if r.made.Kind == Spaces {
		span.Face, s.last.span.Face = InSpace, InSpace
		s.soft = true
	}
	return span, n
}

// ahead counts the places that are looked for among those ahead, but for the last keep stitches.
func (h *hand) ahead(w want, keep int) int {
	s := &h.s
	if w.what == anyStitch && !h.chainsCount() {
		return max(s.left-keep, 0)
	}
	n, left := 0, s.left-keep
	for i, off, sub := s.run, s.off, s.sub; i < len(s.runs) && left > 0; i, off, sub = i+1, 0, 0 {
		r := &s.runs[i]
		here := r.n - off
		weight := h.weight(r)
		if weight > 0 {
			here = min(here, (left+weight-1)/weight)
			left -= here*weight - sub
		}
		if here > 0 && h.accepts(r, w) {
			if byChains(w) && r.made.Kind == Spaces || weight > 1 {
				n += here*r.made.Chains - sub
			} else {
				n += here
			}
		}
	}
	return n
}

// isAhead reports whether a place that is looked for lies ahead. What is missing once stays missing.
func (h *hand) isAhead(w want) bool {
	s := &h.s
	if s.missing != "" && s.missing == w.name {
		return false
	}
	for i, off := s.run, s.off; i < len(s.runs); i, off = i+1, 0 {
		if r := &s.runs[i]; off < r.n && h.accepts(r, w) {
			return true
		}
	}
	s.missing = w.name
	return false
}

// byChains reports whether a space is worked chain by chain when it is met.
func byChains(w want) bool { return w.what == chain || w.what == stitchOrCh || w.what == anyStitch }

// until counts the places that are looked for before the next one of another kind; ok is false when there is none ahead.
func (h *hand) until(w, stop want) (n int, ok bool) {
	s := &h.s
	for i, off := s.run, s.off; i < len(s.runs); i, off = i+1, 0 {
		r := &s.runs[i]
		if off >= r.n {
			continue
		}
		if h.accepts(r, stop) {
			return n, true
		}
		if h.accepts(r, w) {
			n += r.n - off
		}
	}
	return n, false
}

func isSpace(w want) bool { return w.what == space || w.what == corner || w.what == anyLoop }

// corners finds the corner spaces of the live edge: those with a group on both sides of them, else the widest where some are wider. It
// reports whether there are any.
func (h *hand) corners() bool {
	runs := h.s.runs
	found, least, most := false, 0, 0
	for i := range runs {
		m := runs[i].made
		if m.Kind != Spaces {
			continue
		}
		if least == 0 || m.Chains < least {
			least = m.Chains
		}
		most = max(most, m.Chains)
		if i > 0 && i < len(runs)-1 && sameUnit(m, runs[i-1].made) && sameUnit(m, runs[i+1].made) {
			runs[i].corner, found = true, true
		}
	}
	if found || most == least {
		return found
	}
	for i := range runs {
		if m := runs[i].made; m.Kind == Spaces && m.Chains == most {
			runs[i].corner = true
		}
	}
	return true
}
