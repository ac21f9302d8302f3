package next

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"cartwright/optimize/bench"
	"cartwright/optimize/bound"
	"cartwright/optimize/energy"
	"cartwright/optimize/plan"
)

// Bar says why months go by with nothing on the cart.
type Bar struct {
	Until int // the first month with a complete cart
	// Least is the core of the cart that can be built from owned parts and parts of the target for the least outlay, Cost
	// is that outlay, and Short what of it is not in hand now.
	Least plan.Core
	Cost  plan.Money
	Short plan.Money
	// Reasons says why cheaper cores cannot be built.
	Reasons []string
}

// barred is a core that cannot be built on the way, and why.
type barred struct {
	cents float64 // the least it could cost
	words string
}

// mostReasons is how many reasons are given.
const mostReasons = 3

// bar says why nothing stands on the cart in the first months; nil where something does.
func (w *way) bar(months []Month) *Bar {
	first := slices.IndexFunc(months, func(m Month) bool { return m.Cart != nil })
	if first <= 0 {
		return nil
	}
	out := &Bar{Until: months[first].Month, Least: w.target.Core, Cost: w.target.Cost}
	nothing := make([]float64, len(w.lines))
	for sold := range w.stages {
		for i := range w.stages[sold] {
			st := &w.stages[sold][i]
			if cost := w.outlay(w.with(nothing, st), sold); cost < out.Cost {
				out.Least, out.Cost = st.plan.Core, cost
			}
		}
	}
	out.Short = max(0, out.Cost-plan.Money(w.money.at(0)))
	slices.SortStableFunc(w.barred, func(a, b barred) int { return cmp.Compare(a.cents, b.cents) })
	for _, x := range w.barred {
		if len(out.Reasons) < mostReasons && x.cents < float64(out.Cost) && !slices.Contains(out.Reasons, x.words) {
			out.Reasons = append(out.Reasons, x.words)
		}
	}
	return out
}

// noteUnfit notes the owned inverters that do not serve at all: a reader may wonder why they are not used.
func (w *way) noteUnfit(b *bench.Bench) {
	for _, h := range w.p.Scenario.Have {
		serves := slices.ContainsFunc(b.Supplies, func(v bench.Supply) bool { return v.Inverter.ID == h.PartID })
		if why := b.WhyNot(h.PartID); len(why) > 0 && !serves && isInverter(b, h.PartID) {
			w.barred = append(w.barred, barred{words: h.PartID + ", owned: " + why[0]})
		}
	}
}

func isInverter(b *bench.Bench, id string) bool {
	for i := range b.Catalog.Inverters {
		if b.Catalog.Inverters[i].ID == id {
			return true
		}
	}
	return false
}

// note notes a core that cannot be built, with the first condition it does not meet.
func (w *way) note(b *bench.Bench, o *bound.Bounds, c *bench.Core, f bound.Figures) {
	v, strings := &b.Supplies[c.Supply], b.StringsOf(c)
	what := coreWords(strings, v)
	words := what + ": it cannot be wired and built from the parts of this plan so that it does not tip"
	switch {
	case !energy.Carries(strings, v.DrawA):
		words = fmt.Sprintf("%s: the batteries give %s A, the inverter may draw %s A (batteries.csv, max_discharge_a)", what,
			bench.Figure(energy.CarryA(strings)), bench.Figure(v.DrawA))
	case o.Hopeless(f):
		words = what + ": there is no room for it on the cart, or it is too heavy"
	case !o.Serves(c, f):
		words = what + ": battery and inverter have no protocol in common (limits.protocols)"
	}
	w.barred = append(w.barred, barred{f.Cents, words})
}

// coreWords names batteries and inverter.
func coreWords(list []energy.Strings, v *bench.Supply) string {
	var parts []string
	for _, s := range list {
		parts = append(parts, fmt.Sprintf("%d x %s", s.Series*s.Count, s.Battery.ID))
	}
	return strings.Join(append(parts, fmt.Sprintf("%d x %s", v.Units, v.Inverter.ID)), " with ")
}
