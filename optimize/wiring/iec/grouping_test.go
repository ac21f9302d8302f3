package iec_test

import (
	"testing"

	"cartwright/optimize/wiring/iec"
)

// TestGroupingFactor holds each row of IEC 60364-5-52:2009 table B.52.17, item 1: more than four
// independent texts. Between the rows the next larger group counts.
func TestGroupingFactor(t *testing.T) {
	for _, r := range []struct {
		from, to int
		want     float64
	}{
		{0, 1, 1.00},
		{2, 2, 0.80},
		{3, 3, 0.70},
		{4, 4, 0.65},
		{5, 5, 0.60},
		{6, 6, 0.57},
		{7, 7, 0.54},
		{8, 8, 0.52},
		{9, 9, 0.50},
		{10, 12, 0.45},
		{13, 16, 0.41},
		{17, 20, 0.38},
	} {
		for n := r.from; n <= r.to; n++ {
			if got, ok := iec.GroupingFactor(n); got != r.want || !ok {
				t.Errorf("GroupingFactor(%d) = %v, %v; want %v", n, got, ok, r.want)
			}
		}
	}
	if got, ok := iec.GroupingFactor(21); ok || got != 0 {
		t.Errorf("above the table: GroupingFactor = %v, %v; want 0, false", got, ok)
	}
}

// TestCircuits: two conductors are a circuit, an odd one counts as one (common practice, no source).
func TestCircuits(t *testing.T) {
	for conductors, want := range []int{0, 1, 1, 2, 2, 3, 3} {
		if got := iec.Circuits(conductors); got != want {
			t.Errorf("Circuits(%d) = %d, want %d", conductors, got, want)
		}
	}
}
