//go:build darwin || dragonfly || freebsd || linux || netbsd || openbsd || windows

package safefile

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"
)

// Many that each add a line at once, and begin anew where another was faster, lose none: between the last look and the
// new file nobody comes.
func TestReplaceLosesNoLine(t *testing.T) {
	path := put(t, "", 0o600)
	changed := errors.New("changed in the meantime")
	var all sync.WaitGroup
	const writers = 12
	for range writers {
		all.Go(func() {
			for {
				was, err := os.ReadFile(path)
				if err != nil {
					t.Error(err)
					return
				}
				err = Replace(path, filled(string(was)+"line\n"), func() error {
					if now, err := os.ReadFile(path); err != nil || string(now) != string(was) {
						return changed
					}
					time.Sleep(time.Millisecond) // in which another could slip in
					return nil
				})
				if !errors.Is(err, changed) {
					if err != nil {
						t.Error(err)
					}
					return
				}
			}
		})
	}
	all.Wait()
	holds(t, path, strings.Repeat("line\n", writers))
}

// Whoever finds the folder taken for long says so and changes nothing.
func TestReplaceWaitsForItsTurn(t *testing.T) {
	path := put(t, "old", 0o600)
	release, err := lock(filepath.Dir(path))
	if err != nil {
		t.Fatal(err)
	}
	if err := Replace(path, filled("new"), nil); err == nil || !strings.Contains(err.Error(), "another program is writing") {
		t.Errorf("error %v, want that another program is writing", err)
	}
	holds(t, path, "old")
	release()
	if err := Replace(path, filled("new"), nil); err != nil {
		t.Fatal(err)
	}
	holds(t, path, "new")
}
