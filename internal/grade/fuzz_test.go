package grade

import (
	"os"
	"strings"
	"testing"

	"foundrow/internal/formula"
	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// FuzzWork works whatever lines of "name = formula" there are, as measurements, counts, pins, a sample and text: nothing panics,
// every value has all its sizes, and every finding has a place in the file.
func FuzzWork(f *testing.F) {
	text, err := os.ReadFile("testdata/garment.txt")
	if err != nil {
		f.Fatal(err)
	}
	f.Add(string(text))
	f.Add("a1 = a2 + 1\na2 = a1 - 1\na3 = a1 in stitches at body")
	f.Add("wide = 40 (42) cm\nfront = wide / 2 in stitches at body, rounded to the nearest multiple of 6 + 2\nwide2 = front.rows")
	f.Fuzz(func(t *testing.T, text string) {
		p := scribbled(text)
		for _, m := range []*Maker{nil, {Size: "M", Body: map[string]measure.Num{"bust": measure.Int(100)}}} {
			var g *Grade
			var findings source.Findings
			if m == nil {
				g, findings = Work(p)
			} else {
				g, findings = WorkFor(p, *m)
			}
			for _, v := range g.Values {
				if len(v.BySize) != len(g.Sizes) {
					t.Fatalf("%s has %d values in %d sizes", v.Name, len(v.BySize), len(g.Sizes))
				}
			}
			for _, fd := range findings {
				if fd.Message == "" || fd.Place.File != "" && (fd.Place.Line < 1 || fd.Place.Column < 1) {
					t.Fatalf("%+v", fd)
				}
			}
		}
	})
}

// scribbled makes a pattern of lines, each of them everything that a formula can be in turn.
func scribbled(text string) *pattern.Pattern {
	p := &pattern.Pattern{
		File:   source.NewFile("fuzz", text),
		Sizes:  pattern.Sizes{Names: []string{"S", "M"}, Sample: 1, Body: []pattern.BodyMeasurement{girth("bust", 86, 97)}},
		Gauges: []pattern.Gauge{swatch("body", 14, 10), swatch("rib", 16, 0)},
		Pieces: []pattern.Piece{{Name: pattern.Words{Text: "front"}}},
	}
	at := 0
	for line := range strings.Lines(text) {
		name, words, _ := strings.Cut(strings.TrimSuffix(line, "\n"), "=")
		f, _ := formula.ParseEase(p.File, at+min(len(name)+1, len(line)), words)
		d := pattern.Definition{Name: pattern.Words{Text: strings.TrimSpace(name), Span: source.Span{From: at, To: at + len(name)}}, Parts: []pattern.Part{{Formula: f}}}
		switch len(name) % 6 {
		case 0:
			p.Measures = append(p.Measures, pattern.Measure{Definition: d, Finished: true})
		case 1:
			p.Measures = append(p.Measures, pattern.Measure{Definition: pattern.Definition{Name: d.Name}, Body: pattern.Words{Text: "bust"}, Ease: d.Parts, Finished: true})
		case 2:
			p.Measures = append(p.Measures, pattern.Measure{Definition: pattern.Definition{Name: d.Name}, Made: f, Finished: true})
		case 3:
			p.Body = append(p.Body, d)
		default:
			p.Counts = append(p.Counts, d)
			p.Pins = append(p.Pins, pattern.Pin{Name: d.Name, Parts: []pattern.Part{{Sizes: []int{1}, Formula: f}}})
			p.Sample = append(p.Sample, pattern.Assertion{Name: d.Name, Value: f})
		}
		p.Slots = append(p.Slots, pattern.Slot{Formula: f, Form: pattern.SlotForm(len(words) % 4)})
		at += len(line)
	}
	return p
}
