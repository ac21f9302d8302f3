package view

import (
	"fmt"

	"cartwright/optimize"
	"cartwright/optimize/plan"
)

// atLeast reports whether a limit is a lower one: the value has to reach it.
func atLeast(name string) bool {
	switch name {
	case plan.LimitAutonomy, plan.LimitPower, plan.LimitLeg, plan.LimitSurge, plan.LimitBusCurrent,
		plan.LimitCharger, plan.LimitCharge, plan.LimitTiltSideways, plan.LimitTiltLength:
		return true
	}
	return false
}

// bound returns a limit with the side it stands on.
func bound(name string, limit float64, unit string) string {
	if atLeast(name) {
		return ">=" + fixed(limit, decimalsOf(unit))
	}
	return "<=" + fixed(limit, decimalsOf(unit))
}

// limits shows what is left of every limit and which ones bind.
func (p Plans) limits(one *plan.Plan) section {
	t := &table{columns: []column{
		text("limit"), number("has"), number("must be"), number("left"), text("unit"), text("binds"),
	}}
	for _, l := range one.Limits {
		decimals, binds := decimalsOf(l.Unit), ""
		if l.Binding {
			binds = "binds"
		}
		t.row(l.Name, fixed(l.Value, decimals), bound(l.Name, l.Limit, l.Unit), fixed(l.Slack, decimals), l.Unit, binds)
	}
	t.notes = []string{fmt.Sprintf("A limit binds where at most %s %% of it is left.", short(plan.BindingShare*100, 1))}
	return section{title: detailTitle(one, "limits"), table: t}
}

// aims says of a proven first plan what no other plan is.
var aims = map[optimize.By]string{
	optimize.ByCost: "costs less",
	optimize.ByMass: "is lighter",
	optimize.ByLife: "costs less per lifetime kWh",
}

// differences names what another plan has to differ in.
var differences = map[optimize.Distinct]string{
	optimize.DistinctCore:    "choice of batteries and inverter",
	optimize.DistinctBattery: "choice of batteries",
}

// stops says why the search ended without a proof.
var stops = map[optimize.Status]string{
	optimize.TimeLimit: "The search was stopped by the time limit or by hand",
	optimize.GaveUp:    "The solver gave up",
}

// proof says how far the ranking can be trusted, and by whose word.
func (p Plans) proof() section {
	s := p.Result.Solver
	work := fmt.Sprintf("Solved by %s %s: %s.", s.Name, s.Version, count(s.Models, "integer program", "integer programs"))
	var lines []string
	switch {
	case s.Status == optimize.Optimal && len(p.Result.Plans) == 1:
		lines = []string{"Proven: no other plan " + aims[p.By] + "."}
	case s.Status == optimize.Optimal:
		lines = []string{"Proven: no other plan " + aims[p.By] + " than the first, and each rank is the next best " +
			differences[p.Distinct] + "."}
	case len(p.Result.Plans) == 0:
		lines = []string{stops[s.Status] + " before any plan was found; that does not mean that there is none."}
	default:
		lines = []string{"NOT PROVEN: " + stops[s.Status] + ". These are the best plans found so far."}
	}
	if s.Status != optimize.Optimal && s.Gap > 0 {
		lines = append(lines, fmt.Sprintf("A plan better by up to %s %% may exist.", fixed(100*s.Gap, 1)))
	}
	lines = append(lines, work)
	for _, r := range s.Retries {
		lines = append(lines, "Solver trouble: "+r+".")
	}
	if one := p.shown(); one != nil {
		passed := 0
		for _, c := range one.Audit.Checks {
			if c.Passed {
				passed++
			}
		}
		lines = append(lines, fmt.Sprintf("Audit of plan %d: %d of %d checks passed, recomputed from the parts without the solver.",
			one.Rank, passed, len(one.Audit.Checks)))
	}
	return section{title: "Proof", prose: lines}
}
