package scenarios_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"cartwright/scenarios"
)

// The manual lists every key there is, those of sun in a table of their own.
func TestManualListsEveryKey(t *testing.T) {
	var told []string
	for _, m := range regexp.MustCompile("(?m)^\\| `([^`]+)`( \\*)? \\|").FindAllStringSubmatch(scenarios.Manual(), -1) {
		told = append(told, m[1])
	}
	keys := scenarios.Keys()
	for _, key := range keys {
		if !slices.Contains(told, key) {
			t.Errorf("the manual lacks %s", key)
		}
	}
	isSun := func(key string) bool { return strings.HasPrefix(key, "sun.") }
	for _, key := range told {
		if !slices.Contains(keys, key) && !(isSun(key) && !slices.ContainsFunc(keys, isSun)) {
			t.Errorf("the manual tells of %s, which is no key", key)
		}
	}
}
