package ledger

import (
	"foundrow/internal/notation"
	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

// trouble is what is wrong with the use a row makes of what it found.
type trouble struct {
	kind  string // the rule; empty when everything is accounted for
	way   uint8
	used  int
	found int
	over  int
	span  source.Span
}

// unused looks at what a row has left over, run out of, or cannot fit.
func (h *hand) unused() trouble {
	s := &h.s
	if s.open || h.so.open {
		return trouble{}
	}
	left := h.open()
	t := trouble{found: s.total, span: h.row.span}
	t.used = s.total - left - s.holes + s.short
	if left == 0 && s.holes == 0 && s.short == 0 {
		return trouble{}
	}
	t.over = left + s.holes
	switch {
	case s.short > 0 && s.fit.asked && s.fit.times > 0 && s.fit.uneven(), left+s.holes > 0 && s.fit.asked && s.fit.use > 0 && s.fit.times > 0:
		t.kind, t.span = DoesNotFit, s.fit.span
		t.used, t.found, t.over = s.fit.use, s.fit.over, mod(s.fit.over, s.fit.use)
		if t.over == 0 {
			t.over = left + s.holes + s.short
		}
	case s.short > 0:
		t.kind = RunOut
	default:
		t.kind = LeftOver
		if s.holes == 0 && left > 0 {
			t.way = 1 // at the end
		}
		if s.soft && s.last.made != nil && s.last.made.Kind == Spaces {
			t.way = 2 // spaces
		}
	}
	if h.so.chained > 0 && !s.other {
		t.kind = Foundation
		t.way = 0
		t.found = h.so.chained
		t.used = h.so.chained + s.short - left - s.holes
		if f := s.fit; f.asked && f.use > 0 && f.times > 0 {
			over := mod(f.over, f.use)
			t.way = 1
			t.over = f.use
			down, up := h.so.chained-over, h.so.chained-over+f.use
			t.used = up
			if over <= f.use/2 && down > 0 && over != 0 && over < f.use-over {
				t.used = down
			}
		}
	}
	return t
}

// uneven reports whether the repeat does not come out over what there was for it.
func (f fit) uneven() bool { return f.use > 0 && mod(f.over, f.use) != 0 }

func mod(a, b int) int {
	if b <= 0 {
		return 0
	}
	return ((a % b) + b) % b
}

// check compares a row with its claims and reports what does not come out. One row makes one finding.
func (h *hand) check(t trouble, made int) {
	h.so.shown = -1
	if h.s.hidden && h.s.elastic && !h.s.open {
		// a start that only counts stitches says nothing of spaces, so that what goes as often as it fits cannot be told
		h.s.open = true
		h.report(Unchecked, source.Query, h.row.span, 1, [2]string{})
	}
	if h.s.open {
		h.openRow()
		return
	}
	claim, got, want, differs := h.compare(made)
	if h.s.dead && t.kind == "" && !differs {
		h.fail(TurningChain, h.row.span, 1)
		return
	}
	if h.s.passing > 0 && t.kind == "" && claim == nil {
		h.report(Passed, source.Query, h.row.span, 0, [2]string{}, h.s.passing)
	}
	switch {
	case t.kind == "":
		if differs {
			h.fail(CountDiffers, claim.Span, 0, got, want, h.so.count)
			h.differ(claim, want)
		}
		return
	case t.kind == LeftOver && t.way != 0 && !differs && claim != nil:
		// the row stops short and its count agrees: usual, and mostly left unsaid
		h.report(LeftOver, source.Query, t.span, 3, [2]string{}, t.used, t.found, t.over, made)
		return
	case !differs && claim != nil && t.kind != Foundation:
		h.fail(WrongStitch, t.span, 0, t.used, t.found, made)
		return
	}
	printed := -1
	if differs {
		printed = want
		h.differ(claim, want)
	}
	h.fail(t.kind, t.span, t.way, t.used, t.found, t.over, printed)
}

// fail reports an error of use or count.
func (h *hand) fail(rule string, span source.Span, way uint8, numbers ...int) {
	h.errors++
	h.report(rule, source.Error, span, way, [2]string{}, numbers...)
}

// differ remembers the printed number, from which the next row may have to go on.
func (h *hand) differ(c *notation.Claim, want int) {
	if c != nil && c.Per == "" && !c.Groups.Said && c.Change == 0 && c.Noun.Kind != notation.ASpace && c.Noun.Kind != notation.AUnit {
		h.so.shown = want
	}
}

// openRow is a row that could not be worked out: the next one starts from its claim.
func (h *hand) openRow() {
	for i := range h.row.claims {
		c := &h.row.claims[i]
		if n, ok := h.claimed(c); ok && c.Per == "" && c.Change == 0 && !c.Groups.Said {
			h.s.claim = n
			return
		}
	}
	h.s.claim = -1
}

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

// tally counts what a noun names in the row in hand.
func (h *hand) tally(n notation.Noun) int {
	h.b.Known = h.sheet.stitches
	return h.b.tally(h.made[h.first:], h.s.names, n, func(c notation.Count) int {
		k, _ := h.number(&c, 0)
		return k
	})
}

func (b *Book) tally(row []Made, units []string, n notation.Noun, number func(notation.Count) int) int {
	got := 0
	switch n.Kind {
	case notation.AnyStitch, notation.NoNoun:
		return counted(row, false)
	case notation.AStitch:
		for i := range row {
			if m := &row[i]; (m.Kind == Stitches || m.Kind == Turnings) && m.Counted && called(&b.Known[m.Of], n) {
				got += m.N
			}
		}
	case notation.ASpace:
		chains := number(n.Chains)
		for i := range row {
			if m := &row[i]; m.Kind == Spaces && (chains == 0 || m.Chains == chains || m.Whole == chains) {
				got += m.N
			}
		}
	case notation.AChain:
		chains := number(n.Chains)
		for i := range row {
			if m := &row[i]; m.Kind == Spaces && (chains == 0 || m.Chains == chains || m.Whole == chains) {
				if chains == 0 {
					got += m.N * m.Chains
				} else {
					got += m.N
				}
			}
		}
	case notation.AUnit:
		name := n.Stitch.Name
		if name == "" {
			name = n.Name
		}
		for i := range row {
			if m := &row[i]; m.Kind == Stitches && b.Known[m.Of].Name == name {
				got += m.N
			}
		}
		for _, u := range units {
			if u == name {
				got++
			}
		}
		if got == 0 && name == "block" {
			got = b.blocks(row)
		}
	}
	return got
}

// called reports whether a stitch is one that a claim names: a decrease or a post stitch is one of its kind.
func called(m *stitch.Stitch, n notation.Noun) bool {
	s := n.Stitch
	if m.Name != s.Name {
		return false
	}
	return (s.Post == 0 || s.Post == m.Post) && (s.Together == 0 || s.Together == m.Together)
}

// blocks counts corner-to-corner blocks: three tall stitches beside three chains.
func (b *Book) blocks(row []Made) int {
	n := 0
	for i := range row {
		m := &row[i]
		three := m.Kind == Stitches && m.N == 3 && height(b.Known[m.Of]) > 2
		if !three {
			continue
		}
		if i > 0 && row[i-1].Kind != Stitches && row[i-1].Chains == 3 {
			n++
		}
	}
	return n
}

func chainsIn(row []Made) int {
	n := 0
	for i := range row {
		if row[i].Kind == Spaces {
			n += row[i].N * row[i].Chains
		}
	}
	return n
}

// groups counts the places that several stitches went into: the shells of a pattern that does not define them.
func (h *hand) groups() int {
	n, seen := 0, 0
	for i := h.first; i < len(h.made); i++ {
		m := &h.made[i]
		switch {
		case m.Unit > 0:
			if m.Unit != seen {
				n++
				seen = m.Unit
			}
		case m.Each > 1:
			n += m.N / m.Each
		}
	}
	return n
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
// count them all together.
func (h *hand) shownCount(made int) int {
	if h.s.open {
		return h.s.claim
	}
	if h.row.odd {
		return made
	}
	kinds, first, found := 0, 0, false
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
		if c.Noun.Kind == notation.AStitch {
			kinds++
		}
		if !found {
			first, found = got, true
		}
	}
	if found && kinds <= 1 {
		return first
	}
	return made
}
