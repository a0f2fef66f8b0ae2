// Package proof is the technical edit: it reads a pattern that has been worked in every size the way a technical editor would, and
// asks about what does not agree. It holds the table of every rule of the program, which the handbook and `explain` print, and
// sets findings as lines and as JSON.
//
// It mends nothing and works nothing out: what cannot be read is package manuscript's to say, what a formula gives package
// grade's, what a row leaves package ledger's.
package proof

import (
	"foundrow/internal/grade"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// Check runs every rule of the technical edit over a worked pattern and returns what they find, in no order. It adds to what
// the stages before it found; it never repeats that.
func Check(g *grade.Grade, studio pattern.Studio) source.Findings {
	if g == nil || g.Pattern == nil || g.Pattern.File == nil {
		return nil
	}
	e := &edit{Grade: g, pattern: g.Pattern, studio: studio, reading: newReading(passages(g.Pattern))}
	for i := range e.passages {
		e.passages[i].quantities = quantities(e.passages[i].words, e.sizes())
	}
	var fs source.Findings
	for _, r := range editRules {
		for _, n := range r.check(e) {
			fs = append(fs, n.finding(r, e.pattern.File))
		}
	}
	return fs
}

// An edit is what every rule reads.
type edit struct {
	*grade.Grade
	reading
	pattern *pattern.Pattern
	studio  pattern.Studio
}

// sizes is how many numbers a list has: one for each size, and one where there are no sizes.
func (e *edit) sizes() int { return max(1, len(e.Sizes)) }

// size returns the name of a size; "" where a pattern has none.
func (e *edit) size(i int) string {
	if i < 0 || i >= len(e.Sizes) {
		return ""
	}
	return e.Sizes[i]
}

// A note is what a rule has to say; the rule's name and weight are added by Check.
type note struct {
	file            *source.File // nil for the pattern's own
	span            source.Span
	sizes           []string
	message, fix    string
	expected, found string
}

func (n note) finding(r Rule, f *source.File) source.Finding {
	if n.file != nil {
		f = n.file
	}
	return source.Finding{
		Rule: r.Name, Severity: r.Severity, Place: f.Place(n.span), Sizes: n.sizes,
		Message: n.message, Fix: n.fix, Expected: n.expected, Found: n.found,
	}
}
