package shaping

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"foundrow/internal/source"
)

func stepWants() *rapid.Generator[StepsWant] {
	return rapid.Custom(func(t *rapid.T) StepsWant {
		w := StepsWant{
			From: rapid.IntRange(1, 60).Draw(t, "from"), Ends: rapid.IntRange(0, 2).Draw(t, "ends"),
			First: rapid.SampledFrom([]Side{Right, Wrong, Either}).Draw(t, "first"),
		}
		open := rapid.IntRange(-2, 4).Draw(t, "open")
		for i := range rapid.IntRange(0, 5).Draw(t, "steps") {
			w.Steps = append(w.Steps, Step{
				Act: Act(rapid.IntRange(0, int(WorkEven)).Draw(t, "act")), Stitches: rapid.IntRange(0, 4).Draw(t, "stitches"),
				Every: rapid.IntRange(0, 4).Draw(t, "every"), On: Side(rapid.IntRange(0, 2).Draw(t, "on")),
				Times: rapid.IntRange(0, 4).Draw(t, "times"), ToEnd: i == open,
			})
		}
		if rapid.Bool().Draw(t, "over said") {
			w.Over = Say(rapid.IntRange(0, 40).Draw(t, "over"))
		}
		switch rapid.IntRange(0, 2).Draw(t, "to said") {
		case 1:
			w.To = Say(rapid.IntRange(0, 60).Draw(t, "to"))
		case 2: // what some number of times comes to, for one edge and for two
			s, _ := w.work(rapid.IntRange(0, 6).Draw(t, "worked"))
			w.To = Say(max(0, s.To))
		}
		return w
	})
}

// byHand works steps row by row and returns what each row does, and whether the stitches last.
func byHand(w StepsWant, times int) (changes []int, lasts bool) {
	n := w.From
	lasts = true
	row := func(change int, leaves bool) {
		changes = append(changes, change)
		if n <= 0 {
			lasts = false
		}
		n += change
		if n < 0 || n == 0 && !leaves {
			lasts = false
		}
	}
	for _, st := range w.Steps {
		if st.ToEnd {
			st.Times = times
		}
		change := -st.Stitches * max(1, w.Ends)
		if st.Act == Gain || st.Act == Toward && w.To.Said && w.To.N > w.From {
			change = -change
		}
		for range st.Times {
			if st.Act == WorkEven {
				row(0, true)
				continue
			}
			wait := max(1, st.Every) - 1
			if w.First != Either && st.On != Either {
				wait = 0
				if shows := len(changes)%2 == 0; shows != (w.First == st.On) { // the row to come shows the first side, or the other
					wait = 1
				}
			}
			for range wait {
				row(0, st.Act == Leave)
			}
			row(change, st.Act == Leave)
		}
	}
	return changes, lasts
}

// TestStepsAsByHand: steps come to what working them row by row comes to, and are refused only where that comes to nothing.
func TestStepsAsByHand(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := stepWants().Draw(t, "want")
		s, refused := SolveSteps(w)
		var want []int
		found := false
		for times := range 130 {
			changes, lasts := byHand(w, times)
			to := w.From
			for _, c := range changes {
				to += c
			}
			if !lasts || w.Over.Said && len(changes) > w.Over.N || w.To.Said && to != w.To.N {
				continue
			}
			if found && (w.open() < 0 || w.To.Said && w.Steps[w.open()].Act != WorkEven) {
				break // once is enough where more changes nothing
			}
			want, found = changes, to > 0 || !w.Over.Said || len(changes) == w.Over.N // or rows would be worked on nothing
		}
		if refused != nil {
			if found && refused.Reason != NoEnd && refused.Reason != BadEach {
				t.Fatalf("%+v is refused because %s, but comes to %v", w, refused.Why, want)
			}
			for _, o := range refused.Offers {
				if _, again := SolveSteps(w.With(o)); again != nil {
					t.Fatalf("%+v: %s is offered, but %s", w, o, again.Why)
				}
			}
			return
		}
		if !found {
			t.Fatalf("%+v is worked as %+v, but cannot be", w, s)
		}
		if w.Over.Said {
			want = append(want, make([]int, w.Over.N-len(want))...)
		}
		if got := s.Changes(); !slices.Equal(got, want) || s.Rows != len(want) {
			t.Fatalf("%+v:\n%v by hand\n%v as %+v", w, want, got, s)
		}
	})
}

