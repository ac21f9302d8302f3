package scenarios_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"cartwright/scenarios"
)

// The help lists every key there is, those of sun in a table of their own.
func TestHelpListsEveryKey(t *testing.T) {
	var told []string
	for _, m := range regexp.MustCompile("(?m)^\\| `([^`]+)`( \\*)? \\|").FindAllStringSubmatch(scenarios.Help(), -1) {
		told = append(told, m[1])
	}
	keys := scenarios.Keys()
	for _, key := range keys {
		if !slices.Contains(told, key) {
			t.Errorf("the help lacks %s", key)
		}
	}
	isSun := func(key string) bool { return strings.HasPrefix(key, "sun.") }
	for _, key := range told {
		if !slices.Contains(keys, key) && !(isSun(key) && !slices.ContainsFunc(keys, isSun)) {
			t.Errorf("the help tells of %s, which is no key", key)
		}
	}
}
