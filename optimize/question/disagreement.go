package question

import (
	"fmt"

	"cartwright/optimize/plan"
)

// DisagreementError is returned where a plan failed its audit: nothing of it may be shown as a plan.
type DisagreementError struct {
	Plan   plan.Plan
	Failed []plan.Check
}

// Error names the failed checks.
func (e *DisagreementError) Error() string {
	s := "internal disagreement: a plan failed its audit"
	for _, c := range e.Failed {
		s += fmt.Sprintf("\n  %s: have %g, limit %g %s (%s)", c.Name, c.Value, c.Limit, c.Unit, c.Source)
		if c.Detail != "" {
			s += "; " + c.Detail
		}
	}
	return s
}

// Agreed returns nil for a check that passed, else the error of a plan that failed it.
func Agreed(p plan.Plan, c plan.Check) error {
	if c.Passed {
		return nil
	}
	return &DisagreementError{Plan: p, Failed: []plan.Check{c}}
}

// Disagreement is the error of a plan that failed its audit.
func Disagreement(p plan.Plan) error {
	e := &DisagreementError{Plan: p}
	for _, c := range p.Audit.Checks {
		if !c.Passed {
			e.Failed = append(e.Failed, c)
		}
	}
	return e
}
