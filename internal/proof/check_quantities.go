package proof

import (
	"foundrow/internal/formula"
	"foundrow/internal/measure"
	"foundrow/internal/source"
)

// A quantity is a number written by hand with what it is a number of, or the trade's list of one number for each size,
// "62 (68, 74, 80)", the smallest outside.
type quantity struct {
	entries  []entry
	shape    []int        // how many numbers stand alone and in each bracket: 1, 4, 4; nil for a number alone
	unit     measure.Unit // of a length or a mass
	counts   formula.Kind // Stitches or Rows where a noun says so; Unknown otherwise
	ordinal  bool         // "the 38th"
	from, to int          // the words it takes up, its unit or noun included
	figures  source.Span  // the number or the list alone
	sentence int32
}

// An entry is one number of a quantity; an absent one is the dash of a size that has none.
type entry struct {
	num    measure.Num
	absent bool
}

// isList reports whether the quantity has a number for each size.
func (q quantity) isList() bool { return q.shape != nil }

// first returns the number outside of the brackets.
func (q quantity) first() measure.Num { return q.entries[0].num }

// quantities finds the numbers and lists of a text for so many sizes. A single number in brackets behind another, "10 (12)", is a
// list only where there are two sizes.
func quantities(words []word, sizes int) []quantity {
	var all []quantity
	for i := 0; i < len(words); {
		if w := words[i]; w.kind != number && w.kind != ordinal || w.num.IsLost() {
			i++
			continue
		}
		q := readList(words, i, sizes)
		q.readNoun(words)
		all = append(all, q)
		i = max(q.to, i+1)
	}
	return all
}

// readList reads a number and the brackets of a list behind it.
func readList(words []word, i, sizes int) quantity {
	w := words[i]
	q := quantity{entries: []entry{{num: w.num}}, ordinal: w.kind == ordinal, from: i, to: i + 1, figures: w.span, sentence: w.sentence}
	if q.ordinal {
		return q
	}
	next, unit := i+1, measure.NoUnit
	if u := unitAt(words, next, w.sentence); u != measure.NoUnit {
		next, unit = next+1, u
	}
	shape := []int{1}
	for {
		members, end := readBracket(words, next, w.sentence, unit)
		if end == 0 || len(members) == 1 && sizes != 2 && !(len(shape) > 1) {
			break
		}
		q.entries = append(q.entries, members...)
		shape = append(shape, len(members))
		next = end
	}
	if len(shape) > 1 {
		q.shape, q.to, q.unit = shape, next, unit
		q.figures = w.span.Through(words[next-1].span)
	}
	return q
}

// readBracket reads "(68, 74, 80)" and returns its numbers and the place behind it; 0 when there is no such bracket. A unit
// behind each number has to be that of the number before the bracket: "54 (21 in)" is one length in two units.
func readBracket(words []word, i int, sentence int32, unit measure.Unit) ([]entry, int) {
	if i >= len(words) || words[i].sentence != sentence || !words[i].is("(", "[") {
		return nil, 0
	}
	closing := ")"
	if words[i].low == "[" {
		closing = "]"
	}
	var members []entry
	for i++; i+1 < len(words) && words[i].sentence == sentence; i++ {
		switch w := words[i]; {
		case w.kind == number:
			members = append(members, entry{num: w.num})
		case w.is("-", "–", "—"):
			members = append(members, entry{absent: true})
		default:
			return nil, 0
		}
		i++
		if u := unitAt(words, i, sentence); u != measure.NoUnit {
			if u != unit {
				return nil, 0
			}
			i++
		}
		if i >= len(words) {
			return nil, 0
		}
		if words[i].low == closing {
			return members, i + 1
		}
		if !words[i].is(",", ":", ";") {
			return nil, 0
		}
	}
	return nil, 0
}

// readNoun finds what the quantity is a number of, behind it or before it.
func (q *quantity) readNoun(words []word) {
	if q.unit != measure.NoUnit {
		return
	}
	if u := unitAt(words, q.to, q.sentence); u != measure.NoUnit {
		q.unit = u
		q.to++
		return
	}
	for i := q.to; i < len(words) && i < q.to+3 && words[i].sentence == q.sentence; i++ {
		if k := countOf(words[i].low); k != formula.Unknown {
			q.counts = k
			if next := i + 1; next < len(words) && words[next].sentence == q.sentence && words[next].is("st", "sts", "stitch", "stitches") {
				i = next
			}
			q.to = i + 1
			return
		}
		if !words[i].is("foundation", "starting", "base", "remaining", "unworked", "live", "front", "back", "edge", "side", "rib", "more") {
			break
		}
	}
	if q.from > 0 && words[q.from-1].sentence == q.sentence && words[q.from-1].is("ch", "chain", "fsc", "fdc", "fhdc", "fhtr", "ftr") {
		q.counts = formula.Stitches
	}
}

// unitAt returns the unit that stands at a place. "in" is an inch only where the sentence ends or goes on as after a length.
func unitAt(words []word, i int, sentence int32) measure.Unit {
	if i >= len(words) || words[i].sentence != sentence {
		return measure.NoUnit
	}
	u := unitOf(words[i].low)
	if words[i].low != "in" || i+1 == len(words) {
		return u
	}
	next := words[i+1]
	if next.kind == mark || next.sentence != sentence || next.is("wide", "long", "deep", "tall", "high", "square", "across", "around", "and", "or", "from") {
		return u
	}
	return measure.NoUnit
}

// unitOf returns the unit that a word names in prose, where designers write more of them than in formulas.
func unitOf(low string) measure.Unit {
	switch low {
	case "centimetre", "centimetres", "centimeter", "centimeters", "cms":
		return measure.Centimetre
	case "millimetre", "millimetres", "millimeter", "millimeters":
		return measure.Millimetre
	case "metre", "metres", "meter", "meters":
		return measure.Metre
	case "in", "″", "”", "ins":
		return measure.Inch
	case "yds", "yard", "yards":
		return measure.Yard
	case "gram", "grams", "gr", "gm":
		return measure.Gram
	case "ounce", "ounces", "ozs":
		return measure.Ounce
	}
	u, _ := measure.ParseUnit(low)
	return u
}

// countOf returns what a noun counts.
func countOf(low string) formula.Kind {
	switch low {
	case "st", "sts", "stitch", "stitches", "ch", "chs", "chain", "chains", "sc", "hdc", "dc", "tr", "htr", "dtr":
		return formula.Stitches
	case "row", "rows", "rnd", "rnds", "round", "rounds":
		return formula.Rows
	}
	return formula.Unknown
}
