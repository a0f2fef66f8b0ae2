package whole

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"

	"foundrow/internal/grade"
	"foundrow/internal/ledger"
	"foundrow/internal/notation"
	"foundrow/internal/source"
)

// A handcount is a pattern of the demonstration studio counted by hand; the files say themselves how.
type handcount struct {
	Sizes  []string
	Values map[string][]int
	Piece  []struct {
		Name, Worked string
		Make         int
		Lines        []struct {
			Line     string
			Stitches []int
		}
		Runs [][][2]int // by size: stitches, and how many rows
	}
}

// TestHandcount holds every figure counted by hand against what the program works: values, the stitches after every printed line, and
// how many rows there are of each count, in every size. What the program has and nobody counted is a failure as well.
func TestHandcount(t *testing.T) {
	files := demonstration(t)
	for _, slug := range files.slugs(t) {
		t.Run(slug, func(t *testing.T) {
			var hand handcount
			meta, err := toml.DecodeFile(filepath.Join(root, "testdata", "handcount", slug+".toml"), &hand)
			if err != nil {
				t.Fatal(err)
			}
			if keys := meta.Undecoded(); len(keys) > 0 {
				t.Errorf("nobody looks at %v", keys)
			}
			g := files.readPattern(t, slug)
			if len(hand.Sizes) == 0 {
				hand.Sizes = []string{""}
			}
			if !slices.Equal(hand.Sizes, g.Sizes) {
				t.Fatalf("counted in %q, worked in %q", hand.Sizes, g.Sizes)
			}
			countedValues(t, hand, g)
			if len(hand.Piece) != len(g.Pieces) {
				t.Fatalf("%d pieces counted and %d worked", len(hand.Piece), len(g.Pieces))
			}
			for i, piece := range g.Pieces {
				if counted := hand.Piece[i]; counted.Name != piece.Name || max(counted.Make, 1) != g.Pattern.Pieces[piece.Blocks[0]].Make {
					t.Fatalf("piece %d: counted %s, to be made %d times, and worked %s", i+1, counted.Name, max(counted.Make, 1), piece.Name)
				}
				countedLines(t, hand, i, g)
				for size, book := range piece.Books {
					if have, want := runsOf(book), hand.Piece[i].Runs[size]; !slices.Equal(have, want) {
						t.Errorf("%s %s has rows %v, by hand %v", piece.Name, g.Sizes[size], have, want)
					}
				}
			}
		})
	}
}

func countedValues(t *testing.T, hand handcount, g *grade.Grade) {
	for _, v := range g.Values {
		if v.Role != grade.Count {
			continue
		}
		want, counted := hand.Values[v.Name]
		if !counted {
			t.Errorf("%s was not counted", v.Name)
			continue
		}
		have := make([]int, len(v.BySize))
		for i, n := range v.BySize {
			have[i], _ = n.Num.Int()
			if !n.Num.IsWhole() {
				t.Errorf("%s is %s in %s", v.Name, n.Num, g.Sizes[i])
			}
		}
		if !slices.Equal(have, want) {
			t.Errorf("%s is %v, by hand %v", v.Name, have, want)
		}
		delete(hand.Values, v.Name)
	}
	for name := range hand.Values {
		t.Errorf("%s was counted and is not there", name)
	}
}

// countedLines compares the lines of a piece in their order: a foundation or a start, rows, and repetitions of rows.
func countedLines(t *testing.T, hand handcount, at int, g *grade.Grade) {
	piece, counted := g.Pieces[at], hand.Piece[at].Lines
	for i, line := range piece.Rows.Lines {
		have, worked := make([]int, len(piece.Books)), false
		switch line.(type) {
		case *notation.Row, *notation.Again:
			for size, book := range piece.Books {
				for _, p := range book.Printed {
					if p.Line == i {
						have[size], worked = p.Count, true
					}
				}
			}
		case *notation.Foundation, *notation.Start:
			for size, book := range piece.Books {
				have[size], worked = begunOn(book, i), true
			}
		}
		if !worked { // a note, a seam, the yarn cut off
			continue
		}
		text := wording(g.Pattern.File, line)
		if len(counted) == 0 || !strings.HasPrefix(text, counted[0].Line) {
			t.Errorf("%s: %q was not counted", piece.Name, text)
			return
		}
		if !slices.Equal(have, counted[0].Stitches) {
			t.Errorf("%s: after %q stand %v sts, by hand %v", piece.Name, counted[0].Line, have, counted[0].Stitches)
		}
		counted = counted[1:]
	}
	for _, c := range counted {
		t.Errorf("%s: %q was counted and is not there", piece.Name, c.Line)
	}
}

// wording is a line as it is written, without the sizes it is for.
func wording(f *source.File, line notation.Line) string {
	text := f.Slice(line.At())
	if only := line.For().Span; only != (source.Span{}) {
		_, text, _ = strings.Cut(text, ": ")
	}
	return text
}

// begunOn is what a piece has from the line that begins it: stitches, chains or places of edges, or the stitches picked up along them.
// A ring takes any number and is none, and a turning chain that nothing is worked into is no place.
func begunOn(book *ledger.Book, line int) int {
	n := 0
	for _, r := range book.Rows {
		switch {
		case r.Line != line:
		case r.Picked:
			n = r.Count
		case r.Times == 0:
			n = 0
			for _, m := range r.Made {
				if m.Stands && m.Kind != ledger.Rings {
					n += m.N
				}
			}
		}
	}
	return n
}

// runsOf are the rows of a book, those alike one after the other together.
func runsOf(book *ledger.Book) [][2]int {
	runs := [][2]int{}
	for _, r := range book.Rows {
		switch n := len(runs); {
		case r.Times == 0 || r.Picked:
		case n > 0 && runs[n-1][0] == r.Count:
			runs[n-1][1] += r.Times
		default:
			runs = append(runs, [2]int{r.Count, r.Times})
		}
	}
	return runs
}
