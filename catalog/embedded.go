package catalog

import (
	"embed"
	"io/fs"
)

//go:embed parts/*.csv
var parts embed.FS

// Embedded returns the catalogue that comes with the program: invented, unbranded parts to try things
// with. Each call returns a new one.
func Embedded() *Catalog {
	c, err := Read(parts, "parts", "embedded catalogue")
	if err != nil {
		panic("catalog: the embedded parts are wrong, as a test should have shown: " + err.Error())
	}
	return c
}

// EmbeddedFiles returns the CSV files of the embedded catalogue with their comments, to start a catalogue of one's own
// from.
func EmbeddedFiles() fs.FS {
	sub, err := fs.Sub(parts, "parts")
	if err != nil {
		panic("catalog: " + err.Error()) // the name is a constant
	}
	return sub
}
