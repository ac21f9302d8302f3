package audit

import (
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/wiring/nec"
	"cartwright/optimize/wiring/raceway"
)

// TestConduitAreas: the audit's table of areas has every size that a plan may put into a conduit, with the same area: it
// once lacked 500 kcmil, so that a right plan would have failed its audit.
func TestConduitAreas(t *testing.T) {
	for _, size := range nec.Sizes() {
		cable := catalog.Cable{Size: size}
		want, listed := raceway.AreaMM2(&cable)
		if got, ok := filledMM2(&cable); ok != listed || got != want {
			t.Errorf("%s: %g mm2, %t; wiring/raceway has %g mm2, %t", size, got, ok, want, listed)
		}
	}
}
