package judges

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"

	"foundrow/internal/grade"
	"foundrow/internal/manuscript"
	"foundrow/internal/measure"
	"foundrow/internal/source"
)

// A worked fact is a published fact written as the front matter of a pattern, with what must come of it.
type workedFact struct {
	ID    string
	Units string
	Front string
	Want  []struct {
		Value    string   // the name of a value
		Finished string   // or of a finished measurement
		Raw      string   // or of a value before it was made whole
		Is       string   // the key of the fact it must equal
		Within   float64  // the largest difference
		Sizes    []string // of those sizes only
	}
}

// TestPublishedSizing works published facts through real front matter: widths, repeats, gauges, the counts of whole garments.
// The numbers, their sources and how sure they are stand in testdata/cases/grading.toml.
func TestPublishedSizing(t *testing.T) {
	facts := map[string]map[string]any{}
	var published struct{ Fact []map[string]any }
	decode(t, "cases/grading.toml", &published)
	for _, f := range published.Fact {
		facts[f["id"].(string)] = f
	}
	var worked struct{ Fact []workedFact }
	decode(t, "published/widths.toml", &worked)

	numbers := 0
	for _, w := range worked.Fact {
		t.Run(w.ID, func(t *testing.T) {
			fact, there := facts[w.ID]
			if !there {
				t.Fatal("no such fact in grading.toml")
			}
			g := gradeFact(t, w, fact)
			for _, want := range w.Want {
				for i, size := range g.Sizes {
					if want.Sizes != nil && !slices.Contains(want.Sizes, size) {
						continue
					}
					name, ours := "", measure.Lost
					switch {
					case want.Finished != "":
						name = want.Finished
						for _, f := range g.Finished {
							if f.Name == name {
								ours = f.Made[i]
							}
						}
					default:
						name = want.Value + want.Raw
						for _, v := range g.Values {
							if v.Name == name && want.Raw != "" {
								ours = v.BySize[i].Story.From
							} else if v.Name == name {
								ours = v.BySize[i].Num
							}
						}
					}
					theirs := number(t, fact[want.Is], i)
					if ours.IsLost() {
						t.Fatalf("%s came to nothing", name)
					}
					if d := math.Abs(ours.Float() - theirs); d > want.Within+1e-9 {
						t.Errorf("%s in size %q is %s, the source prints %g: off by %.3f, %g is allowed", name, size, ours.Decimal(3), theirs, d, want.Within)
					}
					numbers++
				}
			}
		})
	}
	t.Logf("%d facts, %d published numbers", len(worked.Fact), numbers)
}

// gradeFact makes a pattern of a fact and works it; the numbers are written where their keys stand.
func gradeFact(t *testing.T, w workedFact, fact map[string]any) *grade.Grade {
	t.Helper()
	front := w.Front
	for key, value := range fact {
		front = strings.ReplaceAll(front, "<"+key+">", written(value))
	}
	sizes := ""
	if names, several := fact["sizes"].([]any); several {
		quoted := make([]string, len(names))
		for i, n := range names {
			quoted[i] = fmt.Sprintf("%q", n)
		}
		sizes = "[sizes]\noffer = [" + strings.Join(quoted, ", ") + "]\n"
	}
	studioFile := source.NewFile("content/studio.toml", fmt.Sprintf("title = \"Facts\"\naddress = \"https://facts.example/\"\nunits = %q\n", w.Units))
	studio, findings := manuscript.ReadStudio(studioFile)
	stop(t, findings)
	text := "```toml\ntitle = \"" + w.ID + "\"\nkind = \"other\"\nterms = \"us\"\nwearer = \"none\"\n" + sizes + front + "```\n\nText.\n"
	p, findings := manuscript.ReadPattern(source.NewFile(w.ID+"/pattern.md", text), w.ID, studio, manuscript.Published())
	stop(t, findings)
	g, findings := grade.Work(p)
	stop(t, findings)
	return g
}

// stop ends the test on an error; queries are the designer's to keep.
func stop(t *testing.T, findings source.Findings) {
	t.Helper()
	if findings.Errors() {
		for _, f := range findings {
			t.Log(f.String() + "\n" + f.Excerpt())
		}
		t.FailNow()
	}
}

// written prints a number or a list of the source the way a designer writes it.
func written(v any) string {
	list, several := v.([]any)
	if !several {
		return fmt.Sprint(v)
	}
	parts := make([]string, len(list))
	for i, n := range list {
		parts[i] = fmt.Sprint(n)
	}
	if len(parts) == 1 {
		return parts[0]
	}
	return parts[0] + " (" + strings.Join(parts[1:], ", ") + ")"
}

// number is a fact's number for one size; a single one holds for all.
func number(t *testing.T, v any, size int) float64 {
	t.Helper()
	switch v := v.(type) {
	case int64:
		return float64(v)
	case float64:
		return v
	case []any:
		return number(t, v[size], size)
	}
	t.Fatalf("the fact has no such number: %v", v)
	return 0
}

func decode(t *testing.T, name string, into any) {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "testdata", filepath.FromSlash(name)))
	if err != nil {
		t.Fatal(err)
	}
	if err := toml.Unmarshal(text, into); err != nil {
		t.Fatalf("%s: %v", name, err)
	}
}
