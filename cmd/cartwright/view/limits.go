package view

import (
	"fmt"

	"cartwright/optimize/plan"
)

// atLeast reports whether a limit is a lower one: the value has to reach it.
func atLeast(name string) bool {
	switch name {
	case plan.LimitAutonomy, plan.LimitPower, plan.LimitLeg, plan.LimitSurge, plan.LimitLegSurge, plan.LimitBusCurrent,
		plan.LimitPeakCurrent, plan.LimitCharger, plan.LimitCharge, plan.LimitTiltSideways, plan.LimitTiltLength,
		plan.LimitHold, plan.LimitServed:
		return true
	}
	return false
}

// bound returns a limit with the side it stands on.
func (u units) bound(l plan.Limit) string {
	if atLeast(l.Name) {
		return ">=" + u.fixed(l.Limit, l.Unit)
	}
	return "<=" + u.fixed(l.Limit, l.Unit)
}

// binding returns the limits that bind.
func binding(list []plan.Limit) []plan.Limit {
	var bind []plan.Limit
	for _, l := range list {
		if l.Binding {
			bind = append(bind, l)
		}
	}
	return bind
}

// limits shows what is left of every limit and which ones bind.
func (p Plans) limits(one *plan.Plan) section {
	return section{title: detailTitle(one, "limits"), table: p.units().limitTable(one.Limits)}
}

// limitTable shows limits, each with what is left of it.
func (u units) limitTable(list []plan.Limit) *table {
	t := &table{columns: []column{
		text("limit"), number("has"), number("must be"), number("left"), text("unit"), text("binds"),
	}}
	for _, l := range list {
		binds := ""
		if l.Binding {
			binds = "binds"
		}
		t.row(l.Name, u.fixed(l.Value, l.Unit), u.bound(l), u.fixed(l.Slack, l.Unit), u.unit(l.Unit), binds)
	}
	t.notes = []string{fmt.Sprintf("A limit binds where at most %s %% of it is left.", short(plan.BindingShare*100, 1))}
	return t
}
