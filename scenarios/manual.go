package scenarios

import _ "embed" // for the text

//go:embed README.md
var manual string

// Manual returns what a person needs to know to write a scenario, as Markdown: keys and what to write behind them.
func Manual() string { return manual }
