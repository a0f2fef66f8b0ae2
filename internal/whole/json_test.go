package whole

import (
	"bytes"
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"foundrow/internal/proof"
	"foundrow/internal/source"
)

// What proof --json prints, as the source format gives it, put down a second time.
type (
	proofJSON struct {
		Patterns []patternJSON `json:"patterns"`
	}
	patternJSON struct {
		Slug     string               `json:"slug"`
		Title    string               `json:"title"`
		Sizes    []string             `json:"sizes"`
		Values   map[string]valueJSON `json:"values"`
		Pieces   []pieceJSON          `json:"pieces"`
		Findings []findingJSON        `json:"findings"`
	}
	valueJSON struct {
		Kind   string    `json:"kind"`
		BySize []*string `json:"by_size"`
	}
	pieceJSON struct {
		Name string    `json:"name"`
		Rows []rowJSON `json:"rows"`
	}
	rowJSON struct {
		Label    string           `json:"label"`
		Side     string           `json:"side"`
		Line     int              `json:"line"`
		Stitches []*int           `json:"stitches"`
		Counts   map[string][]int `json:"counts"`
	}
	findingJSON struct {
		Rule     string   `json:"rule"`
		Severity string   `json:"severity"`
		File     string   `json:"file"`
		Line     int      `json:"line"`
		Column   int      `json:"column"`
		Sizes    []string `json:"sizes"`
		Message  string   `json:"message"`
		Expected string   `json:"expected"`
		Found    string   `json:"found"`
	}
)

// proofOf is what proof --json prints of a studio, read again. Written again it must be the same text: nothing is missing in it, nothing
// is null that should be an empty list, and nothing is unheard of.
func proofOf(t *testing.T, files studio) proofJSON {
	t.Helper()
	text := proof.New(files.open(t).Proof(nil)).JSON()
	var p proofJSON
	d := json.NewDecoder(bytes.NewReader(text))
	d.DisallowUnknownFields()
	if err := d.Decode(&p); err != nil {
		t.Fatal(err)
	}
	again, err := json.MarshalIndent(p, "", "  ")
	if err != nil {
		t.Fatal(err)
	}
	if again = append(again, '\n'); !bytes.Equal(again, text) {
		t.Errorf("what is printed is not of the shape that the source format gives:\n%s", firstDifference(string(text), string(again)))
	}
	return p
}

// firstDifference shows the first line in which two texts differ.
func firstDifference(a, b string) string {
	one, two := strings.Split(a, "\n"), strings.Split(b, "\n")
	for i := range min(len(one), len(two)) {
		if one[i] != two[i] {
			return one[i] + "\n" + two[i]
		}
	}
	return "one goes on where the other ends"
}

func TestProofJSON(t *testing.T) {
	files := demonstration(t)
	for _, p := range proofOf(t, files).Patterns {
		sizes := max(len(p.Sizes), 1)
		if len(p.Findings) > 0 || p.Title == "" || len(p.Pieces) == 0 || len(p.Values) == 0 {
			t.Errorf("%s is titled %q and has %d findings, %d pieces and %d values", p.Slug, p.Title, len(p.Findings), len(p.Pieces), len(p.Values))
		}
		for name, v := range p.Values {
			if len(v.BySize) != sizes || slices.Contains(v.BySize, nil) {
				t.Errorf("%s: %s is not known in all of %d sizes", p.Slug, name, sizes)
			}
		}
		written := strings.Split(files[patternFile(p.Slug)], "\n")
		for _, piece := range p.Pieces {
			line := 0
			for _, r := range piece.Rows {
				if r.Line <= line {
					t.Errorf("%s: %s has line %d behind line %d", p.Slug, piece.Name, r.Line, line)
				}
				line = r.Line
				if !strings.Contains(written[line-1], r.Label) || !slices.Contains([]string{"", "RS", "WS"}, r.Side) {
					t.Errorf("%s:%d: %s (%s) is not what stands there: %s", p.Slug, line, r.Label, r.Side, written[line-1])
				}
				rowOf(t, p, r, sizes)
			}
		}
	}
}

// rowOf holds that the stitches of a row are the sum of its kinds in every size that has the row. The patterns of the demonstration
// studio print how many stitches there are; no row of theirs leaves spaces or counts units.
func rowOf(t *testing.T, p patternJSON, r rowJSON, sizes int) {
	if len(r.Stitches) != sizes {
		t.Errorf("%s:%d: stitches in %d of %d sizes", p.Slug, r.Line, len(r.Stitches), sizes)
		return
	}
	sum := make([]int, sizes)
	for kind, counts := range r.Counts {
		if len(counts) != sizes {
			t.Errorf("%s:%d: %s in %d of %d sizes", p.Slug, r.Line, kind, len(counts), sizes)
			return
		}
		for i, n := range counts {
			sum[i] += n
		}
	}
	for i, n := range r.Stitches {
		if n == nil && sum[i] != 0 || n != nil && *n != sum[i] {
			t.Errorf("%s:%d: the kinds %v do not add up to the stitches of size %d", p.Slug, r.Line, r.Counts, i+1)
		}
	}
}

// TestProofJSONFinding is the example that the source format gives: a count that is wrong in one size.
func TestProofJSONFinding(t *testing.T) {
	files := demonstration(t)
	name := patternFile("orfleet-pullover")
	const was, now = "\nRows 14 to 16: Ch 1, turn, hdc in each st across.\n", "\nRows 14 to 16: Ch 1, turn, hdc in each st across. (68 (80, 86, 93, 104) (110, 116, 128, 134) sts)\n"
	at := strings.Index(files[name], was)
	if at < 0 {
		t.Fatalf("%s has no such row: %s", name, was)
	}
	file := source.NewFile(name, strings.Replace(files[name], was, now, 1))
	files[name] = file.Text
	for _, p := range proofOf(t, files).Patterns {
		if p.Slug != "orfleet-pullover" {
			continue
		}
		i := slices.IndexFunc(p.Findings, func(f findingJSON) bool { return f.Rule == "count-differs" })
		if i < 0 {
			t.Fatalf("a wrong count is not found: %v", p.Findings)
		}
		f := p.Findings[i]
		place := file.Place(source.At(at + 1 + strings.Index(now[1:], "(68") + 1))
		if f.Severity != "error" || f.File != name || f.Line != place.Line || !slices.Equal(f.Sizes, []string{"L"}) || f.Expected != "92" || f.Found != "93" {
			t.Errorf("found %+v in line %d", f, place.Line)
		}
		return
	}
	t.Error("the pullover was not proofread")
}
