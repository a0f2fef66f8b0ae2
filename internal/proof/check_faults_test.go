package proof

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// testdata/faults holds one small pattern for each rule of the technical edit, named after it. What must be found in a line stands
// behind it:
//
//	The cloth takes 150 g (300 m).  ##! query ball-differs: 150 g of this yarn are 345 m
//
// the rule, after "query" where it is one, and words of the message or of the fix; lines without such a mark must give nothing,
// from any stage. The marks are taken off before a pattern is read.
const faults = "testdata/faults"

// A fault is what stands behind a line.
type fault struct {
	line        int
	severity    source.Severity
	rule, words string
	found       bool
}

// takeFaults takes the marks off a text.
func takeFaults(t *testing.T, marked string) (string, []fault) {
	t.Helper()
	var all []fault
	lines := strings.Split(marked, "\n")
	for i, line := range lines {
		parts := strings.Split(line, "##!")
		if len(parts) > 1 {
			lines[i] = strings.TrimRight(parts[0], " ")
		}
		for _, said := range parts[1:] {
			f := fault{line: i + 1}
			rule, words, ok := strings.Cut(strings.TrimSpace(said), ": ")
			if !ok {
				t.Fatalf("line %d: %q does not say what is found", i+1, said)
			}
			if rest, query := strings.CutPrefix(rule, "query "); query {
				rule, f.severity = rest, source.Query
			}
			f.rule, f.words = rule, words
			all = append(all, f)
		}
	}
	return strings.Join(lines, "\n"), all
}

func (f fault) is(found source.Finding) bool {
	return !f.found && f.line == found.Place.Line && f.rule == found.Rule && f.severity == found.Severity && strings.Contains(found.Message+" | "+found.Fix, f.words)
}

func TestFaults(t *testing.T) {
	names, err := filepath.Glob(faults + "/*.md")
	if err != nil || len(names) == 0 {
		t.Fatal("no faults to find", err)
	}
	for _, name := range names {
		t.Run(strings.TrimSuffix(filepath.Base(name), ".md"), func(t *testing.T) {
			data, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			text, wanted := takeFaults(t, string(data))
			found := read(source.NewFile(filepath.ToSlash(name), text), "fault", pattern.Studio{Contact: "hello@sallowhythe.example"})
			found.Sort()
			for _, f := range found {
				if !take(wanted, f) {
					t.Errorf("not marked: %s\n%s", f, f.Excerpt())
				}
			}
			for _, w := range wanted {
				if !w.found {
					t.Errorf("%s:%d: not found: %s %s: %s", name, w.line, w.severity, w.rule, w.words)
				}
			}
		})
	}
}

// take strikes a finding off those wanted.
func take(wanted []fault, f source.Finding) bool {
	for i := range wanted {
		if wanted[i].is(f) {
			wanted[i].found = true
			return true
		}
	}
	return false
}

// TestEveryRuleHasAFault holds that no rule of the technical edit goes without a pattern that it is found in.
func TestEveryRuleHasAFault(t *testing.T) {
	for _, r := range editRules {
		if r.Name == "no-contact" {
			continue // of studio.toml: TestNoContact
		}
		data, err := os.ReadFile(filepath.Join(faults, r.Name+".md"))
		if err != nil {
			t.Errorf("rule %s: %v", r.Name, err)
			continue
		}
		mark := " " + r.Name + ": "
		if r.Severity == source.Query {
			mark = " query" + mark
		}
		if !strings.Contains(string(data), "##!"+mark) {
			t.Errorf("%s/%s.md has no fault marked `##!%s`", faults, r.Name, mark)
		}
	}
}
