package scenarios

import _ "embed" // for the text

//go:embed README.md
var manual string

// Manual returns what a person needs to know to write a scenario, in Markdown: keys and their values.
func Manual() string { return manual }
