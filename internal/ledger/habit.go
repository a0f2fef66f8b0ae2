package ledger

import (
	"slices"

	"foundrow/internal/notation"
	"foundrow/internal/source"
)

// moot is which readings a piece leaves room for: changing any other would change nothing.
type moot struct {
	repeats, chain, numbers, chains bool
	stated                          bool // something is stated of the chain that a change would contradict
}

func (m moot) or(o moot) moot {
	return moot{m.repeats || o.repeats, m.chain || o.chain, m.numbers || o.numbers, m.chains || o.chains, m.stated || o.stated}
}

// changes are the habits that may be changed, one at a time and in this order.
func (m moot) changes() []Habits {
	var out []Habits
	if m.repeats {
		out = append(out, Habits{Repeats: InAll})
	}
	if m.chain {
		out = append(out, Habits{Chain: Counts}, Habits{Chain: CountsNot}, Habits{Chain: StandsUncounted})
	}
	if m.numbers {
		out = append(out, Habits{Numbers: OnePlace})
	}
	if m.chains {
		out = append(out, Habits{Chains: true})
	}
	return out
}

// WorkSizes works one piece in several sizes that are read alike. Where the default reading does not close the piece in every size,
// one habit is changed for all of it, the first that closes every row in every size; that is a query which names it. Otherwise the
// default stands, with what it leaves open.
func WorkSizes(pieces []Piece) ([]*Book, [][]Report) {
	books, reports := make([]*Book, len(pieces)), make([][]Report, len(pieces))
	var m moot
	closes, gaveUp := true, false
	sheets := sheetsOf(pieces)
	for i := range pieces {
		h := newHand(&pieces[i], sheets[i], Habits{})
		if p := pieces[i].Habits; p != nil {
			h.habits = *p
		}
		books[i], reports[i] = h.work()
		closes = closes && (books[i].Closes || pieces[i].Habits != nil)
		m = m.or(h.moot)
		gaveUp = gaveUp || h.gaveUp
	}
	if closes || gaveUp {
		return books, reports
	}
	for _, habits := range m.changes() {
		tried, said, ok := workAs(pieces, sheets, habits)
		if !ok || !supported(reports, habits, m) {
			continue
		}
		for i := range pieces {
			said[i] = slices.Insert(said[i], 0, asked(&pieces[i], habits, m.stated))
		}
		return tried, said
	}
	return books, reports
}

// sheetsOf gives each piece its sheet; sizes of one block share theirs.
func sheetsOf(pieces []Piece) []*sheet {
	sheets := make([]*sheet, len(pieces))
	for i := range pieces {
		if i > 0 && pieces[i].Block == pieces[i-1].Block {
			sheets[i] = sheets[i-1]
			continue
		}
		sheets[i] = newSheet(pieces[i].Block)
	}
	return sheets
}

// workAs works all sizes under a habit, as long as they close.
func workAs(pieces []Piece, sheets []*sheet, habits Habits) ([]*Book, [][]Report, bool) {
	books, reports := make([]*Book, len(pieces)), make([][]Report, len(pieces))
	for i := range pieces {
		h := newHand(&pieces[i], sheets[i], habits)
		books[i], reports[i] = h.work()
		if !books[i].Closes {
			return nil, nil, false
		}
	}
	return books, reports, true
}

// supported reports whether enough speaks for a reading. One that contradicts what the pattern states of its chains must mend the use
// of a row, or the counts of more than one, or a slip of one stitch could be explained away by it.
func supported(before [][]Report, habits Habits, m moot) bool {
	if habits.Chain == AsUsual || !m.stated {
		return true
	}
	for _, reports := range before {
		rows := 0
		for i := range reports {
			switch {
			case reports[i].Severity != source.Error:
			case reports[i].Rule != CountDiffers:
				return true
			default:
				rows++
			}
		}
		if rows >= 2 {
			return true
		}
	}
	return false
}

// asked is the query that names the changed habit.
func asked(p *Piece, habits Habits, stated bool) Report {
	r := Report{Rule: Habit, Severity: source.Query}
	for _, l := range p.Block.Lines {
		if row, ok := l.(*notation.Row); ok {
			r.Span = row.At()
			break
		}
	}
	switch {
	case habits.Repeats == InAll:
		r.Way = 0
	case habits.Chain == Counts:
		r.Way = 1
	case habits.Chain == CountsNot:
		r.Way = 2
	case habits.Chain == StandsUncounted:
		r.Way = 3
	case habits.Numbers == OnePlace:
		r.Way = 4
	case habits.Chains:
		r.Way = 5
	}
	if stated {
		r.Numbers[0] = 1
	}
	return r
}

// habit is whether a thing is read in the way of a rule that the piece may state: its own statement unless the habit was changed.
func (h *hand) habit(stated, other notation.RuleKind, changed bool) bool {
	if changed {
		return true
	}
	for i := len(h.rules) - 1; i >= 0; i-- {
		switch h.rules[i].Kind {
		case stated:
			return true
		case other:
			return false
		}
	}
	return false
}

// chainsAre reports whether each chain counts as a stitch.
func (h *hand) chainsAre() bool {
	return h.habits.Chains || h.chainsCount
}
