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
		if sp.Uses > 0 || sp.Makes > 0 || len(sp.How) == 0 {
			c.how = nil
		}
		if c.makes == 1 {
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
	return craft{made: h.sheet.one(s), makes: 1, uses: 1, how: r.How, unit: s.Name}
}

// single reports whether a unit stands as one stitch: clusters, bobbles, puffs, popcorns.
func (h *hand) single(s stitch.Stitch) bool {
	for _, r := range h.rules {
		if r.Kind == notation.Defines && r.Stitch.Name == s.Name && len(r.How) > 0 {
			return false
		}
	}
	for i := range h.p.Specials {
		if sp := &h.p.Specials[i]; sp.Name == s.Name {
			return sp.Makes <= 1 && (sp.Makes == 1 || len(sp.How) == 0)
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

// make works a stitch, or several, where the row says.
func (h *hand) make(c *notation.Make, rest []notation.Clause) {
	s := c.Stitch
	if h.s.loops && s.Loop == stitch.BothLoops {
		s.Loop = h.s.loop
	}
	if s.Name == "sl st" && h.slipsAlong(c, rest) {
		return
	}
	k := h.craftOf(s, c.At())
	t := &c.In
	if s.Together > 1 && inOnePlace(t) { // "dc3tog in next st": all its legs stand in one stitch
		cluster := *k
		cluster.uses = 1
		k = &cluster
	}
	if k.none || k.slip && t.Where == notation.FromHook && h.s.begun && !h.onChain() { // a picot
		return
	}
	if k.plain {
		h.so.main = k.made
	}
	count, ok := h.number(&c.Count, 1)
	if !ok {
		return
	}
	if k.comes {
		h.s.begun = true
		h.emit(h.madeOf(k.made, count))
		return
	}
	if k.slip {
		h.s.slips += count
	}
	if c.LastIn != nil {
		h.lastIn(c, k, rest)
		return
	}
	h.work1(k, c, t, count, rest)
}

// inOnePlace reports whether a target names one place, by "in next st" and its like.
func inOnePlace(t *notation.Target) bool {
	switch t.Where {
	case notation.Next, notation.Same:
		return !t.Count.Said && !t.Each && !t.Over && t.Till.Kind == notation.NotSaid && t.Noun.Kind != notation.NoNoun
	}
	return false
}

// lastIn works all but the last one where the clause says, and the last in a place of its own.
func (h *hand) lastIn(c *notation.Make, k *craft, rest []notation.Clause) {
	last := *c
	last.LastIn, last.In, last.Count = nil, *c.LastIn, notation.Count{}
	all := *c
	all.LastIn = nil
	h.make(&all, append([]notation.Clause{&last}, rest...))
	h.make(&last, rest)
}

// work1 works count of a stitch at a target.
func (h *hand) work1(k *craft, c *notation.Make, t *notation.Target, count int, rest []notation.Clause) {
	s := &h.s
	switch {
	case s.inside && (t.Where == notation.Unsaid || t.Where == notation.Next && !t.Count.Said || t.Where == notation.Same):
		h.place(k, s.in, count)
		return
	case t.Edge != nil:
		h.reach(k, c, t, count)
		return
	case t.Below > 0 || t.Row.Said && t.Where != notation.Skipped:
		h.below(k, t, count, rest)
		return
	}
	switch t.Where {
	case notation.Same:
		h.same(k, t, count)
	case notation.Joining:
		h.place(k, h.joining(), count)
	case notation.FromHook:
		h.fromHook(k, c, t, count)
	case notation.InRing:
		h.spread(k, want{what: ring}, 1, count)
	case notation.Skipped:
		h.skippedPlaces(k, c, t, count)
	case notation.Marked:
		h.toMark(t.Name)
		h.spread(k, want{what: anything}, 1, count)
	case notation.OtherSide:
		h.otherSide(k, c, t, count, rest)
	case notation.RowEnds:
		h.rowEnds(k, c, t, count)
	case notation.Between:
		h.between(k, c, t, count, rest)
	default:
		h.places(k, c, t, count, rest)
	}
}

// places works a stitch in places met along the live edge.
func (h *hand) places(k *craft, c *notation.Make, t *notation.Target, count int, rest []notation.Clause) {
	w := h.targetWant(t)
	s := &h.s
	where := t.Where
	if where == notation.Unsaid && (t.Count.Said || t.Noun.Kind != notation.NoNoun) {
		where = notation.Next // "dc in 50 dc"
	}
	if w.what == chain && h.so.loose { // some of what is counted may be chains
		w = want{}
		if where == notation.Last {
			where = notation.Next
		}
	}
	if h.onRing() && where == notation.Unsaid {
		w = want{what: ring}
	}
	if t.Where == notation.First && s.begun && !s.entered && h.closesLoop(k, c) {
		return
	}
	if t.Where == notation.First && !t.Count.Said && h.onlyChained() { // "ch 3 (counts as dc), dc in first st": the chain stands on it
		h.place(k, s.base, count)
		return
	}
	all := t.Where == notation.Everywhere || t.Where == notation.Remaining || t.Where == notation.RestUnnamed || t.Till.Kind != notation.NotSaid ||
		t.Each && !t.Count.Said && t.Where != notation.First && t.Where != notation.Last && t.Where != notation.Next
	if w.what == named && (h.sloppy || !h.isAhead(w)) {
		w = want{}
	}
	if all {
		n := h.extent(w, t, rest)
		h.named = h.named || w.what == named && n < s.left
		if c.Form == notation.NumberFirst && t.Where == notation.RestUnnamed && count > 1 { // "48 sc around"
			h.spread(k, w, count, 1)
			return
		}
		if t.Every > 1 {
			h.everyOther(k, w, n, t.Every, count)
			return
		}
		h.spread(k, w, n/max(k.uses, 1), count)
		if left := n % max(k.uses, 1); left > 0 && k.uses > 1 {
			s.fit = fit{asked: true, use: k.uses, over: n, times: n / k.uses, span: c.At()}
		}
		return
	}
	n, ok := h.number(&t.Count, 1)
	if !ok {
		return
	}
	if where == notation.Last {
		h.toLast(w, n)
	}
	if t.Nth.Said {
		h.nth(k, t, w, count)
		return
	}
	each, places := count, n
	if k.uses > 1 && n == 1 && t.Noun.Kind != notation.NoNoun && (where == notation.Next || where == notation.Marked) && !t.Over {
		one := *k // "dc3tog in next st": a cluster, all of it in one
		one.uses = 1
		k = &one
	}
	switch {
	case t.Over:
		switch {
		case k.uses > 1 && n%k.uses == 0: // "sc2tog over next 2 sts"
			each, places = 1, n/k.uses
		case count == 1: // one over several
			over := *k
			over.uses = n
			k = &over
			each, places = 1, 1
		case n > 0 && count%n == 0: // "21 trebles over 7 crosses"
			each, places = count/n, n
		}
	case where == notation.Unsaid:
		each, places = 1, count
		if c.Form == notation.NumberFirst && count > 1 && k.unit == "" {
			h.moot.numbers = true
			if h.habit(notation.NumberFirstIsOnePlace, notation.NumberFirstIsRun, h.habits.Numbers == OnePlace) {
				each, places = count, 1
			}
		}
	case !t.Count.Said:
		if c.Form == notation.NumberAfter && t.Where == notation.Next && t.Noun.Kind == notation.NoNoun {
			each, places = 1, count
		}
	case count == n && !t.Each && count > 3: // "ten dc in 10 dc"; "2 sc in next 2 sts" are two in each
		each = 1
	}
	if k.uses > 1 && t.Count.Said && !t.Over && !t.Each && n > 1 && places == n && n%k.uses == 0 {
		places = n / k.uses // "sc2tog in next 4 sts"
	}
	h.spread(k, w, places, each)
}

// onlyChained reports whether nothing but a chain that is counted as a stitch has been made in the row.
func (h *hand) onlyChained() bool {
	made := h.made[h.first:]
	return len(made) == 1 && made[0].Kind == Turnings && made[0].Counted && h.s.base.made != nil
}

// spread works each of a stitch in every one of so many places.
func (h *hand) spread(k *craft, w want, places, each int) {
	if places <= 0 || each <= 0 {
		return
	}
	if len(k.how) > 0 || k.unit != "" {
		for range min(places*each, most) {
			h.unit(k, w)
			if h.step(); h.tired() {
				break
			}
		}
		return
	}
	m := h.madeOf(k.made, k.makes*each)
	m.Unit = h.s.unit
	h.put(m, w, places, k.uses)
}

// place works a stitch where the hook has been already.
func (h *hand) place(k *craft, p place, each int) {
	if each <= 0 {
		return
	}
	if len(k.how) > 0 || k.unit != "" {
		for range min(each, 1000) {
			h.unitIn(k, p)
		}
		return
	}
	m := h.madeOf(k.made, k.makes*each)
	m.Unit = h.s.unit
	if each*k.makes > 1 && m.Unit == 0 {
		m.Each = each * k.makes
	}
	h.into(m, p)
	h.s.last = p
	h.s.soft = p.made == nil || p.made.Kind == Spaces
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
	if w.what == space && h.chainsCount() && w.chains == 0 {
		return w
	}
	return w
}
