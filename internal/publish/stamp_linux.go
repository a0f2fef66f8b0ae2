package publish

import (
	"io/fs"
	"syscall"
)

// stampOf takes a file's stamp. The time of the last change to its entry cannot be set back, and a file that took another's place
// has another inode.
func stampOf(info fs.FileInfo) stamp {
	s := stamp{size: info.Size(), modified: info.ModTime().UnixNano()}
	if sys, ok := info.Sys().(*syscall.Stat_t); ok {
		s.changed, s.inode = sys.Ctim.Nano(), sys.Ino
	}
	return s
}
