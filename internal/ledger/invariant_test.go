package ledger_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"pgregory.net/rapid"

	"foundrow/internal/ledger"
	"foundrow/internal/notation"
	"foundrow/internal/source"
)

// balanced returns what is wrong with the accounts of a book: in every row, and for each kind of place, what was found is used,
// skipped, passed or left, and no place is worked in twice unless it is a ring, a space, or belongs to one shell.
func balanced(b *ledger.Book) string {
	for i := range b.Rows {
		r := &b.Rows[i]
		for k, found := range r.Tally.Found {
			t := &r.Tally
			if sum := t.Used[k] + t.Skipped[k] + t.Passed[k] + t.Left[k]; sum != found {
				return fmt.Sprintf("row %d (number %d): of kind %d it found %d, used %d, skipped %d, passed %d, left %d", i, r.Number, k, found, t.Used[k], t.Skipped[k], t.Passed[k], t.Left[k])
			}
		}
		places := 0
		for _, m := range r.Made {
			places += m.N
			if m.N <= 0 {
				return fmt.Sprintf("row %d: a run of %d", i, m.N)
			}
		}
		if places != r.Places {
			return fmt.Sprintf("row %d: %d places in %d", i, places, r.Places)
		}
	}
	return ""
}

// once returns a place that a row works in twice.
func once(r *ledger.Row) string {
	type place struct {
		row, at int32
		face    ledger.Face
	}
	by := map[place]int{}
	for i, m := range r.Made {
		if m.Into.N == 0 || m.Into.Face == ledger.InSpace {
			continue
		}
		for at := m.Into.From; at < m.Into.From+m.Into.N; at++ {
			p := place{m.Into.Row, at, m.Into.Face}
			if k, twice := by[p]; twice && (m.Unit == 0 || r.Made[k].Unit != m.Unit) {
				return fmt.Sprintf("place %d of row %d is worked in by runs %d and %d", at, m.Into.Row, k, i)
			}
			by[p] = i
		}
	}
	return ""
}

func TestAccountsBalance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lines := []string{fmt.Sprintf("Start: %d sc.", rapid.IntRange(1, 40).Draw(t, "start"))}
		for row := 1; row <= 3; row++ {
			lines = append(lines, fmt.Sprintf("Row %d: Ch %d, turn, %s.", row, rapid.IntRange(1, 3).Draw(t, "ch"), texts(drawRow(t))))
		}
		text := strings.Join(lines, "\n")
		b, _, _ := workText(t, text)
		if wrong := balanced(b); wrong != "" {
			t.Fatalf("%s\n%s", text, wrong)
		}
		for i := range b.Rows {
			if wrong := once(&b.Rows[i]); wrong != "" {
				t.Fatalf("%s\nrow %d: %s", text, i, wrong)
			}
		}
	})
}

func TestCasesBalance(t *testing.T) {
	var f caseFile
	if _, err := toml.DecodeFile("../../testdata/cases/rows.toml", &f); err != nil {
		t.Fatal(err)
	}
	for i := range f.Case {
		c := &f.Case[i]
		for _, b := range c.blocks() {
			text := strings.Join(b.lines, "\n")
			tree, _ := notation.Parse(notation.Input{File: source.NewFile(c.ID, text), Body: source.Span{To: len(text)}, Terms: c.terms(), Sizes: c.Sizes})
			for size := range max(len(c.Sizes), 1) {
				book, _ := ledger.Work(ledger.Piece{Block: tree, Sizes: c.Sizes, Size: size})
				if wrong := balanced(book); wrong != "" {
					t.Errorf("%s: %s\n%s", c.ID, wrong, text)
				}
			}
		}
	}
}

