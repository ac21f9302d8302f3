package branch

import (
	"context"
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize/convex/lp"

	"cartwright/optimize/milp/proof"
)

// TestAgainstGonum solves linear programs in equation form, A x = b, x >= 0, with another simplex as well.
func TestAgainstGonum(t *testing.T) {
	compared, unbounded := 0, 0
	for seed := range uint64(600) {
		r := rand.New(rand.NewPCG(seed, 3))
		rows := 1 + r.IntN(5)
		n := rows + 1 + r.IntN(6)
		a := mat.NewDense(rows, n, nil)
		b, c := make([]float64, rows), make([]float64, n)
		p := &proof.Program{Cost: c, Lower: make([]float64, n), Upper: make([]float64, n), Integer: make([]bool, n)}
		for j := range c {
			c[j], p.Upper[j] = float64(r.IntN(40)-5), math.Inf(1)
		}
		for i := range rows {
			row := proof.Row{}
			for j := range n {
				v := float64(r.IntN(21) - 6)
				a.Set(i, j, v)
				row.Cols, row.Coefs = append(row.Cols, j), append(row.Coefs, v)
				b[i] += v * float64(r.IntN(4))
			}
			row.Lower, row.Upper = b[i], b[i]
			p.Rows = append(p.Rows, row)
		}
		want, _, err := lp.Simplex(c, a, b, 1e-10, nil)
		got := Solve(context.Background(), p, ask())
		switch {
		case err == lp.ErrUnbounded:
			unbounded++
			if got.Ending != Limitless {
				t.Errorf("seed %d: %d, without limit", seed, got.Ending)
			}
		case err == lp.ErrInfeasible:
			if got.Point != nil {
				t.Errorf("seed %d: %v where there is no point", seed, got.Point)
			}
		case err != nil: // singular, says the other
		default:
			compared++
			if got.Point == nil || math.Abs(got.Cost-want) > 1e-7*max(1, math.Abs(want)) {
				t.Errorf("seed %d: %d, %v, want %v", seed, got.Ending, got.Cost, want)
			}
		}
	}
	if compared < 200 || unbounded < 20 {
		t.Errorf("compared %d, %d without limit", compared, unbounded)
	}
}

func infinite() float64 { return math.Inf(1) }

// TestEnds has a program for each way a search ends, and the odd shapes.
func TestEnds(t *testing.T) {
	inf := infinite()
	row := func(lo, hi float64, coefs ...float64) proof.Row {
		r := proof.Row{Lower: lo, Upper: hi, Coefs: coefs}
		for j := range coefs {
			r.Cols = append(r.Cols, j)
		}
		return r
	}
	for _, test := range []struct {
		name string
		p    proof.Program
		want Ending
		cost float64 // +Inf for no point
	}{
		{"nothing at all", proof.Program{}, Closed, 0},
		{"no rows", proof.Program{Cost: []float64{-2, 3}, Lower: []float64{0, -4}, Upper: []float64{9, 5}, Integer: []bool{true, false}}, Closed, -30},
		{"a row without terms that holds", proof.Program{Rows: []proof.Row{row(-1, 1)}}, Closed, 0},
		{"a row without terms that does not", proof.Program{Rows: []proof.Row{row(1, 2)}}, Closed, inf},
		{"no whole number between", proof.Program{Cost: []float64{1, 1}, Lower: []float64{0, 0}, Upper: []float64{50, 50}, Integer: []bool{true, true},
			Rows: []proof.Row{row(51, 51, 2, 4)}}, Closed, inf},
		{"without limit", proof.Program{Cost: []float64{-1, 0}, Lower: []float64{0, 0}, Upper: []float64{inf, inf}, Integer: []bool{false, false},
			Rows: []proof.Row{row(-inf, 2, 1, -1)}}, Limitless, inf},
		{"falling, but held by a row", proof.Program{Cost: []float64{-1, 0}, Lower: []float64{0, 0}, Upper: []float64{inf, inf}, Integer: []bool{true, true},
			Rows: []proof.Row{row(-inf, 7.5, 2, 1)}}, Closed, -3},
		{"fixed", proof.Program{Cost: []float64{5}, Lower: []float64{2}, Upper: []float64{2}, Integer: []bool{true}, Rows: []proof.Row{row(4, 4, 2)}}, Closed, 10},
		{"a range", proof.Program{Cost: []float64{1, 1}, Lower: []float64{-5, -5}, Upper: []float64{5, 5}, Integer: []bool{true, true},
			Rows: []proof.Row{row(-3, 4, 2, 1), row(1, 1, 1, -1)}}, Closed, -1},
		{"a free variable with a row on each side", proof.Program{Cost: []float64{1}, Lower: []float64{-inf}, Upper: []float64{inf}, Integer: []bool{false},
			Rows: []proof.Row{row(-6, 9, 3)}}, Closed, -2},
	} {
		t.Run(test.name, func(t *testing.T) {
			a := Solve(context.Background(), &test.p, ask())
			if a.Ending != test.want {
				t.Fatalf("ended with %d, want %d", a.Ending, test.want)
			}
			if (a.Point == nil) != math.IsInf(test.cost, 1) || a.Point != nil && math.Abs(a.Cost-test.cost) > 1e-9 {
				t.Errorf("%v at %v, want %v", a.Cost, a.Point, test.cost)
			}
			if test.want == Closed {
				if err := proof.Check(&test.p, a.Tree, a.Bound); err != nil {
					t.Error(err)
				}
			}
		})
	}
}

