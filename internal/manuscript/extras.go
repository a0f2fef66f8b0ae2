package manuscript

import (
	"slices"
	"strings"

	"foundrow/internal/measure"
	"foundrow/internal/pattern"
)

// readTurning reads what the turning chain of a stitch counts as.
func readTurning(r *reader, p *pattern.Pattern, t *node) {
	for _, n := range t.entries {
		if n.broken {
			continue
		}
		if n.kind != isText {
			r.wrongType(n, isText, n.name+` = "does not count"`)
			continue
		}
		if w, ok := r.oneOf(n, []string{"counts", "does not count"}); ok {
			p.Turning = append(p.Turning, pattern.Turning{Stitch: pattern.Words{Text: n.name, Span: n.key}, Counts: w.Text == "counts", Says: w})
		}
	}
}

var specialKeys = []key[pattern.Special]{
	{"name", isText, `"3-dc cluster"`, true, func(r *reader, s *pattern.Special, n *node) { s.Name = n.words }},
	{"how", isText, `"dc3tog in next st"`, true, func(r *reader, s *pattern.Special, n *node) { s.How = wordsOf(n) }},
	{"uses", isWhole | isDecimal, `1`, false, func(r *reader, s *pattern.Special, n *node) { s.Uses, _ = r.number(n) }},
	{"makes", isWhole | isDecimal, `1`, false, func(r *reader, s *pattern.Special, n *node) { s.Makes, _ = r.number(n) }},
	{"height", isText, `"dc"`, false, func(r *reader, s *pattern.Special, n *node) { s.Height = n.words }},
}

// specials reads stitches of the designer's own. What they are called is the trade's matter: "beg cl", "V-st".
func (r *reader) specials(n *node) []pattern.Special {
	return group(r, specialKeys, n, func(n *node) pattern.Special { return pattern.Special{Abbr: pattern.Words{Text: n.name, Span: n.key}} })
}

// readOwn reads what a maker may put in for herself, with the question she is asked.
func readOwn(r *reader, p *pattern.Pattern, t *node) {
	var known []string
	for _, b := range p.Sizes.Body {
		known = append(known, b.Name)
	}
	for _, d := range slices.Concat(p.Body, p.Counts) {
		known = append(known, d.Name.Text)
	}
	for _, m := range p.Measures {
		known = append(known, m.Name.Text)
	}
	for _, n := range t.entries {
		switch {
		case n.broken:
		case n.kind != isText:
			r.wrongType(n, isText, n.name+` = "around the fullest part"`)
		case !slices.Contains(known, n.name):
			if r.whole {
				unknownName(&r.fs, r.file, n.key, n.name, "measurement or value", known)
			}
		default:
			p.Own = append(p.Own, pattern.Own{Name: pattern.Words{Text: n.name, Span: n.key}, Question: n.words})
		}
	}
}

var notionKeys = []key[pattern.Notion]{
	{"what", isText, `"buttons, 18 mm"`, true, func(r *reader, o *pattern.Notion, n *node) { o.What = n.words }},
	{"amount", isValue, `"5 (5, 6)"`, false, func(r *reader, o *pattern.Notion, n *node) { o.Amount = r.parts(n) }},
}

// readNotions reads what is needed beside yarn and hooks: words, or a table with how many each size takes.
func readNotions(r *reader, p *pattern.Pattern, t *node) {
	for _, n := range t.entries {
		notion := pattern.Notion{Name: pattern.Words{Text: n.name, Span: n.key}}
		switch {
		case n.broken:
			continue
		case n.kind == isText:
			notion.What = n.words
		case n.kind == isTable:
			walk(r, notionKeys, n, &notion, "[notions."+n.name+"]")
		default:
			r.wrongType(n, isText|isTable, n.name+` = { what = "buttons, 18 mm", amount = "5 (5, 6)" }`)
			continue
		}
		p.Notions = append(p.Notions, notion)
	}
}

