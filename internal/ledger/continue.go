package ledger

import (
	"foundrow/internal/notation"
)

// continues finds what a row says of rows that are not written out.
func continues(body []notation.Clause) *notation.Continue {
	for _, c := range body {
		if c, ok := c.(*notation.Continue); ok {
			return c
		}
	}
	return nil
}

// goOn works rows that are not written out: so many in pattern, or shaped as before until a number is reached. Where each change goes
// is free; the numbers are not.
func (h *hand) goOn(t text, c *notation.Continue) {
	from := h.so.worked
	h.row = t
	h.row.name = nameOf(t.label, 0)
	change, rows, ok := h.shaping(c)
	if !ok {
		h.so.open = true
		h.print(t, from)
		return
	}
	if change == 0 {
		h.stack(h.so.count, rows)
	} else {
		every := max(c.Every, 1)
		for i := range rows {
			plain := every - 1
			if c.Next && i == 0 {
				plain = 0
			}
			h.stack(h.so.count, plain)
			h.stack(h.so.count+change, 1)
			if h.step(); h.tired() {
				break
			}
		}
	}
	h.recheckLast(t.claims)
	h.print(t, from)
}

// shaping is what each change of a continued shaping adds, and how many there are; without a change, how many rows.
func (h *hand) shaping(c *notation.Continue) (change, rows int, ok bool) {
	if h.so.open || len(h.b.Rows) == 0 {
		return 0, 0, false
	}
	if c.Change == 0 {
		switch {
		case c.Rows.Said:
			n, absent, known := h.count(&c.Rows)
			if absent {
				n = 0
			}
			return 0, n, (known || absent) && n <= most
		case c.Extent.Kind == notation.UntilMeasures && h.p.Rows != nil:
			n, known := h.p.Rows(c.Extent)
			return 0, max(n-h.so.worked, 0), known
		}
		return 0, 0, true
	}
	per, known := h.number(&c.Count, 1)
	if !known {
		return 0, 0, false
	}
	if c.Each.Kind != notation.NoNoun { // "in each section": there are as many as the last shaping had
		if h.so.growth == 0 {
			return 0, 0, false
		}
		per *= max(h.so.growth, -h.so.growth)
	}
	change = per * c.Change
	n, known := h.number(&c.Extent.Count, 1)
	if !known || change == 0 {
		return 0, 0, false
	}
	switch c.Extent.Kind {
	case notation.UntilMade, notation.UntilLeft, notation.ToLast:
		rows = (n - h.so.count) / change
		if rows < 0 || rows*change != n-h.so.count {
			rows = max(rows, 0)
			h.fail(UntilPassed, c.At(), 0, n, h.so.count+rows*change, h.so.count+(rows+1)*change)
		}
		return change, rows, true
	case notation.Times, notation.MoreTimes, notation.RepeatN, notation.InAll:
		return change, n, true
	case notation.NotSaid:
		if c.Rows.Said {
			k, _ := h.number(&c.Rows, 0)
			return change, k / max(c.Every, 1), true
		}
	}
	return 0, 0, false
}

// stack enters n rows of so many stitches, worked over those below without saying how.
func (h *hand) stack(stitches, n int) {
	if n <= 0 || stitches < 0 {
		return
	}
	last := &h.b.Rows[len(h.b.Rows)-1]
	side := h.so.side
	if n%2 == 1 && !last.Round {
		side = facing(side)
	}
	m := h.madeOf(h.base(), stitches)
	if of := mainOf(last.Made); of != 0 {
		m.Of = of
	}
	row := Row{Made: []Made{*m}, Places: stitches, Count: stitches, Times: n, Halves: last.Halves, Line: h.row.line, Round: last.Round, Side: side, Number: h.so.number + 1}
	if stitches == h.so.count && n > 0 && last.Times > 0 && len(last.Made) > 0 && last.Places > 0 { // in pattern: as the last row
		row.Made, row.Places = last.Made, last.Places
	}
	h.b.Rows = append(h.b.Rows, row)
	at := len(h.b.Rows) - 1
	h.b.numbered = append(h.b.numbered, numbered{h.so.number + 1, at, n})
	h.so.live = h.edgeOf(at, row.Places)
	h.so.number += n
	h.so.rows += n
	h.so.worked += n
	h.so.side = side
	if stitches != h.so.count {
		h.so.growth = stitches - h.so.count
		h.so.changed = true
	}
	h.so.count, h.so.entry = stitches, 0
}
