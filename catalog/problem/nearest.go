package problem

import (
	"strings"

	"github.com/agnivade/levenshtein"
)

// Nearest returns the known name closest to a misspelt one by edit distance, or "" where none is close
// enough to be what was meant (more than half of the letters would have to change).
func Nearest(name string, known []string) string {
	best, bestDistance := "", len(name)/2+1
	lower := strings.ToLower(name)
	for _, k := range known {
		d := levenshtein.ComputeDistance(lower, strings.ToLower(k))
		if d < bestDistance {
			best, bestDistance = k, d
		}
	}
	return best
}
