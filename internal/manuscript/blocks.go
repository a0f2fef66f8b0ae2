package manuscript

import (
	"strconv"
	"strings"
	"unicode"

	"github.com/yuin/goldmark/ast"
	tables "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"

	"foundrow/internal/pattern"
	"foundrow/internal/prose"
	"foundrow/internal/source"
)

// deepest is how many quotes and lists may open on one line. What goes deeper is no text, and takes more time than it is worth.
const deepest = 100

// A writer turns the tree of package goldmark into that of package prose. Words are never lost: what has no place in prose is
// kept as it is written, or has a finding.
type writer struct {
	file   *source.File
	base   int // where the text begins in the file: offsets of goldmark count from there
	p      *pattern.Pattern
	fs     source.Findings
	ids    map[string]int
	skip   int             // words up to this offset are part of the slot before them
	called map[string]bool // the link definitions that are used
}

// readText reads the written pattern, from an offset of the file to its end, into p.
func readText(f *source.File, from int, p *pattern.Pattern) source.Findings {
	w := &writer{file: f, base: from, p: p, ids: map[string]int{}, called: map[string]bool{}}
	if at, ok := deepLine(f.Text, from); ok {
		w.fs.Report(f, source.At(at), "too-deep", "more than "+strconv.Itoa(deepest)+" quotes and lists open on this line, one inside the other", "take the signs at its beginning away; the text is not read before that")
		return w.fs
	}
	root := markdown.Parse(text.NewReader([]byte(f.Text[from:])))
	p.Text = w.blocks(root)
	w.definitions(root)
	w.checkPieces()
	return w.fs
}

// deepLine finds a line on which more quotes and lists open than can be meant.
func deepLine(text string, from int) (int, bool) {
	for at := from; at < len(text); at = lineEnd(text, at) {
		depth := 0
		for i := at; i < len(text) && strings.IndexByte("> \t-+*.)0123456789", text[i]) >= 0; i++ {
			if text[i] == '>' || (text[i] == ' ' || text[i] == '\t') && i > at && strings.IndexByte("-+*.)", text[i-1]) >= 0 {
				depth++
			}
		}
		if depth > deepest {
			return at, true
		}
	}
	return 0, false
}

// span returns offsets of goldmark as a span of the file.
func (w *writer) span(from, to int) source.Span {
	return source.Span{From: w.base + from, To: w.base + to}
}

// lines returns the span of the lines of a block.
func (w *writer) lines(n ast.Node) source.Span {
	l := n.Lines()
	if l.Len() == 0 {
		return source.At(w.base + max(n.Pos(), 0))
	}
	return source.Span{From: w.base + l.At(0).Start, To: w.base + l.At(l.Len()-1).Stop}
}

func (w *writer) blocks(parent ast.Node) []prose.Block {
	var blocks []prose.Block
	for n := parent.FirstChild(); n != nil; n = n.NextSibling() {
		switch n := n.(type) {
		case *ast.Heading:
			blocks = append(blocks, w.heading(n))
		case *ast.Paragraph, *ast.TextBlock:
			if line := w.line(n); len(line) > 0 {
				blocks = append(blocks, &prose.Paragraph{Line: line, Span: w.lines(n)})
			}
		case *ast.List:
			blocks = append(blocks, w.list(n))
		case *ast.Blockquote:
			blocks = append(blocks, &prose.Quote{Blocks: w.blocks(n)})
		case *ast.ThematicBreak:
			blocks = append(blocks, &prose.Break{})
		case *ast.FencedCodeBlock:
			blocks = append(blocks, w.fenced(n))
		case *ast.CodeBlock:
			blocks = append(blocks, &prose.Code{Text: w.raw(n.Lines()), Span: w.lines(n)})
		case *tables.Table:
			blocks = append(blocks, w.table(n))
		case *ast.HTMLBlock:
			if b := w.html(n); b != nil {
				blocks = append(blocks, b)
			}
		case *ast.LinkReferenceDefinition: // looked at when it is known what it was used for
		default:
			blocks = append(blocks, w.blocks(n)...)
		}
	}
	return blocks
}

// raw returns the lines of a block as they are written.
func (w *writer) raw(lines *text.Segments) string {
	if lines.Len() == 0 {
		return ""
	}
	var b strings.Builder
	for i := range lines.Len() {
		s := lines.At(i)
		b.WriteString(strings.Repeat(" ", s.Padding))
		b.WriteString(strings.TrimRight(w.file.Text[w.base+s.Start:w.base+s.Stop], "\r\n") + "\n")
	}
	return b.String()
}

func (w *writer) list(n *ast.List) *prose.List {
	l := &prose.List{Ordered: n.IsOrdered(), Tight: n.IsTight, Start: n.Start}
	for item := n.FirstChild(); item != nil; item = item.NextSibling() {
		l.Items = append(l.Items, w.blocks(item))
	}
	return l
}

// heading reads a heading; a time before its words is the moment of the film it belongs to.
func (w *writer) heading(n *ast.Heading) *prose.Heading {
	h := &prose.Heading{Level: n.Level, Film: -1, Span: w.lines(n), Line: w.line(n)}
	if len(h.Line) > 0 {
		if words, ok := h.Line[0].(prose.Text); ok {
			h.Line[0] = w.stamp(h, words)
		}
	}
	h.ID = w.id(h.Line.Words(nil))
	return h
}

