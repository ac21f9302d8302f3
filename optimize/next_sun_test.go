package optimize_test

import (
	"context"
	"testing"

	"cartwright/optimize/next"
	"cartwright/optimize/plan"
)

// An array may come in a later month: what stands on the cart before it is safe without one, its year says so, and the
// modules come in a month in which they are bought.
func TestArrayInLaterMonth(t *testing.T) {
	p := demo(t, "goat-dairy")
	p.Scenario.Have = p.Scenario.Have[:1] // the modules in the barn are another's
	got, err := next.Find(context.Background(), p, next.Options{Months: 18})
	if err != nil || got.Target == nil || len(got.Months) == 0 {
		t.Fatal(err, got)
	}
	bare, sunny := 0, 0
	for _, m := range got.Months {
		if m.Cart == nil {
			continue
		}
		bought := false
		for _, b := range m.Buy {
			bought = bought || b.Kind == "solar"
		}
		switch n := modulesOf(m.Cart); {
		case n == 0:
			bare++
			if m.Cart.Year.SunKWh != 0 || m.Cart.Year.Served != 0 {
				t.Errorf("month %d: a cart without modules has %+v", m.Month, *m.Cart.Year)
			}
		case sunny == 0 && !bought:
			t.Errorf("month %d: modules that nobody bought", m.Month)
		default:
			sunny++
		}
		for _, c := range m.Cart.Audit.Checks {
			if !c.Passed && c.Name == plan.LimitMass {
				t.Errorf("month %d: %+v", m.Month, c)
			}
		}
	}
	last := got.Months[len(got.Months)-1]
	if bare == 0 || sunny == 0 || last.Cart == nil || modulesOf(last.Cart) != modulesOf(got.Target) || last.Cart.Year.Served < p.Scenario.Limits.Served {
		t.Errorf("%d months without modules, %d with; at the end %+v", bare, sunny, last.Cart)
	}
}
