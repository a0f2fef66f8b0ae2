package ledger

import (
	"foundrow/internal/notation"
	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

// A craft is what is known of a stitch: what it takes, what it leaves, and what that is called.
type craft struct {
	made  int32 // what stands afterwards, by its place in Book.Known
	makes int   // of them for each one worked
	uses  int
	unit  string // the shell or other unit that they are
	how   []notation.Clause
	none  bool // it neither takes nor leaves anything: a picot
	slip  bool
	plain bool // a stitch of the ladder, one in one place
	comes bool // it makes its own place: a foundation stitch
}

// craftOf is what is known of a stitch. What does not hang on the row it is worked in is looked up once.
func (h *hand) craftOf(s stitch.Stitch, span source.Span) *craft {
	for i := range h.crafts {
		if h.crafts[i].stitch == s {
			return h.crafts[i].craft
		}
	}
	k := h.lookUp(s, span)
	if e := s.Find(); e == nil || e.Class != stitch.Change {
		h.crafts = append(h.crafts, crafted{s, &k})
	}
	return &k
}

// A crafted stitch is one that has been looked up.
type crafted struct {
	stitch stitch.Stitch
	craft  *craft
}

// lookUp looks a stitch up: in the rules of the piece, among the pattern's own, in the dictionary.
func (h *hand) lookUp(s stitch.Stitch, span source.Span) craft {
	made := h.sheet.one(s)
	for _, r := range h.rules {
		if r.Kind == notation.Defines && r.Stitch.Name == s.Name && len(r.How) > 0 {
			return h.defined(r, s)
		}
	}
	for i := range h.p.Specials {
		sp := &h.p.Specials[i]
		if sp.Name != s.Name {
			continue
		}
		c := craft{made: made, makes: max(sp.Makes, 1), uses: max(sp.Uses, 1), how: sp.How, unit: s.Name}
		if one, uses := oneStitch(sp.How); one != "" && sp.Uses == 0 && sp.Makes == 0 { // "dc4tog in next st"
			c.uses, c.how = uses, nil
			if s.Of == "" && sp.Tall.Name == "" {
				s.Of = one
				c.made = h.sheet.one(s)
			}
		}
		if sp.Uses > 0 || sp.Makes > 0 || len(sp.How) == 0 {
			c.how = nil
		}
		if c.makes == 1 && c.how == nil {
			c.unit = ""
		}
		if s.Of == "" && sp.Tall.Name != "" {
			s.Of = sp.Tall.Name
			c.made = h.sheet.one(s)
		}
		return c
	}
	e := s.Find()
	if e == nil {
		h.unknown(s, span)
		return craft{made: made, makes: 1, uses: 1}
	}
	switch e.Class {
	case stitch.Slip:
		return craft{made: made, makes: 1, uses: 1, slip: true}
	case stitch.Foundation:
		return craft{made: made, makes: 1, comes: true}
	case stitch.Trim, stitch.Ring, stitch.Chains:
		return craft{made: made, none: true}
	case stitch.Change:
		base := stitch.Stitch{Name: s.Of, Loop: s.Loop}
		if base.Name == "" {
			base.Name = h.sheet.stitches[h.base()].Name
		}
		if e.Name == "inc" {
			return craft{made: h.sheet.one(base), makes: 2, uses: 1}
		}
		base.Together = uint8(max(2, e.Uses))
		return craft{made: h.sheet.one(base), makes: 1, uses: int(base.Together)}
	case stitch.Unit:
		if h.single(s) || s.Together > 0 {
			return craft{made: made, makes: 1, uses: s.Uses()}
		}
		c := craft{made: h.sheet.one(s.Tall()), makes: e.Makes, uses: e.Uses, unit: s.Name}
		if s.Of == "" {
			c.made = h.sheet.one(stitch.Stitch{Name: "dc"})
		}
		if s.Members > 0 {
			c.makes = int(s.Members)
		}
		if s.Manner == stitch.Half {
			c.makes = (c.makes + 1) / 2
		}
		return c
	}
	return craft{made: made, makes: 1, uses: max(s.Uses(), 1), plain: e.Class == stitch.Plain && s.Together == 0}
}

// unknown reports a stitch that nothing explains, once for all its rows.
func (h *hand) unknown(s stitch.Stitch, span source.Span) {
	for i := range h.reports {
		if r := &h.reports[i]; r.Rule == UnknownStitch && r.Words[0] == s.Name {
			return
		}
	}
	h.report(UnknownStitch, source.Error, span, 0, [2]string{s.Name})
}

// defined is a stitch that a rule of the piece defines. Increases and decreases are not units: "inc = 2 sc in next st".
func (h *hand) defined(r *notation.Rule, s stitch.Stitch) craft {
	e := s.Find()
	if e != nil && e.Class == stitch.Change && len(r.How) == 1 && h.deep < deepest {
		if m, ok := r.How[0].(*notation.Make); ok {
			h.deep++ // a name may be defined by another, but not by itself
			defer func() { h.deep-- }()
			k := *h.craftOf(stitch.Stitch{Name: m.Stitch.Name, Together: m.Stitch.Together, Loop: s.Loop}, r.At())
			n, _ := h.number(&m.Count, 1)
			if m.In.Where == notation.Next || m.In.Where == notation.Same || m.In.Where == notation.Unsaid {
				k.makes *= n
			}
			return k
		}
	}
	if one, uses := oneStitch(r.How); one != "" {
		if s.Of == "" {
			s.Of = one
		}
		return craft{made: h.sheet.one(s), makes: 1, uses: uses}
	}
	return craft{made: h.sheet.one(s), makes: 1, uses: 1, how: r.How, unit: s.Name}
}

// oneStitch is the stitch that alone a pattern's own is worked as, and how many places that takes up: such a one is a stitch like it
// under another name. The name is empty where there are more stitches, or something else.
func oneStitch(how []notation.Clause) (name string, uses int) {
	if len(how) != 1 {
		return "", 0
	}
	m, is := how[0].(*notation.Make)
	if !is || m.LastIn != nil || m.Count.Said && !onlyOne(m.Count) || m.Stitch.Post != stitch.NoPost || m.Stitch.Loop != stitch.BothLoops {
		return "", 0
	}
	if e := m.Stitch.Find(); e == nil || e.Class != stitch.Plain && (e.Class != stitch.Unit || e.Makes != 1) {
		return "", 0
	}
	t, uses := &m.In, max(m.Stitch.Uses(), 1)
	switch {
	case t.Edge != nil, t.Below > 0, t.Row.Said, t.Nth.Said, t.Each, t.Till.Kind != notation.NotSaid, t.Noun.Kind != notation.NoNoun && t.Noun.Kind != notation.AnyStitch:
		return "", 0
	case inOnePlace(t):
		return m.Stitch.Name, 1
	case t.Where != notation.Next && t.Where != notation.Unsaid, t.Count.Said && (t.Count.Slot > 0 || t.Count.List != nil || t.Count.Plain != uses):
		return "", 0
	}
	return m.Stitch.Name, uses
}

// onlyOne reports whether a count is 1 in every size.
func onlyOne(c notation.Count) bool { return c.Slot == 0 && c.List == nil && c.Plain == 1 }

// single reports whether a unit stands as one stitch: clusters, bobbles, puffs, popcorns.
func (h *hand) single(s stitch.Stitch) bool {
	for _, r := range h.rules {
		if r.Kind == notation.Defines && r.Stitch.Name == s.Name && len(r.How) > 0 {
			one, _ := oneStitch(r.How)
			return one != ""
		}
	}
	for i := range h.p.Specials {
		if sp := &h.p.Specials[i]; sp.Name == s.Name {
			one, _ := oneStitch(sp.How)
			return sp.Makes == 1 || sp.Makes == 0 && (len(sp.How) == 0 || one != "")
		}
	}
	e := s.Find()
	return e != nil && e.Class == stitch.Unit && e.Makes == 1 && e.Uses == 1
}

// base is the stitch that an increase or decrease is of: the one worked last, else sc.
func (h *hand) base() int32 {
	if h.so.main == 0 {
		return h.sheet.one(stitch.Stitch{Name: "sc"})
	}
	return h.so.main
}

// madeOf is n of a stitch as they are made.
func (h *hand) madeOf(s int32, n int) *Made {
	return &Made{Kind: Stitches, Of: s, N: n, Stands: true, Counted: true}
}

// loose is n loose chains.
func (h *hand) loose(n int) *Made {
	return &Made{Kind: Chains, Of: h.sheet.one(stitch.Stitch{Name: "ch"}), N: n, Stands: true}
}
