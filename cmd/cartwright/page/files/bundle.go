package files

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"path/filepath"

	"cartwright/catalog"
)

// Bundle is all files that a scenario is read from, by names that do not tell where on somebody's disk they were.
type Bundle struct {
	Scenario string            `json:"scenario"`
	Files    map[string][]byte `json:"files"`
}

// Gather reads into a bundle a scenario's file and what it names: files beside it, and its catalogue, a folder or a workbook,
// "" for the one that is built in. A workbook becomes a folder of CSV files with the same parts: a browser is spared the
// means to read it.
func Gather(from Store, scenario string, beside []string, parts string) (*Bundle, error) {
	b := &Bundle{Scenario: path.Join(nameOfFolder(scenario), filepath.Base(scenario)), Files: map[string][]byte{}}
	if err := b.add(from, scenario, b.Scenario); err != nil {
		return nil, err
	}
	named := InMemory(nil)
	for _, called := range beside {
		if err := b.add(from, from.Beside(scenario, called), named.Beside(b.Scenario, called)); err != nil {
			return nil, err
		}
	}
	if parts == "" {
		return b, nil
	}
	where, as := from.Beside(scenario, parts), named.Beside(b.Scenario, parts)
	if catalog.IsWorkbook(parts) {
		return b, b.addWorkbook(from, where, as)
	}
	for _, name := range catalogFiles() {
		err := b.add(from, filepath.Join(where, name), path.Join(as, name))
		if err != nil && !errors.Is(err, fs.ErrNotExist) {
			return nil, err
		}
	}
	return b, nil
}

// catalogFiles are the names of the files that a folder of parts may have.
func catalogFiles() []string {
	var list []string
	for _, k := range catalog.Kinds() {
		list = append(list, k.File())
	}
	return append(list, catalog.OffersFile)
}

// addWorkbook writes the parts of a workbook as a folder of CSV files.
func (b *Bundle) addWorkbook(from Store, name, as string) error {
	c, err := from.Workbook(name)
	if err != nil {
		return err
	}
	for _, k := range catalog.Kinds() {
		var text bytes.Buffer
		if err := c.Write(k, &text); err != nil {
			return err
		}
		b.Files[path.Join(as, k.File())] = text.Bytes()
	}
	var text bytes.Buffer
	if err := c.WriteOffers(&text); err != nil {
		return err
	}
	b.Files[path.Join(as, catalog.OffersFile)] = text.Bytes()
	return nil
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
