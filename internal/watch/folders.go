package watch

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"
)

// walkAll watches all folders of the studio that are not watched yet.
func (l *lookout) walkAll() {
	if l.add(l.root) {
		for _, folder := range watchedFolders {
			l.walk(filepath.Join(l.root, folder))
		}
	}
}

// walk watches a folder with all below it. A tree that was made in one go is told of by its top alone. What cannot be opened is
// left to whoever reads it.
func (l *lookout) walk(folder string) {
	if !l.add(folder) {
		return
	}
	entries, err := os.ReadDir(folder)
	if err != nil {
		return
	}
	for _, e := range entries {
		name := filepath.Join(folder, e.Name())
		switch {
		case e.IsDir():
			if !leftover(e.Name() + "/") {
				l.walk(name)
			}
		case leftover(e.Name()):
		case e.Type()&fs.ModeSymlink != 0:
			l.follow(name)
		}
		if l.watcher == nil {
			return
		}
	}
}

// follow watches where a link leads, if that is in the studio.
func (l *lookout) follow(link string) {
	target, err := filepath.EvalSymlinks(link)
	if err != nil || !strings.HasPrefix(target, l.root+string(filepath.Separator)) {
		return
	}
	l.linked = true
	info, err := os.Stat(target)
	if err != nil {
		return
	}
	if !info.IsDir() {
		l.add(filepath.Dir(target))
	} else if !l.watched[target] {
		l.walk(target)
	}
}

// add watches one folder. It is false where there is none to be watched.
func (l *lookout) add(folder string) bool {
	if l.watcher == nil {
		return false
	}
	err := l.watch(l.watcher, folder)
	switch {
	case err == nil:
		l.watched[folder] = true
		return true
	case errors.Is(err, syscall.ENOSPC), errors.Is(err, syscall.EMFILE), errors.Is(err, syscall.ENFILE):
		l.goRound(limit(err))
	}
	return false
}

// forget stops watching a folder with all below it: one that was renamed goes deaf, or tells of a name that it has no more.
func (l *lookout) forget(folder string) {
	if folder == l.root {
		l.info = nil
	}
	for name := range l.watched {
		if name == folder || strings.HasPrefix(name, folder+string(filepath.Separator)) {
			delete(l.watched, name)
			if l.watcher != nil {
				l.watcher.Remove(name) // the system may have done so already
			}
		}
	}
}
