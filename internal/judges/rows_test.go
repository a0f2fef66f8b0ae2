package judges

import (
	"encoding/json"
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"foundrow/internal/proof"
	"foundrow/internal/publish"
	"foundrow/internal/site"
	"foundrow/internal/testkit"
)

// TestPublishedRows puts rows that real patterns printed before proof --json, as they stand. None may be wrong in silence; most must
// be right; the rest must be refused, and be right once they are restated in house notation.
func TestPublishedRows(t *testing.T) {
	asTheyStand := proofread(t, testkit.Cases(t, "../../testdata/cases/rows.toml"))
	right, known := 0, map[string]bool{}
	var table strings.Builder
	for _, r := range asTheyStand {
		known[r.ID] = true
		if len(r.silent) > 0 {
			t.Errorf("%s is wrong in silence:\n%s", r.ID, strings.Join(r.silent, "\n"))
		}
		if r.right() {
			right++
			continue
		}
		fmt.Fprintf(&table, "%s: %s\n", r.ID, strings.Join(r.wrong, "\n   "))
	}
	restated := map[string]bool{}
	for _, r := range proofread(t, testkit.Cases(t, "../../testdata/cases/restated.toml")) {
		restated[r.ID] = true
		if !known[r.ID] || r.Changed == "" {
			t.Errorf("%s restates no case, or does not say what was changed", r.ID)
		}
		if !r.right() {
			t.Errorf("%s is restated, and not right:\n%s", r.ID, strings.Join(r.wrong, "\n"))
		}
	}
	for _, r := range asTheyStand {
		if !r.right() && !restated[r.ID] {
			t.Errorf("%s is not right as it stands, and is not restated", r.ID)
		}
	}
	if 100*right < 85*len(asTheyStand) {
		t.Errorf("%d of %d cases are right as they stand", right, len(asTheyStand))
	}
	t.Logf("\n%s\n%s%d cases: %d right as they stand, %d restated",
		constructs(asTheyStand), table.String(), len(asTheyStand), right, len(restated))
}

// TestRestatedCounts: a restated case may change the words, never the numbers.
func TestRestatedCounts(t *testing.T) {
	published := map[string]string{}
	for _, c := range testkit.Cases(t, "../../testdata/cases/rows.toml") {
		published[c.ID] = counts(c)
	}
	for _, c := range testkit.Cases(t, "../../testdata/cases/restated.toml") {
		if got := counts(c); got != published[c.ID] {
			t.Errorf("%s counts %s, published %s", c.ID, got, published[c.ID])
		}
	}
}

func counts(c testkit.Case) string {
	var all []string
	for _, r := range c.Row {
		if r.Count != nil {
			all = append(all, fmt.Sprint(r.Count, r.Unit))
		}
	}
	return strings.Join(all, " ")
}

// constructs lists the tags of the cases, each with how many of its cases are right.
func constructs(readings []*reading) string {
	all, right := map[string]int{}, map[string]int{}
	for _, r := range readings {
		for _, tag := range r.Tags {
			all[tag]++
			if r.right() {
				right[tag]++
			}
		}
	}
	var b strings.Builder
	for _, tag := range slices.Sorted(maps.Keys(all)) {
		fmt.Fprintf(&b, "%-24s %2d of %2d\n", tag, right[tag], all[tag])
	}
	return b.String()
}

// A reading is what the proof of a case says, held against the case.
type reading struct {
	testkit.Case
	pattern proof.Pattern
	at      []int    // by line of the pattern, from 0: the row of the case, or -1
	wrong   []string // why the case is not right
	silent  []string // what differs and was not reported
}

func (r *reading) right() bool { return len(r.wrong) == 0 }

// proofread writes cases as a studio of patterns, proofreads it, and reads the answer back from its JSON.
func proofread(t *testing.T, cases []testkit.Case) []*reading {
	t.Helper()
	files := map[string]string{
		"content/studio.toml": "title = \"Rows\"\naddress = \"https://rows.example/\"\ncontact = \"us@rows.example\"\n",
	}
	readings := map[string]*reading{}
	for _, c := range cases {
		text, at := c.Pattern()
		files["content/patterns/"+c.ID+"/pattern.md"] = text
		readings[c.ID] = &reading{Case: c, at: at}
	}
	folder := t.TempDir()
	testkit.WriteStudio(t, folder, files)
	studio, err := publish.Read(folder)
	if err != nil {
		t.Fatal(err)
	}
	desk, err := site.Open(studio)
	if err != nil {
		t.Fatal(err)
	}
	var said proof.Proof
	if err := json.Unmarshal(proof.New(desk.Proof(desk.Patterns())).JSON(), &said); err != nil {
		t.Fatal(err)
	}
	for _, f := range said.Findings {
		t.Errorf("%s:%d: %s", f.File, f.Line, f.Message)
	}
	out := make([]*reading, 0, len(cases))
	for _, p := range said.Patterns {
		r := readings[p.Slug]
		r.pattern = p
		r.judge()
		out = append(out, r)
	}
	if len(out) != len(cases) {
		t.Errorf("%d cases, but %d patterns proofread", len(cases), len(out))
	}
	return out
}

// row is the row of the case that a line of the pattern is, or -1.
func (r *reading) row(line int) int {
	if line < 1 || line > len(r.at) {
		return -1
	}
	return r.at[line-1]
}

func (r *reading) judge() {
	r.judgeFindings()
	r.judgeCounts()
}

func (r *reading) say(format string, args ...any) {
	r.wrong = append(r.wrong, fmt.Sprintf(format, args...))
}

