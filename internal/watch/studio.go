package watch

import (
	"maps"
	"slices"
	"sync"
	"sync/atomic"
	"time"

	"foundrow/internal/site"
	"foundrow/internal/source"
)

// A studio is one that is being watched: how it stands at this moment, the pages somebody has looked at, and who is looking.
type studio struct {
	tree   *tree
	memory *site.Memory
	now    atomic.Pointer[moment]

	mu       sync.Mutex
	sheaves  map[string]*sheaf // by part
	visits   int               // counts looks at sheaves, to know which was looked at last
	shelf    map[string]placed // the last good pages of the catalogue, by name
	overview *overview         // the last that was finished
	notices  []string          // what is the matter with the machine, in words
	guests   map[*guest]bool
}

// A moment is the studio as it was when something in it had changed.
type moment struct {
	number  int
	at      time.Time
	preview *site.Preview // of this moment or, where it is lost, of the last one before
	lost    string        // why there is no studio any more; empty while there is
}

// An overview is how the whole studio stood at a moment.
type overview struct {
	*site.Overview
	moment int
	byFile map[string]source.Findings
}

// A placed output was made at some time.
type placed struct {
	site.Output
	at time.Time
}

func newStudio(t *tree, memory *site.Memory) *studio {
	return &studio{
		tree: t, memory: memory, sheaves: map[string]*sheaf{}, shelf: map[string]placed{}, guests: map[*guest]bool{},
	}
}

// open opens the studio as its files are now. Whether there is one at all is told in the moment.
func (s *studio) open(program string, at time.Time) *moment {
	m := &moment{at: at}
	var last *site.Preview
	if before := s.now.Load(); before != nil {
		m.number, last = before.number+1, before.preview
	}
	preview, err := site.OpenPreview(s.tree, program, s.memory, last)
	if err != nil { // there is but one error that a studio can have
		m.preview, m.lost = last, "There is no content/studio.toml any more"
	} else {
		m.preview = preview
	}
	if last != nil && preview != nil {
		s.findMoved(last, preview)
	}
	s.now.Store(m)
	return m
}

// findMoved finds where manuscripts went whose pages somebody has looked at: a new one with the same text is the old one under
// another name.
func (s *studio) findMoved(last, now *site.Preview) {
	parts, old := now.Parts(), last.Parts()
	come := map[site.Digest]string{}
	for _, part := range parts {
		if _, had := slices.BinarySearch(old, part); !had {
			if digest, err := s.tree.Digest(now.File(part)); err == nil {
				come[digest] = part
			}
		}
	}
	s.mu.Lock()
	all := maps.Clone(s.sheaves)
	s.mu.Unlock()
	for part, sh := range all {
		if _, still := slices.BinarySearch(parts, part); !still {
			sh.mu.Lock()
			if moved, is := come[sh.digest]; is {
				sh.moved = moved
			}
			sh.mu.Unlock()
		}
	}
}

// A standing says how a page that is shown stands to what was saved.
type standing string

const (
	good   standing = "good"   // it is what was saved
	behind standing = "behind" // what was saved has an error; this is the last without
	rough  standing = "rough"  // what was saved has an error, and there is none without; this is as much as could be made
	gone   standing = "gone"   // there is nothing to make it of any more
)

// A view is an output as it is to be shown.
type view struct {
	site.Output
	moment   *moment // of the studio, that this is of
	standing standing
	at       time.Time        // when what is shown was saved
	of       *site.Manuscript // as it was saved last; nil for a page of the catalogue
	record   *record
	change   *change
	draft    bool   // it has no date of release, so that it is shown here alone
	moved    string // the part that a page which is gone seems to be now
	trouble  string
}

// show makes what lies under a name, if there is anything.
func (s *studio) show(name string) (view, bool) {
	m := s.now.Load()
	switch part := m.preview.PartOf(name); part {
	case "assets":
		o, is := m.preview.Asset(name)
		return view{Output: o, moment: m, standing: good}, is
	case "catalogue":
		return s.showCatalogue(m, name)
	case "":
		return s.showGone(m, name)
	default:
		return s.sheaf(part).show(s, m, part, name)
	}
}

// showCatalogue makes a page of the catalogue.
func (s *studio) showCatalogue(m *moment, name string) (view, bool) {
	v := view{moment: m}
	if m.lost == "" {
		o, is, err := m.preview.Catalogue(addressOf(name))
		if err != nil {
			v.trouble = err.Error()
		} else if is {
			s.mu.Lock()
			defer s.mu.Unlock()
			had := s.shelf[name]
			if had.Digest != o.Digest {
				had = placed{o, m.at}
				s.shelf[name] = had
			}
			return view{Output: o, moment: m, standing: good, at: had.at}, true
		}
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	had, is := s.shelf[name]
	v.Output, v.at, v.standing = had.Output, had.at, behind
	if !m.preview.Blocked() && m.lost == "" && v.trouble == "" {
		v.standing = gone
	}
	return v, is
}

// showGone shows a page that there is no manuscript for any more.
func (s *studio) showGone(m *moment, name string) (view, bool) {
	s.mu.Lock()
	all := maps.Clone(s.sheaves)
	s.mu.Unlock()
	for part, sh := range all {
		if sh.has(name) {
			return sh.show(s, m, part, name)
		}
	}
	return view{moment: m}, false
}

// looked takes note of how the whole studio stands.
func (s *studio) looked(o *site.Overview, m *moment) {
	now := &overview{o, m.number, map[string]source.Findings{}}
	for _, f := range o.Findings {
		now.byFile[f.Place.File] = append(now.byFile[f.Place.File], f)
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	s.overview = now
}

// findings are those that stand over a page: its own, and those of what all pages share; and how many other files have errors.
func (s *studio) findings(m *moment, of *site.Manuscript) (own source.Findings, elsewhere int) {
	if m.lost != "" {
		return nil, 0
	}
	s.mu.Lock()
	o := s.overview
	s.mu.Unlock()
	own = append(own, m.preview.Shared()...)
	here := map[string]bool{}
	for _, f := range own {
		here[f.Place.File] = true
	}
	if of != nil {
		here[of.File] = true
		if o != nil && o.moment == m.number {
			own = append(own, o.byFile[of.File]...)
		} else {
			own = append(own, of.Findings...)
		}
	}
	own.Sort()
	if o != nil {
		for file, found := range o.byFile {
			if !here[file] && found.Errors() {
				elsewhere++
			}
		}
	}
	return own, elsewhere
}
