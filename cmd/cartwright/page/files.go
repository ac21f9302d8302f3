package page

import (
	"bytes"
	"errors"
	"maps"
	"path/filepath"
	"slices"

	"cartwright/catalog"
	"cartwright/catalog/problem"
	"cartwright/cmd/cartwright/page/files"
	"cartwright/scenarios"
)

// Files says which files the page is about.
type Files struct {
	Scenario string // the scenario's own file
	Store    files.Store
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
	o.scenario, err = f.Store.Scenario(f.Scenario, d.scenario)
	o.add(err)
	if o.scenario == nil {
		return o
	}
	o.beside = f.named(d)
	switch dir := o.scenario.CatalogDir; {
	case dir == "":
		o.catalog = catalog.Embedded()
	default:
		dir = f.Store.Beside(f.Scenario, dir)
		o.beside = append(o.beside, dir)
		if catalog.IsWorkbook(dir) {
			o.catalog, err = f.Store.Workbook(dir)
		} else {
			o.folder = dir
			o.catalog, err = catalog.Read(&overlay{f.Store.Folder(dir), d.parts}, ".", dir)
		}
		o.add(err)
	}
	if len(o.mistakes) == 0 {
		o.add(check(o.scenario, o.catalog))
	}
	return o
}

// namedFiles are the keys of a scenario that name a file.
var namedFiles = []string{"measured", "sun.file"}

// named returns the files that a scenario names: of measured loads, and of the sun.
func (f *Files) named(d draft) []string {
	values, err := scenarios.ValuesOf(d.scenario, f.Scenario)
	if err != nil {
		return nil
	}
	var list []string
	for _, path := range namedFiles {
		if called := values[path]; called != "" {
			list = append(list, f.Store.Beside(f.Scenario, called))
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

// changes returns what differs between two drafts; original returns the text of a file of the catalogue as it was read.
func (f *Files) changes(base, now draft, folder string, original func(name string) ([]byte, error)) ([]files.Change, error) {
	var list []files.Change
	if !bytes.Equal(base.scenario, now.scenario) {
		list = append(list, files.Change{Name: f.Scenario, Was: base.scenario, Text: now.scenario})
	}
	for _, name := range slices.Sorted(maps.Keys(now.parts)) {
		was, err := original(name)
		if err != nil {
			return nil, err
		}
		if !bytes.Equal(was, now.parts[name]) {
			list = append(list, files.Change{Name: filepath.Join(folder, name), Was: was, Text: now.parts[name]})
		}
	}
	return list, nil
}

// Bundle gathers all files, with no mistake in them, to be put into one.
func (f *Files) Bundle() (*files.Bundle, error) {
	text, err := f.Store.Read(f.Scenario)
	if err != nil {
		return nil, err
	}
	values, err := scenarios.ValuesOf(text, f.Scenario)
	if err != nil {
		return nil, err
	}
	var beside []string
	for _, key := range namedFiles {
		if called := values[key]; called != "" {
			beside = append(beside, called)
		}
	}
	return files.Gather(f.Store, f.Scenario, beside, values["catalog"])
}
