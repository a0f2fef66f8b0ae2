package watch

import (
	"slices"
	"strings"

	"foundrow/internal/formula"
	"foundrow/internal/grade"
	"foundrow/internal/measure"
	"foundrow/internal/page"
	"foundrow/internal/pattern"
	"foundrow/internal/prose"
	"foundrow/internal/site"
)

// A record is what a pattern says in every size, as plain strings: what one save is compared with the next by, and what is shown
// with all sizes side by side.
type record struct {
	sizes  []string // their names; one, which is empty, for a pattern of one size
	values []figure
	pieces []piece
}

// A figure is one value in every size, or in all at once where they agree.
type figure struct {
	name   string // "hem", "chest as made", "hem.rows"
	unit   string // "cm", "g"; empty for counts
	bySize []string
}

// A piece is a block of rows.
type piece struct {
	title string // "Left front"
	rows  []row
}

// A row is one printed line of a piece.
type row struct {
	key    string   // its label without the figures that are values: what it is known by
	label  string   // "Row 3", "Rows 4 and 6"; empty for a line without one
	bySize []string // what it says, its label left out
}

// in returns what is said in one size where each has its own, or all say the same.
func in(bySize []string, size int) string {
	if len(bySize) == 1 {
		return bySize[0]
	}
	return bySize[size]
}

// together returns one string for all where they agree.
func together(bySize []string) []string {
	for _, s := range bySize {
		if s != bySize[0] {
			return bySize
		}
	}
	return bySize[:min(1, len(bySize))]
}

// recordOf records what came of a manuscript. A plain page with values in it has no sizes, and no rows but those of its examples.
func recordOf(w *site.Worked) *record {
	r := &record{sizes: w.Grade.Sizes}
	if len(r.sizes) == 0 {
		r.sizes = []string{""}
	}
	tape := w.Grade.Pattern.Tape
	unit := unitOf(tape)
	for _, v := range w.Grade.Values {
		if v.Role != grade.Body || uses(w.Grade.Pattern, v.Name) {
			r.addValue(v, tape)
		}
	}
	for _, f := range w.Grade.Finished {
		texts := make([]string, len(f.Made))
		for i, n := range f.Made {
			texts[i] = number(n, 2)
		}
		r.add(figure{f.Name + " as made", unit, texts})
	}
	for _, p := range w.Grade.Pieces {
		r.addPiece(p)
	}
	for _, p := range w.Page.Pieces {
		r.pieces = append(r.pieces, r.piece(p, w.Page.Slots))
	}
	return r
}

// uses reports whether a pattern speaks of a body measurement: a size table has many more.
func uses(p *pattern.Pattern, body string) bool {
	return slices.ContainsFunc(p.Measures, func(m pattern.Measure) bool { return m.Body.Text == body }) ||
		slices.ContainsFunc(p.Body, func(d pattern.Definition) bool { return d.Name.Text == body })
}

func unitOf(tape measure.Tape) string {
	if tape.Unit == measure.Inch {
		return "in"
	}
	return "cm"
}

// add adds a figure that is known in every size.
func (r *record) add(f figure) {
	if len(f.bySize) == len(r.sizes) {
		f.bySize = together(f.bySize)
		r.values = append(r.values, f)
	}
}

func (r *record) addValue(v grade.Value, tape measure.Tape) {
	f := figure{name: v.Name, bySize: make([]string, len(v.BySize))}
	places, yarn := 4, v.Role == grade.Amount && v.Kind == formula.Length
	switch {
	case yarn:
		f.unit, places = "m", 2
	case v.Kind == formula.Length:
		f.unit, places = unitOf(tape), 2
	case v.Kind == formula.Mass:
		f.unit, places = "g", 2
	}
	for i, v := range v.BySize {
		n := v.Num
		if yarn { // yarn is run off in metres, whatever the tape
			n = tape.BodyInCentimetres(n).Div(measure.Int(100))
		}
		f.bySize[i] = number(n, places)
	}
	r.add(f)
}

// addPiece adds how many rows a worked piece comes to and what it ends with.
func (r *record) addPiece(p grade.Piece) {
	if slices.Contains(p.Books, nil) {
		return
	}
	ends, rows := make([]string, len(p.Books)), make([]string, len(p.Books))
	for i, book := range p.Books {
		ends[i] = measure.Int(int64(book.Stitches())).String()
		rows[i] = measure.Int(int64(book.Worked())).String()
	}
	r.add(figure{p.Name + ".rows", "", rows})
	r.add(figure{p.Name + ".stitches", "", ends})
}

// number prints a value: exactly where it is a fraction that one can picture, otherwise to some places.
func number(n measure.Num, places int) string {
	if n.IsLost() {
		return "?"
	}
	if n.Under() <= 8 && places > 2 {
		return n.String()
	}
	return n.Decimal(places)
}

func (r *record) piece(p page.Piece, slots []page.Slot) piece {
	out := piece{title: p.Title}
	for _, l := range p.Lines {
		this := row{key: l.Label.Words(nil), label: words(l.Label, slots, -1), bySize: make([]string, len(r.sizes))}
		if l.Side != "" {
			this.label = strings.TrimSpace(this.label + " (" + l.Side + ")")
		}
		for size := range r.sizes {
			parts := [...]string{words(l.Only, slots, size), words(l.Text, slots, size), words(l.Count, slots, size)}
			if parts[0] != "" {
				parts[0] += ":"
			}
			this.bySize[size] = strings.Join(slices.DeleteFunc(parts[:], func(s string) bool { return s == "" }), " ")
		}
		this.bySize = together(this.bySize)
		out.rows = append(out.rows, this)
	}
	return out
}

// words are the plain words of a line in one size, or with -1 in all at once.
func words(line prose.Line, slots []page.Slot, size int) string {
	return strings.TrimSpace(line.Words(func(slot int) string {
		switch {
		case slot >= len(slots):
			return "?"
		case size < 0:
			return slots[slot].All
		}
		return slots[slot].In(size)
	}))
}
