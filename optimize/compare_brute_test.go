package optimize_test

import (
	"context"
	"math"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize"
	choices "cartwright/optimize/compare"
	"cartwright/optimize/energy"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// What a choice comes to is what an enumeration of its banks says: it keeps most of what is owned, sells the rest, and
// is the cheapest way to do so; and no choice costs less than the best plan of the same conditions.
func TestCompareBruteForce(t *testing.T) {
	const cases = 100
	possible, recharged, sold := 0, 0, 0
	for seed := uint64(7e6); seed < 7e6+cases; seed++ {
		p := randomProblem(seed)
		free := *p.Scenario
		free.AutonomyH, free.Recharge = 0, nil
		q := question.Problem{Scenario: &free, Catalog: p.Catalog}
		buy := someChoice(q, enumerate(t, q, question.ByCost), seed)
		got, err := choices.Find(context.Background(), p, [][]choices.Line{buy})
		if err != nil {
			t.Errorf("seed %d: %v", seed, err)
			continue
		}
		for i, named := range [][]choices.Line{nil, buy} {
			o := &got.Outcomes[i]
			stays := mostKept(t, p, named)
			switch {
			case o.Plan == nil && stays >= 0:
				t.Errorf("seed %d, %v: nothing, by %q and %v; one keeps %.3f Wh", seed, named, o.Reasons, o.Changes, stays)
			case o.Plan == nil:
			case stays < 0:
				t.Errorf("seed %d, %v: %v; there is none", seed, named, o.Plan.Core)
			default:
				possible++
				if p.Scenario.Recharge != nil {
					recharged++
				}
				if o.Plan.Credit > 0 {
					sold++
				}
				kept, stay := 0.0, map[string]int{}
				for _, k := range o.Kept {
					stay[k.Part] = k.Count
					kept += float64(k.Count) * usableOf(p, k.Part)
				}
				const rounding = 10 // cents, of the lines of a bill
				cents := cheapestBank(t, p, stay, named)
				if math.Abs(kept-stays) > 1e-6 || !(math.Abs(float64(o.Plan.Cost)-cents) <= rounding) {
					t.Errorf("seed %d, %v: keeps %.3f Wh for %v, want %.3f for %.2f", seed, named, kept, o.Plan.Cost, stays, cents/100)
				}
				notBelow(t, seed, p, o)
			}
		}
	}
	t.Logf("%d choices of %d can be, %d with a charger to choose, %d sell something", possible, 2*cases, recharged, sold)
	if possible < cases/4 || recharged < cases/20 || sold < cases/20 {
		t.Error("too few to tell much")
	}
}

// notBelow checks that a choice costs no less than the best plan that has to run as long as the choice does.
func notBelow(t *testing.T, seed uint64, p question.Problem, o *choices.Outcome) {
	t.Helper()
	s := *p.Scenario
	s.AutonomyH = math.Min(s.AutonomyH, o.Plan.AutonomyH*(1-near))
	best, err := optimize.Rank(context.Background(), question.Problem{Scenario: &s, Catalog: p.Catalog}, question.Options{Plans: 1})
	if err != nil || len(best.Plans) == 0 || o.Plan.Cost < best.Plans[0].Cost {
		t.Errorf("seed %d, %v: costs %v, below the best plan of the same conditions (%v)", seed, o.Buy, o.Plan.Cost, err)
	}
}

// someChoice returns the modules that one of the plans buys; where it buys none, or there is no plan, one or two of
// some battery, which often cannot be.
func someChoice(p question.Problem, all []total, seed uint64) []choices.Line {
	var buy []choices.Line
	if len(all) > 0 && seed%4 > 0 {
		for b, strings := range all[int(seed)%len(all)].batteries {
			bat := &p.Catalog.Batteries[b]
			n := strings*energy.Series(p.Scenario.Bus.NominalV, bat.NominalV) - modulesOwned(p, bat.ID)
			if n > 0 {
				buy = append(buy, choices.Line{Part: bat.ID, Count: n})
			}
		}
	}
	if len(buy) == 0 {
		bat := &p.Catalog.Batteries[int(seed/4)%len(p.Catalog.Batteries)]
		buy = append(buy, choices.Line{Part: bat.ID, Count: 1 + int(seed/2)%2})
	}
	return buy
}

func modulesOwned(p question.Problem, id string) int {
	n := 0.0
	for _, h := range p.Scenario.Have {
		if h.PartID == id {
			n += h.Count
		}
	}
	return int(n)
}

func usableOf(p question.Problem, id string) float64 {
	for i := range p.Catalog.Batteries {
		if b := &p.Catalog.Batteries[i]; b.ID == id {
			return energy.UsableWh(b, p.Scenario.Limits.Reserve)
		}
	}
	return 0
}

// mostKept returns the most usable energy of owned modules that can stay beside exactly what is named, below 0 where
// nothing can be.
func mostKept(t *testing.T, p question.Problem, named []choices.Line) float64 {
	t.Helper()
	most := -1.0
	stay := map[string]int{}
	var next func(k int, wh float64)
	next = func(k int, wh float64) {
		if k < len(p.Catalog.Batteries) {
			id := p.Catalog.Batteries[k].ID
			for n := modulesOwned(p, id); n >= 0; n-- {
				stay[id] = n
				next(k+1, wh+float64(n)*usableOf(p, id))
			}
			return
		}
		if wh > most && !math.IsInf(cheapestBank(t, p, stay, named), 1) {
			most = wh
		}
	}
	next(0, 0)
	return most
}

// cheapestBank returns the least cost in cents of a bank of owned modules that stay and modules that are named: owned
// modules that do not stay are sold where they are for sale. +Inf where it cannot be.
func cheapestBank(t *testing.T, p question.Problem, stay map[string]int, named []choices.Line) float64 {
	t.Helper()
	s, idle := *p.Scenario, 0.0 // cents
	s.Have = nil
	left, n := map[string]int{}, make([]int, len(p.Catalog.Batteries))
	for i := range p.Catalog.Batteries {
		bat := &p.Catalog.Batteries[i]
		left[bat.ID] = stay[bat.ID]
		modules := stay[bat.ID]
		for _, l := range named {
			if l.Part == bat.ID {
				modules += l.Count
			}
		}
		series := energy.Series(p.Scenario.Bus.NominalV, bat.NominalV)
		if modules > 0 && (series == 0 || modules%series != 0 || bat.MaxParallel > 0 && modules/series > bat.MaxParallel) {
			return math.Inf(1)
		}
		if modules > 0 {
			n[i] = modules / series
		}
	}
	for _, h := range p.Scenario.Have {
		if _, battery := left[h.PartID]; !battery {
			s.Have = append(s.Have, h)
			continue
		}
		stays := min(int(h.Count), left[h.PartID])
		left[h.PartID] -= stays
		if h.Keep && stays < int(h.Count) {
			return math.Inf(1)
		}
		if stays > 0 {
			s.Have = append(s.Have, scenarios.Holding{PartID: h.PartID, Count: float64(stays)})
		}
	}
	for i := range p.Catalog.Batteries {
		if g := newStall(p).goods[p.Catalog.Batteries[i].ID]; g.sells {
			idle += (g.have - float64(stay[g.id])) * g.worth
		}
	}
	s.Sold += catalog.Cents(math.Round(idle))
	e := newEnumeration(t, question.Problem{Scenario: &s, Catalog: p.Catalog})
	if sum(n) == 0 || !e.together(n) || len(e.placings(n)) == 0 {
		return math.Inf(1)
	}
	for i := range n {
		if _, fits := e.series(&e.c.Batteries[i]); n[i] > 0 && !fits {
			return math.Inf(1)
		}
	}
	least := math.Inf(1)
	for i := range e.c.Inverters {
		inv := &e.c.Inverters[i]
		for units := 1; units <= inv.MaxUnits; units++ {
			back := math.Min(e.usableWh(n), e.house.windowWh(inv.Efficiency, float64(units)*inv.IdleW, s.AutonomyH))
			plan := total{batteries: n, inverter: i, units: units, wh: e.usableWh(n)}
			if e.powers(n, inv, units, back) && e.support(&plan, question.ByCost) {
				least = math.Min(least, plan.cost-idle)
			}
		}
	}
	return least
}
