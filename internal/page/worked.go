package page

import (
	"slices"
	"strconv"

	"foundrow/internal/grade"
	"foundrow/internal/ledger"
	"foundrow/internal/notation"
	"foundrow/internal/pattern"
	"foundrow/internal/prose"
)

// A workedPiece is a piece with what is known of its lines from having been worked, which is the same in every edition.
type workedPiece struct {
	rows   []notation.Line
	blocks []int           // of the pattern
	holds  [][]bool        // by line: the sizes that it is for; nil where it is for all
	counts []prose.Line    // by line: what is worked, where that changes and nothing is claimed
	sides  []notation.Side // by line: the side that faces, where it follows from the rows that say so
}

// workedPieces puts together the pieces of a grade. Blocks that were never worked, because of a finding, are pieces by themselves.
func workedPieces(g *grade.Grade, slots *slotList) []*workedPiece {
	out := make([]*workedPiece, 0, len(g.Pieces))
	seen := make([]bool, len(g.Pattern.Pieces))
	add := func(blocks []int, rows *notation.Block, books []*ledger.Book) {
		w := &workedPiece{blocks: blocks}
		if rows != nil {
			w.rows = rows.Lines
		}
		w.counts, w.sides = make([]prose.Line, len(w.rows)), make([]notation.Side, len(w.rows))
		w.holds = holdings(w.rows, g.Pattern.Sizes.Names)
		if len(books) > 0 && !slices.Contains(books, nil) {
			w.know(books, slots)
		}
		out = append(out, w)
	}
	for i := range g.Pieces {
		add(g.Pieces[i].Blocks, g.Pieces[i].Rows, g.Pieces[i].Books)
		for _, block := range g.Pieces[i].Blocks {
			seen[block] = true
		}
	}
	for block, there := range seen {
		if !there {
			add([]int{block}, g.Pattern.Pieces[block].Rows, nil)
		}
	}
	return out
}

// blockOf returns the block that a line stands in: the first for what it has from another piece.
func (w *workedPiece) blockOf(p *pattern.Pattern, l notation.Line) int {
	at := l.At().From
	for _, block := range w.blocks[1:] {
		if body := p.Pieces[block].Body; body.From <= at && at < body.To {
			return block
		}
	}
	return w.blocks[0]
}

// holdings are the sizes that each line is for. "All other sizes" are those that the lines next before it do not name.
func holdings(rows []notation.Line, sizes []string) [][]bool {
	out := make([][]bool, len(rows))
	named := make([]bool, len(sizes))
	for i, l := range rows {
		only := l.For()
		switch {
		case only.Rest:
			out[i] = make([]bool, len(sizes))
			for s := range sizes {
				out[i][s] = !named[s]
			}
		case len(only.Names) > 0:
			out[i] = make([]bool, len(sizes))
			for _, s := range only.Indexes(sizes) {
				out[i][s], named[s] = true, true
			}
		default:
			clear(named)
		}
	}
	return out
}

// know takes counts and sides from the books.
func (w *workedPiece) know(books []*ledger.Book, slots *slotList) {
	sizes := len(books)
	at := make([]int, len(w.rows)*sizes) // one more than the place in the book of what is printed of a line
	for s, book := range books {
		for k := range book.Printed {
			at[book.Printed[k].Line*sizes+s] = k + 1
		}
	}
	for i, l := range w.rows {
		own := at[i*sizes : (i+1)*sizes]
		if !claims(l) {
			w.counts[i] = worksOut(books, own, w.holds[i], slots)
		}
		if row, is := l.(*notation.Row); is && !row.Label.Round && row.Label.Side == notation.NoSide && len(row.Label.Numbers)+len(row.Label.Words) > 0 {
			w.sides[i] = facing(books, own)
		}
	}
}

// claims reports whether a line says itself how many stitches there are after it.
func claims(l notation.Line) bool {
	switch l := l.(type) {
	case *notation.Row:
		return len(l.Claims) > 0
	case *notation.Again:
		return len(l.Claims) > 0 || l.Extent.Kind == notation.UntilLeft || l.Extent.Kind == notation.UntilMade
	}
	return false
}

// worksOut words how many stitches and spaces there are after a line, where that differs in some size from what there was after the
// line before. It is nothing where some size has not worked it.
func worksOut(books []*ledger.Book, at []int, holds []bool, slots *slotList) prose.Line {
	stitches, made := make([]entry, len(books)), make([][]ledger.Kindred, len(books))
	changed := false
	for s, k := range at {
		if k == 0 {
			stitches[s] = entry{absent, -1}
			continue
		}
		printed := books[s].Printed
		q := &printed[k-1]
		if q.Open || q.Count < 0 {
			return nil
		}
		stitches[s], made[s] = entry{strconv.Itoa(q.Count), q.Count}, spaces(books[s], q.Row)
		if k == 1 {
			changed = changed || q.Changed
		} else {
			before := &printed[k-2]
			changed = changed || q.Count != before.Count || !slices.Equal(made[s], spaces(books[s], before.Row))
		}
	}
	if !changed {
		return nil
	}
	line := appendCount(nil, "(", held(stitches, holds), " st", slots)
	for _, chains := range lengthsOf(made) {
		line = appendCount(line, ", ", held(ofLength(made, at, chains), holds), " ch-"+strconv.Itoa(chains)+" sp", slots)
	}
	return append(line, prose.Text(")"))
}

// appendCount adds a count to a line, behind other words.
func appendCount(line prose.Line, words string, entries []entry, one string, slots *slotList) prose.Line {
	count := agreeing(entries, one, one+"s")
	if count.BySize == nil {
		return append(line, prose.Text(words+count.All))
	}
	return append(line, prose.Text(words), prose.Slot{Index: slots.add(count)})
}

// spaces are how many chain spaces of each length a row makes.
func spaces(book *ledger.Book, row int) []ledger.Kindred {
	if row < 0 {
		return nil
	}
	made := book.Rows[row].Made
	for i := range made {
		if made[i].Kind == ledger.Spaces {
			return slices.DeleteFunc(book.Counts(row), func(k ledger.Kindred) bool { return k.Kind != ledger.Spaces })
		}
	}
	return nil
}

// lengthsOf are the lengths of the spaces that some size makes, in chains.
func lengthsOf(made [][]ledger.Kindred) []int {
	var lengths []int
	for _, kinds := range made {
		for _, k := range kinds {
			if !slices.Contains(lengths, k.Chains) {
				lengths = append(lengths, k.Chains)
			}
		}
	}
	return lengths
}

// ofLength is how many spaces of one length each size makes.
func ofLength(made [][]ledger.Kindred, at []int, chains int) []entry {
	entries := make([]entry, len(made))
	for s, kinds := range made {
		n := 0
		for _, k := range kinds {
			if k.Chains == chains {
				n += k.N
			}
		}
		if entries[s] = (entry{strconv.Itoa(n), n}); at[s] == 0 {
			entries[s] = entry{absent, -1}
		}
	}
	return entries
}

// facing is the side that a single row is worked on, in every size that has it.
func facing(books []*ledger.Book, at []int) notation.Side {
	side := notation.NoSide
	for s, k := range at {
		if k == 0 {
			continue
		}
		q := &books[s].Printed[k-1]
		if q.Rows != 1 || q.Side == notation.NoSide || side != notation.NoSide && q.Side != side {
			return notation.NoSide
		}
		side = q.Side
	}
	return side
}
