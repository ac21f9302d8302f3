package audit

import (
	"fmt"
	"math"

	"cartwright/optimize/plan"
)

const ruleLimits = "limits told"

var limitRules = []Rule{
	{ruleLimits, "", "the plan's list has every limit that applies, once, with its true value, limit, unit, what is left and whether it binds", fromParts},
}

// limits checks whether the plan's list of limits is the true one.
func (a *auditor) limits() {
	var faults []string
	told := map[string]bool{}
	for i := range a.p.Limits {
		stated := &a.p.Limits[i]
		if told[stated.Name] {
			faults = append(faults, stated.Name+" is listed twice")
			continue
		}
		told[stated.Name] = true
		if truth := a.limit(stated.Name); truth == nil {
			faults = append(faults, "no limit "+stated.Name)
		} else if wrong := differs(stated, truth); wrong != "" {
			faults = append(faults, stated.Name+": "+wrong)
		}
	}
	for _, truth := range a.truth {
		if !told[truth.Name] {
			faults = append(faults, truth.Name+" is not listed")
		}
	}
	a.none(ruleLimits, faults)
}

// limit returns the true limit of a name, nil for none.
func (a *auditor) limit(name string) *plan.Limit {
	for i := range a.truth {
		if a.truth[i].Name == name {
			return &a.truth[i]
		}
	}
	return nil
}

// differs says how a stated limit differs from the true one.
func differs(stated, truth *plan.Limit) string {
	// Slack is a difference of larger numbers, each of which may be rounded.
	hair := sixDigits * scale(truth.Value, truth.Limit)
	edge := plan.BindingShare * math.Abs(truth.Limit)
	switch {
	case !tells(stated.Value, truth.Value):
		return fmt.Sprintf("value %g, not %g", stated.Value, truth.Value)
	case !tells(stated.Limit, truth.Limit):
		return fmt.Sprintf("limit %g, not %g", stated.Limit, truth.Limit)
	case stated.Unit != truth.Unit:
		return fmt.Sprintf("unit %q, not %q", stated.Unit, truth.Unit)
	case !(math.Abs(stated.Slack-truth.Slack) <= hair):
		return fmt.Sprintf("%g left, not %g", stated.Slack, truth.Slack)
	case stated.Binding != truth.Binding && math.Abs(truth.Slack-edge) > hair:
		return fmt.Sprintf("binding is %t, not %t", stated.Binding, truth.Binding)
	}
	return ""
}
