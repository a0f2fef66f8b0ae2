package grade

import (
	"maps"
	"slices"

	"foundrow/internal/formula"
	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// A Maker is one body and one pair of hands: the values put in the place of a table's and of the pattern's gauges. The zero
// value changes nothing.
type Maker struct {
	Size string // the size whose other measurements are taken; if empty, the one nearest to Body, else the sample's

	// Body is by name, in the tape's unit: measurements of a body, and those the pattern's [own] lets a maker choose.
	Body map[string]measure.Num

	// Gauges are by name. What is zero in one is taken from the pattern's.
	Gauges map[string]pattern.Gauge
}

// WorkFor works a pattern for one maker, as one more size. What the designer pinned was chosen for her gauge and her sizes, so it
// does not hold for a maker who gives any of her own. Findings about the maker herself have no place in a file.
func WorkFor(p *pattern.Pattern, m Maker) (*Grade, source.Findings) {
	w := newPlan(p)
	w.sizes = []int{w.sizeFor(m)}
	if w.maker = len(m.Body)+len(m.Gauges) > 0; w.maker {
		w.unpin()
	}
	w.putIn(m.Body)
	w.putInGauges(m.Gauges)
	return w.grade()
}

// unpin takes the designer's own choices out of the plan.
func (w *plan) unpin() {
	for i := range w.entries {
		w.entries[i].pins = nil
	}
}

// tell adds a finding about what a maker asked for.
func (w *plan) tell(rule, message, fix string) {
	w.findings.Report(nil, source.Span{}, rule, message, fix)
}

// sizeFor is the size whose measurements are taken where the maker gives none, by its place in the pattern.
func (w *plan) sizeFor(m Maker) int {
	all := w.scopes[inRows].Sizes
	if m.Size != "" || len(all) == 1 {
		if i := slices.Index(all, m.Size); i >= 0 {
			return i
		}
		if m.Size != "" {
			fix := "the sizes are " + source.List(all, "and")
			if near := source.Nearest(m.Size, all); near != "" {
				fix = "take " + near
			}
			if len(w.p.Sizes.Names) == 0 {
				fix = "leave the size out"
			}
			w.tell("unknown-size", "the pattern has no size "+m.Size, fix)
		}
		return max(0, w.p.Sizes.Sample)
	}
	best, least := max(0, w.p.Sizes.Sample), measure.Lost
	for s := range all {
		far, known := w.distance(m.Body, s)
		if known && (least.IsLost() || far.Less(least)) {
			best, least = s, far
		}
	}
	return best
}

// distance adds up how far a body is from the table's in a size; false when nothing can be compared.
func (w *plan) distance(body map[string]measure.Num, size int) (measure.Num, bool) {
	var sum measure.Num
	known := false
	for _, b := range w.p.Sizes.Body {
		if own, given := body[b.Name]; given && size < len(b.Value) && !b.Value[size].IsLost() {
			sum, known = sum.Add(own.Sub(b.Value[size]).Abs()), true
		}
	}
	return sum, known
}

// putIn puts a maker's measurements in the place of the size's.
func (w *plan) putIn(body map[string]measure.Num) {
	for _, name := range slices.Sorted(maps.Keys(body)) {
		own := slices.ContainsFunc(w.p.Own, func(o pattern.Own) bool { return o.Name.Text == name })
		if w.mayPutIn(name) && (own || w.entries[w.byName[name]].role == Body) {
			n := body[name]
			w.entries[w.byName[name]].given = &n
			continue
		}
		names := w.names(func(e *entry) bool { return e.named && e.role == Body })
		for _, o := range w.p.Own {
			if !slices.Contains(names, o.Name.Text) {
				names = append(names, o.Name.Text)
			}
		}
		fix := ""
		if near := source.Nearest(name, names); near != "" {
			fix = "write " + near
		} else if len(names) > 0 {
			fix = "there are " + source.List(names, "and")
		}
		w.tell("unknown-name", "the pattern takes no measurement named "+name, fix)
	}
}

// mayPutIn reports whether a name is a measurement of a body, or one the pattern wishes.
func (w *plan) mayPutIn(name string) bool {
	i, there := w.byName[name]
	return there && (w.entries[i].role == Body || w.entries[i].role == Wish && w.entries[i].what == defined)
}

// putInGauges puts a maker's gauges in the place of the pattern's.
func (w *plan) putInGauges(gauges map[string]pattern.Gauge) {
	for _, name := range slices.Sorted(maps.Keys(gauges)) {
		known := w.scopes[inRows].Gauges
		i := slices.IndexFunc(known, func(g formula.Gauge) bool { return g.Name == name })
		if i < 0 {
			names := make([]string, len(known))
			for k, g := range known {
				names[k] = g.Name
			}
			fix := ""
			if near := source.Nearest(name, names); near != "" {
				fix = "write " + near
			} else if len(names) > 0 {
				fix = "the gauges are " + source.List(names, "and")
			}
			w.tell("unknown-name", "the pattern has no gauge named "+name, fix)
			continue
		}
		known[i] = overlaid(known[i], gauge(gauges[name]))
	}
	w.gauges = slices.Clone(w.gauges)
	for i, g := range w.scopes[inRows].Gauges {
		w.gauges[i].Stitches, w.gauges[i].Over, w.gauges[i].Rows, w.gauges[i].RowsOver = g.Stitches, g.Over, g.Rows, g.RowsOver
	}
}

// overlaid is a gauge with what a maker counted in the place of what the designer did.
func overlaid(designer, maker formula.Gauge) formula.Gauge {
	if maker.Stitches.Sign() > 0 {
		designer.Stitches = maker.Stitches
		if maker.Over.Sign() > 0 {
			designer.Over = maker.Over
		}
	}
	if maker.Rows.Sign() > 0 {
		designer.Rows = maker.Rows
		if maker.RowsOver.Sign() > 0 {
			designer.RowsOver = maker.RowsOver
		}
	}
	return designer
}
