package view

import (
	"math"
	"testing"

	"cartwright/optimize/plan"
	"cartwright/optimize/question"
)

// A change of the autonomy to 0.04 h was shown as "0 h", a mass of 1 g as "0 kg", and money with one decimal.
func TestChangeTextOfSmallFiguresAndMoney(t *testing.T) {
	for _, c := range []struct {
		name   string
		change question.LimitChange
		want   string
	}{
		{"hours", question.LimitChange{Name: plan.LimitAutonomy, From: 4, To: 0.0407, Unit: "h"}, "autonomy 4 h -> 0.04 h"},
		{"grams", question.LimitChange{Name: plan.LimitMass, From: 0.001, To: 81.25, Unit: "kg"}, "mass 0.001 kg -> 81.3 kg"},
		{"money", question.LimitChange{Name: plan.LimitBudget, From: 0, To: 1783.1, Unit: "EUR"}, "budget 0.00 EUR -> 1783.10 EUR"},
		{"no unit", question.LimitChange{Name: "share", From: 2, To: 1}, "share 2 -> 1"},
		{"as usual", question.LimitChange{Name: plan.LimitAutonomy, From: 24, To: 19.59, Unit: "h"}, "autonomy 24 h -> 19.5 h"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := (units{}).change(c.change); got != c.want {
				t.Errorf("got %q, want %q", got, c.want)
			}
		})
	}
}

func TestFigures(t *testing.T) {
	for _, c := range []struct{ name, got, want string }{
		{"rounded", fixed(1.25001, 1), "1.3"},
		{"no negative zero", fixed(-0.001, 2), "0.00"},
		{"negative", fixed(-0.05, 2), "-0.05"},
		{"infinite", fixed(math.Inf(1), 2), "no limit"},
		{"not a number", fixed(math.NaN(), 2), "?"},
		{"plus", signed(2.5, 1), "+2.5"},
		{"minus", signed(-2.5, 1), "-2.5"},
		{"same", signed(-0.0001, 2), "="},
		{"short whole", short(24, 1), "24"},
		{"short hundred", short(100, 0), "100"},
		{"short part", short(19.50, 2), "19.5"},
		{"stated", stated(0, 1), "-"},
		{"lowered rounds down", lenient(19.59, 24, "h"), "19.5"},
		{"raised rounds up", lenient(337.91, 300, "kg"), "338"},
		{"floating point misses a whole figure", lenient(19.499999999999, 24, "h"), "19.5"},
		{"money to the cent, upward", lenient(1000.001, 900, "USD"), "1000.01"},
		{"lowered to next to nothing is not nothing", lenient(0.0407, 4, "h"), "0.04"},
		{"lowered to nothing", lenient(0, 4, "h"), "0"},
		{"small is seen", visible(0.001, 2), "0.001"},
		{"large is as short", visible(24.5, 2), "24.5"},
		{"a length to cut is enough", enough(3.651), "3.66"},
		{"a length that is told whole", enough(3.66), "3.66"},
		{"a length of floating point", enough(2.0000000001), "2"},
		{"pieces", enough(14), "14"},
		{"nothing is nothing", visible(0, 2), "0"},
		{"one", count(1, "plan", "plans"), "1 plan"},
		{"many", count(10, "plan", "plans"), "10 plans"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if c.got != c.want {
				t.Errorf("got %q, want %q", c.got, c.want)
			}
		})
	}
}
