package optimize

import (
	"fmt"
	"slices"
	"strconv"

	"cartwright/catalog"
	"cartwright/optimize/chassis"
	"cartwright/optimize/energy"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
)

// supply is a number of equal inverters that serve the loads, and all that follows from them alone.
type supply struct {
	inv      *catalog.Inverter
	units    int
	needWh   float64 // usable energy the autonomy asks for
	busA     float64 // what all units draw from the bus at its lowest voltage
	drawA    float64 // busA and the dc loads
	chargerA float64 // of all chargers together, at the bus voltage
	main     []option
	feeder   []option
}

// stack is a kind of battery string that fits the bus.
type stack struct {
	bat         *catalog.Battery
	position    int // in the catalogue
	series      int
	usableWh    float64 // of one string
	kg          float64 // of one string, without its cable
	shortA      float64 // of one string
	conductance float64
	dischargeA  float64
	chargeA     float64
	caps        []int // modules the floor of a shelf can hold, by shelf
	most        int   // strings that the shelves, their mass and the maker allow at most
	options     []option
}

// bench is a problem laid out for solving: whatever the catalogue holds that can serve, with its
// options and least costs.
type bench struct {
	s      *scenarios.Scenario
	c      *catalog.Catalog
	rules  wiring.Rules
	demand *energy.Demand
	market *market

	supplies []supply
	stacks   []stack
	groups   [][]int // stacks that may share a bus, in catalogue order

	fixed   []slot // branches, receptacles and needs: the same in every plan
	busbars []option
	casters []option

	fixedBodies []chassis.Body
	fixedKg     float64 // frame and deck items
	spacesTold  bool    // breaker spaces are counted
	dcA         float64 // peak of the loads on the bus itself
	tips        tipping
	reasons     []string // what the catalogue has nothing for
	partial     bool     // the loads\' peaks need not be met yet

	wired wiredOptions
}

// wiredOptions remembers the options of runs, which are the same as long as catalogue, holdings and tax
// are.
type wiredOptions map[wiredRun][]option

// wiredRun is a run and whether heavier options had to be kept.
type wiredRun struct {
	duty  wiring.Duty
	heavy bool
}

// lay lays a problem out, with a part that every plan has to have or "". The options of runs are taken
// from, and put into, wired.
func lay(p Problem, must string, wired wiredOptions) (*bench, error) {
	b, err := newBench(p, wired)
	if err != nil {
		return nil, err
	}
	b.setMust(must)
	b.layAll()
	return b, nil
}

// newBench returns a bench on which nothing is laid out yet.
func newBench(p Problem, wired wiredOptions) (*bench, error) {
	d, err := energy.DemandOf(p.Scenario)
	if err != nil {
		return nil, err
	}
	b := &bench{
		s: p.Scenario, c: p.Catalog, rules: wiring.For(p.Scenario.Rules), demand: d,
		market:      newMarket(p.Scenario, p.Catalog),
		fixedBodies: chassis.FixedBodies(p.Scenario),
		dcA:         d.PeakBusDCW() / p.Scenario.Bus.LowV,
		wired:       wired,
	}
	for _, body := range b.fixedBodies {
		b.fixedKg += body.MassKg
	}
	return b, nil
}

// layAll finds everything that can serve.
func (b *bench) layAll() {
	b.tips = b.whatTips()
	b.laySupplies()
	b.layStacks()
	b.layFixed()
	b.layBusbars()
	b.layCasters()
}

// laySupplies finds the inverters and unit counts that serve the loads.
func (b *bench) laySupplies() {
	s, d := b.s, b.demand
	for i := range b.c.Inverters {
		inv := &b.c.Inverters[i]
		if !energy.InverterFits(s, d, inv) {
			continue
		}
		for u := 1; u <= max(1, inv.MaxUnits) && b.market.part(inv.ID).available(float64(u)); u++ {
			n := float64(u)
			if !b.partial && (n*inv.ContinuousW < d.PeakTotalW() || n*inv.SurgeW < d.SurgeW() ||
				(inv.ACV == "120/240" && n*inv.LegW < d.PeakLegW())) {
				continue
			}
			v := supply{inv: inv, units: u, busA: n * energy.BusA(inv, s.Bus), chargerA: n * inv.ChargerA}
			v.needWh = d.WindowWh(inv.Efficiency, n*inv.IdleW, s.AutonomyH)
			v.drawA = v.busA + b.dcA
			if s.Recharge != nil && v.chargerA <= 0 {
				continue
			}
			var ok bool
			if v.main, ok = b.runOptions(wiring.MainDuty(s, inv)); !ok {
				continue
			}
			if v.feeder, ok = b.runOptions(wiring.FeederDuty(s, inv, u)); !ok {
				continue
			}
			b.supplies = append(b.supplies, v)
		}
	}
	if len(b.supplies) == 0 {
		b.reasons = append(b.reasons, "no inverter of the catalogue, in the number its maker allows, serves the loads' peak, largest start, voltages and recharge with a main and feeder that the rules accept")
	}
}

