package problem

import (
	"math"
	"slices"
	"strings"

	"github.com/agnivade/levenshtein"
)

// maxName is the longest name that is compared, in bytes: edit distance takes time in proportion to the
// product of both lengths, and a text as long as this is no misspelt name.
const maxName = 100

// minStem is the shortest name, in bytes, that is taken for the beginning of a longer one.
const minStem = 3

// One letter in three of a name may be wrong; one in two where the name begins right and only its end is wrong,
// as in "sundry" for "sundries".
const (
	lettersAFlaw   = 3
	lettersAtEnd   = 2
	rightBeginning = 0.75 // of the letters of the shorter name
	minBeginning   = 4    // letters
)

// Nearest returns the known name closest to a misspelt one by edit distance, regardless of case, or ""
// where none is close enough to be what was meant: more than a third of the letters would have to change, or half
// of them at the end of a name that begins right. Two neighbours that have changed places are one change.
// Where none is close, it returns the shortest known name that the misspelt one is the beginning of: "mass" for
// "mass_kg". Among equals the first known one wins.
func Nearest(name string, known []string) string {
	if len(name) > maxName {
		return ""
	}
	best, bestDistance := "", math.MaxInt
	longer := ""
	lower := strings.ToLower(name)
	for _, k := range known {
		low := strings.ToLower(k)
		if d := distance(lower, low); d < bestDistance && d <= allowed(lower, low) {
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

// allowed returns how many changes may be between a misspelt name and what was meant.
func allowed(name, known string) int {
	a, b := []rune(name), []rune(known)
	same := 0
	for same < min(len(a), len(b)) && a[same] == b[same] {
		same++
	}
	if same >= minBeginning && float64(same) >= rightBeginning*float64(min(len(a), len(b))) {
		return len(a) / lettersAtEnd
	}
	return len(a) / lettersAFlaw
}

// distance returns the edit distance of two names, where a swap of neighbours is one change if nothing else is
// different.
func distance(a, b string) int {
	d := levenshtein.ComputeDistance(a, b)
	if d == 2 && swapped([]rune(a), []rune(b)) {
		return 1
	}
	return d
}

// swapped reports whether two names differ just by two neighbours that have changed places.
func swapped(a, b []rune) bool {
	if len(a) != len(b) {
		return false
	}
	i := 0
	for i < len(a) && a[i] == b[i] {
		i++
	}
	return i+1 < len(a) && a[i] == b[i+1] && a[i+1] == b[i] && slices.Equal(a[i+2:], b[i+2:])
}
