package grade

import (
	"slices"

	"foundrow/internal/formula"
	"foundrow/internal/ledger"
	"foundrow/internal/measure"
	"foundrow/internal/notation"
	"foundrow/internal/source"
)

// needsOfPiece visits what a piece needs without naming it in a formula: the pieces whose edges its rows use, and the one whose
// rows it works.
func (w *plan) needsOfPiece(i int) {
	pc := w.piece(&w.entries[i])
	need := func(name string) {
		if t, there := w.byName[name+"."]; there && name != pc.Name {
			w.need(i, t)
		}
	}
	need(w.p.Pieces[pc.Blocks[0]].As.Text)
	for _, e := range pc.Rows.Edges {
		need(e.Piece)
	}
}

// piece returns the piece of an entry.
func (w *plan) piece(e *entry) *Piece { return &w.bench.pieces[w.bench.byName[e.name.Text]] }

// workPiece fills the values in the rows of a piece and works them, in all sizes together: what can be read in two ways is read
// alike in every size.
func (w *plan) workPiece(e *entry, cols []formula.Column) {
	pc := w.piece(e)
	pc.Books = make([]*ledger.Book, len(cols))
	for _, slot := range e.slots {
		for s := range cols {
			w.slotValues[slot][s], _ = w.lines[w.slots[slot]].checked.Work(&cols[s])
		}
	}
	if e.told {
		return
	}
	in := make([]ledger.Piece, len(cols))
	odd := misfits{lengths: map[int]bool{}, below: map[int][]int{}}
	for s := range cols {
		in[s] = ledger.Piece{
			Name: pc.Name, Block: pc.Rows, Sizes: w.p.Sizes.Names, Size: w.sizes[s], Turning: w.bench.turning, Specials: w.bench.specials,
			Reversed: w.p.Pieces[pc.Blocks[0]].Reversed,
			Count:    func(c notation.Count) (n int, absent, ok bool) { return w.countIn(c, s, &odd) },
			Edges:    func(piece, which string, copy int) (ledger.Edge, bool) { return w.edgeIn(piece, which, copy, s) },
			Rows:     func(length notation.Extent) (int, bool) { return w.rowsIn(pc, length, s) },
		}
	}
	books, reports := w.bench.work(w, e, pc, in)
	copy(pc.Books, books)
	w.findings = append(w.findings, w.placed(ledger.Findings(w.p.File, w.sizeNames(), reports))...)
	w.tellMisfits(e, &odd)
	for s, book := range books {
		for _, t := range book.Taken {
			name := edgeName{t.Piece, t.Which}
			w.bench.taken[s][name] = taken{t.Left, w.bench.taken[s][name].copies + t.Copies}
		}
	}
}

// misfits are values in rows that are no numbers of anything, by their slots.
type misfits struct {
	lengths map[int]bool  // lengths and masses
	below   map[int][]int // less than none, in these sizes
}

// tellMisfits tells of each value once. A row that holds for some sizes only is not asked in the others.
func (w *plan) tellMisfits(e *entry, odd *misfits) {
	for _, slot := range e.slots {
		l := &w.lines[w.slots[slot]]
		if odd.lengths[slot] {
			w.report(l.f.Span, "kinds", l.f.Text+" is "+kinds[l.checked.Kind]+", and a row wants a number here", "write "+l.f.Text+" in stitches at …, or in rows at …, rounded to whole")
		}
		if below := odd.below[slot]; len(below) > 0 {
			_, names := w.in(below)
			w.report(l.f.Span, "row-below-zero", "a row cannot have "+w.values(l.checked.Kind, w.slotValues[slot], below), "write the row for the other sizes only, or a formula that gives none at the least: max("+l.f.Text+", 0)")
			w.findings[len(w.findings)-1].Sizes = names
		}
	}
}

