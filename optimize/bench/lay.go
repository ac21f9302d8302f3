package bench

import (
	"context"
	"math"

	"cartwright/catalog"
	"cartwright/optimize/chassis"
	"cartwright/optimize/energy"
	"cartwright/optimize/market"
	"cartwright/optimize/question"
	"cartwright/optimize/wiring"
)

// Lay lays a problem out; must is a part that every plan has to have, or "". Demand and options of runs are taken from
// before where it has them, else added to it. The error is question.ErrUnknown where the context ends first.
func Lay(ctx context.Context, p question.Problem, must string, before *Before) (*Bench, error) {
	if ctx.Err() != nil {
		return nil, question.ErrUnknown
	}
	b, err := New(p, before)
	if err != nil {
		return nil, err
	}
	b.setMust(must)
	if err := b.LayAll(ctx); err != nil {
		return nil, err
	}
	return b, nil
}

// New returns a bench on which nothing is laid out yet.
func New(p question.Problem, before *Before) (*Bench, error) {
	d, err := before.demandOf(p.Scenario)
	if err != nil {
		return nil, err
	}
	b := &Bench{
		Scenario: p.Scenario, Catalog: p.Catalog, Rules: wiring.For(p.Scenario.Rules), Demand: d,
		Market:      market.New(p.Scenario, p.Catalog),
		FixedBodies: chassis.FixedBodies(p.Scenario, p.Catalog),
		DcA:         d.PeakBusDCW() / p.Scenario.Bus.LowV,
		before:      before,
		OwnedWh:     energy.OwnedWh(p.Scenario, p.Catalog),
	}
	for id, n := range p.Stand {
		a := b.Market.Part(id)
		a.Keep = max(a.Keep, n)
	}
	for id, n := range p.Idle { // each changes only its own article, so order does not matter
		b.Market.SetIdle(id, n)
	}
	for _, body := range b.FixedBodies {
		b.FixedKg += body.MassKg
	}
	for i := range p.Scenario.Cart.Shelves {
		b.ShelfKg = append(b.ShelfKg, chassis.ShelfMaxKg(&p.Scenario.Cart.Shelves[i], p.Catalog))
	}
	for i := range p.Scenario.Circuits {
		if p.Scenario.Circuits[i].DC {
			b.DCCircuits++
		}
	}
	return b, nil
}

// LayAll finds everything that can serve; see Lay for its error. It checks the context often, as this may take long; a
// bench half laid is of no use.
func (b *Bench) LayAll(ctx context.Context) error {
	b.Tips = b.whatTips()
	b.Centre, b.mounts = b.needsCentre()
	b.laySupplies(ctx)
	b.layStacks(ctx)
	if ctx.Err() != nil {
		return question.ErrUnknown
	}
	b.layFixed()
	b.layBusbars()
	b.layCasters()
	if ctx.Err() != nil {
		return question.ErrUnknown
	}
	b.countUses()
	b.Market = b.before.marketLike(b.Market)
	if ctx.Err() != nil {
		return question.ErrUnknown
	}
	b.weighSupport()
	b.RoundingCents = b.roundingCents()
	for i := range b.Market.Articles {
		if b.Market.Articles[i].Keep > 0 {
			b.Kept = append(b.Kept, i)
		}
		if b.Market.Articles[i].Have > 0 {
			b.Owned = append(b.Owned, i)
		}
	}
	return nil
}

// laySupplies finds the inverters and unit counts that serve the loads.
func (b *Bench) laySupplies(ctx context.Context) {
	s, conditions := b.Scenario, b.InverterConditions()
	var servings []Serving
	for i := range b.Catalog.Inverters {
		servings = append(servings, Servings(&b.Catalog.Inverters[i])...)
	}
	serves := make([]bool, len(servings))
	each(ctx, len(servings), func(i int) { serves[i] = Unmet(conditions, servings[i]) == nil })
	for i, serving := range servings {
		if ctx.Err() != nil {
			return
		}
		if !serves[i] {
			continue
		}
		inv, n := serving.Inverter, float64(serving.Units)
		v := Supply{Inverter: inv, Units: serving.Units, ChargerA: energy.ChargersA(s, inv, serving.Units),
			NeedWh: b.needWh(inv, serving.Units),
			YearWh: b.Demand.YearWh(inv.Efficiency, n*inv.IdleW, s.UseDays),
		}
		v.DrawA = n*energy.BusA(inv, s.Bus) + b.DcA
		v.PeakA = energy.SurgeA(inv, s.Bus, b.Demand.PeakSurgeVA()) + b.DcA
		v.Feeder, _ = b.RunOptions(wiring.FeederDuty(s, inv))
		b.addSupply(v, nil)
		for _, x := range b.arrays(serving) {
			if ctx.Err() != nil {
				return
			}
			b.addSupply(v, x)
		}
	}
	if len(b.Supplies) == 0 {
		b.Reasons = append(b.Reasons, "no inverter of the catalogue, in the number its maker allows, serves the loads' peak, largest start, voltages and recharge with a main and feeder that the rules accept")
	}
}

