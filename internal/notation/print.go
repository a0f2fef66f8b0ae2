package notation

import (
	"strings"

	"foundrow/internal/stitch"
)

// Printed is a line set in the house style: its parts apart, so that a page may lay them out. Numbers that differ between sizes stand
// as counts for the page to fill.
type Printed struct {
	Only   []Part // "Sizes M and L only: "
	Label  []Part // "Row 3 (RS)"; empty for a line without a name
	Body   []Part // "Ch 1, turn, sc in each st across"; without its full stop
	Claims []Part // "36 sts", "82 dc, 4 ch-2 sps"; without brackets
}

// A Part is a piece of a printed line: words, a number, or words that depend on a number.
type Part struct {
	Text  string     // the words, or what is said of one
	Many  string     // of Plural: what is said of any other number
	Count *Count     // nil for plain words
	As    NumberForm // how the count is printed
}

// NumberForm is how a count is printed.
type NumberForm uint8

const (
	Figure    NumberForm = iota // 24 (26, 28)
	Ordinal                     // 2nd
	TimesWord                   // once, twice, 3 times
	Plural                      // no number: the words that agree with it, "st" or "sts"
)

// Print sets a line in the terms, for a reader.
func Print(l Line, t stitch.Terms) Printed {
	w := writer{terms: t, parts: make([]Part, 0, 6), words: make([]byte, 0, 160)}
	return w.line(l)
}

// Source writes a line as source text in the terms: what it parses to is the line it was written of. Value returns the words that stand
// between the braces of a value.
func Source(l Line, t stitch.Terms, value func(slot int) string) string {
	w := writer{terms: t, again: true}
	p := w.line(l)
	var b strings.Builder
	write := func(parts []Part) {
		for i := range parts {
			parts[i].writeTo(&b, value)
		}
	}
	write(p.Only)
	write(p.Label)
	if len(p.Label) > 0 && !strings.HasSuffix(b.String(), ".") {
		b.WriteString(":")
	}
	if len(p.Label) > 0 && len(p.Body)+len(p.Claims) > 0 {
		b.WriteString(" ")
	}
	write(p.Body)
	if len(p.Body) > 0 && !asWritten(l) && !strings.HasSuffix(b.String(), ".") {
		b.WriteString(".")
	}
	if len(p.Claims) > 0 {
		if len(p.Body) > 0 {
			b.WriteString(" ")
		}
		b.WriteString("(")
		write(p.Claims)
		b.WriteString(")")
	}
	return b.String()
}

// asWritten reports whether a line is printed as the designer wrote it, full stop and all.
func asWritten(l Line) bool {
	switch l.(type) {
	case *Unread, *Note, *Film:
		return true
	}
	return false
}

func (w *writer) line(l Line) Printed {
	var p Printed
	w.only(l.For())
	p.Only = w.take()
	switch l := l.(type) {
	case *Row:
		w.label(&l.Label)
		p.Label = w.take()
		w.clauses(l.Body)
		p.Body = w.sentence()
		p.Claims = w.claims(l.Claims)
	case *Again:
		w.label(&l.Label)
		p.Label = w.take()
		w.repeatRows(l)
		p.Body = w.sentence()
		p.Claims = w.claims(l.Claims)
	case *Foundation:
		w.text("Foundation")
		p.Label = w.take()
		w.clauses(l.Body)
		p.Body = w.sentence()
		p.Claims = w.claims(l.Claims)
	case *Start:
		w.text("Start")
		p.Label = w.take()
		w.start(l)
		p.Body = w.take()
		p.Claims = w.claims(l.Claims)
	default:
		p.Label, p.Body = w.other(l)
	}
	return p
}
