package site

import (
	"errors"
	"fmt"
	"path"
	"runtime/debug"
	"slices"
	"strings"
	"sync"
	"sync/atomic"

	"foundrow/internal/grade"
	"foundrow/internal/page"
	"foundrow/internal/source"
)

// A Preview is a studio of which each page is made when somebody asks for it. It is the studio at one moment: after a change
// another one is opened, which is handed the one before and makes nothing again that still holds. Several goroutines may ask it
// at once.
//
// A page that Build would publish comes out with the same bytes. Unlike Build it also makes the pages of patterns that are not
// released, and as much as can be made of a manuscript with an error: whoever shows them says so.
type Preview struct {
	build    *build
	findings source.Findings // of what all pages share
	places   map[string]int  // of the leaves, by part
	readings []reading       // by leaf
	assets   []Output        // those of the layouts first, then those that pages made before may still ask for

	shelves atomic.Pointer[shelves]
}

// A reading is what came of reading and working one leaf, once somebody wanted to know.
type reading struct {
	once    sync.Once
	result  atomic.Pointer[Result]
	trouble error
	worked  atomic.Pointer[worked] // of a plain page that was worked for the menu, until its page is made
}

// Manuscript is one pattern or plain page as it stands.
type Manuscript struct {
	Part, File, Address string
	Title               string // empty while it cannot be read
	Plain               bool
	State               State
	Findings            source.Findings
}

// Sheets are all the pages of one manuscript, and the files they show.
type Sheets struct {
	Manuscript
	Good    bool              // made without an error: as it will be published, or would be if it were released
	Outputs map[string]Output // by name
	Trouble error             // of ours: the pages could not be made, and it is not the designer's fault
	Worked  *Worked           // only of sheets that were just made; let it go when it was looked into
	result  *Result
}

// Worked is what the pages of a manuscript were made from.
type Worked struct {
	Grade *grade.Grade
	Page  *page.Page
}

// shelves are the pages of the catalogue, of which each is set when it is asked for.
type shelves struct {
	from  Digest // all they are made from
	pages []page.Catalogue

	mu  sync.Mutex
	set map[string]Output // by address
}

// outputKeep is how many assets of layouts that were changed are kept for the pages that still ask for them.
const outputKeep = 64

// OpenPreview opens a studio to be previewed. The memory is filled and asked as that of a build is; it may not be one that Build
// uses. Last may be nil. The error is ErrNoStudio.
func OpenPreview(files Files, program string, memory *Memory, last *Preview) (*Preview, error) {
	b := &build{Job: Job{Files: files, Program: program, Memory: memory, Sink: &tray{}, Before: last.standing()}}
	findings, err := b.open()
	if err != nil {
		return nil, err
	}
	b.openLayouts(&findings)
	layouts := Look{At: atLayouts}
	if last != nil && last.build.digests[layouts] == b.digests[layouts] {
		b.layouts = last.build.layouts
	}
	loaded, mistakes := b.layouts()
	b.blocked = b.faulty || mistakes.Errors()
	p := &Preview{build: b, findings: append(findings, mistakes...), places: map[string]int{}, readings: make([]reading, len(b.plan.leaves))}
	for _, a := range loaded.Assets() {
		p.assets = append(p.assets, Output{Name: a.Name, Digest: DigestOf(a.Data), Data: a.Data})
	}
	if last != nil {
		p.keepAssets(last.assets)
		p.shelves.Store(last.shelves.Load())
	}
	results := make([]*Result, len(p.readings))
	for i, l := range b.plan.leaves {
		p.places[l.part] = i
		if l.plain {
			results[i] = p.read(i)
		}
	}
	b.openMenu(results)
	return p, nil
}

// keepAssets keeps the assets of other layouts behind one's own.
func (p *Preview) keepAssets(old []Output) {
	for _, a := range old {
		if len(p.assets) < outputKeep && !slices.ContainsFunc(p.assets, func(o Output) bool { return o.Name == a.Name }) {
			p.assets = append(p.assets, a)
		}
	}
}

// standing is what the catalogue and the menu go on telling of manuscripts that have an error by now.
func (p *Preview) standing() map[string]Standing {
	before := map[string]Standing{}
	if p == nil {
		return before
	}
	for i, l := range p.build.plan.leaves {
		old, had := p.build.Before[l.part]
		switch r := p.readings[i].result.Load(); {
		case r != nil && r.State == Published && p.build.free(l):
			before[l.part] = Standing{Summary: r.Summary}
		case had && (r == nil || r.State == Published || r.State == Faulty):
			before[l.part] = old
		}
	}
	return before
}

// read returns what came of reading and working a leaf.
func (p *Preview) read(i int) *Result {
	t, b, l := &p.readings[i], p.build, p.build.plan.leaves[i]
	t.once.Do(func() {
		var r *Result
		r, t.trouble = guarded(l, func() *Result {
			if l.plain {
				r, w := b.plainText(l)
				t.worked.Store(w)
				return r
			}
			if r := b.recalled(l.part); r != nil {
				return r
			}
			return p.keep(l, b.work(l))
		})
		t.result.Store(r)
	})
	return t.result.Load()
}