// runOptions returns the options of a run, and whether there are any; a run that the scenario does not
// list has none and needs none.
func (b *bench) runOptions(d wiring.Duty, listed bool) ([]option, bool) {
	if !listed {
		return nil, true
	}
	run := wiredRun{d, b.tips.heavyBoard}
	options, seen := b.wired[run]
	if !seen {
		var scratch [5]use // a cable and its ends, a ground and its ends, a device
		for _, w := range wiring.Options(b.rules, d, b.c) {
			o := b.market.wire(&d, w, scratch[:])
			if b.market.canHave(&o) {
				options = b.market.keep(options, &o, b.tips.heavyBoard)
			}
		}
		b.wired[run] = options
	}
	return options, len(options) > 0
}

// layStacks finds the batteries that fit the bus and groups those that may share it.
func (b *bench) layStacks() {
	members := map[string][]int{}
	var order []string
	for i := range b.c.Batteries {
		bat := &b.c.Batteries[i]
		series, ok := energy.Fits(b.s.Bus, bat)
		if !ok {
			continue
		}
		n := float64(series)
		k := stack{
			bat: bat, position: i, series: series,
			usableWh: n * energy.UsableWh(bat, b.s.Limits.Reserve), kg: n * bat.MassKg,
			shortA: wiring.ShortCircuitA(bat), conductance: energy.ConductanceS(bat, series),
			dischargeA: bat.MaxDischargeA, chargeA: bat.MaxChargeA,
		}
		modules := 0
		for j := range b.s.Cart.Shelves {
			room := chassis.ShelfCapacity(&b.s.Cart.Shelves[j], bat)
			if limit := b.s.Cart.Shelves[j].MaxMassKg; bat.MassKg > 0 && float64(room)*bat.MassKg > limit {
				room = int(limit/bat.MassKg + 1e-9)
			}
			k.caps = append(k.caps, chassis.ShelfCapacity(&b.s.Cart.Shelves[j], bat))
			modules += room
		}
		k.most = modules / series
		if bat.MaxParallel > 0 {
			k.most = min(k.most, bat.MaxParallel)
		}
		for k.most > 0 && !b.market.part(bat.ID).available(n*float64(k.most)) {
			k.most--
		}
		if k.most < 1 || k.usableWh <= 0 {
			continue
		}
		if k.options, ok = b.runOptions(wiring.StringDuty(b.s, bat)); !ok {
			continue
		}
		group := bat.Group
		if group == "" {
			group = "\x00" + bat.ID // shares a bus only with itself
		}
		if _, seen := members[group]; !seen {
			order = append(order, group)
		}
		members[group] = append(members[group], len(b.stacks))
		b.stacks = append(b.stacks, k)
	}
	for _, g := range order {
		b.groups = append(b.groups, members[g])
	}
	if len(b.stacks) == 0 {
		b.reasons = append(b.reasons, "no battery of the catalogue fits the bus voltage and a shelf with a string cable and protection that the rules accept")
	}
}

// layFixed lists what every plan has: branches, receptacles and needs.
func (b *bench) layFixed() {
	add := func(name string, count int, options []option, nothing string) {
		if count == 0 {
			return
		}
		if len(options) == 0 {
			b.reasons = append(b.reasons, nothing)
		}
		b.fixed = append(b.fixed, slot{name, count, b.market.prune(options, b.tips.heavyBoard)})
	}
	for i := range b.s.Circuits {
		c := &b.s.Circuits[i]
		options, _ := b.runOptions(wiring.BranchDuty(b.s, c))
		add("branch "+c.Name, 1, options, "no cable and device of the catalogue serve circuit \""+c.Name+"\" under the rules")
		if r := c.Receptacle; r != nil {
			add("receptacle "+c.Name, r.Count, b.receptacles(r),
				"the catalogue has no "+r.Role+" for circuit \""+c.Name+"\" of the rating asked for")
		}
	}
	defer b.fitSpaces()
	for i, n := range b.s.Needs {
		add("need "+n.Role+" "+strconv.Itoa(i+1), n.Count, b.sundries(n.Role, atLeast(n.RatingA)),
			"the catalogue has no "+n.Role+" of the rating asked for")
	}
}

