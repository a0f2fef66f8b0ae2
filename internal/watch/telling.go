package watch

import (
	"slices"
	"time"

	"foundrow/internal/site"
	"foundrow/internal/source"
)

// Told says what a change came to. The first is of the studio as it was found. One without changes only has notices.
type Told struct {
	First    bool
	Changed  []string // files and folders
	Work     site.Work
	Open     int           // pages that somebody looks at
	Shown    time.Duration // from the change until the open pages could be had
	Took     time.Duration // until all was looked over
	Findings source.Findings
	New      source.Findings // those of them that were not there before
	Notices  []string        // what the machine cannot do, where that is new
	Lost     string          // why there is no studio any more
	Trouble  []error         // mistakes of ours
}

// news are findings that were not known. One that only stands in another line now is known.
func news(all, known source.Findings) source.Findings {
	type what struct{ file, rule, message string }
	had := map[what]int{}
	for _, f := range known {
		had[what{f.Place.File, f.Rule, f.Message}]++
	}
	var fresh source.Findings
	for _, f := range all {
		key := what{f.Place.File, f.Rule, f.Message}
		if had[key] == 0 {
			fresh = append(fresh, f)
		} else {
			had[key]--
		}
	}
	return fresh
}

// notice takes note of what the machine cannot do, and tells it where it is new.
func (w *watching) notice() {
	var all []string
	if why := w.lookout.Rounding(); why != "" {
		all = append(all, "Changes are looked for three times a second instead of being told of: "+why+".")
	}
	if why := w.past.trouble(); why != "" {
		all = append(all, "What was worked out cannot be remembered for the next time: "+why+".")
	}
	if !w.studio.setNotices(all) {
		return
	}
	w.studio.wakeAll()
	w.tell(Told{})
}

// tell tells something, with the notices that are new.
func (w *watching) tell(told Told) {
	w.telling.Lock()
	defer w.telling.Unlock()
	all := w.studio.allNotices()
	for _, n := range all {
		if !slices.Contains(w.notices, n) {
			told.Notices = append(told.Notices, n)
		}
	}
	w.notices = all
	if w.Tell != nil {
		w.Tell(told)
	}
}

func (s *studio) allNotices() []string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return slices.Clone(s.notices)
}

// setNotices reports whether they are others than before.
func (s *studio) setNotices(all []string) bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	same := slices.Equal(s.notices, all)
	s.notices = all
	return !same
}
