package notation

import (
	"strconv"
	"strings"

	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

// only writes "Sizes M and 3X to 5X only: ".
func (w *writer) only(o Only) {
	switch {
	case o.Rest:
		w.text("All other sizes: ")
	case len(o.Names) == 1 && !strings.Contains(o.Names[0], " to "):
		w.text("Size ", o.Names[0], " only: ")
	case len(o.Names) > 0:
		w.text("Sizes ", source.List(o.Names, "and"), " only: ")
	}
}

// label writes "Row 3 (RS)", "Rnds 9 to 16", "Next 5 (6, 7, 9) rows", "Row 8 and alt rows".
func (w *writer) label(l *Label) {
	if l.Words == "" && len(l.Numbers) == 0 && !l.Times.Said {
		return
	}
	if l.Bare {
		w.rangeList(l.Numbers, ", ")
		w.text(".")
		return
	}
	unit := rowWord(l.Round)
	if l.Short {
		w.text("R")
		w.rangeList(l.Numbers, " and ")
		w.labelSays(l)
		return
	}
	several := l.Times.Said && !(l.Times.plain() && l.Times.Plain == 1) || len(l.Numbers) > 1 || len(l.Numbers) == 1 && l.Numbers[0].To.Said
	if l.Words != "" {
		w.text(capital(w.prose(l.Words)), " ")
	} else {
		unit = capital(unit)
	}
	if l.Times.Said {
		w.count(&l.Times)
		w.text(" ")
	}
	w.text(unit)
	if several {
		w.text("s")
	}
	if len(l.Numbers) > 0 {
		w.text(" ")
		w.rangeList(l.Numbers, " and ")
	}
	if l.Every == AndAlternate {
		w.text(" and alt ", rowWord(l.Round), "s")
	}
	w.labelSays(l)
}

func rowWord(round bool) string {
	if round {
		return "rnd"
	}
	return "row"
}

// labelSays writes what a label says in brackets.
func (w *writer) labelSays(l *Label) {
	if l.Side != NoSide {
		w.text([...]string{RightSide: " (RS)", WrongSide: " (WS)"}[l.Side])
	}
	if l.Yarn != "" {
		w.text(" (", l.Yarn, ")")
	}
	if l.Remark != "" {
		w.text(" (", w.prose(l.Remark), ")")
	}
}

// rangeList writes "3", "3 to 8", "4, 6 and 8".
func (w *writer) rangeList(rs []Range, last string) {
	for i := range rs {
		switch {
		case i > 0 && i == len(rs)-1:
			w.text(last)
		case i > 0:
			w.text(", ")
		}
		w.count(&rs[i].From)
		if rs[i].To.Said {
			w.text(" to ")
			w.count(&rs[i].To)
		}
	}
}

// rows writes "row 2", "rows 2 and 3".
func (w *writer) rows(rs []Range, round bool) {
	if round {
		w.text("rnd")
	} else {
		w.text("row")
	}
	if len(rs) > 1 || rs[0].To.Said {
		w.text("s")
	}
	w.text(" ")
	w.rangeList(rs, " and ")
}

// repeatRows writes "repeat rows 2 and 3 until 5 sts remain, ending with row 2".
func (w *writer) repeatRows(a *Again) {
	w.text("repeat ")
	switch {
	case a.Last.Said && a.Last.plain() && a.Last.Plain == 1:
		w.text("last ", rowWord(a.Round))
	case a.Last.Said:
		w.text("last ")
		w.count(&a.Last)
		w.text(" ", rowWord(a.Round), "s")
	default:
		w.rows(a.Rows, a.Round)
	}
	if a.Extent.Kind != NotSaid {
		w.text(" ")
		w.extent(&a.Extent)
	}
	if len(a.Ending) > 0 {
		w.text(", ending with ")
		w.rows(a.Ending, a.Round)
	}
	if a.EndSide != NoSide {
		w.text(", ending with a ", [...]string{RightSide: "RS", WrongSide: "WS"}[a.EndSide], " row")
	}
	if a.Reversed {
		w.text(", reversing all shaping")
	}
	if len(a.Then) > 0 {
		w.text(", ")
		w.clauses(a.Then)
	}
}

// claims writes "82 dc, 4 ch-2 sps".
func (w *writer) claims(cs []Claim) []Part {
	for i := range cs {
		c := &cs[i]
		if i > 0 {
			w.text(", ")
		}
		if i == 0 || !sameOnly(c.Only, cs[i-1].Only) {
			w.only(c.Only)
		}
		if c.Groups.Said {
			w.count(&c.Groups)
			w.number(&c.Groups, " group of ", " groups of ")
		}
		w.count(&c.Count)
		if c.Noun.Kind != NoNoun {
			w.text(" ")
			w.noun(&c.Noun, &c.Count)
		}
		switch c.Change {
		case 1:
			w.text(" inc'd")
		case -1:
			w.text(" dec'd")
		}
		if c.Per != "" {
			w.text(" ", c.Per)
		}
		if c.With != "" {
			w.text(" ", w.prose(c.With))
		}
	}
	return w.take()
}

func sameOnly(a, b Only) bool {
	if a.Rest != b.Rest || len(a.Names) != len(b.Names) {
		return false
	}
	for i := range a.Names {
		if a.Names[i] != b.Names[i] {
			return false
		}
	}
	return true
}

// start writes what a piece begins on.
func (w *writer) start(s *Start) {
	if s.Count.Said {
		w.count(&s.Count)
		w.text(" ")
		w.noun(&s.Noun, &s.Count)
		return
	}
	for i := range s.Edges {
		if i > 0 {
			w.text(", ")
		}
		w.edge(&s.Edges[i])
	}
	if s.Around {
		w.text(", around")
	}
	if len(s.Edges) > 0 && len(s.Pickup) > 0 {
		w.text(", ")
	}
	w.clauses(s.Pickup)
	w.clauses(s.Body)
}

// edge writes "first 55 sts of yoke.last", "body.last from marker a to marker b", "sts of row 5".
func (w *writer) edge(e *Edge) {
	switch {
	case e.First.Said:
		w.text("first ")
		w.count(&e.First)
		w.number(&e.First, " st", " sts")
		w.text(" of ")
	case e.Last.Said:
		w.text("last ")
		w.count(&e.Last)
		w.number(&e.Last, " st", " sts")
		w.text(" of ")
	case e.Row.Said:
		w.text("sts of ")
	}
	if e.Row.Said {
		w.text("row ")
		w.count(&e.Row)
	} else {
		w.edgeName(e)
	}
	if e.From != "" {
		w.text(" from marker ", e.From)
	}
	if e.To != "" {
		w.text(" to marker ", e.To)
	}
}

// other writes the lines that are no rows.
func (w *writer) other(l Line) (label, body []Part) {
	name := func(s string) {
		w.text(s)
		label = w.take()
	}
	switch l := l.(type) {
	case *Rule:
		name("Throughout")
		w.rule(l)
		return label, w.take()
	case *Note:
		name("Note")
		w.text(w.prose(l.Text))
		return label, w.take()
	case *Film:
		name("Film")
		w.text(clock(l.Seconds))
		return label, w.take()
	case *Mark:
		w.text("Place marker ", l.Name, " in the ")
		if l.Last {
			w.text("last")
		} else {
			w.ordinal(&l.In)
		}
		w.text(" st")
	case *Seam:
		name("Seam")
		w.edge(&l.Edges[0])
		w.text(" to ")
		w.edge(&l.Edges[1])
		return label, w.take()
	case *Chart:
		name("Chart")
		w.rows(l.Rows, false)
		return label, w.take()
	case *Lengthen:
		w.text("Lengthen or shorten here")
		if l.Step.Said {
			w.text(", in steps of ")
			w.count(&l.Step)
			w.number(&l.Step, " row", " rows")
		}
	case *Work:
		name("Work")
		w.text(source.List(l.Names, "and"))
		return label, w.take()
	case *Unread:
		w.text(l.Text)
		return nil, w.take()
	}
	return label, w.sentence()
}

// clock writes seconds as "8:40" or "1:02:03".
func clock(s int) string {
	two := func(n int) string {
		if n < 10 {
			return "0" + strconv.Itoa(n)
		}
		return strconv.Itoa(n)
	}
	if s >= 3600 {
		return strconv.Itoa(s/3600) + ":" + two(s/60%60) + ":" + two(s%60)
	}
	return strconv.Itoa(s/60) + ":" + two(s%60)
}

// rule writes a sentence of the closed list.
func (w *writer) rule(r *Rule) {
	what := func() {
		if r.Skipped {
			w.text("skipped ")
		}
		switch {
		case r.Noun.Kind == AChain && r.Chain.Said:
			w.text("ch ")
			w.count(&r.Chain)
		default:
			w.noun(&r.Noun, &Count{})
		}
	}
	switch r.Kind {
	case ChainCounts:
		what()
		w.text(" counts as ")
		w.countsAs(r.Stitch, &r.Plus)
	case ChainDoesNotCount:
		what()
		w.text(" does not count as a st")
	case ChainStands:
		what()
		w.text(" stands but is not in the count")
	case RepeatIsTotal:
		w.text("rep from * n times means n in all")
	case RepeatIsMore:
		w.text("rep from * n times means n more")
	case NumberFirstIsRun:
		w.text("3 ", stitch.Stitch{Name: "sc"}.In(w.terms), " means ", stitch.Stitch{Name: "sc"}.In(w.terms), " in each of next 3 sts")
	case NumberFirstIsOnePlace:
		w.text("3 ", stitch.Stitch{Name: "sc"}.In(w.terms), " means 3 ", stitch.Stitch{Name: "sc"}.In(w.terms), " in one st")
	case ChainsAreStitches:
		w.text("each ")
		w.noun(&r.Noun, &Count{})
		w.text(" counts as ")
		if r.Sts.Said {
			w.count(&r.Sts)
			w.number(&r.Sts, " st", " sts")
		} else {
			w.text("a st")
		}
	case Defines:
		w.defines(r)
	case SlipsAreStitches:
		w.text("each ", stitch.Stitch{Name: "sl st"}.In(w.terms), " counts as a st")
	case SlipsDoNotCount:
		w.text(stitch.Stitch{Name: "sl st"}.In(w.terms), " does not count as a st")
	case CountOf:
		w.text("counts are of ")
		w.noun(&r.Noun, &Count{Said: true})
	}
}

// defines writes what a name stands for.
func (w *writer) defines(r *Rule) {
	name := r.Name
	if r.Stitch.Standard() {
		name = r.Stitch.In(w.terms)
	}
	if len(r.How) > 0 {
		w.text(name, " = ")
		w.clauses(r.How)
		if r.First {
			w.text("; it is the first st of the round")
		}
		return
	}
	w.text(name)
	if r.Makes.Said {
		w.text(" makes ")
		w.count(&r.Makes)
		w.number(&r.Makes, " st", " sts")
	}
	if r.Uses.Said {
		if r.Makes.Said {
			w.text(" in ")
		} else {
			w.text(" uses ")
		}
		w.count(&r.Uses)
		w.number(&r.Uses, " st", " sts")
	}
}
