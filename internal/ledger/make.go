package ledger

import (
	"foundrow/internal/notation"
	"foundrow/internal/stitch"
)

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
	h.workAt(k, c, t, count, rest)
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

// workAt works count of a stitch at a target.
func (h *hand) workAt(k *craft, c *notation.Make, t *notation.Target, count int, rest []notation.Clause) {
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
	s := &h.s
	w, where := h.meets(t)
	switch {
	case t.Where == notation.First && s.begun && !s.entered && h.closesLoop(k, c):
		return
	case t.Where == notation.First && !t.Count.Said && h.onlyChained(): // "ch 3 (counts as dc), dc in first st": the chain stands on it
		h.place(k, s.base, count)
		return
	case goesOn(t):
		h.allAlong(k, c, t, w, count, rest)
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
	switch {
	case t.Over:
		h.overPlaces(k, w, count, n)
		return
	case n > 1 && k.uses > 1 && !t.Each && n%k.uses == 0: // "sc2tog in next 4 sts"
		n /= k.uses
	}
	each, places := h.amounts(k, c, t, where, count, n)
	h.spread(k, w, places, each)
}

// meets is what kind of place a target asks for, and where it is found, once what is known of the live edge is taken into account.
func (h *hand) meets(t *notation.Target) (want, notation.Where) {
	w, where := h.targetWant(t), t.Where
	if where == notation.Unsaid && (t.Count.Said || t.Noun.Kind != notation.NoNoun) {
		where = notation.Next // "dc in 50 dc"
	}
	switch {
	case w.what == chain && h.so.loose: // some of what is counted may be chains
		w = want{}
		if where == notation.Last {
			where = notation.Next
		}
	case h.onRing() && where == notation.Unsaid:
		w = want{what: ring}
	case w.what == named && (h.sloppy || !h.isAhead(w)):
		w = want{} // no stitch answers to the name: it is only what she calls them
	}
	return w, where
}

// goesOn reports whether a target goes on to some end instead of for a number of places.
func goesOn(t *notation.Target) bool {
	switch t.Where {
	case notation.Everywhere, notation.Remaining, notation.RestUnnamed:
		return true
	case notation.First, notation.Last, notation.Next:
		return t.Till.Kind != notation.NotSaid
	}
	return t.Till.Kind != notation.NotSaid || t.Each && !t.Count.Said
}

// allAlong works a stitch in every place as far as a target goes.
func (h *hand) allAlong(k *craft, c *notation.Make, t *notation.Target, w want, count int, rest []notation.Clause) {
	n := h.extent(w, t, rest)
	h.named = h.named || w.what == named && n < h.s.left
	switch uses := max(k.uses, 1); {
	case c.Form == notation.NumberFirst && t.Where == notation.RestUnnamed && count > 1: // "48 sc around"
		h.spread(k, w, count, 1)
	case t.Every > 1:
		h.everyOther(k, w, n, t.Every, count)
	default:
		h.spread(k, w, n/uses, count)
		if n%uses > 0 {
			h.s.fit = fit{asked: true, use: uses, over: n, times: n / uses, span: c.At()}
		}
	}
}

// overPlaces works stitches over a number of places together: one over all of them, or as many in each.
func (h *hand) overPlaces(k *craft, w want, count, n int) {
	switch {
	case k.uses > 1 && n%k.uses == 0: // "sc2tog over next 2 sts"
		h.spread(k, w, n/k.uses, 1)
	case n > 0 && count > 1 && count%n == 0: // "21 dc over 7 crosses"
		h.spread(k, w, n, count/n)
	default: // "3-dc cluster over next 3 sts"
		one := *k
		one.uses = n
		h.spread(&one, w, 1, count)
	}
}

// amounts is how many of a stitch go in each place, and in how many places, by the numbers that stand at the stitch and at the place.
func (h *hand) amounts(k *craft, c *notation.Make, t *notation.Target, where notation.Where, count, n int) (each, places int) {
	switch {
	case where == notation.Unsaid:
		if c.Form == notation.NumberFirst && count > 1 && k.unit == "" {
			h.moot.numbers = true
			if h.habit(notation.NumberFirstIsOnePlace, notation.NumberFirstIsRun, h.habits.Numbers == OnePlace) {
				return count, 1
			}
		}
		return 1, count
	case !t.Count.Said && c.Form == notation.NumberAfter && t.Where == notation.Next && t.Noun.Kind == notation.NoNoun:
		return 1, count
	case t.Count.Said && count == n && !t.Each && count > 3: // "ten dc in 10 dc"; "2 sc in next 2 sts" are two in each
		return 1, n
	}
	return count, n
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
