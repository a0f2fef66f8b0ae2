package manuscript

import (
	"bytes"
	"strings"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"

	"foundrow/internal/formula"
	"foundrow/internal/pattern"
	"foundrow/internal/prose"
	"foundrow/internal/source"
)

// line reads the inline nodes of a block, or of emphasis and links within it.
func (w *writer) line(parent ast.Node) prose.Line {
	line := make(prose.Line, 0, parent.ChildCount())
	for n := parent.FirstChild(); n != nil; n = n.NextSibling() {
		switch n := n.(type) {
		case *ast.Text:
			line = w.text(line, n)
		case *slotNode:
			line = append(line, w.slot(n))
		case *ast.String:
			line = append(line, prose.Text(n.Value))
		case *ast.CodeSpan:
			line = append(line, prose.CodeText(w.code(n)))
		case *ast.Emphasis:
			line = append(line, &prose.Marked{Strong: n.Level > 1, Line: w.line(n)})
		case *ast.Link:
			to, span := w.destination(n, n.Destination, n.Title)
			w.call(n.Reference)
			line = append(line, &prose.Link{To: to, Line: w.line(n), Span: span})
		case *ast.Image:
			from, span := w.destination(n, n.Destination, n.Title)
			w.call(n.Reference)
			line = append(line, &prose.Image{From: from, Alt: w.line(n), Span: span})
		case *ast.AutoLink:
			line = append(line, w.autoLink(n))
		case *ast.RawHTML:
			line = w.rawHTML(line, n)
		default:
			line = append(line, w.line(n)...)
		}
	}
	return line
}

// text adds a run of words, less what the slot before it took in, and the line end that follows it.
func (w *writer) text(line prose.Line, n *ast.Text) prose.Line {
	s := n.Segment
	s.Start = min(max(s.Start, w.skip), s.Stop)
	if words := w.words(s, n.IsRaw()); words != "" {
		if last := len(line) - 1; last >= 0 {
			if before, ok := line[last].(prose.Text); ok {
				line[last] = before + prose.Text(words)
				words = ""
			}
		}
		if words != "" {
			line = append(line, prose.Text(words))
		}
	}
	if n.HardLineBreak() || n.SoftLineBreak() && n.NextSibling() != nil {
		line = append(line, prose.Newline{Hard: n.HardLineBreak()})
	}
	return line
}

// words returns what a run of text says: escapes and entities are read, braces that hold no value are reported.
func (w *writer) words(s text.Segment, raw bool) string {
	written := w.file.Text[w.base+s.Start : w.base+s.Stop]
	if raw || !strings.ContainsAny(written, `\&{}`) {
		return written
	}
	var b strings.Builder
	for i := 0; i < len(written); i++ {
		switch c := written[i]; {
		case c == '\\' && i+1 < len(written) && util.IsPunct(written[i+1]):
			i++
			b.WriteByte(written[i])
		case c == '&':
			words, width := entity(written[i:])
			b.WriteString(words)
			i += width - 1
		case c == '{' || c == '}':
			w.strayBrace(w.span(s.Start+i, s.Start+i+1), c)
			b.WriteByte(c)
		default:
			b.WriteByte(c)
		}
	}
	return b.String()
}

func (w *writer) strayBrace(at source.Span, c byte) {
	if c == '{' {
		w.fs.Report(w.file, at, "unclosed-brace", "the brace that opens here is not closed on its line", `close it, or write \{ for a brace`)
	} else {
		w.fs.Report(w.file, at, "unclosed-brace", "this brace closes none", `open it on the same line, or write \} for a brace`)
	}
}

// entity reads a character reference such as &frac12; at the start of s. What is none stays as it is.
func entity(s string) (words string, width int) {
	end := strings.IndexByte(s, ';')
	if end < 0 || end > 40 {
		return s[:1], 1
	}
	written := []byte(s[:end+1])
	if read := util.ResolveEntityNames(util.ResolveNumericReferences(written)); !bytes.Equal(read, written) {
		return string(read), end + 1
	}
	return s[:1], 1
}

// code returns the text of a code span; line ends in it are spaces.
func (w *writer) code(n ast.Node) string {
	var b strings.Builder
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		t, ok := c.(*ast.Text)
		if !ok {
			continue
		}
		words := w.file.Text[w.base+t.Segment.Start : w.base+t.Segment.Stop]
		line := strings.TrimRight(words, "\r\n")
		b.WriteString(line)
		if len(line) < len(words) {
			b.WriteByte(' ')
		}
	}
	return b.String()
}

// plain returns what a link destination says.
func plain(written []byte) string {
	if !bytes.ContainsAny(written, `\&`) {
		return string(written)
	}
	return string(util.UnescapePunctuations(util.ResolveEntityNames(util.ResolveNumericReferences(written))))
}

