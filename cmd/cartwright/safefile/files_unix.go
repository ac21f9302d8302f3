//go:build unix

package safefile

import (
	"errors"
	"io/fs"
	"os"
	"syscall"
)

// names returns how many names a file has.
func names(_ string, info fs.FileInfo) uint64 {
	if s, ok := info.Sys().(*syscall.Stat_t); ok {
		return uint64(s.Nlink)
	}
	return 1
}

// keepOwner gives a new file the owner of the old one, where that is allowed.
func keepOwner(name string, old fs.FileInfo) {
	if s, ok := old.Sys().(*syscall.Stat_t); ok {
		_ = os.Chown(name, int(s.Uid), int(s.Gid))
	}
}

// rename gives a file another's name.
func rename(from, to string) error { return os.Rename(from, to) }

// syncFolder makes a new name safe on disk. Some file systems cannot do that.
func syncFolder(dir string) error {
	f, err := os.Open(dir)
	if err != nil {
		return err
	}
	err = f.Sync()
	if errors.Is(err, syscall.EINVAL) || errors.Is(err, syscall.ENOTSUP) {
		err = nil
	}
	return errors.Join(err, f.Close())
}
