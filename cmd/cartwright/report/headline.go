package report

import (
	"fmt"

	"cartwright/cmd/cartwright/picture"
	"cartwright/cmd/cartwright/picture/told"
	"cartwright/optimize/plan"
)

// headline is the top of a report: what this plan is, and what to buy for it first of all.
type headline struct {
	Rank, Of int
	Proven   bool
	Cost     string
	Figures  []figure
	Buy      []string // batteries, inverter and modules that are bought
	Have     []string // those of them that are owned already
	Notices  []string
	Audit    string
	Next     []string // the next best plans, in a line each
}

// figure is a number with its name.
type figure struct{ Name, Value string }

// mostNext is how many other plans stand on the first page.
const mostNext = 3

func (r *Report) headline(p *plan.Plan, u told.Units) headline {
	h := headline{Notices: r.Notices, Rank: p.Rank, Of: len(r.Plans), Proven: p.Proven, Cost: p.Cost.String() + " " + r.Scenario.Currency}
	h.Figures = []figure{
		{"usable energy", told.Fixed(p.UsableKWh, 2) + " kWh"},
		{"runs the loads for", told.Fixed(p.AutonomyH, 1) + " h"},
		{"weighs", u.Mass(p.MassKg)},
		{"costs for a usable kWh", told.Fixed(p.CostPerUsableKWh, 2) + " " + r.Scenario.Currency},
	}
	if y := p.Year; y != nil {
		h.Figures = append(h.Figures, figure{"served by the sun", told.Fixed(100*y.Served, 1) + " % of the year"})
	}
	for _, l := range p.Bill {
		if l.Kind != "battery" && l.Kind != "inverter" && l.Kind != "solar" {
			continue
		}
		words := l.Part
		if e, ok := r.Catalog.Find(l.Part); ok && e.Name != "" {
			words += ", " + e.Name
		}
		if l.Buy > 0 {
			h.Buy = append(h.Buy, fmt.Sprintf("%s x %s", told.Number(l.Buy, 3), words))
		}
		if l.Have > 0 {
			h.Have = append(h.Have, fmt.Sprintf("%s x %s", told.Number(l.Have, 3), words))
		}
	}
	for i := range r.Plans {
		if other := &r.Plans[i]; i != r.Show && len(h.Next) < mostNext {
			h.Next = append(h.Next, fmt.Sprintf("%d: %s for %s %s, %s kWh, %s h, %s", other.Rank, picture.Names(other), other.Cost, r.Scenario.Currency,
				told.Fixed(other.UsableKWh, 2), told.Fixed(other.AutonomyH, 1), u.Mass(other.MassKg)))
		}
	}
	passed := 0
	for _, c := range p.Audit.Checks {
		if c.Passed {
			passed++
		}
	}
	if n := len(p.Audit.Checks); n > 0 {
		h.Audit = fmt.Sprintf("%d of %d checks passed, recomputed from the parts", passed, n)
	}
	return h
}
