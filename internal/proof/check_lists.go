package proof

import (
	"slices"
	"strconv"
	"strings"

	"foundrow/internal/formula"
	"foundrow/internal/grade"
	"foundrow/internal/measure"
	"foundrow/internal/source"
)

// houseShape is how the trade's list is set for so many sizes, in the whole of a document: up to six in one bracket, from seven on
// in two, the larger first.
func houseShape(sizes int) []int {
	if sizes <= 6 {
		return []int{1, sizes - 1}
	}
	rest := sizes - 1
	return []int{1, rest - rest/2, rest / 2}
}

// shaped writes a shape with letters for numbers: "a (b, c, d)".
func shaped(shape []int) string {
	var b strings.Builder
	n := 0
	for i, members := range shape {
		if i > 0 {
			b.WriteString(" (")
		}
		for j := range members {
			if j > 0 {
				b.WriteString(", ")
			}
			b.WriteByte(byte('a' + n%26))
			n++
		}
		if i > 0 {
			b.WriteByte(')')
		}
	}
	return b.String()
}

// lists calls visit for every list written by hand outside of rows: those of rows are package notation's to read.
func (e *edit) lists(visit func(p passage, q quantity)) {
	for _, p := range e.passages {
		if p.inRows() {
			continue
		}
		for _, q := range p.quantities {
			if q.isList() {
				visit(p, q)
			}
		}
	}
}

// listLength finds lists that do not have one number for each size.
func listLength(e *edit) []note {
	var notes []note
	e.lists(func(_ passage, q quantity) {
		if len(q.entries) == e.sizes() {
			return
		}
		message := "a list of " + strconv.Itoa(len(q.entries)) + " numbers, and the pattern has " + strconv.Itoa(len(e.Sizes)) + " sizes: " + strings.Join(e.Sizes, ", ")
		if len(e.Sizes) < 2 {
			message = "a list of " + strconv.Itoa(len(q.entries)) + " numbers, and the pattern has one size"
		}
		notes = append(notes, note{
			span: q.figures, message: message, fix: "write one number for each size, or a value in braces, which always has them all",
			expected: strconv.Itoa(e.sizes()), found: strconv.Itoa(len(q.entries)),
		})
	})
	return notes
}

// strangeSize finds paragraphs for some sizes, "Sizes M and 3X to 5X only: …", that name a size the pattern does not offer; rows for
// some sizes are package notation's to read.
func strangeSize(e *edit) []note {
	var notes []note
	for _, p := range e.passages {
		if p.kind != paragraph || len(p.words) == 0 || !p.words[0].is("size", "sizes") {
			continue
		}
		end := slices.IndexFunc(p.words, func(w word) bool { return w.is(":") })
		if end < 2 || !p.words[end-1].is("only") {
			continue
		}
		for from := 1; from < end; from++ {
			to := from
			for to < end-1 && !p.words[to].is(",", "and", "to") {
				to++
			}
			if to == from {
				continue
			}
			span := p.words[from].span.Through(p.words[to-1].span)
			if name := e.pattern.File.Slice(span); !slices.Contains(e.Sizes, name) && !slices.Contains(e.pattern.Sizes.Long, name) {
				n := note{span: span, message: "`" + name + "` is no size of this pattern", fix: "its sizes are " + source.List(e.Sizes, "and")}
				if near := source.Nearest(name, e.Sizes); near != "" {
					n.fix = "did you mean " + near + "? " + n.fix
				}
				notes = append(notes, n)
			}
			from = to
		}
	}
	return notes
}

// listShape finds lists whose brackets part the sizes elsewhere than those of the rest of the document.
func listShape(e *edit) []note {
	house := houseShape(e.sizes())
	var notes []note
	e.lists(func(_ passage, q quantity) {
		if len(q.entries) != e.sizes() || slices.Equal(q.shape, house) {
			return
		}
		notes = append(notes, note{
			span:    q.figures,
			message: "the brackets part the sizes as " + shaped(q.shape) + "; everywhere else in the pattern they are " + shaped(house),
			fix:     "set the brackets the same way, so that a maker finds her size at the same place every time",
		})
	})
	return notes
}

// listFalls finds lists of lengths, weights and yarn in which a larger size has less than a smaller one.
func listFalls(e *edit) []note {
	var notes []note
	e.lists(func(_ passage, q quantity) {
		if len(q.entries) != e.sizes() || q.unit == measure.NoUnit {
			return
		}
		if i := falls(q); i > 0 {
			notes = append(notes, note{
				span: q.figures, sizes: []string{e.size(i)},
				message: "the list falls from " + entryText(q, i-1) + " in " + e.size(i-1) + " to " + entryText(q, i) + " in " + e.size(i),
				fix:     "see whether a number was mistyped or two were swapped",
			})
		}
	})
	return notes
}

// falls returns the place of the first number that is less than the last before it, or 0.
func falls(q quantity) int {
	last := measure.Num{}
	for i, n := range q.entries {
		if n.absent {
			continue
		}
		if n.num.Less(last) {
			return i
		}
		last = n.num
	}
	return 0
}

func entryText(q quantity, i int) string {
	text := q.entries[i].num.Decimal(3)
	if q.unit == measure.Inch {
		text = measure.Inches(q.entries[i].num)
	}
	return text + " " + q.unit.String()
}

// A named value as the text could have written it.
type named struct {
	name    string
	kind    formula.Kind
	bySize  []measure.Num
	body    bool
	differs bool // not the same in all sizes
}

