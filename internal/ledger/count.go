package ledger

import (
	"foundrow/internal/notation"
	"foundrow/internal/stitch"
)

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
