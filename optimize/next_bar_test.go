package optimize_test

import (
	"context"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/next"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// Where nothing stands on the cart at first, so much more in hand as the answer says puts a cart there now, and a cent
// less does not; a cart that it names comes with its cost.
func TestNextSaysWhyNothingStands(t *testing.T) {
	const cases = 40
	found, reasons := 0, 0
	for seed := uint64(8e6); found < cases && seed < 8e6+2000; seed++ {
		p := tinyProblem(seed)
		p.Scenario.Savings = &scenarios.Savings{PerMonth: catalog.Cents(100 * newDice(seed+2).from(20, 400))}
		got, err := next.Find(context.Background(), p, next.Options{})
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		x := got.Bar
		if x == nil {
			if len(got.Months) > 0 && got.Months[0].Cart == nil {
				t.Errorf("seed %d: nothing stands now, and nothing says why", seed)
			}
			continue
		}
		found++
		if len(x.Reasons) > 0 {
			reasons++
		}
		if got.Months[x.Until].Cart == nil || got.Months[x.Until-1].Cart != nil || x.Short != x.Cost-plan.Money(p.Scenario.Sold) {
			t.Errorf("seed %d: %+v does not fit the months", seed, x)
		}
		for _, more := range []plan.Money{x.Short, x.Short - 1} {
			savings := scenarios.Savings{Now: catalog.Cents(more), PerMonth: p.Scenario.Savings.PerMonth}
			s := *p.Scenario
			s.Savings = &savings
			q := p
			q.Scenario = &s
			then, err := next.Find(context.Background(), q, next.Options{})
			if err != nil {
				t.Fatalf("seed %d: %v", seed, err)
			}
			if stands := then.Months[0].Cart != nil; stands != (more == x.Short) {
				t.Errorf("seed %d: with %v of %v more in hand a cart stands now: %v", seed, more, x.Short, stands)
			}
		}
	}
	if found < cases || reasons == 0 {
		t.Errorf("%d cases, %d with reasons: too few to tell much", found, reasons)
	}
}
