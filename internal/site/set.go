package site

import (
	"encoding/json"
	"path"
	"strings"
	"sync"
	"sync/atomic"

	"foundrow/internal/page"
	"foundrow/internal/source"
	"foundrow/internal/web"
)

// openLayouts lists the studio's own layouts. They are loaded when the first page has to be set.
func (b *build) openLayouts(findings *source.Findings) {
	names := b.layoutFiles(layoutsFolder, findings)
	seen := make([]string, 0, 2*len(names))
	for _, name := range names {
		seen = append(seen, name, string(b.see(atFile, name)))
	}
	b.digests[Look{At: atLayouts}] = digestOfAll(seen)
	b.layouts = sync.OnceValues(func() (*web.Layouts, source.Findings) {
		atomic.AddInt64(&b.counts.Layouts, 1)
		own := map[string]string{}
		var findings source.Findings
		l := looks{build: b}
		for _, name := range names {
			if file := l.text(name, &findings); file != nil {
				own[strings.TrimPrefix(name, layoutsFolder+"/")] = file.Text
			}
		}
		loaded, mistakes := web.Load(own)
		return loaded, append(findings, mistakes...)
	})
}

// dress puts the assets of the layouts, which every page asks for. When the layouts have an error, nothing can be set.
func (b *build) dress() (*Result, error) {
	const part = "assets"
	r := b.recalled(part)
	if r == nil {
		l := looks{build: b}
		l.at(atProgram, "")
		l.at(atStudio, "")
		l.at(atLayouts, "")
		layouts, mistakes := b.layouts()
		r = &Result{Looks: l.list, Findings: mistakes}
		if b.faulty || mistakes.Errors() {
			r.State = Faulty
		} else if err := b.putAssets(r, layouts.Assets()); err != nil {
			return nil, err
		}
		b.Memory.keep(part, r)
	}
	b.blocked = r.State == Faulty
	b.assets = part + "/" + string(digestOfAll(names(r.Outputs)))
	return r, nil
}

func (b *build) putAssets(r *Result, assets []web.File) error {
	for _, a := range assets {
		if err := b.put(r, Output{Name: a.Name, Digest: DigestOf(a.Data), Data: a.Data}); err != nil {
			return err
		}
	}
	return nil
}

// layoutFiles lists the files that replace parts of the layouts. Where the layouts are those built into the program, two things lie
// beside them that are left out: the Go file that builds them in, and the preview's own part, which no page of a site is set with.
func (b *build) layoutFiles(folder string, findings *source.Findings) []string {
	var names []string
	for _, name := range b.list(folder, findings) {
		switch {
		case hidden(name) || strings.HasSuffix(name, ".go") || folder == layoutsFolder && name == "preview/":
		case strings.HasSuffix(name, "/"):
			names = append(names, b.layoutFiles(path.Join(folder, name), findings)...)
		default:
			names = append(names, path.Join(folder, name))
		}
	}
	return names
}

// put hands an output to the sink and notes it in the result.
func (b *build) put(r *Result, o Output) error {
	r.Outputs = append(r.Outputs, Made{o.Name, o.Digest})
	return b.Sink.Put(o)
}

// set sets what was worked, putting the files it shows before the pages that show them.
func (b *build) set(w *worked, r *Result) error {
	atomic.AddInt64(&b.counts.Set, 1)
	for _, file := range w.beside {
		o := Output{Name: w.address + file.Name, Digest: file.Digest, From: path.Join(w.folder, file.Name)}
		if err := b.put(r, o); err != nil {
			return err
		}
	}
	w.looks.at(atLayouts, "")
	w.looks.at(atMenu, "")
	r.Looks = w.looks.list
	layouts, _ := b.layouts()
	for _, p := range w.pages {
		p.Menu = b.menu
		if w.leaf.plain {
			return b.sheet(r, p.Address, p, layouts.Plain)
		}
		if err := b.sheet(r, p.Print, p, layouts.Print); err != nil {
			return err
		}
		if err := b.sheet(r, p.Address, p, layouts.Pattern); err != nil {
			return err
		}
	}
	return nil
}

// sheet sets and puts one page.
func (b *build) sheet(r *Result, address string, p *page.Page, set func(*page.Page) ([]byte, error)) error {
	data, err := set(p)
	if err != nil {
		return err
	}
	return b.put(r, Output{Name: page.FileAt(address), Digest: DigestOf(data), Data: data})
}

// summary is what is remembered of a page for the catalogue or the menu.
func summary(v any) json.RawMessage {
	text, err := json.Marshal(v)
	if err != nil {
		panic(err) // cards and entries hold nothing that JSON cannot
	}
	return text
}
