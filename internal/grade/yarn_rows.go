package grade

import (
	"slices"

	"foundrow/internal/ledger"
	"foundrow/internal/notation"
	"foundrow/internal/pattern"
)

// An inked stretch is rows of a book that are worked in the same yarns, from a row up to another. No yarns: its words do not say.
type inked struct {
	from, to int
	yarns    []int // by their place in the pattern
}

// inks cuts the rows of a book where the yarn changes.
func (w *plan) inks(pc *Piece, book *ledger.Book, lines [][]int) []inked {
	if len(w.p.Yarns) == 1 {
		return []inked{{0, len(book.Rows), []int{0}}}
	}
	rows := make([][]int, len(book.Rows))
	for r := range rows {
		if l := book.Rows[r].Line; l >= 0 && l < len(lines) {
			rows[r] = lines[l]
		}
	}
	before := 0 // rows that repeat others have the words of those, and may have a yarn of their own
	for _, p := range book.Printed {
		if p.Row < before {
			continue
		}
		if again, is := pc.Rows.Lines[p.Line].(*notation.Again); is {
			if own := w.yarnNamed(again.Label.Yarn); own >= 0 {
				for r := before; r <= p.Row && r < len(rows); r++ {
					rows[r] = []int{own}
				}
			}
		}
		before = p.Row + 1
	}
	var out []inked
	for r := range rows {
		if n := len(out); n > 0 && slices.Equal(out[n-1].yarns, rows[r]) {
			out[n-1].to = r + 1
			continue
		}
		out = append(out, inked{r, r + 1, rows[r]})
	}
	return out
}

// workedRows are those of some rows that yarn goes into, a foundation and a row over nothing as often as others that are worked once.
// What a piece starts on was made before, in another piece or in none.
func workedRows(pc *Piece, rows []ledger.Row) []ledger.Row {
	out := make([]ledger.Row, 0, len(rows))
	for _, r := range rows {
		if r.Times == 0 && r.Line >= 0 && r.Line < len(pc.Rows.Lines) {
			switch l := pc.Rows.Lines[r.Line].(type) {
			case *notation.Foundation:
				r.Times = 1
			case *notation.Start:
				if len(l.Body) == 0 {
					continue
				}
				r.Times = 1
			}
		}
		out = append(out, r)
	}
	return out
}

// inksOfLines finds the yarns that each line of a piece is worked in: those it names, or the one in hand.
func (w *plan) inksOfLines(pc *Piece) [][]int {
	h := inkHand{w: w, now: none}
	out := make([][]int, len(pc.Rows.Lines))
	for i, line := range pc.Rows.Lines {
		h.used, h.chained = nil, nil
		switch l := line.(type) {
		case *notation.Foundation:
			h.follow(l.Body)
		case *notation.Start:
			h.follow(l.Pickup)
			h.follow(l.Body)
		case *notation.Row:
			h.take(l.Label.Yarn)
			h.follow(l.Body)
		case *notation.Again:
			h.take(l.Label.Yarn)
			h.follow(l.Then)
		}
		switch {
		case h.used != nil:
			out[i] = h.used
		case h.chained != nil:
			out[i] = h.chained
		case h.now != none:
			out[i] = []int{h.now}
		}
	}
	return out
}

// An inkHand has a yarn in hand and follows what rows say of it.
type inkHand struct {
	w             *plan
	now           int
	used, chained []int // what stitches were made in, and what chains were
}

// take takes up a yarn. A name that is none of the pattern's changes nothing: that the materials do not list it is another finding.
func (h *inkHand) take(name string) {
	if i := h.w.yarnNamed(name); i >= 0 {
		h.now = i
	}
}

func (h *inkHand) work(list *[]int) {
	if h.now != none && !slices.Contains(*list, h.now) {
		*list = append(*list, h.now)
	}
}

func (h *inkHand) follow(clauses []notation.Clause) {
	for _, c := range clauses {
		switch c := c.(type) {
		case *notation.Yarn:
			if c.How != "drop" {
				h.take(c.Name)
			}
		case *notation.Rejoin:
			h.take(c.Yarn)
		case *notation.Make:
			before := h.now
			h.take(c.Yarn)
			h.work(&h.used)
			h.now = before
		case *notation.Chain:
			h.work(&h.chained)
		case *notation.Evenly, *notation.AtEnds, *notation.Quoted, *notation.Like:
			h.work(&h.used)
		case *notation.Group:
			h.follow(c.Body)
			h.follow(c.Ending)
		case *notation.Repeat:
			h.follow(c.Body)
			h.follow(c.Ending)
		}
	}
}

// yarnNamed finds a yarn by what rows call it: its name, MC and CC for main and contrast, its colour; a word such as "Colour" may
// stand before it. It is none where there is no such yarn.
func (w *plan) yarnNamed(words string) int {
	if words == "" {
		return none
	}
	said := fields(lower(words))
	last := said[len(said)-1]
	for _, name := range []string{lower(words), last, map[string]string{"mc": "main", "cc": "contrast"}[last]} {
		if i := slices.IndexFunc(w.p.Yarns, func(y pattern.Yarn) bool { return name != "" && lower(y.Name.Text) == name }); i >= 0 {
			return i
		}
	}
	return slices.IndexFunc(w.p.Yarns, func(y pattern.Yarn) bool { return slices.Contains(fields(lower(y.Colour)), last) })
}

// lower returns ASCII letters in small ones.
func lower(s string) string {
	b := []byte(s)
	for i, c := range b {
		if c >= 'A' && c <= 'Z' {
			b[i] = c + 'a' - 'A'
		}
	}
	return string(b)
}
