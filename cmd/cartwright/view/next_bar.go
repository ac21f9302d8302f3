package view

import (
	"fmt"

	"cartwright/optimize/plan"
)

// barRecord says why nothing stands on the cart at first.
type barRecord struct {
	Month   int        `json:"month"` // the first with a cart
	Core    coreRecord `json:"core"`  // of the cart that takes least
	Cost    plan.Money `json:"cost"`
	Short   plan.Money `json:"short_now"` // so much more in hand, and it stood now
	Reasons []string   `json:"reasons"`   // why cheaper ones cannot stand
}

func (n Next) bar() *barRecord {
	x := n.Sequence.Bar
	if x == nil {
		return nil
	}
	return &barRecord{x.Until, coreOf(x.Least), x.Cost, x.Short, listed(x.Reasons)}
}

// whyNothing says why nothing stands on the cart at first, and what would change that.
func (n Next) whyNothing() []string {
	x := n.Sequence.Bar
	if x == nil {
		return nil
	}
	currency := n.Scenario.Currency
	what := "the cheapest cart on the way, " + coreText(x.Least) + ","
	if coreText(x.Least) == coreText(n.Sequence.Target.Core) {
		what = "nothing short of this plan makes a safe cart, and it"
	}
	more := fmt.Sprintf("Nothing stands on the cart before month %d: %s costs %s %s.", x.Until, what, money(x.Cost), currency)
	if x.Short > 0 {
		more += fmt.Sprintf(" With %s %s more in hand it could stand now.", money(x.Short), currency)
	}
	words := []string{more}
	for _, r := range x.Reasons {
		words = append(words, "No earlier cart: "+r+".")
	}
	return words
}