// named returns the values a text could have braces for: counts, finished measurements as they are made, wishes and the body.
func (e *edit) named() []named {
	var all []named
	add := func(n named) {
		if len(n.bySize) != e.sizes() {
			return
		}
		n.differs = slices.ContainsFunc(n.bySize, func(x measure.Num) bool { return x.Cmp(n.bySize[0]) != 0 })
		all = append(all, n)
	}
	for _, v := range e.Values {
		i := slices.IndexFunc(e.Finished, func(f grade.Finished) bool { return f.Name == v.Name })
		if i >= 0 {
			add(named{name: v.Name, kind: formula.Length, bySize: e.Finished[i].Made})
			continue
		}
		nums := make([]measure.Num, len(v.BySize))
		for s, x := range v.BySize {
			nums[s] = x.Num
		}
		add(named{name: v.Name, kind: v.Kind, bySize: nums, body: v.Role == grade.Body})
	}
	slices.SortStableFunc(all, func(a, b named) int { return order(a.kind) - order(b.kind) })
	return all
}

// order puts counts before measurements: where two values are the same, a count is the likelier to have been meant.
func order(k formula.Kind) int {
	if k.IsCount() {
		return 0
	}
	return 1
}

// matches reports whether a value is printed in a size as the quantity's number.
func (e *edit) matches(q quantity, n measure.Num, v named, size int) bool {
	x := v.bySize[size]
	if x.IsLost() {
		return false
	}
	tape := e.pattern.Tape
	switch {
	case q.unit == measure.Centimetre && v.kind == formula.Length:
		x = tape.InCentimetres(x)
		if v.body {
			x = tape.BodyInCentimetres(v.bySize[size])
		}
		return measure.Nearest(x, measure.Ratio(1, 2), measure.Num{}).Cmp(n) == 0
	case q.unit == measure.Inch && v.kind == formula.Length:
		x = tape.InInches(x)
		if v.body {
			x = tape.BodyInInches(v.bySize[size])
		}
		return measure.Nearest(x, measure.Ratio(1, 4), measure.Num{}).Cmp(n) == 0
	case q.unit != measure.NoUnit:
		return false
	case q.counts == formula.Unknown:
		return v.kind.IsCount() && x.Cmp(n) == 0
	}
	return v.kind == q.counts && x.Cmp(n) == 0
}

// listByHand finds lists that are a value in every size: in braces they would follow the gauge.
func listByHand(e *edit) []note {
	if len(e.Sizes) < 2 {
		return nil
	}
	var notes []note
	values := e.named()
	for _, p := range e.passages {
		for _, q := range p.quantities {
			if !q.isList() || len(q.entries) != e.sizes() {
				continue
			}
			i := slices.IndexFunc(values, func(v named) bool {
				if !v.differs {
					return false
				}
				for s, n := range q.entries {
					if n.absent || !e.matches(q, n.num, v, s) {
						return false
					}
				}
				return true
			})
			if i >= 0 {
				notes = append(notes, note{
					span:    q.figures,
					message: "this list is `" + values[i].name + "` in every size, written out by hand",
					fix:     "write {" + values[i].name + "}: it follows when the gauge or a measurement changes",
				})
			}
		}
	}
	return notes
}

// sampleNumber finds a number that is right in the sample size and in no other: what is left over when a pattern of one size
// is made into one of several.
func sampleNumber(e *edit) []note {
	sample := e.pattern.Sizes.Sample
	if len(e.Sizes) < 2 || sample < 0 || sample >= len(e.Sizes) {
		return nil
	}
	var notes []note
	values := e.named()
	for _, p := range e.passages {
		for _, q := range p.quantities {
			if q.isList() || q.first().Less(measure.Int(10)) || !e.leftOver(p, q) {
				continue
			}
			i := slices.IndexFunc(values, func(v named) bool {
				return v.differs && !v.body && (e.matches(q, q.first(), v, sample) || p.kind == row && e.matches(q, q.first().Sub(measure.Int(1)), v, sample))
			})
			if i < 0 {
				continue
			}
			name, is := values[i].name, " is `"
			if !e.matches(q, q.first(), values[i], sample) {
				name, is = name+" + 1", " is one more than `"
			}
			notes = append(notes, note{
				span:    q.figures,
				message: e.pattern.File.Slice(q.figures) + is + values[i].name + "` in size " + e.size(sample) + ", and `" + values[i].name + "` differs from size to size",
				fix:     "write {" + name + "}",
			})
		}
	}
	return notes
}

// leftOver reports whether a number stands where one for all sizes has to: with its noun, in a sentence that does not speak of
// one size or of the gauge. In rows only a long foundation chain is looked at: the counts behind rows are worked in every size,
// and a number within a row may happen to be that of a value.
func (e *edit) leftOver(p passage, q quantity) bool {
	if q.unit == measure.NoUnit && q.counts == formula.Unknown || p.kind == lead {
		return false
	}
	if p.kind == row {
		return q.from > 0 && p.words[q.from-1].is("ch", "chain", "fsc", "fdc", "fhdc", "fhtr") && q.first().Cmp(measure.Int(20)) >= 0
	}
	if p.nearBefore(q.from, "about", "approximately", "roughly", "nearly") || p.says(q.from, "size", "sizes", "sample", "shown", "photo", "photos", "photograph", "pictured", "model", "gauge", "tension", "swatch", "example", "multiple", "over") {
		return false
	}
	return !p.names(q.from, e.Sizes)
}
