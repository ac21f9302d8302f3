package catalog

import (
	"path/filepath"
	"strings"
)

// IsWorkbook reports whether a catalogue of this name is a workbook, by its ending.
func IsWorkbook(name string) bool { return strings.EqualFold(filepath.Ext(name), ".xlsx") }
