package files

import (
	"bytes"
	"errors"
	"io/fs"
	"maps"
	"path"
	"path/filepath"
	"slices"
	"sync"

	"cartwright/catalog"
	"cartwright/scenarios"
)

// Memory is files in memory: those of a demo, or those that came with a page that is one file. Names are those of a file system: with slashes, and none leads out of it.
type Memory struct {
	mu     sync.Mutex
	now    texts
	before texts // as the files came
	fixed  error // why nothing can be saved, if so
}

// InMemory returns files that live in memory.
func InMemory(files map[string][]byte) *Memory {
	return &Memory{now: maps.Clone(files), before: files}
}

// Demo returns the files of a demo, which are not saved.
func Demo(name string) (*Memory, error) {
	files := map[string][]byte{}
	err := fs.WalkDir(scenarios.DemoFS(), name, func(path string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		files[path], err = fs.ReadFile(scenarios.DemoFS(), path)
		return err
	})
	m := InMemory(files)
	m.fixed = errors.New("a demo is part of the program and cannot be written to; “cartwright new my-cart” makes a scenario of your own")
	return m, err
}

// Scenario reads a text as if it stood in the scenario's file.
func (m *Memory) Scenario(file string, text []byte) (*scenarios.Scenario, error) {
	return scenarios.OpenText(file, text, beside{m, file})
}

// beside opens what a scenario names, wherever the name leads.
type beside struct {
	in   *Memory
	file string
}

// Open opens a file or a folder. A workbook, which is a folder here, is shown as the file that it was.
func (b beside) Open(name string) (fs.File, error) {
	name = inside(name)
	f, err := b.in.files().Open(name)
	if _, isFolder := f.(*folder); isFolder && catalog.IsWorkbook(name) {
		return &file{Reader: bytes.NewReader(nil), info: info{name: path.Base(name)}}, nil
	}
	return f, err
}

// files are those that there are; they are not written to.
func (m *Memory) files() texts {
	m.mu.Lock()
	defer m.mu.Unlock()
	return maps.Clone(m.now)
}

// inside returns a name that does not lead out: what would, begins at the top.
func inside(name string) string {
	if name = path.Join("/", filepath.ToSlash(name))[1:]; name == "" {
		return "."
	}
	return name
}

// Beside returns the name of what the scenario in a file calls so.
func (m *Memory) Beside(file, called string) string {
	return inside(path.Join(path.Dir(file), filepath.ToSlash(called)))
}

// Folder returns a folder.
func (m *Memory) Folder(name string) fs.FS { return under{m.files(), inside(name)} }

// under is a folder of files, there or not.
type under struct {
	files texts
	name  string
}

func (u under) Open(name string) (fs.File, error) { return u.files.Open(path.Join(u.name, name)) }

// Workbook reads a catalogue that was a workbook: here it is a folder of CSV files of that name (see Bundle).
func (m *Memory) Workbook(name string) (*catalog.Catalog, error) {
	return catalog.Read(m.Folder(name), ".", name)
}

// Read returns the text of a file.
func (m *Memory) Read(name string) ([]byte, error) { return fs.ReadFile(m.files(), inside(name)) }

// Shared is false: nobody else comes here.
func (m *Memory) Shared() bool { return false }

// Stamp is always the same.
func (m *Memory) Stamp([]string) string { return "" }

// Save makes all changes.
func (m *Memory) Save(changes []Change) (written []string, err error) {
	if m.fixed != nil {
		return nil, m.fixed
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	for _, c := range changes {
		m.now[inside(c.Name)] = c.Text
		written = append(written, c.Name)
	}
	return written, nil
}

// Loose names the files that are not as they came.
func (m *Memory) Loose() []string {
	m.mu.Lock()
	defer m.mu.Unlock()
	var list []string
	for _, name := range slices.Sorted(maps.Keys(m.now)) {
		if !bytes.Equal(m.now[name], m.before[name]) {
			list = append(list, name)
		}
	}
	return list
}
