package nec_test

import (
	"testing"

	"cartwright/optimize/wiring/nec"
)

// TestBundlingFactor holds each row of NFPA 70 table 310.15(C)(1) (2020, 2023): three independent texts.
func TestBundlingFactor(t *testing.T) {
	for _, r := range []struct {
		from, to int
		want     float64
	}{
		{0, 3, 1.00},
		{4, 6, 0.80},
		{7, 9, 0.70},
		{10, 20, 0.50},
		{21, 30, 0.45},
		{31, 40, 0.40},
		{41, 200, 0.35},
	} {
		for n := r.from; n <= r.to; n++ {
			if got := nec.BundlingFactor(n); got != r.want {
				t.Errorf("BundlingFactor(%d) = %v, want %v", n, got, r.want)
			}
		}
	}
}
