//go:build unix

package scenarios_test

import (
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"cartwright/scenarios"
)

// A pipe would be waited on for as long as nobody writes to it; it is refused at once, and so is a device.
func TestPipesAndDevicesAreRefused(t *testing.T) {
	dir := t.TempDir()
	pipe := func(name string) string {
		path := filepath.Join(dir, name)
		if err := syscall.Mkfifo(path, 0o600); err != nil {
			t.Fatal(err)
		}
		return path
	}
	measured := filepath.Join(dir, "measured.yaml")
	if err := os.WriteFile(measured, []byte(strings.Replace(plain, "loads:\n  - {name: lamp, watts: 60 W}", "measured: loads.csv", 1)), 0o600); err != nil {
		t.Fatal(err)
	}
	pipe("loads.csv")
	for _, test := range []struct{ open, want string }{
		{pipe("scenario.yaml"), `DIR/scenario.yaml: the file "DIR/scenario.yaml" is a pipe; give the name of a plain file`},
		{dir, `DIR/scenario.yaml: the file "DIR/scenario.yaml" is a pipe; give the name of a plain file`},
		{"/dev/zero", `/dev/zero: the file "/dev/zero" is a device; give the name of a plain file`},
		{measured, `DIR/measured.yaml:4:11: the file "DIR/loads.csv" is a pipe; give the name of a plain file`},
	} {
		done := make(chan error, 1)
		go func() {
			_, err := scenarios.Open(test.open)
			done <- err
		}()
		select {
		case err := <-done:
			expect(t, err, strings.ReplaceAll(test.want, "DIR", dir))
		case <-time.After(5 * time.Second):
			t.Errorf("%s is still waited on", test.open)
		}
	}
}
