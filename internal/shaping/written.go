package shaping

import (
	"strings"

	"foundrow/internal/source"
)

// A Number is a count as a designer writes it in a step: "4", the trade's list "4 (5, 6)", or "{underarm}".
type Number struct {
	BySize  []int       // as written: one for all sizes, or one each
	Formula source.Span // between the braces; what stands there package formula reads
	Span    source.Span
}

// IsFormula reports whether the number stands in braces.
func (n Number) IsFormula() bool { return n.Formula != source.Span{} }

// In returns the number of a size, counted from 0. Value works what stands in braces. It reports false where value does, or where a
// list has no entry for the size.
func (n Number) In(size int, value func(source.Span) (int, bool)) (int, bool) {
	switch {
	case n.IsFormula():
		return value(n.Formula)
	case len(n.BySize) == 1:
		return n.BySize[0], true
	case size < len(n.BySize):
		return n.BySize[size], true
	}
	return 0, false
}

// A WrittenStep is a step as it was read: the same for all sizes but for its numbers.
type WrittenStep struct {
	Act      Act
	Stitches Number
	Every    int
	On       Side
	Times    Number
	ToEnd    bool
	Span     source.Span
}

// Lists are the numbers of the step that have an entry for every size.
func (w WrittenStep) Lists() []Number {
	var out []Number
	for _, n := range [...]Number{w.Stitches, w.Times} {
		if len(n.BySize) > 1 {
			out = append(out, n)
		}
	}
	return out
}

// In returns the step of a size, counted from 0.
func (w WrittenStep) In(size int, value func(source.Span) (int, bool)) (Step, bool) {
	st := Step{Act: w.Act, Every: w.Every, On: w.On, ToEnd: w.ToEnd}
	var ok, often bool
	if st.Stitches, ok = w.Stitches.In(size, value); !ok && w.Act != WorkEven {
		return st, false
	}
	if st.Times, often = w.Times.In(size, value); !often && !w.ToEnd {
		return st, false
	}
	return st, true
}

// ReadStep reads one step out of a file; text begins there at offset from.
//
//	leave 4
//	2 every row, 3 times
//	decrease 1 every other row, to the end
//	1 every 4th row, {n} times
//	1 every right-side row, 5 (6, 6) times
//	work even 4 rows, 4 rows even, even to the end
func ReadStep(f *source.File, from int, text string) (WrittenStep, source.Findings) {
	r := stepReader{file: f, from: from, text: text}
	r.next()
	w := WrittenStep{Every: 1, Times: Number{BySize: []int{1}}, Span: source.Span{From: from, To: from + len(text)}}
	r.step(&w)
	if r.kind != stepEnd {
		r.unread()
	}
	return w, r.findings
}

// step reads a whole step.
func (r *stepReader) step(w *WrittenStep) {
	w.Act = r.act()
	if w.Act == WorkEven {
		if r.eat("to") {
			r.end(w)
			return
		}
		r.eat("for")
		w.Times = r.number()
		r.need("rows", "row", "rows", "rnd", "rnds", "round", "rounds")
		return
	}
	w.Stitches = r.number()
	if w.Act == Toward && r.eat("row", "rows", "rnd", "rnds", "round", "rounds") { // "4 rows even"
		w.Act, w.Times, w.Stitches = WorkEven, w.Stitches, Number{}
		r.need("even", "even", "plain")
		return
	}
	r.eat("st", "sts", "stitch", "stitches")
	r.comma()
	every := r.eat("every", "each")
	if every {
		r.every(w)
		r.comma()
	}
	switch {
	case r.eat("once"):
	case r.eat("twice"):
		w.Times = Number{BySize: []int{2}, Span: r.last}
	case r.eat("to"):
		r.end(w)
	case r.kind == stepNumber || r.kind == stepFormula:
		w.Times = r.number()
		r.need("times", "times", "time")
	case every:
		r.fail("how often is not said", "write 3 times, or to the end")
	}
}

// act reads what a step does, where it says so.
func (r *stepReader) act() Act {
	switch {
	case r.eat("leave"):
		return Leave
	case r.eat("lose", "decrease", "decreasing", "dec"):
		return Lose
	case r.eat("gain", "increase", "increasing", "inc", "add"):
		return Gain
	case r.eat("work"):
		if r.eat("even", "plain") {
			return WorkEven
		}
	case r.eat("even", "plain"):
		return WorkEven
	}
	return Toward
}

// every reads on which rows, behind "every".
func (r *stepReader) every(w *WrittenStep) {
	switch {
	case r.eat("other", "second", "alternate"):
		w.Every = 2
	case r.eat("right-side", "rs"):
		w.On = Right
	case r.eat("wrong-side", "ws"):
		w.On = Wrong
	case r.kind == stepNumber:
		w.Every = r.value
		if w.Every == 0 {
			r.fail("every 0 rows is no interval", "write every row, or every other row")
		}
		r.next()
		r.eat("st", "nd", "rd", "th")
	}
	r.need("row", "row", "rows", "rnd", "rnds", "round", "rounds")
}

// end reads "the end" behind "to".
func (r *stepReader) end(w *WrittenStep) {
	r.eat("the")
	r.need("the end", "end")
	w.ToEnd, w.Times = true, Number{}
}

// number reads a number, a list or a formula in braces.
func (r *stepReader) number() Number {
	n := Number{Span: r.at()}
	switch r.kind {
	case stepFormula:
		n.Formula = source.Span{From: n.Span.From + 1, To: n.Span.To - 1}
		r.next()
		return n
	case stepNumber:
		n.BySize = []int{r.value}
		r.next()
	default:
		r.fail("a number is missing before "+r.said(), "write leave 4, or 2 every row, 3 times")
		return n
	}
	for r.kind == '(' {
		r.next()
		for r.kind == stepNumber {
			n.BySize = append(n.BySize, r.value)
			r.next()
			r.comma()
		}
		if r.kind != ')' {
			r.fail("a bracket of numbers is not closed before "+r.said(), "write 4 (5, 6)")
			return n
		}
		n.Span.To = r.at().To
		r.next()
	}
	return n
}

// stepWords are all the words of steps, for what may have been meant.
var stepWords = strings.Fields("leave lose decrease dec gain increase inc add work even plain stitches sts every each other right-side wrong-side row rows round rounds once twice times to the end")
