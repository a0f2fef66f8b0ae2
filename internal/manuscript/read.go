package manuscript

import (
	"slices"
	"strconv"
	"strings"

	"foundrow/internal/formula"
	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// wordsOf returns what a string says, with the place of its words.
func wordsOf(n *node) pattern.Words { return pattern.Words{Text: n.words, Span: n.text} }

// oneOf reads a word out of a closed list.
func (r *reader) oneOf(n *node, known []string) (pattern.Words, bool) {
	for _, k := range known {
		if n.words == k {
			return wordsOf(n), true
		}
	}
	r.fs.Report(r.file, n.text, "unknown-word", "`"+n.name+"` cannot be `"+n.words+"`", didYouMean(n.words, known, "it is one of"))
	return pattern.Words{}, false
}

// number reads a number exactly as it is written.
func (r *reader) number(n *node) (measure.Num, bool) {
	written := r.file.Slice(n.span)
	num, ok := measure.Parse(strings.ReplaceAll(strings.TrimPrefix(written, "+"), "_", ""))
	if !ok || num.IsLost() {
		r.fs.Report(r.file, n.span, "wrong-type", "`"+written+"` is not a plain number", "write it with digits and at most one point: 14.5")
		return measure.Num{}, false
	}
	return num, true
}

// positive is number for what has to be more than nothing.
func (r *reader) positive(n *node) measure.Num {
	num, ok := r.number(n)
	if ok && num.Sign() <= 0 {
		r.fs.Report(r.file, n.span, "out-of-range", "`"+n.name+"` is "+num.Decimal(3)+", and has to be more than 0", "count it again, or leave the line out")
		return measure.Num{}
	}
	return num
}

// whole reads a whole number between two bounds.
func (r *reader) wholeNumber(n *node, least, most int) (int, bool) {
	num, ok := r.number(n)
	if !ok {
		return 0, false
	}
	i, isWhole := num.Int()
	if !isWhole || i < least || i > most {
		r.fs.Report(r.file, n.span, "out-of-range", "`"+n.name+"` is "+num.Decimal(3)+", and goes from "+strconv.Itoa(least)+" to "+strconv.Itoa(most), "write a whole number in between")
		return 0, false
	}
	return i, true
}

// unknown returns a formula that works out as an unknown value, for what has its finding already.
func (r *reader) unknown(n *node) *formula.Formula {
	f, _ := formula.Parse(r.file, n.span.From, "")
	return f
}

// A reading is how the text of a formula is read: as a value or as an ease.
type reading func(f *source.File, from int, text string) (*formula.Formula, source.Findings)

// formula reads a value as a formula. Its places are those of the file, whatever quotes and escapes it is written with.
func (r *reader) formula(n *node, parse reading) *formula.Formula {
	from, words := n.span.From, ""
	switch {
	case n.broken:
		return r.unknown(n)
	case n.kind == isText:
		from, words = n.text.From, r.file.Slice(n.text)
		if n.escapes {
			words = level(words)
		}
	case n.kind&(isWhole|isDecimal) != 0:
		if _, ok := r.number(n); !ok {
			return r.unknown(n)
		}
		words = strings.ReplaceAll(r.file.Slice(n.span), "_", "")
	default:
		r.wrongType(n, isText|isDecimal, n.name+` = "54 cm"`)
		return r.unknown(n)
	}
	f, fs := parse(r.file, from, words)
	r.fs = append(r.fs, fs...)
	return f
}

// quantity reads a number with its unit, such as "4.5 mm", where no formula can stand.
func (r *reader) quantity(n *node, example string, units ...measure.Unit) (measure.Num, measure.Unit, bool) {
	if n.kind != isText {
		r.fs.Report(r.file, n.span, "unit-missing", "`"+n.name+"` is "+r.file.Slice(n.span)+" without a unit", "write "+n.name+` = "`+r.file.Slice(n.span)+" "+units[0].String()+`"`)
		return measure.Num{}, measure.NoUnit, false
	}
	num, name, ok := splitQuantity(n.words)
	unit, known := measure.ParseUnit(name)
	switch {
	case !ok:
		r.fs.Report(r.file, n.text, "unread-quantity", "`"+n.words+"` is not a number with its unit", "write "+n.name+" = "+example)
	case name == "":
		r.fs.Report(r.file, n.text, "unit-missing", "`"+n.name+"` is "+n.words+" without a unit", "write "+n.name+` = "`+n.words+" "+units[0].String()+`"`)
	case name == "in":
		r.fs.Report(r.file, n.text, "unit-unknown", "`in` is never the inch here: in formulas it converts", "write "+num.Decimal(3)+" inch")
	case !known || !slices.Contains(units, unit):
		r.fs.Report(r.file, n.text, "unit-unknown", "`"+n.name+"` is in `"+name+"`", "write it in "+unitList(units)+": "+n.name+" = "+example)
	case num.Sign() <= 0:
		r.fs.Report(r.file, n.text, "out-of-range", "`"+n.name+"` is "+n.words+", and has to be more than 0", "measure it again, or leave the line out")
	default:
		return num, unit, true
	}
	return measure.Num{}, measure.NoUnit, false
}

func unitList(units []measure.Unit) string {
	words := make([]string, len(units))
	for i, u := range units {
		words[i] = u.String()
	}
	return source.List(words, "or")
}

// splitQuantity cuts "4 1/2 inch" into 4 1/2 and "inch". It reports false where no number stands in front.
func splitQuantity(s string) (measure.Num, string, bool) {
	s = strings.TrimSpace(s)
	num, rest, ok := leadingNumber(s)
	if !ok {
		return measure.Num{}, "", false
	}
	return num, strings.TrimSpace(rest), true
}

// fractions are those that have a character of their own.
var fractions = []struct {
	sign  string
	share measure.Num
}{
	{"¼", measure.Ratio(1, 4)}, {"½", measure.Ratio(1, 2)}, {"¾", measure.Ratio(3, 4)}, {"⅛", measure.Ratio(1, 8)}, {"⅜", measure.Ratio(3, 8)},
	{"⅝", measure.Ratio(5, 8)}, {"⅞", measure.Ratio(7, 8)}, {"⅓", measure.Ratio(1, 3)}, {"⅔", measure.Ratio(2, 3)},
}

// leadingNumber reads "54", "-2.5", "1/2", "4 1/2", "4½" at the start of a text and returns what follows.
func leadingNumber(s string) (num measure.Num, rest string, ok bool) {
	s, negative := strings.CutPrefix(s, "-")
	end := 0
	for end < len(s) && (s[end] >= '0' && s[end] <= '9' || s[end] == '.') {
		end++
	}
	num, ok = measure.Parse(s[:end])
	rest = s[end:]
	switch {
	case ok && strings.HasPrefix(rest, "/"):
		num, rest, ok = over(num, rest)
	case ok && strings.HasPrefix(rest, " "):
		if top, after, isNumber := digits(rest[1:]); isNumber && strings.HasPrefix(after, "/") {
			var share measure.Num
			share, rest, ok = over(top, after)
			num = num.Add(share)
		}
	}
	for _, f := range fractions {
		if after, found := strings.CutPrefix(strings.TrimLeft(rest, " "), f.sign); found && (ok || end == 0) {
			num, rest, ok = num.Add(f.share), after, true
		}
	}
	if negative {
		num = num.Neg()
	}
	return num, rest, ok && !num.IsLost()
}

// over reads what stands under a fraction bar.
func over(top measure.Num, rest string) (measure.Num, string, bool) {
	under, rest, ok := digits(rest[1:])
	return top.Div(under), rest, ok
}

func digits(s string) (measure.Num, string, bool) {
	end := 0
	for end < len(s) && s[end] >= '0' && s[end] <= '9' {
		end++
	}
	n, ok := measure.Parse(s[:end])
	return n, s[end:], ok
}

// seconds reads a moment or a length of a film, "8:40" or "1:02:03".
func seconds(s string) (int, bool) {
	parts := strings.Split(s, ":")
	if len(parts) < 2 || len(parts) > 3 {
		return 0, false
	}
	total := 0
	for i, p := range parts {
		n, err := strconv.Atoi(p)
		if err != nil || p[0] == '-' || p[0] == '+' || i > 0 && (len(p) != 2 || n > 59) || i == 0 && len(p) > 3 {
			return 0, false
		}
		total = total*60 + n
	}
	return total, true
}
