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
	at     source.Span            // the line that is being set
	holds  []bool                 // the sizes that it is for; nil for all
	done   map[notation.Line]Line // lines that several pieces have; nil where no piece is worked as another
	used   *stitch.Used           // what is set is read into it; nil where another edition has been read already
}

func newSetter(p *pattern.Pattern, terms pattern.Terms, worked []*workedPiece, slots *slotList) *setter {
	s := &setter{p: p, terms: terms, worked: worked, slots: slots}
	if slices.ContainsFunc(p.Pieces, func(w pattern.Piece) bool { return w.As.Text != "" }) {
		s.done = map[notation.Line]Line{}
	}
	return s
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
		s.holds = w.holds[i]
		line, done := s.done[l]
		if !done {
			line = s.set(l)
			if s.done != nil {
				s.done[l] = line
			}
		}
		if len(line.Count) == 0 && w.counts[i] != nil {
			line.Count = w.counts[i]
			s.readLine(line.Count)
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
		line.Kind = NoteLine
		return line
	case *notation.Start:
		p := notation.Print(l, s.terms)
		switch {
		case len(l.Edges) == 0:
		case len(l.Pickup) > 0:
			p.Body = begun("along ", p.Body)
		case l.Edges[0].First.Said || l.Edges[0].Last.Said:
			p.Body = begun("on the ", p.Body)
		default:
			p.Body = begun("on ", p.Body)
		}
		return s.sentence(p)
	}
	return s.sentence(notation.Print(l, s.terms))
}

// sentence sets a printed line as a sentence, with a capital and a full stop.
func (s *setter) sentence(p notation.Printed) Line {
	if n := len(p.Body); n > 0 {
		if first := &p.Body[0]; first.Count == nil {
			first.Text = capital(first.Text)
		}
		if last := &p.Body[n-1]; last.Count != nil || !strings.HasSuffix(last.Text, ".") {
			p.Body = ended(p.Body, ".")
		}
	}
	return s.parts(p)
}

// parts sets the parts of a printed line.
func (s *setter) parts(p notation.Printed) Line {
	if n := len(p.Only); n > 0 {
		p.Only[n-1].Text = strings.TrimRight(p.Only[n-1].Text, ": ")
	}
	if len(p.Claims) > 0 {
		p.Claims = begun("(", ended(p.Claims, ")"))
	}
	return Line{Only: s.line(p.Only), Label: s.line(p.Label), Text: s.line(p.Body), Count: s.line(p.Claims)}
}

// begun puts words before parts, and ended behind them.
func begun(words string, parts []notation.Part) []notation.Part {
	if len(parts) > 0 && parts[0].Count == nil {
		parts[0].Text = words + parts[0].Text
		return parts
	}
	return append([]notation.Part{{Text: words}}, parts...)
}

func ended(parts []notation.Part, words string) []notation.Part {
	if n := len(parts); n > 0 && parts[n-1].Count == nil {
		parts[n-1].Text += words
		return parts
	}
	return append(parts, notation.Part{Text: words})
}

// line makes a line of printed parts. Numbers that differ between sizes become slots, together with the words behind them that agree
// with the number.
func (s *setter) line(parts []notation.Part) prose.Line {
	if len(parts) == 0 {
		return nil
	}
	line := make(prose.Line, 0, len(parts))
	for i := 0; i < len(parts); i++ {
		p := &parts[i]
		if p.Count == nil {
			s.read(p.Text)
			line = s.appendText(line, p.Text)
			continue
		}
		one, many, next := behind(parts, i)
		s.read(many)
		line = append(line, prose.Slot{Index: s.slots.slot(p, one, many, s.holds)})
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

// readLine reads a line that was made before the edition.
func (s *setter) readLine(line prose.Line) {
	for _, in := range line {
		switch in := in.(type) {
		case prose.Text:
			s.read(string(in))
		case prose.Slot:
			s.read(s.slots.all[in.Index].All)
		}
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

func sideWords(s notation.Side) string {
	return [...]string{notation.NoSide: "", notation.RightSide: "RS", notation.WrongSide: "WS"}[s]
}
