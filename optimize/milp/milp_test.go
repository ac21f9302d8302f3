package milp

import (
	"context"
	"testing"
)

// TestWyndorGlass is the Wyndor Glass example of Hillier and Lieberman, Introduction to Operations
// Research: optimum 36 at (2, 6).
func TestWyndorGlass(t *testing.T) {
	m := New("wyndor")
	x, y := m.Integer("x", 0, 100), m.Continuous("y", 0, 100)
	m.Row("plant 1", Sum(T(1, x)), AtMost, 4)
	m.Row("plant 2", Sum(T(2, y)), AtMost, 12)
	m.Row("plant 3", Sum(T(3, x), T(2, y)), AtMost, 18)
	m.Maximize(Sum(T(3, x), T(5, y)))
	s, err := m.Solve(context.Background(), Options{Prove: true, Resolution: 0.5})
	if err != nil || s.Status != Proved || s.Objective != 36 || s.Int(x) != 2 || s.Value(y) != 6 {
		t.Fatalf("got %+v, %v; want 36 at (2, 6)", s, err)
	}
}
