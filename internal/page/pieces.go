package page

import (
	"strconv"
	"strings"

	"foundrow/internal/pattern"
	"foundrow/internal/prose"
)

// A Piece is a worked piece as it is set: one row or round a line. The slots in its lines are those of the page.
type Piece struct {
	Name  string // as it is called in the front matter and in formulas: "left_front"
	Title string // "Left front"
	Asks  string // what is said of the whole piece: "make 2, with the 3.5 mm hook"; may be empty
	Lines []Line
}

// A LineKind is what a line of a piece is.
type LineKind uint8

const (
	RowLine  LineKind = iota // one or several rows or rounds, or anything else that is worked
	NoteLine                 // to be read, not worked
)

// A Line is one line of a piece: "Row 3 (RS)" · what to do · the count at its end.
type Line struct {
	Kind  LineKind
	Only  prose.Line // "Sizes M and 3X to 5X only"; empty where the line is for all
	Label prose.Line
	Side  string // "RS" or "WS"; empty when it is not said
	Text  prose.Line
	Count prose.Line // "({front} sts)", where the line ends with a claim
	Film  int        // the moment of the film it belongs to, in seconds, or -1
}

func pieces(p *pattern.Pattern) []Piece {
	out := make([]Piece, 0, len(p.Pieces))
	for _, written := range p.Pieces {
		piece := Piece{Name: written.Name.Text, Title: Name(written.Name.Text), Asks: asks(p, written)}
		if written.Continued {
			piece.Title += ", continued"
		}
		piece.Lines = linesOf(written.Lines)
		out = append(out, piece)
	}
	return out
}

func asks(p *pattern.Pattern, w pattern.Piece) string {
	var make, as, gauge, hook string
	if w.Make > 1 {
		make = "make " + strconv.Itoa(w.Make)
	}
	if w.As.Text != "" {
		as = "worked as the " + strings.ReplaceAll(w.As.Text, "_", " ")
		if w.Reversed {
			as += ", reversed"
		}
	}
	if w.Gauge.Text != "" && len(p.Gauges) > 1 {
		gauge = "at the " + strings.ReplaceAll(w.Gauge.Text, "_", " ") + " " + gaugeWord(p.Terms)
	}
	for _, h := range p.Hooks {
		if w.Hook.Text != "" && h.Name.Text == w.Hook.Text {
			hook = "with the " + h.Size.Decimal(3) + " mm hook"
		}
	}
	return joined(", ", make, as, gauge, hook)
}

// gaugeWord is what the trade calls a gauge in the terms.
// Source: hilandonubes.com/crochet/info.cgi?id=3008 and three other lists of US and UK terms.
func gaugeWord(t pattern.Terms) string {
	if t == pattern.UK {
		return "tension"
	}
	return "gauge"
}

// linesOf sets the lines of a piece. A film stamp is not printed: it belongs to the line below it.
func linesOf(written []pattern.RowLine) []Line {
	out := make([]Line, 0, len(written))
	film := -1
	for _, w := range written {
		l := Line{Film: film}
		lead, work := w.Lead, w.Line
		if first := firstWord(lead); first == "Size" || first == "Sizes" || first == "All" {
			l.Only = lead
			lead, work = leadOf(work)
		}
		l.Label, l.Side = sideOf(lead)
		switch firstWord(l.Label) {
		case "Film":
			film = seconds(strings.TrimSpace(work.Words(nil)))
			continue
		case "Note", "Throughout":
			l.Kind, l.Text = NoteLine, work
		default:
			l.Text, l.Count = claimOf(work)
		}
		out = append(out, l)
		film = -1
	}
	return out
}

func firstWord(line prose.Line) string {
	if len(line) == 0 {
		return ""
	}
	text, _ := line[0].(prose.Text)
	word, _, _ := strings.Cut(string(text), " ")
	return word
}

// leadOf cuts the label of a row, "Rnd 8 (RS)", from a line that names its sizes first.
func leadOf(line prose.Line) (lead, rest prose.Line) {
	switch strings.TrimSuffix(firstWord(line), ":") {
	case "Row", "Rows", "Rnd", "Rnds", "Round", "Rounds", "Next", "Inc", "Dec", "Even", "Foundation", "Start", "Chart", "Seam", "Note":
	default:
		return nil, line
	}
	for i, part := range line {
		text, isText := part.(prose.Text)
		before, after, found := strings.Cut(string(text), ":")
		if !isText || !found {
			continue
		}
		lead = append(append(prose.Line{}, line[:i]...), prose.Text(before))
		rest = append(prose.Line{prose.Text(strings.TrimLeft(after, " "))}, line[i+1:]...)
		return lead, rest
	}
	return nil, line
}

// sideOf takes the side from the end of a lead: "Row 3 (RS)".
func sideOf(lead prose.Line) (label prose.Line, side string) {
	if len(lead) == 0 {
		return lead, ""
	}
	last, isText := lead[len(lead)-1].(prose.Text)
	if !isText {
		return lead, ""
	}
	words := strings.TrimSpace(string(last))
	for _, side := range [...]string{"RS", "WS"} {
		if rest, found := strings.CutSuffix(words, "("+side+")"); found {
			return replaceLast(lead, strings.TrimRight(rest, " ")), side
		}
	}
	return replaceLast(lead, strings.TrimRight(string(last), " ")), ""
}

// replaceLast returns the line with other text at its end; lines are shared, so the one given stays as it is.
func replaceLast(line prose.Line, text string) prose.Line {
	out := append(prose.Line{}, line[:len(line)-1]...)
	if text != "" {
		out = append(out, prose.Text(text))
	}
	return out
}

// claimOf cuts the bracket that ends a line, after a full stop, from the work it counts: "Sc in each st across. (62 sts)".
// A bracket that belongs to the sentence stays in it.
func claimOf(line prose.Line) (text, count prose.Line) {
	if len(line) == 0 {
		return line, nil
	}
	last, isText := line[len(line)-1].(prose.Text)
	if !isText || !strings.HasSuffix(strings.TrimRight(string(last), " ."), ")") {
		return line, nil
	}
	for i := len(line) - 1; i >= 0; i-- {
		t, isText := line[i].(prose.Text)
		if !isText {
			continue
		}
		words := string(t)
		open := strings.LastIndexByte(words, '(')
		if open < 0 {
			if strings.Contains(strings.TrimRight(words, " .)"), ")") {
				return line, nil
			}
			continue
		}
		before := strings.TrimRight(words[:open], " ")
		if !strings.HasSuffix(before, ".") {
			return line, nil
		}
		text = append(append(prose.Line{}, line[:i]...), prose.Text(before))
		count = append(prose.Line{prose.Text(words[open:])}, line[i+1:]...)
		return text, count
	}
	return line, nil
}

// seconds reads a moment of a film, M:SS or H:MM:SS; -1 for anything else.
func seconds(stamp string) int {
	total := 0
	parts := strings.Split(stamp, ":")
	if len(parts) < 2 || len(parts) > 3 {
		return -1
	}
	for _, part := range parts {
		n, err := strconv.Atoi(part)
		if err != nil || n < 0 {
			return -1
		}
		total = total*60 + n
	}
	return total
}
