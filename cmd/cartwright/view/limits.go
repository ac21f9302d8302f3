package view

import (
	"fmt"

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
