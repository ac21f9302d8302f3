//go:build unix

package safefile

import (
	"io"
	"syscall"
	"testing"
	"time"
)

// A signal that comes while a file is written does not leave half of it: the process lives until it is done.
func TestReplaceOutlivesASignal(t *testing.T) {
	for _, s := range []syscall.Signal{syscall.SIGTERM, syscall.SIGHUP, syscall.SIGINT} {
		path := put(t, "old", 0o600)
		err := Replace(path, func(w io.Writer) error {
			if err := syscall.Kill(syscall.Getpid(), s); err != nil {
				return err
			}
			time.Sleep(20 * time.Millisecond) // until it has come
			_, err := io.WriteString(w, "new")
			return err
		}, nil)
		if err != nil {
			t.Fatal(err)
		}
		holds(t, path, "new")
	}
}
