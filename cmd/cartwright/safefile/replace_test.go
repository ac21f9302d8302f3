package safefile

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"testing"
)

// put makes a file and returns its name.
func put(t *testing.T, text string, mode os.FileMode) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "scenario.yaml")
	if err := os.WriteFile(path, []byte(text), mode); err != nil {
		t.Fatal(err)
	}
	return path
}

func filled(text string) func(io.Writer) error {
	return func(w io.Writer) error {
		_, err := io.WriteString(w, text)
		return err
	}
}

// holds checks what a file holds, and that nothing else is in its folder but what is named.
func holds(t *testing.T, path, want string, others ...string) {
	t.Helper()
	if got, err := os.ReadFile(path); err != nil || string(got) != want {
		t.Errorf("%s holds %q (%v), want %q", path, got, err, want)
	}
	entries, err := os.ReadDir(filepath.Dir(path))
	if err != nil || len(entries) != 1+len(others) {
		t.Errorf("the folder holds %v (%v)", entries, err)
	}
}

func TestReplaceKeepsTheMode(t *testing.T) {
	path := put(t, "old", 0o640)
	if err := Replace(path, filled("new"), nil); err != nil {
		t.Fatal(err)
	}
	holds(t, path, "new")
	if info, err := os.Stat(path); err != nil || info.Mode().Perm() != 0o640 {
		t.Errorf("mode %v (%v), want that of the file before", info.Mode(), err)
	}
}

func TestReplaceThatBreaksOff(t *testing.T) {
	path, broke := put(t, "old", 0o600), errors.New("broke off")
	err := Replace(path, func(w io.Writer) error {
		_, _ = io.WriteString(w, "half")
		return broke
	}, nil)
	if !errors.Is(err, broke) {
		t.Errorf("error %v, want %v", err, broke)
	}
	holds(t, path, "old")
}

// What is asked last may still refuse.
func TestReplaceThatIsRefused(t *testing.T) {
	path, refused := put(t, "old", 0o600), errors.New("somebody changed it")
	if err := Replace(path, filled("new"), func() error { return refused }); !errors.Is(err, refused) {
		t.Errorf("error %v, want %v", err, refused)
	}
	holds(t, path, "old")
}

// A file of two names keeps both, whether the new text is longer or shorter.
func TestReplaceKeepsHardLinks(t *testing.T) {
	for _, text := range []string{"new and longer than the old one", "n"} {
		path := put(t, "the old text", 0o600)
		other := filepath.Join(filepath.Dir(path), "other.yaml")
		if err := os.Link(path, other); err != nil {
			t.Fatal(err)
		}
		if err := Replace(path, filled(text), nil); err != nil {
			t.Fatal(err)
		}
		holds(t, path, text, "other.yaml")
		holds(t, other, text, "scenario.yaml")
	}
}

// A link to a file stays one.
func TestReplaceBehindALink(t *testing.T) {
	path := put(t, "old", 0o600)
	link := filepath.Join(filepath.Dir(path), "link.yaml")
	if err := os.Symlink(path, link); err != nil {
		t.Fatal(err)
	}
	if err := Replace(link, filled("new"), nil); err != nil {
		t.Fatal(err)
	}
	holds(t, path, "new", "link.yaml")
	if info, err := os.Lstat(link); err != nil || info.Mode()&os.ModeSymlink == 0 {
		t.Errorf("the link is %v (%v)", info.Mode(), err)
	}
}
