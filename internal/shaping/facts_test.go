package shaping

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"

	"foundrow/internal/measure"
)

// A fact is one published fact of testdata/cases/grading.toml, where its source stands, and what was compared with it.
type fact struct {
	*testing.T
	id       string
	of       map[string]any
	compared int
}

// TestPublishedShaping holds schedules, spreads and shapes against published counts. Every fact of these kinds must be compared.
func TestPublishedShaping(t *testing.T) {
	var cases struct{ Fact []map[string]any }
	if _, err := toml.DecodeFile("../../testdata/cases/grading.toml", &cases); err != nil {
		t.Fatal(err)
	}
	kinds := strings.Fields("taper armhole neck raglan yoke mitre triangle spacing circle sphere increase pickup repeat")
	facts, numbers := map[string]int{}, map[string]int{}
	todo := maps.Clone(comparisons)
	for _, of := range cases.Fact {
		id, kind := of["id"].(string), of["kind"].(string)
		compare, there := todo[id]
		delete(todo, id)
		if !there {
			if slices.Contains(kinds, kind) {
				t.Errorf("%s, a fact of the kind %s, is compared with nothing", id, kind)
			}
			continue
		}
		t.Run(id, func(t *testing.T) {
			f := &fact{T: t, id: id, of: of}
			compare(f)
			if f.compared == 0 {
				t.Error("no number was compared")
			}
			facts[kind]++
			numbers[kind] += f.compared
		})
	}
	for id := range todo {
		t.Errorf("there is no fact %s", id)
	}
	var b strings.Builder
	sum, all := 0, 0
	for _, kind := range slices.Sorted(maps.Keys(facts)) {
		fmt.Fprintf(&b, "\n%-10s %3d facts %4d numbers", kind, facts[kind], numbers[kind])
		sum, all = sum+facts[kind], all+numbers[kind]
	}
	t.Logf("%s\n%-10s %3d facts %4d numbers", b.String(), "in all", sum, all)
}

// n is a number of the fact, for one size; a single one holds for all.
func (f *fact) n(key string, size ...int) int {
	f.Helper()
	v := f.value(key)
	if list, several := v.([]any); several && len(size) > 0 {
		v = list[size[0]]
	}
	n, ok := v.(int64)
	if !ok {
		f.Fatalf("%s is %v, no whole number", key, v)
	}
	return int(n)
}

// value finds a key, or one in a table of the fact: "row3.front".
func (f *fact) value(key string) any {
	f.Helper()
	var v any = f.of
	for part := range strings.SplitSeq(key, ".") {
		v = v.(map[string]any)[part]
	}
	if v == nil {
		f.Fatalf("there is no %s", key)
	}
	return v
}

// list is a list of whole numbers.
func (f *fact) list(key string) []int {
	f.Helper()
	var out []int
	for _, v := range f.value(key).([]any) {
		out = append(out, int(v.(int64)))
	}
	return out
}

// num is a number as it is printed.
func (f *fact) num(key string, size ...int) measure.Num {
	f.Helper()
	v := f.value(key)
	if list, several := v.([]any); several && len(size) > 0 {
		v = list[size[0]]
	}
	return num(f, fmt.Sprint(v))
}

// sizes counts through the sizes; a fact of one has none.
func (f *fact) sizes(key string) []int {
	out := make([]int, len(f.value(key).([]any)))
	for i := range out {
		out[i] = i
	}
	return out
}

func (f *fact) is(what string, got, want int) {
	f.Helper()
	f.compared++
	if got != want {
		f.Errorf("%s is %d, the source prints %d", what, got, want)
	}
}

func (f *fact) are(what string, got, want []int) {
	f.Helper()
	f.compared += len(want)
	if !slices.Equal(got, want) {
		f.Errorf("%s are %v, the source prints %v", what, got, want)
	}
}

func (f *fact) near(what string, got measure.Num, want, within float64) {
	f.Helper()
	f.compared++
	if math.Abs(got.Float()-want) > within+1e-9 {
		f.Errorf("%s is %s, the source prints %g", what, got.Decimal(3), want)
	}
}

func (f *fact) solve(w Want) Schedule {
	f.Helper()
	s, refused := Solve(w)
	if refused != nil {
		f.Fatal(refused.Why)
	}
	return s
}

func (f *fact) steps(w StepsWant) Schedule {
	f.Helper()
	s, refused := SolveSteps(w)
	if refused != nil {
		f.Fatal(refused.Why)
	}
	return s
}

func (f *fact) spread(w SpreadWant) Spread {
	f.Helper()
	s, refused := SolveSpread(w)
	if refused != nil {
		f.Fatal(refused.Why)
	}
	return s
}

// plain are the plain stitches before each event of a spread, and after the last.
func plain(s Spread) []int {
	var out []int
	for _, g := range s.Groups {
		for range g.Times {
			out = append(out, g.Plain)
		}
	}
	return append(out, s.Plain)
}

// intervals are how many rows lie from each event to the next, the first from the beginning.
func intervals(s Schedule) []int {
	var out []int
	last := 0
	for _, row := range s.Events() {
		out = append(out, row-last)
		last = row
	}
	return out
}
