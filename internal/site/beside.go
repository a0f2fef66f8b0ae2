package site

import (
	"errors"
	"io/fs"
	"path"
	"slices"
	"strconv"
	"strings"

	"foundrow/internal/page"
	"foundrow/internal/pattern"
	"foundrow/internal/prose"
	"foundrow/internal/source"
)

// shows finds the files that a page shows: photos, the film, pictures in the text. All lie beside the manuscript.
func (w *worked) shows(p *pattern.Pattern) {
	for _, photo := range p.Photos {
		w.file(photo.From.Text, photo.From.Span, "picture")
	}
	if p.Film.File.Text != "" {
		w.file(p.Film.File.Text, p.Film.File.Span, "film")
	}
	lines(p, func(in prose.Inline) {
		if image, is := in.(*prose.Image); is {
			w.file(image.From, image.Span, "picture")
		}
	})
}

// file looks for one file beside the manuscript.
func (w *worked) file(written string, span source.Span, what string) {
	if elsewhere(written) {
		return
	}
	file := w.grade.Pattern.File
	name := unescaped(written)
	rest, beside := strings.CutPrefix(path.Join(w.folder, name), w.folder+"/")
	if !beside || !fs.ValidPath(rest) || strings.ContainsAny(rest, "\\\n\r\t") {
		w.findings.Report(file, span, "not-beside", "the "+what+" "+quoted(written)+" does not lie beside "+path.Base(w.leaf.file),
			"copy it to "+w.folder+" and write its name alone")
		return
	}
	switch saw := w.looks.at(atFile, path.Join(w.folder, rest)); saw {
	case Absent:
		w.findings.Report(file, span, "missing-"+what, "there is no "+what+" "+quoted(written)+" in "+w.folder, w.nearest(rest))
	case unreadable:
		_, err := w.looks.build.Files.Digest(path.Join(w.folder, rest))
		f := unreadableFile(path.Join(w.folder, rest), err)
		f.Message = "the " + what + " " + quoted(written) + strings.TrimPrefix(f.Message, "this")
		f.Place = file.Place(span)
		w.findings = append(w.findings, f)
	default:
		if made := (Made{rest, saw}); !slices.Contains(w.beside, made) {
			w.beside = append(w.beside, made)
		}
	}
}

// nearest offers the file of a folder that may have been meant.
func (w *worked) nearest(missing string) string {
	folder := path.Dir(path.Join(w.folder, missing))
	w.looks.at(atFolder, folder)
	names, err := w.looks.build.Files.List(folder)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return ""
	}
	if near := source.Nearest(path.Base(missing), names); near != "" {
		return "did you mean " + path.Join(path.Dir(missing), near) + "?"
	}
	return "put it in " + folder
}

// leads finds where the links of a text lead, and reports those that lead nowhere in the studio.
func (w *worked) leads(p *pattern.Pattern) {
	lines(p, func(in prose.Inline) {
		link, is := in.(*prose.Link)
		if !is {
			return
		}
		target, ours := page.Target(w.address, link.To)
		address, id, _ := strings.Cut(target, "#")
		switch {
		case !ours && strings.HasPrefix(target, "#"):
			if id != "" && !anchored(w.anchors, id) {
				w.findings.Report(p.File, link.Span, "no-such-heading", "no heading of this page is called "+quoted(id), nearestHeading(id, w.anchors))
			}
		case !ours:
		case address != "" && !strings.HasSuffix(address, "/"):
			w.file(link.To, link.Span, "file")
		default:
			w.lead(p.File, link, address, id)
		}
	})
}

// A Link is a link to another page of the site, which cannot be looked into until all are known.
type Link struct {
	Address string
	ID      string // of the heading; may be empty
	Place   source.Place
}

// lead follows a link to another page as far as the survey goes.
func (w *worked) lead(file *source.File, link *prose.Link, address, id string) {
	if owner, known := w.owner(address); known {
		w.links = append(w.links, Link{owner, id, file.Place(link.Span)})
		return
	}
	w.looks.at(atAddresses, "")
	var all []string
	for _, l := range w.looks.build.plan.leaves {
		all = append(all, strings.TrimSuffix(l.address, "/"))
	}
	written := strings.TrimSuffix(address, "/")
	fix := "see that it is in " + pagesFolder + " or " + patternsFolder
	if near := source.Nearest(written, all); near != "" {
		fix = "did you mean " + near + "?"
	}
	w.findings.Report(file, link.Span, "no-such-page", "no page of this studio is called "+quoted(written), fix)
}

