package ledger_test

import (
	"fmt"
	"strings"

	"pgregory.net/rapid"
)

// The simulator works rows one stitch at a time, on plain lists, as slowly and as obviously as it can be done. It shares nothing with
// the ledger: rows are drawn as steps, which are written out for the ledger to read and worked here.

// A cell is one place of a row: a stitch, or a space of chains.
type cell struct {
	name   string // of a stitch; empty for a space
	chains int
}

func (c cell) space() bool { return c.chains > 0 }

// A step is one thing that a row does.
type step struct {
	kind  string
	n     int    // how many places, or times
	k     int    // how many in each place; how many stitches are kept
	name  string // of the stitch
	steps []step
}

// text writes a step as a pattern would.
func (s step) text() string {
	switch s.kind {
	case "run":
		return fmt.Sprintf("%s in next %s", s.name, plural(s.n, "st"))
	case "first":
		return fmt.Sprintf("%d %s", s.n, s.name)
	case "after":
		return fmt.Sprintf("%s %d", s.name, s.n)
	case "many":
		return fmt.Sprintf("%d %s in next st", s.k, s.name)
	case "manyEach":
		return fmt.Sprintf("%d %s in each of next %d sts", s.k, s.name, s.n)
	case "dec":
		return fmt.Sprintf("%s%dtog", s.name, s.k)
	case "decs":
		return fmt.Sprintf("%s%dtog %d times", s.name, s.k, s.n)
	case "skip":
		return fmt.Sprintf("sk next %s", plural(s.n, "st"))
	case "chain":
		return fmt.Sprintf("ch %d", s.n)
	case "shell":
		return fmt.Sprintf("(%d %s, ch %d, %d %s) in next st", s.k, s.name, s.n, s.k, s.name)
	case "space":
		return fmt.Sprintf("%d %s in next ch-%d sp", s.k, s.name, s.n)
	case "group":
		return fmt.Sprintf("[%s] %d times", texts(s.steps), s.n)
	case "across":
		return fmt.Sprintf("*%s; rep from * across", texts(s.steps))
	case "toLast":
		return fmt.Sprintf("*%s; rep from * to last %s, %s in last %s", texts(s.steps), plural(s.k, "st"), s.name, plural(s.k, "st"))
	case "each":
		return fmt.Sprintf("%s in each st across", s.name)
	case "eachToLast":
		return fmt.Sprintf("%s in each st to last %s, %s in last %s", s.name, plural(s.k, "st"), s.name, plural(s.k, "st"))
	}
	return "?"
}

func texts(steps []step) string {
	words := make([]string, len(steps))
	for i, s := range steps {
		if s.kind == "first" && i+1 < len(steps) { // "2 sc, ch 1, 2 sc in next st" could be all in one place
			s.kind = "run"
		}
		words[i] = s.text()
	}
	return strings.Join(words, ", ")
}

