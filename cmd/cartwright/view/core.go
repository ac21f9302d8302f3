package view

import (
	"fmt"
	"slices"
	"strings"

	"cartwright/optimize/plan"
)

// core returns the batteries and the inverter of a plan as a list: "3 x slate-48", "1 x gust-5k".
func core(c plan.Core) string { return items(append(cores(c), inverter(c))...) }

// coreText returns the batteries and the inverter of a plan for a sentence.
func coreText(c plan.Core) string { return joined(core(c)) }

// cores returns the battery modules of a core, and its array, an entry each: "3 x slate-48" or, where strings
// have several modules and an array several strings, "2 x 4 pebble-12" for two strings of four.
func cores(c plan.Core) []string {
	var entries []string
	for _, b := range c.Batteries {
		if b.Series > 1 {
			entries = append(entries, fmt.Sprintf("%d x %d %s", b.Strings, b.Series, b.Part))
		} else {
			entries = append(entries, fmt.Sprintf("%d x %s", b.Strings, b.Part))
		}
	}
	for _, a := range c.Solar {
		if a.Parallel*a.Inputs == 1 {
			entries = append(entries, fmt.Sprintf("%d x %s", a.Series, a.Part))
			continue
		}
		entries = append(entries, fmt.Sprintf("%d x %d %s", a.Parallel*a.Inputs, a.Series, a.Part))
	}
	return entries
}

// batteries returns the battery modules of a core, and its array, for a cell of a spreadsheet.
func batteries(c plan.Core) string { return strings.Join(cores(c), " + ") }

// inverter returns the inverters of a core.
func inverter(c plan.Core) string { return fmt.Sprintf("%d x %s", c.Inverter.Units, c.Inverter.Part) }

// inSeries reports whether a core's list tells of modules in series, and then what that means.
func inSeries(c plan.Core) bool {
	return slices.ContainsFunc(c.Solar, func(a plan.CoreSolar) bool { return a.Parallel*a.Inputs > 1 }) || slices.ContainsFunc(c.Batteries, func(b plan.CoreBattery) bool { return b.Series > 1 })
}

const seriesNote = `"2 x 4 part": 2 strings of 4 modules in series.`
