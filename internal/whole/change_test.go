package whole

import (
	"os"
	"regexp"
	"runtime"
	"strconv"
	"strings"
	"sync"
	"sync/atomic"
	"testing"

	"foundrow/internal/grade"
	"foundrow/internal/manuscript"
	"foundrow/internal/notation"
	"foundrow/internal/page"
	"foundrow/internal/pattern"
	"foundrow/internal/proof"
	"foundrow/internal/source"
)

// unnoticed lists the changes by one that nobody can notice, each below the reason why:
//
//	= Two rows alike: one is repeated as well as the other.
//	orfleet-pullover, sleeve, +1: Repeat rows 2 and «3» {arm_fast} times. ({arm_sts} sts)
//
// the pattern, the piece or the table of the front matter, the change, and the line with the number marked. A reason that begins with
// "gap:" is none: a technical editor would notice, and the program does not yet.
const unnoticed = "testdata/unnoticed.txt"

// A change makes one number of a pattern one more or one less.
type change struct {
	slug, where string // the piece it stands in, or the table: "sample", "counts"
	text        string
	at          source.Span // of the number in the text
	by          int
}

// numbers finds what counts: figures, wherever they stand, those of a place in a row with their ending, and the two words for how often.
var numbers = regexp.MustCompile(`\d+(?:st|nd|rd|th)\b|\d+|\bonce\b|\btwice\b`)

// number is the number as it is written: 5, 2nd, twice.
func (c change) number() string { return c.text[c.at.From:c.at.To] }

// changed is the number one more or one less, written as it was; false where there is none.
func (c change) changed() (string, bool) {
	switch c.number() {
	case "once":
		return page.Times(1 + c.by), true
	case "twice":
		return page.Times(2 + c.by), true
	}
	figure := strings.TrimRight(c.number(), "stndrh")
	n, err := strconv.Atoi(figure)
	if err != nil || n+c.by < 0 {
		return "", false
	}
	if figure != c.number() {
		return page.Ordinal(n + c.by), true
	}
	return strconv.Itoa(n + c.by), true
}

// noticed reports whether any stage finds something once the change is made.
func (c change) noticed(set pattern.Studio) bool {
	now, _ := c.changed()
	file := source.NewFile(patternFile(c.slug), c.text[:c.at.From]+now+c.text[c.at.To:])
	p, found := manuscript.ReadPattern(file, c.slug, set, manuscript.Published())
	if len(found) > 0 {
		return true
	}
	g, found := grade.Work(p)
	return len(found) > 0 || len(proof.Check(g, set)) > 0
}

// String is the change as the list has it.
func (c change) String() string {
	from := strings.LastIndexByte(c.text[:c.at.From], '\n') + 1
	to := c.at.To + strings.IndexByte(c.text[c.at.To:], '\n')
	line := c.text[from:c.at.From] + "«" + c.number() + "»" + c.text[c.at.To:to]
	return c.slug + ", " + c.where + ", " + map[int]string{-1: "-1", 1: "+1"}[c.by] + ": " + strings.Join(strings.Fields(line), " ")
}

// changesOf are the changes of every number in the rows, in the formulas of [counts] and in the [sample] of a pattern. The moments of a
// film are not among them: no count depends on these.
func changesOf(p *pattern.Pattern) []change {
	text := p.File.Text
	var out []change
	in := func(where string, s source.Span) {
		for _, at := range numbers.FindAllStringIndex(text[s.From:s.To], -1) {
			for _, by := range []int{-1, 1} {
				c := change{p.Slug, where, text, source.Span{From: s.From + at[0], To: s.From + at[1]}, by}
				if _, there := c.changed(); there {
					out = append(out, c)
				}
			}
		}
	}
	for _, d := range p.Counts {
		for _, part := range d.Parts {
			in("counts", part.Formula.Span)
		}
	}
	for _, a := range p.Sample {
		in("sample", a.Name.Span)
		in("sample", a.Value.Span)
	}
	for _, piece := range p.Pieces {
		for _, line := range piece.Rows.Lines {
			if _, film := line.(*notation.Film); !film {
				in(piece.Name.Text, line.At())
			}
		}
	}
	return out
}

// TestChangeByOne changes every number of the demonstration patterns that a count, a foundation, a repeat, a reference to a row or the
// sample depends on, one at a time, to one more and to one less. Each change must be noticed; those that are not are on the list, and
// no other is.
func TestChangeByOne(t *testing.T) {
	files := demonstration(t)
	set := files.settings(t)
	var all []change
	for _, slug := range files.slugs(t) {
		all = append(all, changesOf(files.readPattern(t, slug).Pattern)...)
	}
	listed, gaps := readUnnoticed(t)
	noticed := noticedOf(all, set)
	missed := map[string]int{}
	for i, c := range all {
		if noticed[i] {
			continue
		}
		missed[c.String()]++
		if missed[c.String()] > listed[c.String()] {
			t.Errorf("not noticed, and not on the list:\n%s", c)
		}
	}
	for line, times := range listed {
		if missed[line] < times {
			t.Errorf("on the list, and noticed or not there:\n%s", line)
		}
	}
	t.Logf("%d changes; %d are not noticed, of which %d should be", len(all), len(listed), gaps)
}

// noticedOf tries every change, on as many processors as there are.
func noticedOf(all []change, set pattern.Studio) []bool {
	noticed := make([]bool, len(all))
	var next atomic.Int64
	var group sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		group.Go(func() {
			for i := int(next.Add(1)) - 1; i < len(all); i = int(next.Add(1)) - 1 {
				noticed[i] = all[i].noticed(set)
			}
		})
	}
	group.Wait()
	return noticed
}

// readUnnoticed reads the list: how often each line stands on it, and how many of them are gaps.
func readUnnoticed(t *testing.T) (listed map[string]int, gaps int) {
	t.Helper()
	text, err := os.ReadFile(unnoticed)
	if err != nil {
		t.Fatal(err)
	}
	listed = map[string]int{}
	reason := ""
	for line := range strings.Lines(string(text)) {
		line = strings.TrimSpace(line)
		if why, is := strings.CutPrefix(line, "= "); is {
			reason = why
			continue
		}
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		if reason == "" {
			t.Fatalf("%s gives no reason for %s", unnoticed, line)
		}
		listed[line]++
		if strings.HasPrefix(reason, "gap:") {
			gaps++
		}
	}
	return listed, gaps
}
