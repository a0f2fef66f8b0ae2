package cli

import (
	"fmt"
	"strings"

	"foundrow/internal/grade"
	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/proof"
	"foundrow/internal/source"
)

func gradeCommand() command {
	return command{
		name: "grade",
		does: "show every value of a pattern in every size, and how it came about",
		lesson: `
usage: foundrow grade PATTERN [--size SIZE] [--measure NAME=LENGTH]…
                      [--gauge NAME=STITCHESxROWS]… [--json]

Shows the body measurements a pattern is graded from, every count and measure in
every size, and what is made of them in the end. Below a count stands what it
was before it was made whole, and the formula with its rule. A count you pinned
is marked with a star.

PATTERN is the name of its folder, or the path of the folder or of a file in it.

With --size only that size is shown. With --measure or --gauge the pattern is
worked for one body or one pair of hands: the measurements you do not give are
those of --size, or else of the size nearest to the ones you give. A gauge is
stitches x rows over what the pattern's gauge is over; leave one side out to
keep the pattern's, as in body=15x or body=x11.
`,
		example: `
  foundrow grade millrace
      every size of the pattern in content/patterns/millrace
  foundrow grade millrace --measure hip=104cm --measure bust=98cm --gauge body=15x11
      the same for one body, crocheted looser than the designer does
`,
		options: func(o *options) {
			o.takeStudio()
			o.taken.StringVar(&o.size, "size", "", "show one `size`, or take its measurements where none are given")
			o.each(&o.measures, "measure", "`name=length` of the body, 104cm or 41inch; may be repeated")
			o.each(&o.gauges, "gauge", "`name=15x11`, stitches and rows as you made them; may be repeated")
			o.takeJSON()
		},
		run: runGrade,
	}
}

func runGrade(s *call, o options, words []string) (int, error) {
	if len(words) != 1 {
		return couldNot, usageError{"grade takes one pattern", "as in foundrow grade millrace"}
	}
	d, err := openDesk(o, words)
	if err != nil {
		return couldNot, err
	}
	slug, err := d.slug(words[0])
	if err != nil {
		return couldNot, err
	}
	g, found := d.Pattern(slug)
	if g == nil {
		s.findings(s.talk, fromHere(found, d.studio), s.colourTalk)
		return statusOf(found), nil
	}
	sheet := sheet{title: g.Pattern.Title.Text, tape: g.Pattern.Tape, written: g.Pattern, colour: s.colour}
	if o.size != "" || o.measures != nil || o.gauges != nil {
		maker, err := makerOf(o, g.Pattern)
		if err != nil {
			return couldNot, err
		}
		one, asked := grade.WorkFor(g.Pattern, maker)
		if err := refused(asked); err != nil {
			return couldNot, err
		}
		g, sheet.own = one, o.measures != nil || o.gauges != nil
	}
	s.findings(s.talk, fromHere(found, d.studio), s.colourTalk)
	if o.json {
		s.out.Write(proof.Of(slug, g).JSON())
	} else {
		fmt.Fprint(s.out, sheet.print(g))
	}
	return statusOf(found), nil
}

// refused returns what was asked for on the command line and is not in the pattern. Findings of the pattern's own file are
// those that were printed already.
func refused(asked source.Findings) error {
	for _, f := range asked {
		if f.Place.File == "" && f.Severity == source.Error {
			return usageError{f.Message, f.Fix}
		}
	}
	return nil
}

// makerOf reads one body and one pair of hands from the options.
func makerOf(o options, p *pattern.Pattern) (grade.Maker, error) {
	m := grade.Maker{Size: o.size, Body: map[string]measure.Num{}, Gauges: map[string]pattern.Gauge{}}
	for _, word := range o.measures {
		name, length, ok := strings.Cut(word, "=")
		n, unit, err := lengthOf(length)
		if !ok || err != nil {
			return m, usageError{"--measure " + word + " is no name=length", measureFix(name, length, err)}
		}
		if isBody(p, name) {
			m.Body[name] = p.Tape.Body(n, unit)
		} else {
			m.Body[name] = p.Tape.Garment(n, unit)
		}
	}
	for _, word := range o.gauges {
		name, counts, ok := strings.Cut(word, "=")
		g, read := gaugeOf(counts)
		if !ok || !read {
			return m, usageError{"--gauge " + word + " is no name=stitches x rows", "write it as in --gauge body=15x11"}
		}
		m.Gauges[name] = g
	}
	return m, nil
}

// isBody reports whether a measurement is one of a body, whose inches are those of a tape.
func isBody(p *pattern.Pattern, name string) bool {
	for _, b := range p.Sizes.Body {
		if b.Name == name {
			return true
		}
	}
	for _, b := range p.Body {
		if b.Name.Text == name {
			return true
		}
	}
	return false
}

// lengthOf reads "104cm", "41 inch", "40.5in".
func lengthOf(word string) (measure.Num, measure.Unit, error) {
	word = strings.TrimSpace(word)
	end := strings.IndexFunc(word, func(r rune) bool { return (r < '0' || r > '9') && r != '.' })
	if end < 0 {
		end = len(word)
	}
	n, ok := measure.Parse(word[:end])
	if !ok || n.IsLost() {
		return n, 0, fmt.Errorf("%s is no number", word)
	}
	name := strings.TrimSpace(word[end:])
	if name == "in" { // it converts in a formula, but there is none here
		name = "inch"
	}
	unit, ok := measure.ParseUnit(name)
	if !ok || unit.IsMass() {
		return n, 0, fmt.Errorf("%s what?", word[:end])
	}
	return n, unit, nil
}

func measureFix(name, length string, err error) string {
	if err != nil && strings.HasSuffix(err.Error(), "what?") && length != "" {
		n := strings.TrimSuffix(err.Error(), " what?")
		return n + " what? write " + name + "=" + n + "cm or " + name + "=" + n + "inch"
	}
	return "write it as in --measure hip=104cm"
}

// gaugeOf reads "15x11", "15x" or "x11", over what the pattern's gauge is over.
func gaugeOf(word string) (pattern.Gauge, bool) {
	stitches, rows, two := strings.Cut(strings.ReplaceAll(word, "×", "x"), "x")
	var g pattern.Gauge
	read := func(word string, to *measure.Num) bool {
		if word == "" {
			return true
		}
		n, ok := measure.Parse(strings.TrimSpace(word))
		*to = n
		return ok && n.Sign() > 0
	}
	ok := read(stitches, &g.Stitches) && read(rows, &g.Rows)
	return g, two && ok && (stitches != "" || rows != "")
}