// TestRepeatIsWrittenOut: a bracket worked n times, and a row worked over several numbers, make what they make written out.
func TestRepeatIsWrittenOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		steps := drawSteps(t, 1)
		for i := range steps {
			if steps[i].kind == "first" { // written out, "2 sc" may be taken together with what follows
				steps[i].kind = "run"
			}
		}
		n := rapid.IntRange(1, 12).Draw(t, "times")
		start := fmt.Sprintf("Start: %d sc.\nRow 1: Ch 1, turn, sc in next st, ", rapid.IntRange(1, 90).Draw(t, "start"))
		out := make([]string, n)
		for i := range out {
			out[i] = texts(steps)
		}
		short, long := start+fmt.Sprintf("[%s] %d times, sc in next st.", texts(steps), n), start+strings.Join(out, ", ")+", sc in next st."
		a, _, _ := workText(t, short)
		b, _, _ := workText(t, long)
		if len(a.Rows) != len(b.Rows) || fmt.Sprint(cells(a, 1)) != fmt.Sprint(cells(b, 1)) || a.Rows[1].Tally != b.Rows[1].Tally {
			t.Fatalf("%s\n%s\n%v %v\n%v %v", short, long, cells(a, 1), a.Rows[1].Tally, cells(b, 1), b.Rows[1].Tally)
		}
	})
}

func TestRowsAreWrittenOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		row := texts(drawRow(t))
		n := rapid.IntRange(2, 4).Draw(t, "rows")
		start := fmt.Sprintf("Start: %d sc.\n", rapid.IntRange(1, 24).Draw(t, "start"))
		long := start
		for i := range n {
			long += fmt.Sprintf("Row %d: Ch 1, turn, %s.\n", i+1, row)
		}
		short := start + fmt.Sprintf("Rows 1 to %d: Ch 1, turn, %s.\n", n, row)
		again := start + fmt.Sprintf("Row 1: Ch 1, turn, %s.\nRows 2 to %d: Repeat row 1.\n", row, n)
		want, _, _ := workText(t, long)
		for _, text := range []string{short, again} {
			got, _, _ := workText(t, text)
			if w, g := expanded(want), expanded(got); w != g {
				t.Fatalf("%s\n%s\n%s\n%s", long, text, w, g)
			}
		}
	})
}

// expanded writes a book's rows out, those that were worked several times alike as many times.
func expanded(b *ledger.Book) string {
	var s strings.Builder
	for i := range b.Rows {
		for range b.Rows[i].Times {
			fmt.Fprintln(&s, cells(b, i), b.Rows[i].Count)
		}
	}
	return s.String()
}

// TestEdgesAreCutAndJoined: cutting an edge and joining the parts gives the edge, with as many stitches; reversing twice changes nothing.
func TestEdgesAreCutAndJoined(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := fmt.Sprintf("Start: %d sc.\nRow 1: Ch 1, turn, %s.", rapid.IntRange(1, 40).Draw(t, "start"), texts(drawRow(t)))
		b, _, _ := workText(t, text)
		for _, which := range []string{"last", "left", "right"} {
			e, ok := b.Edge(which)
			if !ok {
				continue
			}
			n := rapid.IntRange(0, e.Stitches()).Draw(t, "cut")
			first, rest := e.Cut(n)
			if first.Stitches() != n || first.Stitches()+rest.Stitches() != e.Stitches() {
				t.Fatalf("%s\n%s: %d of %d, and %d", text, which, first.Stitches(), e.Stitches(), rest.Stitches())
			}
			if joined := first.Join(rest); fmt.Sprint(joined.Spans) != fmt.Sprint(e.Spans) {
				t.Fatalf("%s\n%s cut at %d: %v and %v join to %v, not %v", text, which, n, first.Spans, rest.Spans, joined.Spans, e.Spans)
			}
			if twice := e.Reverse().Reverse(); fmt.Sprint(twice.Spans) != fmt.Sprint(e.Spans) {
				t.Fatalf("%s\n%s reversed twice is %v, not %v", text, which, twice.Spans, e.Spans)
			}
		}
	})
}