// fitSpaces leaves out the load centres that have fewer spaces than the branch breakers take at the least,
// where it is a single one that has them all.
func (b *bench) fitSpaces() {
	poles, centre := 0, -1
	for i := range b.fixed {
		s := &b.fixed[i]
		least := uncountedSpaces
		for j := range s.options {
			least = min(least, s.options[j].poles)
			if s.options[j].spaces > 0 {
				if s.count != 1 || centre >= 0 && centre != i {
					return
				}
				centre = i
			}
		}
		if len(s.options) > 0 {
			poles += s.count * least
		}
	}
	if centre >= 0 {
		s := &b.fixed[centre]
		s.options = slices.DeleteFunc(s.options, func(o option) bool { return o.spaces < poles })
		if len(s.options) == 0 {
			b.reasons = append(b.reasons, fmt.Sprintf("no load centre of the catalogue has spaces for the %d poles of the branch breakers", poles))
		}
	}
}

// receptacles returns what a circuit may end in: the receptacles of exactly the rating asked for, since a
// circuit's outlets are of its own rating (NEC 210.21(B), from memory); where the catalogue has none of
// that rating, those above it.
func (b *bench) receptacles(r *scenarios.Receptacle) []option {
	if catalog.HasRating(b.c.Sundries, r.Role, r.RatingA) {
		return b.sundries(r.Role, func(ratingA float64) bool { return ratingA == r.RatingA })
	}
	return b.sundries(r.Role, atLeast(r.RatingA))
}

// atLeast admits ratings that are not below one.
func atLeast(ratingA float64) func(float64) bool {
	return func(a float64) bool { return a >= ratingA }
}

// sundries returns the sundries of a role whose rating serves.
func (b *bench) sundries(role string, serves func(ratingA float64) bool) []option {
	var options []option
	for i := range b.c.Sundries {
		x := &b.c.Sundries[i]
		if x.Role != role || !serves(x.RatingA) {
			continue
		}
		o := b.market.single(x.ID)
		if role == roleLoadCentre {
			o.spaces = x.Spaces
			if x.Spaces == 0 {
				o.spaces = uncountedSpaces
			} else {
				b.spacesTold = true
			}
		}
		if b.market.canHave(&o) {
			options = append(options, o)
		}
	}
	return options
}

const (
	roleLoadCentre = "load-centre"
	// uncountedSpaces stands for a load centre that states no spaces: more than any cart has circuits.
	uncountedSpaces = 1000
)

// shareBus reports whether strings of two stacks may sit on the same bus.
func (b *bench) shareBus(a, c *stack) bool { return energy.ShareBus(a.bat, c.bat) }

// rechargeA returns the current that puts the energy of the autonomy back into a battery in time.
func (b *bench) rechargeA(v *supply, k *stack) float64 {
	return energy.RechargeA(v.needWh, b.s.Bus.NominalV, b.s.Recharge.WithinH, k.bat.RoundTrip)
}

// layBusbars lists the bus bar pairs, layCasters the caster sets with the cart's number of wheels.
func (b *bench) layBusbars() {
	for i := range b.c.Busbars {
		x := &b.c.Busbars[i]
		o := b.market.single(x.ID)
		o.ratingA, o.studs = x.RatingA, x.Studs
		if b.market.canHave(&o) {
			b.busbars = append(b.busbars, o)
		}
	}
	b.busbars = b.market.prune(b.busbars, b.tips.heavyBoard)
	if len(b.busbars) == 0 {
		b.reasons = append(b.reasons, "the catalogue has no bus bars")
	}
}

func (b *bench) layCasters() {
	for i := range b.c.Casters {
		x := &b.c.Casters[i]
		if x.SetOf != b.s.Cart.Casters {
			continue
		}
		o := b.market.single(x.ID)
		o.carriesKg = x.RatingKg
		if b.market.canHave(&o) {
			b.casters = append(b.casters, o)
		}
	}
	b.casters = b.market.prune(b.casters, b.tips.heavyCasters)
	if len(b.casters) == 0 {
		b.reasons = append(b.reasons, "the catalogue has no set of "+strconv.Itoa(b.s.Cart.Casters)+" casters")
	}
}
