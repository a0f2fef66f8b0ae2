// Package web sets pages as HTML. The frame of a page is a template that a studio may replace; its big blocks (text, rows,
// tables, cards) are written here as dense markup, with everything that comes from outside escaped.
//
// It knows what a page says and nothing of how it was worked out. Package paper sets the same pages as PDF; package site
// decides which are made and where they go.
package web

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"html/template"
	"io/fs"
	"maps"
	"slices"
	"strings"

	"github.com/tdewolff/minify/v2"
	"github.com/tdewolff/minify/v2/css"
	"github.com/tdewolff/minify/v2/html"
	"github.com/tdewolff/minify/v2/js"
	"github.com/tdewolff/parse/v2"

	"foundrow/internal/source"
	"foundrow/layouts"
)

// A File is a file of the site: a style or a script, named by what is in it, so that it may be kept forever.
type File struct {
	Name string // "assets/pattern-3f6a0c1b2d.css"
	Data []byte
}

// Layouts are the templates that pages are set with, and the styles and scripts they ask for. They never change and may be
// used by several goroutines at once.
type Layouts struct {
	pattern, paper, plain, catalogue sheet
	assets                           []File
}

// A sheet is everything one kind of page is set with.
type sheet struct {
	template      *template.Template
	style, script string // names of assets; script is empty when there is none
}

// A kind is which parts make one kind of page, in the order in which their styles follow upon each other. The template of the
// entry is executed; those of the others define what it calls.
type kind struct {
	name  string
	entry string
	parts []string
	of    func(*Layouts) *sheet
}

var kinds = []kind{
	{"pattern", "frame", []string{"frame", "words", "pattern"}, func(l *Layouts) *sheet { return &l.pattern }},
	{"paper", "paper", []string{"words", "paper"}, func(l *Layouts) *sheet { return &l.paper }},
	{"plain", "frame", []string{"frame", "words", "plain"}, func(l *Layouts) *sheet { return &l.plain }},
	{"catalogue", "frame", []string{"frame", "catalogue"}, func(l *Layouts) *sheet { return &l.catalogue }},
}

// partNames are the parts of a page, each a folder of layouts.
var partNames = []string{"frame", "catalogue", "pattern", "paper", "words", "plain"}

// folder is where a studio keeps its own layouts, for findings.
const folder = "layouts/"

// Load puts together the built-in layouts and the files of a studio, which are named as the built-in ones are
// ("pattern/pattern.html") and take their places. A file with a mistake is reported at its line, and the built-in one is used
// in its stead.
func Load(overrides map[string]string) (*Layouts, source.Findings) {
	parts := builtIn()
	l, findings := assemble(parts)
	if findings.Errors() {
		panic("web: the built-in layouts have mistakes: " + findings[0].String())
	}
	if len(overrides) == 0 {
		return l, nil
	}
	own, findings := accepted(overrides)
	maps.Copy(parts, own)
	with, mistakes := assemble(parts)
	findings = append(findings, blamed(mistakes, own)...)
	findings.Sort()
	if mistakes.Errors() {
		return l, findings
	}
	return with, findings
}

// blamed moves mistakes that show in a built-in part to the studio's file that caused them: alone, the built-in parts have none.
func blamed(mistakes source.Findings, own map[string]string) source.Findings {
	for i, f := range mistakes {
		part := strings.TrimPrefix(f.Place.File, folder)
		if _, is := own[part]; is {
			continue
		}
		for _, name := range slices.Sorted(maps.Keys(own)) {
			if strings.HasSuffix(name, ".html") {
				mistakes[i].Place = source.NewFile(folder+name, own[name]).Place(lineOf(own[name], 1))
				mistakes[i].Message += ", as the rest of the page uses it"
				break
			}
		}
	}
	return mistakes
}

// builtIn returns the layouts of the program by name.
func builtIn() map[string]string {
	parts := map[string]string{}
	err := fs.WalkDir(layouts.Files, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := fs.ReadFile(layouts.Files, name)
		parts[name] = string(text)
		return err
	})
	if err != nil {
		panic("web: the built-in layouts cannot be read: " + err.Error())
	}
	return parts
}

// accepted returns the files that are named as a part is; the others are reported.
func accepted(overrides map[string]string) (map[string]string, source.Findings) {
	var known []string
	for _, part := range partNames {
		for _, ending := range [...]string{".html", ".css", ".js"} {
			known = append(known, part+"/"+part+ending)
		}
	}
	own := map[string]string{}
	var findings source.Findings
	for _, name := range slices.Sorted(maps.Keys(overrides)) {
		if slices.Contains(known, name) {
			own[name] = overrides[name]
			continue
		}
		fix := "the parts are " + source.List(partNames, "and") + ", each with .html, .css and .js in a folder of its name"
		if near := source.Nearest(name, known); near != "" {
			fix = "did you mean " + folder + near + "?"
		}
		findings.Report(source.NewFile(folder+name, overrides[name]), source.At(0), "unknown-layout", "no layout part has the name "+name, fix)
	}
	return own, findings
}

// assemble makes the sheets of all kinds of page of the parts.
func assemble(parts map[string]string) (*Layouts, source.Findings) {
	l := &Layouts{}
	m := minify.New()
	m.Add("text/css", &css.Minifier{})
	m.Add("text/javascript", &js.Minifier{})
	m.Add("text/html", &html.Minifier{
		KeepDocumentTags: true, KeepEndTags: true, KeepQuotes: true, KeepDefaultAttrVals: true, TemplateDelims: html.GoTemplateDelims,
	})
	var findings source.Findings
	for _, k := range kinds {
		sheet := k.of(l)
		t, mistakes := templateOf(k, parts, m)
		findings = append(findings, mistakes...)
		sheet.template = t
		for _, asset := range [...]struct {
			ending, media string
			name          *string
		}{{".css", "text/css", &sheet.style}, {".js", "text/javascript", &sheet.script}} {
			file, mistakes := assetOf(k, parts, m, asset.ending, asset.media)
			findings = append(findings, mistakes...)
			if *asset.name = file.Name; file.Name != "" {
				l.assets = append(l.assets, file)
			}
		}
	}
	findings.Sort() // a part that several kinds of page use is looked at several times
	return l, findings
}

// assetOf puts the styles, or the scripts, of one kind of page into one file.
func assetOf(k kind, parts map[string]string, m *minify.M, ending, media string) (File, source.Findings) {
	var all bytes.Buffer
	var findings source.Findings
	for _, part := range k.parts {
		name := part + "/" + part + ending
		text := parts[name]
		if strings.TrimSpace(text) == "" {
			continue
		}
		if err := m.Minify(media, &all, strings.NewReader(text)); err != nil {
			findings = append(findings, unread(name, text, err))
		}
		if ending == ".js" {
			all.WriteByte('\n')
		}
	}
	if all.Len() == 0 {
		return File{}, findings
	}
	sum := sha256.Sum256(all.Bytes())
	return File{Name: "assets/" + k.name + "-" + hex.EncodeToString(sum[:5]) + ending, Data: all.Bytes()}, findings
}

// unread is the finding of a style or script that cannot be parsed.
func unread(name, text string, err error) source.Finding {
	message, line := err.Error(), 1
	var at *parse.Error
	if errors.As(err, &at) {
		message, line = at.Message, at.Line
	}
	file := source.NewFile(folder+name, text)
	return source.Finding{Rule: "layout-syntax", Place: file.Place(lineOf(text, line)), Message: "the file cannot be read: " + firstLine(message)}
}

// Assets are the styles and scripts that pages ask for.
func (l *Layouts) Assets() []File { return slices.Clone(l.assets) }
