package problem

import (
	"strings"

	"github.com/agnivade/levenshtein"
)

// maxName is the longest name that is compared, in bytes: edit distance takes time in proportion to the
// product of both lengths, and a text as long as this is no misspelt name.
const maxName = 100

// minStem is the shortest name, in bytes, that is taken for the beginning of a longer one.
const minStem = 3

// Nearest returns the known name closest to a misspelt one by edit distance, regardless of case, or ""
// where none is close enough to be what was meant (more than half of the letters would have to change).
// Where none is, it returns the shortest known name that the misspelt one is the beginning of: "mass" for
// "mass_kg". Among equals the first known one wins.
func Nearest(name string, known []string) string {
	if len(name) > maxName {
		return ""
	}
	best, bestDistance := "", len(name)/2+1
	longer := ""
	lower := strings.ToLower(name)
	for _, k := range known {
		low := strings.ToLower(k)
		if d := levenshtein.ComputeDistance(lower, low); d < bestDistance {
			best, bestDistance = k, d
		}
		if len(name) >= minStem && strings.HasPrefix(low, lower) && (longer == "" || len(k) < len(longer)) {
			longer = k
		}
	}
	if best == "" {
		return longer
	}
	return best
}
