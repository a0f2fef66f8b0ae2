package notation

import "foundrow/internal/stitch"

// hasEnding reports whether a clause closes with the ending of its last time, which a semicolon ends.
func hasEnding(c Clause) bool {
	switch c := c.(type) {
	case *Group:
		return len(c.Ending)+len(c.Instead) > 0
	case *Repeat:
		return len(c.Ending)+len(c.Instead) > 0
	}
	return false
}

// group writes clauses in brackets, with how often and where.
func (w *writer) group(g *Group) {
	if g.OnTheWay {
		w.text("working ")
	}
	if g.Bracket == 0 { // joined by "and"
		for i, c := range g.Body {
			if i > 0 {
				w.text(" and ")
			}
			w.clause(c)
		}
	} else {
		open, shut := "(", ")"
		if g.Bracket == '[' {
			open, shut = "[", "]"
		}
		w.text(open)
		w.clauses(g.Body)
		w.text(shut)
	}
	if g.Extent.Kind != NotSaid {
		w.text(" ")
		w.extent(&g.Extent)
	}
	if g.In != nil {
		s := stitch.Stitch{}
		if len(g.Body) > 0 {
			if m, ok := g.Body[len(g.Body)-1].(*Make); ok && g.In.wraps() {
				s = m.Stitch
			}
		}
		w.target(g.In, s, 0)
	}
	w.ending(g.Ending, g.Instead)
}

// repeat writes "*…; rep from * around", "*…* 5 times".
func (w *writer) repeat(r *Repeat) {
	star := "***"[:min(max(r.Stars, 1), 3)]
	w.text(star)
	cut := -1
	if r.Until > 0 && r.Until <= len(r.Body) {
		cut = r.Until
	}
	if cut > 0 {
		w.clauses(r.Body[:cut])
		w.text(star, "*, ")
		w.clauses(r.Body[cut:])
	} else {
		w.clauses(r.Body)
	}
	switch r.Extent.Kind {
	case NotSaid:
		w.text(star)
	case Times:
		w.text(star, " ")
		w.extent(&r.Extent)
	default:
		w.text("; rep from ", star, " ")
		w.extent(&r.Extent)
	}
	if r.Last {
		w.text(", ending last rep at ", star, "*")
	}
	w.ending(r.Ending, r.Instead)
}

func (w *writer) ending(ending, instead []Clause) {
	switch {
	case len(ending) == 0 && len(instead) == 0:
		return
	case len(ending) == 0:
		w.text(", omitting last ")
		w.clauses(instead)
		return
	}
	w.text(", ending last rep with ")
	w.clauses(ending)
	if len(instead) > 0 {
		w.text(" instead of ")
		w.clauses(instead)
	}
}
