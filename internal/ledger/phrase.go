package ledger

import (
	"slices"
	"strconv"
	"strings"
)

// String names a row as a sentence begins with it: "row 3", "left neck row 1", "the next round".
func (n RowName) String() string {
	thing := "row"
	if n.Round {
		thing = "round"
	}
	switch {
	case n.Words == "start", n.Words == "seam", n.Words == "foundation":
		return "the " + n.Words
	case n.Number == 0 && n.Words == "":
		return "this " + thing
	case n.Number == 0:
		return "the " + lowerFirst(n.Words) + " " + thing
	case n.Words == "" || slices.Contains([]string{"Next", "next"}, n.Words):
		return thing + " " + itoa(n.Number)
	}
	return lowerFirst(n.Words) + " " + thing + " " + itoa(n.Number)
}

func ordinal(n int) string {
	if n == 2 {
		return "other"
	}
	return itoa(n) + "th"
}

func lowerFirst(s string) string {
	if len(s) > 1 && s[1] >= 'a' {
		return strings.ToLower(s[:1]) + s[1:]
	}
	return s
}

func itoa(n int) string { return strconv.Itoa(n) }

func sts(n int) string {
	if n == 1 {
		return "1 st"
	}
	return itoa(n) + " sts"
}

func count(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return itoa(n) + " " + noun + "s"
}

func left(n int) string {
	if n == 1 {
		return " is left"
	}
	return " are left"
}

func more(n int) string {
	if n < 0 {
		return itoa(-n) + " fewer"
	}
	return itoa(n) + " more"
}
