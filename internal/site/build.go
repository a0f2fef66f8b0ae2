package site

import (
	"encoding/json"
	"runtime"
	"sync"
	"sync/atomic"

	"foundrow/internal/page"
	"foundrow/internal/source"
	"foundrow/internal/web"
)

// A Job is a site to be built.
type Job struct {
	Files   Files
	Program string              // names the program with all that is built into it
	Memory  *Memory             // what is remembered of earlier builds; may be nil
	Before  map[string]Standing // what was published of each part, for when it can only stay as it is
	Sink    Sink
	Step    func(done, of int) // called after each pattern and page, by several goroutines; may be nil
}

// A Sink takes the outputs of a site as they are finished, from several goroutines at once: assets first, pictures before the
// page that shows them, the catalogue last.
type Sink interface {
	// Stands reports whether an output is there already, so that it need not be made.
	Stands(name string, digest Digest) bool
	// Put takes an output. Its error ends the build.
	Put(Output) error
}

// An Output is one file of a site. It holds Data or, where From is set, the same as that file of the studio.
type Output struct {
	Name   string // "patterns/millrace/index.html"
	Digest Digest
	Data   []byte
	From   string
}

// A Standing is what was published of a part in an earlier build.
type Standing struct {
	Uses    string
	Summary json.RawMessage
	Outputs []string
}

// A Site is what a build came to.
type Site struct {
	Parts      []Part   // everything that is published now
	Patterns   int      // patterns published, those that stay as they were among them
	Unreleased []string // manuscripts of patterns without a date of release
	Stayed     []string // manuscripts with an error, of which what was published before stays
	LeftOut    []string // manuscripts with an error, of which nothing was published before
	Work       Work
}

// A Part is a pattern, page, catalogue or set of assets that is published.
type Part struct {
	Name    string
	Uses    string // the part that holds its assets
	Summary json.RawMessage
	Outputs []string
}

// Work counts what a build did. It is for tests: counts, unlike the time that things take, are the same everywhere.
type Work struct {
	Read      int64 // manuscripts read and worked
	Set       int64 // of these, set as pages
	Replayed  int64 // results that were remembered
	Layouts   int64 // times the layouts were loaded
	Catalogue int64 // pages of the catalogue set
}

// A build is one run of a Job.
type build struct {
	Job
	shared
	plan    survey
	digests map[Look]Digest                        // of what is known from the start, by what is looked at
	layouts func() (*web.Layouts, source.Findings) // loaded when the first page has to be set
	assets  string                                 // the part that holds what they ask for
	menu    []page.Link                            // the plain pages, on every page
	blocked bool                                   // nothing can be set, because of an error in studio.toml or the layouts
	counts  Work
}

// Build makes a site, or as much of it as can be made, handing the outputs to the job's sink. An error is the sink's, a layout's
// that cannot be executed, or ErrNoStudio; whatever else is wrong with a studio is a finding.
func Build(job Job) (Site, source.Findings, error) {
	b := &build{Job: job}
	findings, err := b.open()
	if err != nil {
		return Site{}, nil, err
	}
	b.openLayouts(&findings)
	assets, err := b.dress()
	if err != nil {
		return Site{}, nil, err
	}
	results, err := b.leaves()
	if err != nil {
		return Site{}, nil, err
	}
	site := b.collect(assets, results)
	catalogue, err := b.catalogue(&site)
	if err != nil {
		return Site{}, nil, err
	}
	findings = append(findings, assets.Findings...)
	for i, r := range results {
		findings = append(append(findings, r.Findings...), b.plan.leaves[i].barred...)
	}
	findings = append(findings, b.danglers(results, catalogue)...)
	findings.Sort()
	b.Memory.keepOnly(b.parts())
	site.Work = b.counts
	return site, findings, nil
}

// leaves brings every manuscript into the site: first what the plain pages say, of which the menu is made that stands on every
// page, then all pages.
func (b *build) leaves() ([]*Result, error) {
	results, plain := make([]*Result, len(b.plan.leaves)), make([]*worked, len(b.plan.leaves))
	each(b.plan.leaves, nil, func(i int, l leaf) error {
		if l.plain {
			results[i], plain[i] = b.plainText(l)
		}
		return nil
	})
	b.openMenu(results)
	err := each(b.plan.leaves, b.Step, func(i int, l leaf) (err error) {
		if l.plain {
			results[i], err = b.plainPage(l, results[i], plain[i])
		} else {
			results[i], err = b.pattern(l)
		}
		return err
	})
	return results, err
}

// each calls work for every leaf and returns the first error. There are more goroutines than processors, because while pages are
// written some of them wait for the disk; the pages in hand stay few.
func each(leaves []leaf, step func(done, of int), work func(int, leaf) error) error {
	var (
		next, done atomic.Int64
		failed     atomic.Pointer[error]
		all        sync.WaitGroup
	)
	n := len(leaves)
	for range min(4*runtime.GOMAXPROCS(0), n) {
		all.Go(func() {
			for i := int(next.Add(1)) - 1; i < n && failed.Load() == nil; i = int(next.Add(1)) - 1 {
				if err := work(i, leaves[i]); err != nil {
					failed.CompareAndSwap(nil, &err)
					return
				}
				if step != nil {
					step(int(done.Add(1)), n)
				}
			}
		})
	}
	all.Wait()
	if err := failed.Load(); err != nil {
		return *err
	}
	return nil
}

// recalled returns a remembered result of a part that still holds: everything it was made from is as it was seen, and its
// outputs stand.
func (b *build) recalled(part string) *Result {
	for i, r := range b.Memory.recall(part) {
		if b.holds(r) {
			if i > 0 {
				b.Memory.refresh(part)
			}
			atomic.AddInt64(&b.counts.Replayed, 1)
			return r
		}
	}
	return nil
}

func (b *build) holds(r *Result) bool {
	for _, l := range r.Looks {
		if b.see(l.At, l.Name) != l.Saw {
			return false
		}
	}
	for _, o := range r.Outputs {
		if !b.Sink.Stands(o.Name, o.Digest) {
			return false
		}
	}
	return true
}
