package optimize_test

import (
	"context"
	"encoding/json"
	"math"
	"slices"
	"sync"
	"testing"

	"cartwright/optimize"
	"cartwright/optimize/audit"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/optimize/search"
	"cartwright/scenarios"
)

// lawCases is how many random problems, all with a plan, each law is tried on; rareCases are so many that some of them
// have what few problems have.
const (
	lawCases  = 40
	rareCases = 4 * lawCases
)

// lawProblem returns a random problem; every fourth has six shops that ship for money and give quantity breaks.
func lawProblem(seed uint64) question.Problem {
	if seed%4 == 3 {
		return sixShops(seed)
	}
	return randomProblem(seed)
}

// possible lists seeds of random problems that have a plan, the same in every run.
var possible = sync.OnceValues(func() ([]uint64, error) {
	var seeds []uint64
	for seed := uint64(5e6); len(seeds) < rareCases**times; seed++ {
		found, err := search.Feasible(context.Background(), lawProblem(seed))
		if err != nil {
			return nil, err
		}
		if found != nil {
			seeds = append(seeds, seed)
		}
	}
	return seeds, nil
})

// The laws are tried under both rule sets, and where several shops ship.
func TestLawRuleSets(t *testing.T) {
	seeds, err := possible()
	if err != nil {
		t.Fatal(err)
	}
	under, shipped := map[scenarios.Rules]int{}, 0
	for _, seed := range seeds[:lawCases**times] {
		if seed%4 == 3 {
			shipped++
		}
	}
	if shipped < lawCases**times/20 {
		t.Errorf("of %d problems %d have shops that ship", lawCases**times, shipped)
	}
	for _, seed := range seeds {
		under[lawProblem(seed).Scenario.Rules]++
	}
	if least := len(seeds) / 5; under[scenarios.NEC] < least || under[scenarios.IEC] < least {
		t.Errorf("of %d problems there are %v; at least %d each are wanted", len(seeds), under, least)
	}
}

// law tries something on random problems that have a plan. What is drawn for a problem beyond itself comes
// from dice of the law's own.
func law(t *testing.T, number uint64, holds func(t *testing.T, d dice, p func() question.Problem)) {
	t.Helper()
	seeds, err := possible()
	if err != nil {
		t.Fatal(err)
	}
	for _, seed := range seeds[:lawCases**times] {
		holds(t, newDice(seed^number<<32), func() question.Problem { return lawProblem(seed) })
	}
}

// rank ranks a problem; it must go well.
func rank(t *testing.T, p question.Problem, o question.Options) *question.Result {
	t.Helper()
	r, err := optimize.Rank(context.Background(), p, o)
	if err != nil {
		t.Fatalf("%s: %v", p.Scenario.Name, err)
	}
	if r.Solver.Status != question.Optimal && r.Solver.Status != question.Infeasible {
		t.Fatalf("%s: %s %v", p.Scenario.Name, r.Solver.Status, r.Solver.Retries)
	}
	return r
}

// leastCents returns the cost of the best plan and how far rounding may have moved it; +Inf for no plan.
func leastCents(t *testing.T, p question.Problem) (cents, rounding float64) {
	t.Helper()
	r := rank(t, p, question.Options{Plans: 1})
	if len(r.Plans) == 0 {
		return math.Inf(1), 0
	}
	return float64(r.Plans[0].Cost), roundingCents(&r.Plans[0])
}

// notDearer reports an error where a problem that was made easier has a dearer best plan.
func notDearer(t *testing.T, before, after question.Problem, what string) {
	t.Helper()
	had, roundingBefore := leastCents(t, before)
	has, roundingAfter := leastCents(t, after)
	if has > had+roundingBefore+roundingAfter {
		t.Errorf("%s: %s: the best plan costs %g cents, before %g", before.Scenario.Name, what, has, had)
	}
}

// The k-th plan is never better than the one before it, and every plan passes an audit of its own.
func TestLawRanking(t *testing.T) {
	law(t, 1, func(t *testing.T, d dice, p func() question.Problem) {
		checkRanking(t, p(), pick(d, question.ByCost, question.ByMass, question.ByLife))
	})
}

// checkRanking checks what every ranking has to be, whatever its plans are.
func checkRanking(t *testing.T, p question.Problem, by question.By) {
	t.Helper()
	r := rank(t, p, question.Options{By: by})
	var last float64
	cores := map[string]bool{}
	for i := range r.Plans {
		got := &r.Plans[i]
		score := map[question.By]float64{
			question.ByCost: float64(got.Cost), question.ByMass: got.MassKg, question.ByLife: got.CostPerLifetimeKWh,
		}[by]
		// Masses that differ by less than a milligram are the same, and ratios but for the last digits.
		if i > 0 && score < last-1e-6 {
			t.Errorf("%s by %s: plan %d has %g, plan %d has %g", p.Scenario.Name, by, i, last, i+1, score)
		}
		last = score
		if !got.Proven || got.Rank != i+1 || cores[core(got)] {
			t.Errorf("%s by %s: plan %d: proven %v, rank %d, core %s", p.Scenario.Name, by, i+1, got.Proven, got.Rank, core(got))
		}
		cores[core(got)] = true
		if a := audit.Plan(p.Scenario, p.Catalog, got); !a.Passed || !got.Audit.Passed {
			t.Errorf("%s by %s: plan %d fails its audit", p.Scenario.Name, by, i+1)
		}
	}
}

