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
}

// A placed output was made at some time.
type placed struct {
	site.Output
	at time.Time
}

// A sheaf holds the pages of one manuscript: the newest, and the last that were good.
type sheaf struct {
	mu      sync.Mutex
	moment  *moment // the newest this was brought up to
	last    *site.Sheets
	good    *site.Sheets
	record  *record // of good, or of the last as long as there is none
	change  *change // what came of the save that good is from
	at      time.Time
	digest  site.Digest // of the manuscript
	gone    bool
	moved   string // the part it seems to be now
	visited int
}

// mostSheaves is how many manuscripts are kept with their pages; a designer looks at a few.
const mostSheaves = 48

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

// has reports whether a page was in a sheaf when it was looked at last.
func (sh *sheaf) has(name string) bool {
	sh.mu.Lock()
	defer sh.mu.Unlock()
	for _, sheets := range [...]*site.Sheets{sh.good, sh.last} {
		if sheets != nil {
			if _, is := sheets.Outputs[name]; is {
				return true
			}
		}
	}
	return false
}

// sheaf returns the sheaf of a part, which it makes if need be; then the one that was not looked at for longest goes.
func (s *studio) sheaf(part string) *sheaf {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.visits++
	sh := s.sheaves[part]
	if sh == nil {
		sh = &sheaf{}
		s.sheaves[part] = sh
	}
	sh.visited = s.visits
	if len(s.sheaves) > mostSheaves {
		oldest := part
		for p, other := range s.sheaves {
			if other.visited < s.sheaves[oldest].visited {
				oldest = p
			}
		}
		delete(s.sheaves, oldest)
	}
	return sh
}

// show brings a sheaf up to a moment and takes a page from it.
func (sh *sheaf) show(s *studio, m *moment, part, name string) (view, bool) {
	sh.mu.Lock()
	defer sh.mu.Unlock()
	if sh.moment == nil || sh.moment.number < m.number {
		sh.bring(s, m, part)
	}
	m = sh.moment
	v := view{moment: m, standing: good, at: sh.at, record: sh.record, change: sh.change, moved: sh.moved}
	sheets := sh.good
	switch {
	case sh.last == nil:
		return v, false
	case sh.gone:
		v.standing = gone
	case sh.last == sh.good && m.lost != "":
		v.standing = behind
	case sh.last != sh.good && sh.good != nil:
		v.standing = behind
	case sh.good == nil:
		v.standing, sheets = rough, sh.last
	}
	if sheets == nil {
		sheets = sh.last
	}
	v.of = &sh.last.Manuscript
	if sh.last.Trouble != nil {
		v.trouble = sh.last.Trouble.Error()
	}
	o, is := sheets.Outputs[name]
	v.Output = o
	if !is && !sh.gone { // a page that has only just come, of which there is no good one yet
		if o, is = sh.last.Outputs[name]; is {
			v.Output, v.standing = o, rough
		}
	}
	return v, is
}

// bring brings a sheaf up to a moment.
func (sh *sheaf) bring(s *studio, m *moment, part string) {
	sh.moment = m
	if m.lost != "" {
		return
	}
	sheets := m.preview.Sheets(part, sh.last)
	if sh.gone = sheets == nil; sh.gone || sheets == sh.last {
		return
	}
	sh.moved = ""
	sh.digest, _ = s.tree.Digest(sheets.File)
	var made *record
	if sheets.Worked != nil {
		made = recordOf(sheets.Worked)
		sheets.Worked = nil
	}
	sh.last = sheets
	switch {
	case sheets.Good:
		if sh.good != nil {
			sh.change = compare(sh.record, made)
			sh.change.Words = sh.change.empty() && !sameOutputs(sh.good, sheets)
		}
		sh.good, sh.record, sh.at = sheets, made, m.at
	case sh.good == nil:
		sh.record, sh.at = made, m.at
	}
}

func sameOutputs(a, b *site.Sheets) bool {
	if len(a.Outputs) != len(b.Outputs) {
		return false
	}
	for name, o := range a.Outputs {
		if b.Outputs[name].Digest != o.Digest {
			return false
		}
	}
	return true
}

// looked takes note of how the whole studio stands.
func (s *studio) looked(o *site.Overview, m *moment) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.overview = &overview{o, m.number}
}

// findings are those that stand over a page: its own, and those of what all pages share. The others are elsewhere.
func (s *studio) findings(m *moment, of *site.Manuscript) (own, elsewhere source.Findings) {
	s.mu.Lock()
	o := s.overview
	s.mu.Unlock()
	if m.lost != "" {
		return nil, nil
	}
	fresh := o != nil && o.moment == m.number
	if of != nil && !fresh {
		own = append(own, of.Findings...)
	}
	own = append(own, m.preview.Shared()...)
	if o != nil {
		for _, f := range o.Findings {
			switch {
			case slices.ContainsFunc(own, func(mine source.Finding) bool {
				return mine.Place == f.Place && mine.Rule == f.Rule && mine.Message == f.Message
			}):
			case of != nil && f.Place.File == of.File:
				if fresh {
					own = append(own, f)
				}
			default:
				elsewhere = append(elsewhere, f)
			}
		}
	}
	own.Sort()
	return own, elsewhere
}
