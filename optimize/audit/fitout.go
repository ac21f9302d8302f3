package audit

import (
	"fmt"
	"math"
	"sort"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// installCore takes every string that the owned modules fill, and all inverters of the kind that has the most continuous
// power together; inverters of different kinds do not work in parallel.
func (in *installer) installCore() {
	core := &in.p.Core
	for i := range in.c.Batteries {
		b := &in.c.Batteries[i]
		modules := in.count(b.ID)
		if modules == 0 {
			continue
		}
		series := max(1, int(math.Round(in.s.Bus.NominalV/b.NominalV)))
		strings := modules / series
		if strings == 0 {
			in.lack("%d x %s to make a string of %d", series-modules, b.ID, series)
			continue
		}
		core.Batteries = append(core.Batteries, plan.CoreBattery{Part: b.ID, Strings: strings, Series: series})
		in.use(b.ID, float64(strings*series), stringsOf(strings, series))
	}
	if len(core.Batteries) == 0 {
		in.lack("a battery")
	}
	var best *catalog.Inverter
	power := func(inv *catalog.Inverter) float64 { return float64(in.count(inv.ID)) * inv.ContinuousW }
	for i := range in.c.Inverters {
		if inv := &in.c.Inverters[i]; in.count(inv.ID) > 0 && (best == nil || power(inv) > power(best)) {
			best = inv
		}
	}
	if best == nil {
		in.lack("an inverter")
		if in.s.Run(scenarios.RunMain) != nil || in.s.Run(scenarios.RunFeeder) != nil {
			in.lack("cables and protection of main and feeder, which depend on the inverter")
		}
		return
	}
	core.Inverter = plan.CoreInverter{Part: best.ID, Units: in.count(best.ID)}
	in.use(best.ID, float64(core.Inverter.Units), "inverter")
	for i := range in.c.Inverters {
		if inv := &in.c.Inverters[i]; in.count(inv.ID) > 0 && inv != best {
			in.spare = append(in.spare, inv.ID+" can't work in parallel with "+best.ID)
		}
	}
}

// stringsOf says how modules are connected.
func stringsOf(strings, series int) string {
	text := fmt.Sprintf("%d strings", strings)
	if strings == 1 {
		text = "1 string"
	}
	if series > 1 {
		text += fmt.Sprintf(" of %d in series", series)
	}
	return text
}

// installSingles takes one owned set of casters, if possible with the cart's number of wheels, of the highest rating;
// and the owned pair of bus bars that serves, or else falls short by least.
func (in *installer) installSingles() {
	var set *catalog.Casters
	better := func(x, than *catalog.Casters) bool {
		fits, other := x.SetOf == in.s.Cart.Casters, than.SetOf == in.s.Cart.Casters
		return fits && !other || fits == other && x.RatingKg > than.RatingKg
	}
	for i := range in.c.Casters {
		if x := &in.c.Casters[i]; in.count(x.ID) > 0 && (set == nil || better(x, set)) {
			set = x
		}
	}
	if set == nil {
		in.lack("a set of %d casters", in.s.Cart.Casters)
	} else {
		in.p.Casters.Part = set.ID
		in.use(set.ID, 1, "casters")
	}
	if bars := in.bestBusbars(); bars == nil {
		in.lack("bus bars")
	} else {
		in.use(bars.ID, 1, "bus bars")
	}
}

// bestBusbars returns the owned pair of bus bars that is least short of current and studs, relative to what is needed;
// nil where none is owned.
func (in *installer) bestBusbars() *catalog.Busbar {
	a := in.auditor()
	current, studs := 0.0, a.studs()
	if a.inverter != nil && a.demand != nil {
		current = a.throughA()
	}
	var best *catalog.Busbar
	least := math.Inf(1)
	for i := range in.c.Busbars {
		x := &in.c.Busbars[i]
		short := math.Max(0, current/x.RatingA-1) + math.Max(0, studs/float64(x.Studs)-1)
		if in.count(x.ID) > 0 && short < least {
			best, least = x, short
		}
	}
	return best
}

// installSundries takes as many sundries as are asked for, the most useful first.
func (in *installer) installSundries() {
	var lacking tally
	a := in.auditor()
	for _, d := range wants(in.s, in.stock) {
		wanted := d.Count
		for _, x := range in.serving(a, &d) {
			if take := min(wanted, int(in.left.quantity[article{part: x.ID}])); take > 0 {
				in.use(x.ID, float64(take), d.Role)
				wanted -= take
			}
		}
		if wanted > 0 {
			lacking.add(article{part: d.name()}, float64(wanted))
		}
	}
	for _, x := range lacking.order {
		in.lack("%g x %s", lacking.quantity[x], x.part)
	}
}

// serving returns the catalogue's sundries that serve a want, the most useful first: shunts and disconnects whose
// rating is enough for the bus current; load centres with more spaces (none stated: enough) and of a higher rating;
// of all others the lowest rating.
func (in *installer) serving(a *auditor, d *want) []*catalog.Sundry {
	var found []*catalog.Sundry
	for i := range in.c.Sundries {
		x := &in.c.Sundries[i]
		if x.Role == d.Role && (x.RatingA == d.RatingA || x.RatingA > d.RatingA && !d.exact) {
			found = append(found, x)
		}
	}
	rank := func(x *catalog.Sundry) (first int, then float64) {
		switch {
		case (x.Role == roleShunt || x.Role == roleDisconnect) && a.inverter != nil && plan.AtLeast(x.RatingA, a.throughA()):
			return -1, x.RatingA
		case x.Role == roleLoadCentre && x.Spaces == 0:
			return math.MinInt, -x.RatingA
		case x.Role == roleLoadCentre:
			return -x.Spaces, -x.RatingA
		}
		return 0, x.RatingA
	}
	sort.SliceStable(found, func(i, j int) bool {
		first, then := rank(found[i])
		other, later := rank(found[j])
		return first < other || first == other && then < later
	})
	return found
}
