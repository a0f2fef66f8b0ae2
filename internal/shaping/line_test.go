package shaping

import (
	"strconv"
	"strings"
	"testing"
)

// set prints a line as a page might: the numbers of all sizes side by side where they differ.
func set(words []Word) string {
	var b strings.Builder
	for _, w := range words {
		if w.Form == Text {
			b.WriteString(w.Text)
			continue
		}
		figures := make([]string, len(w.BySize))
		for i, n := range w.BySize {
			figures[i] = strconv.Itoa(n)
			if w.Form == Nth {
				figures[i] = ordinal(n)
			}
		}
		said := figures[0]
		if !all(w.BySize[1:], w.BySize[0]) {
			said += " (" + strings.Join(figures[1:], ", ") + ")"
		}
		switch w.Form {
		case Often:
			said += " times"
		case Counted:
			said += " " + plural(w.BySize[len(w.BySize)-1], w.Text)
		}
		b.WriteString(said)
	}
	return b.String()
}

// TestLineOfSizes: what differs between sizes are numbers in slots; a run that a size does not have is worked 0 times.
func TestLineOfSizes(t *testing.T) {
	for _, c := range []struct {
		wants []Want
		said  string
	}{
		{
			[]Want{{From: 60, To: 38, Over: 84, Each: []int{2}}, {From: 64, To: 40, Over: 86, Each: []int{2}}},
			"decrease 1 stitch at each end of every 7th row 4 (10) times, then of every 8th row 7 (2) times",
		},
		{ // the second divides, so it has one run
			[]Want{{From: 60, To: 38, Over: 84, Each: []int{2}}, {From: 60, To: 38, Over: 88, Each: []int{2}}},
			"decrease 1 stitch at each end of every 7th (8th) row 4 (11) times, then of every 8th row 7 (0) times",
		},
		{ // the first keeps rows plain at the start and needs no double decreases
			[]Want{{From: 60, To: 40, Over: 14, Each: []int{4, 2}, PlainAtStart: 4}, {From: 70, To: 40, Over: 10, Each: []int{4, 2}}},
			"work 4 (0) rows even, then decrease 1 (2) stitches at each end of every row 10 (5) times, then decrease 1 stitch at each end of every row 0 (5) times",
		},
		{
			[]Want{{From: 40, To: 40, Over: 10}, {From: 40, To: 40, Over: 12}},
			"work 10 (12) rows even",
		},
	} {
		var bySize []Schedule
		for _, w := range c.wants {
			s, refused := Solve(w)
			if refused != nil {
				t.Fatal(refused.Why)
			}
			bySize = append(bySize, s)
		}
		if said := set(Line(bySize, Manner{Ends: 2})); said != c.said {
			t.Errorf("says   %s\nwanted %s", said, c.said)
		}
	}
}

func TestSpreadLineOfSizes(t *testing.T) {
	var bySize []Spread
	for _, over := range []int{124, 126, 130} {
		s, refused := SolveSpread(SpreadWant{Over: over, Events: 14, Layout: Round})
		if refused != nil {
			t.Fatal(refused.Why)
		}
		bySize = append(bySize, s)
	}
	const want = "(7 (8, 8) sts, inc) 2 (14, 10) times, (8 (8, 9) sts, inc) 12 (0, 4) times"
	if said := set(SpreadLine(bySize, "inc")); said != want {
		t.Errorf("says   %s\nwanted %s", said, want)
	}
}
