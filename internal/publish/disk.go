package publish

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"time"

	"foundrow/internal/site"
)

// A disk is a studio's folder. It remembers the digest of each file with what the disk says of it, so that a file is read again
// only when it may have changed.
type disk struct {
	root   string // without links
	opened time.Time

	mu     sync.Mutex
	stamps map[string]stamped // of the last run
	now    map[string]stamped // of this one
	inside map[string]error   // folders that were looked at: ErrOutside where one leads out of the studio
	fresh  bool               // something is sure now that was not in stamps
}

// A stamp is what a disk says of a file without reading it. A file that was written has another one, unless it was written
// twice within the grain of the disk's clock.
type stamp struct {
	size, modified, changed int64
	inode                   uint64
}

// stamped is a digest with the stamp of the file when it was taken.
type stamped struct {
	stamp
	digest site.Digest
	sure   bool // the stamp was old enough by then that a later write would show in it
}

// grain is how coarse the clock of a disk may be: FAT keeps even seconds.
const grain = 2 * time.Second

func openDisk(root string, stamps map[string]stamped) (*disk, error) {
	root, err := filepath.Abs(root)
	if err == nil {
		root, err = filepath.EvalSymlinks(root)
	}
	if err != nil {
		return nil, err
	}
	return &disk{
		root: root, opened: time.Now(), stamps: stamps,
		now: make(map[string]stamped, len(stamps)), inside: map[string]error{".": nil},
	}, nil
}

func (d *disk) on(name string) string { return filepath.Join(d.root, filepath.FromSlash(name)) }

// List returns the names in a folder; those of folders, and of links to folders, end with a slash.
func (d *disk) List(folder string) ([]string, error) {
	if err := d.within(folder); err != nil {
		return nil, err
	}
	entries, err := os.ReadDir(d.on(folder))
	if err != nil {
		return nil, err
	}
	names := make([]string, len(entries))
	for i, e := range entries {
		names[i] = e.Name()
		is := e.IsDir()
		if e.Type()&fs.ModeSymlink != 0 {
			info, err := os.Stat(d.on(path.Join(folder, e.Name())))
			is = err == nil && info.IsDir()
		}
		if is {
			names[i] += "/"
		}
	}
	slices.Sort(names)
	return names, nil
}

// Digest returns the digest of a file, from memory where its stamp is the same.
func (d *disk) Digest(name string) (site.Digest, error) {
	s, err := d.stamp(name)
	if err != nil {
		return site.Absent, err
	}
	d.mu.Lock()
	known, is := d.now[name]
	if !is || known.stamp != s {
		known, is = d.stamps[name]
		is = is && known.sure && known.stamp == s
	}
	if is {
		d.now[name] = known
	}
	d.mu.Unlock()
	if is {
		return known.digest, nil
	}
	file, err := os.Open(d.on(name))
	if err != nil {
		return site.Absent, err
	}
	defer file.Close()
	digest, err := site.DigestFrom(file)
	if err != nil {
		return site.Absent, err
	}
	d.remember(name, s, digest)
	return digest, nil
}

// Read returns a file, or as much of it as shows that it is larger than the limit.
func (d *disk) Read(name string, limit int64) ([]byte, site.Digest, error) {
	s, err := d.stamp(name)
	if err != nil {
		return nil, site.Absent, err
	}
	file, err := os.Open(d.on(name))
	if err != nil {
		return nil, site.Absent, err
	}
	defer file.Close()
	data := make([]byte, min(s.size, limit+1)+1) // one more, to meet the end of the file in the first read
	n, err := io.ReadFull(file, data)
	switch {
	case err == nil && s.size <= limit: // it has grown while it was read
		rest, err := io.ReadAll(io.LimitReader(file, limit+1-int64(n)))
		if err != nil {
			return nil, site.Absent, err
		}
		data = append(data, rest...)
	case err == nil:
		data = data[:limit+1]
	case errors.Is(err, io.ErrUnexpectedEOF) || err == io.EOF:
		data = data[:n]
	default:
		return nil, site.Absent, err
	}
	digest := site.DigestOf(data)
	d.remember(name, s, digest)
	return data, digest, nil
}

