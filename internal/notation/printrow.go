package notation

import (
	"strconv"

	"foundrow/internal/source"
)

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
