package manuscript

import (
	"slices"
	"strconv"
	"strings"

	"github.com/yuin/goldmark/ast"

	"foundrow/internal/formula"
	"foundrow/internal/notation"
	"foundrow/internal/pattern"
	"foundrow/internal/prose"
	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

// fenced reads a fenced block: rows are a worked piece, anything else is shown as it is.
func (w *writer) fenced(n *ast.FencedCodeBlock) prose.Block {
	info, infoAt := "", 0
	if n.Info != nil {
		infoAt = w.base + n.Info.Segment.Start
		info = w.file.Text[infoAt : w.base+n.Info.Segment.Stop]
	}
	span := source.Span{From: w.base + max(n.Pos(), 0)}
	body := source.At(lineEnd(w.file.Text, span.From))
	if l := n.Lines(); l.Len() > 0 {
		body.To = w.base + l.At(l.Len()-1).Stop
	}
	opening := source.Span{From: span.From, To: span.From + len(lineAt(w.file.Text, span.From))}
	span.To = body.To + len(lineAt(w.file.Text, body.To))
	if body.To >= len(w.file.Text) {
		w.fs.Report(w.file, opening, "unclosed-block", "the block that opens here is never closed", "write ``` on a line of its own below its last line")
	}
	if word, _, _ := strings.Cut(info, " "); word != "rows" {
		return &prose.Code{Info: info, Text: w.raw(n.Lines()), Span: span}
	}
	if n.Parent().Kind() != ast.KindDocument {
		w.fs.Report(w.file, opening, "rows-inside", "a block of rows stands inside a list or a quote", "begin its lines at the margin")
	}
	p := w.pieceHeading(info, infoAt)
	p.Span, p.Body = span, body
	w.rowSlots(body)
	w.p.Pieces = append(w.p.Pieces, p)
	return &prose.Piece{Index: len(w.p.Pieces) - 1, Span: span}
}

// A heading is the info string of a block of rows, word by word.
type heading struct {
	info string
	at   int // offset of what is left of it in the file
}

// next takes the next word off, and the comma before it.
func (h *heading) next() pattern.Words {
	rest := strings.TrimLeft(h.info, " \t,")
	h.at += len(h.info) - len(rest)
	end := strings.IndexAny(rest, " \t,")
	if end < 0 {
		end = len(rest)
	}
	word := pattern.Words{Text: rest[:end], Span: source.Span{From: h.at, To: h.at + end}}
	h.info, h.at = rest[end:], h.at+end
	return word
}

// headingWords are what may follow the name of a piece.
var headingWords = []string{"at", "with", "make", "continued", "as", "reversed"}

// pieceHeading reads "rows NAME [continued] [at GAUGE] [with HOOK] [, make 2]" and "rows NAME as OTHER, reversed".
func (w *writer) pieceHeading(info string, at int) pattern.Piece {
	const shape = "write rows NAME [at GAUGE] [with HOOK] [, make 2]"
	p := pattern.Piece{Make: 1}
	h := &heading{info: info, at: at}
	rows := h.next()
	p.Name = h.next()
	switch {
	case p.Name.Text == "":
		w.fs.Report(w.file, rows.Span, "piece-heading", "this block of rows has no name", shape)
	case !isName(p.Name.Text):
		fix := shape
		if u := underscored(p.Name.Text); isName(u) {
			fix = "write rows " + u
		}
		w.fs.Report(w.file, p.Name.Span, "bad-name", "`"+p.Name.Text+"` is no name: a name has letters, digits and underscores, and begins with a letter", fix)
	}
	for {
		word := h.next()
		switch word.Text {
		case "":
			return p
		case "at":
			p.Gauge = w.headingName(h, word, "gauge")
		case "with":
			p.Hook = w.headingName(h, word, "hook")
		case "as":
			p.As = w.headingName(h, word, "piece")
		case "continued":
			p.Continued = true
		case "reversed":
			p.Reversed = true
		case "make":
			p.Make = w.headingMake(h, word)
		default:
			w.fs.Report(w.file, word.Span, "piece-heading", "`"+word.Text+"` is not understood in the heading of a piece", didYouMean(word.Text, headingWords, "the name may be followed by"))
		}
	}
}

// headingName reads the name after one of the words.
func (w *writer) headingName(h *heading, word pattern.Words, what string) pattern.Words {
	name := h.next()
	if name.Text == "" {
		w.fs.Report(w.file, word.Span, "piece-heading", "`"+word.Text+"` is followed by no "+what, "name one, or leave the word out")
	}
	return name
}

func (w *writer) headingMake(h *heading, word pattern.Words) int {
	number := h.next()
	n, err := strconv.Atoi(number.Text)
	if err != nil || n < 1 || n > 1000 {
		w.fs.Report(w.file, word.Span.Through(number.Span), "piece-heading", "`"+strings.TrimSpace("make "+number.Text)+"` does not say how many are made", "write make 2")
		return 1
	}
	return n
}

// checkPieces looks at the names that the headings of the pieces call.
func (w *writer) checkPieces() {
	p := w.p
	var gauges, hooks, pieces []string
	for _, g := range p.Gauges {
		gauges = append(gauges, g.Name.Text)
	}
	for _, h := range p.Hooks {
		hooks = append(hooks, h.Name.Text)
	}
	for _, piece := range p.Pieces {
		pieces = append(pieces, piece.Name.Text)
	}
	known := func(name pattern.Words, what string, names []string) {
		if name.Text != "" && !slices.Contains(names, name.Text) && !(p.Partial && what != "piece") {
			unknownName(&w.fs, w.file, name.Span, name.Text, what, names)
		}
	}
	for i, piece := range p.Pieces {
		known(piece.Gauge, "gauge", gauges)
		known(piece.Hook, "hook", hooks)
		known(piece.As, "piece", pieces)
		name, earlier := piece.Name, slices.Contains(pieces[:i], piece.Name.Text)
		switch {
		case name.Text == "":
		case piece.Continued && !earlier:
			w.fs.Report(w.file, name.Span, "piece-order", "`"+name.Text+"` is continued before it was begun", "leave `continued` out of its first block")
		case !piece.Continued && earlier:
			w.fs.Report(w.file, name.Span, "piece-twice", "there are two pieces `"+name.Text+"`", "write rows "+name.Text+" continued, or give this one a name of its own")
		}
		switch {
		case piece.As.Text != "" && piece.As.Text == name.Text:
			w.fs.Report(w.file, piece.As.Span, "piece-order", "`"+name.Text+"` is worked as itself", "name the piece whose rows it works")
		case piece.Reversed && piece.As.Text == "":
			w.fs.Report(w.file, name.Span, "piece-heading", "`"+name.Text+"` is reversed, and it is not said of what", "write rows "+name.Text+" as OTHER, reversed")
		}
	}
}

// rowSlots enters the values that stand in rows. Rows are not Markdown: only pairs of braces are looked for here, and whatever else is
// to be said of a brace package notation says. Where the words of a pair are no formula but name a stitch, its braces are brackets.
func (w *writer) rowSlots(rows source.Span) {
	for at := rows.From; at < rows.To; {
		open := strings.IndexByte(w.file.Text[at:rows.To], '{')
		if open < 0 {
			return
		}
		open += at
		at = open + 1
		shut := strings.IndexAny(w.file.Text[at:rows.To], "{}\n")
		if shut < 0 || w.file.Text[at+shut] != '}' {
			continue
		}
		shut += at
		f, fs := formula.Parse(w.file, at, w.file.Text[at:shut])
		at = shut + 1
		if len(fs) > 0 && w.namesStitch(f.Text) {
			continue
		}
		w.fs = append(w.fs, fs...)
		w.p.Slots = append(w.p.Slots, pattern.Slot{Formula: f, Span: source.Span{From: open, To: shut + 1}})
	}
}

// namesStitch reports whether words have the name of a stitch among them.
func (w *writer) namesStitch(words string) bool {
	return slices.ContainsFunc(strings.FieldsFunc(words, func(r rune) bool { return r == ' ' || r == ',' }), func(word string) bool {
		_, is := stitch.Word(word, w.p.Terms)
		return is
	})
}

// readRows has the rows of every piece read, and what its special stitches are worked as.
func readRows(p *pattern.Pattern) source.Findings {
	var fs source.Findings
	slots := make(map[int]int, len(p.Slots))
	for i, s := range p.Slots {
		slots[s.Span.From] = i
	}
	in := notation.Input{File: p.File, Terms: p.Terms, Sizes: p.Sizes.Names, Slot: func(from int) int {
		if i, there := slots[from]; there {
			return i
		}
		return -1
	}}
	for _, s := range p.Special {
		in.Specials = append(in.Specials, s.Abbr.Text)
	}
	for i := range p.Special {
		if p.Special[i].Worked == nil {
			readSpecial(&p.Special[i], in)
		}
	}
	for i := range p.Pieces {
		in.Body = p.Pieces[i].Body
		block, more := notation.Parse(in)
		p.Pieces[i].Rows = block
		fs = append(fs, more...)
	}
	return fs
}

// readSpecial reads what a stitch is worked as. Words that are not rows stay words: then it uses and makes what is said of it.
func readSpecial(s *pattern.Special, in notation.Input) {
	in.Body = s.How.Span
	if in.File.Slice(in.Body) != s.How.Text {
		return
	}
	if worked, ok := notation.Clauses(in); ok {
		s.Worked = worked
	}
}
