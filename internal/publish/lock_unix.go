//go:build unix

package publish

import (
	"fmt"
	"os"
	"syscall"
)

// lockFolder takes a folder for one run. The lock goes with the process, however it ends.
func lockFolder(name string) (*os.File, error) {
	folder, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	if err := syscall.Flock(int(folder.Fd()), syscall.LOCK_EX|syscall.LOCK_NB); err == syscall.EWOULDBLOCK {
		folder.Close()
		return nil, fmt.Errorf("another foundrow is publishing into %s", name)
	}
	return folder, nil // some disks know no locks: then two runs at once are the designer's care
}
