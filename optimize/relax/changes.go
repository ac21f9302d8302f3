package relax

import (
	"context"
	"math"

	"cartwright/catalog"
	"cartwright/optimize/bench"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/optimize/search"
)

// cents returns an amount of currency units in whole cents.
func cents(units float64) catalog.Cents { return catalog.CentsFrom(units) }

// Changes returns, for a problem without a plan, for every limit that alone can make one possible its smallest change
// that does, found by solving; where no single limit will do, a smallest joint change; nothing where not even all
// limits together would.
func Changes(ctx context.Context, p question.Problem, before *bench.Before) ([]question.Change, error) {
	all := Levers(p.Scenario)
	if ok, err := possibleWith(ctx, p, before, all); err != nil || !ok {
		return nil, err
	}
	var single []question.Change
	for i := range all {
		to, ok, err := leastChange(ctx, p, before, all[i])
		if err != nil {
			return single, err
		}
		if ok {
			single = append(single, question.Change{Limits: []question.LimitChange{all[i].Change(p, to)}})
		}
	}
	if len(single) > 0 {
		return single, nil
	}
	return jointChange(ctx, p, before, all)
}

// Change returns the change of a lever to a value.
func (l *Lever) Change(p question.Problem, to float64) question.LimitChange {
	return question.LimitChange{Name: l.Name, From: l.Get(p.Scenario), To: to, Unit: l.Unit}
}

// leastChange returns the value nearest to a limit's own with which there is a plan, to the lever's step.
func leastChange(ctx context.Context, p question.Problem, before *bench.Before, l Lever) (to float64, ok bool, err error) {
	loose := With(p, []Lever{l}, []float64{l.End})
	found, err := search.First(ctx, loose, before, l.by.OrCost(), l.by == "")
	if err != nil || found == nil {
		return 0, false, err
	}
	if l.by != "" { // the best plan by this objective needs the least of the limit
		return l.round(l.shown(found, p.Scenario)), true, nil
	}
	// Bisect over whole steps: with possible there is a plan, with impossible there is none.
	impossible, possible := l.before(l.Get(p.Scenario)), l.steps(l.nearer(found, p, l.End))
	for math.Abs(possible-impossible) > 1 {
		middle := math.Floor((possible + impossible) / 2)
		v := l.at(middle)
		found, err := search.First(ctx, With(p, []Lever{l}, []float64{v}), before, question.ByCost, true)
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

// nearer returns how much of a limit a plan needs, rounded to a step that is enough, where the plan shows it and it is
// less than what was tried; else what was tried.
func (l *Lever) nearer(found *plan.Plan, p question.Problem, tried float64) float64 {
	if l.shown == nil {
		return tried
	}
	if v := l.round(l.shown(found, p.Scenario)); l.loosens(tried, v) && l.loosens(v, l.Get(p.Scenario)) {
		return v
	}
	return tried
}

// before returns the number of the loosest whole step that is not looser than a value.
func (l *Lever) before(v float64) float64 {
	if l.Up {
		return math.Floor(v / l.step)
	}
	return math.Ceil(v / l.step)
}

// steps returns a value in whole steps, moved to the loose side.
func (l *Lever) steps(v float64) float64 { return math.Round(l.round(v) / l.step) }

// round moves a value to a whole step on the loose side, so that what is printed is enough.
func (l *Lever) round(v float64) float64 {
	const hair = 1e-6 // of a step
	steps := v / l.step
	if l.Up {
		return l.at(math.Ceil(steps - hair))
	}
	return l.at(math.Floor(steps + hair))
}

// at returns the value of a number of steps. It divides by a whole number, since a step like 0.01 is not exact in binary.
func (l *Lever) at(steps float64) float64 { return steps / math.Round(1/l.step) }

// Changed returns a copy of a problem with a change made.
func Changed(p question.Problem, c question.Change) question.Problem {
	for _, l := range Levers(p.Scenario) {
		for _, lc := range c.Limits {
			if l.Name == lc.Name {
				p = With(p, []Lever{l}, []float64{lc.To})
			}
		}
	}
	return p
}
