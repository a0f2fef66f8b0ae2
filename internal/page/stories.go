package page

import (
	"strconv"

	"foundrow/internal/formula"
	"foundrow/internal/grade"
	"foundrow/internal/measure"
)

// A Count is a number of stitches or rows with its story: what it was before it was made whole, and by which rule.
type Count struct {
	Name   string
	Label  string
	Value  Slot   // "62 (68, 74, 80) sts"
	Story  Slot   // "from 95 5/8, a multiple of 6 + 2"; empty where nothing was rounded
	Pinned string // which sizes are the designer’s own choice; empty where none is
}

func countsOf(g *grade.Grade) []Count {
	var out []Count
	for _, v := range g.Values {
		if v.Role != grade.Count || len(v.BySize) == 0 {
			continue
		}
		c := Count{Name: v.Name, Label: capital(v.Label), Value: figures(v.BySize, g.Pattern.Tape), Story: story(v)}
		if c.Label == "" {
			c.Label = Name(v.Name)
		}
		switch v.Kind {
		case formula.Stitches:
			c.Value = counted(numbers(v.BySize), "sts")
		case formula.Rows:
			c.Value = counted(numbers(v.BySize), "rows")
		}
		c.Pinned = pinned(g, v)
		out = append(out, c)
	}
	return out
}

func isPinned(v grade.Value, size int) bool { return size < len(v.Pinned) && v.Pinned[size] }

// pinned says which sizes the designer chose herself.
func pinned(g *grade.Grade, v grade.Value) string {
	var in []int
	for s := range v.BySize {
		if isPinned(v, s) {
			in = append(in, s)
		}
	}
	switch {
	case len(in) == 0:
		return ""
	case len(in) == len(v.BySize):
		return "the designer’s own choice"
	}
	return "the designer’s own choice in " + runs(g.Pattern.Sizes.Names, in)
}

// story words how a count came to be whole: in all sizes as one list, and for each size by itself.
func story(v grade.Value) Slot {
	from, each := make([]string, len(v.BySize)), make([]string, len(v.BySize))
	rules := map[string]bool{}
	var rule, set string
	exact, rounded := true, false
	for s, value := range v.BySize {
		from[s] = number(value)
		if isPinned(v, s) {
			each[s] = "the designer’s own choice"
			continue
		}
		st := value.Story
		if st.Way == formula.NotRounded || isUnknown(value) {
			continue
		}
		rounded = true
		rule, set = ruleOf(st), series(st)
		rules[rule] = true
		from[s] = mixed(st.From)
		switch {
		case st.From.Cmp(value.Num) == 0:
			each[s] = "already " + set
			continue
		case st.Tie:
			each[s] = "from " + from[s] + ", halfway between " + mixed(st.Lower) + " and " + mixed(st.Upper) + ", " + rule
		default:
			each[s] = "from " + from[s] + ", " + rule
		}
		exact = false
	}
	switch {
	case !rounded:
		if agree(each) {
			return Slot{All: each[0]}
		}
		return Slot{BySize: each}
	case agree(each):
		return Slot{All: each[0]}
	case exact && len(rules) == 1:
		return Slot{All: "already " + set, BySize: each}
	case len(rules) == 1:
		return Slot{All: "from " + List(from) + ", " + rule, BySize: each}
	}
	return Slot{All: "from " + List(from), BySize: each}
}

// ruleOf words a rounding: "a multiple of 6 + 2" for the nearest, "up to an even number".
func ruleOf(st formula.Story) string {
	switch st.Way {
	case formula.Up:
		return "up to " + series(st)
	case formula.Down:
		return "down to " + series(st)
	}
	return series(st)
}

// series words what a rounding picks from.
func series(st formula.Story) string {
	step, whole := st.Step.Int()
	if !whole {
		return "a multiple of " + st.Step.Decimal(3)
	}
	switch {
	case step == 1:
		return "a whole number"
	case step == 2 && st.Offset.Sign() == 0:
		return "an even number"
	case step == 2 && st.Offset.Cmp(measure.Int(1)) == 0:
		return "an odd number"
	case st.Offset.Sign() == 0:
		return "a multiple of " + strconv.Itoa(step)
	}
	sign := " + "
	if st.Offset.Sign() < 0 {
		sign = " − "
	}
	return "a multiple of " + strconv.Itoa(step) + sign + st.Offset.Abs().Decimal(2)
}
