package shaping

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"foundrow/internal/measure"
)

// TestSine compares with package math over every angle that a ball of up to 200 rows asks for.
func TestSine(t *testing.T) {
	for n := 1; n <= 200; n++ {
		for i := range (n + 1) / 2 {
			got, want := sine(2*i+1, 2*n).Float(), math.Sin(math.Pi*float64(2*i+1)/float64(2*n))
			if math.Abs(got-want) > 1e-11 {
				t.Fatalf("the sine of %d/%d of a half turn is %v, wanted %v", 2*i+1, 2*n, got, want)
			}
		}
	}
}

// TestSphereIsNearest: every row of a ball has the whole number nearest to its circle, and both halves are alike.
func TestSphereIsNearest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n, tall := rapid.IntRange(1, 300).Draw(t, "rows"), rapid.Int64Range(1, 20).Draw(t, "tenths")
		rows, refused := Sphere(n, measure.Ratio(tall, 10))
		if refused != nil {
			t.Fatal(refused.Why)
		}
		for i, got := range rows {
			want := 2 * float64(n) * math.Sin(math.Pi*(float64(i)+0.5)/float64(n)) * float64(tall) / 10
			if math.Abs(float64(got)-want) > 0.5+1e-9 && got > 1 || rows[n-1-i] != got {
				t.Fatalf("row %d of %d has %d, wanted %v", i+1, n, got, want)
			}
		}
	})
}

// sums checks that the runs of a schedule sum to its rows and its counts.
func sums(t *rapid.T, what string, s Schedule, from, to, rows int) {
	n, change := 0, 0
	for _, r := range s.Runs {
		n, change = n+r.Every*r.Times, change+r.Change*r.Times
	}
	if n != rows || s.Rows != rows || s.From != from || s.To != to || from+change != to {
		t.Fatalf("%s goes from %d to %d over %d rows, wanted %d to %d over %d: %+v", what, s.From, from+change, n, from, to, rows, s)
	}
}

// TestShapesSum: shapes of a piece sum to what they were asked for, or are refused and what is offered can be.
func TestShapesSum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		wide, narrow, rows := rapid.IntRange(-1, 150).Draw(t, "wide"), rapid.IntRange(-1, 80).Draw(t, "narrow"), rapid.IntRange(-1, 90).Draw(t, "rows")
		few := rapid.IntRange(-1, 20).Draw(t, "few")

		armhole, refused := SetInArmhole(wide, narrow, rows)
		if refused == nil {
			sums(t, "an armhole", armhole.Schedule, wide, narrow, rows)
			if armhole.AtOnce+armhole.Rest != armhole.PerSide || 2*armhole.PerSide != wide-narrow {
				t.Fatalf("the parts of %+v do not sum", armhole)
			}
		}
		offers(t, "an armhole", refused, func(o Offer) *Refusal {
			_, again := SetInArmhole(wide, pick(o, KeyCross, narrow), pick(o, KeyOver, rows))
			return again
		})

		sleeve, refused := SleeveCap(wide, few, narrow, rows)
		if refused == nil {
			sums(t, "a cap", sleeve, wide, narrow, rows)
		}
		offers(t, "a cap", refused, func(o Offer) *Refusal {
			_, again := SleeveCap(wide, few, pick(o, KeyTop, narrow), pick(o, KeyOver, rows))
			return again
		})

		for what, neck := range map[string]func(across, width, rows int) (Neck, *Refusal){"a neck": NeckByThirds, "a V": VNeck} {
			n, refused := neck(wide, narrow, rows)
			if refused == nil {
				sums(t, what, n.Side, (wide-n.Centre)/2, (wide-narrow)/2, rows)
				if 2*n.Side.From+n.Centre != wide || 2*n.Side.To+narrow != wide {
					t.Fatalf("%s of %d: %+v", what, wide, n)
				}
			}
			offers(t, what, refused, func(o Offer) *Refusal {
				_, again := neck(wide, pick(o, KeyWidth, narrow), pick(o, KeyOver, rows))
				return again
			})
		}

		yoke, refused := RoundYoke(wide, narrow, rows, few)
		n := wide
		for _, r := range yoke {
			if r.From != n || r.Round < 1 || r.Round > rows {
				t.Fatalf("round %+v of a yoke goes on from %d", r, n)
			}
			n = r.To
		}
		if refused == nil && n != narrow {
			t.Fatalf("a yoke ends with %d, wanted %d", n, narrow)
		}
		offers(t, "a yoke", refused, func(o Offer) *Refusal {
			_, again := RoundYoke(wide, narrow, rows, pick(o, KeyEvents, few))
			return again
		})
		_, refused = JoinYoke(wide, narrow, few)
		offers(t, "a yoke", refused, func(o Offer) *Refusal { _, again := JoinYoke(wide, narrow, pick(o, KeyLeave, few)); return again })
		_, _, refused = DivideYoke(wide, narrow, few, few)
		offers(t, "a yoke", refused, func(o Offer) *Refusal {
			_, _, again := DivideYoke(wide, pick(o, KeyLeave, narrow), few, few)
			return again
		})

		parts, refused := SteppedShoulder(wide, few)
		sum := 0
		for _, p := range parts {
			sum += p
		}
		if refused == nil && sum != wide {
			t.Fatalf("the steps %v of %d sum to %d", parts, wide, sum)
		}
		offers(t, "a shoulder", refused, func(o Offer) *Refusal { _, again := SteppedShoulder(wide, pick(o, KeyEvents, few)); return again })

		_, refused = Wedge(wide, rows)
		offers(t, "a wedge", refused, func(o Offer) *Refusal { _, again := Wedge(wide, pick(o, KeyOver, rows)); return again })
		_, refused = MitreFromChain(wide)
		offers(t, "a mitre", refused, func(o Offer) *Refusal { _, again := MitreFromChain(pick(o, KeyFrom, wide)); return again })
		dart, refused := BustDart(wide, measure.Ratio(int64(few), 4), Gauge{measure.Int(4), measure.Int(6)})
		if refused == nil && dart.Turns[len(dart.Turns)-1] != wide {
			t.Fatalf("a dart of %d ends at %v", wide, dart.Turns)
		}
		offers(t, "a dart", refused, func(o Offer) *Refusal {
			_, again := BustDart(pick(o, KeyWidth, wide), measure.Ratio(int64(few), 4), Gauge{measure.Int(4), measure.Int(6)})
			return again
		})
	})
}

