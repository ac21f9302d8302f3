package files

import (
	"errors"
	"fmt"
	"io/fs"
	"path"
	"path/filepath"
)

// Bundle is all files that a scenario is read from, by names that do not tell where on somebody's disk they were.
type Bundle struct {
	Scenario string            `json:"scenario"`
	Files    map[string][]byte `json:"files"`
}

// Gather reads into a bundle a scenario's file and what it names: files beside it by what it calls them, and of a folder of
// parts those of its files that are in the list.
func Gather(from Store, scenario string, beside []string, folder string, parts []string) (*Bundle, error) {
	b := &Bundle{Scenario: path.Join(nameOfFolder(scenario), filepath.Base(scenario)), Files: map[string][]byte{}}
	if err := b.add(from, scenario, b.Scenario); err != nil {
		return nil, err
	}
	m := InMemory(nil)
	for _, called := range beside {
		if err := b.add(from, from.Beside(scenario, called), m.Beside(b.Scenario, called)); err != nil {
			return nil, err
		}
	}
	if folder == "" {
		return b, nil
	}
	for _, name := range parts {
		err := b.add(from, filepath.Join(from.Beside(scenario, folder), name), path.Join(m.Beside(b.Scenario, folder), name))
		if err != nil && !errors.Is(err, fs.ErrNotExist) {
			return nil, err
		}
	}
	return b, nil
}

// nameOfFolder returns what the folder of a file is called, whatever way leads there.
func nameOfFolder(file string) string {
	dir, err := filepath.Abs(filepath.Dir(file))
	if name := filepath.Base(dir); err == nil && name != "." && name != string(filepath.Separator) {
		return name
	}
	return "cart"
}

// add reads a file under another name.
func (b *Bundle) add(from Store, name, as string) error {
	if _, taken := b.Files[as]; taken {
		return fmt.Errorf("two files would both be %s in one file: give one of them another name", as)
	}
	text, err := from.Read(name)
	if err != nil {
		return err
	}
	b.Files[as] = text
	return nil
}
