//go:build darwin || dragonfly || freebsd || linux || netbsd || openbsd

package safefile

import (
	"errors"
	"fmt"
	"os"
	"syscall"
	"time"
)

// lock locks a folder against other runs of this program until release is called. Other programs are not kept out,
// and where the file system has no locks nobody is.
func lock(dir string) (release func(), err error) {
	f, err := os.Open(dir)
	if err != nil {
		return nil, err
	}
	release = func() { f.Close() } // which gives the lock back
	for waited := time.Duration(0); ; waited += lockStep {
		err := syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB)
		switch {
		case !errors.Is(err, syscall.EWOULDBLOCK):
			return release, nil
		case waited >= lockTime:
			release()
			return nil, fmt.Errorf("another program is writing in %s", dir)
		}
		time.Sleep(lockStep)
	}
}