// pick is the offered number if it is that of a key, else the one that was asked for.
func pick(o Offer, key Key, asked int) int {
	if o.Key == key {
		return o.Values[0]
	}
	return asked
}

func offers(t *rapid.T, what string, refused *Refusal, again func(Offer) *Refusal) {
	if refused == nil {
		return
	}
	if refused.Why == "" || refused.Reason == Possible {
		t.Fatalf("%s is refused without a reason", what)
	}
	for _, o := range refused.Offers {
		if r := again(o); r != nil {
			t.Fatalf("%s is refused because %s, but with %s because %s", what, refused.Why, o, r.Why)
		}
	}
}

// TestSocksHalve: a sock is a whole number of its multiple, its heel is half and in three parts, and its toe goes down by fours.
func TestSocksHalve(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		girth, gauge := measure.Ratio(rapid.Int64Range(1, 150).Draw(t, "girth"), 10), measure.Ratio(rapid.Int64Range(10, 100).Draw(t, "gauge"), 10)
		multiple := rapid.SampledFrom([]int{4, 8}).Draw(t, "multiple")
		s, refused := SockRound(girth, measure.Ratio(-1, 10), gauge, multiple)
		if refused != nil {
			t.Fatal(refused.Why)
		}
		if s.Stitches%multiple != 0 || 2*s.Heel != s.Stitches || s.HeelTurn[0]+s.HeelTurn[1]+s.HeelTurn[2] != s.Heel || s.Toe.To < 4 {
			t.Fatalf("%+v", s)
		}
		sums(t, "a toe", s.Toe, s.Stitches, s.Toe.To, s.Toe.Rows)
	})
}

// TestShapesOfNothing: lengths and gauges that are nothing, or less, are refused and never worked.
func TestShapesOfNothing(t *testing.T) {
	zero, one, less := measure.Num{}, measure.Int(1), measure.Int(-3)
	good := Gauge{one, one}
	for what, refused := range map[string]*Refusal{
		"the girth is 0": second(HatCrown(zero, good, 6)),
		"the girth is -3, and nothing measures less than nothing": second(HatCrown(less, good, 6)),
		"the stitch gauge is 0":                                   second(HatCrown(one, Gauge{zero, one}, 6)),
		"the row gauge is 0":                                      second(Cone(one, one, Gauge{one, zero})),
		"the first round is 0":                                    second(HatCrown(one, good, 0)),
		"the height of a stitch is 0":                             second(Sphere(10, zero)),
		"the rows of a ball is 0":                                 second(Sphere(0, one)),
		"what it widens by is 0":                                  second(Flare(10, zero, one, good, 4)),
		"each is 0":                                               second(Flare(10, one, one, good, 0)),
		"the depth of the dart is 0":                              second(BustDart(10, zero, good)),
		"the girth with its ease is 0":                            second(SockRound(one, measure.Int(-1), one, 8)),
		"the length is too large a number":                        second(Flare(10, one, measure.Lost, good, 4)),
		"a sock is a multiple of 4 or of 8, not of 6":             second(SockRound(one, zero, one, 6)),
		"an armhole goes from the bust, 40, to a narrower cross back, not to 40": second(SetInArmhole(40, 40, 20)),
	} {
		switch {
		case refused == nil:
			t.Errorf("%s, and it was worked", what)
		case refused.Why != what:
			t.Errorf("%s is said as %s", what, refused.Why)
		}
	}
}

func second[T any](_ T, refused *Refusal) *Refusal { return refused }

// TestEdgesAgree: a cap whose edge is as long as that of its armhole can be told from one that is not.
func TestEdgesAgree(t *testing.T) {
	g := Gauge{measure.Int(4), measure.Int(4)}
	straight := EdgeLength(Schedule{Rows: 12, Runs: []Run{{12, 1, 0, false}}}, 1, g)
	slant := EdgeLength(Schedule{Rows: 12, Runs: []Run{{4, 3, -6, false}}}, 2, g) // three stitches over four rows, three times: 3-4-5
	left := EdgeLength(Schedule{Rows: 1, Runs: []Run{{1, 1, -8, true}}}, 2, g)
	if straight.String() != "3" || slant.String() != "3 3/4" || left.String() != "1 1/4" {
		t.Errorf("the edges are %s, %s and %s", straight, slant, left)
	}
}
