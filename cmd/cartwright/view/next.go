package view

import (
	"fmt"

	"cartwright/catalog"
	"cartwright/optimize/next"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// Next shows a purchase sequence: the next purchase on top, then month by month what is bought and sold and
// what stands on the cart, then each month's shopping list.
type Next struct {
	Scenario *scenarios.Scenario
	Catalog  *catalog.Catalog
	Sequence *next.Sequence
	// PerMonth is what would have to be saved every month to reach the target within the horizon.
	PerMonth plan.Money
	// Show is a month whose cart is shown in full, as it has to be wired then; -1 for none. With it CSV
	// holds that month's shopping list, otherwise the month table.
	Show     int
	Cautions []string
	// Notices says which batteries never share a bus only because the catalogue states no common group.
	Notices []string
}

// The outcomes of looking for a purchase sequence, as JSON names them.
const (
	reachedStatus    = "reached"
	beyondStatus     = "beyond"     // reached after the horizon
	neverStatus      = "never"      // the money is never there
	impossibleStatus = "impossible" // no plan meets the limits at any price
)

// status names the outcome.
func (n Next) status() string {
	switch q := n.Sequence; {
	case q.Target == nil:
		return impossibleStatus
	case q.Never:
		return neverStatus
	case !q.Within:
		return beyondStatus
	}
	return reachedStatus
}

// months returns the months that are shown: up to the target or to the horizon, whichever is sooner.
func (n Next) months() []next.Month {
	q := n.Sequence
	return q.Months[:min(len(q.Months), q.Horizon+1)]
}

// sheet gives the answer, the months, their shopping lists and the cautions.
func (n Next) sheet() sheet {
	s := sheet{n.answer()}
	s[0].prose = append(s[0].prose, n.lacks()...)
	s[0].bullets = append(append(append(s[0].bullets, n.takenOff()...), n.aside()...), n.whyNothing()...)
	s = noticed(s, n.Notices)
	months := n.months()
	if len(months) > 0 {
		s = append(s, n.table())
		for i := range months {
			if m := &months[i]; len(m.Buy)+len(m.Sell) > 0 {
				s = append(s, n.list(m))
			}
		}
		s = append(s, n.cart()...)
	} else if !n.Sequence.Complete {
		s = append(s, n.unordered())
	}
	return append(s, cautions(n.Cautions)...)
}

// answer says in one line what to buy next, when and for how much, or why there is no answer.
func (n Next) answer() section {
	q, currency := n.Sequence, n.Scenario.Currency
	var s section
	switch n.status() {
	case impossibleStatus:
		return section{title: "No plan for " + n.Scenario.Name + " meets its limits, whatever it costs."}
	case neverStatus:
		s.title = fmt.Sprintf("Never: %s for %s costs %s %s, and so much is not saved in fifty years.",
			n.target(), n.Scenario.Name, money(q.Target.Cost), currency)
	case beyondStatus:
		s.title = fmt.Sprintf("Not within %s: %s for %s costs %s %s, and so much is saved by month %d.",
			count(q.Horizon, "month", "months"), n.target(), n.Scenario.Name, money(q.Target.Cost), currency, q.Reached)
	default:
		met := when(q.Reached)
		if !q.Target.Proven && q.Reached > 0 {
			met += " at the latest"
		}
		s.prose = []string{fmt.Sprintf("All limits of %s are met %s, with %s.", n.Scenario.Name, met, coreText(q.Target.Core))}
		if s.title = n.next(); len(q.Months) == 0 {
			s.title = fmt.Sprintf("By month %d you have the %s %s that %s for %s costs.",
				q.Reached, money(q.Target.Cost), currency, n.target(), n.Scenario.Name)
		}
		return s
	}
	now := plan.Money(n.Scenario.Sold)
	var each plan.Money
	if v := n.Scenario.Savings; v != nil {
		now, each = now+plan.Money(v.Now), plan.Money(v.PerMonth)
	}
	more := fmt.Sprintf("%s more come every month. With %s more a month, %s in all,", money(each), money(n.PerMonth-each), money(n.PerMonth))
	if each == 0 {
		more = fmt.Sprintf("nothing more comes. With %s a month", money(n.PerMonth))
	}
	s.prose = []string{fmt.Sprintf("You have %s %s, and %s it would be month %d.", money(now), currency, more, q.Horizon)}
	return s
}

// when names a month.
func when(month int) string {
	if month == 0 {
		return "now"
	}
	return fmt.Sprintf("in month %d", month)
}

// firstPurchase returns the first month in which something is bought, nil where nothing ever is.
func (n Next) firstPurchase() *next.Month {
	for i := range n.Sequence.Months {
		if m := &n.Sequence.Months[i]; len(m.Buy) > 0 {
			return m
		}
	}
	return nil
}

// spent returns the money for all that is bought in a month.
func spent(m *next.Month) plan.Money {
	sum := m.Shipping + m.Tax
	for _, b := range m.Buy {
		sum += b.Line
	}
	return sum
}

// next says what to buy next, and for how much.
func (n Next) next() string {
	m := n.firstPurchase()
	if m == nil {
		return "Buy nothing: what is owned makes a cart that meets all limits."
	}
	return fmt.Sprintf("Buy %s: %s for %s %s.", when(m.Month), n.units().purchases(m.Buy), money(spent(m)), n.Scenario.Currency)
}

// units returns the units the answer is told in.
func (n Next) units() units { return unitsOf(n.Scenario) }
