package shaping

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"foundrow/internal/measure"
)

// comparisons are what each published fact is compared with, by its id.
var comparisons = map[string]func(*fact){
	// Armholes, necks and sides shaped step by step.
	"g-armhole-shell-top": func(f *fact) {
		for _, i := range f.sizes("start") {
			leave := f.n("left_each_side", i) + f.n("first_row_extra_dec_each_side") // both in the first row
			s := f.steps(StepsWant{From: f.n("start", i), To: Say(f.n("end", i)), Over: Say(f.n("total_armhole_rows", i)), Ends: 2,
				Steps: []Step{{Act: Leave, Stitches: leave, Times: 1}, {Stitches: 1, ToEnd: true}}})
			f.is("after the first row", s.Counts()[0], f.n("after_first_row", i))
			f.is("rows of decreases", s.Runs[1].Times, f.n("more_dec_rows", i))
			f.is("even rows", s.Plain(), f.n("even_rows_after", i))
			f.is("each", s.Runs[1].Change, f.n("each_dec_row"))
			// What the arithmetic of a set-in armhole would take comes to the same in all.
			a, refused := SetInArmhole(f.n("start", i), f.n("end", i), f.n("total_armhole_rows", i))
			if refused != nil {
				f.Fatal(refused.Why)
			}
			f.is("a side", a.PerSide, leave+f.n("more_dec_rows", i))
		}
	},
	"g-vest-divide": func(f *fact) {
		for _, i := range f.sizes("total") {
			back, refused := DivideBody(f.n("total", i), f.n("front", i), f.n("armhole", i))
			if refused != nil {
				f.Fatal(refused.Why)
			}
			f.is("the back", back, f.n("back", i))
			f.is("from the armhole on", back+f.n("armhole", i), f.n("from_armhole_end_to_right_front", i))
		}
	},
	"g-repeats-drops-56-14": func(f *fact) { // counted in repeats
		for _, i := range f.sizes("back_repeats") {
			s := f.steps(StepsWant{From: f.n("back_repeats", i), Ends: 2, Steps: []Step{{Act: Leave, Stitches: f.n("armhole_repeats_each_side"), Times: 1}}})
			f.is("after the armholes", s.To, f.n("after_armhole", i))
			neck, refused := NeckByThirds(s.To, f.n("neck_repeats"), 20)
			if refused != nil {
				f.Fatal(refused.Why)
			}
			f.is("the shoulder", neck.Side.To, f.n("shoulder_repeats", i))
		}
	},
	"g-neck-dress-6": func(f *fact) {
		for _, i := range f.sizes("across") {
			var steps []Step
			for range 1 + f.n("pairs_repeated") {
				steps = append(steps, Step{Stitches: 2, Times: 1}, Step{Stitches: 1, Times: 1})
			}
			s := f.steps(StepsWant{From: f.n("first_side", i), To: Say(f.n("end", i)), Steps: append(steps, Step{Stitches: 1, Times: 1})})
			f.is("row 2", s.Counts()[0], f.n("row2", i))
			f.is("row 3", s.Counts()[1], f.n("row3", i))
			f.is("after the pairs", s.Counts()[s.Rows-2], f.n("after_pairs", i))
			f.is("the end", s.Counts()[s.Rows-1], f.n("end", i))
		}
	},
	"g-neck-halter": func(f *fact) {
		for _, i := range f.sizes("cup") {
			s := f.steps(StepsWant{From: f.n("after_row3", i), Over: Say(f.n("rows_4_to", i) - 3), Steps: []Step{{Stitches: 1, ToEnd: true}}})
			f.is("after", s.To, f.n("after", i))
			f.is("after row 3", f.steps(StepsWant{From: f.n("cup", i), Steps: []Step{{Stitches: 1, Times: 1}}}).To, f.n("after_row3", i))
		}
	},

	// Sleeves and sides on schedules.
	"g-sleeve-176-rows": func(f *fact) {
		of := func(key string) int { // stitches of a width at the gauge, even
			n, _ := nearest(f.num(key).Mul(f.num("gauge.sts")).Div(f.num("gauge.over_cm")), 2)
			return n
		}
		f.is("the wrist", of("wrist_cm"), f.n("start"))
		f.is("the top", of("top_cm"), f.n("end"))
		rows, _ := nearest(f.num("length_cm").Mul(f.num("gauge.rows")).Div(f.num("gauge.over_cm")), 1)
		s := f.solve(Want{From: f.n("start"), To: f.n("end"), Over: rows, PlainAtEnd: f.n("even_rows_at_top"), Each: []int{2}})
		f.is("events", len(s.Events()), f.n("inc_each_side"))
		f.is("rows of it", s.Rows-s.Plain(), f.n("rows"))
		f.runs(s, "schedule")
	},
	"g-sleeve-108-rows": func(f *fact) {
		cuff, _ := nearest(f.num("cuff_in").Mul(f.num("gauge.sts_per_in")), 2)
		underarm, _ := nearest(f.num("underarm_in").Mul(f.num("gauge.sts_per_in")), 2)
		f.is("the cuff", cuff, f.n("cuff_sts"))
		f.is("the underarm", underarm, f.n("underarm_sts"))
		s := f.solve(Want{From: cuff, To: underarm, Over: f.n("rows"), Each: []int{2}, Order: LongFirst})
		f.is("events", len(s.Events()), f.n("inc_rows"))
		f.is("stitches", s.To-s.From, f.n("inc_sts"))
		f.runs(s, "schedule")
	},
	"g-sleeve-tess": func(f *fact) {
		s := f.solve(Want{From: f.n("start"), To: f.n("end"), Over: f.n("rows_total") - f.n("cuff_rows"), Each: []int{2}, AtOnce: true, PlainAtEnd: f.n("even_rows_left")})
		var rows []int
		for _, row := range s.Events() {
			rows = append(rows, row+f.n("cuff_rows"))
		}
		f.are("the rows", rows, f.list("inc_rows"))
		f.is("after the first", s.Counts()[0], f.n("after_first"))
		f.are("then every so many rows, times", []int{s.Runs[1].Every, s.Runs[1].Times}, []int{f.n("inc_every"), f.n("times")})
		f.is("even rows", s.Plain(), f.n("even_rows_left"))
	},
	"g-sleeve-unplugged": func(f *fact) {
		of := func(key string) int {
			n, _ := nearest(f.num(key).Mul(f.num("gauge.sts_per_in")), 2)
			return n
		}
		f.is("the bottom", of("bottom_in"), f.n("bottom_sts"))
		f.is("the top", of("top_in"), f.n("top_sts"))
		rows, _ := nearest(f.num("length_in").Mul(f.num("gauge.rows_per_in")), 1)
		s := f.solve(Want{From: of("bottom_in"), To: of("top_in"), Over: rows, Each: []int{2}})
		f.is("events", len(s.Events()), f.n("inc_rows"))
		f.is("stitches", s.To-s.From, f.n("inc_sts"))
	},
	"g-sleeve-cuffs-child": func(f *fact) {
		for _, i := range f.sizes("first_round") {
			s := f.spread(SpreadWant{Over: f.n("first_round", i), Events: f.n("increases"), Layout: Round})
			f.is("plain between", s.Groups[0].Plain, f.n("plain_between", i))
			f.is("groups", len(s.Groups), 1)
			f.is("the second round", s.After, f.n("second_round", i))
		}
	},
	"g-sleeve-uk-unequal": func(f *fact) {
		for _, i := range f.sizes("start") {
			s := f.solve(Want{From: f.n("start", i), To: f.n("by_row.17", i), Over: 17, Each: []int{1}, AtOnce: true})
			if i == 2 { // four intervals of 1 row and six of 2, as ours, but in an order of its own
				rows := []int{1, 2, 3, 5, 7, 9, 11, 13, 14, 15, 17}
				theirs := make([]int, len(rows))
				for n, row := range rows {
					f.is("row "+strconv.Itoa(row), f.n("start", i)+n+1, f.n("by_row."+strconv.Itoa(row), i))
					if n > 0 {
						theirs[n] = row - rows[n-1]
					}
				}
				ours := intervals(s)[1:]
				slices.Sort(ours)
				slices.Sort(theirs[1:])
				f.are("the intervals", ours, theirs[1:])
				continue
			}
			for row := range f.of["by_row"].(map[string]any) {
				n, _ := strconv.Atoi(row)
				f.is("row "+row, s.Counts()[n-1], f.n("by_row."+row, i))
			}
		}
	},
	"g-vest-waist": func(f *fact) {
		for _, i := range f.sizes("start") {
			s := f.solve(Want{From: f.n("start", i), To: f.n("row5", i), Over: 5, Each: []int{f.n("each")}, AtOnce: true})
			f.is("row 1", s.Counts()[0], f.n("row1", i))
			f.is("row 4", s.Counts()[3], f.n("row1", i))
			f.is("row 5", s.Counts()[4], f.n("row5", i))
		}
	},
	"g-cups-drops-95-26": func(f *fact) {
		for _, i := range f.sizes("row1") {
			s := f.solve(Want{From: f.n("row1", i), To: f.n("after", i), Over: f.n("inc_rows", i), Each: []int{f.n("inc_per_row")}})
			f.is("rows", len(s.Events()), f.n("inc_rows", i))
			f.is("two cups", Growing(f.n("row1", i), f.n("row1", i), 2)[1], f.n("joined_two_cups", i))
		}
	},

	// Raglans and yokes.
	"g-raglan-pink-cardigan": func(f *fact) {
		number := regexp.MustCompile(`\d+`)
		for _, i := range f.sizes("back_start") {
			sides := f.solve(Want{From: f.n("back_start", i), To: f.n("back_before_raglan", i), Over: 8 * 10, Each: []int{2}, AtMost: 10})
			f.is("decreases of the back", len(sides.Events()), 1+7)
			sleeve := f.solve(Want{From: f.n("sleeve_start", i), To: f.n("sleeve_before_raglan", i), Over: f.n("rows_to_raglan"), Each: []int{2}})
			f.is("increases of the sleeve", len(sleeve.Events()), f.n("sleeve_inc_each_side", i))
			for _, every := range number.FindAllString(f.of["sleeve_inc_every"].([]any)[i].(string), -1) {
				n, _ := strconv.Atoi(every)
				if f.compared++; !slices.Contains(intervals(sleeve), n) {
					f.Errorf("the sleeve has an event every %v rows, the source every %s", intervals(sleeve), every)
				}
			}
			first := 2 * f.n("raglan_first")
			table, refused := Raglan{
				Body: [2]int{f.n("back_before_raglan", i) - first, f.n("back_end", i)}, Sleeve: [2]int{f.n("sleeve_before_raglan", i) - first, f.n("sleeve_end", i)},
				Over: f.n("raglan_rows") - 1,
			}.Solve()
			if refused != nil {
				f.Fatal(refused.Why)
			}
			for _, part := range table.Parts {
				f.is("decreases of the raglan", len(part.Events()), f.n("raglan_single_dec_each_side", i))
			}
			f.is("kinds of row: even, and both", len(table.Kinds()), 2)
		}
	},
	"g-raglan-designer-plan": func(f *fact) {
		for _, part := range []string{"neck", "bust", "sleeve"} {
			n, _ := nearest(f.num(part).Mul(f.num("implied_gauge_per_in")), 2)
			f.is(part, n, f.n(part+"_sts"))
		}
	},
	"g-raglan-plus-eight": func(f *fact) {
		counts := f.list("counts_round_1_to_13")
		f.are("the rounds", f.solve(Want{From: f.n("round0"), To: counts[12], Over: 13, Each: []int{f.n("inc_per_round")}}).Counts(), counts)
		sections := 2*f.n("sections_round0.sleeve") + 2*f.n("sections_round0.front/back") + 4*f.n("sections_round0.raglan")
		f.is("the sections", sections, f.n("round0"))
		for size, n := range f.of["stop"].(map[string]any) {
			if f.compared++; !slices.Contains(counts, int(n.(int64))) {
				f.Errorf("size %s stops at %d, which is no round", size, n)
			}
		}
	},
	"g-raglan-corners-sixteen": func(f *fact) {
		for _, i := range f.sizes("neck_sc") {
			s := f.solve(Want{From: f.n("neck_sc", i) - 4, To: f.n("row4", i), Over: 2, Each: []int{f.n("inc_per_corner_row")}})
			f.are("corner rows", s.Counts(), []int{f.n("row2", i), f.n("row4", i)})
		}
	},
	"g-yoke-sections": func(f *fact) {
		for _, i := range f.sizes("back") {
			part := func(from, to, each string) Schedule {
				e := []int{2}
				if each == "sleeve" {
					e = []int{8, 6}
				}
				return f.solve(Want{From: f.n(from, i), To: f.n(to, i), Over: 2, Each: e})
			}
			front, sleeve := part("row3.front", "row7.front", "front"), part("row3.sleeve", "row7.sleeve", "sleeve")
			table, refused := Together(front, sleeve, sleeve, front)
			if refused != nil {
				f.Fatal(refused.Why)
			}
			f.is("row 3", 2*f.n("row3.front", i)+2*f.n("row3.sleeve")+f.n("back", i), f.n("row3.total", i))
			counts, refused := table.Counts(f.n("row3.total", i), 1)
			if refused != nil {
				f.Fatal(refused.Why)
			}
			f.are("rows 5 and 7", counts, []int{f.n("row5.total", i), f.n("row7.total", i)})
			f.are("the front", front.Counts(), []int{f.n("row5.front", i), f.n("row7.front", i)})
			f.are("the sleeve", sleeve.Counts(), []int{f.n("row5.sleeve"), f.n("row7.sleeve")})
		}
	},
	"g-yoke-babies-jacket-1918": func(f *fact) {
		for row := range f.of["rows"].(map[string]any) { // three trebles make a cross of the row above
			n, _ := strconv.Atoi(row)
			crosses := PickUp(f.n("rows."+row), measure.Int(1), measure.Int(3))
			f.near("crosses", crosses, float64(f.n("crosses."+strconv.Itoa(n+1))), 0)
		}
		body, arm, refused := DivideYoke(f.n("rows.7"), 12*3, 3, 6)
		if refused != nil {
			f.Fatal(refused.Why)
		}
		f.is("the body", body, f.n("rows.9"))
		f.is("the sleeve", arm, f.n("sleeve.1"))
		s := f.solve(Want{From: arm, To: f.n("sleeve.9"), Over: 8, Each: []int{3}})
		for _, row := range []int{3, 5, 7, 9} {
			f.is("a row of the sleeve", s.Counts()[row-2], f.n("sleeve."+strconv.Itoa(row)))
		}
	},

	// Along a row.
	"g-even-increase-by-size": func(f *fact) {
		for _, i := range f.sizes("before") {
			s := f.spread(SpreadWant{Over: f.n("before", i), Events: f.n("increases", i), Layout: Round, Order: OneRate})
			f.is("plain between", s.Groups[0].Plain, f.n("plain_between", i))
			f.is("plain at the end", s.Plain, f.n("plain_at_end", i))
			f.is("after", s.After, f.n("after", i))
			f.near("stitches to the centimetre", measure.Int(int64(s.After)).Div(f.num("bust_width_cm", i)).Div(measure.Int(2)), 1.96, 0.02)
		}
	},
	"g-spacing-100-16": func(f *fact) {
		s := f.spread(SpreadWant{Over: f.n("sts"), Events: f.n("inc"), Layout: Round, Order: OneRate})
		f.are("every", []int{s.Groups[0].Plain + 1}, f.list("every"))
		f.is("left over", s.Plain, f.n("left_over"))
		f.is("after", s.After, f.n("after"))
	},
	"g-spacing-140-21": func(f *fact) {
		s := f.spread(SpreadWant{Over: f.n("sts"), Events: f.n("inc"), Layout: Round, Order: Alternate})
		for i, n := range plain(s)[:f.n("inc")] {
			f.is("every", n+1, f.list("every")[i%2])
		}
		f.is("left over", s.Plain, f.n("left_over"))
		f.is("after", s.After, f.n("after"))
	},
	"g-spacing-48-12": func(f *fact) {
		s := f.spread(SpreadWant{Over: f.n("sts"), Events: f.n("inc"), Event: Between})
		f.are("before, between, after", []int{s.Groups[0].Plain, s.Groups[1].Plain, s.Plain}, []int{f.n("before_first"), f.n("between"), f.n("after_last")})
		f.is("times", s.Groups[1].Times, 11)
		f.is("after", s.After, f.n("after"))
	},
	"g-spacing-51-4": func(f *fact) {
		w := SpreadWant{Over: f.n("sts"), Events: f.n("inc"), Event: Between, Layout: Round, Order: LongFirst}
		s := f.spread(w)
		f.are("in the round", s.Positions(), f.list("round_positions"))
		f.are("intervals", plain(s)[:4], f.list("intervals"))
		w.Layout = Flat
		s = f.spread(w)
		f.are("flat", s.Positions(), f.list("flat_positions"))
		f.is("after", s.After, f.n("after"))
	},
	"g-spacing-40-4": func(f *fact) {
		s := f.spread(SpreadWant{Over: f.n("sts"), Events: f.n("inc"), Event: Between, Layout: Sections})
		f.is("sections", len(plain(s)), f.n("sections"))
		for _, n := range plain(s) {
			f.is("a section", n, f.n("section"))
		}
		f.is("after", s.After, f.n("after"))
	},
	"g-spacing-186-8": func(f *fact) {
		s := f.spread(SpreadWant{Over: f.n("sts"), Events: f.n("change"), Event: Decrease, Layout: Round})
		var every []int
		for _, n := range plain(s)[:f.n("change")] {
			every = append(every, n+2)
		}
		f.are("intervals", every, f.list("intervals_dec"))
		f.is("decreased", s.After, f.n("dec_after"))
		f.is("increased", f.spread(SpreadWant{Over: f.n("sts"), Events: f.n("change"), Layout: Round}).After, f.n("inc_after"))
	},
	"g-spacing-bonnet": func(f *fact) {
		s := f.spread(SpreadWant{Over: f.n("sts"), Events: f.n("inc"), Layout: Round, Order: OneRate})
		f.are("plain", plain(s), f.list("plain_runs"))
		f.is("after", s.After, f.n("after"))
	},
	"g-spacing-wrong-brim": func(f *fact) {
		s := f.spread(SpreadWant{Over: f.n("rows"), Events: f.n("rows") - f.n("pick_up"), Event: Skip, Layout: Round, Order: OneRate})
		f.is("picked up", s.After, f.n("pick_up"))
		f.are("picked, times, left", []int{s.Groups[0].Plain, s.Groups[0].Times, s.Plain}, []int{4, 17, 3}) // as its pattern says
	},
	"g-pickup-elysian": func(f *fact) {
		for _, i := range f.sizes("ribbing_rows") {
			n := PickUp(f.n("ribbing_rows", i), measure.Int(3), measure.Int(2)) // as its relation says
			f.near("the body", n, float64(f.n("body_sts", i)), 0)
			f.near("the chest", n.Mul(f.num("gauge.over")).Div(f.num("gauge.sts")), f.num("finished_chest", i).Float(), 0)
		}
	},
	"g-pickup-ribbing-length": func(f *fact) {
		for _, i := range f.sizes("body_sts") { // a little more than the gauge, for the ribbing is stretched
			f.near("stitches to the inch", f.num("body_sts", i).Div(f.num("ribbing_length", i)), 3.37, 0.1)
			f.is("parity", f.n("body_sts", i)%2, 1)
		}
	},

	// Circles and balls.
	"g-circle-constant": func(f *fact) {
		for key, v := range f.of {
			list, several := v.([]any)
			if !several {
				continue
			}
			first := int(list[0].(int64))
			f.are(key, FlatCircle(first, len(list)), f.list(key))
			stitch, _, _ := strings.Cut(key, "_")
			for _, s := range StartingRounds {
				if s.Stitch == stitch && (first < s.Least || first > s.Largest) {
					f.Errorf("a circle of %s begins with %d, we know %d to %d", stitch, first, s.Least, s.Largest)
				}
			}
		}
	},
	"g-circle-diameters": func(f *fact) {
		gauges := regexp.MustCompile(`\d\.\d`).FindAllString(f.of["relation"].(string), -1)
		for i, row := range f.of["rows"].([]any) {
			row := row.(map[string]any)
			stitches := num(f, strconv.FormatInt(row["sts"].(int64), 10))
			gauge := num(f, gauges[i])
			f.near("the diameter", CrownDiameter(stitches.Div(gauge)), toFloat(row["diameter"]), 0.1)
		}
	},
	"g-hat-circumference": func(f *fact) {
		g := Gauge{f.num("gauge.sts").Div(f.num("gauge.over")), f.num("gauge.rows").Div(f.num("gauge.over"))}
		for _, i := range f.sizes("sts") {
			c, refused := HatCrown(f.num("circumference", i), g, 6)
			if refused != nil {
				f.Fatal(refused.Why)
			}
			f.is("stitches", c.Stitches, f.n("sts", i))
			f.is("rounds of increases after 54", len(c.Rounds)-54/6, f.n("increase_rounds_from_54", i))
			f.near("the girth", measure.Int(int64(c.Stitches)).Div(g.Stitches), f.num("circumference", i).Float(), 0.06)
		}
	},
	"g-hat-112-14": func(f *fact) {
		// The crown is 15.7 inch round its edge, as the relation says, and the hat 1.7 inch less.
		f.near("the crown", CrownDiameter(num(f, "15.7")), float64(f.n("crown_diameter")), 0.01)
		f.near("stitches to the inch", f.num("sts").Div(f.num("circumference")), 8, 0)
	},
	"g-tam-1918": func(f *fact) {
		f.is("row 32", FlatCircle(f.n("sections"), 32)[31], f.n("row_32"))
		for _, c := range []struct {
			from, to string
			miss     int
		}{{"row_32", "row_33", 8}, {"row_33", "row_34", 7}, {"row_34", "row_35", 3}} {
			s := f.spread(SpreadWant{Over: f.n(c.from), Events: f.n(c.from) - f.n(c.to), Event: Skip, Layout: Round})
			f.is("every stitch that is missed", s.Groups[0].Plain+1, c.miss)
			f.is("groups", len(s.Groups), 1)
			f.is(c.to, s.After, f.n(c.to))
		}
	},
	"g-sphere-36": func(f *fact) {
		even := func(rows int) Step { return Step{Act: WorkEven, Times: rows} }
		six := Step{Stitches: 6, Times: 1}
		s := f.steps(StepsWant{From: 36, Steps: []Step{even(2), six, even(3), six, even(2), six}})
		f.are("the rounds", append(FlatCircle(6, 6), s.Counts()...), f.list("rounds"))
	},
	"g-sphere-48": func(f *fact) {
		rounds := f.list("rounds")
		f.are("the rounds", Ball(6, 8, 8)[:len(rounds)], rounds)
	},

	// Mitres, motifs and triangles.
	"g-mitre-minus-two": func(f *fact) {
		n, refused := MitreFromChain(f.n("foundation_ch"))
		if refused != nil {
			f.Fatal(refused.Why)
		}
		f.is("row 1", 2*n+1, f.n("row1"))
		f.are("the rows", Mitre(n), f.list("rows"))
	},
	"g-mitre-plus-two": func(f *fact) { f.are("the rows", Growing(3, 2, 6), f.list("rows")) },
	"g-square-per-side": func(f *fact) {
		f.are("a side", Motif(1, 3, 4, 6), f.list("per_side"))
		f.are("the rounds", Motif(4, 3, 4, 6), f.list("total"))
	},
	"g-hexagon-per-round": func(f *fact) {
		f.are("the whole", Motif(6, 2, 2, 5), f.list("full"))
		f.are("the half", Motif(3, 3, 2, 3), f.list("half"))
	},
	"g-wedge-72-rows": func(f *fact) {
		rows := f.list("row_counts")
		wedge, refused := Wedge(rows[0], f.n("wedge_rows"))
		if refused != nil {
			f.Fatal(refused.Why)
		}
		f.are("the rows", wedge, rows)
		f.is("the rows of all", f.n("wedges")*len(wedge), f.n("rows"))
		f.near("the edge", f.num("rows").Mul(f.num("gauge.over_in")).Div(f.num("gauge.rows")), float64(f.n("edge_circumference_in")), 0)
	},
	"g-triangle-halves": func(f *fact) {
		f.are("the rows", Triangle(6, 6, 5), f.list("rows"))
		f.are("the spaces", Triangle(1, 2, 5), f.list("spaces"))
	},
}

// runs compares the runs of a schedule, but for plain rows, with those of the fact.
func (f *fact) runs(s Schedule, key string) {
	f.Helper()
	var ours, theirs []int
	for _, r := range s.Runs {
		if r.Change != 0 {
			ours = append(ours, r.Every, r.Times)
		}
	}
	for _, run := range f.value(key).([]any) {
		for _, n := range run.([]any) {
			theirs = append(theirs, int(n.(int64)))
		}
	}
	f.are(key, ours, theirs)
}

func toFloat(v any) float64 {
	if n, whole := v.(int64); whole {
		return float64(n)
	}
	return v.(float64)
}
