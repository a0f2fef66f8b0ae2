// Package shaping solves where increases and decreases go: over the rows of a piece (a Schedule), along one row (a Spread), and in
// the shapes that the trade knows by name, such as a crown, a raglan or an armhole. It works one size with whole numbers: rows and
// stitches always sum, and what cannot be is refused with the reason and the nearest that can.
//
// Package shaping knows counts, rows and gauges. It knows no names and no sizes: package grade brings the numbers of each size.
// It says on which row how many stitches go, not how the row is worked: that is package ledger's job.
package shaping

// A Side is a side of the fabric.
type Side uint8

const (
	// Either side: as a condition, any row; of the first row, that the piece is worked in rounds and every one shows its right side.
	Either Side = iota
	Right
	Wrong
)

// A Parity is what a number of rows must be.
type Parity uint8

const (
	AnyNumber Parity = iota
	Even
	Odd
)

// An Order is how the two intervals of a schedule or a spread follow each other where one alone does not divide.
type Order uint8

const (
	// ShortFirst works all the shorter intervals, then all the longer.
	ShortFirst Order = iota
	// LongFirst works all the longer intervals, then all the shorter.
	LongFirst
	// ByTurn mixes the two as evenly as they go.
	ByTurn
	// OneRate keeps to one interval, and what is left stays plain at the end.
	OneRate
	// Alternate works a shorter and a longer interval strictly by turn, and what is left stays plain at the end.
	Alternate
)

// most is the largest count that is worked: no piece of crochet has more stitches in a row, or more rows, and it keeps every sum small.
const most = 100_000

// A stretch is an interval and how many times it stands in a row.
type stretch struct{ size, times int }

// split divides a total into n intervals that differ by one at most and returns them in order, equal neighbours together. They sum
// to the total, save for OneRate and Alternate, which may leave some of it.
// Source: the division with remainder of kristentendyke.blogspot.com, 2014/02, and of A. Budd's formula (studyres.com/doc/1062783).
func split(total, n int, order Order) []stretch {
	if n <= 0 {
		return nil
	}
	q, rest := total/n, total%n
	var out []stretch
	switch order {
	case LongFirst:
		out = add(add(out, q+1, rest), q, n-rest)
	case ByTurn:
		for i := range n {
			out = add(out, (i+1)*total/n-i*total/n, 1)
		}
	case OneRate:
		out = add(out, q, n)
	case Alternate:
		shorter := (total - n/2) / n
		for i := range n {
			out = add(out, shorter+i%2, 1)
		}
	default:
		out = add(add(out, q, n-rest), q+1, rest)
	}
	return out
}

// mirrored divides a total into n intervals that differ by one at most and read the same from both ends. It reports false where
// there are none: an even number of intervals, an odd one of them longer.
func mirrored(total, n int) ([]stretch, bool) {
	if n <= 0 {
		return nil, total == 0
	}
	q, rest := total/n, total%n
	switch {
	case (n-rest)%2 == 0:
		return add(add(add(nil, q, (n-rest)/2), q+1, rest), q, (n-rest)/2), true
	case rest%2 == 0:
		return add(add(add(nil, q+1, rest/2), q, n-rest), q+1, rest/2), true
	}
	return nil, false
}

// add puts more intervals behind others and joins equal neighbours.
func add(to []stretch, size, times int) []stretch {
	switch last := len(to) - 1; {
	case times <= 0:
		return to
	case last >= 0 && to[last].size == size:
		to[last].times += times
		return to
	}
	return append(to, stretch{size, times})
}

// A block is a part of a sequence that is worked a number of times.
type block struct{ from, length, times int }

// longestBlock is the most entries that are looked for as one repeated part: more would not be kept in mind by a maker.
const longestBlock = 12

// blocks finds what repeats in a sequence: at every entry the part that, repeated, reaches furthest, the shortest of those that
// reach as far. What does not repeat is a block of one entry worked once.
func blocks[T comparable](of []T) []block {
	var out []block
	for at := 0; at < len(of); {
		b := blockAt(of, at)
		out = append(out, b)
		at += b.length * b.times
	}
	return out
}

// blockAt is the block that begins at an entry.
func blockAt[T comparable](of []T, at int) block {
	best := block{at, 1, 1}
	for length := 1; length <= longestBlock && at+2*length <= len(of); length++ {
		same := 0
		for at+length+same < len(of) && of[at+same] == of[at+length+same] {
			same++
		}
		if times := 1 + same/length; times > 1 && length*times > best.length*best.times {
			best = block{at, length, times}
		}
	}
	return best
}
