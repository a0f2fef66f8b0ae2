package shaping

import (
	"sort"

	"foundrow/internal/measure"
)

// Flare widens a skirt or a body by a girth over a length, so many stitches at a time at places that are always the same, at one
// rate; the rows left over are plain at the bottom.
// Source: vickieshouse1.wordpress.com, 2013/07: 6¼ stitches and 8½ rows to the inch, 7 inch wider over 16 inch, 4 at a time: every
// 12th row 11 times and 4 plain rows.
func Flare(from int, wider, over measure.Num, g Gauge, each int) (Schedule, *Refusal) {
	if r := positive(length{"what it widens by", wider}, length{"the length", over}, length{"the stitch gauge", g.Stitches}, length{"the row gauge", g.Rows}, length{"each", measure.Int(int64(each))}); r != nil {
		return Schedule{}, r
	}
	more, ok := nearest(wider.Mul(g.Stitches), each)
	rows, fits := nearest(over.Mul(g.Rows), 1)
	if !ok || !fits {
		return Schedule{}, refuse(TooLarge, "no piece has so many stitches or rows")
	}
	return Solve(Want{From: from, To: from + more, Over: rows, Each: []int{each}, Order: OneRate})
}

// DivideBody returns the stitches of the back where a body worked in one is divided: two fronts and two armholes are taken from it.
// Source: joyofcreationdiy.blogspot.com, 2023: of 57 two fronts of 11 and two armholes of 6 leave 23.
func DivideBody(body, front, armhole int) (back int, refused *Refusal) {
	if r := sensible(body, front, armhole); r != nil {
		return 0, r
	}
	if back = body - 2*front - 2*armhole; back < 1 {
		return 0, refuse(NothingLeft, "two fronts of ", front, " and two armholes of ", armhole, " leave nothing of ", body)
	}
	return back, nil
}

// A SetIn is a set-in armhole, both sides of it alike.
type SetIn struct {
	PerSide  int      // stitches that go at one side: AtOnce and Rest
	AtOnce   int      // left unworked in the first row
	Rest     int      // decreased over the rows that follow
	Schedule Schedule // of the whole piece, both sides together, up to the shoulder
}

// SetInArmhole narrows a front or a back from the bust to the cross back: about half of it at once, the rest over what remains of the
// first third of the rows.
// Source: ozlorna.blogspot.com, 2012/09: 58 stitches are 29 a side, and a third of 90 rows is 30.
func SetInArmhole(bust, cross, rows int) (SetIn, *Refusal) {
	if r := sensible(bust, cross, rows); r != nil {
		return SetIn{}, r
	}
	if cross < 1 || cross >= bust {
		return SetIn{}, refuse(NothingLeft, "an armhole goes from the bust, ", bust, ", to a narrower cross back, not to ", cross)
	}
	if a, ok := setIn(bust, cross, rows); ok {
		return a, nil
	}
	if (bust-cross)%2 != 0 {
		r := refuse(OddChange, counted(bust-cross, "stitch"), " cannot be shared by two armholes")
		for _, other := range [...]int{cross - 1, cross + 1} {
			if _, ok := setIn(bust, other, rows); ok {
				r.Offers = append(r.Offers, Offer{KeyCross, []int{other}})
			}
		}
		return SetIn{}, r
	}
	r := refuse(TooFewRows, counted((bust-cross)/2, "stitch"), " at each side cannot go in the first third of ", counted(rows, "row"))
	fits := func(n int) bool { _, ok := setIn(bust, cross, n); return ok }
	if n := rows + sort.Search(most-rows, func(i int) bool { return fits(rows + i) }); fits(n) {
		r.Offers = []Offer{{KeyOver, []int{n}}}
	}
	return SetIn{}, r
}

