package optimize

import _ "embed"

//go:embed README.md
var manual string

// Manual returns the text that says what a plan has to meet and how it is proved, in Markdown.
func Manual() string { return manual }
