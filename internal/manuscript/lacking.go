package manuscript

import (
	"slices"
	"strings"

	"foundrow/internal/formula"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// lacking reports what asks for a body measurement in a size for which the table has no cell. The value there is lost, so that
// nothing that follows from it is reported again.
func lacking(p *pattern.Pattern) (fs source.Findings) {
	for _, b := range p.Sizes.Body {
		var without []int
		for i, v := range b.Value {
			if v.IsLost() {
				without = append(without, i)
			}
		}
		if len(without) == 0 {
			continue
		}
		visitFormulas(p, func(f *formula.Formula, sizes []int) {
			if mentions(f.Text, b.Name) {
				reportLacks(&fs, p, f.Span, b.Name, without, sizes)
			}
		})
		for _, m := range p.Measures {
			if m.Body.Text == b.Name {
				reportLacks(&fs, p, m.Body.Span, b.Name, without, nil)
			}
		}
	}
	return fs
}

func reportLacks(fs *source.Findings, p *pattern.Pattern, at source.Span, name string, without, sizes []int) {
	var names []string
	for _, i := range without {
		if sizes == nil || slices.Contains(sizes, i) {
			names = append(names, p.Sizes.Names[i])
		}
	}
	if len(names) > 0 {
		fs.Report(p.File, at, "size-lacks", "the table `"+p.Sizes.Table.Text+"` has no "+name+" for "+source.List(names, "and"),
			"give it in [body] under another name, or leave these sizes out")
	}
}

// visitFormulas calls visit for every formula of the front matter, with the sizes it holds for (nil for all), and for every slot.
func visitFormulas(p *pattern.Pattern, visit func(*formula.Formula, []int)) {
	parts := func(list []pattern.Part) {
		for _, part := range list {
			visit(part.Formula, part.Sizes)
		}
	}
	for _, d := range slices.Concat(p.Body, p.Counts) {
		parts(d.Parts)
	}
	for _, m := range p.Measures {
		parts(m.Parts)
		parts(m.Ease)
		if m.Made != nil {
			visit(m.Made, nil)
		}
	}
	for _, s := range p.Slots {
		visit(s.Formula, nil)
	}
}

// mentions reports whether a name stands in a formula.
func mentions(text, name string) bool {
	if !strings.Contains(text, name) {
		return false
	}
	return slices.Contains(strings.FieldsFunc(text, func(r rune) bool { return r > 127 || !isBare(byte(r)) || r == '-' }), name)
}
