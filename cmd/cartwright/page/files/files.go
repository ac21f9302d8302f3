// Package files knows where the files of a page are kept: on this machine's disk, where others change them, too, or in
// memory.
package files

import (
	"errors"
	"io/fs"

	"cartwright/catalog"
	"cartwright/scenarios"
)

// Store is where files are kept: on this machine's disk, or in memory. Names are as messages show them.
type Store interface {
	// Scenario reads a text as if it stood in the scenario's file.
	Scenario(file string, text []byte) (*scenarios.Scenario, error)
	// Beside returns the name of what the scenario in a file calls so.
	Beside(file, called string) string
	// Folder returns a folder; whether there is one is seen when it is read.
	Folder(name string) fs.FS
	// Workbook reads a catalogue that is a workbook.
	Workbook(name string) (*catalog.Catalog, error)
	// Read returns the text of a file.
	Read(name string) ([]byte, error)
	// Shared reports whether others change the files, too. Stamp tells one state of files, and of the files of folders,
	// from another.
	Shared() bool
	Stamp(names []string) string
	// Save writes all changes, none where a file is no longer what it was. It returns the names of files that were written.
	Save(changes []Change) (written []string, err error)
	// Loose names the files that were saved, and will be lost unless they are downloaded.
	Loose() []string
}

// Change is a file that is to have another text.
type Change struct {
	Name      string
	Was, Text []byte
}

// ErrChanged is the error where somebody else has written a file since it was read.
var ErrChanged = errors.New("was changed by another program since it was read here; nothing was written. Reload the files, and make your changes again")
