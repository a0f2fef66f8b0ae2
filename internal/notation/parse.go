package notation

import (
	"strconv"
	"strings"

	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

// Input is a block of rows as it stands in its file.
type Input struct {
	File     *source.File
	Body     source.Span        // the lines of the block
	Terms    stitch.Terms       // the terms it is written in
	Specials []string           // names of the pattern's own stitches
	Sizes    []string           // the sizes offered; none for a pattern of one size
	Slot     func(from int) int // index of the value whose brace stands at the offset, or -1; nil when there are none
}

// Parse reads a block. What cannot be read becomes *Unread or *UnreadClause with a finding of the rule unread, never nothing; the
// tree always covers every line.
func Parse(in Input) (*Block, source.Findings) {
	p := parser{in: in, text: in.File.Text, specials: in.Specials}
	p.sc = scanner{text: in.File.Text, terms: in.Terms, slot: in.Slot, toks: make([]token, 0, 128)}
	b := &Block{}
	from, to := max(in.Body.From, 0), min(in.Body.To, len(in.File.Text))
	p.learnNames(from, to)
	for from < to {
		end := strings.IndexByte(p.text[from:to], '\n')
		if end < 0 {
			end = to
		} else {
			end += from
		}
		if l := p.line(from, end); l != nil {
			b.Lines = append(append(b.Lines, l), p.more...)
			p.more = nil
		}
		from = end + 1
	}
	b.Edges = p.edges
	return b, p.fs
}

// Clauses reads what a special stitch is worked as, "5 dc in next st", where it can be read; ok is false where it is words only.
func Clauses(in Input) (clauses []Clause, ok bool) {
	p := parser{in: in, text: in.File.Text, specials: in.Specials}
	p.sc = scanner{text: in.File.Text, terms: in.Terms, slot: in.Slot}
	p.begin(in.Body.From, in.Body.To)
	clauses, _ = p.clauses()
	return clauses, len(clauses) > 0 && len(p.fs) == 0
}

// longest is how many bytes of one line are read; no row of print comes near.
const longest = 1 << 12

// A parser reads one block, line by line. It looks at one window of the tokens of a line: a bracket is read by narrowing the window.
type parser struct {
	in       Input
	text     string
	sc       scanner
	t        []token // of the line, ending in tEnd
	i        int     // the token looked at
	end      int     // the window ends before this token
	fs       source.Findings
	specials []string

	last   stitch.Stitch // the stitch worked last, for "2 in next"
	loop   stitch.Loop   // named by the target being read
	loops  bool          // whether one was named
	open   int           // how many repeats are open in the list of clauses being read
	far    int           // the furthest token at which something else was wanted
	wanted string        // what
	only   *Only         // of the clauses being read
	more   []Line        // further rules of the line just read
	edges  []Edge        // of other pieces, as they are met
	// foreignAt are the places of words of the other terms that were reported, because a place may be read several times
	foreignAt []int
	one       [1]Clause // what single returns
}

// report adds a finding, unless it was made already when the same words were read another way.
func (p *parser) report(s source.Span, rule, message, fix string) {
	place := p.in.File.Place(s)
	for k := len(p.fs) - 1; k >= 0 && k > len(p.fs)-16; k-- {
		if p.fs[k].Rule == rule && p.fs[k].Place == place {
			return
		}
	}
	p.fs.Report(p.in.File, s, rule, message, fix)
}

// begin cuts a line into tokens and reports what the scanner stumbled over.
func (p *parser) begin(from, to int) {
	p.sc.scan(from, to)
	p.t, p.i, p.end = p.sc.toks, 0, len(p.sc.toks)-1
	p.last, p.far, p.wanted, p.open = stitch.Stitch{}, 0, "", 0
	p.only = nil
	const few = 8 // findings of a kind in one line: one more tells nobody anything
	p.sc.braces = p.sc.braces[:min(len(p.sc.braces), few)]
	p.sc.loose = p.sc.loose[:min(len(p.sc.loose), few)]
	p.sc.large = p.sc.large[:min(len(p.sc.large), few)]
	for _, s := range p.sc.braces {
		p.report(s, "trade-brace", quoted(p.text[s.From:s.To])+" opens no value here", "write ( ) or [ ]; a value has a brace at either end, {front}")
	}
	for _, s := range p.sc.loose {
		p.report(s, "unclosed-bracket", quoted(p.text[s.From:s.To])+" has no partner", "close the bracket, or take it out")
	}
	for _, s := range p.sc.large {
		p.report(s, "count-too-large", "a count of more than "+strconv.Itoa(most), "write the number that is meant")
	}
}

// single returns a list of one clause, which holds until the next is asked for.
func (p *parser) single(c Clause) []Clause {
	p.one[0] = c
	return p.one[:]
}

func quoted(s string) string { return "`" + s + "`" }

// line reads one line of the block; nil for a blank one.
func (p *parser) line(from, to int) Line {
	text := strings.TrimSpace(p.text[from:to])
	if text == "" {
		return nil
	}
	start := from + strings.Index(p.text[from:to], text)
	whole := source.Span{From: start, To: start + len(text)}
	if len(text) > longest {
		p.report(source.Span{From: start, To: start + 40}, "unread", "a line of more than "+strconv.Itoa(longest)+" letters", "write one row a line")
		return &Unread{placed{Span: whole}, text}
	}
	p.begin(whole.From, whole.To)
	at := placed{Span: whole, Only: p.sizesOnly()}
	if l := p.named(at); l != nil {
		return l
	}
	if l := p.labelled(at); l != nil {
		return l
	}
	return p.unlabelled(at)
}

// unread makes a clause of the words from the i-th token to the next place where something can begin, with a finding.
func (p *parser) unread(i int) Clause {
	p.i = max(p.i, i)
	if p.i == i {
		p.i++
	}
	for !p.done() {
		switch t := p.at(0); t.kind {
		case tComma, tSemi, tStop, tStar, tShut:
			goto found
		case tOpen:
			if p.bracketAt(p.i) != remark {
				goto found
			}
			p.i = min(t.n+1, p.end)
		default:
			p.i++
		}
	}
found:
	span := p.since(i)
	wanted := p.wanted
	if wanted == "" || p.far < i || p.far > p.i {
		wanted = "a stitch, a chain, a repeat or a bracket"
	}
	p.far, p.wanted = 0, ""
	return &UnreadClause{placed: placed{Span: span}, Text: p.text[span.From:span.To], Wanted: wanted}
}

// reportUnread reports words that were not understood, and what could have stood there. A word close to the name of a stitch is probably
// that.
func (p *parser) reportUnread(u *UnreadClause) {
	fix := "say it in the words of the handbook, or put it in quotation marks with its effect: \"…\" (uses 1, makes 1)"
	if near := p.nearStitch(u.Text); near != "" {
		fix = "did you mean " + quoted(near) + "?"
	}
	p.report(u.Span, "unread", quoted(u.Text)+" is not understood; expected "+u.Wanted, fix)
}

// nearStitch returns the abbreviation of a stitch that the first word of a text comes close to, or "".
func (p *parser) nearStitch(text string) string {
	word, _, _ := strings.Cut(text, " ")
	if len(word) < 3 || len(word) > 12 {
		return ""
	}
	var names []string
	for _, e := range stitch.Entries() {
		names = append(names, e.In(p.in.Terms).Abbr)
	}
	return source.Nearest(word, append(names, p.specials...))
}
