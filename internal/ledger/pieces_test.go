package ledger_test

import (
	"fmt"
	"os"
	"strconv"
	"strings"
	"testing"

	"foundrow/internal/ledger"
	"foundrow/internal/notation"
	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

// A row of the crocheter's table.
type tableLine struct {
	text   string
	leaves []string // by size, "-" for a size without the row; nil where nothing is stated
	mark   string   // "!!" or "??", empty for no finding
	rule   string
	says   string
}

// readMarks takes what is expected of a line off its end.
func readMarks(line string) tableLine {
	l := tableLine{text: line}
	cut := len(line)
	for _, m := range []string{" => ", " !! ", " ?? "} {
		if i := strings.Index(line, m); i >= 0 {
			cut = min(cut, i)
		}
	}
	l.text = strings.TrimSpace(line[:cut])
	rest := line[cut:]
	for _, m := range []string{"!!", "??"} {
		if i := strings.Index(rest, m); i >= 0 {
			l.mark = m
			after := strings.TrimSpace(rest[i+2:])
			before := rest[:i]
			l.rule, l.says, _ = strings.Cut(after, " ")
			if k := strings.Index(l.says, "=>"); k >= 0 {
				before += l.says[k:]
				l.says = l.says[:k]
			}
			l.says = strings.Trim(strings.TrimSpace(l.says), `"`)
			rest = before
		}
	}
	if _, counts, ok := strings.Cut(rest, "=>"); ok {
		l.leaves = strings.Fields(counts)
	}
	return l
}

// TestPieces works the crocheter's table, and facts of the trade.
func TestPieces(t *testing.T) {
	for _, name := range []string{"pieces", "trade"} {
		text, err := os.ReadFile("testdata/" + name + ".txt")
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range strings.Split(string(text), "\n\n# ")[1:] {
			title, body, _ := strings.Cut(c, "\n")
			t.Run(name+"/"+title, func(t *testing.T) { workCase(t, body) })
		}
	}
}

// A shop is what the pieces of a case leave for those after them, in one size.
type shop map[string]map[string]ledger.Edge

func workCase(t *testing.T, body string) {
	var sizes []string
	var turning []ledger.Turning
	terms := stitch.US
	type piece struct {
		name     string
		reversed bool
		lines    []string
	}
	var pieces []piece
	for _, line := range strings.Split(body, "\n") {
		switch {
		case strings.TrimSpace(line) == "" || strings.HasPrefix(line, "# "):
		case strings.HasPrefix(line, "sizes:"):
			sizes = strings.Fields(line)[1:]
		case strings.HasPrefix(line, "uk:"):
			terms = stitch.UK
		case strings.HasPrefix(line, "turning:"):
			w := strings.Fields(line)
			turning = append(turning, ledger.Turning{Stitch: w[1], Counts: w[2] == "counts"})
		case strings.HasPrefix(line, "["):
			name, how, _ := strings.Cut(strings.Trim(line, "[]"), ", ")
			pieces = append(pieces, piece{name: name, reversed: how == "reversed"})
		default:
			p := &pieces[len(pieces)-1]
			p.lines = append(p.lines, line)
		}
	}
	n := max(len(sizes), 1)
	shops := make([]shop, n)
	for i := range shops {
		shops[i] = shop{}
	}
	for _, p := range pieces {
		var rows []tableLine
		var states []string
		for _, line := range p.lines {
			if strings.HasPrefix(line, "= ") {
				states = append(states, line[2:])
				continue
			}
			rows = append(rows, readMarks(line))
		}
		texts := make([]string, len(rows))
		for i := range rows {
			texts[i] = rows[i].text
		}
		f := source.NewFile("rows", strings.Join(texts, "\n"))
		tree, fs := notation.Parse(notation.Input{File: f, Body: source.Span{To: len(f.Text)}, Terms: terms, Sizes: sizes})
		in := make([]ledger.Piece, n)
		for i := range in {
			in[i] = ledger.Piece{Name: p.name, Block: tree, Sizes: sizes, Size: i, Turning: turning, Reversed: p.reversed, Edges: func(piece, which string, copy int) (ledger.Edge, bool) {
				e, ok := shops[i][piece][which]
				return e, ok && copy == 0
			}}
		}
		books, reports := ledger.WorkSizes(in)
		fs = append(fs, ledger.Findings(f, sizes, reports)...)
		expectFindings(t, rows, fs)
		for i, b := range books {
			expectCounts(t, f, rows, b, i)
			for _, s := range states {
				expectState(t, p.name, s, b, i)
			}
			if wrong := balanced(b); wrong != "" {
				t.Errorf("%s: %s", p.name, wrong)
			}
			edges := map[string]ledger.Edge{}
			for _, which := range []string{"last", "foundation", "left", "right"} {
				if e, ok := b.Edge(which); ok {
					edges[which] = e
				}
			}
			shops[i][p.name] = edges
			for _, taken := range b.Taken {
				shops[i][taken.Piece][taken.Which] = taken.Left
			}
		}
	}
}

func expectFindings(t *testing.T, rows []tableLine, fs source.Findings) {
	t.Helper()
	met := make([]bool, len(rows))
	for _, f := range fs {
		i := f.Place.Line - 1
		if i < 0 || i >= len(rows) {
			t.Errorf("a finding nowhere: %s", f)
			continue
		}
		r := &rows[i]
		want := "!!"
		if f.Severity == source.Query {
			want = "??"
		}
		switch {
		case r.mark == "":
			t.Errorf("%s\n   not expected: %s", r.text, f)
		case r.mark != want || r.rule != f.Rule || !strings.Contains(f.Message, r.says):
			t.Errorf("%s\n   %s %s %q expected, found: %s", r.text, r.mark, r.rule, r.says, f)
		default:
			met[i] = true
		}
	}
	for i, r := range rows {
		if r.mark != "" && !met[i] {
			t.Errorf("%s\n   %s %s expected and not found", r.text, r.mark, r.rule)
		}
	}
}

func expectCounts(t *testing.T, f *source.File, rows []tableLine, b *ledger.Book, size int) {
	t.Helper()
	for i, r := range rows {
		if r.leaves == nil {
			continue
		}
		want := r.leaves[min(size, len(r.leaves)-1)]
		got := "-"
		for _, p := range b.Printed {
			if f.Place(p.Span).Line == i+1 {
				got = strconv.Itoa(p.Count)
			}
		}
		if got != want {
			t.Errorf("%s\n   size %d leaves %s, not %s", r.text, size, got, want)
		}
	}
}

func expectState(t *testing.T, piece, state string, b *ledger.Book, size int) {
	t.Helper()
	words := strings.Fields(state)
	numbers := words[1:]
	edge := func(which string) string {
		e, ok := b.Edge(which)
		if !ok {
			return "none"
		}
		return strconv.Itoa(e.Stitches())
	}
	var got string
	switch words[0] {
	case "rows":
		got = strconv.Itoa(b.Worked())
	case "stitches":
		got = strconv.Itoa(b.Count())
	case "height":
		got = fmt.Sprint(float64(b.Halves()) / 2)
	case "after":
		n, _ := strconv.Atoi(words[1])
		numbers = words[2:]
		after, ok := b.StitchesAfter(n)
		if got = strconv.Itoa(after); !ok {
			got = "none"
		}
	default:
		got = edge(words[0])
	}
	if want := numbers[min(size, len(numbers)-1)]; got != want {
		t.Errorf("%s: = %s: it is %s in size %d", piece, state, got, size)
	}
}