func TestReadStep(t *testing.T) {
	one, none := Number{BySize: []int{1}}, Number{}
	ns := func(from, to int, n ...int) Number { return Number{BySize: n, Span: source.Span{From: from, To: to}} }
	for _, c := range []struct {
		text string
		want WrittenStep
	}{
		{"leave 4", WrittenStep{Act: Leave, Stitches: ns(6, 7, 4), Every: 1, Times: one}},
		{"leave 4 sts", WrittenStep{Act: Leave, Stitches: ns(6, 7, 4), Every: 1, Times: one}},
		{"2 every row, 3 times", WrittenStep{Stitches: ns(0, 1, 2), Every: 1, Times: ns(13, 14, 3)}},
		{"2, 3 times", WrittenStep{Stitches: ns(0, 1, 2), Every: 1, Times: ns(3, 4, 3)}},
		{"1 every other row, to the end", WrittenStep{Stitches: ns(0, 1, 1), Every: 2, ToEnd: true, Times: none}},
		{"Decrease 1 every 4th row twice", WrittenStep{Act: Lose, Stitches: ns(9, 10, 1), Every: 4, Times: ns(25, 30, 2)}},
		{"inc 1 st every 6 rnds, to end", WrittenStep{Act: Gain, Stitches: ns(4, 5, 1), Every: 6, ToEnd: true, Times: none}},
		{"1 every RS row, 5 (6, 6) (7, 8) times", WrittenStep{Stitches: ns(0, 1, 1), Every: 1, On: Right, Times: ns(16, 31, 5, 6, 6, 7, 8)}},
		{"1 every wrong-side row once", WrittenStep{Stitches: ns(0, 1, 1), Every: 1, On: Wrong, Times: one}},
		{"leave {under / 2}", WrittenStep{Act: Leave, Stitches: Number{Formula: source.Span{From: 7, To: 16}, Span: source.Span{From: 6, To: 17}}, Every: 1, Times: one}},
		{"work even 4 rows", WrittenStep{Act: WorkEven, Every: 1, Times: ns(10, 11, 4)}},
		{"work even for 4 rows", WrittenStep{Act: WorkEven, Every: 1, Times: ns(14, 15, 4)}},
		{"4 rows even", WrittenStep{Act: WorkEven, Every: 1, Times: ns(0, 1, 4)}},
		{"even to the end", WrittenStep{Act: WorkEven, Every: 1, ToEnd: true, Times: none}},
	} {
		f := source.NewFile("pattern.md", ">>"+c.text)
		got, findings := ReadStep(f, 2, c.text)
		if len(findings) > 0 {
			t.Errorf("%s: %s", c.text, findings[0].Message)
			continue
		}
		c.want.Span = source.Span{From: 2, To: 2 + len(c.text)}
		for _, n := range []*Number{&c.want.Stitches, &c.want.Times} {
			if n.Span != (source.Span{}) {
				n.Span = n.Span.Shift(2)
			}
			if n.IsFormula() {
				n.Formula = n.Formula.Shift(2)
				if said := f.Slice(n.Formula); said != "under / 2" {
					t.Errorf("%s: the formula is %q", c.text, said)
				}
			}
		}
		if !same(got, c.want) {
			t.Errorf("%s\n  is read as %+v\n  wanted     %+v", c.text, got, c.want)
		}
	}
}

func same(a, b WrittenStep) bool {
	number := func(a, b Number) bool {
		return slices.Equal(a.BySize, b.BySize) && a.Formula == b.Formula && a.Span == b.Span
	}
	return a.Act == b.Act && a.Every == b.Every && a.On == b.On && a.ToEnd == b.ToEnd && a.Span == b.Span && number(a.Stitches, b.Stitches) && number(a.Times, b.Times)
}

