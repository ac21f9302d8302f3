package catalog

import _ "embed" // for the text

//go:embed README.md
var help string

// Help returns what a person needs to know to keep a catalogue, as Markdown: files, columns and what to write in them.
func Help() string { return help }
