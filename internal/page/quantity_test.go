package page

import (
	"slices"
	"strings"
	"testing"

	"foundrow/internal/formula"
	"foundrow/internal/measure"
	"foundrow/internal/pattern"
)

var (
	cmTape   = measure.Tape{}
	inchTape = measure.Tape{Unit: measure.Inch}
	exact    = measure.Tape{Inch: measure.InternationalInch}
)

// valuesOf makes values of a kind from decimal figures, one a size.
func valuesOf(kind formula.Kind, figures string) []formula.Value {
	var out []formula.Value
	for f := range strings.FieldsSeq(figures) {
		out = append(out, formula.Value{Num: num(f), Kind: kind})
	}
	return out
}

// num reads a decimal or a fraction, "95.5" or "383/4"; "lost" is a number that could not be worked out.
func num(s string) measure.Num {
	if s == "lost" {
		return measure.Lost
	}
	over, under, fraction := strings.Cut(s, "/")
	n, _ := measure.Parse(over)
	if d, ok := measure.Parse(under); fraction && ok {
		n = n.Div(d)
	}
	return n
}

func TestFigures(t *testing.T) {
	for _, c := range []struct {
		kind          formula.Kind
		tape          measure.Tape
		figures, want string
	}{
		{formula.Stitches, cmTape, "62 68 74", "62 (68, 74)"},
		{formula.Rows, cmTape, "40 40", "40"},
		{formula.Stitches, cmTape, "765/8 98", "95 5/8 (98)"},
		{formula.Stitches, cmTape, "74.2 80", "74.2 (80)"},
		{formula.Number, cmTape, "0.9", "0.9"},
		{formula.Number, cmTape, "-3", "−3"},
		{formula.Length, cmTape, "54 55 57", "54 (55, 57) cm [21½ (22, 22¾) inches]"},
		{formula.Length, cmTape, "54 54.2", "54 cm [21½ (21¾) inches]"},
		{formula.Length, cmTape, "54", "54 cm [21½ inches]"},
		{formula.Length, cmTape, "54.2", "54 cm [21¾ inches]"},
		{formula.Length, cmTape, "2.5", "2.5 cm [1 inch]"},
		{formula.Length, cmTape, "1.25", "1.5 cm [½ inch]"},
		{formula.Length, cmTape, "-5", "−5 cm [−2 inches]"},
		{formula.Length, inchTape, "36 60", "36 (60) inches [90 (150) cm]"},
		{formula.Length, exact, "90 150", "90 (150) cm [35½ (59) inches]"},
		{formula.Mass, cmTape, "50", "50 g [1.8 oz]"},
		{formula.Mass, cmTape, "415 440 480", "415 (440, 480) g [14.6 (15.5, 16.9) oz]"},
		{formula.Unknown, cmTape, "0", "?"},
		{formula.Stitches, cmTape, "62 lost 74", "62 (?, 74)"},
		{formula.Length, cmTape, "54 lost", "54 (?) cm [21½ (?) inches]"},
	} {
		if got := figures(valuesOf(c.kind, c.figures), c.tape).All; got != c.want {
			t.Errorf("%s of %s: %q, want %q", c.figures, c.kind, got, c.want)
		}
	}
}

func TestFiguresBySize(t *testing.T) {
	s := figures(valuesOf(formula.Length, "54 55 57"), cmTape)
	if want := []string{"54 cm [21½ inches]", "55 cm [22 inches]", "57 cm [22¾ inches]"}; !slices.Equal(s.BySize, want) {
		t.Errorf("by size: %q, want %q", s.BySize, want)
	}
	if s := figures(valuesOf(formula.Stitches, "40 40"), cmTape); s.BySize != nil || s.In(1) != "40" {
		t.Errorf("sizes that agree: %q", s)
	}
}

func TestForms(t *testing.T) {
	for _, c := range []struct {
		form          pattern.SlotForm
		noun          string
		kind          formula.Kind
		figures, want string
		third         string // what the last size reads by itself
	}{
		{pattern.Figure, "", formula.Stitches, "62 68 74", "62 (68, 74)", "74"},
		{pattern.Ordinal, "", formula.Stitches, "38 40 42", "38th (40th, 42nd)", "42nd"},
		{pattern.Ordinal, "", formula.Number, "38 38 38", "38th", "38th"},
		{pattern.Times, "", formula.Rows, "1 2 3", "1 (2, 3) times", "3 times"},
		{pattern.Times, "", formula.Number, "3 2 1", "3 (2, 1) times", "once"},
		{pattern.Times, "", formula.Number, "2 2 2", "twice", "twice"},
		{pattern.Counted, "sts", formula.Stitches, "3 2 1", "3 (2, 1) sts", "1 st"},
		{pattern.Counted, "sts", formula.Stitches, "1 1 1", "1 st", "1 st"},
		{pattern.Counted, "rounds", formula.Rows, "1 2 1", "1 (2, 1) rounds", "1 round"},
		{pattern.Counted, "", formula.Rows, "4 5 6", "4 (5, 6) rows", "6 rows"},
		{pattern.Ordinal, "", formula.Length, "54 55 57", "54 (55, 57) cm [21½ (22, 22¾) inches]", "57 cm [22¾ inches]"},
	} {
		s := fill(pattern.Slot{Form: c.form, Noun: c.noun}, valuesOf(c.kind, c.figures), cmTape)
		if s.All != c.want || s.In(2) != c.third {
			t.Errorf("form %d of %s: %q and %q, want %q and %q", c.form, c.figures, s.All, s.In(2), c.want, c.third)
		}
	}
}

func TestYarnLengths(t *testing.T) {
	// 1 yard = 0.9144 m: international yard and pound agreement, 1959.
	if got, want := yarnLengths([]measure.Num{num("120"), num("950")}).All, "120 (950) m [131 (1039) yd]"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// Bodies cross at 2.54 and what is crocheted at 2.5: a bust of 100 cm is 39¼ inches, a chest of 100 cm is 40.
func TestSlotOfABody(t *testing.T) {
	p := &pattern.Pattern{Sizes: pattern.Sizes{Body: []pattern.BodyMeasurement{{Name: "bust"}}}}
	worked := [][]formula.Value{}
	for _, name := range []string{"bust", "chest"} {
		p.Slots = append(p.Slots, pattern.Slot{Formula: &formula.Formula{Text: name}})
		worked = append(worked, valuesOf(formula.Length, "100"))
	}
	slots := filled(p, worked)
	if slots[0].All != "100 cm [39¼ inches]" || slots[1].All != "100 cm [40 inches]" {
		t.Errorf("%q and %q", slots[0].All, slots[1].All)
	}
}
