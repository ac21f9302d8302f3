package milp

import (
	"context"
	"fmt"
	"math"
	"testing"
)

// TestStatuses has a model for every way a search ends.
func TestStatuses(t *testing.T) {
	inf := math.Inf(1)
	tests := []struct {
		name      string
		build     func(m *Model)
		options   Options
		want      Status
		objective float64
	}{
		{"a proof", func(m *Model) {
			x := m.Integer("x", 0, inf)
			m.Row("r", Sum(T(3, x)), AtLeast, 10)
			m.Minimize(Sum(T(1, x)))
		}, Options{Prove: true}, Proved, 4},
		{"no proof asked for", func(m *Model) {
			x := m.Integer("x", 0, inf)
			m.Row("r", Sum(T(3, x)), AtLeast, 10)
			m.Minimize(Sum(T(1, x)))
		}, Options{}, Best, 4},
		{"relaxed", func(m *Model) {
			x := m.Integer("x", 0, inf)
			m.Row("r", Sum(T(4, x)), AtLeast, 10)
			m.Minimize(Sum(T(2, x)))
		}, Options{Relax: true}, Best, 5},
		{"no real point", func(m *Model) {
			x := m.Continuous("x", 0, 1)
			m.Row("r", Sum(T(1, x)), AtLeast, 2)
		}, Options{Prove: true}, Infeasible, 0},
		{"no whole point", func(m *Model) {
			x, y := m.Integer("x", 0, 50), m.Integer("y", 0, 50)
			m.Row("r", Sum(T(2, x), T(4, y)), Equal, 51)
			m.Minimize(Sum(T(1, x)))
		}, Options{Prove: true}, Infeasible, 0},
		{"no limit", func(m *Model) {
			x, y := m.Continuous("x", 0, inf), m.Continuous("y", 0, inf)
			m.Row("r", Sum(T(1, x), T(-1, y)), AtMost, 2)
			m.Maximize(Sum(T(1, x)))
		}, Options{Prove: true}, Unbounded, 0},
		{"no limit in whole numbers", func(m *Model) {
			x, y := m.Integer("x", 0, inf), m.Integer("y", 0, inf)
			m.Row("r", Sum(T(2, x), T(-2, y)), Equal, 2)
			m.Maximize(Sum(T(1, x)))
		}, Options{}, Unbounded, 0},
		{"no limit, but no point either", func(m *Model) {
			x, y := m.Continuous("x", 0, inf), m.Binary("y")
			m.Row("r", Sum(T(2, y)), Equal, 1)
			m.Maximize(Sum(T(1, x)))
		}, Options{}, Infeasible, 0},
		{"a cutoff just met", func(m *Model) {
			x := m.Integer("x", 0, inf)
			m.Row("r", Sum(T(3, x)), AtLeast, 10)
			m.Minimize(Sum(T(1, x)))
		}, Options{Prove: true, Cutoff: 4, HasCutoff: true}, Proved, 4},
		{"a cutoff just missed", func(m *Model) {
			x := m.Integer("x", 0, inf)
			m.Row("r", Sum(T(3, x)), AtLeast, 10)
			m.Minimize(Sum(T(1, x)))
		}, Options{Prove: true, Cutoff: 3.999, HasCutoff: true}, Infeasible, 0},
		{"a cutoff when maximising", func(m *Model) {
			x := m.Integer("x", 0, 7)
			m.Row("r", Sum(T(2, x)), AtMost, 9)
			e := Sum(T(1.5, x))
			e.Const(10)
			m.Maximize(e)
		}, Options{Prove: true, Cutoff: 16, HasCutoff: true}, Proved, 16},
		{"a cutoff too high when maximising", func(m *Model) {
			x := m.Integer("x", 0, 7)
			m.Row("r", Sum(T(2, x)), AtMost, 9)
			e := Sum(T(1.5, x))
			e.Const(10)
			m.Maximize(e)
		}, Options{Prove: true, Cutoff: 16.01, HasCutoff: true}, Infeasible, 0},
		{"no objective", func(m *Model) {
			x := m.Integer("x", 0, 9)
			m.Row("r", Sum(T(3, x)), Equal, 12)
		}, Options{Prove: true}, Proved, 0},
		{"no objective and a cutoff that its constant meets", func(m *Model) {
			m.Row("r", Sum(T(3, m.Integer("x", 0, 9))), Equal, 12)
			m.Minimize(*new(Expr).Const(5))
		}, Options{Prove: true, Cutoff: 5, HasCutoff: true}, Proved, 5},
		{"no objective and a cutoff that its constant misses", func(m *Model) {
			m.Row("r", Sum(T(3, m.Integer("x", 0, 9))), Equal, 12)
			m.Maximize(*new(Expr).Const(5))
		}, Options{Prove: true, Cutoff: 6, HasCutoff: true}, Infeasible, 0},
		{"no rows", func(m *Model) {
			e := Sum(T(-2, m.Integer("x", 0, 9)), T(1, m.Continuous("y", -3, 3)))
			e.Const(100)
			m.Minimize(e)
		}, Options{Prove: true}, Proved, 79},
		{"no variables", func(m *Model) {
			m.Minimize(*new(Expr).Const(7))
			m.Row("r", Sum(), AtMost, 0)
		}, Options{Prove: true}, Proved, 7},
		{"no variables and a row that fails", func(m *Model) {
			m.Row("r", Sum(), AtLeast, 1)
		}, Options{Prove: true}, Infeasible, 0},
		{"no variables and a cutoff", func(m *Model) {
			m.Minimize(*new(Expr).Const(7))
		}, Options{Prove: true, Cutoff: 6, HasCutoff: true}, Infeasible, 0},
		{"a row that vanishes and fails", func(m *Model) {
			x := m.Binary("x")
			m.Row("r", Sum(T(1, x), T(-1, x)), Equal, 3)
		}, Options{Prove: true}, Infeasible, 0},
		{"fixed variables only", func(m *Model) {
			x, y := m.Integer("x", 2, 2), m.Continuous("y", 0.5, 0.5)
			m.Row("r", Sum(T(1, x), T(1, y)), AtMost, 2.5)
			m.Minimize(Sum(T(1, x), T(4, y)))
		}, Options{Prove: true}, Proved, 4},
		{"negative numbers", func(m *Model) {
			x := m.Integer("x", -9, -2)
			y := m.Continuous("y", math.Inf(-1), -1)
			m.Row("r", Sum(T(1, x), T(1, y)), AtLeast, -7.5)
			m.Minimize(Sum(T(3, x), T(1, y)))
		}, Options{Prove: true}, Proved, -19.5},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			m := New(test.name)
			test.build(m)
			s, err := m.Solve(context.Background(), test.options)
			if err != nil {
				t.Fatal(err)
			}
			if s.Status != test.want || math.Abs(s.Objective-test.objective) > 1e-9 {
				t.Errorf("%v %v, want %v %v; %q", s.Status, s.Objective, test.want, test.objective, s.Retries)
			}
			if s.Ended {
				t.Error("said to have been cut short")
			}
			if s.Status.HasPoint() != (s.Values() != nil) {
				t.Errorf("%v with values %v", s.Status, s.Values())
			}
			if s.Status == Best && s.Bound > test.objective+1e-9 {
				t.Errorf("bound %v of an optimum of %v", s.Bound, test.objective)
			}
		})
	}
}

