package formula

import (
	"slices"

	"foundrow/internal/measure"
)

// Reserved lists the words of the language, in the order of the alphabet: none of them can be the name of a value. The kinds
// length, mass and number are not among them, because they are read as kinds behind "in" and "as" alone.
var Reserved = []string{
	"a", "abs", "an", "as", "at", "cm", "down", "even", "g", "in", "inch", "inches", "m", "max", "min", "mm", "multiple", "nearest",
	"odd", "of", "oz", "pi", "plus", "root", "rounded", "row", "rows", "st", "stitch", "stitches", "sts", "the", "to", "up",
	"whole", "yd",
}

// IsReserved reports whether a word belongs to the language.
func IsReserved(word string) bool {
	_, found := slices.BinarySearch(Reserved, word)
	return found
}

// functions are the words that may stand before a bracket.
var functions = []string{"abs", "max", "min", "root"}

// isValue reports whether a word of the language is an operand, or begins one.
func isValue(word string) bool { return word == "pi" || slices.Contains(functions, word) }

// parseUnit reads what may stand behind a number.
func parseUnit(word string) (Kind, measure.Unit, bool) {
	switch word {
	case "st", "sts", "stitch", "stitches":
		return Stitches, measure.NoUnit, true
	case "row", "rows":
		return Rows, measure.NoUnit, true
	}
	u, ok := measure.ParseUnit(word)
	switch {
	case !ok:
		return Unknown, measure.NoUnit, false
	case u.IsMass():
		return Mass, u, true
	}
	return Length, u, true
}

// parseKind reads what may stand behind "in" and "as": a kind, or a unit of it.
func parseKind(word string) (Kind, measure.Unit, bool) {
	switch word {
	case "number":
		return Number, measure.NoUnit, true
	case "length":
		return Length, measure.NoUnit, true
	case "mass":
		return Mass, measure.NoUnit, true
	}
	return parseUnit(word)
}

// wordOf returns the word that a number of the kind carries, the singular for one.
func wordOf(k Kind, u measure.Unit, one bool) string {
	switch {
	case u != measure.NoUnit:
		return u.String()
	case k == Stitches && one:
		return "st"
	case k == Stitches:
		return "sts"
	case k == Rows && one:
		return "row"
	case k == Rows:
		return "rows"
	}
	return ""
}
