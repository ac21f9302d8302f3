package view

import (
	"fmt"
	"strings"

	"cartwright/optimize/next"
	"cartwright/optimize/plan"
)

// headline answers first: what to buy and for how much, what it gives and what limits it.
func (p Plans) headline(one *plan.Plan) section {
	return section{title: p.buys(one), prose: []string{p.gives(one)}}
}

// buys says in a sentence what a plan buys, and what is to pay.
func (p Plans) buys(one *plan.Plan) string {
	var bought []next.Purchase
	for _, l := range one.Bill {
		if l.Buy > 0 {
			bought = append(bought, next.Purchase{Part: l.Part, Kind: l.Kind, Quantity: l.Buy, Unit: l.Unit, Line: l.Line})
		}
	}
	currency := p.Scenario.Currency
	sells := ""
	if one.Credit != 0 {
		sells = " net"
	}
	switch {
	case len(bought) == 0 && one.Credit == 0:
		return "Buy nothing: what is owned makes this cart."
	case len(bought) == 0:
		return fmt.Sprintf("Buy nothing: what is owned makes this cart, and what is sold brings %s %s.", money(one.Credit), currency)
	case one.Cost < 0:
		return fmt.Sprintf("Buy %s; what is sold brings %s %s more than that costs.", p.units().purchases(bought), money(-one.Cost), currency)
	}
	return fmt.Sprintf("Buy %s for %s %s%s.", p.units().purchases(bought), money(one.Cost), currency, sells)
}

// gives says in a sentence what a plan gives, and what limits it.
func (p Plans) gives(one *plan.Plan) string {
	u := p.units()
	text := fmt.Sprintf("%s kWh usable, lasts %s h, weighs %s", fixed(one.UsableKWh, 2), fixed(one.AutonomyH, 1), u.with(one.MassKg, "kg"))
	if y := one.Year; y != nil {
		text += fmt.Sprintf("; the sun serves %s %% of the year", percent(y.Served))
	}
	var names []string
	for _, l := range binding(one.Limits) {
		names = append(names, l.Name)
	}
	switch {
	case len(names) == 0:
		text += "; no limit binds."
	case len(names) > mostNamed:
		text += fmt.Sprintf("; limited by %s and %d more.", strings.Join(names[:mostNamed], ", "), len(names)-mostNamed)
	default:
		text += "; limited by " + strings.Join(names, ", ") + "."
	}
	if !one.Proven {
		text += " NOT PROVEN the best: a better one may exist."
	}
	return text
}

// mostNamed is how many binding limits the headline names.
const mostNamed = 3
