package watch

import (
	"sync"
	"time"

	"foundrow/internal/site"
)

// A sheaf holds the pages of one manuscript: the newest, and the last that were good.
type sheaf struct {
	mu      sync.Mutex
	moment  *moment // the newest this was brought up to
	last    *site.Sheets
	good    *site.Sheets
	record  *record // of good, or of the last as long as there is none
	change  *change // what came of the save that good is from
	at      time.Time
	draft   bool        // it has no date of release
	digest  site.Digest // of the manuscript
	gone    bool
	moved   string // the part it seems to be now
	visited int
}

// mostSheaves is how many manuscripts are kept with their pages; a designer looks at a few.
const mostSheaves = 48

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
	v.of, v.draft = &sh.last.Manuscript, sh.draft
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
		made, sh.draft = recordOf(sheets.Worked), !sheets.Plain && sheets.Worked.Page.Released == ""
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
