package safefile

import (
	"errors"
	"fmt"
	"path/filepath"
	"syscall"
	"time"
)

// What the syscall package does not name: https://learn.microsoft.com/windows/win32/api/fileapi/nf-fileapi-createfilew
// and .../debug/system-error-codes--0-499-.
const (
	deleteOnClose    = 0x04000000
	hidden           = syscall.FILE_ATTRIBUTE_HIDDEN
	sharingViolation = syscall.Errno(32)
	accessDenied     = syscall.ERROR_ACCESS_DENIED // also of a file that is being deleted
)

// turnFile is the lock: a file that only one run at a time can hold open, and that is gone when it is closed.
const turnFile = ".cartwright-turn"

// lock locks a folder against other runs of this program until release is called. Other programs are not kept out.
func lock(dir string) (release func(), err error) {
	name, err := syscall.UTF16PtrFromString(filepath.Join(dir, turnFile))
	if err != nil {
		return nil, err
	}
	var turn syscall.Handle
	err = insist(func() (err error) {
		turn, err = syscall.CreateFile(name, syscall.GENERIC_READ|syscall.GENERIC_WRITE, 0, nil, syscall.OPEN_ALWAYS,
			hidden|deleteOnClose, 0)
		return err
	})
	switch {
	case taken(err):
		return nil, fmt.Errorf("another program is writing in %s", dir)
	case err != nil:
		return nil, err
	}
	return func() { syscall.CloseHandle(turn) }, nil
}

// insist retries, for a while, what fails because another program has a file open.
func insist(try func() error) error {
	for waited := time.Duration(0); ; waited += lockStep {
		if err := try(); !taken(err) || waited >= lockTime {
			return err
		}
		time.Sleep(lockStep)
	}
}

// taken reports whether another program has a file open.
func taken(err error) bool { return errors.Is(err, sharingViolation) || errors.Is(err, accessDenied) }
