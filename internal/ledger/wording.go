package ledger

import (
	"strings"

	"foundrow/internal/notation"
	"foundrow/internal/source"
)

// Findings words the reports of a piece. reports[i] are those of sizes[i]; a pattern of one size has one entry and no sizes. Reports
// that are equal in several sizes are one finding that names them; different numbers stay findings of their own.
func Findings(f *source.File, sizes []string, reports [][]Report) source.Findings {
	var order []Report
	where := map[Report][]int{}
	for i := range reports {
		for _, r := range reports[i] {
			if _, seen := where[r]; !seen {
				order = append(order, r)
			}
			if at := where[r]; len(at) == 0 || at[len(at)-1] != i {
				where[r] = append(at, i)
			}
		}
	}
	var fs source.Findings
	for _, r := range order {
		w := r.words()
		found := source.Finding{Rule: r.Rule, Severity: r.Severity, Place: f.Place(r.Span), Message: w.says, Fix: w.fix, Expected: w.expected, Found: w.found}
		if in := where[r]; len(sizes) > 1 && len(in) < len(sizes) {
			for _, i := range in {
				found.Sizes = append(found.Sizes, sizes[i])
			}
		}
		fs = append(fs, found)
	}
	return fs
}

// A wording is what a finding says.
type wording struct {
	says, fix       string
	expected, found string
}

func (r *Report) words() wording {
	row, n := r.Row.String(), r.Numbers
	switch r.Rule {
	case CountDiffers:
		return r.countDiffers()
	case LeftOver, RunOut, DoesNotFit, WrongStitch:
		return r.fits()
	case Foundation:
		return r.foundation()
	case UnknownStitch:
		return wording{says: "nothing says how to work " + r.Words[0], fix: "define it: Throughout: " + r.Words[0] + " = …, or add [special] to the front matter"}
	case RowReference, RowNumbers, AfterOff, Parity:
		return r.order()
	case UntilPassed:
		return wording{says: "the rows go from " + sts(n[1]) + " to " + itoa(n[2]) + " and never leave " + itoa(n[0]), fix: "write a number that they reach", expected: itoa(n[1]), found: itoa(n[0])}
	case UntilNever:
		return wording{says: "the rows begin with " + sts(n[1]) + " and leave " + itoa(n[2]) + ": they never come to " + itoa(n[0]), fix: "repeat rows that change the number, or write how often", expected: itoa(n[2]), found: itoa(n[0])}
	case UntilWithin:
		return wording{says: sts(n[0]) + " remain after row " + itoa(n[1]) + " of the " + itoa(n[2]) + " that are repeated", fix: "say where to stop: ending with row …"}
	case SeamDiffers:
		return wording{says: r.Words[0] + " brings " + sts(n[0]) + " to the seam and " + r.Words[1] + " " + itoa(n[1]), fix: "the two sides must bring as many", expected: itoa(n[0]), found: itoa(n[1])}
	case PickUp, NoSuchEdge, NoSuchMarker:
		return r.edges()
	case TurningChain:
		if r.Way == 1 {
			return wording{says: row + " works into a chain that does not count as a stitch", fix: "say that it counts: Throughout: ch 3 counts as dc"}
		}
		return wording{says: "nothing says whether ch " + itoa(n[0]) + " counts as a stitch; it is taken not to", fix: "Throughout: ch " + itoa(n[0]) + " counts as " + r.Words[0] + ", or: does not count as a st"}
	case Habit:
		return r.habit()
	case TooLarge:
		if r.Way == 1 {
			return wording{says: row + " is longer than any row can be, and is not worked to its end", fix: "write smaller numbers"}
		}
		return wording{says: itoa(n[0]) + " is more than ten million", fix: "write the number that is meant"}
	case Unchecked:
		if r.Way == 1 {
			return wording{says: row + " is not checked: nothing says how many spaces it finds", fix: "start from the row before, written out"}
		}
		return wording{says: "nothing in " + row + " can be compared with this count", fix: "count stitches or spaces, or define what is counted"}
	case Passed:
		if r.Way == 1 {
			return wording{says: row + " comes out only if its stitches are taken for whatever comes next", fix: "name the stitches of the row below, or write sts"}
		}
		return wording{says: row + " passes over " + sts(n[0]) + " of another name without saying so", fix: "write sk " + itoa(n[0]) + ", or in each st"}
	}
	return wording{says: r.Rule}
}

