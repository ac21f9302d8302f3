package proof

import (
	"math"
	"math/rand/v2"
	"testing"
)

// Whatever CheckPoint takes for a point no certificate excludes: random programs with and without bounds, random
// multipliers and splits, points on the very edge of what a row may be off.
func TestNoPointIsExcluded(t *testing.T) {
	r := rand.New(rand.NewPCG(12, 4))
	points, proofs, tight := 0, 0, 0
	for range 4000 {
		p, x := around(r)
		cost, err := CheckPoint(p, x)
		if err != nil {
			continue
		}
		points++
		at, _ := cost.Float64()
		tree := anyTree(r, p, 2)
		if Check(p, tree, inf) == nil || Check(p, markImpossible(tree), inf) == nil {
			t.Fatalf("a program with the point %v was called impossible\n%+v", x, p)
		}
		for _, above := range []float64{0, 1e-12, 1e-9, 1e-7, 1e-3, 1, 100} {
			bound := at + above*math.Max(1, math.Abs(at))
			if bound > at && Check(p, tree, bound) == nil {
				t.Fatalf("bound %v, and the point %v costs %v\n%+v", bound, x, at, p)
			}
		}
		if Check(p, tree, at-1) == nil {
			proofs++
		}
		if Check(p, tree, at-1e-5*math.Max(1, math.Abs(at))) == nil {
			tight++
		}
	}
	t.Logf("%d points, %d certificates that come within 1 of theirs, %d that come closer", points, proofs, tight)
	if points < 2000 || proofs < 100 || tight < 20 {
		t.Error("too little was tried")
	}
}

// around returns a program and a point that about keeps its rows, some of them by a hair.
func around(r *rand.Rand) (*Program, []float64) {
	p, x := new(Program), []float64(nil)
	size := math.Exp2(float64(r.IntN(30) - 10))
	for range 1 + r.IntN(4) {
		whole := r.IntN(2) == 0
		v := float64(r.IntN(9) - 2)
		if !whole {
			v *= size * r.Float64()
		}
		lower, upper := math.Inf(-1), inf
		if r.IntN(3) > 0 {
			lower = math.Floor(v - float64(r.IntN(3)))
		}
		if r.IntN(3) > 0 {
			upper = math.Ceil(v + float64(r.IntN(3)))
		}
		x, p.Integer = append(x, v), append(p.Integer, whole)
		p.Lower, p.Upper = append(p.Lower, lower), append(p.Upper, upper)
		p.Cost = append(p.Cost, float64(r.IntN(7)-2))
	}
	for range 1 + r.IntN(4) {
		row := Row{Lower: math.Inf(-1), Upper: inf}
		sum, largest := 0.0, 0.0
		for j, v := range x {
			if coef := float64(r.IntN(9)-4) * 0.3; coef != 0 {
				row.Cols, row.Coefs = append(row.Cols, j), append(row.Coefs, coef)
				sum, largest = sum+coef*v, math.Max(largest, math.Abs(coef*v))
			}
		}
		off := []float64{0, 0.5, 0.999, -1}[r.IntN(4)] * Slack * largest
		if r.IntN(2) == 0 {
			row.Lower = sum + off
		} else {
			row.Upper = sum - off
		}
		if r.IntN(5) == 0 {
			row.Lower, row.Upper = sum+off, sum+off
		}
		p.Rows = append(p.Rows, row)
	}
	return p, x
}

// anyTree returns a tree of random splits and multipliers of right signs.
func anyTree(r *rand.Rand, p *Program, depth int) *Tree {
	j := r.IntN(len(p.Cost))
	if depth > 0 && p.Integer[j] && r.IntN(2) == 0 {
		return &Tree{Column: j, At: int64(r.IntN(8) - 2), Below: anyTree(r, p, depth-1), Above: anyTree(r, p, depth-1)}
	}
	leaf := new(Tree)
	for i, row := range p.Rows {
		y := float64(r.IntN(3)) / 0.3
		switch {
		case r.IntN(2) == 0:
		case !math.IsInf(row.Lower, 0) && (math.IsInf(row.Upper, 0) || r.IntN(2) == 0):
			leaf.Multipliers = append(leaf.Multipliers, Multiplier{i, y})
		case !math.IsInf(row.Upper, 0):
			leaf.Multipliers = append(leaf.Multipliers, Multiplier{i, -y})
		}
	}
	return leaf
}

func markImpossible(t *Tree) *Tree {
	twin := clone(t)
	for _, n := range nodes(twin) {
		n.Impossible = n.Below == nil
	}
	return twin
}