func plural(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// A worked row is what the simulator makes of one.
type worked struct {
	found []cell
	at    int // the next place
	made  []cell

	used, skipped int // stitches
	spaces        int // spaces used
	short         int
	holes         int
	soft          bool // the last place was a space
	last          int  // its chains
}

// next moves to the next stitch, past spaces.
func (w *worked) next() bool {
	i := w.at
	for i < len(w.found) && w.found[i].space() {
		i++
	}
	if i == len(w.found) {
		return false
	}
	w.at = i
	return true
}

// take uses up the next stitch.
func (w *worked) take() bool {
	if !w.next() {
		w.short++
		w.soft = false
		return false
	}
	w.at++
	w.used++
	w.soft = false
	return true
}

func (w *worked) stitchesLeft() int {
	n := 0
	for _, c := range w.found[w.at:] {
		if !c.space() {
			n++
		}
	}
	return n
}

func (w *worked) put(name string, n int) {
	for range n {
		w.made = append(w.made, cell{name: name})
	}
}

// open is how much of the row nothing accounts for.
func (w *worked) open() int {
	n := 0
	for _, c := range w.found[w.at:] {
		switch {
		case w.soft && c.chains == w.last, !w.soft && !c.space():
			n++
		}
	}
	return n
}

func (w *worked) copy() *worked {
	c := *w
	c.made = append([]cell{}, w.made...)
	return &c
}

func (w *worked) do(steps []step) {
	for _, s := range steps {
		w.one(s)
	}
}

func (w *worked) one(s step) {
	switch s.kind {
	case "run", "first", "after":
		for range s.n {
			w.take()
			w.put(s.name, 1)
		}
	case "many":
		w.take()
		w.put(s.name, s.k)
	case "manyEach":
		for range s.n {
			w.take()
			w.put(s.name, s.k)
		}
	case "dec", "decs":
		times := max(s.n, 1)
		if s.kind == "dec" {
			times = 1
		}
		for range times {
			for range s.k {
				w.take()
			}
			w.put(s.name, 1)
		}
	case "skip":
		for range s.n {
			if w.next() {
				w.at++
				w.skipped++
			} else {
				w.short++
			}
		}
	case "chain":
		w.made = append(w.made, cell{chains: s.n})
	case "shell":
		w.take()
		w.put(s.name, s.k)
		w.made = append(w.made, cell{chains: s.n})
		w.put(s.name, s.k)
	case "space":
		i := w.at
		for i < len(w.found) && w.found[i].chains != s.n {
			i++
		}
		if i < len(w.found) {
			w.at = i + 1
			w.spaces++
			w.soft, w.last = true, s.n
		} else {
			w.short++
			w.soft = false
		}
		w.put(s.name, s.k)
	case "group":
		for range s.n {
			w.do(s.steps)
		}
	case "each":
		for range w.stitchesLeft() {
			w.take()
			w.put(s.name, 1)
		}
	case "eachToLast":
		for w.stitchesLeft() > s.k {
			w.take()
			w.put(s.name, 1)
		}
		w.toLast(s)
	case "across":
		w.asFits(s, 0)
	case "toLast":
		w.asFits(s, s.k)
		w.toLast(s)
	}
}

// toLast works one in each of the last stitches; stitches before them are a hole.
func (w *worked) toLast(s step) {
	for w.stitchesLeft() > s.k {
		soft := w.soft
		w.next()
		w.at++
		if !soft {
			w.holes++
		}
	}
	for range s.k {
		w.take()
		w.put(s.name, 1)
	}
}

// asFits works a repeat as often as it can be worked in full with keep stitches left, once where it cannot. Up to three times fewer are
// taken where only that closes the row.
func (w *worked) asFits(s step, keep int) {
	ways := []*worked{w.copy()}
	for {
		v := ways[len(ways)-1].copy()
		at := v.at
		v.do(s.steps)
		if v.short > w.short || v.stitchesLeft() < keep {
			break
		}
		ways = append(ways, v)
		if v.at == at { // it takes nothing
			break
		}
	}
	if len(ways) == 1 {
		w.do(s.steps)
		return
	}
	best := ways[len(ways)-1]
	if keep == 0 {
		for i := len(ways) - 1; i >= max(0, len(ways)-4); i-- {
			if ways[i].open() == 0 {
				best = ways[i]
				break
			}
		}
	}
	*w = *best
}

// closes reports whether the row comes out.
func (w *worked) closes() bool { return w.short == 0 && w.holes == 0 && w.open() == 0 }

var stitchNames = []string{"sc", "hdc", "dc"}

func drawName(t *rapid.T) string { return rapid.SampledFrom(stitchNames).Draw(t, "stitch") }

// drawSteps draws the steps of a row over so many stitches: not too few and not too many, so that rows come out now and then.
func drawSteps(t *rapid.T, deep int) []step {
	kinds := []string{"run", "first", "after", "many", "manyEach", "dec", "decs", "skip", "chain", "shell", "space"}
	if deep < 2 {
		kinds = append(kinds, "group")
	}
	var steps []step
	for range rapid.IntRange(1, 4).Draw(t, "steps") {
		s := step{kind: rapid.SampledFrom(kinds).Draw(t, "kind"), name: drawName(t)}
		s.n = rapid.IntRange(1, 5).Draw(t, "n")
		s.k = rapid.IntRange(2, 3).Draw(t, "k")
		switch s.kind {
		case "first":
			s.n = max(s.n, 2)
		case "group":
			s.steps = drawSteps(t, deep+1)
		}
		steps = append(steps, s)
	}
	return steps
}

// drawRow draws a row: steps, and mostly something at the end that takes what is left.
func drawRow(t *rapid.T) []step {
	var steps []step
	if rapid.Bool().Draw(t, "lead") { // a chain that opens a row is its beginning, and one that ends it the next one's
		steps = append([]step{{kind: "run", n: 1, name: "sc"}}, drawSteps(t, 0)...)
	}
	end := step{kind: rapid.SampledFrom([]string{"across", "toLast", "each", "eachToLast", "none"}).Draw(t, "end"), name: drawName(t)}
	end.k = rapid.IntRange(1, 3).Draw(t, "keep")
	switch end.kind {
	case "across", "toLast":
		end.steps = drawSteps(t, 1)
	case "none":
		if len(steps) == 0 || steps[len(steps)-1].kind == "chain" {
			return append(steps, step{kind: "each", name: end.name})
		}
		if last := &steps[len(steps)-1]; last.kind == "first" { // "…, 2 sc." at the end is a count
			last.kind = "run"
		}
		return steps
	}
	return append(steps, end)
}