func (r *Report) countDiffers() wording {
	n := r.Numbers
	w := wording{expected: itoa(n[0]), found: itoa(n[1])}
	w.says = r.Row.String() + " leaves " + sts(n[0]) + ", but the pattern says " + itoa(n[1])
	w.fix = "write " + itoa(n[0]) + ", or leave the count out"
	return w
}

// fits words what is wrong with the use a row makes of the row below. Numbers are the stitches used, those there are, how many are
// over, and the printed count where it differs too.
func (r *Report) fits() wording {
	row, n := r.Row.String(), r.Numbers
	used, there, over := n[0], n[1], n[2]
	w := wording{expected: itoa(there), found: itoa(used)}
	switch r.Rule {
	case WrongStitch:
		w.says = row + " makes the " + sts(n[2]) + " that it says, but uses " + itoa(used) + " of " + itoa(there)
		w.fix = "see whether another stitch is meant: one that takes up " + more(there-used)
		return w
	case RunOut:
		if r.Way == 1 {
			w.says = r.Words[0] + "." + r.Words[1] + " has " + sts(there) + ", and " + itoa(used) + " are wanted"
			w.expected, w.found = itoa(there), itoa(used)
			return w
		}
		if used <= there { // it runs out in one place and leaves stitches in another
			w.says = row + " wants " + sts(used-there+over) + " where none can be reached, and leaves " + itoa(over) + " others"
			w.fix = "see where the row goes on: a skip, a turn or another edge may be missing"
			return w
		}
		w.says = row + " needs " + sts(used) + ", but there are " + itoa(there)
		w.fix = "take " + itoa(used-there) + " away, or make as many more in the row before"
	case DoesNotFit:
		switch r.Way {
		case 1, 2:
			w.says = sts(used) + " cannot be spread over " + itoa(there)
			w.fix = "change fewer in one row"
		case 3:
			w.says = "the repeat stops before the last " + sts(n[1]) + ", and the row says the last " + itoa(n[0])
			w.fix = "write to last " + sts(n[1])
			w.expected, w.found = itoa(n[1]), itoa(n[0])
		default:
			w.says = "the repeat of " + sts(used) + " does not come out over " + sts(there) + ": " + itoa(over) + left(over)
			w.fix = "a multiple of " + itoa(used) + " fits: " + itoa(there-over) + " or " + itoa(there-over+used)
			w.expected, w.found = itoa(there-over), itoa(there)
		}
	default: // LeftOver
		switch r.Way {
		case 2:
			w.says = row + " leaves " + count(over, "space") + " unworked"
			w.fix = "work into every one of them, or say which are skipped"
		case 3:
			w.says = row + " stops short: it uses " + itoa(used) + " of " + sts(there) + ", and " + itoa(over) + left(over)
			w.fix = "say so: leave last " + sts(over) + " unworked"
		default:
			w.says = row + " uses " + itoa(used) + " of " + sts(there) + ": " + itoa(over) + left(over) + " over"
			w.fix = "work them, skip them, or write: leave last " + sts(over) + " unworked"
		}
	}
	if n[3] > 0 {
		w.says += ", and the pattern says " + itoa(n[3])
	}
	return w
}

func (r *Report) foundation() wording {
	n := r.Numbers
	w := wording{expected: itoa(n[0]), found: itoa(n[1])}
	w.says = r.Row.String() + " needs " + count(n[0], "chain")
	if r.Way == 1 {
		w.says += " (a multiple of " + itoa(n[2]) + rest(n[0]%max(n[2], 1)) + ")"
	}
	w.says += ", but " + itoa(n[1]) + " are chained"
	w.fix = "chain " + itoa(n[0])
	return w
}

func rest(n int) string {
	if n == 0 {
		return ""
	}
	return " + " + itoa(n)
}

