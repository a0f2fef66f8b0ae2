package ledger

import (
	"strconv"

	"foundrow/internal/source"
)

// Findings words the reports of all sizes. Reports that are equal in several sizes are one finding that names them; different numbers
// stay separate.
func Findings(f *source.File, sizes []string, reports [][]Report) source.Findings {
	var out source.Findings
	for i := range reports {
		for _, r := range reports[i] {
			s := r.Rule + " way " + strconv.Itoa(int(r.Way)) + " row " + r.Row.Words + " " + strconv.Itoa(r.Row.Number)
			for _, n := range r.Numbers {
				s += " " + strconv.Itoa(n)
			}
			s += " " + r.Words[0] + " " + r.Words[1]
			out = append(out, source.Finding{Rule: r.Rule, Severity: r.Severity, Place: f.Place(r.Span), Message: s})
		}
	}
	return out
}
