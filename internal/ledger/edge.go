package ledger

import (
	"slices"
)

// A run is part of an edge laid out in the order it is met: places of one Made.
type run struct {
	made *Made
	row  int
	from int // the number of the first place met
	n    int
	back bool // the numbers fall
	face Face

	corner bool // it is a corner space
}

// span returns n places of a run, from the one at off.
func (r *run) span(off, n int) Span {
	if r.back {
		return Span{int32(r.row), int32(r.from - off - n + 1), int32(n), true, r.face}
	}
	return Span{int32(r.row), int32(r.from + off), int32(n), false, r.face}
}

// follows reports whether span b goes on where a stops, and returns both as one.
func follows(a, b Span) (Span, bool) {
	switch {
	case a.N == 0:
		return b, true
	case a.Row != b.Row || a.Face != b.Face || a.Back != b.Back:
		return a, false
	case !a.Back && a.From+a.N == b.From:
		a.N += b.N
		return a, true
	case a.Back && b.From+b.N == a.From:
		a.From, a.N = b.From, a.N+b.N
		return a, true
	}
	return a, false
}

// appendSpan adds a span, to the last one where it goes on there.
func appendSpan(spans []Span, s Span) []Span {
	if s.N == 0 {
		return spans
	}
	if n := len(spans); n > 0 {
		if both, ok := follows(spans[n-1], s); ok {
			spans[n-1] = both
			return spans
		}
	}
	return append(spans, s)
}

// layOut appends the runs of a span. Places of row-ends have a Made of their own, since the row has none for them.
func (b *Book) layOut(runs []run, s Span) []run {
	if s.Face == RowEnd {
		m := &Made{Kind: Ends, Of: b.endStitch(int(s.Row)), N: int(s.N), Stands: true, Counted: true}
		r := run{made: m, row: int(s.Row), from: int(s.From), n: int(s.N), back: s.Back, face: RowEnd}
		if s.Back {
			r.from += r.n - 1
		}
		return append(runs, r)
	}
	row := &b.Rows[s.Row]
	start, end := int(s.From), int(s.From+s.N)
	made := row.Made
	if !s.Back {
		for i, at := 0, 0; i < len(made) && at < end; i++ {
			m := &made[i]
			from, to := max(at, start), min(at+m.N, end)
			if from < to {
				runs = append(runs, run{made: m, row: int(s.Row), from: from, n: to - from, face: s.Face})
			}
			at += m.N
		}
		return runs
	}
	for i, at := len(made)-1, row.Places; i >= 0 && at > start; i-- {
		m := &made[i]
		from, to := max(at-m.N, start), min(at, end)
		if from < to {
			runs = append(runs, run{made: m, row: int(s.Row), from: to - 1, n: to - from, back: true, face: s.Face})
		}
		at -= m.N
	}
	return runs
}

// endStitch is the stitch that stands at the end of a row.
func (b *Book) endStitch(row int) int32 {
	made := b.Rows[row].Made
	for i := len(made) - 1; i >= 0; i-- {
		if m := &made[i]; m.Kind == Stitches || m.Kind == Turnings && m.Stands {
			return m.Of
		}
	}
	return 0
}

// runs lays out an edge.
func (e Edge) runs() []run {
	var runs []run
	for _, s := range e.Spans {
		runs = e.Book.layOut(runs, s)
	}
	return runs
}

// Stitches returns how many stitches, loose chains or row-ends an edge brings: spaces and chains that do not stand are none.
func (e Edge) Stitches() int {
	n := 0
	for _, r := range e.runs() {
		n += weight(&r) * r.n
	}
	return n
}

// weight is what one place of a run counts for when stitches are counted along an edge.
func weight(r *run) int {
	switch r.made.Kind {
	case Spaces, Rings:
		return 0
	case Turnings:
		if !r.made.Stands {
			return 0
		}
	}
	if r.face == FreeLoop && r.made.Kind != Chains {
		return 0
	}
	return 1
}

