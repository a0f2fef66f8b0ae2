package grade

import (
	"foundrow/internal/formula"
	"foundrow/internal/measure"
	"foundrow/internal/prose"
)

// pieces works the rows of a pattern. A piece is an entry like any other: it needs the values its rows use, so it is worked
// after them, and what is asked of it ("hem.rows") is worked after it. Pieces that go on where another stopped are one entry
// with it.
type pieces interface {
	// kind says what is asked of a piece, given so many values in brackets; false when there is no such thing.
	kind(name, of string, given int) (formula.Kind, bool)
	// work works a piece in one size. The values of its slots are told by their place among the slots of the pattern.
	work(name string, size int, slot func(int) formula.Value)
	// ask returns what is asked of a piece that was worked in that size.
	ask(name, of string, size int, given []measure.Num) formula.Figure
}

// An ask is a value of a piece that a formula uses.
type ask struct{ piece, of string }

// enterSlots makes a line of every value that stands in the text or in rows, and an entry of every piece.
func (w *plan) enterSlots() {
	w.slots = make([]int, len(w.p.Slots))
	inPiece := make([]bool, len(w.p.Slots))
	byPiece := make(map[string]int, len(w.p.Pieces))
	for i := range w.p.Pieces {
		pc := &w.p.Pieces[i]
		e, there := byPiece[pc.Name.Text]
		if !there {
			e = w.add(blank(piece, Count, pc.Name))
			byPiece[pc.Name.Text] = e
			w.byName[pc.Name.Text+"."] = e // a dot tells a piece from a count of its name
		}
		for _, l := range pc.Lines {
			slotsOf(l.Lead, inPiece, &w.entries[e].slots)
			slotsOf(l.Line, inPiece, &w.entries[e].slots)
		}
	}
	for i, s := range w.p.Slots {
		in := inText
		if inPiece[i] {
			in = inRows
		}
		w.slots[i] = w.line(s.Formula, in, "")
	}
}

// slotsOf collects the slots of a line.
func slotsOf(l prose.Line, seen []bool, slots *[]int) {
	for _, part := range l {
		switch part := part.(type) {
		case prose.Slot:
			if part.Index < len(seen) && !seen[part.Index] {
				seen[part.Index] = true
				*slots = append(*slots, part.Index)
			}
		case *prose.Marked:
			slotsOf(part.Line, seen, slots)
		case *prose.Link:
			slotsOf(part.Line, seen, slots)
		case *prose.Image:
			slotsOf(part.Alt, seen, slots)
		}
	}
}

// askOf settles a name with a dot.
func (w *plan) askOf(n formula.Name) (int, formula.Kind) {
	if _, there := w.byName[n.Text+"."]; !there {
		w.unknownPiece(n)
		return 0, formula.Unknown
	}
	if w.rows == nil {
		w.report(n.Span, "not-measured", n.Text+"."+n.Of+" is a value of the piece "+n.Text+", and pieces are not measured", "give the number as a count of its own under [counts]")
		return 0, formula.Unknown
	}
	kind, known := w.rows.kind(n.Text, n.Of, n.Given)
	if !known {
		w.report(n.Span, "unknown-name", "a piece has no value named "+n.Of, "")
		return 0, formula.Unknown
	}
	w.asks = append(w.asks, ask{n.Text, n.Of})
	return len(w.asks) - 1, kind
}

// enterSample makes lines of what the designer's hands made.
func (w *plan) enterSample() {
	w.sample = make([][2]int, len(w.p.Sample))
	for i, a := range w.p.Sample {
		about, _ := formula.Parse(w.p.File, a.Name.Span.From, a.Name.Text)
		w.sample[i] = [2]int{w.line(about, inText, a.Name.Text), w.line(a.Value, inText, a.Name.Text)}
	}
}

// pin gives counts the designer's own choices.
func (w *plan) pin() {
	for _, p := range w.p.Pins {
		i, there := w.byName[p.Name.Text]
		if !there || w.entries[i].role != Count || w.entries[i].what != defined {
			w.noCount(p.Name, there)
			continue
		}
		w.entries[i].pins = append(w.entries[i].pins, w.parts(p.Parts, inRows, p.Name.Text)...)
	}
}
