package audit

import (
	"fmt"
	"math"

	"cartwright/catalog"
	"cartwright/optimize/plan"
)

const (
	rulePrices = "unit prices"
	ruleAmount = "line amounts"
)

var priceRules = []Rule{
	{rulePrices, "", "the price is the part's own, or that of one of its offers if it has any, with at least its min_qty bought", "the catalogue"},
	{ruleAmount, "", "line = bought * unit price, to the cent", "arithmetic"},
}

// pricing is what a line of the bill may cost by the catalogue.
type pricing struct {
	cents    float64 // of one, unrounded
	shipping catalog.Cents
	vendor   string
}

// prices checks whether each bought line has a price from the catalogue, and the right amount.
func (a *auditor) prices() {
	for i := range a.p.Bill {
		l := &a.p.Bill[i]
		cents := l.UnitPrice * 100
		if l.Buy > 0 {
			price, fault := a.priceOf(l)
			detail := of(l).name()
			if fault != "" {
				detail += ": " + fault
			} else {
				cents = price.cents
			}
			a.tell(rulePrices, l.UnitPrice, price.cents/100, fault == "", -math.Abs(cents-price.cents), detail)
		}
		a.cents(ruleAmount, l.Line, l.Buy*cents, of(l).name())
	}
}

// priceOf returns the catalogue's price of a bought line; a fault says why there is none. Where several
// offers of a vendor cost the same, the one with the least shipping counts.
func (a *auditor) priceOf(l *plan.Line) (pricing, string) {
	part := a.stock.parts[l.Part]
	if part == nil {
		return pricing{}, "no such part"
	}
	end, hasEnds := a.stock.ends[l.Part]
	offers := a.stock.offers[l.Part]
	if isEnd(l.Kind) {
		offers = nil // vendors offer by the metre; an end costs what the part's row says
	}
	if len(offers) == 0 {
		own := pricing{cents: float64(part.Price), vendor: part.Vendor}
		switch {
		case isEnd(l.Kind) && hasEnds:
			own.cents = float64(end)
			if l.Vendor == "" {
				own.vendor = "" // anybody may crimp an end
			}
		case a.stock.byLength(l.Part):
			own.cents = a.stock.metres[l.Part]
		}
		return own, a.mismatch(l, own)
	}
	return a.offered(l, offers, a.stock.byLength(l.Part))
}

// offered returns the offer a line was bought at.
func (a *auditor) offered(l *plan.Line, offers []catalog.Offer, byMetre bool) (pricing, string) {
	var best pricing
	fault := fmt.Sprintf("no offer of vendor %q", l.Vendor)
	for _, o := range offers {
		p := pricing{cents: float64(o.Price), shipping: o.Shipping, vendor: o.Vendor}
		if byMetre {
			p.cents = o.CentsPerM
		}
		if o.Vendor != l.Vendor {
			continue
		}
		wrong := a.mismatch(l, p)
		if bought := a.boughtAt(l); wrong == "" && bought < o.MinQty-sixDigits*o.MinQty {
			wrong = fmt.Sprintf("%g bought, the offer is for %g or more", bought, o.MinQty)
		}
		if wrong == "" && (fault != "" || p.shipping < best.shipping) {
			best, fault = p, ""
		} else if fault != "" {
			best, fault = p, wrong
		}
	}
	return best, fault
}

// boughtAt returns how much is bought of a line's article at its vendor and price.
func (a *auditor) boughtAt(l *plan.Line) float64 {
	sum := 0.0
	for i := range a.p.Bill {
		other := &a.p.Bill[i]
		if of(other) == of(l) && other.Vendor == l.Vendor && other.UnitPrice == l.UnitPrice {
			sum += other.Buy
		}
	}
	return sum
}

// mismatch says how a line differs from a price.
func (a *auditor) mismatch(l *plan.Line, p pricing) string {
	switch {
	case l.Vendor != p.vendor:
		return fmt.Sprintf("vendor %q, not %q", l.Vendor, p.vendor)
	case !tells(l.UnitPrice*100, p.cents):
		return "another price"
	}
	return ""
}

// cents notes the check that whole cents are the rounding of an amount in cents.
func (a *auditor) cents(rule string, stated plan.Money, amount float64, detail string) {
	a.tell(rule, stated.Units(), amount/100, rounds(float64(stated), amount), -math.Abs(float64(stated)-amount), detail)
}
