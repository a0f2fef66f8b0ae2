package grade_test

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"golang.org/x/tools/txtar"

	"foundrow/internal/grade"
	"foundrow/internal/manuscript"
	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// The archives of testdata hold patterns as designers write them, one below another; those whose name begins with "inch" are
// written with a tape in inches. Behind a line stands what must come of it:
//
//	front = "chest / 2 in stitches at body, rounded up to even"  ##= 74 (80, 86) stitches
//	[measures.chest]                                             ##made 105.71 (114.29, 122.86) ##ease 9.71 (8.29, 7.86)
//	back = "frnot + 1"                                           ##! unknown-name: write front
//
// "##=" is the value in every size, "##wish", "##made" and "##ease" those of a finished measurement, "##!" a finding: "query"
// where it is one, its rule, and words of its message or its fix. Lines without a "##!" must give no finding. The marks are
// taken off before a pattern is read.
func TestTables(t *testing.T) {
	archives, err := filepath.Glob("testdata/*.txtar")
	if err != nil || len(archives) == 0 {
		t.Fatal("no patterns to work", err)
	}
	for _, name := range archives {
		archive, err := txtar.ParseFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, file := range archive.Files {
			t.Run(filepath.Base(name)+"/"+file.Name, func(t *testing.T) { checkTable(t, file.Name, string(file.Data)) })
		}
	}
}

// A want is one mark behind a line.
type want struct {
	line       int
	key        string // of the value on the line: "front", "chest"
	mark, says string
	met        bool
}

// takeMarks returns a text without its marks, and the marks.
func takeMarks(marked string) (text string, wants []*want) {
	var b strings.Builder
	n := 0
	for line := range strings.Lines(marked) {
		n++
		written, marks, found := strings.Cut(line, "##")
		if !found {
			b.WriteString(line)
			continue
		}
		key, _, _ := strings.Cut(written, "=")
		if key = strings.TrimSpace(key); strings.HasPrefix(key, "[") {
			key = key[strings.LastIndexByte(key, '.')+1 : len(key)-1]
		}
		for mark := range strings.SplitSeq(marks, "##") {
			w := &want{line: n, key: strings.Trim(key, `"`), mark: "!"}
			for _, m := range []string{"=", "!", "wish", "made", "ease"} {
				if after, is := strings.CutPrefix(mark, m); is {
					w.mark, w.says = m, strings.TrimSpace(after)
				}
			}
			wants = append(wants, w)
		}
		b.WriteString(strings.TrimRight(written, " ") + "\n")
	}
	return b.String(), wants
}

// read reads a pattern; its tape is in inches where its name says so.
func read(t testing.TB, name, text string) (*pattern.Pattern, source.Findings) {
	t.Helper()
	studio := pattern.Studio{}
	if strings.HasPrefix(name, "inch") {
		studio.Tape.Unit = measure.Inch
	}
	return manuscript.ReadPattern(source.NewFile(name, text), strings.TrimSuffix(name, ".md"), studio, manuscript.Published())
}

func checkTable(t *testing.T, name, marked string) {
	text, wants := takeMarks(marked)
	p, findings := read(t, name, text)
	g, more := grade.Work(p)
	findings = append(findings, more...)
	findings.Sort()
	for _, f := range findings {
		if !expected(f, wants) {
			t.Errorf("unexpected: %s\n%s", f, f.Excerpt())
		}
		checkWording(t, f)
	}
	for _, w := range wants {
		switch {
		case w.mark == "!" && !w.met:
			t.Errorf("%s:%d: not found: %s", name, w.line, w.says)
		case w.mark != "!":
			if got := comes(g, w); got != w.says {
				t.Errorf("%s:%d: %s %s %s, wanted %s", name, w.line, w.key, w.mark, got, w.says)
			}
		}
	}
}

// expected reports whether a finding is marked in its line, and takes the mark.
func expected(f source.Finding, wants []*want) bool {
	for _, w := range wants {
		says, query := strings.CutPrefix(w.says, "query ")
		rule, words, _ := strings.Cut(says, ": ")
		if w.mark == "!" && !w.met && w.line == f.Place.Line && rule == f.Rule && query == (f.Severity == source.Query) &&
			(strings.Contains(f.Message, words) || strings.Contains(f.Fix, words)) {
			w.met = true
			return true
		}
	}
	return false
}

// checkWording holds what every finding must be: lower case at its start unless it begins with a quoted word, no full stop.
func checkWording(t *testing.T, f source.Finding) {
	t.Helper()
	if f.Message == "" || strings.HasSuffix(f.Message, ".") || strings.HasSuffix(f.Fix, ".") || strings.Contains(f.Message, "  ") {
		t.Errorf("badly worded: %q, fix %q", f.Message, f.Fix)
	}
}

// comes returns what a value came to, as the trade's list with its kind.
func comes(g *grade.Grade, w *want) string {
	if w.mark == "=" {
		v := g.Value(w.key)
		if v == nil {
			return "nothing"
		}
		nums := make([]measure.Num, len(v.BySize))
		for s := range nums {
			nums[s] = v.BySize[s].Num
		}
		return list(nums) + " " + v.Kind.String()
	}
	i := slices.IndexFunc(g.Finished, func(f grade.Finished) bool { return f.Name == w.key })
	if i < 0 {
		return "nothing"
	}
	f := g.Finished[i]
	return list(map[string][]measure.Num{"wish": f.Wish, "made": f.Made, "ease": f.Ease}[w.mark])
}

// list prints numbers the way the trade does, one where all are alike.
func list(nums []measure.Num) string {
	said := make([]string, len(nums))
	for i, n := range nums {
		said[i] = n.Decimal(2)
	}
	switch {
	case len(said) == 0:
		return "none"
	case len(slices.Compact(slices.Clone(said))) == 1:
		return said[0]
	}
	return said[0] + " (" + strings.Join(said[1:], ", ") + ")"
}
