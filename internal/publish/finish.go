package publish

import (
	"bytes"
	"errors"
	"io/fs"
	"maps"
	"os"
	"path"
	"path/filepath"
	"slices"

	"foundrow/internal/site"
)

// finish removes what is stale, now that everything new is in its place, and writes the record. It is given the parts of the
// site; without them, after a failure, it removes nothing and adds what was written to what is known to be ours.
func (f *folder) finish(parts []site.Part) error {
	next := f.next(parts)
	f.last = next
	if parts != nil {
		if err := f.removeOthers(next); err != nil {
			return err
		}
	}
	if f.journal == nil && f.removed == 0 && len(f.had.stray) == 0 && f.sameAs(next) {
		return nil
	}
	if err := replaceFile(f.on(recordName), next.text()); err != nil {
		return err
	}
	err := os.Remove(f.on(journalName))
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	return err
}

// next returns the record of what is published now.
func (f *folder) next(parts []site.Part) *record {
	next := &record{files: map[string]file{}}
	add := func(p part) {
		names := p.files
		p.files = nil
		for _, name := range names {
			this, put := f.now[name]
			if !put {
				this, put = f.had.files[name]
			}
			if put { // it is not where somebody else's file is in the way
				next.files[name] = this
				p.files = append(p.files, name)
			}
		}
		next.parts = append(next.parts, p)
	}
	for _, p := range parts {
		add(part{name: p.Name, uses: p.Uses, summary: p.Summary, files: p.Outputs})
	}
	if parts == nil {
		for _, p := range f.had.parts {
			add(p)
		}
		rest := part{name: "unfinished"}
		for name := range f.now {
			rest.files = append(rest.files, name)
		}
		add(rest)
	}
	return next
}

// sameAs reports whether the record that is there says the same already.
func (f *folder) sameAs(next *record) bool {
	next.sort()
	return maps.Equal(f.had.files, next.files) && slices.EqualFunc(f.had.parts, next.parts, func(a, b part) bool {
		return a.name == b.name && a.uses == b.uses && bytes.Equal(a.summary, b.summary) && slices.Equal(a.files, b.files)
	})
}

// removeOthers removes the files that we once wrote and that belong to no part any more, and the folders that leaves empty.
func (f *folder) removeOthers(next *record) error {
	gone := map[string]bool{}
	for name := range f.had.files {
		gone[name] = true
	}
	for name := range f.had.stray {
		gone[name] = true
	}
	emptied := map[string]bool{}
	for name := range gone {
		if _, wanted := next.files[name]; wanted {
			continue
		}
		switch err := os.Remove(f.on(name)); {
		case err == nil:
			f.removed++
			emptied[path.Dir(name)] = true
		case !errors.Is(err, fs.ErrNotExist):
			return err
		}
	}
	for name := range emptied {
		for ; name != "." && os.Remove(f.on(name)) == nil; name = path.Dir(name) {
		}
	}
	return nil
}

// replaceFile writes a file beside its place and moves it there.
func replaceFile(name string, text []byte) error {
	part := filepath.Join(filepath.Dir(name), "."+filepath.Base(name)+".part")
	to, err := create(part)
	if err != nil {
		return err
	}
	_, err = to.Write(text)
	if err = errors.Join(err, to.Close()); err == nil {
		err = os.Rename(part, name)
	}
	if err != nil {
		os.Remove(part)
	}
	return err
}
