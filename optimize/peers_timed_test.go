package optimize_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"cartwright/optimize/question"
)

// timed has the other solvers look for the first plan of the exported program, cbc first, each for so long at the most, and
// tells in the cells of a table how many seconds each took. What one finds in time is judged.
func timed(t *testing.T, p question.Problem, most time.Duration, judge func(program string, cost float64)) string {
	t.Helper()
	file, cells := writeModel(t, p, question.ByCost), ""
	inOrder := slices.SortedFunc(slices.Values(peers), func(a, b aPeer) int { return strings.Compare(a.program, b.program) })
	for _, peer := range inOrder {
		start := time.Now()
		cost, done := peer.solveWithin(t, file, most)
		if !done {
			cells += fmt.Sprintf(" > %.0f |", most.Seconds())
			continue
		}
		cells += fmt.Sprintf(" %.1f |", time.Since(start).Seconds())
		judge(peer.program, cost)
	}
	return cells
}
