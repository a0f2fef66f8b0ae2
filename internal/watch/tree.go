package watch

import (
	"errors"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"time"

	"foundrow/internal/publish"
	"foundrow/internal/site"
)

// A tree is a studio's files as they were last looked at. What it was asked once it answers from memory, until it is told where
// to look again; what it was never asked is nobody's concern. So the list of what was asked is the list of what is watched, and a
// studio changes when an answer does.
type tree struct {
	root string

	mu    sync.RWMutex
	disk  site.Files // opened anew for every look: a folder may have become a link
	lists map[string]listing
	files map[string]sighting
}

// A listing is what a folder was seen to hold.
type listing struct {
	names []string
	err   error
}

// A sighting is what was seen of a file.
type sighting struct {
	digest site.Digest
	err    error
	info   fs.FileInfo // nil if there was none to be had
	sure   bool        // a later write will show in info
}

// grain is how coarse the clock of a disk may be: FAT keeps even seconds.
const grain = 2 * time.Second

func openTree(root string) (*tree, error) {
	disk, err := publish.Read(root)
	if err != nil {
		return nil, err
	}
	return &tree{root: root, disk: disk, lists: map[string]listing{}, files: map[string]sighting{}}, nil
}

// List returns the names in a folder.
func (t *tree) List(folder string) ([]string, error) {
	t.mu.RLock()
	l, known := t.lists[folder]
	disk := t.disk
	t.mu.RUnlock()
	if !known {
		l = list(disk, folder)
		t.mu.Lock()
		t.lists[folder] = l
		t.mu.Unlock()
	}
	return l.names, l.err
}

func list(disk site.Files, folder string) listing {
	names, err := disk.List(folder)
	return listing{names, err}
}

// Digest returns the digest of a file.
func (t *tree) Digest(name string) (site.Digest, error) {
	t.mu.RLock()
	s, known := t.files[name]
	disk := t.disk
	t.mu.RUnlock()
	if !known {
		s = t.sight(disk, name)
		t.mu.Lock()
		t.files[name] = s
		t.mu.Unlock()
	}
	return s.digest, s.err
}

// sight looks at a file.
func (t *tree) sight(disk site.Files, name string) sighting {
	s := t.stat(name)
	s.digest, s.err = disk.Digest(name)
	return s
}

// stat looks at a file without reading it.
func (t *tree) stat(name string) sighting {
	info, err := os.Stat(filepath.Join(t.root, filepath.FromSlash(name)))
	if err != nil {
		return sighting{err: err}
	}
	return sighting{info: info, sure: time.Since(info.ModTime()) > grain}
}

// Read returns a file. One that has been written since it was last looked at is read as it is now, and its digest says so; that
// the page made of it is not the last there will be, the next look finds.
func (t *tree) Read(name string, limit int64) ([]byte, site.Digest, error) {
	t.mu.RLock()
	_, known := t.files[name]
	disk := t.disk
	t.mu.RUnlock()
	s := sighting{}
	if !known {
		s = t.stat(name)
	}
	data, digest, err := disk.Read(name, limit)
	if !known {
		s.digest, s.err = digest, err
		t.mu.Lock()
		t.files[name] = s
		t.mu.Unlock()
	}
	return data, digest, err
}

// Open opens a file to be sent as it is.
func (t *tree) Open(name string) (fs.File, error) {
	t.mu.RLock()
	defer t.mu.RUnlock()
	if f, can := t.disk.(fs.FS); can {
		return f.Open(name)
	}
	return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrNotExist}
}

// look looks again where something was noticed, and returns the names of what is not as it was. A file that is suddenly empty or
// gone may be in the middle of being saved: unless it is to be believed at once, nothing is taken over and unsettled is true.
func (t *tree) look(where notices, believe bool) (changed []string, unsettled bool) {
	var disk site.Files = nowhere{}
	if opened, err := publish.Read(t.root); err == nil {
		disk = opened
	}
	lists, files := map[string]listing{}, map[string]sighting{}
	t.mu.RLock()
	for folder, was := range t.lists {
		if !where.reachesFolder(folder) {
			continue
		}
		is := list(disk, folder)
		lists[folder] = is
		changed = append(changed, changes(folder, was, is)...)
	}
	for name, was := range t.files {
		named, near := where.reaches(name)
		if !named && (!near || t.asItWas(name, was)) {
			continue
		}
		is := t.sight(disk, name)
		files[name] = is
		if was.digest == is.digest && said(was.err) == said(is.err) {
			continue
		}
		changed = append(changed, name)
		if holds(was) && !holds(is) && (is.err == nil || errors.Is(is.err, fs.ErrNotExist)) {
			unsettled = true
		}
	}
	t.mu.RUnlock()
	if unsettled && !believe {
		return nil, true
	}
	t.mu.Lock()
	defer t.mu.Unlock()
	t.disk = disk
	for folder, l := range lists {
		t.lists[folder] = l
	}
	for name, s := range files {
		t.files[name] = s
	}
	slices.Sort(changed)
	return slices.Compact(changed), false
}

// asItWas reports whether a file is the same as far as can be said without reading it.
func (t *tree) asItWas(name string, was sighting) bool {
	is := t.stat(name)
	if was.info == nil || is.info == nil {
		return errors.Is(was.err, fs.ErrNotExist) && errors.Is(is.err, fs.ErrNotExist)
	}
	return was.sure && was.err == nil && os.SameFile(was.info, is.info) && was.info.Size() == is.info.Size() &&
		was.info.Mode() == is.info.Mode() && was.info.ModTime().Equal(is.info.ModTime())
}

// nothing is the digest of a file with nothing in it.
var nothing = site.DigestOf(nil)

// holds reports whether a file was seen to have something in it.
func holds(s sighting) bool { return s.err == nil && s.digest != nothing }

func said(err error) string {
	switch {
	case err == nil:
		return ""
	case errors.Is(err, fs.ErrNotExist):
		return "absent"
	}
	return err.Error()
}

// changes names what came to a folder and what left it, but for what editors leave lying about.
func changes(folder string, was, is listing) (names []string) {
	if said(was.err) != said(is.err) {
		names = append(names, folder)
	}
	missing := func(from, in []string) {
		for _, name := range from {
			if _, there := slices.BinarySearch(in, name); !there && !leftover(name) {
				names = append(names, path.Join(folder, name))
			}
		}
	}
	missing(was.names, is.names)
	missing(is.names, was.names)
	return names
}

// leftover reports whether a name is of the kind that editors and systems make for a moment or leave behind. Those of folders end
// with a slash.
func leftover(name string) bool {
	bare := strings.TrimSuffix(name, "/")
	return strings.HasPrefix(bare, ".") || strings.HasPrefix(bare, "#") || strings.HasSuffix(bare, "~") ||
		strings.HasSuffix(name, ".swp") || strings.HasSuffix(name, ".tmp") || name == "4913"
}

// nowhere is a studio's folder that is not there any more.
type nowhere struct{}

func (nowhere) List(string) ([]string, error)      { return nil, fs.ErrNotExist }
func (nowhere) Digest(string) (site.Digest, error) { return site.Absent, fs.ErrNotExist }
func (nowhere) Read(string, int64) ([]byte, site.Digest, error) {
	return nil, site.Absent, fs.ErrNotExist
}