// missed is for what is not right and was not reported either.
func (r *reading) missed(format string, args ...any) {
	r.say(format, args...)
	r.silent = append(r.silent, fmt.Sprintf(format, args...))
}

// judgeFindings: errors stand on the rows that have one, and say the right number; ambiguous cases have a query.
func (r *reading) judgeFindings() {
	queries, reported := 0, map[int]bool{}
	for _, f := range r.pattern.Findings {
		if f.Severity == "query" {
			queries++
			continue
		}
		row := r.row(f.Line)
		if row < 0 || r.Row[row].Error == "" {
			r.say("%s [%s]", f.Message, f.Rule)
			continue
		}
		reported[row] = reported[row] || r.names(f, &r.Row[row])
	}
	for i := range r.Row {
		if r.Row[i].Error != "" && !reported[i] {
			r.missed("no error that names the right number: %s", r.Row[i].Text)
		}
	}
	if r.Expect == "ambiguous" && queries == 0 {
		r.missed("no query")
	}
}

var digits = regexp.MustCompile(`\d+`)

// names reports whether a finding has the right number of a row. What does not fit, or a stitch that cannot be so, has none.
func (r *reading) names(f proof.Finding, row *testkit.CaseRow) bool {
	if row.Error == "fit" || row.Error == "stitch" {
		return true
	}
	for size := range max(len(r.Sizes), 1) {
		if n, is := testkit.InSize(row.Count, size); is && f.Expected == fmt.Sprint(n) {
			return true
		}
	}
	return slices.Contains(digits.FindAllString(row.Right, -1), f.Expected)
}

// judgeCounts: every row that counts has its line, and its count in every size.
func (r *reading) judgeCounts() {
	lines := map[int]proof.Row{} // by row of the case
	for _, piece := range r.pattern.Pieces {
		for _, row := range piece.Rows {
			if i := r.row(row.Line); i >= 0 {
				lines[i] = row
			}
		}
	}
	for i := range r.Row {
		row := &r.Row[i]
		if row.Count == nil || row.Error == "fit" || row.Error == "foundation" { // then the count is that of a repaired row
			continue
		}
		worked, there := lines[i]
		for size := range max(len(r.Sizes), 1) {
			why := "no such row"
			if there {
				if strings.HasPrefix(row.Text, "Sizes ") && worked.Stitches[size] == nil { // a size without the row keeps what it has
					worked = lines[i-1]
				}
				why = differs(row, worked, size)
				worked = lines[i]
			}
			switch {
			case why == "" || r.Expect == "ambiguous" && worked.Stitches[size] == nil && r.asked(i):
			case r.reportedBy(i):
				r.say("size %d: %s: %s", size, why, row.Text)
			default:
				r.missed("size %d: %s: %s", size, why, row.Text)
			}
		}
	}
}

// asked reports whether a row has a query of its own.
func (r *reading) asked(row int) bool {
	return slices.ContainsFunc(r.pattern.Findings, func(f proof.Finding) bool { return f.Severity == "query" && r.row(f.Line) == row })
}

// reportedBy reports whether the pattern is refused, or asked about in a row or in one before it.
func (r *reading) reportedBy(row int) bool {
	return slices.ContainsFunc(r.pattern.Findings, func(f proof.Finding) bool {
		at := r.row(f.Line)
		return f.Severity == "error" && r.Expect != "error" || at >= 0 && at <= row
	})
}

// differs says how a worked row differs from what the case says of it: "" where it does not.
func differs(row *testkit.CaseRow, worked proof.Row, size int) string {
	if kinds, is := row.Count.(map[string]any); is {
		want := map[string]int{}
		for key, v := range kinds { // "hdc" and "hdc (neck)" are two sections of one row
			n, _ := testkit.InSize(v, size)
			name, _, _ := strings.Cut(key, " (")
			want[name] += n
		}
		for _, key := range slices.Sorted(maps.Keys(want)) {
			if got := ofKind(row, worked, key, size); got != want[key] {
				return fmt.Sprintf("%d %s, should be %d", got, key, want[key])
			}
		}
		return ""
	}
	want, is := testkit.InSize(row.Count, size)
	switch {
	case !is:
		return ""
	case worked.Stitches[size] == nil:
		return fmt.Sprintf("not counted, should be %d", want)
	case *worked.Stitches[size] != want && (row.Unit == "" || ofKind(row, worked, row.Unit, size) != want):
		return fmt.Sprintf("%d, should be %d", *worked.Stitches[size], want)
	}
	return ""
}

// called gives the names that the cases use for kinds the name they have in a proof.
var called = map[string]string{
	"treble": "tr", "trebles": "tr", "double": "dc", "crosses": "cross", "shells": "shell", "V-sts": "V-st",
	"3-ch loop": "ch-3 sp", "full loops": "ch-5 sp", "half loop": "ch-2 sp",
}

var (
	loop = regexp.MustCompile(`^(ch-\d+) loop$`)
)

// ofKind adds up what a row makes of a kind: "cluster" is a cluster of however many.
func ofKind(row *testkit.CaseRow, worked proof.Row, kind string, size int) int {
	if name, is := called[kind]; is {
		kind = name
	}
	kind = loop.ReplaceAllString(kind, "$1 sp")
	made := func(kind string) int {
		if by := worked.Counts[kind]; by != nil {
			return by[size]
		}
		return 0
	}
	if kind == "meshes" { // of filet: an open one is a post and a space, a solid one three posts, and one post closes the row
		return (made("dc") - 1 + 2*ofKind(row, worked, "ch-2 sp", size)) / 3
	}
	n := 0
	for name, by := range worked.Counts {
		if name == kind || strings.HasSuffix(name, " "+kind) {
			n += by[size]
		}
	}
	return n
}
