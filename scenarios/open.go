package scenarios

import (
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strconv"
	"strings"

	"cartwright/catalog"
	"cartwright/catalog/plaintext"
	"cartwright/catalog/problem"
)

// FileName is the name of the file that describes a scenario, in a folder of its own.
const FileName = "scenario.yaml"

// Open reads a scenario from a folder that holds a scenario.yaml, or from the file itself. The error holds
// every mistake at once, each with its place; see problem.List. With an error about the file's text comes the
// scenario as far as it could be read, so that its catalogue can be checked as well and all mistakes be
// reported together; it must not be used otherwise.
func Open(name string) (*Scenario, error) {
	var list problem.List
	file := name
	info, err := os.Stat(name)
	switch {
	case err == nil && info.IsDir():
		file = filepath.Join(name, FileName)
		if _, err := os.Stat(file); os.IsNotExist(err) {
			list.Add(problem.Pos{File: name}, "the folder has no "+FileName, "give a folder that has one, or the file itself")
			return nil, list.Err()
		}
	case err != nil && os.IsNotExist(err):
		list.Add(problem.Pos{File: name}, "there is no such folder or file", "give the folder of a scenario, or its "+FileName)
		return nil, list.Err()
	}
	dir := filepath.Dir(file)
	open := func(name string) (fs.File, error) {
		if !filepath.IsAbs(name) {
			name = filepath.Join(dir, filepath.FromSlash(name))
		}
		return openPlain(name)
	}
	s := &Scenario{File: file, Dir: dir}
	s.load(func() (fs.File, error) { return openPlain(file) }, open, &list)
	if s.CatalogDir != "" {
		s.checkCatalogDir(&list)
	}
	return s, list.Err()
}

// OpenText reads a scenario as Open does, from data instead of its own file. Fsys holds the other files that it
// names; nil stands for the machine's own file system.
func OpenText(file string, data []byte, fsys fs.FS) (*Scenario, error) {
	var list problem.List
	s := &Scenario{File: file}
	open := func(name string) (fs.File, error) { return fsys.Open(path.Join(path.Dir(file), name)) }
	if fsys == nil {
		s.Dir = filepath.Dir(file)
		open = func(name string) (fs.File, error) {
			if !filepath.IsAbs(name) {
				name = filepath.Join(s.Dir, filepath.FromSlash(name))
			}
			return openPlain(name)
		}
	}
	if len(data) > maxScenarioBytes {
		list.Add(problem.Pos{File: file}, fmt.Sprintf("the scenario has %d bytes", len(data)), fmt.Sprintf("write at most %d", maxScenarioBytes))
		return nil, list.Err()
	}
	s.read([]byte(strings.TrimPrefix(string(data), mark)), file, open, &list)
	switch {
	case s.CatalogDir == "":
	case fsys == nil:
		s.checkCatalogDir(&list)
	default:
		dir := path.Join(path.Dir(file), s.CatalogDir)
		info, err := fs.Stat(fsys, dir)
		s.checkCatalog(dir, info, err, &list)
	}
	return s, list.Err()
}

// openPlain opens a file and refuses pipes and devices: reading them may never end.
func openPlain(name string) (fs.File, error) {
	info, err := os.Stat(name)
	if err == nil {
		if what := plaintext.Special(info.Mode()); what != "" {
			return nil, specialFile(what)
		}
	}
	return os.Open(name)
}

// specialFile is the error of a file that is not opened, since it is a pipe or a device.
type specialFile string

func (s specialFile) Error() string { return "it is " + string(s) }

// OpenFS reads a scenario from a folder of a file system. Its Dir is "", and a catalogue folder that it
// names is not looked for.
func OpenFS(fsys fs.FS, dir string) (*Scenario, error) {
	var list problem.List
	file := path.Join(dir, FileName)
	open := func(name string) (fs.File, error) { return fsys.Open(path.Join(dir, name)) }
	s := &Scenario{File: file}
	s.load(func() (fs.File, error) { return fsys.Open(file) }, open, &list)
	if err := list.Err(); err != nil {
		return nil, err
	}
	return s, nil
}

// load reads the scenario's own file, which openSelf opens.
func (s *Scenario) load(openSelf func() (fs.File, error), open opener, list *problem.List) {
	data, ok := readFile(openSelf, s.File, problem.Pos{File: s.File}, maxScenarioBytes, list)
	if ok {
		s.read(data, s.File, open, list)
	}
}

// checkCatalogDir reports a catalogue that is not there, at the place where it is named.
func (s *Scenario) checkCatalogDir(list *problem.List) {
	dir := s.CatalogDir
	if !filepath.IsAbs(dir) {
		dir = filepath.Join(s.Dir, filepath.FromSlash(dir))
	}
	info, err := os.Stat(dir)
	s.checkCatalog(dir, info, err, list)
}

// checkCatalog checks what was found where the catalogue should be.
func (s *Scenario) checkCatalog(dir string, info fs.FileInfo, err error, list *problem.List) {
	workbook := catalog.IsWorkbook(dir)
	switch {
	case err != nil && workbook:
		list.Add(s.Pos("catalog"), "catalog: there is no workbook "+strconv.Quote(dir), "name the workbook of the parts, or leave catalog out")
	case err != nil:
		list.Add(s.Pos("catalog"), "catalog: there is no folder "+strconv.Quote(dir), "name the folder of the parts' CSV files, or leave catalog out")
	case info.IsDir() && workbook:
		list.Add(s.Pos("catalog"), "catalog: "+strconv.Quote(dir)+" is a folder", "name a workbook, or call the folder something else")
	case !info.IsDir() && !workbook:
		list.Add(s.Pos("catalog"), "catalog: "+strconv.Quote(dir)+" is a file", "name the folder of the parts' CSV files, or an .xlsx workbook")
	default:
		return
	}
	s.CatalogDir = "" // there is no catalogue to check
}
