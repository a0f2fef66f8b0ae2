package proof

import (
	"maps"
	"slices"
	"strconv"
	"strings"

	"foundrow/internal/grade"
	"foundrow/internal/ledger"
	"foundrow/internal/notation"
)

// piecesOf returns the worked pieces of a grade: an entry for each printed line that is worked, with what stands after its last
// working in every size.
func piecesOf(g *grade.Grade) []Piece {
	out := make([]Piece, 0, len(g.Pieces))
	for _, p := range g.Pieces {
		out = append(out, Piece{Name: p.Name, Rows: rowsOf(g, p)})
	}
	return out
}

func rowsOf(g *grade.Grade, p grade.Piece) []Row {
	at := map[int]*Row{} // by the line of the block
	for size, book := range p.Books {
		if book == nil {
			continue
		}
		for _, printed := range book.Printed {
			row, there := at[printed.Line]
			if !there {
				row = &Row{
					Label: labelOf(g, printed), Side: [...]string{"", "RS", "WS"}[printed.Side], Line: g.Pattern.File.Place(printed.Span).Line,
					Stitches: make([]*int, len(p.Books)), Counts: map[string][]int{},
				}
				at[printed.Line] = row
			}
			if !printed.Open {
				count := printed.Count
				row.Stitches[size] = &count
			}
			for _, kind := range book.Counts(printed.Row) {
				name := kindName(g, kind)
				if row.Counts[name] == nil {
					row.Counts[name] = make([]int, len(p.Books))
				}
				row.Counts[name][size] += kind.N
			}
		}
	}
	rows := make([]Row, 0, len(at))
	for _, line := range slices.Sorted(maps.Keys(at)) { // a size may lack lines that others have
		rows = append(rows, *at[line])
	}
	return rows
}

// labelOf is what a line is called in the pattern, without its side, which stands by itself.
func labelOf(g *grade.Grade, p ledger.Printed) string {
	if p.Label == nil {
		return ""
	}
	label := strings.TrimRight(strings.TrimSpace(g.Pattern.File.Slice(p.Label.Span)), ":. ")
	if p.Label.Side != notation.NoSide {
		for _, side := range [...]string{"(RS)", "(WS)"} {
			label = strings.TrimSpace(strings.Replace(label, side, "", 1))
		}
	}
	return label
}

// kindName is what a kind is called in the pattern's own terms: "hdc", "ch-2 sp", "shell".
func kindName(g *grade.Grade, k ledger.Kindred) string {
	switch {
	case k.Unit != "":
		return k.Unit
	case k.Kind == ledger.Spaces:
		return "ch-" + strconv.Itoa(k.Chains) + " sp"
	}
	return k.Stitch.In(g.Pattern.Terms)
}
