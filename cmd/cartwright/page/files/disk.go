//go:build !js

package files

import (
	"bytes"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"cartwright/catalog"
	"cartwright/cmd/cartwright/safefile"
	"cartwright/scenarios"
)

// Disk is this machine's disk.
type Disk struct{}

// Scenario reads a text as if it stood in the scenario's file.
func (Disk) Scenario(file string, text []byte) (*scenarios.Scenario, error) {
	return scenarios.OpenText(file, text, nil)
}

// Beside returns the name of what the scenario in a file calls so.
func (Disk) Beside(file, called string) string {
	if filepath.IsAbs(called) {
		return called
	}
	return filepath.Join(filepath.Dir(file), filepath.FromSlash(called))
}

// Folder returns a folder.
func (Disk) Folder(name string) fs.FS { return os.DirFS(name) }

// Workbook reads a catalogue that is a workbook.
func (Disk) Workbook(name string) (*catalog.Catalog, error) { return catalog.Open(name) }

// Read returns the text of a file.
func (Disk) Read(name string) ([]byte, error) { return os.ReadFile(name) }

// Shared is true.
func (Disk) Shared() bool { return true }

// Stamp tells one state of files, and of the files of folders, from another, by their sizes and times.
func (Disk) Stamp(names []string) string {
	var b strings.Builder
	for _, name := range names {
		entries, err := os.ReadDir(name)
		if err != nil {
			if info, err := os.Stat(name); err == nil {
				fmt.Fprintln(&b, name, info.Size(), info.ModTime().UnixNano())
			}
			continue
		}
		for _, e := range entries {
			if info, err := e.Info(); err == nil {
				fmt.Fprintln(&b, name, e.Name(), info.Size(), info.ModTime().UnixNano())
			}
		}
	}
	return b.String()
}

// Save writes all changes, none where a file is no longer what it was.
func (Disk) Save(changes []Change) (written []string, err error) {
	unchanged := func(c Change) error {
		if text, err := os.ReadFile(c.Name); err != nil || !bytes.Equal(text, c.Was) {
			return fmt.Errorf("%s %w", c.Name, ErrChanged)
		}
		return nil
	}
	for _, c := range changes { // before any is written
		if err := unchanged(c); err != nil {
			return nil, err
		}
		if info, err := os.Stat(c.Name); err == nil && info.Mode().Perm()&0o222 == 0 {
			return nil, fmt.Errorf("%s is read-only; nothing was written", c.Name)
		}
	}
	for _, c := range changes {
		fill := func(w io.Writer) error {
			_, err := w.Write(c.Text)
			return err
		}
		if err := safefile.Replace(c.Name, fill, func() error { return unchanged(c) }); err != nil {
			return written, fmt.Errorf("cannot write %s: %w", c.Name, err)
		}
		written = append(written, c.Name)
	}
	return written, nil
}

// Loose names nothing: what is saved is on disk.
func (Disk) Loose() []string { return nil }
