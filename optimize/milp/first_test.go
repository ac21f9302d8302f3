package milp

import (
	"context"
	"math"
	"slices"
	"testing"

	"cartwright/optimize/milp/proof"
)

// TestFirst compares with trying every point in order: the first one that costs no more than the best.
func TestFirst(t *testing.T) {
	checked := 0
	for _, sh := range shapes {
		if sh.real {
			continue
		}
		for seed := range uint64(40) {
			m := sh.build(seeded(seed), 1)
			best, found := brute(m)
			if !found {
				continue
			}
			o := Options{Cutoff: best + m.sign()*1e-6*math.Max(1, math.Abs(best)), HasCutoff: true}
			got, err := m.First(context.Background(), o)
			if err != nil || got.Status != Best {
				t.Fatalf("%s %d: %v, %v", sh.name, seed, got.Status, err)
			}
			if want := bruteFirst(m, o.Cutoff); !slices.Equal(got.Values(), want) {
				t.Fatalf("%s %d: %v, the first is %v", sh.name, seed, got.Values(), want)
			}
			checked++
		}
	}
	if checked < 200 {
		t.Errorf("only %d had a point", checked)
	}
}

// bruteFirst returns the first point, in the order of the variables, whose objective is within a cutoff.
func bruteFirst(m *Model, cutoff float64) []float64 {
	x := make([]float64, len(m.cols))
	for j, c := range m.cols {
		x[j] = c.lo
	}
	for {
		if m.sign()*m.objectiveAt(x) <= m.sign()*cutoff && len(Violations(m, x, proof.Slack)) == 0 {
			return x
		}
		j := len(x) - 1
		for ; j >= 0 && x[j] == m.cols[j].hi; j-- {
			x[j] = m.cols[j].lo
		}
		if j < 0 {
			return nil
		}
		x[j]++
	}
}

// TestFirstStops: a limit of work and a context end it.
func TestFirstStops(t *testing.T) {
	m := split(6, 40, true)
	if s, err := m.First(context.Background(), Options{Work: 500}); err != nil || s.Status != Stopped || !s.Ended {
		t.Errorf("%v, %v", s.Status, err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if s, err := m.First(ctx, Options{}); err != nil || s.Status != Stopped || !s.Ended {
		t.Errorf("%v, %v", s.Status, err)
	}
}
