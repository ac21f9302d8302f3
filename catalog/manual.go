package catalog

import _ "embed" // for the text

//go:embed README.md
var manual string

// Manual returns what a person needs to know to keep a catalogue, in Markdown: files, columns and what to write in them.
func Manual() string { return manual }
