package view

import (
	"fmt"
	"math"

	"cartwright/catalog"
	"cartwright/optimize/plan"
)

// target names the plan that is saved for.
func (n Next) target() string {
	if rank := n.Sequence.Target.Rank; rank > 1 {
		return fmt.Sprintf("plan %d", rank)
	}
	return "the cheapest plan"
}

// offRecord is something owned that the target has no place for.
type offRecord struct {
	Part  string  `json:"part"`
	Count float64 `json:"count"`
}

// off lists the owned batteries, inverters and solar modules that the target does not use.
func (n Next) off() []offRecord {
	list := []offRecord{}
	if n.Sequence.Target == nil {
		return list
	}
	core := n.Sequence.Target.Core
	used := map[string]float64{core.Inverter.Part: float64(core.Inverter.Units)}
	for _, b := range core.Batteries {
		used[b.Part] = float64(b.Strings * b.Series)
	}
	for _, x := range core.Solar {
		used[x.Part] = float64(x.Series * x.Parallel * x.Inputs)
	}
	for _, h := range n.Scenario.Have {
		e, _ := n.Catalog.Find(h.PartID)
		switch e.Kind {
		case catalog.KindBattery, catalog.KindInverter, catalog.KindSolar:
			stays := math.Min(h.Count, used[h.PartID])
			used[h.PartID] -= stays
			if h.Count > stays {
				list = append(list, offRecord{h.PartID, h.Count - stays})
			}
		}
	}
	return list
}

// takenOff says which owned parts do not stand on the target's cart.
func (n Next) takenOff() []string {
	var words []string
	for _, o := range n.off() {
		fate := ""
		for _, l := range n.Sequence.Target.Bill {
			if l.Part == o.Part && l.Sell > 0 {
				fate = ", and is sold"
			}
		}
		words = append(words, fmt.Sprintf("Off the cart: %s x %s, owned, has no place in this plan%s.", short(o.Count, 0), o.Part, fate))
	}
	return words
}

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