// needWh returns the usable energy that the autonomy asks for with a number of inverters.
func (b *Bench) needWh(inv *catalog.Inverter, units int) float64 {
	return b.Demand.WindowWh(inv.Efficiency, float64(units)*inv.IdleW, b.Scenario.AutonomyH)
}

// MostNeedWh returns the most usable energy that the autonomy asks for with any supply.
func (b *Bench) MostNeedWh() float64 {
	most := 0.0
	for i := range b.Supplies {
		most = math.Max(most, b.Supplies[i].NeedWh)
	}
	return most
}

// LeastBusA returns the least bus current in amperes of any supply; +Inf where there is none.
func (b *Bench) LeastBusA() float64 {
	least := math.Inf(1)
	for i := range b.Supplies {
		least = math.Min(least, b.Supplies[i].BusA)
	}
	return least
}

// StringOptions returns the options of the run of one string of a stack with a supply, on a bus of so many strings.
func (b *Bench) StringOptions(supply, stack, strings int) []market.Option {
	d, listed := wiring.StringDuty(b.Scenario, b.Stacks[stack].Battery, b.Supplies[supply].BusA, strings)
	options, _ := b.RunOptions(d, listed)
	return options
}

// layStacks finds the batteries that fit the bus and groups those that may share it.
func (b *Bench) layStacks(ctx context.Context) {
	conditions := b.BatteryConditions()
	members := map[string][]int{}
	var order []string
	fits := make([]bool, len(b.Catalog.Batteries))
	each(ctx, len(fits), func(i int) { fits[i] = Unmet(conditions, b.StandingOf(&b.Catalog.Batteries[i])) == nil })
	for i := range b.Catalog.Batteries {
		if ctx.Err() != nil {
			return
		}
		if !fits[i] {
			continue
		}
		bat := &b.Catalog.Batteries[i]
		f := b.StandingOf(bat)
		n := float64(f.Series)
		k := Stack{
			Battery: bat, Position: i, Article: b.Market.Part(bat.ID).Position, Series: f.Series, Caps: f.Caps, Most: f.Carried / f.Series,
			UsableWh: n * energy.UsableWh(bat, b.Scenario.Limits.Reserve), Kg: n * bat.MassKg,
			ShortA: wiring.ShortCircuitA(bat), Conductance: energy.ConductanceS(bat, f.Series),
			DischargeA: bat.MaxDischargeA, PeakA: energy.PeakDischargeA(bat), ChargeA: bat.MaxChargeA, Columns: f.Columns,
		}
		if bat.MaxParallel > 0 {
			k.Most = min(k.Most, bat.MaxParallel)
		}
		for !b.Market.Part(bat.ID).Available(n * float64(k.Most)) {
			k.Most--
		}
		k.Options, _ = b.RunOptions(wiring.StringDuty(b.Scenario, bat, b.LeastBusA(), 1))
		group := bat.Group
		if group == "" {
			group = "\x00" + bat.ID // shares a bus only with itself
		}
		if _, seen := members[group]; !seen {
			order = append(order, group)
		}
		members[group] = append(members[group], len(b.Stacks))
		b.Stacks = append(b.Stacks, k)
	}
	for _, g := range order {
		for _, at := range members[g] {
			b.Stacks[at].Group = len(b.Groups)
		}
		b.Groups = append(b.Groups, members[g])
	}
	if len(b.Stacks) == 0 {
		b.Reasons = append(b.Reasons, "no battery of the catalogue fits the bus voltage and a shelf with a string cable and protection that the rules accept")
	}
}
