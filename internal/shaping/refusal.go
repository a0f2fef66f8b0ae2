package shaping

import (
	"strconv"
	"strings"
)

// A Reason is why something cannot be worked. Its String is the name of a rule.
type Reason uint8

const (
	Possible Reason = iota
	TooFewRows
	TooFewStitches
	OddChange
	WrongWay
	NothingLeft
	Negative
	TooLarge
	BadEach
	RowParity
	RowsDiffer
	StepsDiffer
	NoEnd
	NotSymmetric
	Collide
)

var reasons = [...]string{
	"possible", "too-few-rows", "too-few-stitches", "odd-change", "wrong-way", "nothing-left", "negative-count", "too-large", "change-each",
	"row-parity", "rows-differ", "steps-differ", "no-end", "not-symmetric", "shaping-collides",
}

func (r Reason) String() string { return reasons[r] }

// A Refusal says why something cannot be worked, in the words of a finding, and what could be instead. Each offer by itself makes
// the rest possible; there may be none.
type Refusal struct {
	Reason Reason
	Why    string
	Offers []Offer
	Which  int // of several wants solved together, the one that cannot be
}

// Fix words the offers: "write over = 46, to = 62 or on = \"any\"". It is empty where there are none.
func (r *Refusal) Fix() string {
	words := make([]string, len(r.Offers))
	for i, o := range r.Offers {
		words[i] = o.String()
	}
	switch n := len(words); n {
	case 0:
		return ""
	case 1:
		return "write " + words[0]
	default:
		return "write " + strings.Join(words[:n-1], ", ") + " or " + words[n-1]
	}
}

// A Key names a number that was asked for, the way a designer writes it.
type Key string

const (
	KeyFrom         Key = "from"
	KeyTo           Key = "to"
	KeyOver         Key = "over"
	KeyEach         Key = "each"
	KeyOn           Key = "on"
	KeyAtMost       Key = "at_most"
	KeyPlainAtStart Key = "plain_at_start"
	KeyPlainAtEnd   Key = "plain_at_end"
	KeyEvents       Key = "events"
	KeyMost         Key = "most"
	KeyPlainEnds    Key = "plain_ends"
	KeySymmetric    Key = "symmetric"
	KeyCross        Key = "cross"
	KeyWidth        Key = "width"
	KeyTop          Key = "top"
	KeyLeave        Key = "leave"
	KeyMultiple     Key = "multiple"
)

// An Offer is another value for one of the numbers asked for: one value, or those of a list.
type Offer struct {
	Key    Key
	Values []int
}

func (o Offer) String() string {
	switch {
	case o.Key == KeyOn:
		return `on = "any"`
	case o.Key == KeySymmetric:
		return "symmetric = false"
	case len(o.Values) == 1:
		return string(o.Key) + " = " + strconv.Itoa(o.Values[0])
	}
	words := make([]string, len(o.Values))
	for i, v := range o.Values {
		words[i] = strconv.Itoa(v)
	}
	return string(o.Key) + " = [" + strings.Join(words, ", ") + "]"
}

// refuse makes a refusal of words and numbers.
func refuse(reason Reason, words ...any) *Refusal {
	return &Refusal{Reason: reason, Why: join(words...)}
}

// join puts words and numbers together, with nothing between them.
func join(words ...any) string {
	var b strings.Builder
	for _, w := range words {
		switch w := w.(type) {
		case int:
			b.WriteString(strconv.Itoa(w))
		case string:
			b.WriteString(w)
		}
	}
	return b.String()
}

// counted words how many of a thing: "1 row", "2 rows".
func counted(n int, one string) string { return strconv.Itoa(n) + " " + plural(n, one) }

func plural(n int, one string) string {
	switch {
	case n == 1:
		return one
	case strings.HasSuffix(one, "ch"):
		return one + "es"
	}
	return one + "s"
}
