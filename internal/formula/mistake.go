package formula

import (
	"strings"

	"foundrow/internal/source"
)

// fail reports what could not be read; only the first slip of a formula is reported, because what follows may come of it.
func (p *parser) fail(t token, message, fix string) {
	if p.failed {
		return
	}
	p.failed = true
	p.findings.Report(p.f.File, p.f.place(span{int32(t.from), int32(t.to)}), "formula", message, fix)
	p.tok = token{end, len(p.f.Text), len(p.f.Text)}
}

// said names a token in a sentence.
func (p *parser) said(t token) string {
	if t.kind == end {
		return "the end"
	}
	return "`" + p.text(t) + "`"
}

// means reports a character that is not of the language, with the sign that is.
func (p *parser) means(t token) {
	c := p.text(t)
	fix := ""
	switch c {
	case "×", "·", "✕":
		fix = "write *"
	case "÷", ":":
		fix = "write /"
	case "−", "–", "—", "‐":
		fix = "write -"
	case "”", "“", "″", "'", "’":
		fix = "write inch"
	case "½", "¼", "¾", "⅛", "⅓", "⅔":
		fix = "write it as a decimal: 5.5, 0.25"
	case "[", "{":
		fix = "write ("
	case "]", "}":
		fix = "write )"
	case ";":
		fix = "write ,"
	case "=":
		fix = "a formula is what stands behind the = of its line"
	case ".":
		fix = "write a number with its digits, such as 0.5"
	}
	p.fail(t, "`"+c+"` means nothing in a formula", fix)
}

// missing reports that no operand stands where one must.
func (p *parser) missing() {
	switch {
	case p.tok.kind == '%':
		p.fail(p.tok, "a number is missing before %", "write 90% of …")
	case p.last.to == 0:
		p.fail(p.tok, "a formula begins with a number or a name, not with "+p.said(p.tok), "")
	default:
		p.fail(p.tok, "behind "+p.said(p.last)+" comes a number or a name, not "+p.said(p.tok), "")
	}
}

// stray reports a token behind a whole value, where an operation or the end was expected.
func (p *parser) stray() {
	t, before := p.tok, p.text(p.last)
	w := p.text(t)
	switch {
	case t.kind == ')':
		p.fail(t, "no bracket is open that this could close", "leave it out")
	case t.kind == ',':
		p.fail(t, "this comma has no place here", "")
	case t.kind == '%':
		p.fail(t, "% stands behind a number only", "write 90% of "+before)
	case t.kind == number && p.last.kind == number:
		p.fail(t, "two numbers stand side by side", "write one decimal number, 5.5 for 5 1/2, or a list with its brackets, 5 (6, 7)")
	case t.kind == word && startsRounding(w):
		p.fail(t, "a comma is missing before `"+w+"`", "write "+before+", "+w+" …")
	case w == "at":
		p.fail(t, "`at` belongs to a conversion", "write in stitches at …, or in rows at …")
	case w == "of":
		p.fail(t, "`of` belongs to a percentage or a multiple", "write 90% of …, or a multiple of …")
	case t.kind == '"' || t.kind == word && isUnit(w):
		p.fail(t, "`"+w+"` stands behind a number only", "leave it out: a value knows its own unit; to convert write in "+w)
	case t.kind == word && p.last.kind == word && !IsReserved(w):
		p.fail(t, "between `"+before+"` and `"+w+"` an operation is missing", "write + or another sign between them; a name of two words is written "+before+"_"+w)
	default:
		p.fail(t, "between `"+before+"` and `"+w+"` an operation is missing", "write + - * or / between them")
	}
}

func isUnit(w string) bool {
	_, _, ok := parseUnit(w)
	return ok
}

// behindNumber reports a word behind a number that is no unit, unless it is a word of the language that may go on there.
func (p *parser) behindNumber(n node) {
	w, figure := p.text(p.tok), p.f.Text[n.span.from:p.last.to]
	switch {
	case w == "in":
		after := scan(p.f.Text, p.tok.to)
		if _, _, ok := parseKind(p.f.Text[after.from:after.to]); !ok {
			p.fail(p.tok, "`in` converts; it is never the inch", "write "+figure+" inch")
		}
	case w == "as" || w == "plus" || w == "at" || w == "of" || startsRounding(w):
	case strings.EqualFold(w, "x"):
		p.fail(p.tok, "`"+w+"` is no sign of multiplication", "write *")
	default:
		fix := "write a unit such as cm or sts, or " + figure + " * " + w
		if near := source.Nearest(w, units); near != "" {
			fix = "write " + figure + " " + near
		}
		if short := shortOf(w); short != "" {
			fix = "write " + figure + " " + short
		}
		p.fail(p.tok, "`"+w+"` is no unit", fix)
	}
}

// shortOf returns how a unit is written in a formula whose name was written in full.
func shortOf(w string) string {
	switch strings.TrimSuffix(strings.ToLower(w), "s") {
	case "centimetre", "centimeter":
		return "cm"
	case "millimetre", "millimeter":
		return "mm"
	case "metre", "meter":
		return "m"
	case "yard":
		return "yd"
	case "gram", "gramme":
		return "g"
	case "ounce":
		return "oz"
	}
	return ""
}

var units = []string{"cm", "mm", "inch", "inches", "m", "yd", "g", "oz", "sts", "stitches", "rows"}

// convertsTo reports what is no kind behind "in".
func (p *parser) convertsTo() {
	w := p.text(p.tok)
	fix := "write in stitches, in rows, in cm or in inch"
	if near := source.Nearest(w, append([]string{"length", "number", "mass"}, units...)); near != "" && p.tok.kind == word {
		fix = "write in " + near
	}
	p.fail(p.tok, "behind `in` comes a kind or a unit, not "+p.said(p.tok), fix)
}

// misplaced reports a word of the language where a value must stand.
func (p *parser) misplaced(t token) {
	w := p.text(t)
	switch joined := p.hyphened(t); {
	case joined != "":
		p.fail(t, "a name has no hyphen, which takes away", "write "+joined+" if it is one name")
	case isUnit(w):
		p.fail(t, "how many "+w+"? a unit stands behind a number", "write a number before it; a value may not be named "+w)
	default:
		p.fail(t, "`"+w+"` is a word of the formula language and no value", "write a number or a name here")
	}
}

// hyphened returns the name that a word makes with the one it is joined to by a hyphen, as in rib-rows.
func (p *parser) hyphened(t token) string {
	from := p.last.from
	for from > 0 && (isDigit(p.f.Text[from-1]) || letter(p.f.Text[from-1:]) > 0) {
		from--
	}
	if p.last.kind != '-' || p.last.to != t.from || from == p.last.from {
		return ""
	}
	return p.f.Text[from:p.last.from] + "_" + p.text(t)
}

// afterComma reports what is no rounding.
func (p *parser) afterComma() {
	t, w := p.tok, p.text(p.tok)
	fix := "write , rounded up to whole, or another rounding"
	switch {
	case t.kind == number && t.from == p.last.to:
		fix = "write a point in a decimal number, 5.5; write a list as 5 (5, 6)"
	case t.kind == number:
		fix = "write a list as 12 (14, 16): the first number before the bracket"
	case t.kind == word && source.Nearest(w, []string{"rounded", "nearest", "down", "up"}) != "", w == "round":
		fix = "write rounded up to, rounded down to or rounded to the nearest"
	}
	p.fail(t, "behind a comma comes a rounding, not "+p.said(t), fix)
}
