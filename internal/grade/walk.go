package grade

import (
	"slices"
	"strconv"

	"foundrow/internal/formula"
	"foundrow/internal/source"
)

// walk visits every entry after what it needs, and settles kinds on the way. One order holds for all sizes.
func (w *plan) walk() {
	w.order = make([]int, 0, len(w.entries))
	for i := range w.entries {
		w.visit(i)
	}
	for _, l := range w.slots {
		w.check(l)
	}
	for _, s := range w.sample {
		w.check(s[0])
		w.check(s[1])
	}
}

// visit settles an entry once those it needs are settled.
func (w *plan) visit(i int) {
	e := &w.entries[i]
	if e.walked != waiting {
		return
	}
	e.walked = walking
	w.path = append(w.path, i)
	for l := e.lines[0]; l < e.lines[1]; l++ {
		w.needs(i, w.lines[l].f, w.lines[l].in)
	}
	for _, p := range e.pins {
		w.needs(i, w.lines[p.line].f, inRows)
	}
	for _, s := range e.slots {
		w.needs(i, w.p.Slots[s].Formula, inRows)
	}
	if e.what == piece {
		w.needsOfPiece(i)
	}
	w.needsMore(i)
	w.path = w.path[:len(w.path)-1]
	w.settle(i)
	if e.told {
		e.kind = formula.Unknown
	}
	e.walked = done
	w.order = append(w.order, i)
}

// needsMore visits what an entry needs without naming it in a formula: the body a measurement goes round; the wish that is
// made, and the count it is found from.
func (w *plan) needsMore(i int) {
	e := &w.entries[i]
	switch {
	case e.what == finished && e.wish != none:
		w.need(i, e.wish)
		if e.measure.Made == nil {
			w.findCount(i)
		}
	case e.measure != nil && e.measure.Body.Text != "":
		b, there := w.byName[e.measure.Body.Text]
		if !there || w.entries[b].role != Body {
			w.noBody(e.measure.Body)
			return
		}
		e.body = b
		w.entries[b].used = true
		w.need(i, b)
		w.hasCells(&w.entries[b], e.measure.Body.Span)
	}
}

// needs visits what the names of a formula stand for.
func (w *plan) needs(i int, f *formula.Formula, in scope) {
	for _, n := range f.Names() {
		if t := w.target(n, in); t != none {
			w.entries[t].used = true
			w.need(i, t)
		}
	}
}

// need visits an entry, or closes a circle with one that is being walked.
func (w *plan) need(i, t int) {
	switch w.entries[t].walked {
	case waiting:
		w.visit(t)
	case walking:
		if !slices.Contains(w.circles, [2]int{i, t}) {
			w.circles = append(w.circles, [2]int{i, t})
			w.circle(w.path[slices.Index(w.path, t):])
		}
	}
}

// target returns the entry a name stands for, or none.
func (w *plan) target(n formula.Name, in scope) int {
	if n.Of != "" {
		if t, there := w.byName[n.Text+"."]; there {
			return t
		}
		return none
	}
	t, there := w.byName[n.Text]
	if !there {
		return none
	}
	if made := w.entries[t].made; in == inText && made != none && !w.entries[made].told {
		return made
	}
	return t
}

// circle reports entries each of which needs the next and the last the first, at the first of them in the file.
func (w *plan) circle(members []int) {
	first := 0
	for m, i := range members {
		w.entries[i].told = true
		if w.entries[i].name.Span.From < w.entries[members[first]].name.Span.From {
			first = m
		}
	}
	start := &w.entries[members[first]]
	if len(members) == 1 {
		w.report(start.name.Span, "circle", w.call(start)+" needs itself", "write a formula that does not use "+start.name.Text)
		return
	}
	said := w.call(start) + " needs"
	for m := range members[1:] {
		e := &w.entries[members[(first+m+1)%len(members)]]
		said += " " + w.call(e) + " (line " + strconv.Itoa(w.p.File.Place(e.name.Span).Line) + "), which needs"
	}
	w.report(start.name.Span, "circle", said+" "+w.call(start)+": a circle, in which none can be worked out first", "give one of them a formula that does not use the others")
}

// call names an entry in a sentence.
func (w *plan) call(e *entry) string {
	switch {
	case e.what == piece:
		return "the piece " + e.name.Text
	case e.what == finished && e.wish != none:
		return "what is made of " + e.name.Text
	}
	return e.name.Text
}

// name settles what a name in a formula stands for.
func (w *plan) name(n formula.Name, in scope) (int, formula.Kind) {
	if n.Of != "" {
		return w.askOf(n)
	}
	t := w.target(n, in)
	if t == none {
		w.unknown(n)
		return 0, formula.Unknown
	}
	e := &w.entries[t]
	e.used = true
	if e.told || e.walked != done {
		return t, formula.Unknown
	}
	w.hasCells(e, n.Span)
	return t, e.kind
}

// check settles the kinds of a line and returns what it makes.
func (w *plan) check(i int) formula.Kind {
	l := &w.lines[i]
	w.reading = l.f
	var findings source.Findings
	l.checked, findings = l.f.Check(&w.scopes[l.in])
	w.findings = append(w.findings, findings...)
	return l.checked.Kind
}

func (w *plan) report(at source.Span, rule, message, fix string) {
	w.findings.Report(w.p.File, at, rule, message, fix)
}

func (w *plan) ask(at source.Span, rule, message, fix string) {
	w.findings.Ask(w.p.File, at, rule, message, fix)
}
