package shaping

import (
	"math/bits"
	"slices"
	"strings"
)

// Rows says which of several schedules have an event in a row: bit i for the i-th. 0 is an even row.
type Rows uint16

// Has reports whether the i-th schedule has an event.
func (k Rows) Has(i int) bool { return k&(1<<i) != 0 }

// Words names a kind of row by the names of its schedules: "even", "body only", "both", "all", "body and neck".
func (k Rows) Words(names []string) string {
	switch n := bits.OnesCount16(uint16(k)); {
	case n == 0:
		return "even"
	case n == 1 && len(names) > 1:
		return names[bits.TrailingZeros16(uint16(k))] + " only"
	case n == len(names) && n == 2:
		return "both"
	case n == len(names) && n > 2:
		return "all"
	}
	var have []string
	for i, name := range names {
		if k.Has(i) {
			have = append(have, name)
		}
	}
	if n := len(have); n > 1 {
		return strings.Join(have[:n-1], ", ") + " and " + have[n-1]
	}
	return strings.Join(have, "")
}

// A Table is several schedules over the same rows.
type Table struct {
	Parts []Schedule
	Rows  []Rows // of every row, from row 1
}

// mostParts is how many schedules a table holds.
const mostParts = 16

// Together lays schedules over the same rows. It refuses those of different numbers of rows.
func Together(parts ...Schedule) (Table, *Refusal) {
	if len(parts) == 0 || len(parts) > mostParts {
		return Table{}, refuse(RowsDiffer, "from 1 to ", mostParts, " schedules can be worked together, not ", len(parts))
	}
	t := Table{Parts: parts, Rows: make([]Rows, parts[0].Rows)}
	for i, s := range parts {
		if s.Rows != len(t.Rows) {
			r := refuse(RowsDiffer, "one goes over ", counted(len(t.Rows), "row"), ", another over ", s.Rows)
			r.Which = i
			return Table{}, r
		}
		for _, row := range s.Events() {
			t.Rows[row-1] |= 1 << i
		}
	}
	return t, nil
}

// SolveTogether solves wants over the same rows so that as few kinds of row come about as can be: the one with the most events is
// solved by itself, and the others take their events from among its rows, as evenly as those are. One whose own conditions these
// rows cannot meet is solved by itself as well, and has rows of its own then.
//
// Body and sleeve of a raglan grow at their own rates, so one rule such as every other row seldom fits all sizes.
// Source: blog.ysolda.com, 2007/09/28 (compound raglan); that the fewer events stand on rows of the more is common practice, no source.
func SolveTogether(wants ...Want) (Table, *Refusal) {
	parts := make([]Schedule, len(wants))
	lead, events := 0, 0
	for i, w := range wants {
		if w.Over != wants[0].Over {
			r := refuse(RowsDiffer, "one goes over ", counted(wants[0].Over, "row"), ", another over ", w.Over)
			r.Which = i
			if w.With(Offer{KeyOver, []int{wants[0].Over}}).possible() {
				r.Offers = []Offer{{KeyOver, []int{wants[0].Over}}}
			}
			return Table{}, r
		}
		var refused *Refusal
		if parts[i], refused = Solve(w); refused != nil {
			refused.Which = i
			return Table{}, refused
		}
		if n := len(parts[i].Events()); n > events {
			lead, events = i, n
		}
	}
	for i, w := range wants {
		if i == lead {
			continue
		}
		if s, ok := w.among(parts[lead].Events(), false); ok {
			parts[i] = s
		}
	}
	return Together(parts...)
}

// Kinds returns the kinds of row that occur, the even row first, then in the order of their parts.
func (t Table) Kinds() []Rows {
	kinds := slices.Clone(t.Rows)
	slices.Sort(kinds)
	return slices.Compact(kinds)
}

// A Block is some rows, each of a kind, worked a number of times.
type Block struct {
	From  int // the first row of it, counted from 1
	Rows  []Rows
	Times int
}

// Blocks returns the table with what repeats said once.
func (t Table) Blocks() []Block {
	var out []Block
	for _, b := range blocks(t.Rows) {
		out = append(out, Block{b.from + 1, t.Rows[b.from : b.from+b.length], b.times})
	}
	return out
}

// Counts returns the stitches after every row where all schedules shape one piece that begins with so many. It refuses a piece that
// comes to fewer than keep on the way, because two of its edges meet.
func (t Table) Counts(from, keep int) ([]int, *Refusal) {
	counts := make([]int, len(t.Rows))
	least := from
	for i := range counts {
		counts[i] = from
	}
	for _, s := range t.Parts {
		for i, n := range s.Counts() {
			counts[i] += n - s.From
		}
	}
	first := 0
	for i, n := range counts {
		if least = min(least, n); n < keep && first == 0 {
			first = i + 1
		}
	}
	if first == 0 {
		return counts, nil
	}
	r := refuse(NothingLeft, "the edges meet in row ", first, ": ", counted(from, "stitch"), " are ", keep-least, " too few")
	r.Offers = []Offer{{KeyFrom, []int{from + keep - least}}}
	return counts, r
}
