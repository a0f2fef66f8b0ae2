package ledger

import (
	"foundrow/internal/notation"
	"foundrow/internal/stitch"
)

// Stitches is how many stitches the last row leaves, as its claim counts them.
func (b *Book) Stitches() int { return b.Count() }

// Count is the number of the last row, as its claim counts it.
func (b *Book) Count() int {
	if len(b.Rows) == 0 {
		return 0
	}
	return b.Rows[len(b.Rows)-1].Count
}

// Worked is how many rows the piece has, as it numbers them.
func (b *Book) Worked() int {
	n := 0
	for i := range b.Rows {
		if !b.Rows[i].Picked {
			n += b.Rows[i].Times
		}
	}
	return n
}

// StitchesAfter is how many stitches there are after the row of that number; ok is false where there is no such row.
func (b *Book) StitchesAfter(number int) (int, bool) {
	for i := len(b.numbered) - 1; i >= 0; i-- {
		if at := b.numbered[i]; at.number <= number && number < at.number+at.count {
			return b.Rows[at.row].Count, true
		}
	}
	return 0, false
}

// RowEnds returns how many rows stand at a side: left and right have as many.
func (b *Book) RowEnds() int {
	n := 0
	for i := b.start; i < len(b.Rows); i++ {
		if row := &b.Rows[i]; !row.Round {
			n += row.Times
		}
	}
	return n
}

// Halves is the height of the piece in halves of an sc row: the ends of all its rows one upon the other.
func (b *Book) Halves() int {
	n := 0
	for i := range b.Rows {
		n += b.Rows[i].Times * b.Rows[i].Halves
	}
	return n
}

// A Kindred is how many were made of one kind: of a stitch, of spaces of so many chains, of a unit.
type Kindred struct {
	Kind   Kind
	Stitch stitch.Stitch // of Stitches, and of Turnings what they stand for; zero for a unit
	Chains int           // of Spaces
	Unit   string        // the unit's name; its members are counted as what they are, too
	N      int
}

// Counts are the kinds that one working of a row makes, in the order they were first made. A turning chain that is counted is one of
// the stitch it stands for.
func (b *Book) Counts(row int) []Kindred {
	if row < 0 || row >= len(b.Rows) {
		return nil
	}
	r := &b.Rows[row]
	var out []Kindred
	add := func(k Kindred) {
		for i := range out {
			if o := &out[i]; o.Kind == k.Kind && o.Stitch == k.Stitch && o.Chains == k.Chains && o.Unit == k.Unit {
				o.N += k.N
				return
			}
		}
		out = append(out, k)
	}
	for i := range r.Made {
		switch m := &r.Made[i]; m.Kind {
		case Stitches, Turnings:
			if m.Counted {
				s := b.Known[m.Of]
				s.Loop = stitch.BothLoops
				add(Kindred{Kind: Stitches, Stitch: s, N: m.N})
			}
		case Spaces:
			chains := m.Chains
			if m.Whole > 0 && (!m.Stands || r.hasSpace(m.Whole)) {
				chains = m.Whole
			}
			add(Kindred{Kind: Spaces, Chains: chains, N: m.N})
		}
	}
	for _, u := range r.Units {
		if u != "" {
			add(Kindred{Unit: u, N: 1})
		}
	}
	return out
}

// hasSpace reports whether a row made a space of so many chains between its stitches. A space within the beginning chain, or a loop
// that a tall join closes, is called what the others of its row are.
func (r *Row) hasSpace(chains int) bool {
	for i := range r.Made {
		if m := &r.Made[i]; m.Kind == Spaces && m.Whole == 0 && m.Chains == chains {
			return true
		}
	}
	return false
}

// Total adds up what the whole piece is made of, for yarn: stitches by what they are, and chains one by one as Chains.
func (b *Book) Total() []Kindred {
	var out []Kindred
	add := func(kind Kind, s stitch.Stitch, n int) {
		for i := range out {
			if o := &out[i]; o.Kind == kind && o.Stitch == s {
				o.N += n
				return
			}
		}
		out = append(out, Kindred{Kind: kind, Stitch: s, N: n})
	}
	ch := stitch.Stitch{Name: "ch"}
	for i := range b.Rows {
		r := &b.Rows[i]
		times := max(r.Times, 1)
		for j := range r.Made {
			switch m := &r.Made[j]; m.Kind {
			case Stitches:
				if r.Times > 0 {
					s := b.Known[m.Of]
					s.Loop = stitch.BothLoops
					add(Stitches, s, m.N*times)
				}
			case Spaces, Turnings:
				if r.Times > 0 {
					add(Chains, ch, m.N*max(m.Chains, 0)*times)
				}
			case Chains:
				add(Chains, ch, m.N)
			}
		}
	}
	return out
}

// Tallied counts what a noun names in one working of a row.
func (b *Book) Tallied(row int, n notation.Noun) int {
	r := &b.Rows[row]
	return b.tally(r.Made, r.Units, n, func(c notation.Count) int { return c.Plain })
}
