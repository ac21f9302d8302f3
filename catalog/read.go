package catalog

import (
	"fmt"
	"io/fs"
	"os"
	"path"
	"slices"
	"strings"

	"cartwright/catalog/problem"
)

// ReadDir reads the catalogue in a folder of the file system. See Read.
func ReadDir(dir string) (*Catalog, error) { return Read(os.DirFS(dir), ".", dir) }

// expectedFiles says what a catalogue's folder holds.
const expectedFiles = "name a folder with batteries.csv, inverters.csv, cables.csv, devices.csv, busbars.csv, " +
	"casters.csv and, where wanted, solar.csv, sundries.csv, conduits.csv, sections.csv and offers.csv"

// Read reads a catalogue: the CSV files in folder dir of fsys. Errors and positions name the files as
// display and the file's name.
//
// A file that is missing means that there are no parts of that kind. No cart can do without a battery, an
// inverter, bus bars and casters, so those files must be there and have a row.
//
// The error is a *problem.Error with every mistake in every file; there is then no catalogue.
func Read(fsys fs.FS, dir, display string) (*Catalog, error) {
	if err := isFolder(fsys, dir, display); err != nil {
		return nil, err
	}
	return readAll(&folder{fsys: fsys, dir: dir, display: display})
}

// isFolder says what is wrong with a folder as a whole.
func isFolder(fsys fs.FS, dir, display string) error {
	info, err := fs.Stat(fsys, dir)
	switch {
	case err != nil:
		return noCatalogue(display, "the catalogue's folder cannot be read: "+reason(err))
	case !info.IsDir():
		return noCatalogue(display, "the catalogue is a file, not a folder")
	}
	return nil
}

// noCatalogue is the error of a folder or workbook that holds no catalogue.
func noCatalogue(display, wrong string) error {
	var list problem.List
	list.Add(problem.Pos{File: display}, wrong, expectedFiles)
	return list.Err()
}

// folder is a folder of CSV files.
type folder struct {
	fsys         fs.FS
	dir, display string
}

// shown returns how a file is named in messages.
func (f *folder) shown(file string) string {
	if f.display == "" || strings.HasSuffix(f.display, "/") {
		return f.display + file
	}
	return f.display + "/" + file
}

func (f *folder) none() error { return noCatalogue(f.display, "there is no catalogue in this folder") }

func (f *folder) report(file string) *report { return &report{file: f.shown(file)} }

func (f *folder) open(file string, to *report) (rows, error) {
	data, err := readFile(f.fsys, path.Join(f.dir, file), to)
	if err != nil {
		return nil, err
	}
	s, ok := openSheet(data, to)
	if !ok {
		to.lost = true
		return nil, errTold
	}
	return s, nil
}

// strays reports files whose name is nearly that of a missing one: their parts would be lost silently.
func (f *folder) strays(missing []string, list *problem.List) {
	entries, err := fs.ReadDir(f.fsys, f.dir)
	if err != nil {
		return // the files themselves could be read
	}
	for _, e := range entries {
		stem, isCSV := strings.CutSuffix(strings.ToLower(e.Name()), ".csv")
		if near := problem.Nearest(stem, missing); isCSV && near != "" && !slices.Contains(files, e.Name()) {
			list.Add(problem.Pos{File: f.shown(e.Name())}, "this is not the name of a catalogue file",
				fmt.Sprintf("call it %s.csv, or keep it in another folder", near))
		}
	}
}
