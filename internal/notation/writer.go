package notation

import (
	"strconv"
	"strings"

	"foundrow/internal/stitch"
)

func (p *Part) writeTo(b *strings.Builder, value func(int) string) {
	c := p.Count
	switch {
	case c == nil:
		b.WriteString(p.Text)
	case p.As == Plural:
		b.WriteString(p.Many)
	default:
		b.WriteString(c.text(value))
		if p.As == Ordinal {
			b.WriteString("th")
		} else if p.As == TimesWord {
			b.WriteString(" times")
		}
	}
}

// text returns a count as it is written in a row: a value in its braces, or the trade's list.
func (c *Count) text(value func(int) string) string {
	switch {
	case c.Slot > 0:
		return "{" + value(c.Slot-1) + "}"
	case c.List == nil:
		return strconv.Itoa(c.Plain)
	}
	s := c.List[0].String()
	first := len(c.List)
	if first > 6 { // from seven on the list stands in two brackets, the larger first
		first = 1 + len(c.List)/2
	}
	for i, e := range c.List[1:] {
		switch i + 1 {
		case 1:
			s += " ("
		case first:
			s += ") ("
		default:
			s += ", "
		}
		s += e.String()
	}
	return s + ")"
}

// String returns an entry of a list: its number, or the dash of a size that has none.
func (e Entry) String() string {
	if e.Absent {
		return "-"
	}
	return strconv.Itoa(e.N)
}

// A writer gathers the parts of a line.
type writer struct {
	terms stitch.Terms
	again bool // to be read in again: words keep their backslashes
	parts []Part
	words []byte        // of the part being written
	last  stitch.Stitch // of the Make written last

	lastCount Count // its count
}

// prose returns running text of the tree, which is in US terms, in those that are written.
func (w *writer) prose(s string) string {
	if w.again {
		return stitch.Carry(s, stitch.US, w.terms)
	}
	return stitch.Translate(s, stitch.US, w.terms)
}

// take returns what was written and begins afresh.
func (w *writer) take() []Part {
	w.finish()
	parts := w.parts[:len(w.parts):len(w.parts)]
	w.parts = w.parts[len(parts):]
	if len(parts) == 0 {
		return nil
	}
	return parts
}

// text writes words; neighbours become one part.
func (w *writer) text(s ...string) {
	for _, s := range s {
		w.words = append(w.words, s...)
	}
}

// add writes a part of its own.
func (w *writer) add(p Part) {
	w.finish()
	w.parts = append(w.parts, p)
}

// finish makes a part of the words.
func (w *writer) finish() {
	if len(w.words) > 0 {
		w.parts = append(w.parts, Part{Text: string(w.words)})
		w.words = w.words[:0]
	}
}

// plain reports whether a count is the same in every size.
func (c *Count) plain() bool { return c.List == nil && c.Slot == 0 }

// equal reports whether two counts say the same.
func (c *Count) equal(d *Count) bool {
	if c.Said != d.Said || c.Plain != d.Plain || c.Slot != d.Slot || len(c.List) != len(d.List) {
		return false
	}
	for i := range c.List {
		if c.List[i] != d.List[i] {
			return false
		}
	}
	return true
}

func (w *writer) count(c *Count) {
	if c.plain() {
		w.words = strconv.AppendInt(w.words, int64(c.Plain), 10)
		return
	}
	w.add(Part{Count: c})
}

// ordinal writes "2nd".
func (w *writer) ordinal(c *Count) {
	if c.plain() {
		w.text(strconv.Itoa(c.Plain), ordinalEnd(c.Plain))
		return
	}
	w.add(Part{Count: c, As: Ordinal})
}

// ordinalEnd returns the letters behind a number: 1st, 2nd, 3rd, 11th.
func ordinalEnd(n int) string {
	if n/10%10 != 1 {
		switch n % 10 {
		case 1:
			return "st"
		case 2:
			return "nd"
		case 3:
			return "rd"
		}
	}
	return "th"
}

// times writes "once", "twice", "3 times".
func (w *writer) times(c *Count) {
	if !c.plain() {
		w.add(Part{Count: c, As: TimesWord})
		return
	}
	switch c.Plain {
	case 1:
		w.text("once")
	case 2:
		w.text("twice")
	default:
		w.text(strconv.Itoa(c.Plain), " times")
	}
}

// number writes the words that agree with a count: "st" of one, "sts" of any other. A count that is not said is one.
func (w *writer) number(c *Count, single, many string) {
	switch {
	case single == many || !c.Said:
		w.text(single)
	case !c.plain():
		w.add(Part{Text: single, Many: many, Count: c, As: Plural})
	case c.Plain == 1:
		w.text(single)
	default:
		w.text(many)
	}
}

// sentence returns what was written with a capital at its start.
func (w *writer) sentence() []Part {
	if len(w.parts) == 0 && len(w.words) > 0 && w.words[0] >= 'a' && w.words[0] <= 'z' {
		w.words[0] -= 'a' - 'A'
	} else if len(w.parts) > 0 && w.parts[0].Count == nil {
		w.parts[0].Text = capital(w.parts[0].Text)
	}
	return w.take()
}

func capital(s string) string {
	if s != "" && s[0] >= 'a' && s[0] <= 'z' {
		return string(s[0]-'a'+'A') + s[1:]
	}
	return s
}
