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

// targetWant is what kind of place a target asks for.
func (h *hand) targetWant(t *notation.Target) want {
	if h.s.other {
		return want{what: otherSide}
	}
	n := &t.Noun
	if t.Of.Kind != notation.NoNoun && n.Kind != notation.ARing && n.Kind != notation.ASpace {
		n = &t.Of
	}
	w := h.wants(n)
	if t.Where == notation.TopOf {
		w = want{what: turning}
	}
	if w.what == chain && n.Chains.Said && t.Of.Kind != notation.NoNoun {
		chains, _ := h.number(&n.Chains, 0)
		w = want{what: space, chains: chains}
	}
	for _, also := range t.Also {
		switch also.Kind {
		case notation.AChain:
			w = want{what: stitchOrCh}
		case notation.ASpace:
			if w.what != stitchOrCh {
				w = want{what: stitchOrSp}
			}
		}
	}
	return w
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

// byChains reports whether a space is worked chain by chain when it is met.
func byChains(w want) bool { return w.what == chain || w.what == stitchOrCh || w.what == anyStitch }

func isSpace(w want) bool { return w.what == space || w.what == corner || w.what == anyLoop }

// sameUnit reports whether two runs of a row belong to the same shell.
func sameUnit(a, b *Made) bool { return a == b && a.Each > 1 || a.Unit > 0 && a.Unit == b.Unit }

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
