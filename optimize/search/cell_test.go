package search

import (
	"container/heap"
	"context"
	"math/rand/v2"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/bench"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// Cells bring their children one by one. Over random small catalogues they bring every core that an enumeration of all
// counts admits, each once and never one that scores less than a cell it came from.
func TestCellsAgainstEnumeration(t *testing.T) {
	reached := map[question.By]int{}
	for seed := range uint64(24) {
		b := drawn(t, seed)
		for _, by := range []question.By{question.ByCost, question.ByMass, question.ByLife, question.ByEnergy} {
			ctx := context.Background()
			full := newSearch(ctx, b, by, 1)
			full.nodes = nil
			for v := range b.Supplies {
				for g, members := range b.Groups {
					counts := make([]int, len(members))
					for next(counts, func(j int) int { return b.Stacks[members[j]].Most }) {
						c := bench.CoreOf(v, g, counts)
						full.admit(c, full.o.Of(&c))
					}
				}
			}
			want := map[string]float64{}
			for _, n := range full.nodes {
				want[n.core.Key()] = n.score
			}
			lazy := newSearch(ctx, b, by, 1)
			least := 0.0
			for first := true; len(lazy.nodes) > 0; first = false {
				n := heap.Pop(&lazy.nodes).(*node)
				if first || n.score > least {
					least = n.score
				}
				switch n.kind {
				case supplyNode:
					lazy.openGroups(ctx, n)
				case openNode:
					lazy.expand(n)
				case coreNode:
					score, wanted := want[n.core.Key()]
					switch {
					case !wanted:
						t.Errorf("seed %d by %s: core %s is brought twice, or should not be", seed, by, n.core.Key())
					case score != n.score:
						t.Errorf("seed %d by %s: core %s scores %v, enumerated %v", seed, by, n.core.Key(), n.score, score)
					case n.score < least:
						t.Errorf("seed %d by %s: core %s scores %v, and a cell it came from, or one before, %v", seed, by, n.core.Key(), n.score, least)
					}
					delete(want, n.core.Key())
					reached[by]++
				}
			}
			for key := range want {
				t.Errorf("seed %d by %s: core %s is not reached", seed, by, key)
			}
		}
	}
	t.Logf("cores reached: %v", reached)
	for by, n := range reached {
		if n < 200 {
			t.Errorf("by %s only %d cores were reached: too few to tell much", by, n)
		}
	}
}

// next counts up, each place to its most; false after the last.
func next(counts []int, most func(int) int) bool {
	for j := range counts {
		if counts[j]++; counts[j] <= most(j) {
			return true
		}
		counts[j] = 0
	}
	return false
}

// drawn lays out a demo with some of its batteries, their prices, sizes and groups drawn anew, and some of them owned.
func drawn(t *testing.T, seed uint64) *bench.Bench {
	t.Helper()
	const stream = 0xce11
	g := rand.New(rand.NewPCG(seed, stream))
	s, err := scenarios.Demo("star-party")
	if err != nil {
		t.Fatal(err)
	}
	s.Limits.Budget += catalog.CentsFrom(2500)
	s.Limits.MassKg *= 1.6
	c := catalog.Embedded()
	var batteries []catalog.Battery
	for _, at := range g.Perm(len(c.Batteries)) {
		batteries = append(batteries, c.Batteries[at])
	}
	c.Batteries = nil
	for i := 0; len(c.Batteries) < 9 && i < len(batteries); i++ {
		b := batteries[i]
		b.Price = catalog.CentsFrom(float64(60 + g.IntN(400)))
		b.MassKg *= 0.4 + g.Float64()
		b.CapacityWh *= 0.5 + g.Float64()
		b.Group = []string{"", "one", "one", "two"}[g.IntN(4)]
		b.MaxParallel = 1 + g.IntN(3)
		c.Batteries = append(c.Batteries, b)
		if sell := b.Price / 2; g.IntN(4) == 0 {
			s.Have = append(s.Have, scenarios.Holding{PartID: b.ID, Count: float64(1 + g.IntN(2)), Sell: &sell})
		}
	}
	b, err := bench.Lay(context.Background(), question.Problem{Scenario: s, Catalog: c}, "", &bench.Before{})
	if err != nil {
		t.Fatal(err)
	}
	return b
}
