package milp

import (
	"context"
	"io"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// TestBuildingErrors makes every mistake once: the first is kept, and comes back from Err, Solve and
// WriteMPS alike.
func TestBuildingErrors(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	stranger := New("another").Binary("x")
	tests := []struct {
		name  string
		build func(m *Model, x Var)
		want  string
	}{
		{"a variable's name twice", func(m *Model, x Var) { m.Binary("x") }, `two variables are named "x"`},
		{"a row's name twice", func(m *Model, x Var) {
			m.Row("r", Sum(T(1, x)), AtMost, 1)
			m.Row("r", Sum(T(1, x)), AtMost, 1)
		}, `two rows are named "r"`},
		{"no name", func(m *Model, x Var) { m.Binary("") }, "a variable without a name"},
		{"no name of a row", func(m *Model, x Var) { m.Row("", Sum(T(1, x)), AtMost, 1) }, "a row without a name"},
		{"lower above upper bound", func(m *Model, x Var) { m.Continuous("y", 2, 1) }, `"y": lower bound 2 above upper bound 1`},
		{"no whole number between bounds", func(m *Model, x Var) { m.Integer("y", 1.2, 1.8) }, `"y": lower bound 2 above upper bound 1`},
		{"a bound that is no number", func(m *Model, x Var) { m.Continuous("y", nan, 1) }, `"y": a bound is not a number`},
		{"a lower bound of infinity", func(m *Model, x Var) { m.Continuous("y", inf, inf) }, "leave no value"},
		{"a huge bound", func(m *Model, x Var) { m.Continuous("y", 0, 1e20) }, "finite ones are at most 1e+15"},
		{"a coefficient that is no number", func(m *Model, x Var) { m.Row("r", Sum(T(nan, x)), AtMost, 1) }, `row "r": coefficient NaN of "x"`},
		{"an infinite coefficient", func(m *Model, x Var) { m.Row("r", Sum(T(inf, x)), AtMost, 1) }, `row "r": coefficient +Inf of "x"`},
		{"coefficients that add up to no number", func(m *Model, x Var) { m.Row("r", Sum(T(inf, x), T(-inf, x)), AtMost, 1) }, `coefficient NaN of "x"`},
		{"an infinite right-hand side", func(m *Model, x Var) { m.Row("r", Sum(T(1, x)), AtMost, inf) }, `row "r": right-hand side +Inf`},
		{"a constant that is no number", func(m *Model, x Var) { m.Row("r", *new(Expr).Const(nan), AtMost, 1) }, `row "r": constant NaN`},
		{"an unknown relation", func(m *Model, x Var) { m.Row("r", Sum(T(1, x)), Rel(9), 1) }, `row "r": unknown relation 9`},
		{"a variable of another model in a row", func(m *Model, x Var) { m.Row("r", Sum(T(1, stranger)), AtMost, 1) }, `row "r": a variable of another model`},
		{"no variable in a row", func(m *Model, x Var) { m.Row("r", Sum(T(1, Var{})), AtMost, 1) }, `row "r": a variable of another model`},
		{"a variable of another model in the objective", func(m *Model, x Var) { m.Minimize(Sum(T(1, stranger))) }, "a variable of another model"},
		{"an objective that is no number", func(m *Model, x Var) { m.Maximize(Sum(T(nan, x))) }, "coefficient NaN"},
		{"bounds of another model's variable", func(m *Model, x Var) { m.SetBounds(stranger, 0, 1) }, "SetBounds: a variable of another model"},
		{"bounds set the wrong way round", func(m *Model, x Var) { m.SetBounds(x, 1, 0) }, "lower bound 1 above upper bound 0"},
		{"a right-hand side of no row", func(m *Model, x Var) { m.SetRHS(Row{}, 0) }, "SetRHS: a row of another model"},
		{"a right-hand side set to no number", func(m *Model, x Var) { m.SetRHS(m.Row("r", Sum(T(1, x)), AtMost, 1), nan) }, "right-hand side NaN"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			m := New("m")
			test.build(m, m.Binary("x"))
			m.Binary("x") // a later mistake, which must not hide the first
			m.Continuous("later", 3, 2)
			_, solving := m.Solve(context.Background(), Options{})
			writing := m.WriteMPS(io.Discard)
			for _, err := range []error{m.Err(), solving, writing} {
				if err == nil || !strings.Contains(err.Error(), test.want) || !strings.HasPrefix(err.Error(), "milp: ") {
					t.Errorf("got %v, want %q", err, test.want)
				}
			}
		})
	}
}

