package cli

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// full is a disk without room.
type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("no room") }

// Whatever command cannot write its answer ends with 5 and says so.
func TestStdoutFails(t *testing.T) {
	for _, line := range []string{"", "help", "demo", "demo cider-shed", "parts", "sources --format json", "completion bash",
		"model star-party"} {
		t.Run(line, func(t *testing.T) {
			var stderr bytes.Buffer
			code := Program{}.Run(context.Background(), strings.Fields(line), strings.NewReader(""), full{}, &stderr)
			if code != codeWrite {
				t.Errorf("exit %d, want %d", code, codeWrite)
			}
			if !strings.Contains(stderr.String(), "cannot write to standard output: no room") {
				t.Errorf("stderr: %s", stderr.String())
			}
		})
	}
}

// A file is replaced whole or left as it was, and nothing is left beside it.
func TestWriteFile(t *testing.T) {
	a := &app{stdout: &output{w: io.Discard}}
	good := func(w io.Writer) error { _, err := io.WriteString(w, "new"); return err }
	bad := func(w io.Writer) error {
		fmt.Fprint(w, "half")
		return errors.New("broke off")
	}
	for _, c := range []struct {
		name  string
		write func(io.Writer) error
		old   string // "": there is no file yet
		want  string
		fails bool
	}{
		{"new file", good, "", "new", false},
		{"replaced", good, "old", "new", false},
		{"broke off, nothing before", bad, "", "", true},
		{"broke off, old stays", bad, "old", "old", true},
	} {
		t.Run(c.name, func(t *testing.T) {
			dir := t.TempDir()
			path := filepath.Join(dir, "model.mps")
			if c.old != "" {
				if err := os.WriteFile(path, []byte(c.old), 0o640); err != nil {
					t.Fatal(err)
				}
			}
			err := a.writeFile(t.Context(), target{path: path}, c.write)
			if (err != nil) != c.fails {
				t.Errorf("error %v, want one: %v", err, c.fails)
			}
			got, _ := os.ReadFile(path)
			if string(got) != c.want {
				t.Errorf("file holds %q, want %q", got, c.want)
			}
			if c.old != "" {
				if info, err := os.Stat(path); err != nil || info.Mode().Perm() != 0o640 {
					t.Errorf("mode %v (%v), want that of the file before", info.Mode(), err)
				}
			}
			entries, err := os.ReadDir(dir)
			if err != nil {
				t.Fatal(err)
			}
			for _, e := range entries {
				if e.Name() != "model.mps" {
					t.Errorf("%s was left behind", e.Name())
				}
			}
		})
	}
	t.Run("folder", func(t *testing.T) {
		var o *outcome
		if err := a.writeFile(t.Context(), target{path: t.TempDir()}, good); !errors.As(err, &o) || o.code != codeInput {
			t.Errorf("error %v, want wrong input", err)
		}
	})
	t.Run("link", func(t *testing.T) {
		dir := t.TempDir()
		kept, link := filepath.Join(dir, "kept"), filepath.Join(dir, "link")
		if err := os.WriteFile(kept, []byte("old"), 0o600); err != nil {
			t.Fatal(err)
		}
		if err := os.Symlink(kept, link); err != nil {
			t.Fatal(err)
		}
		if err := a.writeFile(t.Context(), target{path: link}, good); err != nil {
			t.Fatal(err)
		}
		if got, _ := os.ReadFile(kept); string(got) != "new" {
			t.Errorf("the link's target holds %q, want %q", got, "new")
		}
	})
}

// A file that the run reads is not written over, under whatever name.
func TestWriteFileSparesInputs(t *testing.T) {
	dir := t.TempDir()
	input, other := filepath.Join(dir, "scenario.yaml"), filepath.Join(dir, "other.mps")
	if err := os.WriteFile(input, []byte("mine"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Link(input, other); err != nil {
		t.Fatal(err)
	}
	a := &app{stdout: &output{w: io.Discard}}
	for _, path := range []string{input, other, filepath.Join(dir, ".", "scenario.yaml")} {
		err := a.writeFile(t.Context(), target{path: path, inputs: []string{input}}, func(w io.Writer) error {
			_, err := io.WriteString(w, "lost")
			return err
		})
		if err == nil || !strings.Contains(err.Error(), "is read by this run") {
			t.Errorf("%s: error %v, want one that says that the run reads it", path, err)
		}
	}
	if text, _ := os.ReadFile(input); string(text) != "mine" {
		t.Errorf("the input holds %q", text)
	}
}

// Writing that is stopped leaves what was there, and nothing beside it.
func TestWriteFileStopped(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	path := filepath.Join(t.TempDir(), "model.mps")
	a := &app{stdout: &output{w: io.Discard}}
	err := a.writeFile(ctx, target{path: path}, func(w io.Writer) error {
		if _, err := io.WriteString(w, "half"); err != nil {
			return err
		}
		stop()
		_, err := io.WriteString(w, "the rest")
		return err
	})
	var o *outcome
	if !errors.As(err, &o) || o.code != codeUnproven {
		t.Errorf("error %v, want that it was stopped", err)
	}
	if entries, err := os.ReadDir(filepath.Dir(path)); err != nil || len(entries) > 0 {
		t.Errorf("left behind: %v, %v", entries, err)
	}
}
