package site

import (
	"sync/atomic"

	"foundrow/internal/grade"
	"foundrow/internal/manuscript"
	"foundrow/internal/page"
	"foundrow/internal/pattern"
	"foundrow/internal/proof"
	"foundrow/internal/prose"
	"foundrow/internal/source"
)

// worked is a manuscript followed as far as its page.
type worked struct {
	leaf
	looks    looks
	findings source.Findings
	plain    *pattern.Plain // of a plain page
	grade    *grade.Grade   // nil when there is no text
	pages    []*page.Page   // its editions, the first to be opened with first
	anchors  string
	links    []Link
	beside   []Made // the files shown, by their names from the leaf's folder
}

// work reads a manuscript and works it.
func (b *build) work(l leaf) *worked {
	atomic.AddInt64(&b.counts.Read, 1)
	w := &worked{leaf: l, looks: looks{build: b}}
	w.looks.at(atProgram, "")
	w.looks.at(atStudio, "")
	file := w.looks.text(l.file, &w.findings)
	if file == nil {
		if len(w.findings) == 0 {
			w.missing()
		}
		return w
	}
	p := b.read(w, file)
	var found source.Findings
	w.grade, found = grade.Work(p)
	w.findings = append(w.findings, found...)
	if l.plain {
		var plain *page.Page
		plain, found = page.OfPlain(w.grade, w.plain, b.studio)
		w.pages = []*page.Page{plain}
	} else {
		w.findings = append(w.findings, proof.Check(w.grade, b.studio)...)
		w.pages, found = page.Of(w.grade, b.studio)
	}
	w.findings = append(w.findings, found...)
	for _, f := range w.findings {
		if f.Place.File != l.file {
			w.looks.at(atFile, f.Place.File) // a place in another file holds as long as that file does
		}
	}
	w.anchors = anchors(p.Text)
	w.shows(p)
	w.leads(p)
	return w
}

// read reads the text of a leaf as what it is.
func (b *build) read(w *worked, file *source.File) *pattern.Pattern {
	if w.leaf.plain {
		plain, found := manuscript.ReadPlain(file, w.slug, b.studio)
		w.plain, w.findings = plain, append(w.findings, found...)
		return &plain.Pattern
	}
	tables := b.tables()
	w.looks.at(atStitches, "")
	p, found := manuscript.ReadPattern(file, w.slug, b.studio, tables)
	w.findings = append(w.findings, found...)
	if name := p.Sizes.Table.Text; name != "" {
		w.looks.at(atTable, name)
		if _, known := tables.Find(name); !known {
			w.looks.at(atTables, "") // one of these may have been meant
		}
	}
	return p
}

// missing tells of a folder among the patterns that holds no pattern.
func (w *worked) missing() {
	w.looks.at(atFolder, w.folder)
	names, _ := w.looks.build.Files.List(w.folder)
	f := source.Finding{Rule: "no-pattern", Severity: source.Query, Place: first(w.folder), Message: "this folder has no pattern.md"}
	if near := source.Nearest("pattern.md", names); near != "" {
		f.Fix = "rename " + near + " to pattern.md"
	}
	w.findings = append(w.findings, f)
}

// state says whether what was worked can be published.
func (w *worked) state() State {
	switch {
	case w.grade == nil && !w.findings.Errors():
		return Nothing
	case w.grade == nil || w.findings.Errors() || w.looks.build.spoilt[w.grade.Pattern.Sizes.Table.Text]:
		return Faulty
	case w.plain == nil && w.grade.Pattern.Released == "":
		return Unreleased
	}
	return Published
}

// result is what is to be remembered of what was worked.
func (w *worked) result() *Result {
	return &Result{Looks: w.looks.list, Findings: w.findings, State: w.state(), Anchors: w.anchors, Links: w.links}
}

// anchors lists the headings of a text that may be linked to, each with a space before it.
func anchors(blocks []prose.Block) string {
	var all []byte
	for _, block := range blocks {
		switch block := block.(type) {
		case *prose.Heading:
			all = append(append(all, ' '), block.ID...)
		case *prose.Quote:
			all = append(all, anchors(block.Blocks)...)
		case *prose.List:
			for _, item := range block.Items {
				all = append(all, anchors(item)...)
			}
		}
	}
	return string(all)
}
