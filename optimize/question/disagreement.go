package question

import (
	"fmt"

	"cartwright/optimize/plan"
)

// DisagreementError is returned where a plan failed its audit. Such a plan is never shown as a plan.
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

// Agreed returns nil where a plan passed a check, else a DisagreementError.
func Agreed(p plan.Plan, c plan.Check) error {
	if c.Passed {
		return nil
	}
	return &DisagreementError{Plan: p, Failed: []plan.Check{c}}
}

// Disagreement returns the error for a plan that failed its audit, with every failed check.
func Disagreement(p plan.Plan) error {
	e := &DisagreementError{Plan: p}
	for _, c := range p.Audit.Checks {
		if !c.Passed {
			e.Failed = append(e.Failed, c)
		}
	}
	return e
}
