package whole

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"

	"foundrow/internal/proof"
	"foundrow/internal/source"
)

// mechanical is the last line of the technical editor's checklist that is common to the checklists of several editors and that a program can
// look at; those behind it are ours.
const mechanical = 16

// A seed is a fault sown into the demonstration studio; testdata/seeds.toml has them and says how.
type seed struct {
	Line               int
	Rule               string
	File, Was, Now, At string
	Also               []string
}

// readSeeds reads the seeds in their order.
func readSeeds(t *testing.T) []seed {
	t.Helper()
	var all struct{ Seed []seed }
	meta, err := toml.DecodeFile("testdata/seeds.toml", &all)
	if err != nil {
		t.Fatal(err)
	}
	if keys := meta.Undecoded(); len(keys) > 0 {
		t.Fatalf("nobody looks at %v", keys)
	}
	return all.Seed
}

// sow puts a seed's words into a studio.
func (s studio) sow(t *testing.T, one seed) {
	t.Helper()
	if n := strings.Count(s[one.File], one.Was); n != 1 {
		t.Fatalf("%s has %q %d times", one.File, one.Was, n)
	}
	s[one.File] = strings.Replace(s[one.File], one.Was, one.Now, 1)
}

// line is where a seed must be found in a studio that it was sown in.
func (s studio) line(one seed) int {
	file := source.NewFile(one.File, s[one.File])
	if one.At != "" {
		return file.Place(source.At(strings.Index("\n"+file.Text, "\n"+one.At))).Line
	}
	differ := 0
	for differ < min(len(one.Was), len(one.Now)) && one.Was[differ] == one.Now[differ] {
		differ++
	}
	return file.Place(source.At(strings.Index(file.Text, one.Now) + differ)).Line
}

// TestSeededFaults sows each fault by itself: it is found, by its rule, in its line, and nothing else is. It prints for each line of the
// checklist which rules are found and in which files, those of the patterns with one fault each that package proof is tested with among
// them.
func TestSeededFaults(t *testing.T) {
	found := map[int]map[string][]string{} // files, by rule, by line of the checklist
	note := func(rule proof.Rule, file string) {
		if found[rule.Line] == nil {
			found[rule.Line] = map[string][]string{}
		}
		found[rule.Line][rule.Name] = append(found[rule.Line][rule.Name], file)
	}
	for _, one := range readSeeds(t) {
		rule, _, known := proof.Find(one.Rule)
		if !known || rule.Line != one.Line {
			t.Errorf("rule %s does not stand by line %d of the checklist", one.Rule, one.Line)
		}
		files := demonstration(t)
		files.sow(t, one)
		_, findings := files.open(t).Proof(nil)
		expect(t, findings, one.Rule, []seed{one}, files)
		note(rule, "seeds.toml ("+strings.TrimPrefix(one.File, "content/")+")")
	}
	for name, rule := range faultFiles(t) {
		note(rule, "proof/testdata/faults/"+name)
	}
	var table strings.Builder
	for line := 1; line <= mechanical; line++ {
		fmt.Fprintf(&table, "\n%2d %s", line, proof.Checklist[line])
		if proof.Checklist[line] == "" || len(found[line]) == 0 {
			t.Errorf("no fault is found for line %d of the checklist: %s", line, proof.Checklist[line])
		}
		for _, rule := range slices.Sorted(maps.Keys(found[line])) {
			fmt.Fprintf(&table, "\n     %-16s %s", rule, strings.Join(found[line][rule], ", "))
		}
	}
	t.Log(table.String())
}

// TestSeededStudio sows the first fault of every line together. Each is found where it was sown, and nothing else is.
func TestSeededStudio(t *testing.T) {
	files := demonstration(t)
	var sown []seed
	for _, one := range readSeeds(t) {
		if !slices.ContainsFunc(sown, func(s seed) bool { return s.Line == one.Line }) {
			files.sow(t, one)
			sown = append(sown, one)
		}
	}
	if len(sown) != mechanical {
		t.Errorf("faults for %d of %d lines of the checklist", len(sown), mechanical)
	}
	_, findings := files.open(t).Proof(nil)
	expect(t, findings, "all of them", sown, files)
}

// TestCleanStudio holds that none of it is found where nothing was sown.
func TestCleanStudio(t *testing.T) {
	_, findings := demonstration(t).open(t).Proof(nil)
	none(t, findings)
}

// expect compares findings with the seeds that were sown. One that holds in several sizes with other numbers in each is found for each.
func expect(t *testing.T, findings source.Findings, what string, sown []seed, files studio) {
	t.Helper()
	met := make([]bool, len(sown))
	for _, f := range findings {
		known := false
		for i, s := range sown {
			if f.Rule == s.Rule && f.Place.File == s.File && f.Place.Line == files.line(s) {
				met[i], known = true, true
			}
			known = known || slices.Contains(s.Also, f.Rule)
		}
		if !known {
			t.Errorf("%s was sown, and found is\n%s\n%s", what, f, f.Excerpt())
		}
	}
	for i, s := range sown {
		if !met[i] {
			t.Errorf("%s:%d: %s was sown and is not found", s.File, files.line(s), s.Rule)
		}
	}
}

// faultFiles reads the patterns with one fault each that package proof is tested with, and returns the rules of the checklist's lines that
// are found in them, by file. What must be found in a line stands behind it: "##! query ball-differs: words".
func faultFiles(t *testing.T) map[string]proof.Rule {
	t.Helper()
	set := demonstration(t).settings(t)
	names, err := filepath.Glob(filepath.Join(root, "internal", "proof", "testdata", "faults", "*.md"))
	if err != nil || len(names) == 0 {
		t.Fatal("there are no such patterns", err)
	}
	found := map[string]proof.Rule{}
	for _, name := range names {
		marked, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		short := filepath.Base(name)
		rule, _, _ := proof.Find(strings.TrimSuffix(short, ".md"))
		if rule.Line < 1 || rule.Line > mechanical {
			continue
		}
		lines, at := strings.Split(string(marked), "\n"), 0
		for i, line := range lines {
			written, mark, is := strings.Cut(line, "##!")
			if is {
				lines[i] = strings.TrimRight(written, " ")
			}
			if strings.Contains(mark, " "+rule.Name+": ") {
				at = i + 1
			}
		}
		_, findings := read(patternFile("fault"), strings.Join(lines, "\n"), set)
		if !slices.ContainsFunc(findings, func(f source.Finding) bool { return f.Rule == rule.Name && f.Place.Line == at }) {
			t.Errorf("%s:%d: %s is not found", short, at, rule.Name)
			continue
		}
		found[short] = rule
	}
	return found
}
