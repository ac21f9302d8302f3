package milp

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
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

// TestScaling: rows and objective are multiplied by powers of 2, which no row's truth depends on.
func TestScaling(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := cart(func(lo, hi int) int { return rapid.IntRange(lo, hi).Draw(t, "n") }, 1)
		p, _ := m.flatten(false)
		before := append([]float64(nil), p.coef...)
		q, objective := p.scaled()
		if err := q.check(); err != nil {
			t.Fatal(err)
		}
		for i := range p.kind {
			for k := p.begin[i]; k < p.begin[i+1]; k++ {
				if p.coef[k] != before[k] {
					t.Fatal("the program itself was changed")
				}
				if q.coef[k]*p.rhs[i] != p.coef[k]*q.rhs[i] || !powerOf2(q.coef[k]/p.coef[k]) {
					t.Fatalf("row %d: %v of %v became %v of %v", i, p.coef[k], p.rhs[i], q.coef[k], q.rhs[i])
				}
			}
		}
		for k := range p.objcoef {
			if q.objcoef[k] != objective*p.objcoef[k] || !powerOf2(objective) {
				t.Fatalf("objective %v became %v by %v", p.objcoef[k], q.objcoef[k], objective)
			}
		}
	})
}

func powerOf2(v float64) bool {
	part, _ := math.Frexp(v)
	return part == 0.5
}

// TestLastGate: what must never reach C is stopped, whoever made it.
func TestLastGate(t *testing.T) {
	for name, spoil := range map[string]func(p *program){
		"column 0":               func(p *program) { p.colno[0] = 0 },
		"column beyond the end":  func(p *program) { p.colno[len(p.colno)-1] = int32(len(p.lo) + 1) },
		"column twice":           func(p *program) { p.colno[1] = p.colno[0] },
		"objective beyond":       func(p *program) { p.objcol[len(p.objcol)-1] = 1 << 20 },
		"short bounds":           func(p *program) { p.hi = p.hi[1:] },
		"short integers":         func(p *program) { p.isint = p.isint[1:] },
		"short right-hand side":  func(p *program) { p.rhs = p.rhs[1:] },
		"short coefficients":     func(p *program) { p.coef = p.coef[1:] },
		"short objective":        func(p *program) { p.objcoef = p.objcoef[1:] },
		"row ends beyond":        func(p *program) { p.begin[len(p.begin)-1]++ },
		"row starts before":      func(p *program) { p.begin[0]-- },
		"row of negative length": func(p *program) { p.begin[1] = p.begin[2] + 1 },
		"unknown relation":       func(p *program) { p.kind[0] = 7 },
		"coefficient NaN":        func(p *program) { p.coef[0] = math.NaN() },
		"objective NaN":          func(p *program) { p.objcoef[0] = math.NaN() },
		"infinite limit":         func(p *program) { p.rhs[0] = math.Inf(1) },
		"infinite bound":         func(p *program) { p.hi[0] = math.Inf(1) },
	} {
		t.Run(name, func(t *testing.T) {
			p, _ := cart(seeded(1), 1).flatten(false)
			spoil(p)
			w, err := newWatch(context.Background(), 0)
			if err != nil {
				t.Fatal(err)
			}
			defer w.free()
			if _, err := p.run(&usual, 0, noEnd, w); err == nil {
				t.Error("let through")
			}
		})
	}
}

// TestTrickle is the trap of a big M: a charge that is due where more than 0 flows, a flow so small that
// the engine's tolerance for integers hides the charge. No wrong point may come back; the engine sees no
// better one, so that giving up is right as well.
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
			switch {
			case s.Status == GaveUp && len(s.Retries) > 0:
			case s.Status == Proved && math.Abs(s.Objective-100-flow) < 1e-6 && s.Int(open) == 1:
			default:
				t.Errorf("%v %v at open %v; %q", s.Status, s.Objective, s.Value(open), s.Retries)
			}
			t.Logf("%v %v", s.Status, s.Retries)
		})
	}
}

// TestVersion reads the version of the library this was measured with.
func TestVersion(t *testing.T) {
	if v := Version(); !strings.HasPrefix(v, "5.5.2.") {
		t.Errorf("version %s; the settings were measured with 5.5.2: measure again", v)
	}
}