// keep remembers what came of working a pattern. Its card is kept also while it is not published, for its title.
func (p *Preview) keep(l leaf, w *worked) *Result {
	r := w.result()
	if len(w.pages) > 0 {
		r.Summary = summary(w.pages[0].Card())
	}
	p.build.Memory.keep(l.part, r)
	return r
}

// guarded works on a leaf so that a mistake of ours over one manuscript does not end the preview of the others.
func guarded(l leaf, work func() *Result) (r *Result, trouble error) {
	defer func() {
		if v := recover(); v != nil {
			r, trouble = &Result{State: Faulty}, fmt.Errorf("foundrow itself went wrong over %s: %v\n%s", l.file, v, debug.Stack())
		}
	}()
	return work(), nil
}

// Shared are the findings of what all pages share: studio.toml, the size tables, the stitches, the layouts.
func (p *Preview) Shared() source.Findings { return p.findings }

// Blocked reports whether an error in studio.toml or in the layouts keeps every page from being made.
func (p *Preview) Blocked() bool { return p.build.blocked }

// Title is the studio's.
func (p *Preview) Title() string { return p.build.studio.Title }

// PartOf names the part that an output of some name would belong to: "patterns/millrace", "pages/about", "catalogue", "assets".
// It is empty where no part has such a name.
func (p *Preview) PartOf(name string) string {
	if strings.HasPrefix(name, "assets/") {
		return "assets"
	}
	if name == "index.html" || slices.ContainsFunc(filters, func(f string) bool { return strings.HasPrefix(name, f+"/") }) {
		return "catalogue"
	}
	for folder := path.Dir(name); folder != "."; folder = path.Dir(folder) {
		if part, is := p.build.plan.addresses[folder+"/"]; is {
			return part
		}
	}
	return ""
}

// Asset returns a style or script that pages ask for.
func (p *Preview) Asset(name string) (Output, bool) {
	i := slices.IndexFunc(p.assets, func(o Output) bool { return o.Name == name })
	if i < 0 {
		return Output{}, false
	}
	return p.assets[i], true
}

// Sheets makes the pages of a part, unless the last ones, which may be nil, still hold: then it returns those. It is nil where
// there is no such part.
func (p *Preview) Sheets(part string, last *Sheets) *Sheets {
	i, is := p.places[part]
	if !is {
		return nil
	}
	b, l := p.build, p.build.plan.leaves[i]
	if last != nil && last.result != nil && last.Trouble == nil && l.barred == nil && last.Address == l.address && b.holds(last.result) {
		return last
	}
	s := &Sheets{}
	_, s.Trouble = guarded(l, func() *Result {
		w := p.readings[i].worked.Swap(nil)
		if w == nil {
			w = b.work(l)
			p.readings[i].once.Do(func() { p.readings[i].result.Store(p.keep(l, w)) })
		}
		s.result = w.result()
		if len(w.pages) > 0 {
			s.Outputs, s.Trouble = p.set(w, s.result)
			s.Worked = &Worked{w.grade, w.pages[0]}
		}
		return s.result
	})
	s.Manuscript = p.manuscript(l, s.result)
	if s.Worked != nil {
		s.Title = s.Worked.Page.Title
	}
	s.Good = s.Worked != nil && s.Trouble == nil && b.free(l) && (s.State == Published || s.State == Unreleased)
	return s
}

// set sets what was worked and returns its pages.
func (p *Preview) set(w *worked, r *Result) (map[string]Output, error) {
	if err := p.build.set(w, r); err != nil {
		return nil, err
	}
	return p.build.Sink.(*tray).take(r.Outputs), nil
}

// manuscript says how a leaf stands, without its title.
func (p *Preview) manuscript(l leaf, r *Result) Manuscript {
	m := Manuscript{Part: l.part, File: l.file, Address: l.address, Plain: l.plain, State: Faulty, Findings: l.barred}
	if r != nil {
		m.State, m.Findings = r.State, append(slices.Clone(r.Findings), l.barred...)
	}
	if l.barred != nil && m.State != Nothing {
		m.State = Faulty
	}
	m.Findings.Sort()
	return m
}

// errStopped ends a look over the whole studio before it is done.
var errStopped = errors.New("stopped")

// all works whatever is not known to hold. It returns nil when stop, which may be nil, says so before it is done.
func (p *Preview) all(stop func() bool) []*Result {
	results := make([]*Result, len(p.readings))
	err := each(p.build.plan.leaves, nil, func(i int, _ leaf) error {
		if stop != nil && stop() {
			return errStopped
		}
		results[i] = p.read(i)
		return nil
	})
	if err != nil {
		return nil
	}
	return results
}

// A tray is a sink that holds the outputs of a part until they are taken.
type tray struct {
	mu      sync.Mutex
	outputs map[string]Output
}

// Stands always holds: whoever keeps a result keeps its outputs.
func (t *tray) Stands(string, Digest) bool { return true }

func (t *tray) Put(o Output) error {
	t.mu.Lock()
	defer t.mu.Unlock()
	if t.outputs == nil {
		t.outputs = map[string]Output{}
	}
	t.outputs[o.Name] = o
	return nil
}

func (t *tray) take(made []Made) map[string]Output {
	t.mu.Lock()
	defer t.mu.Unlock()
	taken := make(map[string]Output, len(made))
	for _, m := range made {
		taken[m.Name] = t.outputs[m.Name]
		delete(t.outputs, m.Name)
	}
	return taken
}
