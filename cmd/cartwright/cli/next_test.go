package cli

import (
	"errors"
	"strings"
	"testing"

	"cartwright/optimize/next"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// How next ends: with 3 wherever the search was stopped, whatever is known by then, else by whether the target is
// reached in time.
func TestNextEndings(t *testing.T) {
	p := question.Problem{Scenario: &scenarios.Scenario{Name: "barn", Currency: "USD"}}
	proved, found, months := &plan.Plan{Proven: true}, &plan.Plan{}, make([]next.Month, 3)
	for _, c := range []struct {
		name string
		q    next.Sequence
		code int
		want string
	}{
		{"reached", next.Sequence{Complete: true, Target: proved, Within: true, Months: months}, codeDone, ""},
		{"no plan", next.Sequence{Complete: true}, codeNo, "no plan for barn"},
		{"never", next.Sequence{Complete: true, Target: proved, Never: true}, codeNo, "never there"},
		{"beyond", next.Sequence{Complete: true, Target: proved, Reached: 2, Months: months}, codeNo, "before month 2"},
		{"order not proved", next.Sequence{Target: proved, Within: true, Months: months}, codeUnproven, "stopped before the order of purchases was proved the best"},
		{"no order", next.Sequence{Target: proved, Within: true}, codeUnproven, "stopped before the order of purchases was found"},
		{"no order, beyond", next.Sequence{Target: proved, Reached: 2}, codeUnproven, "stopped before the order of purchases was found"},
		{"target not proved", next.Sequence{Target: found, Within: true}, codeUnproven, "stopped before it was known whether another plan costs less"},
		{"never, not proved", next.Sequence{Target: found, Never: true}, codeUnproven, "stopped before it was known whether another plan costs less"},
		{"target not proved, all bought now", next.Sequence{Target: found, Within: true, Months: months[:1]}, codeUnproven, "stopped before it was known whether another plan costs less"},
	} {
		err := sequenceEnding(p, &c.q, 100)
		code, text := codeDone, ""
		var o *outcome
		if errors.As(err, &o) {
			code, text = o.code, o.Error()
		}
		if code != c.code || !strings.Contains(text, c.want) {
			t.Errorf("%s: %d, %q; want %d, %q", c.name, code, text, c.code, c.want)
		}
	}
}
