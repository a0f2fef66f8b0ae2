package page

import (
	"slices"
	"strconv"
	"strings"

	"foundrow/internal/source"
)

// List words one entry a size the way the trade does: one entry where all sizes agree, otherwise smallest outside and the rest
// in brackets. Up to six sizes stand in one bracket, "1 (2, 3, 4)"; from seven on in two, the larger first:
// "62 (68, 74, 80, 86) (98, 104, 110, 116)". The shape depends on the number of sizes alone, so it is the same in the whole
// document and a maker can count along.
func List(bySize []string) string {
	if len(bySize) == 0 {
		return ""
	}
	if agree(bySize) {
		return bySize[0]
	}
	return bracketed(bySize)
}

// bracketed is List for entries that are known to differ.
func bracketed(bySize []string) string {
	n := len(bySize)
	first := n
	if n > 6 {
		first = 1 + n/2
	}
	size := 2 * n
	for _, entry := range bySize {
		size += len(entry)
	}
	var b strings.Builder
	b.Grow(size + 4)
	b.WriteString(bySize[0])
	bracket(&b, bySize[1:first])
	bracket(&b, bySize[first:])
	return b.String()
}

func bracket(b *strings.Builder, entries []string) {
	for i, entry := range entries {
		if i == 0 {
			b.WriteString(" (")
		} else {
			b.WriteString(", ")
		}
		b.WriteString(entry)
	}
	if len(entries) > 0 {
		b.WriteByte(')')
	}
}

func agree(bySize []string) bool {
	for _, entry := range bySize {
		if entry != bySize[0] {
			return false
		}
	}
	return true
}

// Ordinal words a place in a row: "1st", "38th", "112th".
func Ordinal(n int) string {
	figure := strconv.Itoa(n)
	tens, units := (max(n, -n)/10)%10, max(n, -n)%10
	if tens != 1 && units >= 1 && units <= 3 {
		return figure + [...]string{"st", "nd", "rd"}[units-1]
	}
	return figure + "th"
}

// Times words how often: "once", "twice", "3 times".
func Times(n int) string {
	switch n {
	case 1:
		return "once"
	case 2:
		return "twice"
	}
	return strconv.Itoa(n) + " times"
}

// Counted words how many of a thing: "1 st", "2 sts". The noun is given as it is written for many.
func Counted(figure, noun string) string {
	if figure == "1" {
		return figure + " " + one(noun)
	}
	return figure + " " + noun
}

// one returns a noun for a single thing: "sts" gives "st", "stitches" gives "stitch", "ch-2 sps" gives "ch-2 sp". Stitches by
// their abbreviation are alike for one and many ("1 dc"), and so is the British slip stitch, "ss".
func one(noun string) string {
	if strings.HasSuffix(noun, "ss") {
		return noun
	}
	for _, ending := range [...]string{"ches", "shes", "xes", "sses"} {
		if strings.HasSuffix(noun, ending) {
			return noun[:len(noun)-len("es")]
		}
	}
	return strings.TrimSuffix(noun, "s")
}

// Name turns a name of the front matter into words: "rib_rows" gives "Rib rows".
func Name(name string) string { return capital(strings.ReplaceAll(name, "_", " ")) }

// capital sets the first letter of a word as at the start of a sentence.
func capital(s string) string {
	if s != "" && s[0] >= 'a' && s[0] <= 'z' {
		return string(s[0]-'a'+'A') + s[1:]
	}
	return s
}

var months = [...]string{"January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"}

// day words a date given as year-month-day: "2 April 2026". What is not such a date stays as it is.
func day(date string) string {
	parts := strings.Split(date, "-")
	if len(parts) != 3 {
		return date
	}
	month, err1 := strconv.Atoi(parts[1])
	dayOfMonth, err2 := strconv.Atoi(parts[2])
	if err1 != nil || err2 != nil || month < 1 || month > len(months) {
		return date
	}
	return strconv.Itoa(dayOfMonth) + " " + months[month-1] + " " + parts[0]
}

// runs words a list of sizes, neighbours of three and more as a run: "XS, S and XL to 5X".
func runs(sizes []string, in []int) string {
	in = slices.Sorted(slices.Values(in))
	var words []string
	for i := 0; i < len(in); {
		j := i
		for j+1 < len(in) && in[j+1] == in[j]+1 {
			j++
		}
		if j-i >= 2 {
			words = append(words, sizes[in[i]]+" to "+sizes[in[j]])
		} else {
			for _, s := range in[i : j+1] {
				words = append(words, sizes[s])
			}
		}
		i = j + 1
	}
	return source.List(words, "and")
}
