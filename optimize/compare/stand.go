package compare

import (
	"context"
	"math"

	"cartwright/catalog"
	"cartwright/optimize/bench"
	"cartwright/optimize/energy"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/optimize/search"
)

// stand returns the cheapest plan with a bank and everything else that is named, nil where there is none.
//
// With recharge, the charger has to put back what the autonomy takes, or all that the bank holds where that is less. How
// long a bank lasts depends on the inverter, so each inverter is then tried in each number.
func stand(ctx context.Context, p question.Problem, before *bench.Before, k *bank, buy []Line) (*plan.Plan, error) {
	q := pinned(p, k, buy)
	if p.Scenario.Recharge == nil {
		return search.First(ctx, q, before, question.ByCost, false)
	}
	d, err := energy.DemandOf(p.Scenario)
	if err != nil {
		return nil, err
	}
	var best *plan.Plan
	for i := range q.Catalog.Inverters {
		for _, v := range bench.Servings(&q.Catalog.Inverters[i]) {
			if float64(v.Units) < q.Stand[v.Inverter.ID] {
				continue
			}
			found, err := search.First(ctx, withSupply(q, d, i, v.Units, k.usableWh(p)), before, question.ByCost, false)
			if err != nil {
				return nil, err
			}
			if found != nil && (best == nil || found.Cost < best.Cost || found.Cost == best.Cost && found.MassKg < best.MassKg) {
				best = found
			}
		}
	}
	return best, nil
}

// withSupply returns a problem with exactly so many of one inverter, and an autonomy that is at most what the bank's
// energy gives with it.
func withSupply(q question.Problem, d *energy.Demand, inverter, units int, usableWh float64) question.Problem {
	s, c := *q.Scenario, q.Catalog.Clone()
	inv := &c.Inverters[inverter]
	inv.MaxUnits = units
	s.AutonomyH = math.Min(q.Scenario.AutonomyH, d.AutonomyH(inv.Efficiency, float64(units)*inv.IdleW, usableWh))
	stand := map[string]float64{inv.ID: float64(units)}
	for id, n := range q.Stand {
		stand[id] = math.Max(stand[id], n)
	}
	return question.Problem{Scenario: &s, Catalog: c, Stand: stand, Idle: q.Idle}
}

// pinned returns the problem whose plans have exactly the bank and the parts that are named. Without recharge there is no
// autonomy to meet; with recharge withSupply sets it for each inverter.
func pinned(p question.Problem, k *bank, buy []Line) question.Problem {
	s, c := *p.Scenario, p.Catalog.Clone()
	if s.Recharge == nil {
		s.AutonomyH = 0
	}
	stand := map[string]float64{}
	for i := range c.Batteries {
		bat := &c.Batteries[i]
		if n := k.modules[bat.ID]; n > 0 {
			bat.MaxParallel = n / k.series[bat.ID]
			stand[bat.ID] = float64(n)
		} else {
			bat.MaxSeries = 0 // so it makes no string
		}
	}
	owned := map[string]float64{}
	for _, h := range s.Have {
		owned[h.PartID] += h.Count
	}
	for _, l := range buy {
		e, _ := c.Find(l.Part)
		if e.Kind == catalog.KindBattery {
			continue
		}
		if stand[l.Part] == 0 {
			stand[l.Part] = owned[l.Part]
		}
		stand[l.Part] += float64(l.Count)
		for i := range c.Inverters {
			if c.Inverters[i].ID == l.Part {
				c.Inverters[i].MaxUnits = min(max(1, c.Inverters[i].MaxUnits), int(stand[l.Part]))
			}
		}
	}
	pinModules(&s, c, owned, buy, stand)
	return question.Problem{Scenario: &s, Catalog: c, Stand: stand, Idle: k.idle}
}
