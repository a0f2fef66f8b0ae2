package watch

import (
	"bytes"
	"cmp"
	"html/template"
	"slices"
	"strings"
	"time"

	"foundrow/internal/proof"
	"foundrow/internal/site"
	"foundrow/internal/source"
	"foundrow/layouts"
)

// The preview's own addresses begin with a sign that no slug has, so that no page of a studio can have one of them.
const (
	ownAddress    = "/~/"
	sizesAddress  = "/~/sizes/"  // and the address of a page
	phoneAddress  = "/~/phone/"  // and the address of a page
	wholeAddress  = "/~/whole/"  // the whole studio
	changeAddress = "/~/changes" // where an open page hears of them
	scriptAddress = "/~/preview.js"
)

// parts are the templates of what the preview adds, with its style and script.
type parts struct {
	*template.Template
	style  template.CSS
	script []byte
}

var own = loadParts()

func loadParts() parts {
	read := func(name string) []byte {
		text, err := layouts.Files.ReadFile("preview/preview" + name)
		if err != nil {
			panic(err) // it is built in
		}
		return text
	}
	return parts{
		template.Must(template.New("preview").Parse(string(read(".html")))),
		template.CSS(read(".css")), read(".js"),
	}
}

// A band is what stands along the lower edge of a page.
type band struct {
	Style        template.CSS
	Standing     standing
	Said         string // how the page stands to what was saved
	Moved        *way
	NotOut       bool
	Ways         []way
	Trouble      string
	Notices      []string
	Findings     []findingSaid
	MoreFindings string // how many there are beyond those listed
	Errors       bool
	Count        string
	Change       *changeSaid
	Elsewhere    string
}

// mostFindings is how many stand under a page: who has more of them mends the first.
const mostFindings = 40

// A way leads to another view.
type way struct {
	Title, Link string
	Here        bool
}

// A findingSaid is a finding in words.
type findingSaid struct{ Severity, Message, Place, Excerpt, Fix string }

// A changeSaid is a change in words.
type changeSaid struct {
	Values []valueChange
	Rows   []rowChange
	More   string
	Words  bool
}

// bandOf words what stands under a page of the site that lies at an address, or under one of the preview's own that is about it.
// Here is the address that is being looked at.
func (s *studio) bandOf(v view, address, here string) band {
	b := band{Style: own.style, Standing: v.standing, Trouble: v.trouble, Notices: s.allNotices(), Ways: ways(v.of, address, here)}
	mine, elsewhere := s.findings(v.moment, v.of)
	slices.SortStableFunc(mine, func(a, b source.Finding) int { return cmp.Compare(a.Severity, b.Severity) })
	if more := len(mine) - mostFindings; more > 0 {
		b.MoreFindings = proof.Number(more, "more finding", "more findings") + " of this page in the terminal."
	}
	for _, f := range mine[:min(len(mine), mostFindings)] {
		b.Findings = append(b.Findings, findingSaid{f.Severity.String(), f.Message, placeOf(f), excerpt(f), f.Fix})
	}
	b.Errors, b.Count = mine.Errors(), proof.Count(mine)
	b.NotOut = v.draft
	b.Said = v.said(mine)
	if v.moved != "" {
		b.Moved = &way{Title: v.moved, Link: "/" + addressOfPart(v.moved)}
	}
	if !v.change.empty() && v.standing == good {
		b.Change = &changeSaid{Values: v.change.Values, Rows: v.change.Rows, Words: v.change.Words}
		if v.change.More > 0 {
			b.Change.More = "and " + proof.Number(v.change.More, "more row", "more rows")
		}
	}
	if elsewhere > 0 && here != wholeAddress {
		b.Elsewhere = "Elsewhere in the studio there are errors in " + proof.Number(elsewhere, "file", "files") + "."
	}
	return b
}

// said words how what is shown stands to what was saved.
func (v view) said(mine source.Findings) string {
	m, at := v.moment, v.at.Format(time.TimeOnly)
	switch {
	case m.lost != "":
		return m.lost + ". This is the page as it was at " + at + "."
	case v.standing == gone:
		return "The file of this page is gone. This is the page as it was at " + at + "."
	case v.standing == behind && m.preview.Blocked():
		return "This is the page as it was at " + at + ". No page can be made until studio.toml and the layouts are mended."
	case v.standing == behind:
		return "This is the page as it was at " + at + ". What was saved since has " + errorsSaid(mine) + "."
	case v.standing == rough:
		return "This is as much of the page as can be made, because it has " + errorsSaid(mine) + "."
	}
	return "As saved at " + at + "."
}

// errorsSaid counts the errors of a page. One that could not be made for another reason has none.
func errorsSaid(all source.Findings) string {
	errors := slices.DeleteFunc(slices.Clone(all), func(f source.Finding) bool { return f.Severity != source.Error })
	if len(errors) == 0 {
		return "something wrong with it"
	}
	return proof.Count(errors)
}

// ways are the other views of a page of the site. Here is the address that is being looked at.
func ways(of *site.Manuscript, address, here string) []way {
	var all []way
	add := func(title, link string) { all = append(all, way{title, link, link == here}) }
	plainly := address
	if of != nil {
		plainly = of.Address
	}
	add("Page", "/"+plainly)
	if of != nil && !of.Plain {
		add("All sizes", sizesAddress+plainly)
		add("On paper", "/"+plainly+"print/")
	}
	add("Phone", phoneAddress+address)
	add("Whole studio", wholeAddress)
	return all
}

// addressOfPart is where the page of a part lies: "patterns/millrace" or "pages/about".
func addressOfPart(part string) string { return strings.TrimPrefix(part, "pages/") + "/" }

// addressOf is the address of the page in a file of the site.
func addressOf(name string) string { return strings.TrimSuffix(name, "index.html") }

func placeOf(f source.Finding) string {
	said, _, _ := strings.Cut(f.String(), ": "+f.Severity.String()+": ")
	return said + " [" + f.Rule + "]"
}

// excerpt is the line of a finding, underlined; its fix stands apart.
func excerpt(f source.Finding) string {
	f.Fix = ""
	return strings.TrimRight(f.Excerpt(), "\n")
}

// covered puts a band under a page, at the end of its body, and returns the page with the digest that tells it from any other.
// Nothing else of the page is touched.
func covered(html []byte, b band) ([]byte, site.Digest, error) {
	var said bytes.Buffer
	if err := own.ExecuteTemplate(&said, "band", b); err != nil {
		return nil, site.Absent, err
	}
	etag := site.DigestOf(slices.Concat(html, said.Bytes()))
	at := endOfBody(html)
	out := make([]byte, 0, len(html)+said.Len()+512)
	out = append(out, html[:at]...)
	out = append(out, coverBegins+`<style>@media screen{body{padding-bottom:7rem}}</style><aside id="~band" data-etag="`+string(etag)+`"><template shadowrootmode="open">`...)
	out = append(out, said.Bytes()...)
	out = append(out, `</template></aside><script src="`+scriptAddress+`"></script>`+coverEnds...)
	return append(out, html[at:]...), etag, nil
}

// What is added to a page stands between these.
const (
	coverBegins = "<!--preview-->"
	coverEnds   = "<!--/preview-->"
)

// endOfBody is where a page's body ends; a studio's own frame may leave the tag out.
func endOfBody(html []byte) int {
	if at := bytes.LastIndex(html, []byte("</body>")); at >= 0 {
		return at
	}
	return len(html)
}