// hard is a market split after Cornuejols and Dawande (INFORMS J. Computing 11, 1999): almost every node has to be
// looked at.
func hard() *proof.Program {
	r := rand.New(rand.NewPCG(1, 4))
	p := columns(r, 30, func(int) (float64, float64, bool) { return 0, 1, true })
	addRows(p, r, 4, func() float64 { return float64(1 + r.IntN(99)) }, func(lhs float64) (float64, float64) { return lhs + 1, lhs + 1 })
	return p
}

// TestWork: the limit ends a search, and what is known then is said.
func TestWork(t *testing.T) {
	k := ask()
	k.Work = 2000
	a := Solve(context.Background(), hard(), k)
	if a.Ending != Spent || a.Work <= k.Work || a.Work > k.Work+500 || a.Tree != nil {
		t.Errorf("ended with %d after %d", a.Ending, a.Work)
	}
}

// TestContext: a context that is over ends a search at once.
func TestContext(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if a := Solve(ctx, hard(), ask()); a.Ending != Halted || a.Nodes != 0 || a.Tree != nil {
		t.Errorf("ended with %d after %d nodes", a.Ending, a.Nodes)
	}
}

// TestCeiling: nothing is found where nothing costs so little, and that is proved.
func TestCeiling(t *testing.T) {
	for seed := range 300 {
		p := kinds[1].make(rand.New(rand.NewPCG(uint64(seed), 5)))
		best := proved(t, p, "free", seed)
		if best.Point == nil {
			continue
		}
		for _, test := range []struct {
			below float64
			found bool
		}{{best.Cost + 0.5, true}, {best.Cost - 0.5, false}} {
			k := ask()
			k.Below, k.Accept = test.below, test.below
			a := Solve(context.Background(), p, k)
			if a.Ending != Closed || (a.Point != nil) != test.found || a.Point == nil && a.Bound != test.below {
				t.Fatalf("seed %d: below %v: ended with %d, %v, proves %v", seed, test.below, a.Ending, a.Point, a.Bound)
			}
			if err := proof.Check(p, a.Tree, a.Bound); err != nil {
				t.Fatalf("seed %d: %v", seed, err)
			}
			// A point that is known is where the search starts.
			k.Known = best.Point
			if a = Solve(context.Background(), p, k); test.found && !reflect.DeepEqual(a.Point, best.Point) {
				t.Fatalf("seed %d: %v instead of the known %v", seed, a.Point, best.Point)
			}
		}
	}
}

// TestSame: the same program gives the same answer, tree and all.
func TestSame(t *testing.T) {
	for seed := range 50 {
		p := kinds[2].make(rand.New(rand.NewPCG(uint64(seed), 6)))
		if a, b := Solve(context.Background(), p, ask()), Solve(context.Background(), p, ask()); !reflect.DeepEqual(a, b) {
			t.Fatalf("seed %d: %+v and %+v", seed, a, b)
		}
	}
}
