package shaping

import "foundrow/internal/measure"

// RaglanDepth returns how far the back of the neck drops below the top of the sleeve, half the width of that, and how deep the whole
// raglan is from there.
// Source: kristentendyke.com/blogs, 22 July 2015: a sleeve top of 4 inch drops 2 inch; with 5½ inch of raglan 7½ inch.
func RaglanDepth(sleeveTop, raglan measure.Num) (drop, depth measure.Num) {
	drop = sleeveTop.Div(measure.Int(2))
	return drop, drop.Add(raglan)
}

// A Raglan is a body and a sleeve that grow or narrow over the same rows, two stitches at a time each.
type Raglan struct {
	Body, Sleeve [2]int // stitches before and after: of the back or front alone, and of one sleeve
	Over         int
	First, On    Side
}

// Solve solves both together, the rows of the one with fewer events among those of the other.
// Source: see SolveTogether.
func (r Raglan) Solve() (Table, *Refusal) {
	want := func(part [2]int) Want {
		return Want{From: part[0], To: part[1], Over: r.Over, Each: []int{4, 2}, First: r.First, On: r.On}
	}
	return SolveTogether(want(r.Body), want(r.Sleeve))
}

// A PercentageYoke is the parts of a pullover as shares of its body, before they are made whole.
type PercentageYoke struct{ Rib, UpperSleeve, Cuff, Yoke, Neck measure.Num }

// Percentages returns the parts of a pullover by the stitches of its body: the rib 90 %, the upper sleeve 33 %, the cuff 20 %, the
// yoke where body and sleeves are joined 133 %, the neck 40 %.
// Source: countrywool.com/freepatterns/betsirag.htm: of 210 they are 189, 69.3, 42, 279.3 and 84.
func Percentages(body int) PercentageYoke {
	of := func(percent int64) measure.Num { return measure.Ratio(percent*int64(body), 100) }
	return PercentageYoke{Rib: of(90), UpperSleeve: of(33), Cuff: of(20), Yoke: of(133), Neck: of(40)}
}

// JoinYoke returns the stitches of a yoke where a body and two sleeves are joined: those under the arms are taken from the body and
// from each sleeve, which makes four times.
// Source: knitoutlines.blogspot.com, 2009/09, whose author had forgotten the sleeves.
func JoinYoke(body, sleeve, underarm int) (int, *Refusal) {
	if r := sensible(body, sleeve, underarm); r != nil {
		return 0, r
	}
	if underarm >= sleeve || 2*underarm >= body {
		r := refuse(NothingLeft, counted(underarm, "stitch"), " under each arm leave nothing of a sleeve of ", sleeve, " or a body of ", body)
		if fits := min(sleeve-1, (body-1)/2); sleeve > 0 && body > 0 {
			r.Offers = []Offer{{KeyLeave, []int{fits}}}
		}
		return 0, r
	}
	return body + 2*sleeve - 4*underarm, nil
}

// DivideYoke returns the stitches of the body and of a sleeve where a yoke is divided: each sleeve takes its part, and new stitches
// are made under the arms, for the body and for the sleeve.
// Source: Handbook of Wool Knitting and Crochet, 1918, the babies' jacket: 174 trebles, 36 for each sleeve, 3 new for the body and 6
// for the sleeve, leave 108 and 42.
func DivideYoke(yoke, sleeve, newForBody, newForSleeve int) (body, arm int, refused *Refusal) {
	if r := sensible(yoke, sleeve, newForBody, newForSleeve); r != nil {
		return 0, 0, r
	}
	if 2*sleeve >= yoke {
		r := refuse(NothingLeft, "two sleeves of ", sleeve, " leave nothing of a yoke of ", yoke)
		if yoke > 0 {
			r.Offers = []Offer{{KeyLeave, []int{(yoke - 1) / 2}}}
		}
		return 0, 0, r
	}
	return yoke - 2*sleeve + 2*newForBody, sleeve + newForSleeve, nil
}

// A YokeRound is one round of a yoke in which all its increases, or decreases, are spread.
type YokeRound struct {
	Round    int // from the beginning of the yoke
	From, To int
}

// RoundYoke puts the growth of a round yoke into a few rounds, as many stitches in each as in the others, or one more.
// Source: knitoutlines.blogspot.com, 2009/09: 72 rows in 6 groups, every 12 rows.
func RoundYoke(from, to, rounds, groups int) ([]YokeRound, *Refusal) {
	if r := sensible(from, to, rounds, groups); r != nil {
		return nil, r
	}
	change := to - from
	switch most := min(rounds, abs(change)); {
	case from == 0 || to == 0:
		return nil, refuse(NothingLeft, "a yoke from ", from, " to ", counted(to, "stitch"), " has none at one end")
	case change == 0:
		return nil, nil
	case groups == 0 || groups > most:
		r := refuse(TooFewRows, counted(abs(change), "stitch"), " in ", counted(rounds, "round"), " cannot be changed in ", counted(groups, "group"))
		if most > 0 {
			r.Offers = []Offer{{KeyEvents, []int{min(max(groups, 1), most)}}}
		}
		return nil, r
	}
	way := 1
	if change < 0 {
		way = -1
	}
	var out []YokeRound
	round, n := 0, from
	sizes := split(abs(change), groups, ShortFirst)
	for _, every := range split(rounds, groups, ShortFirst) {
		for range every.times {
			round += every.size
			next := n + way*sizes[0].size
			out = append(out, YokeRound{round, n, next})
			n = next
			if sizes[0].times--; sizes[0].times == 0 {
				sizes = sizes[1:]
			}
		}
	}
	return out, nil
}
