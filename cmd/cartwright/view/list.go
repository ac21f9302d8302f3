package view

import (
	"strings"

	"github.com/olekukonko/tablewriter/pkg/twwidth"
)

// soft stands between the entries of a list in a cell: ", " where the next one has room on the line, else a
// new line. No entry is broken unless it is wider than the column.
const soft = "\x1f"

// items returns the entries as one cell.
func items(entries ...string) string { return strings.Join(entries, soft) }

// packed returns the lines of a list, as many entries on each as fit.
func packed(cell string, width int) []string {
	var lines []string
	current := ""
	entries := strings.Split(cell, soft)
	for i, entry := range entries {
		if i < len(entries)-1 {
			entry += ","
		}
		switch {
		case current == "":
			current = entry
		case twwidth.Width(current)+1+twwidth.Width(entry) <= width:
			current += " " + entry
		default:
			lines, current = append(lines, wrap(current, width)...), entry
		}
	}
	return append(lines, wrap(current, width)...)
}

// joined returns the list on one line.
func joined(cell string) string { return strings.ReplaceAll(cell, soft, ", ") }

// narrowestOf returns the least width, in columns, that a cell is squeezed to: that of its widest entry where it
// is a list.
func narrowestOf(cell string) int {
	widest := 0
	for line := range strings.SplitSeq(cell, "\n") {
		if !strings.Contains(line, soft) {
			continue
		}
		for entry := range strings.SplitSeq(line, soft) {
			widest = max(widest, twwidth.Width(entry)+1)
		}
	}
	return widest
}