// Reverse returns the edge as it is met from its other end.
func (e Edge) Reverse() Edge {
	e.Spans = slices.Clone(e.Spans)
	slices.Reverse(e.Spans)
	for i := range e.Spans {
		e.Spans[i].Back = !e.Spans[i].Back
	}
	return e
}

// Join returns two edges of one piece as one.
func (e Edge) Join(f Edge) Edge {
	if e.Book == nil {
		return f
	}
	spans := slices.Clone(e.Spans)
	for _, s := range f.Spans {
		spans = appendSpan(spans, s)
	}
	e.Spans = spans
	return e
}

// Cut returns the first n stitches of an edge and the rest of it. Spaces go with the stitches before them.
func (e Edge) Cut(n int) (first, rest Edge) {
	first, rest = Edge{Book: e.Book}, Edge{Book: e.Book}
	for _, r := range e.runs() {
		w := weight(&r)
		take := r.n
		if w > 0 {
			take = min(r.n, n)
		} else if n == 0 && len(first.Spans) == 0 {
			take = 0
		}
		if take > 0 && (n > 0 || w == 0 && len(rest.Spans) == 0) {
			first.Spans = appendSpan(first.Spans, r.span(0, take))
			n -= take * w
		} else {
			take = 0
		}
		if take < r.n {
			rest.Spans = appendSpan(rest.Spans, r.span(take, r.n-take))
		}
	}
	return first, rest
}

// markAt is how many stitches lie before a marker along an edge.
func (e Edge) markAt(name string) (int, bool) {
	for _, m := range slices.Backward(e.Book.Marks) {
		if m.Name != name {
			continue
		}
		n := 0
		for _, r := range e.runs() {
			if r.row == m.Row {
				o := m.Place - r.from
				if r.back {
					o = -o
				}
				if o >= 0 && o < r.n {
					return n + o*weight(&r), true
				}
			}
			n += r.n * weight(&r)
		}
	}
	return 0, false
}

// Edge returns a live edge of the piece by its name: last, foundation, left, right, or "row 5" for what that row left unworked.
// Row-ends come in the direction that hands work them with the right side facing: the left edge from the last row to the
// foundation, the right edge from the foundation up.
func (b *Book) Edge(which string) (Edge, bool) {
	switch which {
	case "last":
		return b.last, len(b.last.Spans) > 0
	case "foundation":
		return b.foundation, len(b.foundation.Spans) > 0
	case "right", "left":
		return b.side(which == "left")
	}
	var n int
	digits, ok := cutWord(which, "row ")
	if !ok {
		if digits, ok = cutWord(which, "rnd "); !ok {
			return Edge{}, false
		}
	}
	for _, c := range []byte(digits) {
		if c < '0' || c > '9' || n > 1e6 {
			return Edge{}, false
		}
		n = 10*n + int(c-'0')
	}
	for _, at := range slices.Backward(b.numbered) {
		if at.number <= n && n < at.number+at.count {
			spans := b.Rows[at.row].Unworked
			return Edge{Book: b, Spans: spans}, len(spans) > 0
		}
	}
	return Edge{}, false
}

func cutWord(s, word string) (string, bool) {
	if len(s) > len(word) && s[:len(word)] == word {
		return s[len(word):], true
	}
	return s, false
}

// side lists the row-ends of one side. A row with the right side facing runs from the right edge to the left one.
func (b *Book) side(left bool) (Edge, bool) {
	e := Edge{Book: b}
	for i := b.start; i < len(b.Rows); i++ {
		if row := &b.Rows[i]; row.Times > 0 && !row.Round {
			e.Spans = append(e.Spans, Span{Row: int32(i), N: int32(row.Times), Face: RowEnd})
		}
	}
	if left != b.mirrored {
		e = e.Reverse()
	}
	return e, len(e.Spans) > 0
}
