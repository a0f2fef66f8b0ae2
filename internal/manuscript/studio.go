package manuscript

import (
	"slices"
	"strings"

	"foundrow/internal/measure"
	"foundrow/internal/notation"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

var studioKeys = []key[pattern.Studio]{
	{"title", isText, `"Wren & Heron"`, true, func(r *reader, s *pattern.Studio, n *node) { s.Title = n.words }},
	{"address", isText, `"https://example.org/"`, true, readAddress},
	{"language", isText, `"en"`, false, readLanguage},
	{"terms", isText, `"us"`, false, func(r *reader, s *pattern.Studio, n *node) { s.Terms = r.terms(n, s.Terms) }},
	{"units", isText, `"cm"`, false, func(r *reader, s *pattern.Studio, n *node) { s.Tape.Unit = r.tapeUnit(n, s.Tape.Unit) }},
	{"inch", isText, `"garment"`, false, readInch},
	{"rights", isText, `"Text and photos © the studio; please print for yourself only"`, false, func(r *reader, s *pattern.Studio, n *node) { s.Rights = n.words }},
	{"contact", isText, `"hello@example.org"`, false, func(r *reader, s *pattern.Studio, n *node) { s.Contact = n.words }},
	{"editions", isList, `["us", "uk"]`, false, readEditions},
}

// ReadStudio reads content/studio.toml. What it does not say is as usual: English pages that open with US terms and are published
// in UK terms too, lengths reckoned in centimetres, and an inch of a garment as 2.5 of them.
func ReadStudio(f *source.File) (pattern.Studio, source.Findings) {
	root, whole, fs := readTOML(f, source.Span{To: len(f.Text)})
	r := reader{file: f, whole: whole, fs: fs}
	s := pattern.Studio{File: f, Language: "en", Tape: measure.Tape{Unit: measure.Centimetre, Inch: measure.GarmentInch}}
	walk(&r, studioKeys, root, &s, "studio.toml")
	if s.Editions == nil {
		s.Editions = []pattern.Terms{pattern.US, pattern.UK}
	}
	// The terms a page opens with come first, whichever order the editions are written in.
	slices.SortStableFunc(s.Editions, func(a, b pattern.Terms) int {
		switch {
		case a == s.Terms && b != s.Terms:
			return -1
		case b == s.Terms && a != s.Terms:
			return 1
		}
		return 0
	})
	r.fs.Sort()
	return s, r.fs
}

func readAddress(r *reader, s *pattern.Studio, n *node) {
	_, rest, ok := strings.Cut(n.words, "://")
	if !ok || !strings.HasPrefix(n.words, "https://") && !strings.HasPrefix(n.words, "http://") || rest == "" || strings.ContainsAny(rest, " ?#\"<>") || rest[0] == '/' {
		r.fs.Report(r.file, n.text, "bad-address", "`"+n.words+"` is no address of a site", `write it whole: address = "https://example.org/"`)
		return
	}
	s.Address = strings.TrimRight(n.words, "/") + "/"
}

// readLanguage reads a language tag in the shape of BCP 47 (RFC 5646): "en", "en-GB".
func readLanguage(r *reader, s *pattern.Studio, n *node) {
	for i, part := range strings.Split(n.words, "-") {
		letters := len(part) > 0 && len(part) <= 8 && strings.IndexFunc(part, func(c rune) bool { return c > 127 || !isBare(byte(c)) || c == '_' }) < 0
		if !letters || i == 0 && len(part) > 3 {
			r.fs.Report(r.file, n.text, "unknown-word", "`"+n.words+"` is no language tag", `write its short name: language = "en", or "en-GB"`)
			return
		}
	}
	s.Language = n.words
}

func readInch(r *reader, s *pattern.Studio, n *node) {
	if w, ok := r.oneOf(n, []string{"garment", "exact"}); ok && w.Text == "exact" {
		s.Tape.Inch = measure.InternationalInch
	}
}

func readEditions(r *reader, s *pattern.Studio, n *node) {
	for _, item := range n.items {
		if item.kind != isText {
			r.wrongType(item, isText, `editions = ["us", "uk"]`)
			continue
		}
		if _, ok := r.oneOf(item, []string{"us", "uk"}); !ok {
			continue
		}
		if t := r.terms(item, pattern.US); !slices.Contains(s.Editions, t) {
			s.Editions = append(s.Editions, t)
		}
	}
}

// A stitchesFile is what content/stitches/<name>.toml says.
type stitchesFile struct {
	terms pattern.Terms
	list  []pattern.Special
}

var stitchesKeys = []key[stitchesFile]{
	{"terms", isText, `"us"`, false, func(r *reader, s *stitchesFile, n *node) { s.terms = r.terms(n, s.terms) }},
	{"special", isTable, `a table for each stitch: [special.cl3]`, true, func(r *reader, s *stitchesFile, n *node) { s.list = r.specials(n) }},
}

// ReadStitches reads content/stitches/<name>.toml: special stitches shared by several patterns, in tables [special.NAME] with the
// same keys as in the front matter of one. The file is in US terms unless it says terms = "uk".
func ReadStitches(f *source.File) ([]pattern.Special, source.Findings) {
	root, whole, fs := readTOML(f, source.Span{To: len(f.Text)})
	r := reader{file: f, whole: whole, fs: fs}
	var file stitchesFile
	walk(&r, stitchesKeys, root, &file, "a file of stitches")
	in := notation.Input{File: f, Terms: file.terms}
	for _, s := range file.list {
		in.Specials = append(in.Specials, s.Abbr.Text)
	}
	for i := range file.list {
		file.list[i].Terms = file.terms
		readSpecial(&file.list[i], in)
	}
	r.fs.Sort()
	return file.list, r.fs
}

// shared returns the studio's stitches that the text of a pattern names and that it does not define itself, worded in its terms.
func shared(p *pattern.Pattern, text string, stitches []pattern.Special) []pattern.Special {
	var used []pattern.Special
	for _, s := range stitches {
		own := slices.ContainsFunc(p.Special, func(o pattern.Special) bool { return o.Abbr.Text == s.Abbr.Text })
		if own || !mentions(text, s.Abbr.Text) {
			continue
		}
		if s.Terms != p.Terms {
			s.How.Text = stitch.Carry(s.How.Text, s.Terms, p.Terms)
			s.Height = stitch.Carry(s.Height, s.Terms, p.Terms)
		}
		s.Abbr.Span, s.How.Span = source.Span{}, source.Span{} // they are places of another file
		used = append(used, s)
	}
	return used
}

// mentions reports whether a word stands in a text by itself, or behind a number.
func mentions(text, word string) bool {
	for at := 0; ; at += len(word) {
		i := strings.Index(text[at:], word)
		if i < 0 {
			return false
		}
		at += i
		before, after := at == 0 || !isLetter(text[at-1]), at+len(word) == len(text) || !isLetter(text[at+len(word)])
		if before && after {
			return true
		}
	}
}

func isLetter(c byte) bool {
	return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c == '_' || c >= 0x80
}