// TestStepMistakes: what is not a step is found where it goes wrong, marked here by ^.
func TestStepMistakes(t *testing.T) {
	for _, c := range []struct{ text, message, fix string }{
		{"leeve ^4", "", ""},
		{"^leeve 4", "a number is missing before `leeve`", "write leave 4, or 2 every row, 3 times"},
		{"2 every ^roww, 3 times", "`roww` has no place here in a step", "write row"},
		{"2 every row^", "how often is not said", "write 3 times, or to the end"},
		{"2 every row, 3^", "`times` is missing before the end", "write times"},
		{"2 every ^0 rows, 3 times", "every 0 rows is no interval", "write every row, or every other row"},
		{"leave 4 ^(5, 6", "a bracket of numbers is not closed before the end", "write 4 (5, 6)"},
		{"leave ^{under", "a brace is opened and not closed", "write }"},
		{"4 rows ^evn", "`evn` has no place here in a step", "write even"},
		{"1 every other row, to the ^ende", "`ende` has no place here in a step", "write end"},
		{"leave 4 ^& 5", "`&` has no place here in a step", "write steps such as leave 4, or 2 every row, 3 times, or 1 every other row, to the end"},
		{"^", "a number is missing before the end", "write leave 4, or 2 every row, 3 times"},
	} {
		text := strings.Replace(c.text, "^", "", 1)
		column := 1 + strings.Index(c.text, "^")
		_, findings := ReadStep(source.NewFile("pattern.md", text), 0, text)
		if len(findings) != 1 {
			t.Errorf("%s: %d findings", c.text, len(findings))
			continue
		}
		if c.message == "" {
			continue
		}
		f := findings[0]
		if strings.Contains(c.message, "not closed before the end") {
			column = 1 + len(text)
		}
		if f.Message != c.message || f.Fix != c.fix || f.Place.Column != column || f.Rule != "step" {
			t.Errorf("%s\n  says   %d: %s; %s\n  wanted %d: %s; %s", c.text, f.Place.Column, f.Message, f.Fix, column, c.message, c.fix)
		}
	}
}

func TestStepOfSize(t *testing.T) {
	text := "1 every row, {n} times"
	w, _ := ReadStep(source.NewFile("pattern.md", text), 0, text)
	value := func(s source.Span) (int, bool) { return 7, text[s.From:s.To] == "n" }
	if st, ok := w.In(3, value); !ok || st.Times != 7 || st.Stitches != 1 {
		t.Errorf("the step is %+v", st)
	}
	text = "leave 4 (5, 6)"
	w, _ = ReadStep(source.NewFile("pattern.md", text), 0, text)
	if st, ok := w.In(2, value); !ok || st.Stitches != 6 {
		t.Errorf("the third size leaves %+v", st)
	}
	if _, ok := w.In(3, value); ok {
		t.Error("a list of three has an entry for a fourth size")
	}
	if lists := w.Lists(); len(lists) != 1 || len(lists[0].BySize) != 3 {
		t.Errorf("the lists are %+v", lists)
	}
}

func FuzzReadStep(f *testing.F) {
	for _, text := range []string{"leave 4", "2 every row, 3 (4, 5) times", "1 every other row, to the end", "even {a} rows", "work 4 rows even", "1 every rs row, {", "½ every\trow"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		file := source.NewFile("pattern.md", text)
		w, findings := ReadStep(file, 0, text)
		for _, n := range []Number{w.Stitches, w.Times} {
			if n.Span.From < 0 || n.Span.To > len(text) || n.Formula.From > n.Formula.To || n.Formula.To > len(text) {
				t.Errorf("%q: a number stands at %v", text, n.Span)
			}
		}
		if len(findings) > 1 {
			t.Errorf("%q: %d findings", text, len(findings))
		}
		if st, ok := w.In(0, func(source.Span) (int, bool) { return 2, true }); ok && len(findings) == 0 {
			SolveSteps(StepsWant{From: 40, Over: Say(30), Steps: []Step{st}})
		}
	})
}