var filmKeys = []key[pattern.Film]{
	{"page", isText, `"https://…"`, false, func(r *reader, f *pattern.Film, n *node) {
		if !strings.HasPrefix(n.words, "https://") || len(n.words) == len("https://") {
			r.fs.Report(r.file, n.text, "bad-address", "`"+n.words+"` is no address of a page", `write it whole: page = "https://…"`)
			return
		}
		f.Page = wordsOf(n)
	}},
	{"file", isText, `"film.mp4"`, false, func(r *reader, f *pattern.Film, n *node) { f.File = r.besides(n) }},
	{"runs", isText, `"24:10"`, false, func(r *reader, f *pattern.Film, n *node) {
		total, ok := seconds(n.words)
		if !ok || total == 0 {
			r.fs.Report(r.file, n.text, "bad-stamp", "`"+n.words+"` is no running time", `write minutes and seconds: runs = "24:10", or "1:02:30" with hours`)
			return
		}
		f.Runs = total
	}},
}

func readFilm(r *reader, p *pattern.Pattern, n *node) {
	walk(r, filmKeys, n, &p.Film, "[film]")
	if n.entry("page") == nil && n.entry("file") == nil {
		r.missing(n, "page", `"https://…", or file = "film.mp4"`, "[film]")
	}
}

// besides reads the name of a file that lies beside the pattern.
func (r *reader) besides(n *node) pattern.Words {
	if w := n.words; w == "" || strings.ContainsAny(w, `\:`) || strings.HasPrefix(w, "/") || slices.Contains(strings.Split(w, "/"), "..") {
		r.fs.Report(r.file, n.span, "bad-address", "`"+w+"` is no file beside the pattern", "put it into the folder of the pattern and write its name")
		return pattern.Words{}
	}
	return wordsOf(n)
}

var photoKeys = []key[pattern.Photo]{
	{"file", isText, `"front.jpg"`, true, func(r *reader, p *pattern.Photo, n *node) { p.From = r.besides(n) }},
	{"alt", isText, `"the pullover from the front, worn with jeans"`, true, func(r *reader, p *pattern.Photo, n *node) { p.Alt = n.words }},
	{"shows", isText | isWhole, `"M"`, false, func(r *reader, p *pattern.Photo, n *node) {
		if i, ok := r.sizeNamed(r.offered(), n, r.said(n)); ok {
			p.Shows = r.p.Sizes.Names[i]
		}
	}},
	{"ease", isText, `"8 cm"`, false, func(r *reader, p *pattern.Photo, n *node) {
		num, name, ok := splitQuantity(n.words)
		if unit, _ := measure.ParseUnit(name); !ok || num.IsLost() || unit != measure.Centimetre && unit != measure.Inch {
			r.fs.Report(r.file, n.text, "unread-quantity", "`"+n.words+"` is no ease", `write ease = "8 cm"; less than the body has a minus`)
			return
		}
		p.Ease = n.words
	}},
}

func readPhotos(r *reader, p *pattern.Pattern, n *node) {
	p.Photos = group(r, photoKeys, n, func(n *node) pattern.Photo { return pattern.Photo{Name: r.name(n)} })
}

// readCredits reads who did what: a name, or a list of them, under the words for it.
func readCredits(r *reader, p *pattern.Pattern, t *node) {
	for _, n := range t.entries {
		switch {
		case n.broken:
		case n.kind == isText:
			p.Credits = append(p.Credits, pattern.Credit{Role: n.name, Name: n.words})
		case n.kind == isList && !slices.ContainsFunc(n.items, func(i *node) bool { return i.kind != isText }):
			for _, item := range n.items {
				p.Credits = append(p.Credits, pattern.Credit{Role: n.name, Name: item.words})
			}
		default:
			r.wrongType(n, isText|isList, `"`+n.name+`" = "…"`)
		}
	}
}

// readTested reads who made which sizes by hand.
func readTested(r *reader, p *pattern.Pattern, t *node) {
	for _, n := range t.entries {
		switch {
		case n.broken:
		case n.kind&(isText|isWhole|isList) == 0:
			r.wrongType(n, isText|isList, `"`+n.name+`" = ["S", "M"]`)
		default:
			p.Tested = append(p.Tested, pattern.Tested{By: n.name, Sizes: r.sizeList(r.offered(), n)})
		}
	}
}