// The same input gives the same bytes, on one processor and on two.
func TestLawSameBytes(t *testing.T) {
	law(t, 2, func(t *testing.T, _ dice, p func() question.Problem) {
		var first []byte
		for _, workers := range []int{1, 2, 2} {
			text, err := json.Marshal(rank(t, p(), question.Options{Workers: workers}).Plans)
			if err != nil {
				t.Fatal(err)
			}
			if first == nil {
				first = text
			}
			if string(text) != string(first) {
				t.Errorf("%s: with %d workers\n%s\nat first\n%s", p().Scenario.Name, workers, text, first)
			}
		}
	})
}

// Prices doubled, and the money too, double every cost and leave the plans as they are.
func TestLawDoublePrices(t *testing.T) {
	law(t, 3, func(t *testing.T, _ dice, p func() question.Problem) {
		double := p()
		doublePrices(double)
		was, is := rank(t, p(), question.Options{}), rank(t, double, question.Options{})
		sameRanking(t, p().Scenario.Name+", prices doubled", was.Plans, is.Plans, 2)
	})
}

// doublePrices doubles every amount of money of a problem.
func doublePrices(p question.Problem) {
	for _, e := range p.Catalog.All() {
		e.Price *= 2
	}
	for i := range p.Catalog.Cables {
		p.Catalog.Cables[i].CentsPerM *= 2
		p.Catalog.Cables[i].EndPrice *= 2
	}
	for i := range p.Catalog.Conduits {
		p.Catalog.Conduits[i].CentsPerM *= 2
		p.Catalog.Conduits[i].EndPrice *= 2
	}
	for i := range p.Catalog.Sections {
		p.Catalog.Sections[i].CentsPerM *= 2
	}
	for i := range p.Catalog.Offers {
		o := &p.Catalog.Offers[i]
		o.Price, o.CentsPerM, o.Shipping = 2*o.Price, 2*o.CentsPerM, 2*o.Shipping
	}
	for i := range p.Scenario.Have {
		h := &p.Scenario.Have[i]
		if h.SellCentsPerM *= 2; h.Sell != nil {
			*h.Sell *= 2
		}
	}
	if p.Scenario.Limits.Budget != math.MaxInt64 {
		p.Scenario.Limits.Budget *= 2
	}
	p.Scenario.Sold *= 2
}

// The order of the rows changes nothing but which of equal plans comes first.
func TestLawRowOrder(t *testing.T) {
	law(t, 4, func(t *testing.T, d dice, p func() question.Problem) {
		mixed := p()
		c := mixed.Catalog
		shuffle(d, c.Batteries)
		shuffle(d, c.Inverters)
		shuffle(d, c.Cables)
		shuffle(d, c.Devices)
		shuffle(d, c.Busbars)
		shuffle(d, c.Casters)
		shuffle(d, c.Sundries)
		shuffle(d, c.Offers)
		was, is := rank(t, p(), question.Options{}), rank(t, mixed, question.Options{})
		sameRanking(t, p().Scenario.Name+", rows mixed", was.Plans, is.Plans, 1)
	})
}

func shuffle[T any](d dice, s []T) { d.Shuffle(len(s), func(i, j int) { s[i], s[j] = s[j], s[i] }) }

// sameRanking reports an error where two rankings differ in more than equal plans can change places, the
// costs of the second being so many times those of the first.
func sameRanking(t *testing.T, what string, was, is []plan.Plan, times float64) {
	t.Helper()
	if len(was) != len(is) {
		t.Errorf("%s: %d plans, were %d", what, len(is), len(was))
		return
	}
	for i := range is {
		a, b := &was[i], &is[i]
		rounding := roundingCents(a)*times + roundingCents(b)
		if math.Abs(float64(b.Cost)-times*float64(a.Cost)) > rounding {
			t.Errorf("%s: plan %d costs %s, was %s", what, i+1, b.Cost, a.Cost)
		}
		// The core may be of a later rank only if that one costs the same.
		k := slices.IndexFunc(was, func(p plan.Plan) bool { return sortedCore(&p) == sortedCore(b) })
		switch {
		case k < 0 && math.Abs(float64(was[len(was)-1].Cost)*times-float64(b.Cost)) > rounding,
			k >= 0 && math.Abs(float64(was[k].Cost)*times-float64(b.Cost)) > rounding,
			k >= 0 && math.Abs(was[k].MassKg-b.MassKg) > 1e-6:
			t.Errorf("%s: plan %d is %s at %s, %g kg; was %s at %s, %g kg", what, i+1, core(b), b.Cost, b.MassKg, core(a), a.Cost, a.MassKg)
		}
	}
}

// sortedCore names a core whatever the order of its batteries.
func sortedCore(p *plan.Plan) string {
	sorted := *p
	sorted.Core.Batteries = slices.Clone(p.Core.Batteries)
	slices.SortFunc(sorted.Core.Batteries, func(a, b plan.CoreBattery) int {
		if a.Part < b.Part {
			return -1
		}
		return 1
	})
	return core(&sorted)
}
