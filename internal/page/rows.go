package page

import (
	"slices"
	"strings"

	"foundrow/internal/notation"
	"foundrow/internal/pattern"
	"foundrow/internal/prose"
	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

// A setter sets lines of rows in the terms of one edition.
type setter struct {
	p      *pattern.Pattern
	terms  pattern.Terms
	worked []*workedPiece
	slots  *slotList
	at     source.Span  // the line that is being set
	used   *stitch.Used // what is set is read into it; nil where another edition has been read already
}

// block sets the lines that stand in one block of a piece. What is read of other blocks, because the piece is worked as another,
// belongs to its first.
func (s *setter) block(w *workedPiece, block int) []Line {
	out := make([]Line, 0, len(w.rows)+1)
	if written := &s.p.Pieces[block]; written.Reversed {
		out = append(out, mirrored(written))
	}
	film := -1
	for i, l := range w.rows {
		if w.blockOf(s.p, l) != block {
			continue
		}
		if f, is := l.(*notation.Film); is {
			film = f.Seconds
			continue
		}
		line := s.set(l)
		if len(line.Count) == 0 && w.counts[i] != nil {
			line.Count = w.counts[i]
			s.read("sts")
		}
		if line.Side == "" {
			line.Side = sideWords(w.sides[i])
		}
		s.read(line.Side)
		line.Film, film = film, -1
		out = append(out, line)
	}
	return out
}

// set sets one line.
func (s *setter) set(l notation.Line) Line {
	s.at = l.At()
	switch l := l.(type) {
	case *notation.Row:
		row := *l
		row.Label.Side = notation.NoSide // it is set apart
		line := s.sentence(notation.Print(&row, s.terms))
		line.Side = sideWords(l.Label.Side)
		return line
	case *notation.Again:
		again := *l
		again.Label.Side = notation.NoSide
		line := s.sentence(notation.Print(&again, s.terms))
		line.Side = sideWords(l.Label.Side)
		return line
	case *notation.Work, *notation.Unread:
		return Line{Text: s.asWritten()}
	case *notation.Note:
		p := notation.Print(l, s.terms)
		words := plainWords(p.Body)
		p.Body = nil
		line := s.parts(p)
		s.read(words)
		line.Kind, line.Text = NoteLine, s.withValues(words)
		return line
	case *notation.Rule:
		line := s.sentence(notation.Print(l, s.terms))
		line.Kind, line.Text = NoteLine, capitalLine(line.Text)
		return line
	case *notation.Start:
		line := s.sentence(notation.Print(l, s.terms))
		switch {
		case len(l.Edges) == 0:
		case len(l.Pickup) > 0:
			line.Text = append(prose.Line{prose.Text("Along ")}, line.Text...)
		default:
			line.Text = append(prose.Line{prose.Text("On ")}, line.Text...)
		}
		line.Text = capitalLine(line.Text)
		return line
	}
	line := s.sentence(notation.Print(l, s.terms))
	line.Text = capitalLine(line.Text)
	return line
}

// sentence sets a printed line as a sentence, with its full stop.
func (s *setter) sentence(p notation.Printed) Line {
	line := s.parts(p)
	if n := len(line.Text); n > 0 {
		text, is := line.Text[n-1].(prose.Text)
		switch {
		case !is:
			line.Text = append(line.Text, prose.Text("."))
		case !strings.HasSuffix(string(text), "."):
			line.Text[n-1] = text + "."
		}
	}
	return line
}

// parts sets the parts of a printed line.
func (s *setter) parts(p notation.Printed) Line {
	line := Line{Only: s.line(p.Only), Label: s.line(p.Label), Text: s.line(p.Body)}
	if n := len(line.Only); n > 0 {
		if text, is := line.Only[n-1].(prose.Text); is {
			line.Only[n-1] = prose.Text(strings.TrimRight(string(text), ": "))
		}
	}
	if len(p.Claims) > 0 {
		line.Count = bracketedLine(s.line(p.Claims))
	}
	return line
}

// line makes a line of printed parts. Numbers that differ between sizes become slots, together with the words behind them that agree
// with the number.
func (s *setter) line(parts []notation.Part) prose.Line {
	line := make(prose.Line, 0, len(parts)+2)
	for i := 0; i < len(parts); i++ {
		p := &parts[i]
		if p.Count == nil {
			s.read(p.Text)
			line = s.appendText(line, p.Text)
			continue
		}
		one, many, next := behind(parts, i)
		s.read(many)
		line = append(line, prose.Slot{Index: s.slots.slot(p, one, many)})
		i = next - 1
	}
	return line
}

// appendText adds words to a line. A value that stands in words which are kept as they were written is found by its formula.
func (s *setter) appendText(line prose.Line, words string) prose.Line {
	for {
		open := strings.IndexByte(words, '{')
		shut := strings.IndexByte(words, '}')
		if open < 0 || shut < open {
			return append(line, prose.Text(words))
		}
		i := slices.IndexFunc(s.p.Slots, func(slot pattern.Slot) bool {
			return slot.Formula.Text == words[open+1:shut] && s.at.From <= slot.Span.From && slot.Span.To <= s.at.To
		})
		if i < 0 {
			return append(line, prose.Text(words))
		}
		if open > 0 {
			line = append(line, prose.Text(words[:open]))
		}
		if line, words = append(line, prose.Slot{Index: i}), words[shut+1:]; words == "" {
			return line
		}
	}
}

func (s *setter) read(text string) {
	if s.used != nil {
		s.used.Read(text, s.terms)
	}
}

// asWritten is the line in the designer's words, with its values.
func (s *setter) asWritten() prose.Line {
	words := s.p.File.Slice(s.at)
	if s.used != nil {
		s.used.Read(words, s.p.Terms)
	}
	return s.withValues(words)
}

// withValues cuts words at their braces, which hold the values of the line in order.
func (s *setter) withValues(words string) prose.Line {
	var line prose.Line
	for i, slot := range s.p.Slots {
		if slot.Span.From < s.at.From || slot.Span.To > s.at.To {
			continue
		}
		open := strings.IndexByte(words, '{')
		shut := strings.IndexByte(words, '}')
		if open < 0 || shut < open {
			break
		}
		if open > 0 {
			line = append(line, prose.Text(words[:open]))
		}
		line, words = append(line, prose.Slot{Index: i}), words[shut+1:]
	}
	if words != "" {
		line = append(line, prose.Text(words))
	}
	return line
}

// plainWords joins the words of parts that hold no number.
func plainWords(parts []notation.Part) string {
	var b strings.Builder
	for i := range parts {
		b.WriteString(parts[i].Text)
	}
	return b.String()
}

func bracketedLine(l prose.Line) prose.Line {
	out := append(make(prose.Line, 0, len(l)+2), prose.Text("("))
	return append(append(out, l...), prose.Text(")"))
}

// capitalLine begins a line with a capital.
func capitalLine(l prose.Line) prose.Line {
	if len(l) > 0 {
		if text, is := l[0].(prose.Text); is {
			l[0] = prose.Text(capital(string(text)))
		}
	}
	return l
}

func sideWords(s notation.Side) string {
	return [...]string{notation.NoSide: "", notation.RightSide: "RS", notation.WrongSide: "WS"}[s]
}
