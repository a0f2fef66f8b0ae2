package ledger

import (
	"foundrow/internal/notation"
	"foundrow/internal/source"
)

// claimed is the number of a claim in this size.
func (h *hand) claimed(c *notation.Claim) (int, bool) {
	if !h.holds(c.Only) {
		return 0, false
	}
	n, absent, ok := h.count(&c.Count)
	return n, ok && !absent
}

// compare finds the first claim that the row does not meet: what is so and what it says. Where all agree it returns the first.
func (h *hand) compare(made int) (first *notation.Claim, got, want int, differs bool) {
	if h.row.odd {
		return nil, 0, 0, false
	}
	for i := range h.row.claims {
		c := &h.row.claims[i]
		n, ok := h.claimed(c)
		if !ok {
			continue
		}
		got, ok, sure := h.measures(c, n, made)
		if !ok && sure {
			if all, has, several := h.sections(i); several && all == has {
				ok = true // "15 hdc, 53 dc, 10 hdc": by sections
			}
		}
		if !sure {
			if !h.s.open {
				h.report(Unchecked, source.Query, c.Span, 0, [2]string{c.Noun.Name}, n)
			}
			continue
		}
		if !ok {
			return c, got, n, true
		}
		if first == nil {
			first = c
		}
	}
	return first, 0, 0, false
}

// sections adds up the claims that name one kind of stitch, and counts what there is of it.
func (h *hand) sections(i int) (all, has int, several bool) {
	noun := h.row.claims[i].Noun
	if noun.Kind != notation.AStitch {
		return 0, 0, false
	}
	times := 0
	for k := range h.row.claims {
		c := &h.row.claims[k]
		if c.Noun.Kind == notation.AStitch && c.Noun.Stitch == noun.Stitch {
			n, ok := h.claimed(c)
			if !ok {
				return 0, 0, false
			}
			all += n
			times++
		}
	}
	return all, h.tally(noun), times > 1
}

// measures counts what a claim of n is about. Sure is false when nothing in the row can be compared with it.
func (h *hand) measures(c *notation.Claim, n, made int) (got int, ok, sure bool) {
	row := h.made[h.first:]
	switch {
	case c.Groups.Said || c.Per != "":
		return h.perSide(c, n)
	case c.Change != 0:
		got = (made - h.so.count) * c.Change
		return got, got == n, true
	}
	switch c.Noun.Kind {
	case notation.NoNoun, notation.AnyStitch:
		if only := h.onlyOf(); only != nil {
			if got = h.tally(*only); got > 0 {
				return got, got == n, true
			}
		}
	case notation.AStitch:
		if c.Noun.Stitch.Name == "sl st" {
			return n, true, true
		}
		got = h.tally(c.Noun)
		if got == n {
			return got, true, true
		}
		if made == n || got == 0 && made > 0 {
			return made, made == n, true
		}
		return got, false, true
	case notation.ASpace, notation.AChain:
		got = h.tally(c.Noun)
		if got != n && c.Noun.Kind == notation.AChain {
			if all := chainsIn(row); all == n {
				return all, true, true
			}
		}
		return got, got == n, true
	case notation.AUnit:
		got = h.tally(c.Noun)
		if got == n {
			return got, true, true
		}
		if got == 0 {
			if blocks := h.groups(); blocks > 0 {
				return blocks, blocks == n, true
			}
			return 0, false, false
		}
		return got, false, true
	case notation.ARepeat:
		return h.s.repeats, h.s.repeats == n, h.s.repeats > 0
	case notation.ARowEnd, notation.ARing:
		return 0, true, false
	case notation.TurningCh:
		return 1, true, true
	}
	return made, made == n, true
}

// onlyOf is the stitch that alone is counted, by a rule of the piece; nil where there is none.
func (h *hand) onlyOf() *notation.Noun {
	for i := len(h.rules) - 1; i >= 0; i-- {
		if h.rules[i].Kind == notation.CountOf {
			return &h.rules[i].Noun
		}
	}
	return nil
}

// perSide compares a claim of what stands on each side: between the corner spaces, or between the groups, all round.
func (h *hand) perSide(c *notation.Claim, n int) (got int, ok, sure bool) {
	row := h.made[h.first:]
	if !c.Groups.Said && !h.circle() && !h.s.joined && c.Noun.Kind == notation.AStitch {
		return h.atBothEnds(c.Noun, n)
	}
	widest := 0
	for i := range row {
		if m := &row[i]; m.Kind == Spaces {
			widest = max(widest, m.Chains)
		}
	}
	if widest == 0 {
		return 0, true, false
	}
	var sides []int
	side := 0
	for i := range row {
		m := &row[i]
		switch {
		case m.Kind == Spaces && m.Chains == widest:
			for range m.N {
				sides = append(sides, side)
				side = 0
			}
		case (m.Kind == Stitches || m.Kind == Turnings) && m.Counted:
			side += m.N
		}
	}
	if h.circle() || h.s.joined {
		sides[0] += side
	} else {
		sides = append(sides, side)
	}
	if c.Groups.Said {
		g, _ := h.number(&c.Groups, 0)
		if len(sides) != g {
			return len(sides), false, true
		}
	}
	for _, s := range sides {
		if s != n {
			return s, false, true
		}
	}
	return n, true, true
}

// atBothEnds counts the stitches of a kind with which the row begins and ends: "1 dc each side".
func (h *hand) atBothEnds(noun notation.Noun, n int) (got int, ok, sure bool) {
	row := h.made[h.first:]
	ends := [2]int{}
	for end := range ends {
		for i := range row {
			m := &row[i]
			if end == 1 {
				m = &row[len(row)-1-i]
			}
			if (m.Kind == Stitches || m.Kind == Turnings) && m.Counted {
				if !called(h.of(m), noun) {
					break
				}
				ends[end] += m.N
			}
		}
	}
	if ends[0] != n {
		return ends[0], false, true
	}
	return ends[1], ends[1] == n, true
}

// shownCount is the number of a row as its claim counts it, else all that stand and are counted. Claims of several kinds of stitch
// count them all together, clusters among them, but not shells.
func (h *hand) shownCount(made int) int {
	if h.s.open {
		return h.s.claim
	}
	if h.row.odd {
		return made
	}
	kinds, all, first, found := 0, 0, 0, false
	for i := range h.row.claims {
		c := &h.row.claims[i]
		n, ok := h.claimed(c)
		if !ok || c.Change != 0 {
			continue
		}
		got, _, sure := h.measures(c, n, made)
		if !sure {
			continue
		}
		switch c.Noun.Kind {
		case notation.AStitch:
			kinds++
			all += got
		case notation.AUnit:
			all += got
		}
		if !found {
			first, found = got, true
		}
	}
	if found && kinds <= 1 && all != made {
		return first
	}
	return made
}
