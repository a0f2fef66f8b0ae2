package manuscript

import (
	"strings"

	"foundrow/internal/source"
)

// A key is one key of a table of the source format: what may stand under it, and what is done with it. The lists of keys are the
// description of the format; everything that is reported of an unknown key or a wrong value comes from them.
type key[T any] struct {
	name     string
	wants    kinds
	example  string // the value as a designer would write it
	required bool
	read     func(r *reader, into *T, n *node)
}

// walk reads a table into a value by its keys, in the order of the keys, and reports what it has beyond them, what stands under
// a key that cannot, and what is missing. where is how the table is called in findings: "[gauge.body]".
func walk[T any](r *reader, keys []key[T], t *node, into *T, where string) {
	for _, e := range t.entries {
		if !has(keys, e.name) {
			r.unknownKey(e, names(keys), where)
		}
	}
	for _, k := range keys {
		n := t.entry(k.name)
		switch {
		case n == nil:
			if k.required {
				r.missing(t, k.name, k.example, where)
			}
		case n.broken:
		case n.kind&k.wants == 0:
			r.wrongType(n, k.wants, k.name+" = "+k.example)
		case k.required && n.kind == isText && strings.TrimSpace(n.words) == "":
			r.fs.Report(r.file, n.span, "missing-key", "`"+k.name+"` says nothing", "write "+k.name+" = "+k.example)
		default:
			k.read(r, into, n)
		}
	}
}

// group reads the tables that stand under a word by names of the designer's own, such as [yarn.main], in the order of the file.
func group[T any](r *reader, keys []key[T], t *node, begin func(n *node) T) []T {
	var all []T
	for _, n := range t.entries {
		switch {
		case n.broken:
		case n.kind != isTable:
			r.fs.Report(r.file, n.key, "wrong-type", "`"+n.name+"` stands in ["+t.name+"] itself, where every "+t.name+" has a table under a name",
				"write ["+t.name+".main] above it")
		default:
			one := begin(n)
			walk(r, keys, n, &one, "["+t.name+"."+n.name+"]")
			all = append(all, one)
		}
	}
	return all
}

func has[T any](keys []key[T], name string) bool {
	for i := range keys {
		if keys[i].name == name {
			return true
		}
	}
	return false
}

func names[T any](keys []key[T]) []string {
	list := make([]string, len(keys))
	for i, k := range keys {
		list[i] = k.name
	}
	return list
}

// A reader reads one TOML text: it holds what findings need.
type reader struct {
	file  *source.File
	root  *node
	block source.Span // where a finding points that has no better place: the opening of the TOML
	fs    source.Findings
	whole bool // no name of the text was lost

	scope
}

func (r *reader) unknownKey(n *node, known []string, where string) {
	r.fs.Report(r.file, n.key, "unknown-key", "`"+n.name+"` is no key of "+where, didYouMean(n.name, known, "its keys are"))
}

// missing reports a key that has to be there. Where a name was lost it may have been that one.
func (r *reader) missing(t *node, name, example, where string) {
	if !r.whole {
		return
	}
	at := t.span
	if t.key == (source.Span{}) {
		at = r.block
	}
	r.fs.Report(r.file, at, "missing-key", where+" has no `"+name+"`", "write "+name+" = "+example)
}

// wrongType says what is wanted, what was found, and how the first is written.
func (r *reader) wrongType(n *node, wants kinds, example string) {
	found := n.kind.String()
	if n.kind == isText {
		found = brief(r.file.Slice(n.span))
	}
	r.fs.Report(r.file, n.span, "wrong-type", "`"+n.name+"` has to be "+wants.String()+", and is "+found, "write "+example)
}

// brief shortens what a finding repeats of a file to its first line, and that to 40 characters.
func brief(s string) string {
	line, _, more := strings.Cut(s, "\n")
	line = strings.TrimRight(line, "\r")
	if runes := []rune(line); len(runes) > 40 {
		return string(runes[:40]) + "…"
	}
	if more {
		return line + "…"
	}
	return line
}