// order words what is wrong with the order of rows: numbers, references, sides, the yarn.
func (r *Report) order() wording {
	row, n := r.Row.String(), r.Numbers
	thing := "row "
	if r.Row.Round {
		thing = "round "
	}
	switch r.Rule {
	case AfterOff:
		return wording{says: row + " follows fastening off", fix: "say where the yarn is joined, or take fasten off away"}
	case Parity:
		said, other := "the right side", "wrong"
		if r.Way == uint8(notation.WrongSide) {
			said, other = "the wrong side", "right"
		}
		return wording{says: row + " is marked as " + said + ", but the " + other + " side faces", fix: "turn once more or once less, or mark the other side"}
	case RowNumbers:
		switch r.Way {
		case 0:
			return wording{says: "rows " + itoa(n[0]) + " to " + itoa(n[1]) + " run backwards", fix: "write the smaller number first"}
		case 1:
			return wording{says: row + " follows " + thing + itoa(n[1]), fix: "write " + thing + itoa(n[1]+1) + ", or the rows between", expected: itoa(n[1] + 1), found: itoa(n[0])}
		case 2:
			return wording{says: row + " comes after " + thing + itoa(n[1]), fix: "write " + thing + itoa(n[1]+1), expected: itoa(n[1] + 1), found: itoa(n[0])}
		}
		return wording{says: count(n[0], "row") + " named, but the repeats make " + itoa(n[1]), fix: "change the row numbers or the number of repeats", expected: itoa(n[1]), found: itoa(n[0])}
	}
	switch r.Way { // RowReference
	case 1:
		return wording{says: row + " repeats itself", fix: "name the row that is meant"}
	case 2:
		return wording{says: thing + itoa(n[0]) + " comes only later", fix: "name a row that has been worked"}
	case 3:
		return wording{says: "the last " + count(n[0], "row") + " are to be repeated, but there are " + itoa(n[1]), fix: "name the rows"}
	case 4:
		return wording{says: row + " repeats " + thing + itoa(n[0]) + " and leaves " + sts(n[2]) + ", but the pattern says " + itoa(n[3]) + ", as " + thing + itoa(n[1]) + " would leave", fix: "repeat " + thing + itoa(n[1]), expected: itoa(n[2]), found: itoa(n[3])}
	}
	return wording{says: "there is no " + thing + itoa(n[0]) + " to repeat", fix: "name a row of this piece"}
}

// edges words what is wrong with edges, row-ends and markers.
func (r *Report) edges() wording {
	n := r.Numbers
	switch r.Rule {
	case NoSuchMarker:
		name := r.Words[0]
		if name == "" {
			return wording{says: "no marker has been placed", fix: "Place marker a in the … st."}
		}
		return wording{says: "marker " + name + " is not on this edge", fix: "Place marker " + name + " in the … st."}
	case NoSuchEdge:
		name := r.Words[0] + "." + r.Words[1]
		if r.Words[0] == "" {
			name = r.Words[1]
		}
		return wording{says: "no piece before this one leaves " + strings.TrimPrefix(name, "."), fix: "an edge is last, foundation, left, right, or sts of a row"}
	}
	switch r.Way {
	case 1:
		return wording{says: itoa(n[0]) + " row-ends are wanted, but there are " + itoa(n[1]), expected: itoa(n[1]), found: itoa(n[0])}
	case 3:
		side := "right"
		if n[0] < 0 {
			side = "wrong"
		}
		return wording{says: "with the " + side + " side facing, the " + r.Words[1] + " edge does not follow the " + r.Words[0] + " edge", fix: "name them as they are met: left, foundation, right, last; the other way round with the wrong side facing"}
	case 2:
		return wording{says: itoa(n[0]) + " over every " + itoa(n[1]) + " rows does not come out over " + count(n[2], "row"), fix: "say how many there are to be"}
	}
	return wording{says: "every " + ordinal(n[0]) + " of " + count(n[1], "row-end") + " does not come out even", fix: "say how many there are to be"}
}

func (r *Report) habit() wording {
	w := wording{}
	switch r.Way {
	case 0:
		w.says, w.fix = "the piece comes out only if the number of a repeat is the number of times in all", "Throughout: rep n times means n in all"
	case 1:
		w.says, w.fix = "the piece comes out only if the beginning chain counts as a stitch", "Throughout: ch 3 counts as dc"
	case 2:
		w.says, w.fix = "the piece comes out only if the beginning chain does not count as a stitch", "Throughout: ch 2 does not count as a st"
	case 3:
		w.says, w.fix = "the piece comes out only if the beginning chain stands as a stitch that is left out of the counts", "Throughout: ch 3 stands but is not in the count"
	case 4:
		w.says, w.fix = "the piece comes out only if a number before a stitch means so many in one place", "Throughout: 3 sc means 3 sc in one st"
	case 5:
		w.says, w.fix = "the piece comes out only if each chain counts as a stitch", "Throughout: each ch counts as a st"
	}
	if r.Numbers[0] == 1 {
		w.says += "; the pattern says otherwise"
	}
	return w
}