// TestOptionErrors refuses options that make no sense.
func TestOptionErrors(t *testing.T) {
	for name, o := range map[string]Options{
		"negative work":            {Work: -1},
		"cutoff that is no number": {Cutoff: math.NaN(), HasCutoff: true},
		"infinite cutoff":          {Cutoff: math.Inf(1), HasCutoff: true},
		"negative resolution":      {Resolution: -1},
		"resolution no number":     {Resolution: math.NaN()},
		"infinite resolution":      {Resolution: math.Inf(1)},
	} {
		m := New("m")
		m.Binary("x")
		if _, err := m.Solve(context.Background(), o); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}

// TestMerging gives one variable twice, a vanishing one, and a constant.
func TestMerging(t *testing.T) {
	m := New("m")
	x, y := m.Continuous("x", 0, 10), m.Continuous("y", 0, 10)
	e := Sum(T(1, y), T(2, x), T(3, y))
	e.Add(5, x).Add(-7, x).Const(4)
	m.Row("r", e, AtMost, 12) // 4 y + 4 <= 12
	m.Maximize(Sum(T(1, y), T(1, y), T(0, x)))
	s := solved(t, m)
	if s.Objective != 4 || s.Value(y) != 2 {
		t.Errorf("got %v at y = %v, want 4 at 2", s.Objective, s.Value(y))
	}
	if vars, rows := m.Size(); vars != 2 || rows != 1 {
		t.Errorf("size %d, %d, want 2, 1", vars, rows)
	}
}

// TestChanging solves one model again and again with other bounds and right-hand sides; the constant of a
// row stays counted.
func TestChanging(t *testing.T) {
	m := New("m")
	x := m.Integer("x", 0, 100)
	e := Sum(T(2, x))
	e.Const(1)
	r := m.Row("r", e, AtMost, 10)
	m.Maximize(Sum(T(1, x)))
	for _, step := range []struct{ hi, rhs, want float64 }{{100, 10, 4}, {100, 21, 10}, {3, 21, 3}, {3.7, 5, 2}, {100, 1, 0}} {
		m.SetBounds(x, 0, step.hi)
		m.SetRHS(r, step.rhs)
		if s := solved(t, m); s.Objective != step.want {
			t.Errorf("bound %v, right-hand side %v: %v, want %v", step.hi, step.rhs, s.Objective, step.want)
		}
	}
	if lo, hi := m.Bounds(x); lo != 0 || hi != 100 {
		t.Errorf("bounds %v to %v", lo, hi)
	}
}

// TestWholeBounds moves the bounds of integers to whole numbers, rounding error beyond one forgiven.
func TestWholeBounds(t *testing.T) {
	m := New("m")
	for i, test := range []struct{ lo, hi, wantLo, wantHi float64 }{
		{0.2, 3.9, 1, 3}, {-0.3, 0.3, 0, 0}, {2.9999999999, 5.9999999999, 3, 6}, {1.0000000001, 3, 1, 3},
		{math.Inf(-1), math.Inf(1), math.Inf(-1), math.Inf(1)}, {-2.5, math.Inf(1), -2, math.Inf(1)},
	} {
		lo, hi := m.Bounds(m.Integer(name("x", i), test.lo, test.hi))
		if lo != test.wantLo || hi != test.wantHi || math.Signbit(lo) && lo == 0 {
			t.Errorf("%v to %v became %v to %v, want %v to %v", test.lo, test.hi, lo, hi, test.wantLo, test.wantHi)
		}
	}
}

// TestCopiesOfExpr: what is added to a copy is not seen by the original, nor the other way round.
func TestCopiesOfExpr(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := New("m")
		vars := []Var{m.Binary("x"), m.Binary("y"), m.Binary("z")}
		type pair struct {
			e    Expr
			want []float64 // coefficients, then the constant
		}
		list := []pair{{Sum(), make([]float64, 4)}}
		for range rapid.IntRange(1, 30).Draw(t, "steps") {
			k := rapid.IntRange(0, len(list)-1).Draw(t, "which")
			switch rapid.IntRange(0, 3).Draw(t, "what") {
			case 0:
				list = append(list, pair{list[k].e, append([]float64(nil), list[k].want...)})
			case 1:
				j := rapid.IntRange(0, 2).Draw(t, "variable")
				list[k].e.Add(float64(j+1), vars[j])
				list[k].want[j] += float64(j + 1)
			case 2:
				from := rapid.IntRange(0, len(list)-1).Draw(t, "from")
				add := append([]float64(nil), list[from].want...)
				list[k].e.AddExpr(-2, list[from].e)
				for i := range add {
					list[k].want[i] -= 2 * add[i]
				}
			case 3:
				list[k].e.Const(5)
				list[k].want[3] += 5
			}
		}
		for _, p := range list {
			got := make([]float64, 4)
			for _, term := range p.e.terms {
				got[term.v.col] += term.coef
			}
			got[3] = p.e.constant
			for i := range got {
				if got[i] != p.want[i] {
					t.Fatalf("got %v, want %v", got, p.want)
				}
			}
		}
	})
}

// TestForeignHandles: where no error can be returned a handle of another model panics.
func TestForeignHandles(t *testing.T) {
	m := New("m")
	x := m.Binary("x")
	m.Minimize(Sum(T(1, x)))
	stranger := New("another").Binary("x")
	s := solved(t, m)
	impossible := New("impossible")
	y := impossible.Binary("y")
	impossible.Row("r", Sum(T(1, y)), AtLeast, 2)
	none, err := impossible.Solve(context.Background(), Options{})
	if err != nil || none.Status != Infeasible || none.Values() != nil {
		t.Fatalf("got %+v, %v", none, err)
	}
	for what, f := range map[string]func(){
		"Value of another model's variable": func() { s.Value(stranger) },
		"Int of no variable":                func() { s.Int(Var{}) },
		"Bounds of another model":           func() { m.Bounds(stranger) },
		"Value without a point":             func() { none.Value(y) },
		"Violations of too few values":      func() { Violations(m, nil, 1e-6) },
	} {
		t.Run(what, func(t *testing.T) {
			defer func() {
				if recover() == nil {
					t.Error("no panic")
				}
			}()
			f()
		})
	}
}
