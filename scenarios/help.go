package scenarios

import _ "embed" // for the text

//go:embed README.md
var help string

// Help returns what a person needs to know to write a scenario, as Markdown: keys and what to write behind them.
func Help() string { return help }
