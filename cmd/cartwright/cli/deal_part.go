package cli

import (
	"errors"
	"strings"

	"cartwright/catalog/problem"
	"cartwright/optimize"
	"cartwright/optimize/next"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// partDeal is a purchase that no plan made: some of a part for a sum that was paid in all.
func partDeal(p question.Problem, id, count, paid string) (deal, error) {
	d, err := scenarios.ReadDeal(p.Catalog, id, count, paid)
	if err != nil {
		return deal{}, asFlags(err)
	}
	e, _ := p.Catalog.Find(id)
	one := next.Purchase{Part: id, Kind: string(e.Kind), Unit: "each", Quantity: d.Count, Line: plan.Money(d.Amount)}
	if d.ByLength {
		one.Unit = "m"
	}
	one.UnitPrice = one.Line.Units() / one.Quantity
	return deal{part: id, buy: []next.Purchase{one}, spend: one.Line, cautions: optimize.Cautions()}, nil
}

// asFlags returns mistakes that stand on the command line, and so have no place in a file.
func asFlags(err error) error {
	var mistakes *problem.Error
	if !errors.As(err, &mistakes) {
		return err
	}
	var wrongs, rights []string
	for _, m := range mistakes.Problems {
		wrongs, rights = append(wrongs, m.Wrong), append(rights, m.Right)
	}
	return wrong(strings.Join(rights, "; "), "%s", strings.Join(wrongs, "; "))
}
