package manuscript

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"golang.org/x/tools/txtar"

	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// The files of testdata/findings hold texts of a studio, one below another. What must be found in a line stands behind it:
//
//	stiches = 14  ##! unknown-key: did you mean `stitches`
//
// the rule, after "query" where it is one, and words of the message or of the fix. Several are separated by another ##!. Lines
// without such a mark must give nothing. The marks are taken off before a text is read.
const mark = "##!"

func TestFindings(t *testing.T) {
	archives, err := filepath.Glob("testdata/findings/*.txtar")
	if err != nil || len(archives) == 0 {
		t.Fatal("no texts to read", err)
	}
	for _, name := range archives {
		archive, err := txtar.ParseFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, file := range archive.Files {
			t.Run(filepath.Base(name)+"/"+file.Name, func(t *testing.T) { checkFindings(t, file.Name, string(file.Data)) })
		}
	}
}

// A wanted finding is what stands behind a line.
type wanted struct {
	line     int
	severity source.Severity
	rule     string
	words    string
	met      bool
}

func checkFindings(t *testing.T, name, marked string) {
	text, want := takeMarks(t, marked)
	f, found := CheckText(name, []byte(text))
	found = append(found, read(f)...)
	for _, finding := range found {
		if !meets(finding, want) {
			t.Errorf("unexpected: %s\n%s", finding, finding.Excerpt())
		}
		checkWording(t, finding)
	}
	for _, w := range want {
		if !w.met {
			t.Errorf("%s:%d: not found: %s %s: %s", name, w.line, w.severity, w.rule, w.words)
		}
	}
}

// read reads a file by what its name says it is.
func read(f *source.File) source.Findings {
	studio := pattern.Studio{}
	dir := filepath.Dir(f.Name)
	var fs source.Findings
	switch {
	case f.Name == "studio.toml":
		_, fs = ReadStudio(f)
	case dir == "sizes":
		_, fs = ReadSizes(f)
	case dir == "stitches":
		_, fs = ReadStitches(f)
	case dir == "pages":
		_, fs = ReadPlain(f, "page", studio)
	default:
		_, fs = ReadPattern(f, "pattern", studio, Published())
	}
	return fs
}

// takeMarks takes the marks off a text.
func takeMarks(t *testing.T, marked string) (string, []wanted) {
	var want []wanted
	lines := strings.SplitAfter(marked, "\n")
	for i, line := range lines {
		parts := strings.Split(strings.TrimRight(line, "\n"), mark)
		if len(parts) == 1 {
			continue
		}
		lines[i] = strings.TrimRight(parts[0], " ") + "\n"
		for _, p := range parts[1:] {
			w := wanted{line: i + 1}
			rule, words, ok := strings.Cut(strings.TrimSpace(p), ":")
			if !ok {
				t.Fatalf("line %d: %q does not say what is found", i+1, p)
			}
			if rest, query := strings.CutPrefix(rule, "query "); query {
				rule, w.severity = rest, source.Query
			}
			w.rule, w.words = rule, strings.TrimSpace(words)
			want = append(want, w)
		}
	}
	return strings.Join(lines, ""), want
}

func meets(f source.Finding, want []wanted) bool {
	for i := range want {
		w := &want[i]
		if !w.met && w.line == f.Place.Line && w.rule == f.Rule && w.severity == f.Severity && strings.Contains(f.Message+" | "+f.Fix, w.words) {
			w.met = true
			return true
		}
	}
	return false
}

// checkWording holds every finding to the house style: lower case, no full stop, never "invalid", with a fix.
func checkWording(t *testing.T, f source.Finding) {
	t.Helper()
	if f.Message == "" || f.Fix == "" && f.Rule != "formula" || strings.HasSuffix(f.Message, ".") || strings.HasSuffix(f.Fix, ".") || strings.Contains(f.Message, "invalid") {
		t.Errorf("not in house style: %s (fix: %s)", f, f.Fix)
	}
	if first := f.Message[:1]; strings.ToLower(first) != first {
		t.Errorf("begins with a capital: %s", f)
	}
	if strings.ContainsAny(f.Message, "\n\r") {
		t.Errorf("more than one line: %q", f.Message)
	}
}

// readFile reads a text of testdata.
func readFile(t testing.TB, name string) *source.File {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("testdata", filepath.FromSlash(name)))
	if err != nil {
		t.Fatal(err)
	}
	f, fs := CheckText(name, data)
	if len(fs) > 0 {
		t.Fatal(fs)
	}
	return f
}

// must stops a test on any finding.
func must(t testing.TB, fs source.Findings) {
	t.Helper()
	if len(fs) > 0 {
		var all strings.Builder
		for _, f := range fs {
			fmt.Fprintf(&all, "%s\n%s", f, f.Excerpt())
		}
		t.Fatal(all.String())
	}
}
