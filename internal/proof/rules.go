package proof

import (
	"slices"
	"strings"

	"foundrow/internal/source"
)

// A Rule is one thing that a finding may be about. Every rule of the program stands in one table, whichever stage reports it: what
// `explain` says of it and the handbook's page of rules are printed from there.
type Rule struct {
	Name     string // as it stands behind a finding: "count-differs"
	Severity source.Severity
	Line     int    // of the technical editor's checklist, from 1; 0 where the rule is about something else
	Sense    string // one sentence: what such a finding says
	Why      string // why it matters to whoever makes the thing, or to the designer
	Wrong    string // a few lines of a pattern that are reported
	Right    string // the same lines as they should be

	check func(*edit) []note // of the rules of the technical edit; nil for those of other stages
}

// Checklist is what a technical editor looks at, as far as a program can: what each Line of a rule stands for.
// Source: the mechanical lines common to the checklists of several editors, among them joeliskitchen.com (checklist your tech editor
// wants), froggingfabulous.com (what a tech editor does), notsogranny.com 2013/07 (every row uses what the last one made),
// bananamoonstudio.blogspot.com 2013/03 (parity) and snickerdoodleknits.com (pattern editing checklist); worded here.
var Checklist = [21]string{
	1:  "abbreviations and terms: all that are used are explained, and all of one system",
	2:  "materials: everything listed is used, everything used is listed, with its amount",
	3:  "rows: each uses exactly what the last one made and makes the count that is printed",
	4:  "foundation: the first chain fits row 1 and the stitch multiple, in every size",
	5:  "shaping: increases and decreases add up and fit into the rows there are",
	6:  "row numbers: they run on without gaps, and repeats end where the text says",
	7:  "parity: every size comes to each section on the same side, and halves are halves",
	8:  "lists: one number for each size, the brackets always at the same place",
	9:  "measurements: the length in the text is the count by the gauge",
	10: "units: centimetres and inches say the same",
	11: "pieces that meet agree: seams, armholes, edges picked up along",
	12: "ease: inside its band in every size, sizes that neither overlap nor jump",
	13: "order: girths grow with every size, lengths and amounts never fall",
	14: "yarn: an amount for every size, and balls, grams and metres that agree",
	15: "repeats: each star and bracket has its end and its count",
	16: "the page: headings, links, words for pictures, version, terms, contact",
	17: "leftovers: nothing of one size, or of an earlier pattern, is left in the text",
	20: "gauge: likely for the yarn and the hook",
}

// Rules returns every rule of the program, by name.
func Rules() []Rule {
	all := slices.Concat(editRules, readingRules, workingRules, rowRules, pageRules)
	slices.SortFunc(all, func(a, b Rule) int { return strings.Compare(a.Name, b.Name) })
	return all
}

// Find returns a rule by its name; where there is none, the name nearest to what was asked for, or "".
func Find(name string) (rule Rule, nearest string, found bool) {
	all := Rules()
	names := make([]string, len(all))
	for i, r := range all {
		if r.Name == name {
			return r, "", true
		}
		names[i] = r.Name
	}
	return Rule{}, source.Nearest(name, names), false
}

// Explain sets a rule as a lesson for the terminal.
func (r Rule) Explain() string {
	var b strings.Builder
	b.WriteString(r.Name + " (" + r.Severity.String() + ")\n\n" + r.Sense + "\n\n" + r.Why + "\n")
	for _, example := range []struct{ title, lines string }{{"Wrong", r.Wrong}, {"Right", r.Right}} {
		if example.lines != "" {
			b.WriteString("\n" + example.title + ":\n    " + strings.ReplaceAll(example.lines, "\n", "\n    ") + "\n")
		}
	}
	if r.Line > 0 {
		b.WriteString("\nOn a technical editor's checklist: " + Checklist[r.Line] + ".\n")
	}
	return b.String()
}

// Handbook sets all rules as Markdown: the body of the handbook's page of rules, one section a rule.
func Handbook() string {
	var b strings.Builder
	for _, r := range Rules() {
		b.WriteString("## " + r.Name + "\n\n**" + strings.ToUpper(r.Severity.String()[:1]) + r.Severity.String()[1:] + ".** " + r.Sense + " " + r.Why + "\n")
		for _, example := range []struct{ title, lines string }{{"Wrong", r.Wrong}, {"Right", r.Right}} {
			if example.lines != "" {
				fence := fenceFor(example.lines)
				b.WriteString("\n" + example.title + ":\n\n" + fence + "text\n" + example.lines + "\n" + fence + "\n")
			}
		}
		b.WriteString("\n")
	}
	return strings.TrimRight(b.String(), "\n") + "\n"
}

// fenceFor returns a fence longer than any that stands in an example.
func fenceFor(lines string) string {
	fence := "```"
	for strings.Contains(lines, fence) {
		fence += "`"
	}
	return fence
}

// LinesCovered returns the lines of the checklist that have a rule.
func LinesCovered() []int {
	all := Rules()
	var covered []int
	for line := range Checklist {
		if line > 0 && slices.ContainsFunc(all, func(r Rule) bool { return r.Line == line }) {
			covered = append(covered, line)
		}
	}
	return covered
}
