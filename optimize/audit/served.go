package audit

import (
	"fmt"
	"math"

	"cartwright/optimize/plan"
)

const (
	ruleServed      = "served"
	ruleYearFigures = "year figures"
)

var yearRules = []Rule{
	{ruleServed, "", "sun and store serve at least the required share of what is asked of the bus in a year, hour by hour", fromScenario},
	{ruleYearFigures, "", "the stated year, its months, what is saved and the payback are true; stated with sun, and only then", fromParts},
}

// sunYear simulates the year, where the scenario has sun, and checks whether enough is served.
func (a *auditor) sunYear() {
	if a.s.Sun == nil || a.inverter == nil || a.demand == nil || len(a.strings) == 0 || !(a.usableWh() > 0) {
		return
	}
	a.year = a.simulate()
	if a.s.Limits.Served > 0 {
		a.limited(ruleServed, plan.LimitServed, a.year.served, a.s.Limits.Served, true, "")
	}
}

// figuresOfYear checks whether what the plan states of the year is true.
func (a *auditor) figuresOfYear() {
	told := a.p.Year
	if told == nil || a.year == nil {
		if (told == nil) != (a.year == nil) {
			a.exactly(ruleYearFigures, answered(told != nil), answered(a.year != nil), "stated, and there is one")
		}
		return
	}
	y := a.year
	whole := (y.loadWh + y.sunWh + y.clippedWh) / 1000
	figure := func(name string, stated, truth, size float64) {
		same := tells(stated, truth) || math.Abs(stated-truth) <= plan.Tolerance*size
		a.tell(ruleYearFigures, stated, truth, same, -math.Abs(stated-truth), name)
	}
	figure("served", told.Served, y.served, 1)
	figure("short_h", told.ShortH, y.shortH, 0)
	figure("longest_short_h", told.LongestShortH, y.longestH, 0)
	figure("wall_kwh", told.WallKWh, y.wallWh/1000, whole)
	figure("spilled_kwh", told.SpilledKWh, y.spilledWh/1000, whole)
	figure("clipped_kwh", told.ClippedKWh, y.clippedWh/1000, whole)
	figure("sun_kwh", told.SunKWh, y.sunWh/1000, whole)
	figure("cycles", told.Cycles, y.cycles, y.cycles+1)
	if len(told.Months) != len(y.months) {
		a.exactly(ruleYearFigures, float64(len(told.Months)), float64(len(y.months)), "months")
		return
	}
	for m, truth := range y.months {
		stated := &told.Months[m]
		name := fmt.Sprintf("month %d: ", m+1)
		figure(name+"sun", stated.Sun, truth.Sun, whole)
		figure(name+"load", stated.Load, truth.Load, whole)
		figure(name+"short", stated.Short, truth.Short, whole)
		figure(name+"spilled", stated.Spilled, truth.Spilled, whole)
	}
	a.savings(told)
}

// savings checks whether what is saved in a year, and the years until that pays for the plan, are true.
func (a *auditor) savings(told *plan.Year) {
	grid := a.s.GridCentsPerKWh
	a.exactly(ruleYearFigures, answered(told.Saved != nil), answered(grid > 0), "saved is stated where a kWh from the wall has a price")
	if told.Saved == nil || grid <= 0 {
		a.exactly(ruleYearFigures, answered(told.PaybackYears != nil), 0, "payback is stated where something is saved")
		return
	}
	saved := grid * a.year.servedLoadWh / 1000 // cents, not rounded
	a.cents(ruleYearFigures, *told.Saved, saved, "saved")
	a.exactly(ruleYearFigures, answered(told.PaybackYears != nil), answered(saved > 0), "payback is stated where something is saved")
	if saved > 0 && told.PaybackYears != nil {
		a.truly(ruleYearFigures, *told.PaybackYears, math.Max(0, float64(a.p.Cost))/saved, "payback")
	}
}
