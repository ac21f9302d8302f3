package catalog

import (
	"errors"
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
	l := &loader{fsys: fsys, dir: dir, display: display}
	c := &Catalog{
		Batteries: load(l, batteryTable, true),
		Inverters: load(l, inverterTable, true),
		Cables:    load(l, cableTable, false),
		Devices:   load(l, deviceTable, false),
		Busbars:   load(l, busbarTable, true),
		Casters:   load(l, castersTable, true),
		Solar:     load(l, solarTable, false),
		Sundries:  load(l, sundryTable, false),
		Conduits:  load(l, conduitTable, false),
		Sections:  load(l, sectionTable, false),
	}
	c.Offers = load(l, offerTable(c, l.lost), false)
	if l.found == 0 {
		return nil, noCatalogue(display, "there is no catalogue in this folder")
	}
	l.strayFiles()
	l.twice(c)
	if err := l.list.Err(); err != nil {
		return nil, err
	}
	c.Own, c.Warnings = l.own, l.warnings.Sorted()
	return c, nil
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

// noCatalogue is the error where there are no files to speak of.
func noCatalogue(display, wrong string) error {
	var list problem.List
	list.Add(problem.Pos{File: display}, wrong, expectedFiles)
	return list.Err()
}

// loader reads the files of one folder.
type loader struct {
	fsys         fs.FS
	dir, display string
	list         problem.List
	warnings     problem.List
	own          []OwnColumn
	found        int      // files
	missing      []string // files that are not there
	lost         bool     // there are parts whose ids are not known
}

// shown returns how a file is named in messages.
func (l *loader) shown(file string) string {
	if l.display == "" || strings.HasSuffix(l.display, "/") {
		return l.display + file
	}
	return l.display + "/" + file
}

// load reads one file; needed says that it must be there and have a row.
func load[T any](l *loader, t table[T], needed bool) []T {
	to := &report{file: l.shown(t.file)}
	defer func() {
		l.list.AddAll(&to.list)
		l.warnings.AddAll(&to.warnings)
		l.own = append(l.own, to.own...)
		l.lost = l.lost || to.lost
	}()
	data, err := readFile(l.fsys, path.Join(l.dir, t.file), to)
	if errors.Is(err, fs.ErrNotExist) {
		l.missing = append(l.missing, t.file)
		if needed {
			to.add(problem.Pos{File: to.file}, "the file is missing",
				"write it; its columns are at least "+strings.Join(t.names(true), ","))
		}
		return nil
	}
	l.found++
	if err != nil {
		return nil
	}
	s, ok := openSheet(data, to)
	if !ok {
		to.lost = true
		return nil
	}
	rows := t.read(s)
	if needed && len(rows) == 0 && to.list.Len() == 0 {
		to.add(problem.Pos{File: to.file}, "the file has no parts in it", "no cart can do without; add a row")
	}
	return rows
}

// strayFiles reports a file whose name is nearly that of a missing one: its parts would be lost silently.
func (l *loader) strayFiles() {
	entries, err := fs.ReadDir(l.fsys, l.dir)
	if err != nil {
		return // the files themselves could be read
	}
	var stems []string
	for _, file := range l.missing {
		stems = append(stems, strings.TrimSuffix(file, ".csv"))
	}
	for _, e := range entries {
		stem, isCSV := strings.CutSuffix(strings.ToLower(e.Name()), ".csv")
		if near := problem.Nearest(stem, stems); isCSV && near != "" && !slices.Contains(files, e.Name()) {
			l.list.Add(problem.Pos{File: l.shown(e.Name())}, "no file of a catalogue is called so",
				fmt.Sprintf("call it %s.csv, or keep it in another folder", near))
		}
	}
}

// twice reports an id that two parts have, whatever their kinds.
func (l *loader) twice(c *Catalog) {
	var to report // which stops in time
	first := map[string]problem.Pos{}
	for _, e := range c.All() {
		if e.ID == "" {
			continue
		}
		if pos, ok := first[e.ID]; ok {
			to.add(e.Pos, fmt.Sprintf("the id %s is taken, at %s", quote(e.ID), pos), "give each part an id of its own")
			continue
		}
		first[e.ID] = e.Pos
	}
	l.list.AddAll(&to.list)
}
