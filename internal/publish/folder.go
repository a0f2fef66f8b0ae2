package publish

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"sync"

	"foundrow/internal/site"
	"foundrow/internal/source"
)

// A folder is where a site is published. It takes outputs from several goroutines, writes those that differ from what stands
// there, and knows its own files from those of others by the record.
type folder struct {
	path   string
	shown  string // its name in findings
	studio fs.FS  // where pictures are copied from
	had    *record

	mu       sync.Mutex
	lock     *os.File
	journal  *os.File
	folders  map[string]bool // those known to be there
	now      map[string]file // what was put so far
	written  map[string]bool
	removed  int
	last     *record // what was published in the end
	findings source.Findings
}

// openFolder locks a folder to publish into, making it if need be, and clears up after a run that was cut short.
func openFolder(where, shown string, studio fs.FS) (*folder, error) {
	if err := os.MkdirAll(where, 0o777); err != nil {
		return nil, err
	}
	lock, err := lockFolder(where)
	if err != nil {
		return nil, err
	}
	had, err := readRecord(where)
	if err != nil {
		lock.Close()
		return nil, err
	}
	f := &folder{
		path: where, shown: shown, studio: studio, had: had, lock: lock,
		folders: map[string]bool{".": true},
		now:     make(map[string]file, len(had.files)),
		written: map[string]bool{},
	}
	for name := range had.stray {
		os.Remove(f.on(partial(name)))
	}
	return f, nil
}

// close gives the folder back to whoever publishes next.
func (f *folder) close() {
	if f.journal != nil {
		f.journal.Close()
	}
	f.lock.Close()
}

// on returns where an output lies on the disk.
func (f *folder) on(name string) string { return filepath.Join(f.path, filepath.FromSlash(name)) }

// partial is the name of a file while it is being written, in the folder where it will be.
func partial(name string) string { return path.Join(path.Dir(name), "."+path.Base(name)+".part") }

// Stands reports whether an output is there as it should be, and marks it as wanted if so.
func (f *folder) Stands(name string, digest site.Digest) bool {
	had, ours := f.had.files[name]
	if !ours || had.digest != digest || !f.untouched(had) {
		return false
	}
	f.mu.Lock()
	defer f.mu.Unlock()
	f.now[name] = had
	return true
}

// untouched reports whether a file of ours is as we left it. A look at its size and time is enough: whoever edits a published
// file by hand does not set its clock back.
func (f *folder) untouched(had file) bool {
	info, err := os.Lstat(f.on(had.name))
	return err == nil && info.Mode().IsRegular() && info.Size() == had.size && info.ModTime().UnixNano() == had.changed
}

// Put writes an output unless it stands already. A file that lies in its place and is not ours is left there, with a finding.
func (f *folder) Put(o site.Output) error {
	if f.Stands(o.Name, o.Digest) {
		return nil
	}
	if _, ours := f.had.files[o.Name]; !ours && !f.had.stray[o.Name] {
		free, err := f.free(o)
		if err != nil || !free {
			return err
		}
	}
	if err := f.begin(o.Name); err != nil {
		return err
	}
	wrote, err := f.write(o)
	if err != nil {
		return fmt.Errorf("writing %s: %w", f.on(o.Name), err)
	}
	f.mu.Lock()
	defer f.mu.Unlock()
	f.now[o.Name] = wrote
	f.written[o.Name] = true
	return nil
}

// free reports whether an output may be written where nothing of ours was. A file that already holds the very same bytes is
// taken for ours.
func (f *folder) free(o site.Output) (bool, error) {
	info, err := os.Lstat(f.on(o.Name))
	if errors.Is(err, fs.ErrNotExist) {
		return true, nil
	}
	if err != nil {
		return false, err
	}
	if info.Mode().IsRegular() {
		if file, err := os.Open(f.on(o.Name)); err == nil {
			defer file.Close()
			if digest, err := site.DigestFrom(file); err == nil && digest == o.Digest {
				return true, nil
			}
		}
	}
	f.mu.Lock()
	defer f.mu.Unlock()
	f.findings = append(f.findings, source.Finding{
		Rule:    "not-ours",
		Place:   source.Place{File: path.Join(f.shown, o.Name)},
		Message: "this is in the way of a page, and was not written by foundrow",
		Fix:     "move it away, or publish into another folder",
	})
	return false, nil
}

// begin makes the folder of an output and notes its name, so that after a run that was cut short our files can be told from a
// stranger's.
func (f *folder) begin(name string) error {
	if err := f.note(name); err != nil {
		return err
	}
	return f.makeFolder(path.Dir(name))
}

func (f *folder) note(name string) error {
	f.mu.Lock()
	defer f.mu.Unlock()
	if f.journal == nil {
		journal, err := os.OpenFile(f.on(journalName), os.O_CREATE|os.O_WRONLY|os.O_APPEND, 0o666)
		if err != nil {
			return err
		}
		f.journal = journal
	}
	_, err := f.journal.WriteString(name + "\n")
	return err
}

// makeFolder makes a folder and those above it. A link in the place of a folder is refused: it could lead anywhere.
func (f *folder) makeFolder(name string) error {
	f.mu.Lock()
	there := f.folders[name]
	f.mu.Unlock()
	if there {
		return nil
	}
	if err := f.makeFolder(path.Dir(name)); err != nil {
		return err
	}
	if err := os.Mkdir(f.on(name), 0o777); err != nil {
		info, seen := os.Lstat(f.on(name))
		if seen != nil {
			return err
		}
		if !info.IsDir() {
			return fmt.Errorf("%s is in the way: a folder must be made there", f.on(name))
		}
	}
	f.mu.Lock()
	f.folders[name] = true
	f.mu.Unlock()
	return nil
}

// write writes an output beside its place and moves it there, so that whoever looks sees all of the old file or all of the new.
func (f *folder) write(o site.Output) (wrote file, err error) {
	part := f.on(partial(o.Name))
	to, err := create(part)
	if err != nil {
		return file{}, err
	}
	defer func() {
		if err != nil {
			to.Close()
			os.Remove(part)
		}
	}()
	digest := o.Digest
	if o.From == "" {
		_, err = to.Write(o.Data)
	} else {
		digest, err = f.copy(to, o.From) // what it holds now, should it have changed since it was looked at
	}
	if err != nil {
		return file{}, err
	}
	info, err := to.Stat()
	if err != nil {
		return file{}, err
	}
	if err := to.Close(); err != nil {
		return file{}, err
	}
	if err := os.Rename(part, f.on(o.Name)); err != nil {
		return file{}, err
	}
	return file{name: o.Name, digest: digest, size: info.Size(), changed: info.ModTime().UnixNano()}, nil
}

// copy copies a file of the studio and returns the digest of what was copied.
func (f *folder) copy(to io.Writer, name string) (site.Digest, error) {
	from, err := f.studio.Open(name)
	if err != nil {
		return site.Absent, err
	}
	defer from.Close()
	return site.DigestFrom(io.TeeReader(from, to))
}

// create opens a new file, in the place of what a run that was cut short may have left.
func create(name string) (*os.File, error) {
	to, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if errors.Is(err, fs.ErrExist) {
		if err := os.Remove(name); err != nil {
			return nil, err
		}
		to, err = os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	}
	return to, err
}
