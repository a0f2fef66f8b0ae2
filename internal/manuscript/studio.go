package manuscript

import (
	"slices"
	"strings"

	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
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

var stitchesKeys = []key[[]pattern.Special]{
	{"special", isTable, `a table for each stitch: [special.cl3]`, true, func(r *reader, list *[]pattern.Special, n *node) { *list = r.specials(n) }},
}

// ReadStitches reads content/stitches/<name>.toml: special stitches shared by several patterns, in tables [special.NAME] with the
// same keys as in the front matter of one.
func ReadStitches(f *source.File) ([]pattern.Special, source.Findings) {
	root, whole, fs := readTOML(f, source.Span{To: len(f.Text)})
	r := reader{file: f, whole: whole, fs: fs}
	var list []pattern.Special
	walk(&r, stitchesKeys, root, &list, "a file of stitches")
	r.fs.Sort()
	return list, r.fs
}
