package grade

import (
	"slices"
	"strings"
	"unicode"

	"foundrow/internal/formula"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// unknown reports a name that nothing has, with what was probably meant. Where part of the front matter could not be read, the
// name may have stood there.
func (w *plan) unknown(n formula.Name) {
	if w.p.Partial {
		return
	}
	if joined, told := w.joined(n); joined != "" {
		w.entries[w.byName[joined]].used = true
		if !told {
			w.report(n.Span, "unknown-name", "nothing is named "+n.Text+": a hyphen or a space takes a name apart", "write "+joined)
		}
		return
	}
	if slices.ContainsFunc(w.p.Gauges, func(g pattern.Gauge) bool { return g.Name.Text == n.Text }) {
		w.report(n.Span, "unknown-name", n.Text+" is a gauge and has no value by itself", "write in stitches at "+n.Text+", or in rows at "+n.Text)
		return
	}
	if _, is := w.byName[n.Text+"."]; is {
		w.report(n.Span, "unknown-name", n.Text+" is a piece and has no value by itself", "write "+n.Text+".rows or "+n.Text+".stitches")
		return
	}
	fix := "give it a line of its own under [measures] or [counts]"
	if near := source.Nearest(n.Text, w.names(func(e *entry) bool { return e.named && e.role != Amount })); near != "" {
		fix = "write " + near
	}
	w.report(n.Span, "unknown-name", "nothing is named "+n.Text, fix)
}

// joined returns the name that a name makes with the word behind or before it and an underscore, where there is one, and
// whether that was told of the word before.
func (w *plan) joined(n formula.Name) (name string, told bool) {
	f := w.reading
	from, to := n.Span.From-f.Span.From, n.Span.To-f.Span.From
	before, after := strings.TrimRight(f.Text[:from], " -"), strings.TrimLeft(f.Text[to:], " -")
	after = after[:len(after)-len(strings.TrimLeftFunc(after, ofName))]
	if _, there := w.byName[n.Text+"_"+after]; there && after != "" {
		return n.Text + "_" + after, false
	}
	before = before[len(strings.TrimRightFunc(before, ofName)):]
	if _, there := w.byName[before+"_"+n.Text]; there && before != "" {
		_, known := w.byName[before]
		return before + "_" + n.Text, !known
	}
	return "", false
}

// ofName reports whether a name may hold a character.
func ofName(r rune) bool { return r == '_' || unicode.IsLetter(r) || unicode.IsDigit(r) }

// names returns the names of some entries, in the order of the file.
func (w *plan) names(of func(*entry) bool) []string {
	var out []string
	for i := range w.entries {
		if e := &w.entries[i]; of(e) {
			out = append(out, e.name.Text)
		}
	}
	return out
}

func (w *plan) unknownPiece(n formula.Name) {
	if w.p.Partial {
		return
	}
	fix := ""
	names := w.names(func(e *entry) bool { return e.what == piece })
	if near := source.Nearest(n.Text, names); near != "" {
		fix = "write " + near + "." + n.Of
	} else if len(names) > 0 {
		fix = "the pieces are " + source.List(names, "and")
	} else {
		fix = "begin a block with ```rows " + n.Text
	}
	w.report(n.Span, "unknown-name", "no piece is named "+n.Text, fix)
}

// noCount reports a pin that is of no count.
func (w *plan) noCount(name pattern.Words, there bool) {
	if there {
		w.report(name.Span, "pin", name.Text+" is no count, and only a count can be pinned", "write the value of "+name.Text+" for each size where it is defined")
		return
	}
	w.unlisted(name, "no count is named "+name.Text, Count)
}

// noBody reports a measurement of a body that is none.
func (w *plan) noBody(name pattern.Words) {
	if _, there := w.byName[name.Text]; there {
		w.report(name.Span, "unknown-name", name.Text+" is no measurement of a body", "define it under [body], or take one of the size table")
		return
	}
	w.unlisted(name, "there is no body measurement named "+name.Text, Body)
}

// unlisted reports a name that should be one of a role's.
func (w *plan) unlisted(name pattern.Words, message string, role Role) {
	if w.p.Partial {
		return
	}
	names := w.names(func(e *entry) bool { return e.named && e.role == role })
	fix := ""
	if near := source.Nearest(name.Text, names); near != "" {
		fix = "write " + near
	} else if len(names) > 0 && len(names) < 15 {
		fix = "there are " + source.List(names, "and")
	}
	w.report(name.Span, "unknown-name", message, fix)
}

// hasCells reports a published measurement that the table leaves empty in a size that is offered, where it is first used.
func (w *plan) hasCells(e *entry, at source.Span) {
	if e.what != published || e.told {
		return
	}
	var empty []int
	for i, s := range w.sizes {
		if s >= len(e.table.Value) || e.table.Value[s].IsLost() {
			empty = append(empty, i)
		}
	}
	if len(empty) == 0 {
		return
	}
	in, names := w.in(empty)
	w.report(at, "no-measurement", "the size table has no "+e.name.Text+in, "offer other sizes, or give "+e.name.Text+" under [body]")
	w.findings[len(w.findings)-1].Sizes = names
	e.told = true
}
