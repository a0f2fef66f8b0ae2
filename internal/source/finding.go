package source

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
)

// A Severity says what a finding asks of the designer.
type Severity uint8

const (
	// Error is something that cannot stand: the pattern is not published until it is mended.
	Error Severity = iota
	// Query is something to look at and perhaps keep, as a technical editor would ask.
	Query
)

// String returns the word printed in findings: "error" or "query".
func (s Severity) String() string {
	if s == Query {
		return "query"
	}
	return "error"
}

// A Finding tells the designer what is so at a place and how to mend it. Message is lower case, without a full stop, and
// says what is and what was said; Fix, where there is one, is what to write instead.
type Finding struct {
	Rule     string // its name in the handbook: "count-differs"
	Severity Severity
	Place    Place
	Sizes    []string // the sizes it holds in; empty means all, or that sizes do not matter
	Message  string
	Fix      string
	Expected string // for programs: what the arithmetic gives
	Found    string // for programs: what the file says
}

// Findings are in no order until Sort puts them in that of their places.
type Findings []Finding

// Errorf and its like would need package fmt, which the engine does without: messages are put together by hand.

// Report adds an error at a span of a file.
func (fs *Findings) Report(f *File, s Span, rule, message, fix string) {
	*fs = append(*fs, Finding{Rule: rule, Place: f.Place(s), Message: message, Fix: fix})
}

// Ask adds a query at a span of a file.
func (fs *Findings) Ask(f *File, s Span, rule, message, fix string) {
	*fs = append(*fs, Finding{Rule: rule, Severity: Query, Place: f.Place(s), Message: message, Fix: fix})
}

// Errors reports whether any of the findings is an error.
func (fs Findings) Errors() bool {
	return slices.ContainsFunc(fs, func(f Finding) bool { return f.Severity == Error })
}

// Sort puts findings in the order of their places, errors before queries at one place, and drops exact repeats. What is found at
// one place in different sizes stays in the order it was found in, the smallest size first.
func (fs *Findings) Sort() {
	slices.SortStableFunc(*fs, func(a, b Finding) int {
		message := 0
		if len(a.Sizes) == 0 && len(b.Sizes) == 0 {
			message = strings.Compare(a.Message, b.Message)
		}
		return cmp.Or(
			strings.Compare(a.Place.File, b.Place.File),
			cmp.Compare(a.Place.Line, b.Place.Line),
			cmp.Compare(a.Place.Column, b.Place.Column),
			cmp.Compare(a.Severity, b.Severity),
			strings.Compare(a.Rule, b.Rule),
			cmp.Compare(min(len(a.Sizes), 1), min(len(b.Sizes), 1)),
			message,
		)
	})
	*fs = slices.CompactFunc(*fs, func(a, b Finding) bool {
		return a.Rule == b.Rule && a.Place == b.Place && a.Message == b.Message && a.Severity == b.Severity && slices.Equal(a.Sizes, b.Sizes)
	})
}

// String prints a finding on one line, the way compilers do.
func (f Finding) String() string {
	var b strings.Builder
	b.WriteString(f.Place.File)
	if f.Place.Line > 0 {
		b.WriteString(":" + strconv.Itoa(f.Place.Line) + ":" + strconv.Itoa(f.Place.Column))
	}
	b.WriteString(": " + f.Severity.String() + ": " + f.Message + " [" + f.Rule + "]")
	return b.String()
}

// Excerpt prints the line a finding points at, underlined, and the fix, each line indented by two spaces. It is empty where
// there is nothing to add to the finding itself.
func (f Finding) Excerpt() string {
	var b strings.Builder
	if strings.TrimSpace(f.Place.Text) != "" {
		line := []rune(f.Place.Text)
		column := min(max(f.Place.Column-1, 0), len(line))
		width := max(f.Place.Width, 1)
		shown, lead := excerpt(line, column, &width)
		b.WriteString("  " + shown + "\n  " + strings.Repeat(" ", lead) + strings.Repeat("^", width) + "\n")
	}
	if f.Fix != "" {
		b.WriteString("  fix: " + f.Fix + "\n")
	}
	return b.String()
}

// widest is how many characters of a line an excerpt shows: what a terminal of 100 columns holds.
const widest = 96

// excerpt cuts a long line down to the part around the column, with an ellipsis where something was left out, and returns it
// with the number of characters before the column. Tabs are shown as one space so that the underline stays below its words.
func excerpt(line []rune, column int, width *int) (string, int) {
	from, to := 0, len(line)
	if to > widest {
		from = max(0, min(column-widest/3, to-widest))
		to = from + widest
	}
	*width = max(1, min(*width, to-column))
	shown := strings.ReplaceAll(string(line[from:to]), "\t", " ")
	lead := column - from
	if from > 0 {
		shown, lead = "…"+shown, lead+1
	}
	if to < len(line) {
		shown += "…"
	}
	return shown, lead
}

// Nearest returns the known word closest to what was written, for "did you mean": at most a third of its letters may
// differ, a swap of neighbours counting as one. It returns "" when nothing is close.
func Nearest(written string, known []string) string {
	best, least := "", 1+max(1, len([]rune(written))/3)
	for _, k := range known {
		if d := distance([]rune(strings.ToLower(written)), []rune(strings.ToLower(k)), least); d < least {
			best, least = k, d
		}
	}
	return best
}

// distance is the number of letters to add, drop, change or swap with a neighbour to make b of a. It gives up, with limit,
// when the lengths alone differ by as much.
func distance(a, b []rune, limit int) int {
	if max(len(a)-len(b), len(b)-len(a)) >= limit {
		return limit
	}
	before, last, row := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row[0] = i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			row[j] = min(last[j]+1, row[j-1]+1, last[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, last, row = last, row, before
	}
	return last[len(b)]
}

// List joins words the way a sentence does: "a", "a and b", "a, b and c".
func List(words []string, last string) string {
	switch n := len(words); n {
	case 0:
		return ""
	case 1:
		return words[0]
	default:
		return strings.Join(words[:n-1], ", ") + " " + last + " " + words[n-1]
	}
}
