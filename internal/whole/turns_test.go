package whole

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"foundrow/internal/formula"
	"foundrow/internal/measure"
	"foundrow/internal/page"
)

// A turn says what became of printed words: old words, and the new ones of everything that was printed so.
type turn map[string][]string

func (turns turn) add(old, now string) { turns[old] = append(turns[old], now) }

// news are all the new words.
func (turns turn) news() map[string]bool {
	all := map[string]bool{}
	for _, now := range turns {
		for _, words := range now {
			all[words] = true
		}
	}
	return all
}

// became reports whether what was printed may have become that: one of what was so printed is so now, or it is no value at all.
func became(turns turn, old, now string) bool {
	if turns[old] == nil {
		return old == now
	}
	return slices.Contains(turns[old], now)
}

// turnsOf pairs what each value was with what it is: those that grade --json prints, the stitches of every row, the formulas in the text and
// in the rows, and yarn. Measurements of the thing made stand in the cells of the table, a size each.
func turnsOf(t *testing.T, before, after printing) (lists, cells turn) {
	t.Helper()
	lists, cells = turn{}, turn{}
	tape := before.grade.Pattern.Tape
	pair := func(old, now []formula.Value) {
		a, b := worded(old, tape), worded(now, tape)
		for i := range min(len(a), len(b)) {
			lists.add(a[i], b[i])
		}
	}
	for _, name := range slices.Sorted(maps.Keys(before.graded.Values)) {
		pair(valuesOf(t, before.graded.Values[name]), valuesOf(t, after.graded.Values[name]))
	}
	for i, piece := range before.graded.Pieces {
		for k, row := range piece.Rows {
			pair(stitchesOf(row), stitchesOf(after.graded.Pieces[i].Rows[k]))
		}
	}
	for i := range before.grade.Slots {
		pair(before.grade.Slots[i], after.grade.Slots[i])
	}
	for i, yarn := range before.yarns {
		for k := range yarn.Needs {
			a, b := list.FindAllString(yarn.Needs[k].All, -1), list.FindAllString(after.yarns[i].Needs[k].All, -1)
			for n := range min(len(a), len(b)) {
				lists.add(a[n], b[n])
			}
		}
	}
	for i, f := range before.grade.Finished {
		now := after.grade.Finished[i]
		for size := range f.Made {
			cells.add(cell(f.Made[size], tape), cell(now.Made[size], tape))
			if f.Ease != nil {
				cells.add(signed(f.Ease[size], tape), signed(now.Ease[size], tape))
			}
		}
	}
	return lists, cells
}

// worded are the lists that a value is printed as: one of counts, two of lengths.
func worded(bySize []formula.Value, tape measure.Tape) []string {
	first, second := make([]string, len(bySize)), make([]string, len(bySize))
	for i, v := range bySize {
		figure := page.Figure(v, tape)
		if a, b, both := strings.Cut(figure, " ["); both {
			figure = strings.Fields(a)[0]
			second[i] = strings.Fields(b)[0]
		}
		first[i] = figure
	}
	if second[0] == "" {
		return []string{page.List(first)}
	}
	return []string{page.List(first), page.List(second)}
}

// valuesOf reads a value of the JSON.
func valuesOf(t *testing.T, v valueJSON) []formula.Value {
	t.Helper()
	kinds := map[string]formula.Kind{}
	for k := formula.Unknown; k <= formula.Rows; k++ {
		kinds[k.String()] = k
	}
	out := make([]formula.Value, len(v.BySize))
	for i, s := range v.BySize {
		n, ok := measure.Parse(*s)
		if kinds[v.Kind] == formula.Unknown || !ok {
			t.Fatalf("%s is no number of the kind %s", *s, v.Kind)
		}
		out[i] = formula.Value{Kind: kinds[v.Kind], Num: n}
	}
	return out
}

// stitchesOf are the stitches of a row of the JSON; a size without the row has a dash.
func stitchesOf(r rowJSON) []formula.Value {
	out := make([]formula.Value, len(r.Stitches))
	for i, n := range r.Stitches {
		out[i] = formula.Value{Kind: formula.Stitches, Num: measure.Lost}
		if n != nil {
			out[i].Num = measure.Int(int64(*n))
		}
	}
	return out
}

// cell is a length as the table of sizes prints it.
func cell(n measure.Num, tape measure.Tape) string {
	first, second, _ := strings.Cut(page.Figure(formula.Value{Kind: formula.Length, Num: n}, tape), " [")
	return first + " " + strings.Fields(second)[0] + " in"
}

// signed is an ease as the table of sizes prints it.
func signed(n measure.Num, tape measure.Tape) string {
	if n.Sign() <= 0 {
		return cell(n, tape)
	}
	first, second, _ := strings.Cut(cell(n, tape), " cm ")
	return "+" + first + " cm +" + second
}
