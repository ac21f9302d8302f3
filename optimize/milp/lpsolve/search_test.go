//go:build linux && (amd64 || arm64) && !nolpsolve

package lpsolve

import (
	"context"
	"math"
	"math/rand/v2"
	"os"
	"sync"
	"testing"
	"time"

	"cartwright/optimize/milp/engine"
	"cartwright/optimize/milp/proof"
)

// chvatal is: make -(5x + 4y + 3z) least, 2x + 3y + z <= 5, 4x + y + 2z <= 11, 3x + 4y + 2z <= 8, all whole. With it
// V. Chvatal, "Linear Programming" (1983), begins: 13 at x = 2, y = 0, z = 1. From memory; all points were tried.
func chvatal() *proof.Program {
	none, inf := math.Inf(-1), math.Inf(1)
	row := func(a, b, c, most float64) proof.Row {
		return proof.Row{Cols: []int{0, 1, 2}, Coefs: []float64{a, b, c}, Lower: none, Upper: most}
	}
	return &proof.Program{Cost: []float64{-5, -4, -3}, Lower: make([]float64, 3), Upper: []float64{inf, inf, inf},
		Integer: []bool{true, true, true}, Rows: []proof.Row{row(2, 3, 1, 5), row(4, 1, 2, 11), row(3, 4, 2, 8)}}
}

// anyPoint asks for any point.
func anyPoint(turn int) engine.Query {
	return engine.Query{Ceiling: math.Inf(1), Accept: math.Inf(1), Turn: turn}
}

// installed returns the library; nil where none of its places has a file, which Open then has to say.
func installed(t *testing.T) *Library {
	l, err := Open()
	_, missing := os.Stat(places[0])
	if (err == nil) != (missing == nil) && missing == nil {
		t.Fatalf("%s is there and was not opened: %v", places[0], err)
	}
	return l
}

func TestEverySetting(t *testing.T) {
	l := installed(t)
	if l == nil {
		return
	}
	for turn := range settings {
		a, err := l.Search(context.Background(), chvatal(), anyPoint(turn))
		if err != nil || a.Claim != engine.Best || len(a.Point) != 3 || a.Point[0] != 2 || a.Point[1] != 0 || a.Point[2] != 1 {
			t.Errorf("%s: %+v, %v", settings[turn].name, a, err)
		}
		q := anyPoint(turn)
		q.Ceiling, q.Accept = -13.5, -13.4
		if a, err = l.Search(context.Background(), chvatal(), q); err != nil || a.Claim != engine.None {
			t.Errorf("%s, below the best: %+v, %v", settings[turn].name, a, err)
		}
	}
}

// hard is a program that takes minutes: 45 equal weights that have to come to an odd sum (R. Jeroslow, "Trivial
// integer programs unsolvable by branch-and-bound", Mathematical Programming 6, 1974).
func hard() *proof.Program {
	p := &proof.Program{Rows: []proof.Row{{Lower: 45, Upper: 45}}}
	for j := range 45 {
		p.Cost, p.Integer = append(p.Cost, float64(j%3)), append(p.Integer, true)
		p.Lower, p.Upper = append(p.Lower, 0), append(p.Upper, 1)
		p.Rows[0].Cols, p.Rows[0].Coefs = append(p.Rows[0].Cols, j), append(p.Rows[0].Coefs, 2)
	}
	return p
}

func TestStopped(t *testing.T) {
	l := installed(t)
	if l == nil {
		return
	}
	ctx, cancel := context.WithTimeout(context.Background(), 50*time.Millisecond)
	defer cancel()
	a, err := l.Search(ctx, hard(), anyPoint(0))
	if err != nil || !a.Ended || a.Claim != engine.Open || a.Point != nil {
		t.Errorf("%+v, %v", a, err)
	}
	gone, cancel := context.WithCancel(context.Background())
	cancel()
	if a, err = l.Search(gone, hard(), anyPoint(0)); err != nil || !a.Ended {
		t.Errorf("%+v, %v", a, err)
	}
}

// A share of work ends a search at the same pivot every time, in several goroutines at once.
func TestShareOfWork(t *testing.T) {
	l := installed(t)
	if l == nil {
		return
	}
	q := anyPoint(0)
	q.Work = 500
	first, err := l.Search(context.Background(), hard(), q)
	if err != nil || first.Claim != engine.Open || first.Ended || first.Work < 500 || first.Work > 1000 {
		t.Fatalf("%+v, %v", first, err)
	}
	var all sync.WaitGroup
	for range 8 {
		all.Go(func() {
			if a, err := l.Search(context.Background(), hard(), q); err != nil || a.Work != first.Work {
				t.Errorf("%+v, %v", a, err)
			}
		})
	}
	all.Wait()
}

// Points keep their rows as the exact check has them, on random programs of two-sided rows.
func TestPointsAreSound(t *testing.T) {
	l := installed(t)
	if l == nil {
		return
	}
	r := rand.New(rand.NewPCG(1, 2))
	found := 0
	for range 200 {
		p := random(r)
		a, err := l.Search(context.Background(), p, anyPoint(r.IntN(len(settings))))
		if err != nil {
			t.Fatal(err)
		}
		if a.Point == nil {
			continue
		}
		found++
		if _, err := proof.CheckPoint(p, a.Point); err != nil {
			t.Error(err)
		}
	}
	if found < 50 {
		t.Errorf("%d points of 200 programs", found)
	}
}

func random(r *rand.Rand) *proof.Program {
	p := new(proof.Program)
	for range 2 + r.IntN(8) {
		p.Cost, p.Integer = append(p.Cost, float64(r.IntN(19)-9)), append(p.Integer, r.IntN(3) > 0)
		lower := float64(r.IntN(5) - 2)
		p.Lower, p.Upper = append(p.Lower, lower), append(p.Upper, lower+float64(r.IntN(6)))
	}
	for range 1 + r.IntN(5) {
		row := proof.Row{Lower: math.Inf(-1), Upper: float64(r.IntN(20))}
		if r.IntN(3) == 0 {
			row.Lower = row.Upper - float64(r.IntN(4))
		}
		for j := range p.Cost {
			if coef := r.IntN(9) - 4; coef != 0 {
				row.Cols, row.Coefs = append(row.Cols, j), append(row.Coefs, float64(coef))
			}
		}
		p.Rows = append(p.Rows, row)
	}
	return p
}
