package cli

import (
	"math"
	"strconv"
	"strings"

	"cartwright/catalog"
	"cartwright/catalog/quantity"
	"cartwright/optimize"
	"cartwright/optimize/next"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
)

// partDeal is a purchase that no plan made: some of a part for a sum that was paid in all.
func partDeal(p question.Problem, id, count, paid string) (deal, error) {
	if err := knownPart(p, id); err != nil {
		return deal{}, err
	}
	e, _ := p.Catalog.Find(id)
	one := next.Purchase{Part: id, Kind: string(e.Kind), Unit: "each"}
	switch e.Kind {
	case catalog.KindCable, catalog.KindConduit, catalog.KindSection:
		metres, err := quantity.Parse(count, quantity.Length)
		if err != nil || metres <= 0 {
			return deal{}, wrong("write a length with its unit, for example --count \"12 ft\"", "--count is %q, but %s is bought by length", count, id)
		}
		one.Quantity, one.Unit = metres, "m"
	default:
		n, err := strconv.Atoi(count)
		if err != nil || n < 1 || n > mostPieces {
			return deal{}, wrong("write for example --count 2", "--count is %q, but has to be a whole number from 1 to %d", count, mostPieces)
		}
		one.Quantity = float64(n)
	}
	sum, err := amount(paid)
	if err != nil {
		return deal{}, err
	}
	one.Line, one.UnitPrice = sum, sum.Units()/one.Quantity
	return deal{part: id, buy: []next.Purchase{one}, spend: sum, cautions: optimize.Cautions()}, nil
}

// mostPieces and mostPaid are beyond anything that a cart has or costs: the bounds of a scenario's file.
const (
	mostPieces = 10_000
	mostPaid   = 1e9
)

// amount reads a sum of money, in whole cents.
func amount(text string) (plan.Money, error) {
	v, err := strconv.ParseFloat(strings.TrimSpace(text), 64)
	cents := math.Round(v * 100)
	if err != nil || !(v >= 0 && v <= mostPaid) || math.Abs(cents-v*100) > 1e-4 {
		return 0, wrong("write for example --paid 1190.50", "--paid is %q, but has to be an amount of money with at most two decimals", text)
	}
	return plan.Money(cents), nil
}
