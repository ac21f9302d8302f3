package deal

import (
	"cartwright/optimize"
	"cartwright/optimize/next"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// OfPart is a purchase that no plan made: some of a part for a sum that was paid in all. What is wrong with its words is
// a *problem.Error.
func OfPart(p question.Problem, id, count, paid string) (Deal, error) {
	d, err := scenarios.ReadDeal(p.Catalog, id, count, paid)
	if err != nil {
		return Deal{}, err
	}
	e, _ := p.Catalog.Find(id)
	one := next.Purchase{Part: id, Kind: string(e.Kind), Unit: "each", Quantity: d.Count, Line: plan.Money(d.Amount)}
	if d.ByLength {
		one.Unit = "m"
	}
	one.UnitPrice = one.Line.Units() / one.Quantity
	return Deal{Part: id, Buy: []next.Purchase{one}, Spend: one.Line, Cautions: optimize.Cautions()}, nil
}
