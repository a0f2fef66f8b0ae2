package proof

import (
	"encoding/json"
	"path"
	"strings"

	"foundrow/internal/grade"
	"foundrow/internal/measure"
	"foundrow/internal/source"
)

// A Proof is what proof --json prints: the patterns, and the findings of the files that are no pattern's.
type Proof struct {
	Patterns []Pattern `json:"patterns"`
	Findings []Finding `json:"findings,omitempty"`
}

// A Pattern is one pattern with its values, its pieces and what was found in it.
type Pattern struct {
	Slug     string           `json:"slug"`
	Title    string           `json:"title"`
	Sizes    []string         `json:"sizes"`
	Values   map[string]Value `json:"values"`
	Pieces   []Piece          `json:"pieces"`
	Findings []Finding        `json:"findings"`
}

// A Value is one value in every size. A number is a decimal where that is exact, and otherwise a mixed fraction: "21 1/3".
// It is null where it could not be worked out.
type Value struct {
	Kind   string    `json:"kind"`
	BySize []*string `json:"by_size"`
}

// A Piece is one worked piece, row by row.
type Piece struct {
	Name string `json:"name"`
	Rows []Row  `json:"rows"`
}

// A Row is one printed line, with what stands after its last working, by size: null where that is not known, or a size has no such
// row. Counts has every kind that the row makes.
type Row struct {
	Label    string           `json:"label"`
	Side     string           `json:"side"`
	Line     int              `json:"line"`
	Stitches []*int           `json:"stitches"`
	Counts   map[string][]int `json:"counts"`
}

// A Finding is a source.Finding for programs.
type Finding struct {
	Rule     string   `json:"rule"`
	Severity string   `json:"severity"`
	File     string   `json:"file"`
	Line     int      `json:"line"`
	Column   int      `json:"column"`
	Sizes    []string `json:"sizes"` // empty: all, or none in particular
	Message  string   `json:"message"`
	Expected string   `json:"expected"`
	Found    string   `json:"found"`
}

// Of returns the entry of a pattern, without findings. The grade may be nil: the pattern could not be read.
func Of(slug string, g *grade.Grade) Pattern {
	p := Pattern{Slug: slug, Sizes: []string{}, Values: map[string]Value{}, Pieces: []Piece{}, Findings: []Finding{}}
	if g == nil {
		return p
	}
	p.Title = g.Pattern.Title.Text
	for _, s := range g.Sizes {
		if s != "" {
			p.Sizes = append(p.Sizes, s)
		}
	}
	for _, v := range g.Values {
		value := Value{Kind: v.Kind.String(), BySize: make([]*string, len(v.BySize))}
		for i, n := range v.BySize {
			if !n.Num.IsLost() {
				s := Exact(n.Num)
				value.BySize[i] = &s
			}
		}
		p.Values[v.Name] = value
	}
	p.Pieces = piecesOf(g)
	return p
}

// Exact prints a number so that it can be read back: as a decimal where that is exact, otherwise as a mixed fraction.
func Exact(n measure.Num) string {
	if n.IsWhole() {
		return n.String()
	}
	under := n.Under()
	for _, prime := range [...]int64{2, 5} {
		for under%prime == 0 {
			under /= prime
		}
	}
	if under != 1 {
		return n.String()
	}
	const places = 9
	s := n.Decimal(places)
	if back, ok := measure.Parse(s); ok && back.Cmp(n) == 0 {
		return s
	}
	return n.String()
}

// New gives every finding to the pattern in whose folder it was made, and the rest to none.
func New(patterns []Pattern, findings source.Findings) Proof {
	p := Proof{Patterns: patterns}
	if patterns == nil {
		p.Patterns = []Pattern{}
	}
	at := map[string]int{}
	for i := range patterns {
		at[patterns[i].Slug] = i
	}
	for _, f := range findings {
		if i, is := at[slugOf(f.Place.File)]; is {
			patterns[i].Findings = append(patterns[i].Findings, finding(f))
		} else {
			p.Findings = append(p.Findings, finding(f))
		}
	}
	return p
}

// slugOf returns the pattern whose folder a file lies in: "content/patterns/millrace/pattern.md" gives "millrace".
func slugOf(file string) string {
	parts := strings.Split(path.Clean(file), "/")
	for i := len(parts) - 1; i >= 2; i-- {
		if parts[i-1] == "patterns" && parts[i-2] == "content" {
			return parts[i]
		}
	}
	return ""
}

func finding(f source.Finding) Finding {
	out := Finding{
		Rule: f.Rule, Severity: f.Severity.String(), File: f.Place.File, Line: f.Place.Line, Column: f.Place.Column,
		Sizes: f.Sizes, Message: f.Message, Expected: f.Expected, Found: f.Found,
	}
	if out.Sizes == nil {
		out.Sizes = []string{}
	}
	return out
}

// JSON prints a proof on indented lines.
func (p Proof) JSON() []byte { return marshal(p) }

// JSON prints the sizes and values of a pattern, as grade --json does.
func (p Pattern) JSON() []byte {
	return marshal(struct {
		Sizes  []string         `json:"sizes"`
		Values map[string]Value `json:"values"`
	}{p.Sizes, p.Values})
}

func marshal(v any) []byte {
	text, err := json.MarshalIndent(v, "", "  ")
	if err != nil {
		panic(err) // there is nothing in it that JSON cannot hold
	}
	return append(text, '\n')
}
