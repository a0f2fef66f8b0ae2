//go:build !linux

package publish

import "io/fs"

// stampOf takes a file's stamp, as far as every system tells it.
func stampOf(info fs.FileInfo) stamp {
	return stamp{size: info.Size(), modified: info.ModTime().UnixNano()}
}
