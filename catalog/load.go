package catalog

import (
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"strings"

	"cartwright/catalog/problem"
)

// IsWorkbook reports whether a catalogue of this name is a workbook, by its ending.
func IsWorkbook(name string) bool { return strings.EqualFold(filepath.Ext(name), ".xlsx") }

// fileset is where the files of a catalogue are: a folder, or the sheets of a workbook.
type fileset interface {
	// report starts the report of a file, which open opens. What is wrong with the file as a whole is told there;
	// fs.ErrNotExist is left to the caller.
	report(file string) *report
	open(file string, to *report) (rows, error)
	// strays reports what has nearly the name of a missing file, given without its ending.
	strays(missing []string, list *problem.List)
	none() error // the error where there is no file at all
}

// errTold is the error of a file whose mistake is in its report already.
var errTold = errors.New("catalog: told")

// loader reads the files of one catalogue.
type loader struct {
	from     fileset
	list     problem.List
	warnings problem.List
	own      []OwnColumn
	found    int      // files
	missing  []string // files that are not there, without ending
	lost     bool     // there are parts whose ids are not known
}

// readAll reads every file.
func readAll(from fileset) (*Catalog, error) {
	l := &loader{from: from}
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
		return nil, from.none()
	}
	from.strays(l.missing, &l.list)
	l.twice(c)
	if err := l.list.Err(); err != nil {
		return nil, err
	}
	c.Own, c.Warnings = l.own, l.warnings.Sorted()
	return c, nil
}

// load reads one file; a needed one must be there and have a row.
func load[T any](l *loader, t table[T], needed bool) []T {
	to := l.from.report(t.file)
	defer func() {
		l.list.AddAll(&to.list)
		l.warnings.AddAll(&to.warnings)
		l.own = append(l.own, to.own...)
		l.lost = l.lost || to.lost
	}()
	from, err := l.from.open(t.file, to)
	if errors.Is(err, fs.ErrNotExist) {
		l.missing = append(l.missing, strings.TrimSuffix(t.file, ".csv"))
		if needed {
			to.add(to.whole(), to.noun()+" is missing", "write it; its columns are at least "+strings.Join(t.names(true), ","))
		}
		return nil
	}
	l.found++
	if err != nil {
		return nil
	}
	rows := t.read(from)
	if needed && len(rows) == 0 && to.list.Len() == 0 {
		to.add(to.whole(), to.noun()+" has no parts in it", "every cart needs one; add a row")
	}
	return rows
}

// twice reports ids that several parts have, whatever their kinds.
func (l *loader) twice(c *Catalog) {
	var to report // which stops in time
	first := map[string]problem.Pos{}
	for _, e := range c.All() {
		if e.ID == "" {
			continue
		}
		if pos, ok := first[e.ID]; ok {
			to.add(e.Pos, fmt.Sprintf("the id %s is already used, at %s", quote(e.ID), pos), "give each part an id of its own")
			continue
		}
		first[e.ID] = e.Pos
	}
	l.list.AddAll(&to.list)
}
