package site

import (
	"slices"
	"strings"

	"foundrow/internal/page"
	"foundrow/internal/source"
)

// The folders of a studio.
const (
	studioFile     = "content/studio.toml"
	patternsFolder = "content/patterns"
	pagesFolder    = "content/pages"
	sizesFolder    = "content/sizes"
	stitchesFolder = "content/stitches"
	layoutsFolder  = "layouts"
)

// reserved are the addresses that the site needs for itself, so that no plain page may have them.
var reserved = append([]string{"patterns", "assets"}, filters...)

// filters are the first parts of the addresses of the catalogue's pages, but for the front page.
var filters = []string{"kind", "skill", "weight"}

// A leaf is one manuscript: a pattern or a plain page.
type leaf struct {
	part    string // "patterns/millrace", "pages/about"
	slug    string
	file    string
	folder  string // where what lies beside it lies
	address string
	plain   bool
	barred  source.Findings // why it cannot be published under its name
}

// A survey is what a studio has, before any of it is read.
type survey struct {
	leaves    []leaf            // in the order of their parts
	addresses map[string]string // of every leaf, with its part
	findings  source.Findings   // of no leaf
}

// survey looks over the studio's folders. What cannot be listed is a finding; a folder that is not there has nothing in it.
func (b *build) survey() survey {
	s := survey{addresses: map[string]string{}}
	for _, name := range b.list(patternsFolder, &s.findings) {
		if slug, folder := strings.CutSuffix(name, "/"); folder && !hidden(name) {
			s.leaves = append(s.leaves, leaf{
				part: "patterns/" + slug, slug: slug, address: page.PatternAddress(slug),
				folder: patternsFolder + "/" + slug, file: patternsFolder + "/" + slug + "/pattern.md",
			})
		} else if strings.HasSuffix(name, ".md") && !hidden(name) {
			slug := strings.TrimSuffix(name, ".md")
			s.findings = append(s.findings, source.Finding{
				Rule: "misplaced", Place: first(patternsFolder + "/" + name),
				Message: "a pattern has a folder of its own, with its photos beside it",
				Fix:     "move it to " + patternsFolder + "/" + slug + "/pattern.md",
			})
		}
	}
	for _, name := range b.list(pagesFolder, &s.findings) {
		if slug, is := strings.CutSuffix(name, ".md"); is && !hidden(name) {
			s.leaves = append(s.leaves, leaf{
				part: "pages/" + slug, slug: slug, address: page.PlainAddress(slug), plain: true,
				folder: pagesFolder, file: pagesFolder + "/" + name,
			})
		}
	}
	slices.SortFunc(s.leaves, func(a, b leaf) int { return strings.Compare(a.part, b.part) })
	s.bar()
	return s
}

// bar finds the leaves that cannot be published under their names.
func (s *survey) bar() {
	same := map[string][]int{} // by the address as a careless disk or reader sees it
	for i, l := range s.leaves {
		s.addresses[l.address] = l.part
		address := strings.ToLower(l.address)
		same[address] = append(same[address], i)
	}
	for i := range s.leaves {
		l := &s.leaves[i]
		if plain := slugOf(l.slug); plain != l.slug {
			what, name := "folder", plain
			if l.plain {
				what, name = "file", plain+".md"
			}
			finding := source.Finding{
				Rule: "address", Place: first(l.file),
				Message: "the " + what + " " + quoted(l.slug) + " cannot be part of an address: letters a to z, digits, - and _ can",
			}
			if plain != "" {
				finding.Fix = "rename the " + what + " to " + name
			}
			l.barred = append(l.barred, finding)
		}
		if l.plain && slices.Contains(reserved, strings.ToLower(l.slug)) {
			l.barred = append(l.barred, source.Finding{
				Rule: "same-address", Place: first(l.file),
				Message: "the address " + quoted(l.slug) + " is the site's own: " + source.List(reserved, "and") + " are taken",
				Fix:     "rename the file",
			})
		}
		for _, other := range same[strings.ToLower(l.address)] {
			if other != i {
				l.barred = append(l.barred, source.Finding{
					Rule: "same-address", Place: first(l.file),
					Message: "this and " + s.leaves[other].file + " have one address, " + strings.ToLower(l.address),
					Fix:     "rename one of them",
				})
			}
		}
	}
}

// slugOf returns a name with what cannot stand in an address replaced by a hyphen.
func slugOf(name string) string {
	var b strings.Builder
	for _, r := range name {
		switch {
		case r >= 'a' && r <= 'z', r >= 'A' && r <= 'Z', r >= '0' && r <= '9', r == '-', r == '_':
			b.WriteRune(r)
		default:
			b.WriteByte('-')
		}
	}
	slug := strings.Trim(b.String(), "-")
	if slug == strings.Trim(name, "-") {
		return name
	}
	return slug
}

// hidden reports whether a name is that of a file which editors and systems leave lying about.
func hidden(name string) bool {
	return strings.HasPrefix(name, ".") || strings.HasPrefix(name, "#") || strings.HasSuffix(name, "~")
}

// first is the place of what concerns a file as a whole.
func first(file string) source.Place { return source.Place{File: file, Line: 1, Column: 1} }

func quoted(s string) string { return "“" + s + "”" }
