package optimize

import (
	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// PerMonthWithin returns the least that has to be put aside every month, in whole cents, for an amount to
// be in hand within some months (at least one); 0 where what is in hand will do.
func PerMonthWithin(s *scenarios.Scenario, amount plan.Money, months int) plan.Money {
	short := catalog.Cents(amount) - s.Sold
	if s.Savings != nil {
		short -= s.Savings.Now
	}
	if short <= 0 {
		return 0
	}
	n := catalog.Cents(months)
	return plan.Money((short + n - 1) / n)
}
