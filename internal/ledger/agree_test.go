package ledger_test

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"foundrow/internal/ledger"
	"foundrow/internal/notation"
	"foundrow/internal/source"
)

func workText(t interface{ Fatalf(string, ...any) }, text string) (*ledger.Book, []ledger.Report, *source.File) {
	f := source.NewFile("rows", text)
	tree, fs := notation.Parse(notation.Input{File: f, Body: source.Span{To: len(text)}})
	if len(fs) > 0 {
		t.Fatalf("%s\n%s", text, fs[0])
	}
	b, reports := ledger.Work(ledger.Piece{Block: tree, Habits: &ledger.Habits{}})
	return b, reports, f
}

// cells lists what a row made, one place at a time, without the chain it began with.
func cells(b *ledger.Book, row int) []cell {
	var out []cell
	for _, m := range b.Rows[row].Made {
		for range m.N {
			switch m.Kind {
			case ledger.Stitches:
				out = append(out, cell{name: b.Known[m.Of].Name})
			case ledger.Spaces:
				out = append(out, cell{chains: m.Chains})
			}
		}
	}
	return out
}

// TestSimulatorsAgree draws pieces of a few rows and works each of them twice. `go test -rapid.checks=30000` is about 100,000 rows.
func TestSimulatorsAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		start := rapid.IntRange(1, 40).Draw(t, "start")
		lines := []string{fmt.Sprintf("Start: %d sc.", start)}
		found := make([]cell, start)
		for i := range found {
			found[i] = cell{name: "sc"}
		}
		for row := 1; row <= 4; row++ {
			steps := drawRow(t)
			lines = append(lines, fmt.Sprintf("Row %d: Ch 1, turn, %s.", row, texts(steps)))
			slow := &worked{found: found}
			slow.do(steps)

			text := strings.Join(lines, "\n")
			b, reports, f := workText(t, text)
			last := len(b.Rows) - 1
			if got := cells(b, last); fmt.Sprint(got) != fmt.Sprint(slow.made) {
				t.Fatalf("%s\nthe ledger makes    %v\nthe simulator makes %v", text, got, slow.made)
			}
			tally := b.Rows[last].Tally
			if int(tally.Used[ledger.Stitches]) != slow.used || int(tally.Skipped[ledger.Stitches]) != slow.skipped || int(tally.Used[ledger.Spaces]) != slow.spaces {
				t.Fatalf("%s\nthe ledger uses %d and skips %d sts, uses %d spaces; the simulator %d, %d, %d", text,
					tally.Used[ledger.Stitches], tally.Skipped[ledger.Stitches], tally.Used[ledger.Spaces], slow.used, slow.skipped, slow.spaces)
			}
			if b.Closes != slow.closes() {
				t.Fatalf("%s\nthe ledger closes: %v (%s); the simulator: %v (short %d, holes %d, open %d)", text, b.Closes, first(f, reports), slow.closes(), slow.short, slow.holes, slow.open())
			}
			if !slow.closes() || len(slow.made) > 400 {
				return
			}
			found = slow.made
			for i, j := 0, len(found)-1; i < j; i, j = i+1, j-1 {
				found[i], found[j] = found[j], found[i]
			}
		}
	})
}

func first(f *source.File, reports []ledger.Report) string {
	fs := ledger.Findings(f, nil, [][]ledger.Report{reports})
	if len(fs) == 0 {
		return "nothing found"
	}
	return fs[0].Message
}
