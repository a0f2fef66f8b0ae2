package page

import (
	"strings"

	"foundrow/internal/formula"
	"foundrow/internal/measure"
)

// A Slot is one place of a page where a value stands: All is what a page for every size prints, BySize what each size alone
// reads, as finished text. BySize is nil where every size reads All.
type Slot struct {
	All    string
	BySize []string
}

// In returns what one size reads.
func (s Slot) In(size int) string {
	if size < len(s.BySize) {
		return s.BySize[size]
	}
	return s.All
}

// unknown is printed for a value that could not be worked out: the finding that says why was made where it happened.
const unknown = "?"

func isUnknown(v formula.Value) bool { return v.Kind == formula.Unknown || v.Num.IsLost() }

// Figure words a value in one size: "98", "54 cm [21½ inches]", "50 g [1.8 oz]".
func Figure(v formula.Value, tape measure.Tape) string {
	return figures([]formula.Value{v}, tape).All
}

// figures words one value in every size.
func figures(bySize []formula.Value, tape measure.Tape) Slot {
	if len(bySize) == 0 {
		return Slot{All: unknown}
	}
	switch bySize[0].Kind {
	case formula.Length:
		return lengths(nums(bySize), tape)
	case formula.Mass:
		return masses(nums(bySize))
	}
	return slotOf(numbers(bySize))
}

func nums(bySize []formula.Value) []measure.Num {
	out := make([]measure.Num, len(bySize))
	for i, v := range bySize {
		out[i] = v.Num
		if isUnknown(v) {
			out[i] = measure.Lost
		}
	}
	return out
}

func numbers(bySize []formula.Value) []string {
	out := make([]string, len(bySize))
	for i, v := range bySize {
		out[i] = number(v)
	}
	return out
}

// number words a plain number or a count.
func number(v formula.Value) string {
	switch {
	case isUnknown(v):
		return unknown
	case v.Approx:
		return minus(v.Num.Decimal(2))
	case v.Kind.IsCount():
		return mixed(v.Num)
	}
	return minus(v.Num.Decimal(2))
}

// mixed words a count that is not whole: "95 5/8" in the parts that halving gives, otherwise as a decimal.
func mixed(n measure.Num) string {
	switch n.Under() {
	case 1, 2, 4, 8, 16:
		return minus(n.String())
	}
	return minus(n.Decimal(2))
}

// minus sets a minus sign where there is a hyphen.
func minus(figure string) string {
	if rest, negative := strings.CutPrefix(figure, "-"); negative {
		return "−" + rest
	}
	return figure
}

// slotOf makes a slot of one entry a size.
func slotOf(bySize []string) Slot {
	if agree(bySize) {
		return Slot{All: List(bySize)}
	}
	return Slot{All: bracketed(bySize), BySize: bySize}
}

// lengths words a length of the thing made, given in the tape's unit, in centimetres and inches, the tape's own first.
func lengths(bySize []measure.Num, tape measure.Tape) Slot {
	return inBothUnits(bySize, tape, tape.InCentimetres, tape.InInches)
}

// bodyLengths words a length of a body, which crosses at 2.54 whatever the garment's ratio is.
func bodyLengths(bySize []measure.Num, tape measure.Tape) Slot {
	return inBothUnits(bySize, tape, tape.BodyInCentimetres, tape.BodyInInches)
}

func inBothUnits(bySize []measure.Num, tape measure.Tape, inCm, inInches func(measure.Num) measure.Num) Slot {
	cm, inches := make([]string, len(bySize)), make([]string, len(bySize))
	for i, n := range bySize {
		cm[i], inches[i] = unknown, unknown
		if !n.IsLost() {
			cm[i], inches[i] = minus(measure.Centimetres(inCm(n))), minus(measure.Inches(inInches(n)))
		}
	}
	if tape.Unit == measure.Inch {
		return pair(inches, inchWord, cm, word("cm"))
	}
	return pair(cm, word("cm"), inches, inchWord)
}

// masses words grams in grams and ounces: whole grams from ten on and tenths of an ounce, as kitchen scales show them (common
// practice, no source).
func masses(grams []measure.Num) Slot {
	g, oz := make([]string, len(grams)), make([]string, len(grams))
	for i, n := range grams {
		g[i], oz[i] = unknown, unknown
		if n.IsLost() {
			continue
		}
		places := 0
		if n.Abs().Less(measure.Int(10)) {
			places = 1
		}
		g[i], oz[i] = minus(n.Decimal(places)), minus(measure.InOunces(n).Decimal(1))
	}
	return pair(g, word("g"), oz, word("oz"))
}

// yarnLengths words lengths of yarn, given in metres, in metres and yards. They are physical whatever the garment's ratio is.
func yarnLengths(metres []measure.Num) Slot {
	m, yd := make([]string, len(metres)), make([]string, len(metres))
	yard := measure.Tape{}.Body(measure.Int(1), measure.Yard).Div(measure.Int(100)) // in metres
	for i, n := range metres {
		m[i], yd[i] = unknown, unknown
		if !n.IsLost() {
			m[i], yd[i] = n.Decimal(0), n.Div(yard).Decimal(0)
		}
	}
	return pair(m, word("m"), yd, word("yd"))
}

// A unitWord is the word after the figures of a list.
type unitWord func(figures []string) string

func word(w string) unitWord { return func([]string) string { return w } }

// inchWord is singular where no figure passes one inch.
func inchWord(figures []string) string {
	for _, f := range figures {
		switch strings.TrimPrefix(f, "−") {
		case "¼", "½", "¾", "1":
		default:
			return "inches"
		}
	}
	return "inch"
}

// pair words two lists of one quantity: "54 (55, 57) cm [21½ (22, 22¾) inches]".
func pair(first []string, firstUnit unitWord, second []string, secondUnit unitWord) Slot {
	s := Slot{All: List(first) + " " + firstUnit(first) + " [" + List(second) + " " + secondUnit(second) + "]"}
	if agree(first) && agree(second) {
		return s
	}
	s.BySize = make([]string, len(first))
	for i := range first {
		s.BySize[i] = first[i] + " " + firstUnit(first[i:i+1]) + " [" + second[i] + " " + secondUnit(second[i:i+1]) + "]"
	}
	return s
}
