package cli

import (
	"slices"
	"strings"

	"foundrow/internal/grade"
	"foundrow/internal/measure"
)

// tapeOf is the tape of the first reading: in inches, if that is.
func tapeOf(readings [swatchStates][]string) measure.Tape {
	first := slices.Concat(readings[:]...)
	if len(first) == 0 {
		return measure.Tape{}
	}
	if _, lengths, _ := strings.Cut(first[0], " over "); strings.Contains(lengths, "in") || strings.Contains(lengths, `"`) {
		return measure.Tape{Unit: measure.Inch}
	}
	return measure.Tape{}
}

// readingOf reads "16 sts, 20 rows over 10.5 cm by 11 cm", "24 sts over 6 inch", "16 sts and 20 rows over 10 cm".
func readingOf(word string, tape measure.Tape) (grade.Reading, error) {
	wrong := func(what string) error {
		return usageError{`"` + word + `": ` + what, `write it as in "16 sts, 20 rows over 10.5 cm by 11 cm"`}
	}
	var r grade.Reading
	counted, measured, is := strings.Cut(word, " over ")
	if !is {
		return r, wrong("nothing says over what length this was counted")
	}
	for _, part := range strings.Split(strings.ReplaceAll(counted, " and ", ","), ",") {
		number, noun, _ := strings.Cut(strings.TrimSpace(part), " ")
		n, ok := measure.Parse(number)
		if !ok || n.IsLost() || n.Sign() <= 0 {
			return r, wrong(number + " is no number of stitches or rows")
		}
		if rest, half := strings.CutPrefix(noun, "1/2 "); half {
			n, noun = n.Add(measure.Ratio(1, 2)), rest
		}
		to := &r.Stitches
		switch strings.TrimSpace(noun) {
		case "st", "sts", "stitch", "stitches":
		case "row", "rows", "rnd", "rnds", "round", "rounds":
			to = &r.Rows
		default:
			return r, wrong(number + " what? sts or rows")
		}
		if to.Sign() > 0 {
			return r, wrong(strings.TrimSpace(noun) + " are counted twice in one reading")
		}
		*to = n
	}
	first, second, two := strings.Cut(measured, " by ")
	if !two {
		second = first
	} else if _, err := measure.Parse(strings.TrimSpace(first)); err {
		first += strings.TrimLeft(strings.TrimSpace(second), "0123456789.") // 10.5 by 11 cm
	}
	lengths := [2]measure.Num{}
	for i, length := range [2]string{first, second} {
		n, unit, err := lengthOf(length)
		if err != nil || n.Sign() <= 0 {
			return r, wrong(strings.TrimSpace(length) + " is no length: it needs a number and cm or inch")
		}
		lengths[i] = tape.Garment(n, unit)
	}
	if two && (r.Stitches.Sign() == 0 || r.Rows.Sign() == 0) {
		return r, wrong("two lengths, and only one thing counted")
	}
	r.Width, r.Height = lengths[0], lengths[1]
	return r, nil
}
