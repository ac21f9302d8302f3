package optimize

import (
	"context"
	"math"

	"cartwright/catalog"
	"cartwright/optimize/audit"
	"cartwright/optimize/plan"
)

// cents returns an amount of currency units in whole cents.
func cents(units float64) catalog.Cents { return catalog.CentsFrom(units) }

// Feasible finds out whether a problem has any plan: the first one met, or nil. It is an error where time
// ran out or the solver gave up before that was known.
func Feasible(ctx context.Context, p Problem) (*plan.Plan, error) {
	return firstPlan(ctx, p, &laidBefore{}, ByCost, true)
}

// firstPlan returns the best plan, or just any; nil where there is none.
func firstPlan(ctx context.Context, p Problem, before *laidBefore, by By, anyPlan bool) (*plan.Plan, error) {
	b, err := lay(p, "", before)
	if err != nil {
		return nil, err
	}
	o := Options{Plans: 1, By: by}.withDefaults(p)
	r := &ranking{search: newSearch(b, by), o: o, anyPlan: anyPlan}
	if err := r.run(ctx); err != nil {
		return nil, err
	}
	if len(r.ranked) > 0 {
		found := &r.ranked[0].plan
		if !anyPlan { // it is told as the best, and shown
			if !found.Proven {
				return nil, ErrUnknown
			}
			found.Rank = 1
			if found.Audit = audit.Plan(p.Scenario, p.Catalog, found); !found.Audit.Passed {
				return nil, disagreement(*found)
			}
		}
		return found, nil
	}
	if r.stopped || r.gaveUp {
		return nil, ErrUnknown
	}
	return nil, nil
}

// changes returns, for a problem without a plan, the smallest change of every single limit that makes one
// possible, each found by solving; where no single limit will do, a smallest joint change; nothing where
// not even all limits together would.
func changes(ctx context.Context, p Problem, before *laidBefore) ([]Change, error) {
	all := levers(p.Scenario)
	if ok, err := possibleWith(ctx, p, before, all); err != nil || !ok {
		return nil, err
	}
	var single []Change
	for i := range all {
		to, ok, err := leastChange(ctx, p, before, all[i])
		if err != nil {
			return single, err
		}
		if ok {
			single = append(single, Change{[]LimitChange{all[i].change(p, to)}})
		}
	}
	if len(single) > 0 {
		return single, nil
	}
	return jointChange(ctx, p, before, all)
}

// change tells a lever's change.
func (l *lever) change(p Problem, to float64) LimitChange {
	unit := l.unit
	if l.name == "budget" {
		unit = p.Scenario.Currency
	}
	return LimitChange{Name: l.name, From: l.get(p.Scenario), To: to, Unit: unit}
}

// leastChange returns the value nearest to a limit's own with which there is a plan, to the lever's step.
func leastChange(ctx context.Context, p Problem, before *laidBefore, l lever) (to float64, ok bool, err error) {
	loose := p.with([]lever{l}, []float64{l.end})
	found, err := firstPlan(ctx, loose, before, l.by.orCost(), l.by == "")
	if err != nil || found == nil {
		return 0, false, err
	}
	if l.by != "" { // the best plan by this objective needs least of the limit
		return l.round(l.shown(found, p.Scenario)), true, nil
	}
	// Bisect over whole steps: possible is known to do, impossible not to.
	impossible, possible := l.before(l.get(p.Scenario)), l.steps(l.nearer(found, p, l.end))
	for math.Abs(possible-impossible) > 1 {
		middle := math.Floor((possible + impossible) / 2)
		v := l.at(middle)
		found, err := firstPlan(ctx, p.with([]lever{l}, []float64{v}), before, ByCost, true)
		switch {
		case err != nil:
			return 0, false, err
		case found == nil:
			impossible = middle
		default:
			possible = l.steps(l.nearer(found, p, v))
		}
	}
	return l.round(l.at(possible)), true, nil
}

// orCost returns the objective, or that of cost where there is none.
func (by By) orCost() By {
	if by == "" {
		return ByCost
	}
	return by
}

// nearer returns how much of a limit a plan needs, where the plan tells and it is less than what was
// tried; rounded to what is still enough.
func (l *lever) nearer(found *plan.Plan, p Problem, tried float64) float64 {
	if l.shown == nil {
		return tried
	}
	if v := l.round(l.shown(found, p.Scenario)); l.loosens(tried, v) && l.loosens(v, l.get(p.Scenario)) {
		return v
	}
	return tried
}

// before returns the last whole step that is not looser than a value.
func (l *lever) before(v float64) float64 {
	if l.end < v {
		return math.Ceil(v / l.step)
	}
	return math.Floor(v / l.step)
}

// steps returns a value in whole steps, moved to the loose side.
func (l *lever) steps(v float64) float64 { return math.Round(l.round(v) / l.step) }

// round moves a value to a whole step on the loose side, so that what is printed is enough.
func (l *lever) round(v float64) float64 {
	const hair = 1e-6 // of a step
	steps := v / l.step
	if l.end < v {
		return l.at(math.Floor(steps + hair))
	}
	return l.at(math.Ceil(steps - hair))
}

// at returns so many steps as a value: divided by a whole number, since a step has no exact float.
func (l *lever) at(steps float64) float64 { return steps / math.Round(1/l.step) }
