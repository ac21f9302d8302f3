package report

import (
	"math"
	"strings"

	"cartwright/cmd/cartwright/picture"
	"cartwright/cmd/cartwright/picture/told"
	"cartwright/optimize/plan"
)

// limit is one bar of a report: how much of a limit is used up.
type limit struct {
	Name, Has, Bound, Left string
	Percent                float64 // of the bar's length
	Binds                  bool
}

// limits words every limit of a plan.
func limits(p *plan.Plan, u told.Units) []limit {
	var list []limit
	for _, l := range p.Limits {
		value, unit := u.Figure(l.Value, l.Unit), u.Unit(l.Unit)
		bound := u.Figure(l.Limit, l.Unit)
		left := u.Figure(l.Slack, l.Unit)
		x := limit{Name: l.Name, Has: amount(value, unit), Left: amount(left, unit), Binds: l.Binding}
		used := 0.0
		if atLeast(l) {
			x.Bound = "at least " + amount(bound, unit)
			if l.Value > 0 {
				used = l.Limit / l.Value
			}
		} else {
			x.Bound = "at most " + amount(bound, unit)
			if l.Limit > 0 {
				used = l.Value / l.Limit
			}
		}
		x.Percent = math.Round(1000*math.Max(0, math.Min(1, used))) / 10
		list = append(list, x)
	}
	return list
}

// atLeast reports whether a limit is a lower one: then what is left of it is how far the value is above it.
func atLeast(l plan.Limit) bool {
	return math.Abs(l.Value-l.Limit-l.Slack) <= math.Abs(l.Limit-l.Value-l.Slack)
}

// amount words a figure with its unit.
func amount(v float64, unit string) string {
	decimals := 2
	if math.Abs(v) >= 100 {
		decimals = 0
	}
	return strings.TrimSpace(told.Number(v, decimals) + " " + unit)
}

// alternative is one of the ranked plans.
type alternative struct {
	Rank                                int
	Core, Cost, Usable, Hours, Mass, Of string
	Shown, Proven                       bool
}

// alternatives lists the ranking.
func (r *Report) alternatives(u told.Units) []alternative {
	var list []alternative
	for i := range r.Plans {
		p := &r.Plans[i]
		list = append(list, alternative{
			Rank: p.Rank, Core: picture.Names(p), Cost: p.Cost.String(), Usable: told.Fixed(p.UsableKWh, 2), Hours: told.Fixed(p.AutonomyH, 1),
			Mass: u.Mass(p.MassKg), Of: told.Fixed(p.CostPerUsableKWh, 2), Shown: i == r.Show, Proven: p.Proven,
		})
	}
	return list
}

// month is a month of the year of sun.
type month struct{ Name, Sun, Load, Short, Spilled string }

// months lists the year month by month, where there is sun.
func months(p *plan.Plan) []month {
	if p.Year == nil {
		return nil
	}
	names := []string{"January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"}
	var list []month
	for i, m := range p.Year.Months {
		if i < len(names) {
			list = append(list, month{names[i], told.Fixed(m.Sun, 1), told.Fixed(m.Load, 1), told.Fixed(m.Short, 1), told.Fixed(m.Spilled, 1)})
		}
	}
	return list
}
