package main

import (
	"strings"
	"testing"

	"cartwright/scenarios"
)

// A plan fits what one reads in a sitting: at most 120 lines of 80 columns. The first two answer.
func TestPlanIsShort(t *testing.T) {
	for _, demo := range scenarios.DemoNames() {
		stdout, stderr, code := execute("plan " + demo + " --as-of 2026-11-25")
		if code != 0 {
			t.Fatal(stderr)
		}
		lines := strings.Split(strings.TrimSuffix(stdout, "\n"), "\n")
		if len(lines) > 120 {
			t.Errorf("%s: %d lines, at most 120", demo, len(lines))
		}
		if !strings.HasPrefix(lines[0], "Buy ") {
			t.Errorf("%s: the answer begins with %q", demo, lines[0])
		}
	}
}