// destination returns where a link leads or an image lies, with the span of the whole, and reports what of it is not carried.
func (w *writer) destination(n ast.Node, written, title []byte) (string, source.Span) {
	from := w.base + max(n.Pos(), 0)
	span := source.Span{From: from, To: from + 1}
	at := span
	if i := strings.Index(w.file.Text[from:], string(written)); i >= 0 && len(written) > 0 {
		at = source.Span{From: from + i, To: from + i + len(written)}
		span.To = at.To
		if strings.HasPrefix(w.file.Text[at.To:], ")") {
			span.To++
		}
	}
	if bytes.IndexByte(written, '{') >= 0 {
		w.fs.Ask(w.file, at, "braces-not-read", "braces stand in an address, where no value is read", "write the address out, or leave the braces if they belong to it")
	}
	if len(title) > 0 {
		w.fs.Ask(w.file, span, "title-not-printed", "the title \""+string(title)+"\" is not printed: phones cannot show it", "put its words into the text, and take it out here")
	}
	return plain(written), span
}

// call notes that a link definition is used.
func (w *writer) call(ref *ast.ReferenceLink) {
	if ref != nil {
		w.called[util.ToLinkReference(ref.Value)] = true
	}
}

func (w *writer) autoLink(n *ast.AutoLink) *prose.Link {
	src := []byte(w.file.Text[w.base:])
	label, to := string(n.Label(src)), string(n.URL(src))
	if n.AutoLinkType == ast.AutoLinkEmail && !strings.HasPrefix(strings.ToLower(to), "mailto:") {
		to = "mailto:" + to
	}
	from := w.base + max(n.Pos(), 0)
	return &prose.Link{To: to, Line: prose.Line{prose.Text(label)}, Span: source.Span{From: from, To: from + len(label) + 2}}
}

func (w *writer) rawHTML(line prose.Line, n *ast.RawHTML) prose.Line {
	if n.Segments.Len() == 0 {
		return line
	}
	first, last := n.Segments.At(0), n.Segments.At(n.Segments.Len()-1)
	span := w.span(first.Start, last.Stop)
	words := w.file.Slice(span)
	if w.reportHTML(span, words) {
		return line
	}
	return append(line, prose.Text(words))
}

// slot reads a value in braces and the words after it that change how it prints.
func (w *writer) slot(n *slotNode) prose.Slot {
	after := ""
	if t, ok := n.NextSibling().(*ast.Text); ok && t.Segment.Start == n.shut {
		after = w.file.Text[w.base+t.Segment.Start : w.base+t.Segment.Stop]
	}
	slot, taken := w.addSlot(w.base+n.open, w.base+n.shut, after)
	w.skip = n.shut + taken
	return slot
}

// addSlot reads the value between two offsets of the file, braces included. It returns how many bytes of the words after it
// belong to it.
func (w *writer) addSlot(open, shut int, after string) (prose.Slot, int) {
	words := w.file.Text[open+1 : shut-1]
	if strings.Contains(words, `\|`) {
		words = strings.ReplaceAll(words, `\|`, " |") // in a table a bar is written so; the width stays
	}
	f, fs := formula.Parse(w.file, open+1, words)
	w.fs = append(w.fs, fs...)
	s := pattern.Slot{Formula: f, Span: source.Span{From: open, To: shut}}
	taken := 0
	s.Form, s.Noun, taken = slotForm(after)
	w.p.Slots = append(w.p.Slots, s)
	return prose.Slot{Index: len(w.p.Slots) - 1}, taken
}

// slotForm reads the words right after a value: "th", " times" or a noun that is counted.
func slotForm(after string) (form pattern.SlotForm, noun string, taken int) {
	if word := leadingWord(after); word == "th" || word == "nd" || word == "rd" {
		return pattern.Ordinal, "", len(word)
	}
	if !strings.HasPrefix(after, " ") {
		return pattern.Figure, "", 0
	}
	word := leadingWord(after[1:])
	switch {
	case word == "times":
		return pattern.Times, "", 1 + len(word)
	case isCounted(word):
		return pattern.Counted, word, 1 + len(word)
	}
	return pattern.Figure, "", 0
}

// leadingWord returns the letters a text begins with.
func leadingWord(s string) string {
	for i, r := range s {
		if (r < 'a' || r > 'z') && r != '-' {
			if r >= '0' && r <= '9' || r >= 'A' && r <= 'Z' || r == '_' {
				return "" // "sts2" is no word
			}
			return s[:i]
		}
	}
	return s
}

// isCounted reports whether a word is a noun for many that has another form for one.
func isCounted(noun string) bool {
	switch noun {
	case "sts", "stitches", "rows", "rounds", "rnds", "chs", "chains", "sps", "spaces", "loops", "repeats", "shells", "clusters",
		"increases", "decreases", "row-ends", "corners", "sides", "edges", "motifs", "squares", "blocks", "strips", "panels", "pieces",
		"markers", "buttons", "buttonholes", "balls", "skeins", "hanks":
		return true
	}
	return false
}
