package safefile

import (
	"os"
	"path/filepath"
	"testing"
	"time"
)

// A file that somebody is just reading is replaced once he has done, and the file of the folder's turn is gone.
func TestReplaceWaitsForAReader(t *testing.T) {
	path := put(t, "old", 0o600)
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	time.AfterFunc(50*time.Millisecond, func() { f.Close() })
	if err := Replace(path, filled("new"), nil); err != nil {
		t.Fatal(err)
	}
	holds(t, path, "new")
	if _, err := os.Stat(filepath.Join(filepath.Dir(path), turnFile)); !os.IsNotExist(err) {
		t.Errorf("the file of the turn is still there: %v", err)
	}
}
