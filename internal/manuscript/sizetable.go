package manuscript

import (
	"strconv"
	"strings"

	"foundrow/internal/formula"
	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

var tableKeys = []key[SizeTable]{
	{"source", isText, `"measured on 40 dolls, 2025"`, true, func(r *reader, t *SizeTable, n *node) { t.Source = n.words }},
	{"credit", isText, `"Source: …"`, false, func(r *reader, t *SizeTable, n *node) { t.Credit = n.words }},
	{"sizes", isList, `["S", "M", "L"]`, true, readTableSizes},
	{"long", isList, `["Small", "Medium", "Large"]`, false, readLongNames},
	{"wearer", isText | isList, `"adult"`, false, readTableWearer},
	{"body", isTable, `a table for each measurement: [body.chest]`, true, func(r *reader, t *SizeTable, n *node) {
		for _, row := range group(r, rowKeys, n, func(n *node) tableRow { return tableRow{of: t, TableRow: TableRow{Name: r.rowName(n)}, table: n} }) {
			t.Rows = append(t.Rows, r.tableRow(row))
		}
	}},
	{"misprint", isList, `[[misprint]]`, false, readMisprints},
}

// A tableRow is a row while its keys are read.
type tableRow struct {
	TableRow
	of       *SizeTable
	table    *node
	inch, cm *node
}

var rowKeys = []key[tableRow]{
	{"label", isText, `"chest"`, false, func(r *reader, t *tableRow, n *node) { t.Label = n.words }},
	{"how", isText, `"round the fullest part"`, false, func(r *reader, t *tableRow, n *node) { t.How = n.words }},
	{"girth", isTruth, `true`, false, func(r *reader, t *tableRow, n *node) { t.Girth = r.file.Slice(n.span) == "true" }},
	{"inch", isList, `["32 to 34", 36, "-"]`, false, func(r *reader, t *tableRow, n *node) { t.inch = n }},
	{"cm", isList, `["81 to 86", 91.5, "-"]`, false, func(r *reader, t *tableRow, n *node) { t.cm = n }},
	{"mark", isText, `"confirmed by 2 pages"`, false, func(r *reader, t *tableRow, n *node) { t.Mark = n.words }},
}

// ReadSizes reads content/sizes/<table>.toml; SizeTable says how such a file is written.
func ReadSizes(f *source.File) (SizeTable, source.Findings) {
	root, whole, fs := readTOML(f, source.Span{To: len(f.Text)})
	r := reader{file: f, whole: whole, fs: fs}
	t := SizeTable{Name: tableName(f)}
	if !isName(t.Name) {
		r.fs.Report(f, source.Span{}, "bad-name", "`"+t.Name+"` is no name for a table: a name has letters, digits and underscores, and begins with a letter",
			"name the file "+underscored(t.Name)+".toml")
	}
	walk(&r, tableKeys, root, &t, "a size table")
	r.fs.Sort()
	return t, r.fs
}

func readTableSizes(r *reader, t *SizeTable, n *node) {
	for _, item := range n.items {
		name := strings.TrimSpace(r.said(item))
		if item.kind&(isText|isWhole) == 0 || name == "" {
			r.wrongType(item, isText, `sizes = ["S", "M", "L"]`)
			name = "?"
		}
		if t.set().find(name) >= 0 {
			r.fs.Report(r.file, item.span, "sizes-doubled", "the size "+name+" stands twice in the table", "give every size a name of its own")
		}
		t.Sizes = append(t.Sizes, TableSize{Name: name, Long: name, Wearer: pattern.None})
	}
}

// oneEach reports a list of a table that has not one entry for each size.
func (r *reader) oneEach(t *SizeTable, n *node) bool {
	if len(n.items) == len(t.Sizes) {
		return true
	}
	r.fs.Report(r.file, n.span, "list-length", "`"+n.name+"` is a list of "+strconv.Itoa(len(n.items))+" for "+strconv.Itoa(len(t.Sizes))+" sizes",
		`write one for each size, and "-" where there is none`)
	return false
}

func readLongNames(r *reader, t *SizeTable, n *node) {
	if !r.oneEach(t, n) {
		return
	}
	for i, item := range n.items {
		if item.kind != isText {
			r.wrongType(item, isText, `long = ["Small", "Medium", "Large"]`)
		} else if item.words != "-" {
			t.Sizes[i].Long = item.words
		}
	}
}

func readTableWearer(r *reader, t *SizeTable, n *node) {
	if n.kind == isList && !r.oneEach(t, n) {
		return
	}
	for i := range t.Sizes {
		item := n
		if n.kind == isList {
			item = n.items[i]
		} else if i > 0 {
			t.Sizes[i].Wearer = t.Sizes[0].Wearer
			continue
		}
		w, _ := r.oneOf(item, wearerWords)
		t.Sizes[i].Wearer = pattern.Wearer(w.Text)
	}
}

// rowName is the name of a measurement in formulas.
func (r *reader) rowName(n *node) string {
	if formula.IsReserved(n.name) {
		r.fs.Report(r.file, n.key, "reserved-name", "`"+n.name+"` is a word of the formula language", "give the measurement another name, such as body_"+n.name)
	}
	return r.name(n).Text
}

// tableRow puts the two units of a row together.
func (r *reader) tableRow(row tableRow) TableRow {
	out := row.TableRow
	if out.Label == "" {
		out.Label = strings.ReplaceAll(out.Name, "_", " ")
	}
	if row.inch == nil && row.cm == nil {
		r.fs.Report(r.file, row.table.span, "missing-key", "[body."+out.Name+"] has neither `cm` nor `inch`", `write cm = ["81 to 86", 91, "-"], or inch`)
	}
	out.Cells = make([]TableCell, len(row.of.Sizes))
	inch, cm := r.cells(row.of, row.inch), r.cells(row.of, row.cm)
	for i := range out.Cells {
		out.Cells[i] = pair(inch[i], cm[i])
	}
	return out
}

// A figure is what a table prints for one size in one unit: two equal ends, or a range. The zero value is none.
type figure struct {
	low, high measure.Num
	set       bool
}

// cells reads one unit of a row.
func (r *reader) cells(t *SizeTable, n *node) []figure {
	all := make([]figure, len(t.Sizes))
	if n == nil || !r.oneEach(t, n) {
		return all
	}
	for i, item := range n.items {
		all[i] = r.cell(item)
	}
	return all
}

// cell reads "32 to 34", 36 or "-".
func (r *reader) cell(n *node) figure {
	written := r.said(n)
	if written == "-" {
		return figure{}
	}
	first, last, isRange := strings.Cut(written, " to ")
	low, rest, ok := leadingNumber(strings.TrimSpace(first))
	high, rest2, ok2 := low, "", true
	if isRange {
		high, rest2, ok2 = leadingNumber(strings.TrimSpace(last))
	}
	switch {
	case !ok || !ok2 || rest != "" || rest2 != "" || low.Sign() <= 0:
		r.fs.Report(r.file, n.span, "unread-quantity", "`"+written+"` is not a cell of a table", `write a number, a range such as "32 to 34", or "-"`)
	case high.Less(low):
		r.fs.Report(r.file, n.span, "out-of-range", "the range "+written+" runs downwards", "write the smaller number first")
	default:
		return figure{low, high, true}
	}
	return figure{}
}

// pair makes one cell of the two units. Where the table has one only, the other is worked out for printing.
func pair(inch, cm figure) TableCell {
	c := TableCell{Empty: !inch.set && !cm.set, Metric: !inch.set}
	c.LowInch, c.HighInch, c.LowCm, c.HighCm = inch.low, inch.high, cm.low, cm.high
	switch {
	case c.Empty:
	case !inch.set:
		onTape := func(n measure.Num) measure.Num {
			return measure.Nearest(n.Div(measure.InternationalInch), measure.Ratio(1, 4), measure.Num{})
		}
		c.LowInch, c.HighInch, c.Worked = onTape(cm.low), onTape(cm.high), measure.Inch
	case !cm.set:
		onTape := func(n measure.Num) measure.Num {
			return measure.Nearest(n.Mul(measure.InternationalInch), measure.Ratio(1, 2), measure.Num{})
		}
		c.LowCm, c.HighCm, c.Worked = onTape(inch.low), onTape(inch.high), measure.Centimetre
	}
	return c
}

// A misprint is a cell that its publisher got wrong.
type misprint struct{ of, size, cell, note *node }

var misprintKeys = []key[misprint]{
	{"of", isText, `"chest"`, true, func(r *reader, m *misprint, n *node) { m.of = n }},
	{"size", isText | isWhole, `"L"`, true, func(r *reader, m *misprint, n *node) { m.size = n }},
	{"cell", isText, `"cm"`, true, func(r *reader, m *misprint, n *node) {
		if _, ok := r.oneOf(n, []string{"cm", "inch", "unknown"}); ok {
			m.cell = n
		}
	}},
	{"note", isText, `"42 inches are 106.5 cm"`, true, func(r *reader, m *misprint, n *node) { m.note = n }},
}

func readMisprints(r *reader, t *SizeTable, n *node) {
	for _, item := range n.items {
		if item.kind != isTable {
			r.wrongType(item, isTable, "[[misprint]]")
			continue
		}
		var m misprint
		walk(r, misprintKeys, item, &m, "[[misprint]]")
		if m.of != nil && m.size != nil && m.cell != nil && m.note != nil {
			r.misprint(t, m)
		}
	}
}

func (r *reader) misprint(t *SizeTable, m misprint) {
	size, ok := r.sizeNamed(t.set(), m.size, r.said(m.size))
	var rows []string
	for i := range t.Rows {
		row := &t.Rows[i]
		rows = append(rows, row.Name)
		if row.Name != m.of.words || !ok {
			continue
		}
		row.Cells[size].Misprint = m.note.words
		row.Cells[size].Metric = row.Cells[size].Metric || m.cell.words == "inch"
		return
	}
	if ok {
		unknownName(&r.fs, r.file, m.of.text, m.of.words, "measurement", rows)
	}
}