// TestStatusWords reads every status and relation aloud, unknown ones too.
func TestStatusWords(t *testing.T) {
	got := fmt.Sprint(Proved, "; ", Best, "; ", Infeasible, "; ", Unbounded, "; ", Stopped, "; ", GaveUp, "; ",
		Status(0), "; ", AtMost, AtLeast, Equal, Rel(7))
	want := "proved best; best found; impossible; without limit; stopped before a point was found; " +
		"the solver gave up; Status(0); <= >= = Rel(7)"
	if got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}

// TestResolution: a proof leaves aside what is better by less than the resolution, and finds what is
// better by as much.
func TestResolution(t *testing.T) {
	for _, step := range []float64{1, 0.01, 1e-4} {
		m := New("m")
		// Values 0, step, 2 step ... 10 step; all but the best need a smaller y.
		x := m.Integer("x", 0, 10)
		y := m.Continuous("y", 0, 1)
		m.Row("r", Sum(T(1, x), T(3, y)), AtLeast, 4.5)
		m.Minimize(Sum(T(step, x), T(step/1e6, y)))
		s, err := m.Solve(context.Background(), Options{Prove: true, Resolution: step / 2})
		if err != nil || s.Status != Proved || s.Int(x) != 2 {
			t.Errorf("step %v: %+v, %v", step, s, err)
		}
		if s.Bound > s.Objective || s.Bound < s.Objective-step {
			t.Errorf("step %v: bound %v of %v", step, s.Bound, s.Objective)
		}
	}
}

// TestSpacing: what every value of the objective is a multiple of.
func TestSpacing(t *testing.T) {
	for _, test := range []struct {
		coefs []float64
		real  bool
		want  float64
	}{
		{[]float64{6, 9, -15}, false, 3}, {[]float64{7}, false, 7}, {[]float64{4, 6, 9}, false, 1},
		{[]float64{4, 6.5}, false, 0}, {[]float64{4, 6}, true, 0}, {nil, false, 0}, {[]float64{0x1p54}, false, 0},
	} {
		m := New("m")
		var e Expr
		for j, c := range test.coefs {
			if test.real && j == 1 {
				e.Add(c, m.Continuous(name("x", j), 0, 1))
			} else {
				e.Add(c, m.Binary(name("x", j)))
			}
		}
		m.Minimize(e)
		if got := m.spacing(); got != test.want {
			t.Errorf("%v: %v, want %v", test.coefs, got, test.want)
		}
	}
}
