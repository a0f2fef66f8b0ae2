package page

import (
	"path"
	"strings"

	"foundrow/internal/pattern"
)

// An address is where a page lies in the site, without a slash at its head and with one at its end: "patterns/millrace/".
// The front page is "". Assets and pictures are addressed by their file: "assets/pattern-1f3a.css".

// PatternAddress is where the first edition of a pattern's page lies; its photos lie beside it.
func PatternAddress(slug string) string { return "patterns/" + slug + "/" }

// PrintAddress is where the printable page of a pattern's page lies.
func PrintAddress(page string) string { return page + "print/" }

// Addresses are all the pages of a pattern in a studio: those of its editions, each with its printable one.
func Addresses(slug string, studio pattern.Studio) []string {
	var out []string
	for i, terms := range studio.Editions {
		page := editionAddress(slug, terms, i == 0)
		out = append(out, page, PrintAddress(page))
	}
	return out
}

// editionAddress is where an edition of a pattern lies: "patterns/millrace/uk/", and the first at the pattern's own address.
func editionAddress(slug string, terms pattern.Terms, first bool) string {
	if first {
		return PatternAddress(slug)
	}
	return PatternAddress(slug) + terms.String() + "/"
}

// PlainAddress is where a plain page lies.
func PlainAddress(slug string) string { return slug + "/" }

// FilterAddress is where the catalogue lies for one value of a filter: "kind/hat/".
func FilterAddress(filter, value string) string { return filter + "/" + value + "/" }

// FileAt is the file that holds the page of an address: "patterns/millrace/index.html".
func FileAt(address string) string { return address + "index.html" }

// Relative is the link from the page at one address to another address or file of the site. Links name the file, index.html
// and all, so that a site opened from a folder on disk works as one on a server does.
func Relative(from, to string) string {
	to, fragment, _ := strings.Cut(to, "#")
	if fragment != "" {
		fragment = "#" + fragment
	}
	if to == "" || strings.HasSuffix(to, "/") {
		to = FileAt(to)
	}
	shared := 0 // how much of both folders is the same
	for i := 0; i < min(len(from), len(to)) && from[i] == to[i]; i++ {
		if from[i] == '/' {
			shared = i + 1
		}
	}
	return strings.Repeat("../", strings.Count(from[shared:], "/")) + to[shared:] + fragment
}

// Target is where a link of a text leads: an address or file of the site, or, with ours false, an address elsewhere or a place
// on the same page, which is left as it is. A link may be written as the address of a page ("patterns/millrace", "about") or
// as the manuscript's own file beside or above ("../hat/pattern.md"), which works in an editor as well.
func Target(from, to string) (target string, ours bool) {
	if to == "" || strings.HasPrefix(to, "#") || strings.HasPrefix(to, "//") || hasScheme(to) {
		return to, false
	}
	to, fragment, _ := strings.Cut(to, "#")
	if fragment != "" {
		fragment = "#" + fragment
	}
	if manuscript, is := strings.CutSuffix(to, ".md"); is {
		return ofManuscript(from, manuscript) + fragment, true
	}
	if strings.Contains(path.Base(to), ".") && path.Base(to) != "index.html" {
		return strings.TrimPrefix(path.Join("/", from, to), "/") + fragment, true // a file beside the page
	}
	to = strings.TrimSuffix(strings.Trim(to, "/"), "index.html")
	if to = strings.Trim(path.Clean("/"+to), "/"); to != "" {
		to += "/"
	}
	return to + fragment, true
}

// InEdition is where a link to a page of the site leads from this one: to the same edition of another pattern.
func (p *Page) InEdition(target string) string {
	edition := strings.TrimPrefix(p.Address, p.Beside) // "uk/"
	if edition == "" || edition == p.Address {
		return target
	}
	slug, is := strings.CutPrefix(target, "patterns/")
	slug, rest, whole := strings.Cut(slug, "/")
	if !is || !whole || rest != "" && rest != "print/" && rest[0] != '#' {
		return target // it is a file beside a pattern, or says which edition it means
	}
	return PatternAddress(slug) + edition + rest
}

// ofManuscript is the address of the page made of a manuscript that is named from the manuscript of another page.
func ofManuscript(from, to string) string {
	folder := "pages"
	if strings.HasPrefix(from, "patterns/") {
		folder = strings.TrimSuffix(from, "/")
	}
	to = strings.TrimPrefix(path.Join("/", folder, to), "/")
	if slug, is := strings.CutPrefix(to, "pages/"); is {
		return PlainAddress(slug)
	}
	return strings.TrimSuffix(to, "pattern")
}

func hasScheme(to string) bool {
	colon := strings.IndexByte(to, ':')
	return colon > 0 && !strings.ContainsAny(to[:colon], "/.#?")
}
