package page

import (
	"slices"
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
	Count prose.Line // "(62 sts)": the designer's claim, or what is worked where that changes and she claims nothing
	Film  int        // the moment of the film it belongs to, in seconds, or -1
}

// pieces sets every block of rows of the pattern.
func (s *setter) pieces() []Piece {
	out := make([]Piece, len(s.p.Pieces))
	for _, w := range s.worked {
		for _, block := range w.blocks {
			written := &s.p.Pieces[block]
			out[block] = Piece{Name: written.Name.Text, Title: Name(written.Name.Text), Asks: s.asks(written)}
			if written.Continued {
				out[block].Title += ", continued"
			}
			out[block].Lines = s.block(w, block)
		}
	}
	return out
}

// asks is what the heading of a block says of all of it. What is worked as another piece has that one's gauge and hook.
func (s *setter) asks(w *pattern.Piece) string {
	gauged := w
	if i := slices.IndexFunc(s.p.Pieces, func(p pattern.Piece) bool { return p.Name.Text == w.As.Text }); i >= 0 && w.Gauge.Text == "" && w.Hook.Text == "" {
		gauged = &s.p.Pieces[i]
	}
	var make, as, gauge, hook string
	if w.Make > 1 {
		make = "make " + strconv.Itoa(w.Make)
	}
	if w.As.Text != "" {
		as = "worked as the " + spacedName(w.As.Text)
		if w.Reversed {
			as += ", reversed"
		}
	}
	if gauged.Gauge.Text != "" && len(s.p.Gauges) > 1 {
		gauge = "at the " + spacedName(gauged.Gauge.Text) + " " + gaugeWord(s.terms)
	}
	for _, h := range s.p.Hooks {
		if gauged.Hook.Text != "" && h.Name.Text == gauged.Hook.Text {
			hook = "with the " + h.Size.Decimal(3) + " mm hook"
		}
	}
	return joined(", ", make, as, gauge, hook)
}

// mirrored says what it is to work another piece's rows reversed.
func mirrored(w *pattern.Piece) Line {
	return Line{
		Kind: NoteLine, Film: -1, Label: prose.Line{prose.Text("Note")},
		Text: prose.Line{prose.Text("This is the " + spacedName(w.As.Text) + " in a mirror: whatever a row does there at its beginning, it does here at its end, and the other way round.")},
	}
}

// spacedName is the name of a piece or gauge within a sentence.
func spacedName(name string) string { return strings.ReplaceAll(name, "_", " ") }
