package compare

import (
	"context"
	"fmt"
	"math"
	"strings"

	"cartwright/optimize/bench"
	"cartwright/optimize/energy"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/optimize/rank"
	"cartwright/optimize/relax"
)

// misfit says why no bank is possible.
func (f *fitting) misfit() []string {
	var reasons []string
	var named *kind
	for i := range f.kinds {
		k := &f.kinds[i]
		if k.named+k.kept == 0 && len(f.buy) > 0 {
			continue
		}
		switch {
		case k.why != "":
			reasons = append(reasons, f.of(k)+k.why)
		case named != nil && !energy.ShareBus(named.battery, k.battery):
			reasons = append(reasons, stays(named)+stays(k)+bench.Apart(named.battery.ID, k.battery.ID))
		case k.battery.MaxParallel > 0 && k.named+k.kept > k.battery.MaxParallel*k.series:
			reasons = append(reasons, fmt.Sprintf("%sat most %d strings in parallel (batteries.csv, max_parallel)", f.of(k), k.battery.MaxParallel))
		case k.series > 1:
			reasons = append(reasons, fmt.Sprintf("%s%d do not make whole strings of %d", f.of(k), k.owned+k.named, k.series))
		}
		named = k
	}
	if len(reasons) == 0 {
		reasons = append(reasons, "no battery is owned, so nothing can stand on the cart")
	}
	return reasons
}

// of returns the name of a kind to put before a reason; "" where it alone is bought, since the choice names it already.
func (f *fitting) of(k *kind) string {
	if len(f.buy) == 1 && k.named > 0 {
		return ""
	}
	return k.battery.ID + ": "
}

// stays says that a kind must stay, if it is to be kept; else "".
func stays(k *kind) string {
	if k.kept == 0 {
		return ""
	}
	return fmt.Sprintf("%d x %s must stay (have, keep), and ", k.kept, k.battery.ID)
}

// left says which owned batteries do not stay, and why.
func (f *fitting) left(ctx context.Context, now, most *bank) ([]Left, error) {
	var list []Left
	tried := ""
	for i := range f.kinds {
		k := &f.kinds[i]
		n := k.owned - now.stay[i]
		if n == 0 {
			continue
		}
		l := Left{Part: k.battery.ID, Count: n}
		switch other := f.rival(k, now); {
		case k.why != "":
			l.Reason = k.why
		case other != "":
			l.Reason = bench.Apart(k.battery.ID, other)
		case now.stay[i] == most.stay[i] && k.battery.MaxParallel > 0 && (k.owned+k.named)/k.series > k.battery.MaxParallel:
			l.Reason = fmt.Sprintf("at most %d strings in parallel (batteries.csv, max_parallel)", k.battery.MaxParallel)
		case now.stay[i] == most.stay[i]:
			l.Reason = fmt.Sprintf("a string takes %d", k.series)
		default:
			if tried == "" {
				reasons, changes, err := obstacles(ctx, f.p, most, f.buy)
				if err != nil {
					return nil, err
				}
				tried = because(reasons, changes)
			}
			l.Reason = tried
		}
		list = append(list, l)
	}
	return list, nil
}

// rival returns a battery of the bank that a kind cannot share a bus with, "" where there is none.
func (f *fitting) rival(k *kind, now *bank) string {
	for i := range f.kinds {
		other := f.kinds[i].battery
		if now.modules[other.ID] > 0 && !energy.ShareBus(k.battery, other) {
			return other.ID
		}
	}
	return ""
}

// because says in a line which limits keep the larger bank out.
func because(reasons []string, changes []question.Change) string {
	var names []string
	for _, c := range changes {
		var together []string
		for _, l := range c.Limits {
			together = append(together, l.Name)
		}
		names = append(names, strings.Join(together, " with "))
	}
	switch {
	case len(reasons) > 0:
		return reasons[0]
	case len(names) > 0:
		return "with it no cart meets the limits: " + strings.Join(names, " or ") + " would have to give"
	}
	return "with it no cart meets the limits"
}

// obstacles says why a bank has no plan, and which changes would give it one.
func obstacles(ctx context.Context, p question.Problem, k *bank, buy []Line) ([]string, []question.Change, error) {
	q := pinned(p, k, buy)
	if p.Scenario.Recharge != nil {
		d, err := energy.DemandOf(p.Scenario)
		if err != nil {
			return nil, nil, err
		}
		s := *q.Scenario
		for i := range q.Catalog.Inverters {
			inv := &q.Catalog.Inverters[i]
			for _, v := range bench.Servings(inv) {
				s.AutonomyH = math.Min(s.AutonomyH, d.AutonomyH(inv.Efficiency, float64(v.Units)*inv.IdleW, k.usableWh(p)))
			}
		}
		q.Scenario = &s
	}
	r, err := rank.Plans(ctx, q, question.Options{Plans: 1})
	if err != nil {
		return nil, nil, err
	}
	var changes []question.Change
	for _, c := range r.Changes {
		if !touches(c, plan.LimitAutonomy) {
			changes = append(changes, c)
		}
	}
	if len(r.Reasons)+len(changes) == 0 && !r.ChangesUnknown {
		if r.Reasons, err = relax.Obstruct(ctx, q); err != nil {
			return nil, nil, err
		}
	}
	if len(r.Reasons)+len(changes) == 0 {
		changes = r.Changes // only less autonomy helps: the charger cannot put back so much in time
	}
	return r.Reasons, changes, nil
}

// touches reports whether a change is of a limit.
func touches(c question.Change, name string) bool {
	for _, l := range c.Limits {
		if l.Name == name {
			return true
		}
	}
	return false
}