// placed says of findings that hold in some sizes only which these are, before what is so: "in L and 2X: row 3 leaves 63 sts".
func (w *plan) placed(found source.Findings) source.Findings {
	for i := range found {
		if f := &found[i]; len(f.Sizes) > 0 {
			f.Message = "in " + source.SizeNames(f.Sizes, w.sizeNames()) + ": " + f.Message
		}
	}
	return found
}

// sizeNames are the names of the sizes the plan is worked in.
func (w *plan) sizeNames() []string {
	if len(w.p.Sizes.Names) == 0 {
		return nil
	}
	names := make([]string, len(w.sizes))
	for s, size := range w.sizes {
		names[s] = w.p.Sizes.Names[size]
	}
	return names
}

// countIn gives the value of a count in a size. One that is no number of anything is remembered, to be told once.
func (w *plan) countIn(c notation.Count, s int, odd *misfits) (n int, absent, ok bool) {
	slot := c.Slot - 1
	if slot < 0 || slot >= len(w.slots) {
		return 0, false, false
	}
	switch w.lines[w.slots[slot]].checked.Kind {
	case formula.Length, formula.Mass:
		odd.lengths[slot] = true
		return 0, false, false
	}
	n, whole := w.slotValues[slot][s].Num.Int()
	if whole && n < 0 {
		if !slices.Contains(odd.below[slot], s) {
			odd.below[slot] = append(odd.below[slot], s)
		}
		return 0, false, false
	}
	return n, false, whole
}

// edgeIn gives an edge of a piece that is worked already: what is left of it, where something was taken, or that of the next of
// several made alike.
func (w *plan) edgeIn(piece, which string, copy, s int) (ledger.Edge, bool) {
	before, was := w.bench.taken[s][edgeName{piece, which}]
	if was && copy == 0 {
		return before.left, true
	}
	at, there := w.bench.byName[piece]
	if !there || copy > 0 && before.copies+copy >= w.p.Pieces[w.bench.pieces[at].Blocks[0]].Make {
		return ledger.Edge{}, false
	}
	if books := w.bench.pieces[at].Books; s < len(books) && books[s] != nil {
		return books[s].Edge(which)
	}
	return ledger.Edge{}, false
}

// rowsIn gives how many rows come nearest to a length, by the gauge of the rows that are worked to it.
func (w *plan) rowsIn(pc *Piece, length notation.Extent, s int) (int, bool) {
	one, known := rowHeight(w.gaugeAt(pc, length.Span))
	if !known {
		if length.Span != (source.Span{}) {
			w.noRowGauge(length.Span)
		}
		return 0, false
	}
	var long measure.Num
	if slot := length.Length.Slot - 1; slot >= 0 && slot < len(w.slots) {
		if w.lines[w.slots[slot]].checked.Kind != formula.Length {
			return 0, false
		}
		long = w.slotValues[slot][s].Num
	} else {
		unit, known := measure.ParseUnit(length.Unit)
		if !known {
			unit = measure.Inch
		}
		long = w.p.Tape.Garment(measure.Int(int64(length.Length.Plain)), unit)
	}
	rows, whole := measure.Nearest(long.Div(one), measure.Int(1), measure.Num{}).Int()
	return rows, whole && rows >= 0
}

// noRowGauge asks, once a place, for the gauge that a length is worked by.
func (w *plan) noRowGauge(at source.Span) {
	for _, f := range w.findings {
		if f.Rule == "no-row-gauge" && f.Place == w.p.File.Place(at) {
			return
		}
	}
	w.ask(at, "no-row-gauge", "nothing says how many rows make this length", "name a gauge with rows in the heading of the piece: rows NAME at GAUGE")
}

// fields are the words of a short text.
func fields(text string) []string {
	var words []string
	start := -1
	for i := 0; i <= len(text); i++ {
		space := i == len(text) || text[i] == ' ' || text[i] == ','
		switch {
		case space && start >= 0:
			words = append(words, text[start:i])
			start = -1
		case !space && start < 0:
			start = i
		}
	}
	return words
}
