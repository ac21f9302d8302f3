package audit

import (
	"fmt"
	"math"

	"cartwright/catalog"
	"cartwright/optimize/plan"
)

const (
	ruleLines      = "bill lines"
	ruleQuantities = "bill quantities"
	ruleEnough     = "bill covers"
	ruleOwned      = "owned parts used"
	ruleKept       = "owned parts kept"
	ruleSold       = "owned parts sold"
	ruleCredits    = "line credits"
)

var billRules = []Rule{
	{ruleLines, "", "cables, conduits and sections in metres, all else in whole pieces; no line twice; no line has more owned than installed", practice},
	{ruleQuantities, "", "installed is what core, runs and casters call for, part by part: pieces, metres, crimped ends", fromParts},
	{ruleEnough, "", "owned and bought together cover what is installed, part by part", "arithmetic"},
	{ruleOwned, "", "no more owned parts are used than there are", fromScenario},
	{ruleKept, "", "of a part that is to be kept, at least as many are on the cart as are to be kept", fromScenario},
	{ruleSold, "", "only what has a selling price is sold, and what is used is not sold too", fromScenario},
	{ruleCredits, "", "credit of a line = sold * selling price, to the cent", "arithmetic"},
}

// of returns the article of a line of the bill.
func of(l *plan.Line) article { return article{l.Part, isEnd(l.Kind)} }

// sumLines adds up one column of the bill by article.
func (a *auditor) sumLines(column func(l *plan.Line) float64) *tally {
	var t tally
	for i := range a.p.Bill {
		t.add(of(&a.p.Bill[i]), column(&a.p.Bill[i]))
	}
	return &t
}

// unitOf returns the unit an article is counted in.
func (a *auditor) unitOf(x article) string {
	if a.stock.byLength(x.part) && !x.ends {
		return "m"
	}
	return "each"
}

// bill checks whether the bill's quantities are those of the plan, line by line and part by part.
func (a *auditor) bill() {
	a.lines()
	installed := a.sumLines(func(l *plan.Line) float64 { return l.Quantity })
	used := a.sumLines(func(l *plan.Line) float64 { return l.Have })
	bought := a.sumLines(func(l *plan.Line) float64 { return l.Buy })
	sold := a.sumLines(func(l *plan.Line) float64 { return l.Sell })
	a.quantities(installed)
	for _, x := range installed.order {
		have, needed := used.quantity[x]+bought.quantity[x], installed.quantity[x]
		a.tell(ruleEnough, have, needed, have >= needed || a.unitOf(x) == "m" && tells(have, needed), have-needed, x.name())
		owned := a.owned(x)
		a.atMost(ruleOwned, used.quantity[x], owned, x.name())
		detail := x.name()
		if sold.quantity[x] > 0 && a.sellsFor(x) < 0 {
			owned, detail = used.quantity[x], x.name()+" has no selling price"
		}
		a.atMost(ruleSold, used.quantity[x]+sold.quantity[x], math.Max(owned, used.quantity[x]), detail)
	}
	a.kept(installed)
	for i := range a.p.Bill {
		l := &a.p.Bill[i]
		credit := l.Sell * math.Max(0, a.sellsFor(of(l)))
		a.cents(ruleCredits, l.Credit, credit, of(l).name())
	}
}

// kept checks whether what is to be kept stands on the cart.
func (a *auditor) kept(installed *tally) {
	var keep tally
	for _, h := range a.s.Have {
		if h.Keep {
			keep.add(article{part: h.PartID}, h.Count)
		}
	}
	for _, x := range keep.order {
		a.atLeast(ruleKept, installed.quantity[x], keep.quantity[x], x.name())
	}
}

// lines checks whether each line of the bill is well formed.
func (a *auditor) lines() {
	var faults []string
	type place struct {
		article
		vendor string
		price  float64
	}
	seen := map[place]bool{}
	for i := range a.p.Bill {
		l := &a.p.Bill[i]
		x := of(l)
		fault := func(what string) { faults = append(faults, x.name()+" "+what) }
		if unit := a.unitOf(x); l.Unit != unit {
			fault(fmt.Sprintf("is counted in %q, not %q", l.Unit, unit))
		}
		if a.unitOf(x) == "each" && !(whole(l.Quantity) && whole(l.Have) && whole(l.Buy) && whole(l.Sell)) {
			fault("is not in whole pieces")
		}
		if l.Have > l.Quantity*(1+sixDigits) {
			fault("has more owned than installed")
		}
		at := place{x, l.Vendor, l.UnitPrice}
		if seen[at] {
			fault("is listed twice")
		}
		seen[at] = true
	}
	a.none(ruleLines, faults)
}

func whole(x float64) bool { return x == math.Trunc(x) }

// quantities checks whether what is installed is what the plan calls for. Bus bars and sundries have
// checks of their own.
func (a *auditor) quantities(installed *tally) {
	required := a.required()
	check := func(x article) {
		have, needed := installed.quantity[x], required.quantity[x]
		same := have == needed || a.unitOf(x) == "m" && tells(have, needed)
		a.tell(ruleQuantities, have, needed, same, -math.Abs(have-needed), x.name())
	}
	for _, x := range required.order {
		if !a.free(x) || installed.quantity[x] > 0 {
			check(x)
		}
	}
	for _, x := range installed.order {
		kind := a.stock.kinds[x.part]
		if _, called := required.quantity[x]; !called && kind != catalog.KindBusbar && kind != catalog.KindSundry {
			check(x)
		}
	}
}

// free reports whether an article is ends that cost nothing: a bill may leave them out.
func (a *auditor) free(x article) bool {
	price, known := a.stock.ends[x.part]
	return x.ends && known && price == 0
}

// owned returns how much of an article is owned.
func (a *auditor) owned(x article) float64 {
	sum := 0.0
	for _, h := range a.s.Have {
		switch {
		case h.PartID != x.part:
		case x.ends:
			sum += float64(h.Ends)
		default:
			sum += h.Count
		}
	}
	return sum
}

// sellsFor returns the selling price in cents of one of an article; negative where it is not for sale. Where a part
// is listed under have more than once, the last that is for sale sets the price.
func (a *auditor) sellsFor(x article) float64 {
	price := -1.0
	for _, h := range a.s.Have {
		switch {
		case h.PartID != x.part || x.ends || h.Sell == nil:
		case a.unitOf(x) == "m":
			price = h.SellCentsPerM
		default:
			price = float64(*h.Sell)
		}
	}
	return price
}
