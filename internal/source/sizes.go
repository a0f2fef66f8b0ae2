package source

import "slices"

// SizeNames joins the names of some sizes the way a finding says them: "L and 2X", and a run of three or more by its ends,
// "S to XL". All are the sizes of the pattern in order; a name that is not among them is said last.
func SizeNames(some, all []string) string {
	var words []string
	for i := 0; i < len(all); i++ {
		run := i
		for run < len(all) && slices.Contains(some, all[run]) {
			run++
		}
		switch {
		case run-i > 2:
			words = append(words, all[i]+" to "+all[run-1])
		default:
			words = append(words, all[i:run]...)
		}
		i = run
	}
	for _, s := range some {
		if !slices.Contains(all, s) {
			words = append(words, s)
		}
	}
	return List(words, "and")
}
