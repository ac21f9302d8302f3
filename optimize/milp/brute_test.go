package milp

import (
	"context"
	"math"
	"testing"

	"cartwright/optimize/milp/proof"
	"pgregory.net/rapid"
)

// brute tries every point of a model of bounded integers, at size 1 at most 40,960, and returns the best
// objective. Rows may be off
// by as much as Solve lets them be.
func brute(m *Model) (best float64, found bool) {
	x := make([]float64, len(m.cols))
	for j, c := range m.cols {
		x[j] = c.lo
	}
	for {
		if len(Violations(m, x, proof.Slack)) == 0 {
			if at := m.objectiveAt(x); !found || m.sign()*at < m.sign()*best {
				best, found = at, true
			}
		}
		j := 0
		for ; j < len(x) && x[j] == m.cols[j].hi; j++ {
			x[j] = m.cols[j].lo
		}
		if j == len(x) {
			return best, found
		}
		x[j]++
	}
}

// checkAgainstBrute solves a model and says what differs from the best of all points, "" for nothing.
func checkAgainstBrute(t rapid.TB, m *Model) {
	s, err := m.Solve(context.Background(), Options{Prove: true})
	if err != nil {
		t.Fatal(err)
	}
	best, found := brute(m)
	switch {
	case !found && s.Status != Infeasible:
		t.Fatalf("%v %v where there is no point; %q", s.Status, s.Objective, s.Retries)
	case found && s.Status != Proved:
		t.Fatalf("%v where the best point is %v; %q", s.Status, best, s.Retries)
	case found && math.Abs(s.Objective-best) > 2*defaultResolution*math.Max(1, math.Abs(best)):
		t.Fatalf("proved %v, the best point is %v", s.Objective, best)
	case found && m.sign()*s.Bound > m.sign()*best+defaultResolution*math.Max(1, math.Abs(best)):
		t.Fatalf("the bound %v is beyond the best point %v", s.Bound, best)
	}
}

// TestBruteForce lets rapid draw small models of every shape of integers and tries every point.
func TestBruteForce(t *testing.T) {
	for _, sh := range shapes {
		if sh.real {
			continue
		}
		t.Run(sh.name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				m := sh.build(func(lo, hi int) int { return rapid.IntRange(lo, hi).Draw(t, "n") }, 1)
				if m.Err() != nil {
					t.Fatal(m.Err())
				}
				checkAgainstBrute(t, m)
			})
		})
	}
}

// TestBigM settles models of charges and flows by trying every choice of what is open; the flows then go
// where they are cheapest first.
func TestBigM(t *testing.T) {
	for seed := range uint64(200) {
		m := fixedCharge(seeded(seed), 1)
		s, err := m.Solve(context.Background(), Options{Prove: true, Resolution: 0.001})
		if err != nil || s.Status != Proved {
			t.Fatalf("seed %d: %v, %v", seed, s.Status, err)
		}
		if best := bruteCharges(m); math.Abs(s.Objective-best) > 0.001 {
			t.Errorf("seed %d: %v, the best choice costs %v", seed, s.Objective, best)
		}
	}
}

// bruteCharges reads a model of fixedCharge: columns in pairs, open and flow; the last row is the demand.
func bruteCharges(m *Model) float64 {
	n := len(m.cols) / 2
	coef := make([]float64, len(m.cols))
	for _, e := range m.obj {
		coef[e.col] = e.coef
	}
	best := math.Inf(1)
	for open := range 1 << n {
		cost, need := 0.0, m.rows[n].rhs
		used := 0
		for j := range n {
			if open>>j&1 == 1 {
				cost += coef[2*j]
			}
		}
		for need > 0 {
			cheapest := -1
			for j := range n {
				if open>>j&1 == 1 && used>>j&1 == 0 && (cheapest < 0 || coef[2*j+1] < coef[2*cheapest+1]) {
					cheapest = j
				}
			}
			if cheapest < 0 {
				break
			}
			used |= 1 << cheapest
			flow := math.Min(need, capacity(m, cheapest))
			cost += flow * coef[2*cheapest+1]
			need -= flow
		}
		if need <= 0 {
			best = math.Min(best, cost)
		}
	}
	return best
}

// capacity is the big M of the j-th flow.
func capacity(m *Model, j int) float64 {
	for _, e := range m.rows[j].entries {
		if e.col == 2*j {
			return -e.coef
		}
	}
	return 0
}
