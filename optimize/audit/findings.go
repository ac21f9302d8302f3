package audit

import (
	"math"
	"sort"
	"strings"

	"cartwright/optimize/plan"
)

// findings are the checks made so far: of each rule the worst.
type findings struct {
	worst map[string]finding
}

// finding is a check and by how much it passed, relative to the numbers compared; below 0 it failed.
type finding struct {
	check  plan.Check
	margin float64
}

// atLeast notes the check that value reaches limit.
func (f *findings) atLeast(rule string, value, limit float64, detail string) {
	f.tell(rule, value, limit, plan.AtLeast(value, limit), value-limit, detail)
}

// atMost notes the check that value does not exceed limit.
func (f *findings) atMost(rule string, value, limit float64, detail string) {
	f.tell(rule, value, limit, plan.AtMost(value, limit), limit-value, detail)
}

// exactly notes the check that two numbers that are counted, not measured, are the same.
func (f *findings) exactly(rule string, value, limit float64, detail string) {
	f.tell(rule, value, limit, value == limit, -math.Abs(value-limit), detail)
}

// truly notes the check that a stated figure is the true one.
func (f *findings) truly(rule string, stated, truth float64, detail string) {
	f.tell(rule, stated, truth, tells(stated, truth), -math.Abs(stated-truth), detail)
}

// mostFaults is how many faults of one check are named; more would hide the first.
const mostFaults = 4

// none notes the check that there are no faults of some sort; they are named.
func (f *findings) none(rule string, faults []string) {
	detail := strings.Join(faults, "; ")
	if len(faults) > mostFaults {
		detail = strings.Join(faults[:mostFaults], "; ") + "; and more"
	}
	f.exactly(rule, float64(len(faults)), 0, detail)
}

// tell keeps a check if it is the worst of its rule so far; of equals the first.
func (f *findings) tell(rule string, value, limit float64, passed bool, margin float64, detail string) {
	c := plan.Check{Name: rule, Passed: passed, Value: printable(value), Limit: printable(limit), Detail: detail}
	if at, ok := ruleAt[rule]; ok {
		c.Unit, c.Source = allRules[at].Unit, allRules[at].Source
	}
	f.keep(c, margin)
}

// keep keeps a check if it is the worst of its name so far: a failed one before a passed one, then the
// one with less margin, which is in the unit of value and limit.
func (f *findings) keep(c plan.Check, margin float64) {
	if size := scale(c.Value, c.Limit); size > 0 {
		margin /= size
	}
	if math.IsNaN(margin) {
		margin = math.Inf(-1)
	}
	old, told := f.worst[c.Name]
	if told && (!old.check.Passed && c.Passed || old.check.Passed == c.Passed && old.margin <= margin) {
		return
	}
	if f.worst == nil {
		f.worst = map[string]finding{}
	}
	f.worst[c.Name] = finding{c, margin}
}

// audit returns the checks made, in the order of Rules.
func (f *findings) audit() plan.Audit {
	a := plan.Audit{Passed: true, Checks: make([]plan.Check, 0, len(f.worst))}
	for _, w := range f.worst {
		a.Checks = append(a.Checks, w.check)
		a.Passed = a.Passed && w.check.Passed
	}
	sort.Slice(a.Checks, func(i, j int) bool {
		x, y := a.Checks[i].Name, a.Checks[j].Name
		if placeOf(x) != placeOf(y) {
			return placeOf(x) < placeOf(y)
		}
		return x < y
	})
	return a
}

// placeOf returns a check's place in Rules; after them all for a check that Rules does not list.
func placeOf(name string) int {
	if at, ok := ruleAt[name]; ok {
		return at
	}
	return len(allRules)
}

// printable returns a number as JSON can hold it: NaN as 0, infinity as the largest number.
func printable(x float64) float64 {
	switch {
	case math.IsNaN(x):
		return 0
	case math.IsInf(x, 0):
		return math.Copysign(math.MaxFloat64, x)
	}
	return x
}