// Open opens a file to be copied.
func (d *disk) Open(name string) (fs.File, error) {
	if _, err := d.stamp(name); err != nil {
		return nil, err
	}
	return os.Open(d.on(name))
}

// stamp looks at a file without reading it. A link is followed as long as it stays in the studio.
func (d *disk) stamp(name string) (stamp, error) {
	if err := d.within(path.Dir(name)); err != nil {
		return stamp{}, err
	}
	info, err := os.Lstat(d.on(name))
	if err == nil && info.Mode()&fs.ModeSymlink != 0 {
		if err := d.follow(name); err != nil {
			return stamp{}, err
		}
		info, err = os.Stat(d.on(name))
	}
	if err != nil {
		return stamp{}, err
	}
	if !info.Mode().IsRegular() {
		return stamp{}, &fs.PathError{Op: "read", Path: name, Err: errors.New("it is no file")}
	}
	return stampOf(info), nil
}

// within reports whether a folder, and all above it, lie in the studio. A folder that is not there does.
func (d *disk) within(folder string) error {
	d.mu.Lock()
	err, known := d.inside[folder]
	d.mu.Unlock()
	if known {
		return err
	}
	if err = d.within(path.Dir(folder)); err == nil {
		if info, lost := os.Lstat(d.on(folder)); lost == nil && info.Mode()&fs.ModeSymlink != 0 {
			err = d.follow(folder)
		}
	}
	d.mu.Lock()
	d.inside[folder] = err
	d.mu.Unlock()
	return err
}

// follow reports where a link leads: ErrOutside if out of the studio.
func (d *disk) follow(name string) error {
	target, err := filepath.EvalSymlinks(d.on(name))
	if errors.Is(err, fs.ErrNotExist) {
		return &fs.PathError{Op: "read", Path: name, Err: errors.New("it is a link that leads nowhere")}
	}
	if err != nil {
		return err
	}
	if target != d.root && !strings.HasPrefix(target, d.root+string(filepath.Separator)) {
		return site.ErrOutside
	}
	return nil
}

// remember keeps the digest of a file with the stamp it had before it was read. If it was written so lately that the next write
// might leave the same stamp, it will be read again the next time.
func (d *disk) remember(name string, s stamp, digest site.Digest) {
	latest := max(s.modified, s.changed)
	d.mu.Lock()
	defer d.mu.Unlock()
	sure := time.Unix(0, latest).Before(d.opened.Add(-grain))
	d.now[name] = stamped{s, digest, sure}
	d.fresh = d.fresh || sure
}

// appendStamps prints the stamps for parseStamp to read, a line each. Those that are not sure are left out.
func (d *disk) appendStamps(b []byte) []byte {
	for name, s := range d.now {
		if !s.sure {
			continue
		}
		b = append(b, s.digest...)
		for _, n := range [...]int64{s.size, s.modified, s.changed, int64(s.inode)} {
			b = strconv.AppendInt(append(b, ' '), n, 10)
		}
		b = append(b, ' ')
		b = append(strconv.AppendQuote(b, name), '\n')
	}
	return b
}

// parseStamp reads a line of appendStamps.
func parseStamp(line string) (name string, s stamped, ok bool) {
	digest, line, _ := strings.Cut(line, " ")
	s.digest, s.sure = site.Digest(digest), true
	var inode int64
	for _, n := range [...]*int64{&s.size, &s.modified, &s.changed, &inode} {
		field, rest, _ := strings.Cut(line, " ")
		var err error
		if *n, err = strconv.ParseInt(field, 10, 64); err != nil {
			return "", s, false
		}
		line = rest
	}
	s.inode = uint64(inode)
	name, err := strconv.Unquote(line)
	return name, s, err == nil
}
