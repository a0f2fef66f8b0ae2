package grade

import (
	"slices"

	"foundrow/internal/formula"
	"foundrow/internal/ledger"
	"foundrow/internal/measure"
	"foundrow/internal/notation"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

// A Piece is a worked piece: all the blocks of rows that bear its name, in every size.
type Piece struct {
	Name   string
	Blocks []int           // which pieces of the pattern they are, in order
	Rows   *notation.Block // the lines of all of them
	Books  []*ledger.Book  // by size
}

// A workbench has the pieces of a plan. A piece is an entry like any other: it needs the values its rows use and the pieces whose
// edges they name, so it is worked after those, and what is asked of it ("hem.rows") is worked after it.
type workbench struct {
	pieces   []Piece
	byName   map[string]int
	turning  []ledger.Turning
	specials []ledger.Special
	taken    []map[edgeName]taken // by size: what is left of an edge of which something was taken
	shelf    *shelf               // books that may be worked already; nil when nothing is tried twice
}

type edgeName struct{ piece, which string }

// taken is what is left of an edge, and how many of the pieces made alike were used up before it.
type taken struct {
	left   ledger.Edge
	copies int
}

// An ask is a value of a piece that a formula uses.
type ask struct{ piece, of string }

// enterSlots makes a line of every value that stands in the text or in rows, and an entry of every piece.
func (w *plan) enterSlots() {
	w.slots = make([]int, len(w.p.Slots))
	inPiece := make([]bool, len(w.p.Slots))
	w.bench.byName = make(map[string]int, len(w.p.Pieces))
	for i := range w.p.Pieces {
		written := &w.p.Pieces[i]
		name := written.Name.Text
		at, there := w.bench.byName[name]
		if !there {
			at = len(w.bench.pieces)
			w.bench.byName[name] = at
			w.bench.pieces = append(w.bench.pieces, Piece{Name: name})
			w.byName[name+"."] = w.add(blank(piece, Count, written.Name)) // a dot tells a piece from a count of its name
		}
		w.bench.pieces[at].Blocks = append(w.bench.pieces[at].Blocks, i)
		e := &w.entries[w.byName[name+"."]]
		for k, s := range w.p.Slots {
			if written.Body.From <= s.Span.From && s.Span.To <= written.Body.To {
				inPiece[k] = true
				e.slots = append(e.slots, k)
			}
		}
	}
	for i, s := range w.p.Slots {
		in := inText
		if inPiece[i] {
			in = inRows
		}
		w.slots[i] = w.line(s.Formula, in, "")
	}
	w.layBench()
}

// layBench puts together what is the same for all pieces, and each piece's lines.
func (w *plan) layBench() {
	for _, t := range w.p.Turning {
		if s, known := stitch.Word(t.Stitch.Text, w.p.Terms); known {
			w.bench.turning = append(w.bench.turning, ledger.Turning{Stitch: s.Name, Counts: t.Counts})
		}
	}
	for _, s := range w.p.Special {
		special := ledger.Special{Name: s.Abbr.Text, How: s.Worked}
		special.Uses, _ = s.Uses.Int()
		special.Makes, _ = s.Makes.Int()
		special.Tall, _ = stitch.Word(s.Height, w.p.Terms)
		w.bench.specials = append(w.bench.specials, special)
	}
	for i := range w.bench.pieces {
		pc := &w.bench.pieces[i]
		pc.Rows = w.linesOf(pc)
	}
}

// linesOf joins the blocks of a piece. One that is worked as another has the other's lines, but for a start and rows of its own.
func (w *plan) linesOf(pc *Piece) *notation.Block {
	own := &notation.Block{}
	for _, b := range pc.Blocks {
		if rows := w.p.Pieces[b].Rows; rows != nil {
			own.Lines = append(own.Lines, rows.Lines...)
			own.Edges = append(own.Edges, rows.Edges...)
		}
	}
	other, as := w.bench.byName[w.p.Pieces[pc.Blocks[0]].As.Text]
	if !as || w.bench.pieces[other].Name == pc.Name {
		return own
	}
	return own.Over(w.linesOf(&w.bench.pieces[other]))
}

// asks is what may be asked of a piece, with its kind and how many values stand in brackets behind it.
var asks = []struct {
	of    string
	kind  formula.Kind
	given int
}{
	{"stitches", formula.Stitches, 0},
	{"rows", formula.Rows, 0},
	{"height", formula.Length, 0},
	{"stitches_after", formula.Stitches, 1},
	{"left.row_ends", formula.Rows, 0},
	{"right.row_ends", formula.Rows, 0},
	{"foundation.stitches", formula.Stitches, 0},
}

// askOf settles a name with a dot.
func (w *plan) askOf(n formula.Name) (int, formula.Kind) {
	if _, there := w.byName[n.Text+"."]; !there {
		w.unknownPiece(n)
		return 0, formula.Unknown
	}
	var known []string
	for _, a := range asks {
		if a.of == n.Of && a.given == n.Given {
			w.asks = append(w.asks, ask{n.Text, n.Of})
			return len(w.asks) - 1, a.kind
		}
		known = append(known, a.of)
	}
	fix := "ask for " + source.List(known, "or")
	if near := source.Nearest(n.Of, known); near != "" {
		fix = "did you mean " + n.Text + "." + near + "?"
	}
	w.report(n.Span, "unknown-name", "a piece has no value named "+n.Of, fix)
	return 0, formula.Unknown
}

// answer returns what is asked of a piece that was worked in a size of the plan.
func (w *plan) answer(place, s int, given []measure.Num) formula.Figure {
	a := w.asks[place]
	lost := formula.Figure{Num: measure.Lost}
	pc := &w.bench.pieces[w.bench.byName[a.piece]]
	if s >= len(pc.Books) || pc.Books[s] == nil {
		return lost
	}
	book := pc.Books[s]
	whole := func(n int) formula.Figure { return formula.Figure{Num: measure.Int(int64(n))} }
	switch a.of {
	case "stitches":
		return whole(book.Count())
	case "rows":
		return whole(book.Worked())
	case "height":
		return w.height(pc, book)
	case "left.row_ends", "right.row_ends":
		return whole(book.RowEnds())
	case "foundation.stitches":
		if edge, there := book.Edge("foundation"); there {
			return whole(edge.Stitches())
		}
	case "stitches_after":
		if n, isWhole := given[0].Int(); isWhole {
			if count, there := book.StitchesAfter(n); there {
				return whole(count)
			}
		}
	}
	return lost
}

// gaugeAt returns the gauge of the block that a place of the file stands in.
func (w *plan) gaugeAt(pc *Piece, at source.Span) *pattern.Gauge {
	gauges := w.gauges
	for _, b := range pc.Blocks {
		written := &w.p.Pieces[b]
		if at.From < written.Body.From || at.From >= written.Body.To {
			continue
		}
		if i := slices.IndexFunc(gauges, func(g pattern.Gauge) bool { return g.Name.Text == written.Gauge.Text }); i >= 0 {
			return &gauges[i]
		}
	}
	if len(gauges) == 1 {
		return &gauges[0]
	}
	return nil
}

// rowHeight is the height of one row of the gauge's own stitch; false when the gauge says nothing of rows.
func rowHeight(g *pattern.Gauge) (measure.Num, bool) {
	if g == nil || g.Rows.Sign() == 0 {
		return measure.Lost, false
	}
	return gauge(*g).RowsOver.Div(g.Rows), true
}

// height adds up the rows of a piece, each by the gauge of its block: a row of a taller stitch is as much taller as the stitch is.
func (w *plan) height(pc *Piece, book *ledger.Book) formula.Figure {
	total := measure.Num{}
	for i := range book.Rows {
		r := &book.Rows[i]
		if r.Times == 0 {
			continue
		}
		g := w.gaugeAt(pc, pc.Rows.Lines[r.Line].At())
		one, known := rowHeight(g)
		if !known {
			return formula.Figure{Num: measure.Lost}
		}
		total = total.Add(one.Mul(measure.Ratio(int64(r.Times*r.Halves), int64(w.halves(g, r.Halves)))))
	}
	return formula.Figure{Num: total}
}

// halves is the height of the stitch a gauge was made in, in halves of a row of single crochet; otherwise where it is no single
// stitch, as when the gauge is of a stitch pattern.
func (w *plan) halves(g *pattern.Gauge, otherwise int) int {
	s, n := stitch.Read(fields(g.Stitch), w.p.Terms)
	if n == 0 {
		return otherwise
	}
	if e := s.Base().Find(); e != nil && e.Halves > 0 {
		return e.Halves
	}
	return otherwise
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

// enterSample makes lines of what the designer's hands made.
func (w *plan) enterSample() {
	w.sample = make([][2]int, len(w.p.Sample))
	for i, a := range w.p.Sample {
		about, _ := formula.Parse(w.p.File, a.Name.Span.From, a.Name.Text)
		w.sample[i] = [2]int{w.line(about, inText, a.Name.Text), w.line(a.Value, inText, a.Name.Text)}
	}
}
