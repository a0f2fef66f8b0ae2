package watch

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"syscall"
	"time"

	"github.com/fsnotify/fsnotify"
)

// The folders of a studio that are watched. What is published lies outside of them, so that publishing wakes nobody.
var watchedFolders = [...]string{"content", "layouts"}

// How long a lookout waits. An editor that saves makes several events; they are over when there was none for quiet, and are acted
// upon after patience even if they are not.
const (
	quiet    = 50 * time.Millisecond
	patience = 400 * time.Millisecond
	rounds   = 300 * time.Millisecond // between two looks where the system does not tell of changes
	check    = time.Second            // between two looks whether the studio's folder is still the same
	sweep    = 10 * time.Second       // between two looks over everything, for what no event told of: network disks, sleep
)

// A lookout notices that something in a studio was touched, and where; what came of it others find out. Where the system cannot
// tell, it goes round and has everything looked at.
type lookout struct {
	given string // the studio's folder as it was named
	root  string // the same without links

	watcher *fsnotify.Watcher
	watch   func(*fsnotify.Watcher, string) error
	watched map[string]bool // folders, in full
	linked  bool            // there is a link somewhere: what it shows may change under another name
	info    fs.FileInfo     // of the root, to see whether it is still the same folder
	swept   time.Time

	mu    sync.Mutex
	noted notices
	since time.Time     // of the first of them
	bell  chan struct{} // rings when there are any
	why   string        // why the system cannot tell; empty while it can
}

// newLookout begins to watch a studio. With rounding it goes round from the start.
func newLookout(root string, rounding bool) *lookout {
	l := &lookout{given: root, bell: make(chan struct{}, 1), watch: (*fsnotify.Watcher).Add, watched: map[string]bool{}, swept: time.Now()}
	l.settle()
	if rounding {
		l.goRound("as it was asked to")
		return l
	}
	watcher, err := fsnotify.NewWatcher()
	if err != nil {
		l.goRound(limit(err))
		return l
	}
	l.watcher = watcher
	l.walkAll()
	return l
}

// settle finds out where the studio's folder really lies.
func (l *lookout) settle() {
	l.root = l.given
	if real, err := filepath.EvalSymlinks(l.given); err == nil {
		l.root = real
	}
	l.info, _ = os.Stat(l.root)
}

// Rounding says why the lookout goes round instead of being told; it is empty where it is told.
func (l *lookout) Rounding() string {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.why
}

// goRound gives up on being told.
func (l *lookout) goRound(why string) {
	if l.watcher != nil {
		l.watcher.Close()
		l.watcher = nil
	}
	l.watched = map[string]bool{}
	l.mu.Lock()
	l.why = why
	l.mu.Unlock()
	l.note("", true)
}

// limit says which limit of the system an error is about.
func limit(err error) string {
	switch {
	case errors.Is(err, syscall.ENOSPC):
		return "the system allows no more watched folders (on Linux: fs.inotify.max_user_watches)"
	case errors.Is(err, syscall.EMFILE):
		return "the system allows no more watchers or open files (on Linux: fs.inotify.max_user_instances, or ulimit -n)"
	case errors.Is(err, syscall.ENFILE):
		return "the system allows no more open files (on Linux: fs.file-max)"
	}
	return "the system cannot watch folders here: " + err.Error()
}

// run notices until the context ends.
func (l *lookout) run(ctx context.Context) {
	defer func() {
		if l.watcher != nil {
			l.watcher.Close()
		}
	}()
	for {
		var events chan fsnotify.Event
		var errs chan error
		wait := rounds
		if l.watcher != nil {
			events, errs, wait = l.watcher.Events, l.watcher.Errors, check
		}
		select {
		case <-ctx.Done():
			return
		case ev, open := <-events:
			if !open {
				l.goRound("the system has stopped telling of changes")
				continue
			}
			l.hear(ev)
		case err := <-errs:
			if err != nil { // more has happened than could be told, or what has cannot be known
				l.walkAll()
				l.note("", true)
			}
		case <-time.After(wait):
			l.goOver()
		}
	}
}

// goOver looks after what no event tells of.
func (l *lookout) goOver() {
	info, err := os.Stat(l.given)
	switch {
	case l.watcher == nil:
		l.note("", true)
	case err != nil:
		if l.info != nil {
			l.info = nil
			l.note("", true)
		}
	case l.info == nil || !os.SameFile(l.info, info): // it is back, or another one took its place
		l.forget(l.root)
		l.settle()
		l.walkAll()
		l.note("", true)
	case time.Since(l.swept) >= sweep:
		l.swept = time.Now()
		l.walkAll()
		l.note("", true)
	}
}

// hear takes in what the system tells.
func (l *lookout) hear(ev fsnotify.Event) {
	info, err := os.Lstat(ev.Name)
	base := filepath.Base(ev.Name)
	if l.watched[ev.Name] || err == nil && info.IsDir() {
		base += "/"
	}
	if leftover(base) {
		return
	}
	if ev.Has(fsnotify.Remove) || ev.Has(fsnotify.Rename) {
		l.forget(ev.Name)
	}
	if err == nil && !l.watched[ev.Name] {
		switch {
		case info.Mode()&fs.ModeSymlink != 0:
			l.follow(ev.Name)
		case info.IsDir() && ev.Name != l.root:
			l.walk(ev.Name)
		}
	}
	name, err := filepath.Rel(l.root, ev.Name)
	if err != nil || l.linked {
		l.note("", true)
		return
	}
	name = filepath.ToSlash(name)
	for _, folder := range watchedFolders {
		if name == folder || strings.HasPrefix(name, folder+"/") {
			l.note(name, false)
		}
	}
	if name == "." {
		l.note("", true)
	}
}

// note keeps what was noticed until somebody asks.
func (l *lookout) note(name string, all bool) {
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.noted.empty() {
		l.since = time.Now()
	}
	if all {
		l.noted.all = true
	} else {
		l.noted.add(name)
	}
	select {
	case l.bell <- struct{}{}:
	default:
	}
}

// next waits for something to be noticed and then until it is quiet, or patience is at its end. It returns what was noticed and
// since when, or an error when the context ends first.
func (l *lookout) next(ctx context.Context) (notices, time.Time, error) {
	for {
		select {
		case <-ctx.Done():
			return notices{}, time.Time{}, ctx.Err()
		case <-l.bell:
		}
		l.mu.Lock()
		since := l.since
		l.mu.Unlock()
		l.untilQuiet(ctx, since.Add(patience))
		if noted := l.take(); !noted.empty() {
			return noted, since, nil
		}
	}
}

// take takes what was noticed so far.
func (l *lookout) take() notices {
	l.mu.Lock()
	defer l.mu.Unlock()
	noted := l.noted
	l.noted = notices{}
	return noted
}

// untilQuiet waits until nothing is noticed for a while, but no longer than to the end.
func (l *lookout) untilQuiet(ctx context.Context, end time.Time) {
	for {
		wait := min(quiet, time.Until(end))
		if wait <= 0 {
			return
		}
		select {
		case <-ctx.Done():
			return
		case <-l.bell:
		case <-time.After(wait):
			return
		}
	}
}
