package cli

import (
	"fmt"
	"strings"
	"text/tabwriter"

	"foundrow/internal/grade"
	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

func swatchCommand() command {
	return command{
		name: "swatch",
		does: "turn what you counted on a swatch into a gauge, and see what it does to a pattern",
		lesson: `
usage: foundrow swatch [--count READING]… [--washed READING]… [--hung READING]…
                       [--for PATTERN] [--gauge NAME] [--studio FOLDER] [--json]

A READING is what you counted over what you measured, as you would say it:

  16 sts, 20 rows over 10.5 cm by 11 cm
  24 sts over 6 inch
  18 rows over 9 cm

Count in the middle of the swatch, over as much as you can, in several places:
half a stitch that is not seen in 10 cm is nearly 2 cm in the width of a front. All that
was counted over all that was measured is your gauge. Give the readings taken
off the hook with --count, those of the washed and dried swatch with --washed,
and those taken while it hangs with its weight pinned to it with --hung. The
gauge is that of the last of these states you measured, because that is how the
thing is worn; you see what each step did.

You get a gauge table for the front matter, to the tenth of a stitch. With --for
you also see a pattern's finished measurements in that gauge: with the counts as
they are written now, and counted anew. --gauge says which of its gauges it is,
where it has more than one.
`,
		example: `
  foundrow swatch --count "17 sts, 12 rows over 10 cm" --washed "31 sts, 24 rows over 20 cm by 20.5 cm"
      the table to paste, and what washing did
  foundrow swatch --hung "32 sts, 22 rows over 20 cm" --hung "24 sts over 15.5 cm" --for millrace --gauge body
      two readings of a hanging swatch, and what becomes of the pattern in content/patterns/millrace
`,
		options: func(o *options) {
			o.takeStudio()
			o.each(&o.readings[offHook], "count", "a `reading` taken off the hook; may be repeated")
			o.each(&o.readings[washed], "washed", "a `reading` of the washed and dried swatch; may be repeated")
			o.each(&o.readings[hung], "hung", "a `reading` taken while it hangs; may be repeated")
			o.taken.StringVar(&o.pattern, "for", "", "see what becomes of a `pattern`")
			o.taken.StringVar(&o.gauge, "gauge", "", "the `name` of the gauge, in the front matter")
			o.takeJSON()
		},
		run: runSwatch,
	}
}

// The states of a swatch, in the order it goes through them.
const (
	offHook = iota
	washed
	hung
	swatchStates
)

// stateNames are the states as the command line and as the front matter say them.
var stateNames = [swatchStates]struct{ said, written string }{{"off the hook", "relaxed"}, {"washed", "blocked"}, {"hung", "hung"}}

// A swatch is what was measured of a swatch in every state, in the unit of a tape.
type swatch struct {
	name   string // of the gauge
	tape   measure.Tape
	states [swatchStates]grade.Swatch
	last   int // the state that counts
	grade  *grade.Grade
	slug   string
}

func runSwatch(s *call, o options, words []string) (int, error) {
	if len(words) > 0 {
		return couldNot, usageError{"swatch takes no words: " + words[0], `write what you counted behind an option, as in --washed "16 sts, 20 rows over 10.5 cm by 11 cm"`}
	}
	sw := swatch{name: o.gauge, last: -1, tape: tapeOf(o.readings)}
	var found source.Findings
	if o.pattern != "" {
		d, err := openDesk(o, []string{o.pattern})
		if err != nil {
			return couldNot, err
		}
		if sw.slug, err = d.slug(o.pattern); err != nil {
			return couldNot, err
		}
		sw.grade, found = d.Pattern(sw.slug)
		if s.findings(s.talk, fromHere(found, d.studio), s.colourTalk); sw.grade == nil {
			return statusOf(found), nil
		}
		sw.tape = sw.grade.Pattern.Tape
		if err := sw.gaugeOfPattern(); err != nil {
			return couldNot, err
		}
	}
	if sw.name == "" {
		sw.name = "body"
	}
	for state, words := range o.readings {
		var readings []grade.Reading
		for _, w := range words {
			r, err := readingOf(w, sw.tape)
			if err != nil {
				return couldNot, err
			}
			readings = append(readings, r)
		}
		if len(readings) > 0 {
			sw.last, sw.states[state] = state, grade.Measure(readings, sw.over())
		}
	}
	if sw.last < 0 {
		return couldNot, usageError{"swatch needs what you counted", `as in foundrow swatch --washed "16 sts, 20 rows over 10.5 cm by 11 cm"`}
	}
	if o.json {
		s.out.Write(sw.json())
	} else {
		fmt.Fprint(s.out, sw.print())
	}
	return statusOf(found), nil
}

// gaugeOfPattern settles which gauge of the pattern is meant.
func (sw *swatch) gaugeOfPattern() error {
	var names []string
	for _, g := range sw.grade.Pattern.Gauges {
		if names = append(names, g.Name.Text); g.Name.Text == sw.name {
			return nil
		}
	}
	switch near := source.Nearest(sw.name, names); {
	case len(names) == 0:
		return usageError{"the pattern " + sw.slug + " has no gauge", "leave out --for, and paste what you get"}
	case sw.name == "" && len(names) == 1:
		sw.name = names[0]
		return nil
	case sw.name == "":
		return usageError{"the pattern " + sw.slug + " has several gauges: " + source.List(names, "and"), "say which, as in --gauge " + names[0]}
	case near != "":
		return usageError{"the pattern " + sw.slug + " has no gauge " + sw.name, "did you mean " + near + "?"}
	}
	return usageError{"the pattern " + sw.slug + " has no gauge " + sw.name, "its gauges are " + source.List(names, "and")}
}

// over is what a gauge is written over.
func (sw *swatch) over() measure.Num {
	if sw.tape.Unit == measure.Inch {
		return measure.Int(4)
	}
	return measure.Int(10)
}

// tenth is a gauge as it is written: to the tenth, which at 15 stitches is a third of a per cent at most.
func tenth(n measure.Num) measure.Num {
	return measure.Nearest(n, measure.Ratio(1, 10), measure.Num{})
}

// gauge is the swatch as the table says it.
func (sw *swatch) gauge() pattern.Gauge {
	g := pattern.Gauge{Over: sw.over(), RowsOver: sw.over()}
	g.Stitches, g.Rows = tenth(sw.states[sw.last].Stitches.Mean), tenth(sw.states[sw.last].Rows.Mean)
	return g
}

// far is the spread above which readings should be taken again. Common practice, no source: one twentieth is a size.
var far = measure.Ratio(1, 20)

func (sw *swatch) print() string {
	var b strings.Builder
	sw.table(&b)
	sw.readings(&b)
	if sw.grade != nil {
		sw.become(&b)
	}
	return b.String()
}

// table writes the gauge table to paste.
func (sw *swatch) table(b *strings.Builder) {
	g := sw.gauge()
	fmt.Fprintf(b, "[gauge.%s]\n", sw.name)
	if sw.grade != nil {
		for _, was := range sw.grade.Pattern.Gauges {
			if was.Name.Text == sw.name && was.Stitch != "" {
				fmt.Fprintf(b, "stitch   = %q\n", was.Stitch)
			}
		}
	}
	for _, line := range [...]struct {
		name  string
		n, of measure.Num
	}{{"stitches", g.Stitches, sw.states[sw.last].Stitches.Mean}, {"rows", g.Rows, sw.states[sw.last].Rows.Mean}} {
		if line.n.Sign() == 0 {
			continue
		}
		fmt.Fprintf(b, "%-8s = %s", line.name, line.n.Decimal(1))
		if line.n != line.of {
			fmt.Fprintf(b, "   # %s exactly", line.of)
		}
		b.WriteString("\n")
	}
	if sw.tape.Unit == measure.Inch {
		b.WriteString("over     = \"4 inch\"\n")
	}
	fmt.Fprintf(b, "state    = %q\n", stateNames[sw.last].written)
}

// readings writes what was read in every state, and what each step did.
func (sw *swatch) readings(b *strings.Builder) {
	over := " over " + sw.over().String() + " " + unitOf(sw.tape).String()
	before := -1
	for state, of := range sw.states {
		if of.Stitches.Readings+of.Rows.Readings == 0 {
			continue
		}
		fmt.Fprintf(b, "\n%s%s\n", stateNames[state].said, over)
		for _, line := range [...]struct {
			noun string
			of   grade.Spread
			was  grade.Spread
		}{{"sts", of.Stitches, sw.states[max(before, 0)].Stitches}, {"rows", of.Rows, sw.states[max(before, 0)].Rows}} {
			if line.of.Readings == 0 {
				continue
			}
			fmt.Fprintf(b, "  %s %s", line.of.Mean.Decimal(2), line.noun)
			if line.of.Readings > 1 {
				fmt.Fprintf(b, ", from %s to %s in %d readings", line.of.Least.Decimal(2), line.of.Most.Decimal(2), line.of.Readings)
			}
			if before >= 0 && line.was.Readings > 0 {
				fmt.Fprintf(b, "; %s than %s", changed(line.was.Mean, line.of.Mean), stateNames[before].said)
			}
			b.WriteString("\n")
			if far.Less(line.of.Apart()) {
				fmt.Fprintf(b, "    these lie %s%% apart: count again, over more\n", line.of.Apart().Mul(measure.Int(100)).Decimal(1))
			}
		}
		before = state
	}
}

// changed words how one number is more or less than another: "3.1% fewer".
func changed(from, to measure.Num) string {
	share := to.Sub(from).Div(from)
	if share.Sign() == 0 {
		return "no more and no fewer"
	}
	return more(share)
}

// become writes the pattern's finished measurements as they are and in the gauge of the swatch.
func (sw *swatch) become(b *strings.Builder) {
	g := sw.grade
	kept, anew := grade.InGauge(g.Pattern, sw.name, sw.gauge())
	sizes := strings.Join(g.Sizes, "\t")
	fmt.Fprintf(b, "\n%s in this gauge, %s\n", g.Pattern.Title.Text, unitOf(sw.tape))
	t := tabwriter.NewWriter(b, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprintf(t, "\t%s\t\n", sizes)
	changes := 0
	for i, f := range g.Finished {
		was, as, again := sw.lengths(f.Made), sw.lengths(kept.Finished[i].Made), sw.lengths(anew.Finished[i].Made)
		if was == as && was == again {
			continue
		}
		changes++
		name := f.Label
		if name == "" {
			name = f.Name
		}
		fmt.Fprintf(t, "%s now\t%s\t\ncounts kept\t%s\t\ncounted anew\t%s\t\n", name, was, as, again)
	}
	if changes == 0 {
		b.WriteString("  no finished measurement changes\n")
	} else {
		t.Flush()
	}
	var names []string
	for i, v := range g.Values {
		if v.Role == grade.Count && !same(v, anew.Values[i]) {
			names = append(names, v.Name)
		}
	}
	if len(names) > 0 {
		b.WriteString("counts that change with it: " + source.List(names, "and") + "\n")
	}
}

func same(a, b grade.Value) bool {
	for s := range a.BySize {
		if a.BySize[s].Num != b.BySize[s].Num {
			return false
		}
	}
	return true
}

// lengths prints finished measurements as a tape shows them.
func (sw *swatch) lengths(made []measure.Num) string {
	words := make([]string, len(made))
	for i, n := range made {
		switch {
		case n.IsLost():
			words[i] = "?"
		case sw.tape.Unit == measure.Inch:
			words[i] = measure.Inches(n)
		default:
			words[i] = measure.Centimetres(n)
		}
	}
	return strings.Join(words, "\t")
}
