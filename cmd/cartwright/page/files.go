package page

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"

	"cartwright/catalog"
	"cartwright/catalog/problem"
	"cartwright/cmd/cartwright/safefile"
	"cartwright/scenarios"
)

// Files says which files the page is about.
type Files struct {
	Scenario string // the scenario's own file
	Within   fs.FS  // where that file is, for a demo; nil: on this machine
}

// text of the scenario as it is now.
func (f *Files) scenario() ([]byte, error) {
	if f.Within != nil {
		return fs.ReadFile(f.Within, f.Scenario)
	}
	return os.ReadFile(f.Scenario)
}

// draft is the files' texts with the changes that were made and not yet saved.
type draft struct {
	scenario []byte
	parts    map[string][]byte // of the catalogue's files that were changed, by name
	about    string            // what the last change was about; changes about the same are undone together
}

// opened is what a draft says.
type opened struct {
	scenario *scenarios.Scenario // as far as it could be read
	catalog  *catalog.Catalog    // nil where it could not
	folder   string              // of the catalogue's files; "" where they cannot be edited
	beside   []string            // files and folders that it was read from beside the scenario's own file
	mistakes []problem.Problem
}

// open reads a draft with the same words as the commands read the files.
func (f *Files) open(d draft, check func(*scenarios.Scenario, *catalog.Catalog) error) opened {
	var o opened
	var err error
	o.scenario, err = scenarios.OpenText(f.Scenario, d.scenario, f.Within)
	o.add(err)
	if o.scenario == nil {
		return o
	}
	o.beside = f.named(d, o.scenario.Dir)
	switch dir := o.scenario.CatalogDir; {
	case dir == "":
		o.catalog = catalog.Embedded()
	default:
		if !filepath.IsAbs(dir) {
			dir = filepath.Join(o.scenario.Dir, filepath.FromSlash(dir))
		}
		o.beside = append(o.beside, dir)
		if catalog.IsWorkbook(dir) {
			o.catalog, err = catalog.Open(dir)
		} else {
			o.folder = dir
			o.catalog, err = catalog.Read(&overlay{os.DirFS(dir), d.parts}, ".", dir)
		}
		o.add(err)
	}
	if len(o.mistakes) == 0 {
		o.add(check(o.scenario, o.catalog))
	}
	return o
}

// named returns the files that a scenario names: of measured loads, and of the sun.
func (f *Files) named(d draft, dir string) []string {
	values, err := scenarios.ValuesOf(d.scenario, f.Scenario)
	if f.Within != nil || err != nil {
		return nil
	}
	var list []string
	for _, path := range []string{"measured", "sun.file"} {
		switch name := values[path]; {
		case name == "":
		case filepath.IsAbs(name):
			list = append(list, name)
		default:
			list = append(list, filepath.Join(dir, filepath.FromSlash(name)))
		}
	}
	return list
}

// add notes mistakes; any other error is one, too.
func (o *opened) add(err error) {
	var list *problem.Error
	switch {
	case err == nil:
	case errors.As(err, &list):
		o.mistakes = append(o.mistakes, list.Problems...)
	default:
		o.mistakes = append(o.mistakes, problem.Problem{Wrong: err.Error(), Right: "see that it is there and may be read"})
	}
}

// errChanged is the error where somebody else has written a file since it was read.
var errChanged = errors.New("was changed by somebody else since it was read here; nothing was written. Read it anew, and make your changes again")

// save writes what differs from base, each file only where it still is what was read. It returns the names of
// the files that were written.
func (f *Files) save(base, now draft, folder string, original func(name string) ([]byte, error)) ([]string, error) {
	if f.Within != nil {
		return nil, errors.New("a demo is part of the program and cannot be written to; “cartwright new my-cart” makes a scenario of your own")
	}
	type change struct {
		path       string
		was, wants []byte
	}
	var changes []change
	if !bytes.Equal(base.scenario, now.scenario) {
		changes = append(changes, change{f.Scenario, base.scenario, now.scenario})
	}
	for _, name := range slices.Sorted(maps.Keys(now.parts)) {
		was, err := original(name)
		if err != nil {
			return nil, err
		}
		if !bytes.Equal(was, now.parts[name]) {
			changes = append(changes, change{filepath.Join(folder, name), was, now.parts[name]})
		}
	}
	unchanged := func(c change) error {
		if text, err := os.ReadFile(c.path); err != nil || !bytes.Equal(text, c.was) {
			return fmt.Errorf("%s %w", c.path, errChanged)
		}
		return nil
	}
	for _, c := range changes { // before any is written
		if err := unchanged(c); err != nil {
			return nil, err
		}
		if info, err := os.Stat(c.path); err == nil && info.Mode().Perm()&0o222 == 0 {
			return nil, fmt.Errorf("%s is read-only; nothing was written", c.path)
		}
	}
	var written []string
	for _, c := range changes {
		fill := func(w io.Writer) error {
			_, err := w.Write(c.wants)
			return err
		}
		if err := safefile.Replace(c.path, fill, func() error { return unchanged(c) }); err != nil {
			return written, fmt.Errorf("cannot write %s: %w", c.path, err)
		}
		written = append(written, c.path)
	}
	return written, nil
}
