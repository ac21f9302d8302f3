package catalog

import "embed"

// embedded holds the catalogue that comes with the program: invented, unbranded parts.
//
//go:embed parts/*.csv
var embedded embed.FS
