package milp

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"
)

func TestViolations(t *testing.T) {
	m := New("m")
	x, y := m.Integer("x", 0, 10), m.Continuous("y", -5, 1000)
	m.Row("most", Sum(T(2, x), T(1, y)), AtMost, 20)
	e := Sum(T(1, x))
	e.Const(3)
	m.Row("least", e, AtLeast, 5)
	m.Row("equal", Sum(T(1, x), T(-1, y)), Equal, 1)
	tests := []struct {
		x, y float64
		tol  float64
		want string // names in order
	}{
		{4, 3, 0, ""},
		{4.5, 3.5, 1e-6, "integer x"},
		{1, 0, 0, "row least"},
		{11, 10, 0, "upper bound x, row most"},
		{-6, -7, 0, "lower bound x, lower bound y, row least"},
		{7, 6.0000001, 1e-6, ""},
		{7, 6.0001, 1e-6, "row most, row equal"},
		{math.NaN(), 3, 1, "number x, row most, row least, row equal"},
		{4, math.Inf(1), 1, "number y"},
	}
	for _, test := range tests {
		var got []string
		for _, v := range Violations(m, []float64{test.x, test.y}, test.tol) {
			got = append(got, v.What+" "+v.Name)
		}
		if s := strings.Join(got, ", "); s != test.want {
			t.Errorf("%v, %v: %q, want %q", test.x, test.y, s, test.want)
		}
	}
	v := Violations(m, []float64{1, 0}, 0)[0]
	if v.Value != 4 || v.Limit != 5 || v.By != 1 || v.String() != `row "least": 4 against 5, off by 1` {
		t.Errorf("got %+v, %v", v, v)
	}
}

// TestScaleOfViolations: the tolerance grows with what is added up, since its rounding does.
func TestScaleOfViolations(t *testing.T) {
	m := New("m")
	x, y := m.Continuous("x", 0, 1e9), m.Continuous("y", 0, 1e9)
	m.Row("r", Sum(T(1, x), T(-1, y)), Equal, 0)
	if v := Violations(m, []float64{1e9, 1e9 - 50}, 1e-7); len(v) > 0 {
		t.Errorf("50 in 1e9 is refused: %v", v)
	}
	if v := Violations(m, []float64{1e9, 1e9 - 200}, 1e-7); len(v) != 1 {
		t.Error("200 in 1e9 is let through")
	}
}

// TestTrickle is the trap of a big M: a charge that is due where more than 0 flows, a flow so small that a tolerance
// hides the charge. No wrong point may come back; that nothing is better can't be proved where what a row may be off
// is more than the flow.
func TestTrickle(t *testing.T) {
	for _, flow := range []float64{1, 1e-2, 1e-4} {
		t.Run(fmt.Sprint(flow), func(t *testing.T) {
			m := New("trickle")
			open := m.Binary("open")
			x := m.Continuous("x", flow, 1e9)
			m.Row("only if open", Sum(T(1, x), T(-1e9, open)), AtMost, 0)
			m.Minimize(Sum(T(100, open), T(1, x)))
			s, err := m.Solve(context.Background(), Options{Prove: true})
			if err != nil {
				t.Fatal(err)
			}
			if s.Status != Best || math.Abs(s.Objective-100-flow) > 1e-6 || s.Int(open) != 1 || s.Bound > flow {
				t.Errorf("%v %v, bound %v; %q", s.Status, s.Objective, s.Bound, s.Retries)
			}
		})
	}
}
