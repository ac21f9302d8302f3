package next

import (
	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// PerMonthWithin returns the least that has to be saved every month, in whole cents, to have an amount in
// hand within some months (0 counts as 1); 0 where what is in hand is enough.
func PerMonthWithin(s *scenarios.Scenario, amount plan.Money, months int) plan.Money {
	short := catalog.Cents(amount) - s.Sold
	if s.Savings != nil {
		short -= s.Savings.Now
	}
	if short <= 0 {
		return 0
	}
	n := catalog.Cents(max(1, months))
	return plan.Money((short + n - 1) / n)
}

// saving is money that grows by the same amount every month.
type saving struct {
	cash, perMonth catalog.Cents
}

// at returns what has come in by a month, 0 being now.
func (s saving) at(month int) catalog.Cents { return s.cash + catalog.Cents(month)*s.perMonth }

// firstMonth returns the first month in which an amount is there, and whether there is one.
func (s saving) firstMonth(amount catalog.Cents) (int, bool) {
	if s.cash >= amount {
		return 0, true
	}
	if s.perMonth <= 0 {
		return 0, false
	}
	short := amount - s.cash
	return int((short + s.perMonth - 1) / s.perMonth), true
}

// MonthOf returns the first month, 0 being now, in which what is in hand and what is saved reach an amount, and whether
// there is one.
func MonthOf(s *scenarios.Scenario, amount plan.Money) (month int, ok bool) {
	money := saving{cash: s.Sold}
	if s.Savings != nil {
		money.cash += s.Savings.Now
		money.perMonth = s.Savings.PerMonth
	}
	return money.firstMonth(catalog.Cents(amount))
}