// stamp takes the time off the words of a heading.
func (w *writer) stamp(h *prose.Heading, words prose.Text) prose.Text {
	first, rest, _ := strings.Cut(string(words), " ")
	if !strings.Contains(first, ":") || strings.Trim(first, "0123456789:") != "" || first[0] == ':' || strings.HasSuffix(first, ":") {
		return words
	}
	moment, ok := seconds(first)
	if !ok {
		w.fs.Report(w.file, source.Span{From: h.Span.From, To: h.Span.From + len(first)}, "bad-stamp", "`"+first+"` is no moment of a film", "write minutes and seconds, 11:40, or hours before them, 1:02:30")
		return words
	}
	h.Film = moment
	return prose.Text(strings.TrimLeft(rest, " "))
}

// id makes the address of a heading out of its words, one of its own in the document.
func (w *writer) id(words string) string {
	var b strings.Builder
	for _, r := range strings.ToLower(words) {
		switch {
		case unicode.IsLetter(r) || unicode.IsDigit(r):
			b.WriteRune(r)
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
	}
	plain := strings.TrimRight(b.String(), "-")
	if plain == "" {
		plain = "section"
	}
	id := plain
	for w.ids[id] > 0 {
		w.ids[plain]++
		id = plain + "-" + strconv.Itoa(w.ids[plain])
	}
	w.ids[id]++
	return id
}

var aligns = map[tables.Alignment]prose.Align{tables.AlignLeft: prose.Left, tables.AlignCenter: prose.Centre, tables.AlignRight: prose.Right}

func (w *writer) table(n *tables.Table) *prose.Table {
	t := &prose.Table{}
	for _, a := range n.Alignments {
		t.Align = append(t.Align, aligns[a])
	}
	from := max(n.Pos(), 0)
	to := from
	for row := n.FirstChild(); row != nil; row = row.NextSibling() {
		cells := make([]prose.Line, 0, len(t.Align))
		end := max(row.Pos(), 0)
		for cell := row.FirstChild(); cell != nil; cell = cell.NextSibling() {
			cells = append(cells, w.line(cell))
			if cell.Lines().Len() > 0 {
				end = max(end, cell.Lines().At(0).Stop)
			}
		}
		to = max(to, end)
		if row.Kind() == tables.KindTableHeader {
			t.Head = cells
			continue
		}
		w.tooManyCells(end, len(cells))
		t.Rows = append(t.Rows, cells)
	}
	t.Span = w.span(from, to)
	return t
}

// tooManyCells reports words after the last cell of a row: a table has as many columns as its heading.
func (w *writer) tooManyCells(end, columns int) {
	at := w.base + end
	rest := strings.TrimRight(w.file.Text[at:lineEnd(w.file.Text, at)], " \t\r\n")
	words := strings.TrimLeft(rest, " \t|")
	if words == "" {
		return
	}
	from := at + len(rest) - len(words)
	w.fs.Report(w.file, source.Span{From: from, To: at + len(rest)}, "table-cells", "this row has more cells than the "+strconv.Itoa(columns)+" of the table's heading",
		`give the heading as many; a | that is no border is written \|`)
}

// html keeps a block of HTML as text and reports it; a comment is left out.
func (w *writer) html(n *ast.HTMLBlock) prose.Block {
	span := w.lines(n)
	words := w.raw(n.Lines())
	if n.HasClosure() {
		words += w.file.Text[w.base+n.ClosureLine.Start : w.base+n.ClosureLine.Stop]
		span.To = w.base + n.ClosureLine.Stop
	}
	words = strings.TrimSpace(words)
	if w.reportHTML(span, words) {
		return nil
	}
	return &prose.Paragraph{Line: prose.Line{prose.Text(words)}, Span: span}
}

// reportHTML reports HTML, and whether it is a comment and nothing else.
func (w *writer) reportHTML(span source.Span, words string) bool {
	words = strings.TrimSpace(words)
	inside, opens := strings.CutPrefix(words, "<!--")
	if before, closes := strings.CutSuffix(inside, "-->"); opens && closes && !strings.Contains(before, "-->") {
		w.fs.Ask(w.file, span, "raw-html", "this comment is not printed", "delete it before you publish, if makers are not to miss it")
		return true
	}
	w.fs.Report(w.file, span, "raw-html", "this is HTML, which is not carried over: it would be printed as it stands", "write it in Markdown; a < that is no HTML is written \\<")
	return false
}

// definitions reports the lines that were read as the address of a link nobody calls: they are not printed, and a line that
// begins "[Note]: ..." may not have been meant for one.
func (w *writer) definitions(parent ast.Node) {
	for n := parent.FirstChild(); n != nil; n = n.NextSibling() {
		d, ok := n.(*ast.LinkReferenceDefinition)
		if !ok {
			if n.Type() == ast.TypeBlock {
				w.definitions(n)
			}
			continue
		}
		label := util.ToLinkReference(d.Label)
		if !w.called[label] {
			at := w.lines(d)
			w.fs.Report(w.file, at, "unused-address", "this line is read as the address of a link `["+string(d.Label)+"]`, which there is not, and is not printed",
				`write \[`+string(d.Label)+`] if it is text, or delete it`)
		}
	}
}
