package optimize

import (
	"context"
	"errors"

	"cartwright/optimize/plan"
)

// Effect is what one change of one limit does to the best plan, found by solving again.
type Effect struct {
	Limit  string     `json:"limit"`
	From   float64    `json:"from"`
	To     float64    `json:"to"`
	Unit   string     `json:"unit"`
	Looser bool       `json:"looser"`
	Plan   *plan.Plan `json:"plan,omitempty"` // nil: no plan is possible then
	// Saves is how much less the best plan costs, in currency units; negative: how much more.
	Saves float64 `json:"saves"`
}

// Explanation says why the best plan is what it is.
type Explanation struct {
	Best    *plan.Plan `json:"best,omitempty"` // nil: none is possible
	Effects []Effect   `json:"effects,omitempty"`
	// Conflict is, where no plan is possible, a smallest set of limits that contradict each other.
	Conflict []LimitChange `json:"conflict,omitempty"`
	// WaysOut are the changes that make a plan possible, the cheapest plan first.
	WaysOut []WayOut `json:"ways_out,omitempty"`
	Reasons []string `json:"reasons,omitempty"`
}

// WayOut is a change of limits and the cheapest plan it allows.
type WayOut struct {
	Change Change     `json:"change"`
	Plan   *plan.Plan `json:"plan"`
}

// nudges are the changes that Explain looks into: what one more hour, ten more kilograms or a hundred
// more of budget would change, and a natural step of the other limits; each both ways.
var nudges = map[string]float64{
	"autonomy": 1, "mass": 10, "budget": 100, "reserve": 5, "tilt": 1, "push": 10, "recharge within": 1,
}

// Explain solves again with each limit a little looser and a little tighter; where no plan is possible it
// finds the limits that contradict each other and the ways out.
func Explain(ctx context.Context, p Problem) (*Explanation, error) {
	before := &laidBefore{}
	best, err := firstPlan(ctx, p, before, ByCost, false)
	if err != nil {
		return nil, err
	}
	if best == nil {
		return explainNone(ctx, p, before)
	}
	out := &Explanation{Best: best}
	for _, l := range levers(p.Scenario) {
		step, ok := nudges[l.name]
		if !ok {
			step = 1 // a percent of drop
			if l.unit == "kg" {
				step = 10
			}
		}
		for _, looser := range []bool{true, false} {
			e, err := nudge(ctx, p, before, l, step, looser, best)
			if err != nil {
				return nil, err
			}
			if e != nil {
				out.Effects = append(out.Effects, *e)
			}
		}
	}
	return out, nil
}

// nudge moves one limit by a step and solves again; nil where the limit cannot move that far.
func nudge(ctx context.Context, p Problem, before *laidBefore, l lever, step float64, looser bool, best *plan.Plan) (*Effect, error) {
	from := l.get(p.Scenario)
	to := from + step
	if (l.end < from) == looser {
		to = from - step
	}
	if to <= 0 && !(to == 0 && l.name == "reserve") {
		return nil, nil
	}
	e := &Effect{Limit: l.name, From: from, To: to, Unit: l.change(p, to).Unit, Looser: looser}
	found, err := firstPlan(ctx, p.with([]lever{l}, []float64{to}), before, ByCost, false)
	if err != nil {
		return nil, err
	}
	e.Plan = found
	if found != nil {
		e.Saves = (best.Cost - found.Cost).Units()
	}
	return e, nil
}

// explainNone explains why no plan is possible.
func explainNone(ctx context.Context, p Problem, before *laidBefore) (*Explanation, error) {
	b, err := lay(p, "", before)
	if err != nil {
		return nil, err
	}
	out := &Explanation{Reasons: b.obstacles()}
	conflict, err := smallestConflict(ctx, p, before)
	if err != nil {
		return nil, err
	}
	for i := range conflict {
		out.Conflict = append(out.Conflict, conflict[i].change(p, conflict[i].get(p.Scenario)))
	}
	list, err := changes(ctx, p, before)
	if err != nil {
		return nil, err
	}
	if len(list)+len(out.Reasons) == 0 {
		if out.Reasons, err = obstruct(ctx, p); err != nil {
			return nil, err
		}
	}
	for _, c := range list {
		found, err := firstPlan(ctx, p.changed(c), before, ByCost, false)
		if err != nil {
			return nil, err
		}
		if found == nil {
			return nil, errors.New("internal error: a change of limits that was found to be enough is not")
		}
		out.WaysOut = append(out.WaysOut, WayOut{c, found})
	}
	sortWaysOut(out.WaysOut)
	return out, nil
}

// sortWaysOut puts the cheapest plan first; of equals the order stays.
func sortWaysOut(w []WayOut) {
	for i := 1; i < len(w); i++ {
		for j := i; j > 0 && w[j].Plan.Cost < w[j-1].Plan.Cost; j-- {
			w[j], w[j-1] = w[j-1], w[j]
		}
	}
}

// changed returns a copy of a problem with a change made.
func (p Problem) changed(c Change) Problem {
	for _, l := range levers(p.Scenario) {
		for _, lc := range c.Limits {
			if l.name == lc.Name {
				p = p.with([]lever{l}, []float64{lc.To})
			}
		}
	}
	return p
}

// smallestConflict finds a smallest set of limits that no plan can meet together, though it meets all of
// them but any one. Deletion finds an irreducible set; whether a smaller one exists is then tried out.
func smallestConflict(ctx context.Context, p Problem, before *laidBefore) ([]lever, error) {
	all := levers(p.Scenario)
	contradict := func(kept []lever) (bool, error) {
		possible, err := possibleWith(ctx, p, before, without(all, kept))
		return !possible, err
	}
	if none, err := contradict(nil); err != nil || none {
		return nil, err // no limit is to blame: the catalogue has nothing that serves
	}
	kept := append([]lever(nil), all...)
	for i := 0; i < len(kept); {
		rest := append(append([]lever(nil), kept[:i]...), kept[i+1:]...)
		still, err := contradict(rest)
		switch {
		case err != nil:
			return nil, err
		case still:
			kept = rest
		default:
			i++
		}
	}
	for size := 1; size < len(kept); size++ {
		if set, ok, err := firstSet(all, size, nil, contradict); ok || err != nil {
			return set, err
		}
	}
	return kept, nil
}

// without returns the levers that are not among the others.
func without(all, others []lever) []lever {
	var rest []lever
	for _, l := range all {
		found := false
		for _, o := range others {
			found = found || o.name == l.name
		}
		if !found {
			rest = append(rest, l)
		}
	}
	return rest
}
