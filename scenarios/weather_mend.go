package scenarios

import (
	"fmt"
	"math"
)

// How many missing figures are filled in; common practice, no source.
const (
	mostBridged    = 48 // figures of a kind, over the year
	longestBridged = 3  // hours at a stretch: over more the sun moves on too far
)

// mend fills in what is missing, if it is little, and warns of it.
func (w *weather) mend() {
	if w.leap {
		w.warnings.Add(w.row(0), "the file has a 29 February, which is left out", "a year has 365 days here")
	}
	for i, c := range w.layout.columns {
		w.bridge(c.name, w.figures[i])
	}
}

// bridge fills hours that are missing along a straight line between those beside them; the year goes round.
func (w *weather) bridge(name string, hours []float64) {
	missing, longest, run, first := 0, 0, 0, -1
	for h, v := range hours {
		if !math.IsNaN(v) {
			run = 0
			continue
		}
		if first < 0 {
			first = h
		}
		missing++
		run++
		longest = max(longest, run)
	}
	if missing == 0 {
		return
	}
	told := fmt.Sprintf("%s: %d figures are missing, the first here", name, missing)
	if missing == 1 {
		told = name + ": this figure is missing"
	}
	if missing > mostBridged || longest > longestBridged {
		w.problems.Add(w.row(first), told+fmt.Sprintf(", up to %d at a stretch", longest),
			fmt.Sprintf("fill them in: the program does so for up to %d, and %d at a stretch", mostBridged, longestBridged))
		return
	}
	n := len(hours)
	for h := range n {
		if !math.IsNaN(hours[h]) {
			continue
		}
		to := 1
		for math.IsNaN(hours[(h+to)%n]) {
			to++
		}
		back := 1 // those before were filled already, but for a gap that runs across New Year
		for math.IsNaN(hours[(h-back+n)%n]) {
			back++
		}
		before, after := hours[(h-back+n)%n], hours[(h+to)%n]
		hours[h] = before + (after-before)*float64(back)/float64(back+to)
	}
	w.warnings.Add(w.row(first), told, "they are taken to lie on a line between the hours beside them")
}