// owner returns the address of the manuscript or of the catalogue's page that an address belongs to. Which pages the catalogue
// has is known later.
func (w *worked) owner(address string) (string, bool) {
	if address == "" || slices.ContainsFunc(filters, func(f string) bool { return strings.HasPrefix(address, f+"/") }) {
		return address, true
	}
	owner := address
	if slug, is := strings.CutPrefix(address, "patterns/"); is {
		slug, _, _ = strings.Cut(slug, "/")
		if slices.Contains(page.Addresses(slug, w.looks.build.studio), address) {
			owner = page.PatternAddress(slug)
		}
	}
	return owner, w.looks.at(atAddress, owner) != Absent
}

// danglers reports the links that lead to a page which is not out, to a heading which that page has not, or to a page of the
// catalogue that shows nothing. They are queries: what they lead to is there in part, or will be.
func (b *build) danglers(results []*Result, catalogue map[string]bool) source.Findings {
	at := map[string]int{}
	for i, l := range b.plan.leaves {
		at[l.address] = i
	}
	// A pattern with an error may be all that a page of the catalogue would have shown.
	whole := !slices.ContainsFunc(results, func(r *Result) bool { return r.State == Faulty })
	var findings source.Findings
	ask := func(l Link, rule, message, fix string) {
		findings = append(findings, source.Finding{Rule: rule, Severity: source.Query, Place: l.Place, Message: message, Fix: fix})
	}
	for i, r := range results {
		if r.State == Unreleased {
			continue // her draft may lead to what will be out with it
		}
		for _, l := range r.Links {
			to, known := at[l.Address]
			switch {
			case !known && whole && !catalogue[l.Address]:
				ask(l, "no-such-page", "the catalogue has no page "+quoted(strings.TrimSuffix(l.Address, "/")), "see which kinds, skills and weights the patterns have")
			case !known || to == i && l.ID == "":
			case results[to].State == Unreleased:
				ask(l, "not-released", quoted(b.plan.leaves[to].slug)+" is not released, so makers will not find it", "give it a date, released = 2026-04-02, or leave the link out")
			case l.ID != "" && (results[to].State == Published || results[to].Anchors != "") && !anchored(results[to].Anchors, l.ID):
				ask(l, "no-such-heading", "no heading of "+b.plan.leaves[to].file+" is called "+quoted(l.ID), nearestHeading(l.ID, results[to].Anchors))
			}
		}
	}
	return findings
}

// anchored reports whether a heading is among those of a page.
func anchored(anchors, id string) bool { return strings.Contains(anchors+" ", " "+id+" ") }

func nearestHeading(id, anchors string) string {
	headings := strings.Fields(anchors)
	if near := source.Nearest(id, headings); near != "" {
		return "did you mean #" + near + "?"
	}
	if len(headings) == 0 {
		return ""
	}
	return "its headings are #" + strings.Join(headings, ", #")
}

// lines calls visit for everything that stands in a line of the text. Rows have neither links nor pictures.
func lines(p *pattern.Pattern, visit func(prose.Inline)) {
	var walk func(prose.Line)
	walk = func(line prose.Line) {
		for _, in := range line {
			visit(in)
			switch in := in.(type) {
			case *prose.Marked:
				walk(in.Line)
			case *prose.Link:
				walk(in.Line)
			}
		}
	}
	prose.Walk(p.Text, walk)
}

// elsewhere reports whether an address names its scheme or its host, so that nothing of ours is meant.
func elsewhere(address string) bool {
	scheme, _, named := strings.Cut(address, ":")
	return named && !strings.ContainsAny(scheme, "/.") || strings.HasPrefix(address, "//")
}

// unescaped returns an address with its %20 and the like as the characters they stand for: the name of the file on disk.
func unescaped(address string) string {
	if !strings.Contains(address, "%") {
		return address
	}
	var b []byte
	for i := 0; i < len(address); i++ {
		c := address[i]
		if c == '%' && i+2 < len(address) {
			if n, err := strconv.ParseUint(address[i+1:i+3], 16, 8); err == nil {
				c, i = byte(n), i+2
			}
		}
		b = append(b, c)
	}
	return string(b)
}
