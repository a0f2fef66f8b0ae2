package manuscript

import (
	"slices"
	"strings"
	"unicode"

	"foundrow/internal/formula"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// isName reports whether words can be a name: letters, digits and underscores, not beginning with a digit, which would read as a
// number in a formula.
func isName(s string) bool {
	for i, r := range s {
		if r != '_' && !unicode.IsLetter(r) && (i == 0 || r < '0' || r > '9') {
			return false
		}
	}
	return s != ""
}

// underscored joins the words of a name as it has to be written.
func underscored(s string) string {
	return strings.Join(strings.FieldsFunc(s, func(r rune) bool { return r == ' ' || r == '-' || r == '.' }), "_")
}

// name reports a key that cannot be a name, and returns it as it is.
func (r *reader) name(n *node) pattern.Words {
	if !isName(n.name) {
		fix := "write it with letters a to z, digits and underscores, beginning with a letter"
		if u := underscored(n.name); u != n.name && isName(u) {
			fix = "write " + u
		}
		r.fs.Report(r.file, n.key, "bad-name", "`"+n.name+"` is no name: a name has letters, digits and underscores, and begins with a letter", fix)
	}
	return pattern.Words{Text: n.name, Span: n.key}
}

// A role is what a value is, with a name that would do where the one given cannot stand.
type role struct{ noun, instead string }

var (
	ownBody  = role{"body measurement", "own_%"}
	measured = role{"measure", "finished_%"}
	counted  = role{"count", "%_count"}
)

// valueName is name for what formulas speak of: it may not be a word of the formula language, nor a name that is taken.
func (r *reader) valueName(n *node, is role) pattern.Words {
	w := r.name(n)
	fix := "give the " + is.noun + " another name, such as " + strings.Replace(is.instead, "%", n.name, 1)
	switch _, taken := r.taken[n.name]; {
	case formula.IsReserved(n.name):
		r.fs.Report(r.file, n.key, "reserved-name", "`"+n.name+"` is a word of the formula language", fix)
	case slices.ContainsFunc(r.p.Sizes.Body, func(b pattern.BodyMeasurement) bool { return b.Name == n.name }):
		r.fs.Report(r.file, n.key, "taken-name", "`"+n.name+"` is a body measurement of the table `"+r.p.Sizes.Table.Text+"`", fix)
	case taken:
		r.fs.Report(r.file, n.key, "taken-name", "`"+n.name+"` is already the name of another value", fix)
	default:
		r.taken[n.name] = n.key
	}
	return w
}

// didYouMean is the fix for a word out of a closed list: the nearest one first.
func didYouMean(written string, known []string, what string) string {
	list := what + ": " + source.List(known, "and")
	if near := source.Nearest(written, known); near != "" {
		return "did you mean `" + near + "`? " + list
	}
	return list
}

// unknownName reports the name of a gauge, a hook or a piece that there is not.
func unknownName(fs *source.Findings, f *source.File, at source.Span, name, what string, known []string) {
	fix := "there is no " + what + " yet"
	if len(known) > 0 {
		fix = didYouMean(name, known, "there is")
	}
	fs.Report(f, at, "unknown-name", "there is no "+what+" `"+name+"`", fix)
}
