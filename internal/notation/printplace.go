package notation

import "foundrow/internal/stitch"

// target writes a place behind a space, with its preposition.
func (w *writer) target(t *Target, s stitch.Stitch, loop stitch.Loop) {
	w.text(" ")
	w.targetIn(t, s, "")
}

// targetIn writes a place with its preposition; loop is the name of loops said of it rather than of the stitch.
func (w *writer) targetIn(t *Target, s stitch.Stitch, loop string) {
	switch {
	case t.Where == RestUnnamed:
		if loop != "" {
			w.text("in ", loop, " ")
		}
		w.extent(&t.Till)
		return
	case t.Where == Unsaid && t.bare():
		w.text("in ", loop)
		w.till(t)
		return
	case t.Where == Both:
		w.text("through both thicknesses")
		w.till(t)
		return
	case t.Where == RowEnds && t.Name != "" && t.bare():
		w.text(t.Name)
		w.till(t)
		return
	case t.Where == OtherSide && t.Noun.Kind == NoNoun && !t.Count.Said:
		w.text("along other side")
		w.till(t)
		return
	case t.Where == OtherSide:
		w.text("in other side of ")
	case t.Over:
		w.text("over ")
	case t.Where == Between && t.bare():
		w.text("between")
		w.till(t)
		return
	case t.Where == Between:
		w.text("between ")
	case t.Around:
		w.text("around post of ")
	case s.Post != stitch.NoPost && !t.bare() && !t.Nth.Said && !t.Base:
		w.text("around ")
	default:
		w.text("in ")
	}
	if loop != "" {
		w.text(loop, " of ")
	}
	w.place(t)
}

// bare reports whether nothing is named but where.
func (t *Target) bare() bool {
	return t.Noun.Kind == NoNoun && !t.Count.Said && !t.Each && !t.Nth.Said && t.Of.Kind == NoNoun && t.Edge == nil
}

// wraps reports whether a place is named so that "around" before it cannot be taken for "all the way around".
func (t *Target) wraps() bool {
	if t.Nth.Said || t.Base {
		return false
	}
	switch t.Where {
	case Next, Same, First, Last:
		return !t.Any
	}
	return t.Each
}

var whereWords = [...]string{
	Next: "next", Same: "same", First: "first", Last: "last", Skipped: "skipped", Marked: "marked", CentreOf: "center", TopOf: "top of",
	Remaining: "rem", Joining: "joining", RestUnnamed: "",
}

// place writes a place without its preposition, with how far it goes on.
func (w *writer) place(t *Target) {
	defer w.till(t)
	if t.Base {
		w.text("base of ")
		w.noun(&t.Of, &Count{})
		return
	}
	space := false
	word := func(s string) {
		if s == "" {
			return
		}
		if space {
			w.text(" ")
		}
		w.text(s)
		space = true
	}
	if t.Each && !(t.OfWhere == Everywhere && t.Of.Kind != NoNoun) {
		switch {
		case t.Every == 2:
			word("every other")
		case t.Every > 2:
			word("every")
			w.text(" ")
			w.ordinal(&Count{Plain: t.Every})
		default:
			word("each")
		}
		if t.Count.Said && t.Every == 0 {
			word("of")
		}
	}
	where := t.Where
	of := t.Of.Kind != NoNoun && t.Where != Same
	switch {
	case of && t.Nth.Said && t.OfWhere == Unsaid:
		where = Unsaid // it says which of the units: "3rd dc of next shell"
	case where == Between, where == OtherSide:
		where = t.OfWhere
	}
	switch {
	case where == CentreOf && w.terms == stitch.UK:
		word("centre")
	case where == Same && t.That:
		word("that")
	case where == Next && t.Any:
		word("any")
	case where == Skipped && t.Count.Said && t.Of.Kind == NoNoun:
		// "2 skipped sts": below
	case int(where) < len(whereWords):
		word(whereWords[where])
	}
	if (where == TopOf || where == CentreOf) && !of && t.OfWhere != Everywhere {
		word(whereWords[t.OfWhere])
	}
	if t.Prev {
		word("prev")
	}
	if t.Nth.Said {
		word("")
		if space {
			w.text(" ")
		}
		w.ordinal(&t.Nth)
		space = true
	}
	if t.Count.Said && !of {
		if space {
			w.text(" ")
		}
		w.count(&t.Count)
		space = true
		if where == Skipped {
			word("skipped")
		}
	}
	if t.Noun.Kind != NoNoun {
		if space {
			w.text(" ")
		}
		count := t.Count
		if !count.Said || of {
			count = Count{Said: t.Where == Between || t.Where == Remaining && !t.Each}
		}
		w.noun(&t.Noun, &count)
		space = true
	}
	for i := range t.Also {
		w.text(" and ")
		w.noun(&t.Also[i], &Count{})
	}
	switch {
	case t.Where == Joining:
		word("st")
	case t.Where == FromHook:
		word("from hook")
	case t.Where == InRing && t.bare():
		word("ring")
	}
	w.placeOf(t, of)
	if t.Name != "" && t.Where != Marked {
		w.text(" ", t.Name)
	}
}

// placeOf writes what a place is part of: "of next shell", "of rnd 2", "2 rows below", "as joining".
func (w *writer) placeOf(t *Target, of bool) {
	switch {
	case of:
		w.text(" of ")
		if t.Row.Said {
			w.rowOf(t)
			w.text(" ")
			w.noun(&t.Of, &Count{})
			return
		}
		which := t.OfWhere
		if which == Unsaid && t.Nth.Said {
			which = t.Where
		}
		if which == Everywhere {
			w.text("each ")
		} else if int(which) < len(whereWords) && whereWords[which] != "" {
			w.text(whereWords[which], " ")
		}
		if t.Count.Said {
			w.count(&t.Count)
			w.text(" ")
		}
		w.noun(&t.Of, &t.Count)
	case t.Where == Same && t.Of.Kind != NoNoun:
		w.text(" as ")
		if t.OfWhere != Unsaid {
			w.text(whereWords[t.OfWhere], " ")
		}
		w.noun(&t.Of, &Count{})
	}
	if t.Row.Said {
		w.text(" of ")
		w.rowOf(t)
	}
	if t.Below > 0 {
		below := Count{Said: true, Plain: t.Below}
		w.text(" ")
		w.count(&below)
		w.number(&below, " row below", " rows below")
	}
	if t.Edge != nil {
		if t.Noun.Kind != NoNoun || t.Count.Said || t.Where != Next {
			w.text(" of ")
		} else if t.Where == Next {
			w.text(" st of ")
		}
		w.edge(t.Edge)
	}
}

func (w *writer) rowOf(t *Target) {
	if t.Round {
		w.text("rnd ")
	} else {
		w.text("row ")
	}
	w.count(&t.Row)
}
