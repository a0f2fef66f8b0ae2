package shaping

import (
	"slices"
	"testing"

	"foundrow/internal/measure"
)

func num(t testing.TB, s string) measure.Num {
	t.Helper()
	n, ok := measure.Parse(s)
	if !ok {
		t.Fatalf("%q is no number", s)
	}
	return n
}

// TestWorkedSchedules: schedules worked out in print, or recomputed from print. A run is every how many rows, how many times.
func TestWorkedSchedules(t *testing.T) {
	for _, c := range []struct {
		source       string
		rows, events int
		right        bool // on right-side rows, the row before the first being one
		runs         [2][2]int
	}{
		{"kristentendyke.blogspot.com, 2014/02", 108, 11, false, [2][2]int{{9, 2}, {10, 9}}},
		{"the same, on right-side rows; worked out", 108, 11, true, [2][2]int{{8, 1}, {10, 10}}},
		{"A. Budd's formula, studyres.com/doc/1062783", 124, 14, false, [2][2]int{{8, 2}, {9, 12}}},
		{"knittingunplugged.com, 2016/05/23", 84, 11, false, [2][2]int{{7, 4}, {8, 7}}},
		{"worked out", 140, 36, false, [2][2]int{{3, 4}, {4, 32}}},
	} {
		w := Want{From: 40, To: 40 + 2*c.events, Over: c.rows, Each: []int{2}}
		if c.right {
			w.First, w.On = Wrong, Right
		}
		s, refused := Solve(w)
		if refused != nil {
			t.Errorf("%s: %s", c.source, refused.Why)
			continue
		}
		want := []Run{{c.runs[0][0], c.runs[0][1], 2, false}, {c.runs[1][0], c.runs[1][1], 2, false}}
		if !slices.Equal(s.Runs, want) {
			t.Errorf("%s: %d events over %d rows are %v, wanted %v", c.source, c.events, c.rows, s.Runs, want)
		}
		// The same division along a row.
		if spread, refused := SolveSpread(SpreadWant{Over: c.rows, Events: c.events, Layout: Round}); !c.right {
			groups := []Group{{c.runs[0][0] - 1, 1, c.runs[0][1]}, {c.runs[1][0] - 1, 1, c.runs[1][1]}}
			if refused != nil || !slices.Equal(spread.Groups, groups) {
				t.Errorf("%s: along a row they are %v", c.source, spread.Groups)
			}
		}
	}
}

// TestWorkedMeasures: what shapes come to by their formulas, to the hundredth.
func TestWorkedMeasures(t *testing.T) {
	of := func(s string) measure.Num { return num(t, s) }
	crown := func(girth string) Crown {
		c, refused := HatCrown(of(girth), Gauge{of("4"), of("5")}, 6)
		if refused != nil {
			t.Fatal(refused.Why)
		}
		return c
	}
	drop, depth := RaglanDepth(of("4"), of("5.5"))
	yoke := Percentages(210)
	sock, refused := SockRound(of("9"), of("-0.1"), of("7.5"), 4)
	if refused != nil {
		t.Fatal(refused.Why)
	}
	const hats = "hookthatyarn.wordpress.com, 2016/06/09"
	const shares = "countrywool.com/freepatterns/betsirag.htm"
	for _, c := range []struct {
		source, what string
		is           measure.Num
		want         string
	}{
		{hats, "a crown for 22 inch", crown("22").Diameter, "7"},
		{hats, "a crown for 23 inch", crown("23").Diameter, "7.32"},
		{hats, "a hat for 23 inch", crown("23").Depth, "9.2"},
		{hats, "a crown for 13½ inch", crown("13.5").Diameter, "4.3"},
		{hats, "a hat for 13½ inch", crown("13.5").Depth, "5.4"},
		{"kristentendyke.com/blogs, 22 July 2015", "the drop below a sleeve top of 4 inch", drop, "2"},
		{"kristentendyke.com/blogs, 22 July 2015", "the depth of a raglan", depth, "7.5"},
		{shares, "the rib of a body of 210", yoke.Rib, "189"},
		{shares, "its upper sleeve", yoke.UpperSleeve, "69.3"},
		{shares, "its cuff", yoke.Cuff, "42"},
		{shares, "its yoke", yoke.Yoke, "279.3"},
		{shares, "its neck", yoke.Neck, "84"},
		{"wabi-sabi.ca", "a sock for 9 inch", sock.Raw, "60.75"},
		{"engineeredcrochet.blogspot.com, 2013/12", "what a round of double crochet adds", CircleRate(of("2"), of("1")), "12.57"},
		{"worked out: 16 stitches on 9 rows in 4 inch", "a pick-up along 45 rows", PickUp(45, of("16"), of("9")), "80"},
	} {
		if got := c.is.Decimal(2); got != c.want {
			t.Errorf("%s: %s comes to %s, wanted %s", c.source, c.what, got, c.want)
		}
	}
}