// setIn shapes an armhole where it can be.
func setIn(bust, cross, rows int) (SetIn, bool) {
	if cross < 1 || cross >= bust || (bust-cross)%2 != 0 || rows == 0 {
		return SetIn{}, false
	}
	a := SetIn{PerSide: (bust - cross) / 2}
	a.AtOnce = a.PerSide / 2
	a.Rest = a.PerSide - a.AtOnce
	first := leaveFirst(bust, a.AtOnce)
	third := max(1, (rows+1)/3)
	rest, refused := Solve(Want{From: first.To, To: cross, Over: third - first.Rows, Each: []int{4, 2}})
	a.Schedule = first.Then(rest).Then(plainRows(cross, rows-third))
	return a, refused == nil
}

// leaveFirst is a first row that leaves stitches at both ends, or no row where none are left.
func leaveFirst(from, each int) Schedule {
	if each == 0 {
		return Schedule{From: from, To: from}
	}
	return Schedule{From: from, To: from - 2*each, Rows: 1, Runs: []Run{{1, 1, -2 * each, true}}}
}

func plainRows(count, rows int) Schedule {
	s := Schedule{From: count, To: count, Rows: rows}
	s.put(Run{Every: rows, Times: 1})
	return s
}

// SleeveCap narrows a sleeve from the upper arm to the top of its cap: what the armhole leaves at once is left here too; then a quarter
// of the decreases come in every row, half are spread over the middle, and the last quarter come in every row again, which
// gives the bell. Where the rows are too few for that, the decreases are spread over all of them.
// Source: that cap and armhole leave the same stitches, knitty.com, winter 2005; the quarters are common practice, no source.
func SleeveCap(upper, atOnce, top, rows int) (Schedule, *Refusal) {
	if r := sensible(upper, atOnce, top, rows); r != nil {
		return Schedule{}, r
	}
	from := upper - 2*atOnce
	if from < 1 || top < 1 || from < top {
		return Schedule{}, refuse(NothingLeft, counted(upper, "stitch"), " less ", atOnce, " at each side leave ", from, ", but the top has ", top)
	}
	first := leaveFirst(upper, atOnce)
	rest := Want{From: from, To: top, Over: rows - first.Rows, Each: []int{4, 2}}
	quarter := (from - top) / 2 / 4
	bell := rest
	bell.From, bell.To, bell.Over, bell.Each = from-2*quarter, top+2*quarter, rest.Over-2*quarter, []int{2}
	if middle, refused := Solve(bell); refused == nil {
		steep := Schedule{To: -2 * quarter, Rows: quarter}
		steep.put(Run{Every: 1, Times: quarter, Change: -2})
		return first.Then(steep).Then(middle).Then(steep), nil
	}
	s, refused := Solve(rest)
	if refused != nil {
		return Schedule{}, capRefused(refused, first.Rows)
	}
	return first.Then(s), nil
}

// capRefused turns what the decreases of a cap were refused for into numbers of the whole cap.
func capRefused(r *Refusal, before int) *Refusal {
	out := &Refusal{Reason: r.Reason, Why: r.Why}
	for _, o := range r.Offers {
		switch o.Key {
		case KeyTo:
			out.Offers = append(out.Offers, Offer{KeyTop, o.Values})
		case KeyOver:
			out.Offers = append(out.Offers, Offer{KeyOver, []int{o.Values[0] + before}})
		}
	}
	return out
}

// EdgeLength is how long an edge is that a schedule shapes at one of its ends: the slant of every event over the rows since the last.
// A cap fits an armhole whose edge is as long, or a little shorter.
// Source: geometry.
func EdgeLength(s Schedule, ends int, g Gauge) measure.Num {
	var sum measure.Num
	for _, r := range s.Runs {
		wide := measure.Ratio(int64(abs(r.Change)), int64(max(1, ends))).Div(g.Stitches)
		high := measure.Int(int64(r.Every)).Div(g.Rows)
		one := hypotenuse(wide, high)
		if r.Leave { // along the row, and up one
			one = wide.Add(high)
		}
		sum = sum.Add(one.Mul(measure.Int(int64(r.Times))))
	}
	return sum
}
