package ledger

import (
	"foundrow/internal/notation"
	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

// chain makes chains: the beginning of the row, a chain to be worked back along, the beginning of the next row, or a space.
func (h *hand) chain(c *notation.Chain, rest []notation.Clause, top bool) {
	n, ok := h.number(&c.Count, 1)
	if !ok || n <= 0 {
		return
	}
	s := &h.s
	if fromHook(rest) {
		if !s.begun && h.so.chained == n && !h.so.open {
			return // the foundation, said once more
		}
		if m := firstMake(rest); m.Stitch.Name != "sl st" || !s.begun || turns(rest) {
			h.chainOn(n, c.At())
			return
		}
	}
	switch {
	case s.begun && (s.inside || !top), !s.inside && !top:
	case !s.begun:
		h.begin(c, n, rest)
		return
	case ends(rest):
		h.so.begin = c
		return
	}
	h.emit(&Made{Kind: Spaces, N: 1, Chains: n, Unit: s.unit, Stands: true})
	h.moot.chains = true
	s.begun = true
}

// chainOn makes a chain whose places are worked at once, from the hook back.
func (h *hand) chainOn(n int, span source.Span) {
	if n > most {
		h.s.open = true
		return
	}
	row := len(h.b.Rows)
	made := []Made{*h.loose(n)}
	h.b.Rows = append(h.b.Rows, Row{Made: made, Places: n, Line: h.row.line})
	h.insertRun(run{made: &made[0], row: row, from: n - 1, n: n, back: true})
	if h.s.begun {
		h.s.chains = append(h.s.chains[:len(h.s.chains):len(h.s.chains)], insert{row: row, at: h.placed(), n: n})
	}
}

// begin makes the chain that a row begins with.
func (h *hand) begin(c *notation.Chain, n int, rest []notation.Clause) {
	o := h.openingOf(rest)
	v := h.verdict(c, n, o)
	s := &h.s
	m := &Made{Kind: Turnings, Of: h.sheet.one(v.as), N: 1, Chains: n, Stands: v.stands, Counted: v.counts}
	if v.plus > 0 {
		m.Chains = n - v.plus
	}
	if s.inside {
		m.Unit = s.unit
	}
	if v.stands {
		switch {
		case s.inside:
			m.Into = s.in.span
			s.base = s.in
		case s.last.made != nil: // it stands where slip stitches ended
			m.Into = s.last.span
			s.base = s.last
		default:
			w := want{}
			if s.entered || h.onRing() {
				w = want{what: anything}
			}
			if o.between {
				w = want{what: anything}
			}
			if r := h.seek(w); r != nil {
				if r.made.Kind == Rings {
					m.Into = r.span(0, 1)
					s.last = place{r.made, m.Into}
				} else {
					m.Into, _ = h.use(1, false)
				}
			} else if !h.so.open {
				s.short++
			}
			s.base = s.last
		}
		s.chained = true
		s.soft = s.base.made != nil && s.base.made.Kind == Spaces
	} else {
		if s.last.made != nil {
			s.base = s.last
		}
		s.begun = false
	}
	h.emit(m)
	if v.plus > 0 {
		h.append(&Made{Kind: Spaces, N: 1, Chains: v.plus, Whole: n, Unit: m.Unit, Stands: true})
	}
	if v.stands {
		s.begun = true
	}
}

// An opening is how a row goes on behind its beginning chain.
type opening struct {
	stitch   stitch.Stitch // the first that is worked
	tall     stitch.Stitch // the tallest
	together bool          // the first is a decrease
	same     bool          // it goes in the first or the same place
	skips    bool          // the first place is skipped
	between  bool
	joinsTop bool // the round is joined in the top of the chain
	space    bool // the first goes into a space
}

// openingOf is how the row in hand opens; it is looked at once for all sizes, unless some of the row is for some of them only.
func (h *hand) openingOf(rest []notation.Clause) opening {
	w := h.row.words
	if !w.plain || h.s.inside {
		return h.opening(rest)
	}
	if w.opens == nil {
		o := h.opening(rest)
		w.opens = &o
	}
	return *w.opens
}

func (h *hand) opening(rest []notation.Clause) opening {
	var o opening
	for _, c := range rest {
		if s, ok := c.(*notation.Skip); ok {
			if s.In.Where == notation.First || s.In.Where == notation.Same {
				o.skips = true
				continue
			}
		}
		break
	}
	if m := h.firstWorked(rest); m != nil {
		o.stitch = m.Stitch
		o.together = m.Stitch.Together > 0 || m.Stitch.Name == "dec" || m.Stitch.Name == "invdec"
		sp := m.In.Noun.Kind == notation.ASpace
		o.same = !sp && (m.In.Where == notation.Same || m.In.Where == notation.First || m.In.Where == notation.Joining)
		o.space = sp
	}
	o.tall = h.tallest(rest, 0)
	for _, c := range rest {
		if j, ok := c.(*notation.Join); ok && !j.Not {
			n := j.In.Noun
			if j.In.Where == notation.TopOf || n.Kind == notation.TurningCh || n.Kind == notation.AChain || j.In.Of.Kind == notation.AChain || j.In.Of.Kind == notation.TurningCh {
				o.joinsTop = true
			}
		}
	}
	return o
}

// firstWorked is the first stitch of the clauses, whatever is skipped before it.
func (h *hand) firstWorked(clauses []notation.Clause) *notation.Make {
	for i, c := range clauses {
		switch c := c.(type) {
		case *notation.Skip:
			continue
		case *notation.Make:
			if !h.holds(c.For()) {
				continue
			}
			if c.Stitch.Name == "sl st" {
				continue
			}
			return c
		default:
			if m := firstMake(clauses[i : i+1]); m != nil && m.Stitch.Name != "sl st" {
				return m
			}
		}
	}
	return nil
}

// tallest is the tallest plain stitch that the clauses work.
func (h *hand) tallest(clauses []notation.Clause, deep int) stitch.Stitch {
	var best stitch.Stitch
	for _, c := range clauses {
		var s stitch.Stitch
		switch c := c.(type) {
		case *notation.Make:
			s = c.Stitch
			if e := s.Find(); e == nil || e.Class != stitch.Plain {
				if s.Of == "" {
					continue
				}
			}
			s = s.Tall()
		case *notation.Group:
			if deep < 8 {
				s = h.tallest(c.Body, deep+1)
			}
		case *notation.Repeat:
			if deep < 8 {
				s = h.tallest(c.Body, deep+1)
			}
		case *notation.Evenly:
			s = c.Stitch.Base()
		}
		if s.Name != "" && (best.Name == "" || height(s) > height(best)) {
			best = s
		}
	}
	return best
}