// TestWorkedCounts: what shapes come to by their formulas, in stitches and rows.
func TestWorkedCounts(t *testing.T) {
	of := func(s string) measure.Num { return num(t, s) }
	ints := func(n ...int) []int { return n }
	fours, _ := SockRound(of("9"), of("-0.1"), of("7.5"), 4)
	eights, _ := SockRound(of("9"), of("-0.1"), of("7.5"), 8)
	sphere, _ := Sphere(10, measure.Int(1))
	armhole, _ := SetInArmhole(98, 40, 90)
	rib, _ := SidewaysRib(of("20"), of("5"))
	yoke, _ := RoundYoke(84, 279, 72, 6)
	var rounds, sizes []int
	for _, r := range yoke {
		rounds, sizes = append(rounds, r.Round), append(sizes, r.To-r.From)
	}
	joined, _ := JoinYoke(210, 69, 15)
	shoulder, _ := SteppedShoulder(29, 3)
	short, _ := ShortRows(29, 3)
	dart, _ := BustDart(24, of("1.5"), Gauge{of("4"), of("6")})
	neck, _ := NeckByThirds(61, 25, 20)
	v, _ := VNeck(61, 25, 30)
	cone, _ := Cone(of("18"), of("6"), Gauge{of("4"), of("4")})
	for _, c := range []struct {
		source, what string
		is, want     []int
	}{
		{"geometry; the ideal crochet sphere, 2010", "a ball of 10 rows", sphere, ints(3, 9, 14, 18, 20, 20, 18, 14, 9, 3)},
		{"wabi-sabi.ca; stitchwhisperdesigns.com, 2022/11", "a sock of 60.75 by fours, its heel", ints(fours.Stitches, fours.Heel), ints(60, 30)},
		{"worked out", "the same by eights, its heel", ints(eights.Stitches, eights.Heel), ints(64, 32)},
		{"common practice", "the heel in thirds", eights.HeelTurn[:], ints(10, 12, 10)},
		{"common practice", "the toe, its rows", ints(eights.Toe.From, eights.Toe.To, eights.Toe.Rows), ints(64, 16, 20)},
		{"ozlorna.blogspot.com, 2012/09", "an armhole of 58 stitches: a side, at once, the rest", ints(armhole.PerSide, armhole.AtOnce, armhole.Rest), ints(29, 14, 15)},
		{"ozlorna.blogspot.com, 2012/09", "90 rows of it: shaped, plain", ints(armhole.Schedule.Rows-armhole.Schedule.Plain(), armhole.Schedule.Plain()), ints(30, 60)},
		{"countrywool.com: 90 %; worked out", "a rib of 20 inch", ints(rib), ints(90)},
		{"knitoutlines.blogspot.com, 2009/09", "the rounds of a yoke of 72 in 6 groups", rounds, ints(12, 24, 36, 48, 60, 72)},
		{"worked out", "what they add, 195 stitches in all", sizes, ints(32, 32, 32, 33, 33, 33)},
		{"knitoutlines.blogspot.com, 2009/09", "body and sleeves less four underarms", ints(joined), ints(288)},
		{"common practice", "29 stitches of a shoulder in three steps", shoulder, ints(10, 10, 9)},
		{"common practice", "the same in short rows", short, ints(19, 9, 29)},
		{"geometry", "a dart of 1½ inch at 6 rows to the inch", append(ints(dart.Rows), dart.Turns...), ints(10, 5, 10, 15, 20, 24)},
		{"common practice", "a neck of 25 out of 61: middle, shoulder", ints(neck.Centre, neck.Side.To), ints(9, 18)},
		{"common practice", "the same in a V: middle, shoulder, events", ints(v.Centre, v.Side.To, len(v.Side.Events())), ints(1, 18, 12)},
		{"geometry: a slope of 6.65 inch", "a cone 18 inch round and 6 high: rounds, first, last", ints(len(cone), cone[0], cone[len(cone)-1]), ints(27, 3, 72)},
		{"common practice", "a border round four corners", Border(100, 4, 0, 3), ints(108, 116, 124)},
		{"common practice", "a border in four corners", Border(100, 0, 4, 3), ints(92, 84, 76)},
		{"common practice", "a ball of 18", Ball(6, 3, 2), ints(6, 12, 18, 18, 18, 12, 6)},
	} {
		if !slices.Equal(c.is, c.want) {
			t.Errorf("%s: %s is %v, wanted %v", c.source, c.what, c.is, c.want)
		}
	}
}

// TestFlare: skirts that widen four stitches at a time. Source: vickieshouse1.wordpress.com, 2013/07.
func TestFlare(t *testing.T) {
	g := Gauge{num(t, "6.25"), num(t, "8.5")}
	for _, c := range []struct {
		wider, over string
		more        int
		runs        []Run
	}{
		{"7", "16", 44, []Run{{12, 11, 4, false}, {4, 1, 0, false}}},
		{"5", "7.0588", 32, []Run{{7, 8, 4, false}, {4, 1, 0, false}}}, // 60 rows are given, not a length
	} {
		s, refused := Flare(100, num(t, c.wider), num(t, c.over), g, 4)
		if refused != nil || s.To-s.From != c.more || !slices.Equal(s.Runs, c.runs) {
			t.Errorf("%s inch over %s: %+v %+v", c.wider, c.over, s, refused)
		}
	}
}
