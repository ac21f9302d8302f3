package milp

import (
	"context"
	"fmt"
	"testing"
)

// BenchmarkSolve finds and proves the best point of one model of each shape; size 3 of "cart" has some 150
// variables and 50 rows.
func BenchmarkSolve(b *testing.B) {
	for _, sh := range shapes {
		b.Run(sh.name, func(b *testing.B) {
			m := sh.build(seeded(4), 2)
			b.ReportAllocs()
			for b.Loop() {
				if _, err := m.Solve(context.Background(), Options{Prove: true}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// BenchmarkCarts solves a run of carts as a planner does: many different models of one kind, one a time
// ("one by one") and on all processors ("together"). Reported is the time a model.
func BenchmarkCarts(b *testing.B) {
	for _, size := range []int{1, 2, 3} {
		models := make([]*Model, 200)
		for i := range models {
			models[i] = cart(seeded(uint64(i)), size)
		}
		solve := func(i int) {
			if _, err := models[i%len(models)].Solve(context.Background(), Options{Prove: true, Resolution: 0.5}); err != nil {
				b.Error(err)
			}
		}
		b.Run(fmt.Sprintf("size %d/one by one", size), func(b *testing.B) {
			for i := 0; b.Loop(); i++ {
				solve(i)
			}
		})
		b.Run(fmt.Sprintf("size %d/together", size), func(b *testing.B) {
			b.RunParallel(func(pb *testing.PB) {
				for i := 0; pb.Next(); i++ {
					solve(i)
				}
			})
		})
	}
}

// BenchmarkBuild writes down a cart of some 150 variables, without solving it.
func BenchmarkBuild(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if m := cart(seeded(4), 3); m.Err() != nil {
			b.Fatal(m.Err())
		}
	}
}

// BenchmarkSmallest is what a search costs at least: one variable, one row, no branching.
func BenchmarkSmallest(b *testing.B) {
	m := New("smallest")
	x := m.Continuous("x", 0, 10)
	m.Row("r", Sum(T(2, x)), AtMost, 5)
	m.Maximize(Sum(T(1, x)))
	for b.Loop() {
		if _, err := m.Solve(context.Background(), Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
