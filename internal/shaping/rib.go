package shaping

import "foundrow/internal/measure"

// SidewaysRib returns the rows of a rib worked sideways round a girth: nine tenths of it, and an even number, so that the last row
// joins the first tidily.
// Source: nine tenths from countrywool.com/freepatterns/betsirag.htm; the rest common practice. A hat of 20 inch at 5 rows to the inch
// takes 18 inch, 90 rows.
func SidewaysRib(girth, rows measure.Num) (int, *Refusal) {
	if r := positive(length{"the girth", girth}, length{"the row gauge", rows}); r != nil {
		return 0, r
	}
	n, ok := nearest(girth.Mul(rows).Mul(measure.Ratio(9, 10)), 2)
	if !ok {
		return 0, refuse(TooLarge, "no rib has so many rows")
	}
	return max(2, n), nil
}

// PickUp returns the stitches to be worked along row-ends, before they are made whole: the length of the rows at the gauge of the
// border. Both gauges are to the same length.
// Source: forum.knittinghelp.com/t/55500 and crochetkim.com; worked out: 16 stitches on 9 rows of double crochet in 4 inch are 16/9 a
// row, so 45 rows take 80.
func PickUp(rows int, border, fabric measure.Num) measure.Num {
	return measure.Int(int64(rows)).Mul(border).Div(fabric)
}

// A Sock is the round of a sock and what follows from it.
type Sock struct {
	Raw      measure.Num // before it was made whole
	Stitches int
	Heel     int      // of the heel flap: half
	HeelTurn [3]int   // the heel in thirds for its turn, the outer two alike
	Toe      Schedule // 4 stitches at a time: every other round to half of them, then every round to a quarter
}

// SockRound works out a sock from the girth of the foot and its ease, which is -1/10 as a rule, to the nearest multiple of 8, so that
// heel and toe halve twice; 4 is the least multiple that does for a heel.
// Source: wabi-sabi.ca and stitchwhisperdesigns.com, 2022/11: 9 inch less a tenth at 7½ stitches are 60.75, worked as 60 by fours.
// Bartonriveryarn.com for the ease. The turn in thirds and the two rates of the toe are common practice, no source.
func SockRound(girth, ease, stitches measure.Num, multiple int) (Sock, *Refusal) {
	if r := positive(length{"the girth", girth}, length{"the stitch gauge", stitches}, length{"the girth with its ease", girth.Mul(ease.Add(measure.Int(1)))}); r != nil {
		return Sock{}, r
	}
	if multiple < 4 || multiple%4 != 0 || multiple > most {
		r := refuse(OddChange, "a sock is a multiple of 4 or of 8, not of ", multiple)
		r.Offers = []Offer{{KeyMultiple, []int{8}}}
		return Sock{}, r
	}
	s := Sock{Raw: girth.Mul(ease.Add(measure.Int(1))).Mul(stitches)}
	n, ok := nearest(s.Raw, multiple)
	if !ok {
		return s, refuse(TooLarge, "no sock has so many stitches")
	}
	s.Stitches = max(multiple, n)
	s.Heel = s.Stitches / 2
	third := s.Heel / 3
	s.HeelTurn = [3]int{third, s.Heel - 2*third, third}
	half, quarter := s.Stitches/8*4, max(4, s.Stitches/16*4)
	half = max(half, quarter)
	s.Toe = Schedule{From: s.Stitches, To: quarter, Rows: 2*(s.Stitches-half)/4 + (half-quarter)/4}
	s.Toe.put(Run{Every: 2, Times: (s.Stitches - half) / 4, Change: -4})
	s.Toe.put(Run{Every: 1, Times: (half - quarter) / 4, Change: -4})
	return s, nil
}
