package grade

import (
	"foundrow/internal/formula"
	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// A plan is everything of a pattern that has a value, each an entry that may need others, and the order in which all of them
// are worked in every size.
type plan struct {
	p       *pattern.Pattern
	bench   workbench // the pieces
	scopes  [3]formula.Scope
	gauges  []pattern.Gauge // those that are worked with: the pattern's, or a maker's
	sizes   []int           // which sizes of the pattern are worked, by their place in it
	maker   bool            // for a maker's own body or hands: pins and sample, which are for the designer's, do not hold
	entries []entry
	byName  map[string]int
	lines   []line
	asks    []ask
	slots   []int    // by slot of the pattern, its line
	sample  [][2]int // by assertion, the lines of what it is about and of what it says
	order   []int    // entries in the order of working
	path    []int    // entries being walked, each needed by the one before
	circles [][2]int // who needs whom, where a circle closes: each is told once
	reading *formula.Formula

	slotValues   [][]formula.Value
	sampleValues [][2]formula.Value
	remarks      []sizedRemark
	findings     source.Findings
}

// An entry is one thing that has a value.
type entry struct {
	what  what
	role  Role
	named bool // it is one of the grade's values
	name  pattern.Words
	label string

	table   *pattern.BodyMeasurement // of a size table
	measure *pattern.Measure         // of a wish and of what is made of it
	parts   []part                   // the formulas that define it
	ease    []part                   // what is added to its body
	pins    []part                   // the designer's own choice for some sizes
	lines   [2]int                   // the lines of all these
	body    int                      // the entry of the body measurement of a measure, or none
	made    int                      // of a wish: the entry of what is made of it, or none
	wish    int                      // of what is made: its wish, or none
	through []int                    // of what is made and found from a count: the measurements between the wish and the count, and it
	slots   []int                    // of a piece: the slots in its rows
	given   *measure.Num             // what a maker put in for it

	walked   walked
	told     bool // it is known to have no value, and that was told: what hangs on it makes no finding of its own
	fraction bool // it is a count and not whole, and that was told
	used     bool
	kind     formula.Kind
	bySize   []formula.Value
	pinned   []bool
}

type what uint8

const (
	published what = iota // a row of a size table
	defined               // by formulas
	finished              // a measurement of the thing made
	piece                 // of rows
)

type walked uint8

const (
	waiting walked = iota
	walking
	done
)

// none marks an entry that is not there.
const none = -1

// A part is a formula and the sizes it holds for; nil for all.
type part struct {
	sizes []int
	line  int
}

// A line is one formula of the pattern, and who is spoken of when something is found in it.
type line struct {
	f       *formula.Formula
	in      scope
	subject string
	checked formula.Checked
}

// A scope is what a measurement's name stands for in a formula: in rows and definitions it is the wish, from which counts are
// made; in the text it is what they make. Lengths written under [body] are physical.
type scope uint8

const (
	inRows scope = iota
	inText
	inBody
)

// unnamed are the sizes of a pattern that has none.
var unnamed = []string{""}

func newPlan(p *pattern.Pattern) *plan {
	w := &plan{p: p, gauges: p.Gauges}
	common := formula.Scope{Tape: p.Tape, Sizes: p.Sizes.Names}
	if len(common.Sizes) == 0 {
		common.Sizes = unnamed
	}
	for _, g := range p.Gauges {
		common.Gauges = append(common.Gauges, gauge(g))
	}
	for in := range w.scopes {
		w.scopes[in] = common
		w.scopes[in].Name = func(n formula.Name) (int, formula.Kind) { return w.name(n, scope(in)) }
	}
	w.scopes[inBody].Body = true
	w.enter()
	return w
}

func gauge(g pattern.Gauge) formula.Gauge {
	out := formula.Gauge{Name: g.Name.Text, Stitches: g.Stitches, Over: g.Over, Rows: g.Rows, RowsOver: g.RowsOver}
	if out.RowsOver.Sign() == 0 {
		out.RowsOver = out.Over
	}
	return out
}

// enter makes the entries of a pattern, in the order of the file.
func (w *plan) enter() {
	p := w.p
	many := len(p.Sizes.Body) + len(p.Body) + 2*len(p.Measures) + len(p.Counts) + len(p.Notions) + len(p.Pieces)
	w.entries = make([]entry, 0, many)
	w.lines = make([]line, 0, many+len(p.Pins)+len(p.Slots)+2*len(p.Sample))
	w.byName = make(map[string]int, many)
	for i := range p.Sizes.Body {
		b := &p.Sizes.Body[i]
		e := blank(published, Body, pattern.Words{Text: b.Name})
		e.named, e.table, e.label = true, b, b.Label
		w.add(e)
	}
	for _, d := range p.Body {
		w.define(d, Body, inBody)
	}
	for i := range p.Measures {
		w.measure(&p.Measures[i])
	}
	for _, d := range p.Counts {
		w.define(d, Count, inRows)
	}
	for i := range p.Measures {
		w.finish(&p.Measures[i])
	}
	w.pin()
	w.amounts()
	w.enterSlots()
	w.enterSample()
}

func blank(as what, role Role, name pattern.Words) entry {
	return entry{what: as, role: role, name: name, body: none, made: none, wish: none}
}

// add appends an entry. A name that is there already is replaced under [body], where a pattern may measure what its table
// measures; elsewhere package manuscript has said that it is taken.
func (w *plan) add(e entry) int {
	i := len(w.entries)
	if before, taken := w.byName[e.name.Text]; e.named && e.role != Amount {
		switch {
		case !taken:
			w.byName[e.name.Text] = i
		case e.role == Body:
			w.entries[before].named, w.entries[before].used = false, true
			w.byName[e.name.Text] = i
		}
	}
	w.entries = append(w.entries, e)
	return i
}

// definition is an entry with the formulas of a definition.
func (w *plan) definition(d pattern.Definition, role Role, in scope) entry {
	e := blank(defined, role, d.Name)
	e.named = true
	e.lines[0] = len(w.lines)
	e.parts = w.parts(d.Parts, in, d.Name.Text)
	e.lines[1] = len(w.lines)
	return e
}

func (w *plan) define(d pattern.Definition, role Role, in scope) {
	w.add(w.definition(d, role, in))
}

// parts makes lines of formulas.
func (w *plan) parts(parts []pattern.Part, in scope, subject string) []part {
	if len(parts) == 0 {
		return nil
	}
	out := make([]part, len(parts))
	for i, pt := range parts {
		out[i] = part{pt.Sizes, w.line(pt.Formula, in, subject)}
	}
	return out
}

func (w *plan) line(f *formula.Formula, in scope, subject string) int {
	w.lines = append(w.lines, line{f: f, in: in, subject: subject})
	return len(w.lines) - 1
}

// measure enters what is wished of a measurement. One that says only what is made has no wish: its name is what is made.
func (w *plan) measure(m *pattern.Measure) {
	if len(m.Parts) == 0 && m.Body.Text == "" && m.Made != nil {
		w.add(w.madeBy(m, true))
		return
	}
	e := w.definition(m.Definition, Wish, inRows)
	e.label, e.measure = m.Label, m
	e.ease = w.parts(m.Ease, inRows, m.Name.Text)
	e.lines[1] = len(w.lines)
	w.add(e)
}

// madeBy is the entry of what is made, by its formula where there is one.
func (w *plan) madeBy(m *pattern.Measure, named bool) entry {
	e := blank(finished, Wish, m.Name)
	e.named, e.label, e.measure = named, m.Label, m
	e.lines[0] = len(w.lines)
	if m.Made != nil {
		e.parts = w.parts([]pattern.Part{{Formula: m.Made}}, inText, m.Name.Text)
	}
	e.lines[1] = len(w.lines)
	return e
}

// finish enters what is made of a wish.
func (w *plan) finish(m *pattern.Measure) {
	i, there := w.byName[m.Name.Text]
	if !there || w.entries[i].measure != m || w.entries[i].what == finished || !m.Finished && m.Made == nil {
		return
	}
	e := w.madeBy(m, false)
	e.wish = i
	w.entries[i].made = w.add(e)
}

// amounts enters how much of a yarn and how many of a notion each size takes.
func (w *plan) amounts() {
	for _, y := range w.p.Yarns {
		for _, d := range y.Amounts {
			d.Name.Text = y.Name.Text + "." + d.Name.Text
			w.define(d, Amount, inText)
		}
	}
	for _, n := range w.p.Notions {
		if len(n.Amount) > 0 {
			w.define(pattern.Definition{Name: n.Name, Parts: n.Amount}, Amount, inText)
		}
	}
}
