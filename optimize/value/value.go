// Package value says for every battery what its energy costs on a cart and how many of it fit.
package value

import (
	"context"
	"slices"
	"time"

	"cartwright/catalog"
	"cartwright/optimize/audit"
	"cartwright/optimize/bench"
	"cartwright/optimize/energy"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// Table says for every battery of a catalogue what its energy costs on a scenario's cart, in the order
// of the catalogue.
type Table struct {
	Batteries []BatteryValue
	Complete  bool // every battery was counted; else it was stopped before that
	Misfits   []Misfit
	// Beside is, with sun, the best plan: the costs of a lifetime kWh are for a bank with its inverters and array. Nil
	// without sun, and where there is no plan.
	Beside *plan.Plan
	// Reasons says what the catalogue lacks, so that no cart can be built from it at all.
	Reasons []string
}

// BatteryValue is what a battery that fits the bus costs, gives and takes up. All but Landed, CostPerExtraKWh and Count
// is for one module.
//
// The cost of a kWh is given in three ways. The price over the usable energy is common practice, no source.
// The landed price includes with one string what it takes to wire it to the bus, likewise no source. The price
// over the lifetime energy is the throughput cost, cost / (quantity * Ah * V * DoD * cycle life), of North
// American Clean Energy, "Measuring the true costs", part 2; confirmed in 1 text. The fuller definition, the
// levelised cost of storage, is discounted lifetime cost over discounted lifetime energy, with replacement,
// operation, charging and the end of life: Schmidt, Melchior, Hawkes and Staffell, Joule 3 (2019) 81-100. It
// is not computed: for a cart it is not known what charging costs and how often it will be cycled.
type BatteryValue struct {
	Part      string
	Name      string
	Chemistry string
	Series    int // modules in a string

	// Price is the least that buys one module, before shipping and tax: the best offer for one, or its own
	// price where there is no offer. Vendor sells it at that price, AsOf is the day of the price.
	Price  plan.Money
	Vendor string
	AsOf   time.Time

	UsableKWh        float64
	CostPerUsableKWh float64
	// CostPerLifetimeKWh is the throughput cost; 0 where no life is stated. With sun it is for a bank with exactly the
	// energy that the autonomy needs, cycled as with the best plan's array, until its cycles or its years end; 0 where
	// there is no plan.
	CostPerLifetimeKWh float64
	KgPerUsableKWh     float64
	LitresPerUsableKWh float64 // of its outer volume

	Landed *Landed // nil: no cable and device of the catalogue serve a string
	// CostPerExtraKWh is what the landed string costs for each usable kWh that it gives beyond the batteries owned
	// today, together with those it shares a bus with; 0 where it gives none.
	CostPerExtraKWh float64
	Count           Count

	Owned float64 // modules
	// ForSale is what an owned module may be sold for; nil: it is not for sale.
	ForSale *plan.Money
}

// Misfit is a battery that does not fit the bus, and why.
type Misfit struct {
	Part   string
	Reason string
}

// Find works out for every battery of the catalogue what its energy costs and how many of it the cart takes.
// Owned ones are marked, but prices are those of buying. Where the context ends, some batteries are not counted. If the
// cart of a count fails its audit, the error is a *question.DisagreementError.
func Find(ctx context.Context, p question.Problem) (*Table, error) {
	bare := *p.Scenario
	bare.Have = nil
	b, err := bench.New(question.Problem{Scenario: &bare, Catalog: p.Catalog}, &bench.Before{})
	if err != nil {
		return nil, err
	}
	if err := b.LayAll(ctx); err != nil {
		return nil, err
	}
	life, beside, err := cyclesOf(ctx, p, b)
	if err != nil {
		return nil, err
	}
	out := &Table{Batteries: []BatteryValue{}, Misfits: []Misfit{}, Beside: beside}
	var fitting []int
	for i := range p.Catalog.Batteries {
		bat := &p.Catalog.Batteries[i]
		f := b.StandingOf(bat)
		if c := bench.Unmet(b.BusConditions(), f); c != nil {
			out.Misfits = append(out.Misfits, Misfit{bat.ID, c.Why(f)})
			continue
		}
		if ctx.Err() != nil {
			return nil, question.ErrUnknown
		}
		fitting = append(fitting, i)
		out.Batteries = append(out.Batteries, valueOf(ctx, b, life, bat, f.Series, p.Scenario.Have))
	}
	if ctx.Err() != nil {
		return nil, question.ErrUnknown
	}
	counts, reasons, err := countAll(ctx, p, fitting)
	if err != nil {
		return nil, err
	}
	out.Complete = true
	ownedWh, auditor := energy.OwnedWh(p.Scenario, p.Catalog), audit.For(p.Scenario, p.Catalog)
	for i := range out.Batteries {
		v := &out.Batteries[i]
		v.Count = counts[i]
		out.Complete = out.Complete && v.Count.Known
		if v.Landed != nil {
			more := *p.Scenario
			more.Have = append(slices.Clone(more.Have), scenarios.Holding{PartID: v.Part, Count: float64(v.Series)})
			v.CostPerExtraKWh = energy.CostPerExtraKWh(v.Landed.Cost.Units(), energy.OwnedWh(&more, p.Catalog), ownedWh)
			check := auditor.Extra(v.CostPerExtraKWh, v.Landed.Cost.Units(), auditor.OwnedWh(more.Have))
			if err := question.Agreed(plan.Plan{}, check); err != nil {
				return nil, err
			}
		}
	}
	out.Reasons = reasons
	return out, nil
}

// valueOf works out everything about a battery except Count and CostPerExtraKWh.
func valueOf(ctx context.Context, b *bench.Bench, life *cycles, bat *catalog.Battery, series int, have []scenarios.Holding) BatteryValue {
	v := BatteryValue{Part: bat.ID, Name: bat.Name, Chemistry: bat.Chemistry, Series: series, AsOf: bat.AsOf}
	a := b.Market.Part(bat.ID)
	one := purchases(a, 1)[0]
	for _, other := range purchases(a, 1)[1:] {
		if other.cents() < one.cents() {
			one = other
		}
	}
	v.Price, v.Vendor = plan.Money(one.cents()), one.vendor
	if one.offer != nil {
		v.AsOf = one.offer.AsOf
	}
	usableWh := energy.UsableWh(bat, b.Scenario.Limits.Reserve)
	v.UsableKWh = usableWh / wattHoursPerKWh
	v.CostPerUsableKWh = energy.CostPerKWh(catalog.Cents(v.Price), usableWh)
	if wh := life.lifetimeWh(bat, series); wh > 0 {
		v.CostPerLifetimeKWh = energy.CostPerKWh(catalog.Cents(v.Price), wh)
	}
	v.KgPerUsableKWh = bat.MassKg / v.UsableKWh
	v.LitresPerUsableKWh = bat.LengthM * bat.WidthM * bat.HeightM * litresPerCubicMetre / v.UsableKWh
	v.Landed = land(ctx, b, bat, series)
	for _, h := range have {
		if h.PartID != bat.ID {
			continue
		}
		v.Owned += h.Count
		if h.Sell != nil {
			price := plan.Money(*h.Sell)
			v.ForSale = &price
		}
	}
	return v
}

// Conversions by definition.
const (
	wattHoursPerKWh     = 1000.0
	litresPerCubicMetre = 1000.0
)
