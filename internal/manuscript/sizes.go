package manuscript

import (
	"slices"
	"strings"

	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// takes are which end of a published range is meant.
var takes = []string{"upper", "middle", "lower"}

// A choice is the [sizes] table while its keys are read.
type choice struct {
	table         *SizeTable
	offer, sample *node
	into          *pattern.Sizes
}

var sizesKeys = []key[choice]{
	{"table", isText, `"women"`, false, readTable},
	{"offer", isText | isList, `"XS to 5X"`, false, func(r *reader, c *choice, n *node) { c.offer = n }},
	{"sample", isText | isWhole, `"M"`, false, func(r *reader, c *choice, n *node) { c.sample = n }},
	{"take", isText, `"upper"`, false, func(r *reader, c *choice, n *node) {
		w, _ := r.oneOf(n, takes)
		c.into.Take = w.Text
	}},
}

// readSizes reads which sizes are offered, and takes their body measurements from the table.
func readSizes(r *reader, p *pattern.Pattern, n *node) {
	p.Sizes = pattern.Sizes{Sample: -1, Span: n.span}
	c := choice{into: &p.Sizes}
	walk(r, sizesKeys, n, &c, "[sizes]")
	unreadTable := n.entry("table") != nil && c.table == nil
	switch {
	case c.table != nil:
		r.fromTable(&c)
	case n.entry("offer") == nil && !unreadTable:
		r.missing(n, "offer", `"XS to 5X"`, "[sizes]")
	case c.offer != nil:
		r.namesOnly(&c, unreadTable)
	}
	if c.sample != nil && len(p.Sizes.Names) > 0 {
		if at, ok := r.sizeNamed(r.offered(), c.sample, r.said(c.sample)); ok {
			p.Sizes.Sample = at
		}
	}
}

func readTable(r *reader, c *choice, n *node) {
	c.into.Table = wordsOf(n)
	if t, ok := r.tables.Find(n.words); ok {
		c.table = &t
		return
	}
	r.whole = false // the body measurements of the table are not known either
	r.fs.Report(r.file, n.text, "unknown-table", "there is no size table `"+n.words+"`",
		didYouMean(n.words, r.tables.Names(), "there are")+"; a table of your own stands in content/sizes/"+n.words+".toml")
}

// fromTable takes the sizes that are offered, all of them where nothing is said, out of a table.
func (r *reader) fromTable(c *choice) {
	set := c.table.set()
	all := make([]int, len(set.names))
	for i := range all {
		all[i] = i
	}
	chosen := all
	if c.offer != nil {
		chosen = r.sizeList(set, c.offer)
		r.ascending(set, chosen, c.offer)
	}
	c.table.choose(c.into, chosen, r.p.Tape)
}

// ascending reports sizes that do not run from the smallest up, which is how every list of the pattern is counted.
func (r *reader) ascending(set sizeSet, chosen []int, n *node) {
	if slices.IsSorted(chosen) {
		return
	}
	slices.Sort(chosen)
	names := make([]string, len(chosen))
	for i, at := range chosen {
		names[i] = `"` + set.names[at] + `"`
	}
	r.fs.Report(r.file, n.span, "size-order", "the sizes do not run from the smallest up", "write [ "+strings.Join(names, ", ")+" ]")
}

// namesOnly takes the words of `offer` as the names of the sizes.
func (r *reader) namesOnly(c *choice, unreadTable bool) {
	nodes := []*node{c.offer}
	if c.offer.kind == isList {
		nodes = c.offer.items
	}
	for _, n := range nodes {
		name := r.said(n)
		switch {
		case n.kind&(isText|isWhole) == 0:
			r.wrongType(n, isText, `offer = ["S", "M", "L"]`)
		case strings.Contains(name, " to ") && unreadTable:
			c.into.Names = append(c.into.Names, r.guessed(n)...)
		case strings.Contains(name, " to "):
			r.fs.Report(r.file, n.span, "unknown-size", "`"+name+"` is a run of sizes, and there is no table to take them from", `name a table, or every size: offer = ["S", "M", "L"]`)
		case slices.Contains(c.into.Names, name):
			r.fs.Report(r.file, n.span, "sizes-doubled", "the size "+name+" is offered twice", "leave one of them out")
		default:
			c.into.Names = append(c.into.Names, name)
		}
	}
}

// guessed returns the sizes of a run after a table that is not known and has its finding: those of whichever published table has
// them, so that the lists of the pattern can still be counted.
func (r *reader) guessed(n *node) []string {
	for _, t := range r.tables.list {
		quiet := reader{file: r.file}
		set := t.set()
		if all := quiet.sizeWords(set, n, n.words); len(quiet.fs) == 0 {
			var names []string
			for _, i := range all {
				names = append(names, set.names[i])
			}
			return names
		}
	}
	return nil
}

// said returns the words of a value: sizes may be numbers.
func (r *reader) said(n *node) string {
	if n.kind == isText {
		return n.words
	}
	return r.file.Slice(n.span)
}

// A sizeSet is the sizes that words can name.
type sizeSet struct {
	names, long []string
	what        string // whose they are, for findings
}

// offered are the sizes of the pattern.
func (r *reader) offered() sizeSet {
	return sizeSet{r.p.Sizes.Names, r.p.Sizes.Long, "this pattern"}
}

// find returns the place of a size that is named in short or in long.
func (s sizeSet) find(name string) int {
	if i := slices.Index(s.names, name); i >= 0 {
		return i
	}
	return slices.Index(s.long, name)
}

// sizeNamed finds one size and reports a name that is none.
func (r *reader) sizeNamed(set sizeSet, n *node, name string) (int, bool) {
	if i := set.find(name); i >= 0 {
		return i, true
	}
	if !slices.ContainsFunc(set.names, func(s string) bool { return s != "" }) {
		r.fs.Report(r.file, n.span, "unknown-size", "there is no size "+name+": this pattern has no sizes", `offer some first: [sizes] offer = ["S", "M", "L"]`)
		return 0, false
	}
	r.fs.Report(r.file, n.span, "unknown-size", set.what+" has no size "+name, set.near(name))
	return 0, false
}

// near is the fix for a size that is none. Names of two letters are all alike, so only a known other spelling is offered for them.
func (s sizeSet) near(name string) string {
	list := "its sizes are " + source.List(s.names, "and")
	for _, other := range otherNames(name) {
		if s.find(other) >= 0 {
			return "did you mean " + other + "? " + list
		}
	}
	if len(name) > 3 {
		if near := source.Nearest(name, slices.Concat(s.names, s.long)); near != "" {
			return "did you mean " + near + "? " + list
		}
	}
	return list
}

// otherNames returns how a size is called elsewhere: XXL and 2XL for 2X, and 1X, as older editions of the Craft Yarn Council's
// tables have it, for XL. Common practice, no source.
func otherNames(name string) []string {
	upper := strings.ToUpper(strings.TrimSpace(name))
	others := []string{upper}
	switch {
	case upper == "1X":
		others = append(others, "XL")
	case len(upper) == 3 && strings.HasSuffix(upper, "XL"):
		others = append(others, strings.Replace(upper, "XXL", "2XL", 1)[:2])
	case upper == "XXXL":
		others = append(others, "3X")
	}
	return others
}

// sizeList reads sizes out of a run, "S to L", a list in words, "S, M and 2X", or a list of either. Sizes named twice are reported.
func (r *reader) sizeList(set sizeSet, n *node) []int {
	if n.kind == isList {
		var all []int
		for _, item := range n.items {
			if item.kind&(isText|isWhole) == 0 {
				r.wrongType(item, isText, n.name+` = ["S", "M", "L"]`)
				continue
			}
			all = append(all, r.sizeWords(set, item, r.said(item))...)
		}
		return r.once(set, n, all)
	}
	return r.once(set, n, r.sizeWords(set, n, r.said(n)))
}

// sizeWords reads sizes out of words. A name that is a size as it stands is taken first: "3 months" is one.
func (r *reader) sizeWords(set sizeSet, n *node, words string) []int {
	if i := set.find(words); i >= 0 {
		return []int{i}
	}
	var all []int
	for _, part := range strings.Split(strings.ReplaceAll(words, " and ", ", "), ",") {
		part = strings.TrimSpace(part)
		first, last, run := strings.Cut(part, " to ")
		from, ok := r.sizeNamed(set, n, strings.TrimSpace(first))
		if !run {
			if ok {
				all = append(all, from)
			}
			continue
		}
		to, ok2 := r.sizeNamed(set, n, strings.TrimSpace(last))
		switch {
		case !ok && !ok2:
			continue
		case !ok2:
			to = len(set.names) - 1 // one end is wrong and has its finding: go on to where the sizes end
		case from > to:
			r.fs.Report(r.file, n.span, "size-order", "the run "+part+" goes from the larger size to the smaller", "write "+set.names[to]+" to "+set.names[from])
			from, to = to, from
		}
		for i := from; i <= to; i++ {
			all = append(all, i)
		}
	}
	return all
}

// once drops sizes that are named again, and reports them.
func (r *reader) once(set sizeSet, n *node, all []int) []int {
	var kept []int
	var twice []string
	for _, i := range all {
		if slices.Contains(kept, i) {
			twice = append(twice, set.names[i])
			continue
		}
		kept = append(kept, i)
	}
	if len(twice) > 0 {
		r.fs.Report(r.file, n.span, "sizes-doubled", "`"+n.name+"` names "+source.List(twice, "and")+" more than once", "name every size once")
	}
	return kept
}

// bodyValue picks what formulas take a range for. Of a girth it is the upper end, as published to-fit figures have it; of a length,
// a width or a depth it is the middle, as a garment there is as often too long as too short. That last is common practice, no source.
func bodyValue(low, high measure.Num, girth bool, take string) measure.Num {
	if take == "" {
		take = "middle"
		if girth {
			take = "upper"
		}
	}
	switch take {
	case "upper":
		return high
	case "lower":
		return low
	}
	return low.Add(high).Div(measure.Int(2))
}
