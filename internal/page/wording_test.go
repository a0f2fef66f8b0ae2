package page

import (
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestList(t *testing.T) {
	for _, c := range []struct{ sizes, want string }{
		{"98", "98"},
		{"98 98 98", "98"},
		{"54 55", "54 (55)"},
		{"1 2 3 4", "1 (2, 3, 4)"},
		{"1 2 3 4 5 6", "1 (2, 3, 4, 5, 6)"},
		{"1 2 3 4 5 6 7", "1 (2, 3, 4) (5, 6, 7)"},
		{"1 2 3 4 5 6 7 8", "1 (2, 3, 4, 5) (6, 7, 8)"},
		{"62 68 74 80 86 98 104 110 116", "62 (68, 74, 80, 86) (98, 104, 110, 116)"},
		{"1 2 3 4 5 6 7 8 9 10", "1 (2, 3, 4, 5, 6) (7, 8, 9, 10)"},
		{"54 54 55 55", "54 (54, 55, 55)"},
	} {
		if got := List(strings.Fields(c.sizes)); got != c.want {
			t.Errorf("List of %s is %q, want %q", c.sizes, got, c.want)
		}
	}
	if got := List(nil); got != "" {
		t.Errorf("a list of no sizes is %q", got)
	}
}

// Every list of a document has the same brackets, or a maker cannot count along.
func TestListShape(t *testing.T) {
	shape := func(list string) string {
		return strings.Map(func(r rune) rune {
			if r >= '0' && r <= '9' {
				return -1
			}
			return r
		}, list)
	}
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 14).Draw(t, "sizes")
		lists := [2][]string{}
		for i := range lists {
			for s := range n {
				lists[i] = append(lists[i], strconv.Itoa(rapid.IntRange(0, 500).Draw(t, "entry")))
				if s == 1 && lists[i][0] == lists[i][1] {
					lists[i][1] += "1" // entries that all agree are printed as one
				}
			}
		}
		first, second := List(lists[0]), List(lists[1])
		if shape(first) != shape(second) {
			t.Fatalf("%q and %q have different brackets", first, second)
		}
		if entries := strings.FieldsFunc(first, func(r rune) bool { return strings.ContainsRune(" (),", r) }); len(entries) != n {
			t.Fatalf("%q has %d entries, not %d", first, len(entries), n)
		}
	})
}

func TestOrdinal(t *testing.T) {
	for n, want := range map[int]string{
		0: "0th", 1: "1st", 2: "2nd", 3: "3rd", 4: "4th", 10: "10th", 11: "11th", 12: "12th", 13: "13th",
		21: "21st", 22: "22nd", 23: "23rd", 38: "38th", 101: "101st", 111: "111th", 112: "112th", 113: "113th", 121: "121st",
	} {
		if got := Ordinal(n); got != want {
			t.Errorf("Ordinal(%d) = %q, want %q", n, got, want)
		}
	}
}

func TestTimes(t *testing.T) {
	for n, want := range map[int]string{0: "0 times", 1: "once", 2: "twice", 3: "3 times", 21: "21 times"} {
		if got := Times(n); got != want {
			t.Errorf("Times(%d) = %q, want %q", n, got, want)
		}
	}
}

func TestCounted(t *testing.T) {
	for _, c := range []struct{ figure, noun, want string }{
		{"2", "sts", "2 sts"},
		{"1", "sts", "1 st"},
		{"0", "sts", "0 sts"},
		{"1", "stitches", "1 stitch"},
		{"1", "rows", "1 row"},
		{"1", "rounds", "1 round"},
		{"1", "rnds", "1 rnd"},
		{"1", "ch-2 sps", "1 ch-2 sp"},
		{"1", "inches", "1 inch"},
		{"1", "dc", "1 dc"},
		{"1", "ss", "1 ss"},
		{"11", "sts", "11 sts"},
	} {
		if got := Counted(c.figure, c.noun); got != c.want {
			t.Errorf("Counted(%s, %s) = %q, want %q", c.figure, c.noun, got, c.want)
		}
	}
}

func TestDay(t *testing.T) {
	for date, want := range map[string]string{"2026-04-02": "2 April 2026", "2025-12-31": "31 December 2025", "": "", "soon": "soon", "2026-13-01": "2026-13-01"} {
		if got := day(date); got != want {
			t.Errorf("day(%q) = %q, want %q", date, got, want)
		}
	}
}

func TestRuns(t *testing.T) {
	sizes := strings.Fields("XS S M L XL 2X 3X 4X 5X")
	for _, c := range []struct {
		in   []int
		want string
	}{
		{[]int{2}, "M"},
		{[]int{1, 5}, "S and 2X"},
		{[]int{0, 1, 2}, "XS to M"},
		{[]int{8, 0, 4, 6, 7}, "XS, XL and 3X to 5X"},
		{[]int{0, 1, 3, 4}, "XS, S, L and XL"},
		{nil, ""},
	} {
		if got := runs(sizes, c.in); got != c.want {
			t.Errorf("runs(%v) = %q, want %q", c.in, got, c.want)
		}
	}
}
