package optimize_test

import (
	"context"
	"math"
	"testing"

	"cartwright/optimize"
	choices "cartwright/optimize/compare"
	"cartwright/optimize/energy"
	"cartwright/optimize/question"
)

// What a choice comes to is what an enumeration of all plans says: the bank keeps most of what is owned, the rest is
// cheapest; and no choice costs less than the best plan of the same conditions.
func TestCompareBruteForce(t *testing.T) {
	const cases = 100
	possible := 0
	for seed := uint64(7e6); seed < 7e6+cases; seed++ {
		p := randomProblem(seed)
		p.Scenario.Recharge = nil
		for i := range p.Scenario.Have {
			p.Scenario.Have[i].Sell = nil
		}
		buy := choices.Line{Part: p.Catalog.Batteries[int(seed)%len(p.Catalog.Batteries)].ID, Count: 1 + int(seed/2)%2}
		got, err := choices.Find(context.Background(), p, [][]choices.Line{{buy}})
		if err != nil {
			t.Errorf("seed %d: %v", seed, err)
			continue
		}
		free := *p.Scenario
		free.AutonomyH = 0
		q := question.Problem{Scenario: &free, Catalog: p.Catalog}
		all := enumerate(t, q, question.ByCost)
		for i, named := range []choices.Line{{}, buy} {
			stays, cents := bestChoice(q, all, named)
			o := &got.Outcomes[i]
			switch {
			case o.Plan == nil && !math.IsInf(cents, 1):
				t.Errorf("seed %d, %v: nothing, by %q and %v; there is one for %.2f", seed, named, o.Reasons, o.Changes, cents/100)
			case o.Plan == nil:
			case math.IsInf(cents, 1):
				t.Errorf("seed %d, %v: %v; there is none", seed, named, o.Plan.Core)
			default:
				possible++
				kept := 0.0
				for _, k := range o.Kept {
					kept += float64(k.Count) * usableOf(q, k.Part)
				}
				const rounding = 10 // cents, of the lines of a bill
				if math.Abs(kept-stays) > 1e-6 || math.Abs(float64(o.Plan.Cost)-cents) > rounding {
					t.Errorf("seed %d, %v: keeps %.3f Wh for %v, want %.3f for %.2f", seed, named, kept, o.Plan.Cost, stays, cents/100)
				}
				best, err := optimize.Rank(context.Background(), q, question.Options{Plans: 1})
				if err != nil || len(best.Plans) == 0 || o.Plan.Cost < best.Plans[0].Cost {
					t.Errorf("seed %d, %v: costs %v, below the best plan of the same conditions (%v)", seed, named, o.Plan.Cost, err)
				}
			}
		}
	}
	t.Logf("%d choices of %d can be", possible, 2*cases)
	if possible < cases/4 {
		t.Errorf("%d choices can be: too few to tell much", possible)
	}
}

func usableOf(p question.Problem, id string) float64 {
	for i := range p.Catalog.Batteries {
		if b := &p.Catalog.Batteries[i]; b.ID == id {
			return energy.UsableWh(b, p.Scenario.Limits.Reserve)
		}
	}
	return 0
}

// bestChoice returns, of the plans that buy exactly what is named, the most energy of owned modules kept and the least
// cost with it.
func bestChoice(p question.Problem, all []total, named choices.Line) (stays, cents float64) {
	owned := map[string]int{}
	for _, h := range p.Scenario.Have {
		owned[h.PartID] += int(h.Count)
	}
	stays, cents = -1, math.Inf(1)
	for i := range all {
		wh, fits := 0.0, true
		for b, strings := range all[i].batteries {
			bat := &p.Catalog.Batteries[b]
			stay := strings * energy.Series(p.Scenario.Bus.NominalV, bat.NominalV)
			if bat.ID == named.Part {
				stay -= named.Count
			}
			fits = fits && stay >= 0 && stay <= owned[bat.ID]
			wh += float64(stay) * usableOf(p, bat.ID)
		}
		switch {
		case !fits || wh < stays-1e-6:
		case wh > stays+1e-6:
			stays, cents = wh, all[i].cost
		default:
			cents = math.Min(cents, all[i].cost)
		}
	}
	return stays, cents
}
