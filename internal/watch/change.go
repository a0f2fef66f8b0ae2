package watch

import (
	"slices"
	"strconv"

	"foundrow/internal/source"
)

// A change is what a save did to what a pattern says.
type change struct {
	Values []valueChange
	Rows   []rowChange
	More   int  // rows that changed beyond those listed
	Words  bool // the page is not the same, though no value and no row is another
}

// A valueChange says of one value what it was and is: "62 → 64 in L".
type valueChange struct{ Name, Said string }

// A rowChange says of one row what it was and is, in the first of the sizes where it is another.
type rowChange struct {
	Where    string // "Hem, row 2"
	In       string // "in L and XL"; empty where it is so in every size
	From, To string // empty where there was none, or is none
}

// mostRows is how many rows are listed: a longer list is not read.
const mostRows = 12

// compare finds what is not the same in two records. The earlier may be nil: then there is nothing to compare with.
func compare(was, is *record) *change {
	c := &change{}
	if was == nil || is == nil {
		return c
	}
	sizes := shared(was.sizes, is.sizes)
	if !slices.Equal(was.sizes, is.sizes) {
		c.Values = append(c.Values, valueChange{"sizes", sizesSaid(was.sizes) + " → " + sizesSaid(is.sizes)})
	}
	c.values(was, is, sizes)
	c.rows(was, is, sizes)
	return c
}

// A pair is one size by its places in two records.
type pair struct {
	name    string
	was, is int
}

// shared are the sizes that both have.
func shared(was, is []string) (both []pair) {
	for i, name := range is {
		if at := slices.Index(was, name); at >= 0 {
			both = append(both, pair{name, at, i})
		}
	}
	return both
}

func sizesSaid(names []string) string {
	if len(names) == 1 && names[0] == "" {
		return "one size"
	}
	return source.SizeNames(names, names)
}

func (c *change) values(was, is *record, sizes []pair) {
	had := map[string]figure{}
	for _, f := range was.values {
		had[f.name] = f
	}
	for _, f := range is.values {
		old, there := had[f.name]
		delete(had, f.name)
		switch {
		case !there:
			c.Values = append(c.Values, valueChange{f.name, "is new: " + f.list()})
		case old.unit != f.unit:
			c.Values = append(c.Values, valueChange{f.name, old.list() + " → " + f.list()})
		default:
			if said := fromTo(old, f, sizes); said != "" {
				c.Values = append(c.Values, valueChange{f.name, said})
			}
		}
	}
	for _, f := range was.values {
		if _, left := had[f.name]; left {
			c.Values = append(c.Values, valueChange{f.name, "is gone: it was " + f.list()})
		}
	}
}

// list prints a figure in all sizes.
func (f figure) list() string {
	s := ""
	for i, n := range f.bySize {
		if i > 0 {
			s += ", "
		}
		s += n
	}
	return f.with(s)
}

func (f figure) with(number string) string {
	if f.unit == "" {
		return number
	}
	return number + " " + f.unit
}

// fromTo says in which sizes a figure is another: "62 → 64 in L, 68 → 70 in XL and 2X". Sizes that change alike are said
// together.
func fromTo(was, is figure, sizes []pair) string {
	type step struct{ from, to string }
	var steps []step
	in := map[step][]string{}
	for _, s := range sizes {
		this := step{was.in(s.was), is.in(s.is)}
		if this.from == this.to {
			continue
		}
		if in[this] == nil {
			steps = append(steps, this)
		}
		in[this] = append(in[this], s.name)
	}
	said := ""
	for i, this := range steps {
		if i > 0 {
			said += ", "
		}
		said += this.from + " → " + is.with(this.to) + inSizes(in[this], sizes)
	}
	return said
}

func (f figure) in(size int) string { return in(f.bySize, size) }

// inSizes words some of the sizes, " in L and 2X", " in every size", or nothing where there is but one.
func inSizes(some []string, sizes []pair) string {
	switch {
	case len(sizes) == 1:
		return ""
	case len(some) == len(sizes):
		return " in every size"
	}
	all := make([]string, len(sizes))
	for i, s := range sizes {
		all[i] = s.name
	}
	return " in " + source.SizeNames(some, all)
}

// rows finds the rows that are not the same. A row is known by its piece and its label.
func (c *change) rows(was, is *record, sizes []pair) {
	had, order := keyed(was)
	now, _ := keyed(is)
	for _, key := range keysOf(is) {
		old, there := had[key]
		if !there {
			c.addRow(rowChange{Where: key.said(now[key]), To: in(now[key].bySize, 0)})
			continue
		}
		if r, differs := differing(key, old, now[key], sizes); differs {
			c.addRow(r)
		}
	}
	for _, key := range order {
		if _, there := now[key]; !there {
			c.addRow(rowChange{Where: key.said(had[key]), From: in(had[key].bySize, 0)})
		}
	}
}

func (c *change) addRow(r rowChange) {
	if len(c.Rows) < mostRows {
		c.Rows = append(c.Rows, r)
	} else {
		c.More++
	}
}

// A rowKey tells the rows of a pattern apart: the second row of a piece that has no label, say.
type rowKey struct {
	piece, key string
	nth        int
}

// said is how a row is called.
func (k rowKey) said(r row) string {
	switch {
	case r.label == "":
		return k.piece + ", line " + strconv.Itoa(k.nth+1) + " without a number"
	case k.nth > 0:
		return k.piece + ", " + r.label + " (number " + strconv.Itoa(k.nth+1) + " of them)"
	}
	return k.piece + ", " + r.label
}

func keysOf(r *record) (keys []rowKey) {
	seen := map[rowKey]int{}
	for _, p := range r.pieces {
		for _, line := range p.rows {
			key := rowKey{p.title, line.key, 0}
			key.nth = seen[key]
			seen[rowKey{p.title, line.key, 0}]++
			keys = append(keys, key)
		}
	}
	return keys
}

func keyed(r *record) (map[rowKey]row, []rowKey) {
	keys := keysOf(r)
	rows := make(map[rowKey]row, len(keys))
	i := 0
	for _, p := range r.pieces {
		for _, line := range p.rows {
			rows[keys[i]] = line
			i++
		}
	}
	return rows, keys
}

// differing says how a row that was there before is another now.
func differing(key rowKey, was, is row, sizes []pair) (rowChange, bool) {
	r := rowChange{Where: key.said(is)}
	if was.label != is.label {
		was, is = was.labelled(), is.labelled()
	}
	var names []string
	for _, s := range sizes {
		from, to := in(was.bySize, s.was), in(is.bySize, s.is)
		if from == to {
			continue
		}
		if names == nil {
			r.From, r.To = from, to
		}
		names = append(names, s.name)
	}
	if names == nil {
		return r, false
	}
	if len(names) < len(sizes) {
		r.In = inSizes(names, sizes)[1:]
	}
	return r, true
}

// labelled is a row that says its label as well.
func (r row) labelled() row {
	said := make([]string, len(r.bySize))
	for i, text := range r.bySize {
		said[i] = r.label + ": " + text
	}
	r.bySize = said
	return r
}

// empty reports whether nothing was found.
func (c *change) empty() bool { return c == nil || len(c.Values) == 0 && len(c.Rows) == 0 && !c.Words }
