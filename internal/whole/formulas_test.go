package whole

import (
	"slices"
	"strings"
	"testing"

	"foundrow/internal/formula"
	"foundrow/internal/measure"
	"foundrow/internal/source"
)

// A slip of paper has what is known, and formulas with what they give:
//
//	gauge body = 16 sts and 12 rows over 10 cm
//	sizes S, M, L
//	chest = 104 cm
//	half  = chest / 2 -> 52 cm
//	round = chest / pi -> about 33.1 cm
//	wrong = chest + 4 -> finds kinds
//
// What stands behind an arrow is a formula itself, and must give the same value of the same kind in every size. What is about so
// much is rounded to two decimals.
type slip struct {
	t       *testing.T
	e       example
	scope   formula.Scope
	names   []string
	kinds   []formula.Kind
	figures [][]formula.Figure // by size
}

func runFormulas(t *testing.T, e example) {
	noOptions(t, e)
	s := &slip{t: t, e: e, scope: formula.Scope{Tape: e.studio.Tape, Sizes: []string{""}}, figures: make([][]formula.Figure, 1)}
	s.scope.Name = func(n formula.Name) (int, formula.Kind) {
		i := slices.Index(s.names, n.Text)
		if i < 0 {
			t.Errorf("%s: nothing is known of %s", e, n.Text)
			return 0, formula.Unknown
		}
		return i, s.kinds[i]
	}
	arrows := 0
	for line := range strings.Lines(e.text) {
		e.line++
		s.e.line = e.line
		line = strings.TrimSpace(line)
		written, gives, arrow := strings.Cut(line, " -> ")
		switch {
		case line == "":
		case arrow:
			s.example(written, strings.TrimSpace(gives))
			arrows++
		case strings.HasPrefix(line, "gauge "):
			s.gauge(strings.TrimPrefix(line, "gauge "))
		case strings.HasPrefix(line, "sizes "):
			s.scope.Sizes = strings.Split(strings.TrimPrefix(line, "sizes "), ", ")
			s.figures = make([][]formula.Figure, len(s.scope.Sizes))
		default:
			s.know(line)
		}
	}
	if arrows == 0 {
		t.Errorf("%s has no formula with what it gives", e)
	}
}

// gauge takes "body = 16 sts and 12 rows over 10 cm".
func (s *slip) gauge(line string) {
	name, says, _ := strings.Cut(line, " = ")
	counts, over, isOver := strings.Cut(says, " over ")
	stitches, rows, both := strings.Cut(counts, " and ")
	if !isOver || !both {
		s.t.Fatalf("%s: a gauge is written NAME = 16 sts and 12 rows over 10 cm", s.e)
	}
	of := func(text string, kind formula.Kind) measure.Num {
		v := s.work(text)
		if v == nil || v[0].Kind != kind {
			s.t.Fatalf("%s: %s is no part of a gauge", s.e, text)
		}
		return v[0].Num
	}
	long := of(over, formula.Length)
	s.scope.Gauges = append(s.scope.Gauges, formula.Gauge{Name: name, Stitches: of(stitches, formula.Stitches), Over: long, Rows: of(rows, formula.Rows), RowsOver: long})
}

// know takes a value with its name.
func (s *slip) know(line string) {
	name, text, named := strings.Cut(line, "=")
	values := s.work(strings.TrimSpace(text))
	if !named || values == nil {
		s.t.Fatalf("%s: %q is neither known nor an example", s.e, line)
	}
	s.names, s.kinds = append(s.names, strings.TrimSpace(name)), append(s.kinds, values[0].Kind)
	for size, v := range values {
		s.figures[size] = append(s.figures[size], formula.Figure{Num: v.Num, Approx: v.Approx})
	}
}

// example compares a formula with what it is said to give.
func (s *slip) example(line, gives string) {
	name, text, named := strings.Cut(line, "=")
	name, text = strings.TrimSpace(name), strings.TrimSpace(text)
	if !named || formula.IsReserved(name) {
		s.t.Errorf("%s: %q is no name and a formula", s.e, line)
		return
	}
	if rule, is := strings.CutPrefix(gives, "finds "); is {
		_, found := s.check(text)
		finds(s.t, s.e, found, rule)
		return
	}
	gives, about := strings.CutPrefix(gives, "about ")
	have, want := s.work(text), s.work(gives)
	for size := range want {
		switch h, w := have[size], want[size]; {
		case h.Kind != w.Kind:
			s.t.Errorf("%s: %s gives %s, and not %s", s.e, text, h.Kind, w.Kind)
		case about && h.Num.Decimal(2) != w.Num.Decimal(2), !about && h.Num.Cmp(w.Num) != 0:
			s.t.Errorf("%s: %s gives %s %s, and not %s", s.e, text, h.Num.Decimal(4), h.Kind, gives)
		case about != h.Approx:
			s.t.Errorf("%s: whether %s is exact or only about so much is not as the example says", s.e, text)
		}
	}
}

func (s *slip) check(text string) (formula.Checked, source.Findings) {
	f, found := formula.Parse(source.NewFile(s.e.name, text), 0, text)
	checked, more := f.Check(&s.scope)
	return checked, append(found, more...)
}

// work gives a formula that must have no findings in every size.
func (s *slip) work(text string) []formula.Value {
	s.t.Helper()
	checked, found := s.check(text)
	if finds(s.t, s.e, found, ""); len(found) > 0 {
		s.t.FailNow()
	}
	values := make([]formula.Value, len(s.scope.Sizes))
	for size := range values {
		value, remarks := checked.Work(&formula.Column{Size: size, Figures: s.figures[size]})
		for _, r := range remarks {
			if r.What != formula.Tie {
				s.t.Fatalf("%s: %s has no value", s.e, text)
			}
		}
		values[size] = value
	}
	return values
}
