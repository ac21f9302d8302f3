package bench

import (
	"fmt"
	"math"
	"strconv"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
)

// WhyNot says why a part of the catalogue can serve in no plan, whatever the limits: the first condition it does not
// meet. For a cable or device it says so for each kind of run, of the run that it comes nearest to serving. Nothing
// where the part meets all conditions.
func (b *Bench) WhyNot(id string) []string {
	e, known := b.Catalog.Find(id)
	if !known {
		return nil
	}
	switch e.Kind {
	case catalog.KindBattery:
		for i := range b.Catalog.Batteries {
			if bat := &b.Catalog.Batteries[i]; bat.ID == id {
				return why(b.BatteryConditions(), b.StandingOf(bat))
			}
		}
	case catalog.KindInverter:
		for i := range b.Catalog.Inverters {
			if inv := &b.Catalog.Inverters[i]; inv.ID == id {
				return b.whyNoInverter(inv)
			}
		}
	case catalog.KindCable:
		for i := range b.Catalog.Cables {
			if c := &b.Catalog.Cables[i]; c.ID == id {
				return b.whyNoCable(c)
			}
		}
	case catalog.KindDevice:
		for i := range b.Catalog.Devices {
			if d := &b.Catalog.Devices[i]; d.ID == id {
				return b.whyNoDevice(d)
			}
		}
	case catalog.KindSundry:
		for i := range b.Catalog.Sundries {
			if x := &b.Catalog.Sundries[i]; x.ID == id {
				return b.whyNoSundry(x)
			}
		}
	case catalog.KindCasters:
		for i := range b.Catalog.Casters {
			if x := &b.Catalog.Casters[i]; x.ID == id && x.SetOf != b.Scenario.Cart.Casters {
				return []string{fmt.Sprintf("it is a set of %d, the cart has %d wheels (casters.csv, set_of; cart.casters)", x.SetOf, b.Scenario.Cart.Casters)}
			}
		}
	case catalog.KindBusbar:
		return b.whyNoBusbar(id)
	case catalog.KindSolar:
		for i := range b.Catalog.Solar {
			if m := &b.Catalog.Solar[i]; m.ID == id {
				return b.whyNoModule(m)
			}
		}
	}
	return nil
}

// why returns the words of the first condition that is not met, if any.
func why[T any](list []Condition[T], x T) []string {
	if c := Unmet(list, x); c != nil {
		return []string{c.Why(x)}
	}
	return nil
}

// whyNoInverter speaks of the number of units that meets the most conditions.
func (b *Bench) whyNoInverter(inv *catalog.Inverter) []string {
	conditions := b.InverterConditions()
	met := func(v Serving) int {
		n := 0
		for n < len(conditions) && conditions[n].Met(v) {
			n++
		}
		return n
	}
	var best Serving
	most := -1
	for _, v := range Servings(inv) {
		if n := met(v); n >= most {
			best, most = v, n
		}
	}
	return why(conditions, best)
}

// path is the duty that a run of the scenario could have in some plan, and what to call it.
type path struct {
	duty wiring.Duty
	what string
}

// paths lists the duties of the scenario's runs: of strings of the batteries that suit the bus, of mains and feeders of
// all inverters, of the inlet, of all circuits, and of the arrays that inverters take.
func (b *Bench) paths() []path {
	var list []path
	add := func(what string) func(d wiring.Duty, listed bool) {
		return func(d wiring.Duty, listed bool) {
			if listed {
				list = append(list, path{d, what})
			}
		}
	}
	for i := range b.Catalog.Batteries {
		bat := &b.Catalog.Batteries[i]
		if Unmet(b.BusConditions(), b.StandingOf(bat)) == nil {
			add("a string of " + bat.ID)(wiring.StringDuty(b.Scenario, bat, b.LeastBusA(), 1))
		}
	}
	for i := range b.Catalog.Inverters {
		inv := &b.Catalog.Inverters[i]
		add("the main of " + inv.ID)(wiring.MainDuty(b.Scenario, wiring.UnitA(b.Scenario, inv, 0)))
		add("the feeder of " + inv.ID)(wiring.FeederDuty(b.Scenario, inv))
	}
	for i := range b.Scenario.Circuits {
		c := &b.Scenario.Circuits[i]
		add("circuit " + strconv.Quote(c.Name))(wiring.BranchDuty(b.Scenario, c))
	}
	add("the inlet")(wiring.InletDuty(b.Scenario))
	seen := map[wiring.Strung]bool{}
	for i := range b.Supplies {
		if x := b.Supplies[i].Array; x != nil && !seen[b.Strung(x)] {
			seen[b.Strung(x)] = true
			add("the solar run of " + x.Module.ID)(wiring.SolarDuty(b.Scenario, b.Strung(x)))
		}
	}
	return list
}

// nearest names, for each kind of run, the path on which a part fails the fewest checks, and the first of them; nothing
// where it passes all on some path.
func nearest(paths []path, checks func(wiring.Duty) []wiring.Check) []string {
	type miss struct {
		failed int
		words  string
	}
	best := map[scenarios.RunKind]miss{}
	var order []scenarios.RunKind
	for _, p := range paths {
		failed, words := 0, ""
		for _, c := range checks(p.duty) {
			if c.Passed {
				continue
			}
			if failed++; failed == 1 {
				unit := ""
				if c.Unit != "" {
					unit = " " + c.Unit
				}
				words = fmt.Sprintf("for %s its %s is %s%s and would have to be %s%s (%s)", p.what, c.Name, Figure(c.Value), unit, Figure(c.Limit), unit, c.Source)
			}
		}
		if failed == 0 {
			return nil
		}
		known, seen := best[p.duty.Kind]
		if !seen {
			order = append(order, p.duty.Kind)
		}
		if !seen || failed < known.failed {
			best[p.duty.Kind] = miss{failed, words}
		}
	}
	var list []string
	for _, kind := range order {
		list = append(list, best[kind].words)
	}
	return list
}

// whyNoCable looks at a cable without its device, in one or two sets.
func (b *Bench) whyNoCable(c *catalog.Cable) []string {
	if c.GroundOnly {
		return nil
	}
	return nearest(b.paths(), func(d wiring.Duty) []wiring.Check {
		one, two := wiring.CableAlone(b.Rules, d, c, 1), wiring.CableAlone(b.Rules, d, c, 2)
		if failures(two) < failures(one) {
			return two
		}
		return one
	})
}

// whyNoDevice looks at a device without its cable.
func (b *Bench) whyNoDevice(dev *catalog.Device) []string {
	var paths []path
	for _, p := range b.paths() {
		if p.duty.OwnBreakerA <= 0 {
			paths = append(paths, p)
		}
	}
	return nearest(paths, func(d wiring.Duty) []wiring.Check { return wiring.DeviceAlone(b.Rules, d, dev) })
}

func failures(checks []wiring.Check) int {
	n := 0
	for i := range checks {
		if !checks[i].Passed {
			n++
		}
	}
	return n
}

// whyNoSundry says that nothing asks for a sundry's role, or why it does not serve those that do.
func (b *Bench) whyNoSundry(x *catalog.Sundry) []string {
	var asked []string
	for i := range b.Scenario.Circuits {
		c := &b.Scenario.Circuits[i]
		if r := c.Receptacle; r != nil && r.Role == x.Role {
			if b.receptacleServes(r)(x.RatingA) {
				return nil
			}
			asked = append(asked, fmt.Sprintf("circuit %q asks for %s A, it has %s A (sundries.csv, rating_a; circuits.receptacle.rating)", c.Name, Figure(r.RatingA), Figure(x.RatingA)))
		}
	}
	for i := range b.Scenario.Needs {
		if n := &b.Scenario.Needs[i]; n.Role == x.Role && n.Count > 0 {
			words := b.whyNotNeeded(n, x)
			if words == "" {
				return nil
			}
			asked = append(asked, words)
		}
	}
	if len(asked) == 0 {
		return []string{fmt.Sprintf("nothing asks for a part of role %s (needs, circuits.receptacle)", x.Role)}
	}
	return asked
}

// whyNotNeeded says why a sundry of a need's role does not serve it; "" where it does.
func (b *Bench) whyNotNeeded(n *scenarios.Need, x *catalog.Sundry) string {
	centre, poles := b.centre()
	switch {
	case !AtLeast(n.RatingA)(x.RatingA):
		return fmt.Sprintf("needs asks for %s A, it has %s A (sundries.csv, rating_a; needs.rating)", Figure(n.RatingA), Figure(x.RatingA))
	case len(b.Supplies) > 0 && !AtLeast(b.NeedA(n))(x.RatingA):
		return fmt.Sprintf("the smallest inverter that serves and the direct-current loads need a %s of %s A, it has %s A (sundries.csv, rating_a)", x.Role, Figure(b.NeedA(n)), Figure(x.RatingA))
	case x.Role != wiring.RoleLoadCentre || centre == nil:
		return ""
	case x.Spaces > 0 && x.Spaces < poles:
		return fmt.Sprintf("the branch breakers take %d spaces, it has %d (sundries.csv, spaces)", poles, x.Spaces)
	case x.Mount != "" && !b.takesBranches(x.Mount):
		return fmt.Sprintf("it takes breakers of mount %s, and not every circuit can have one (sundries.csv and devices.csv, mount)", x.Mount)
	}
	return ""
}

// leastBarA returns the least rating of bus bars that any supply needs; +Inf where no inverter serves.
func (b *Bench) leastBarA() float64 {
	least := math.Inf(1)
	for i := range b.Supplies {
		least = math.Min(least, wiring.BusbarA(b.Supplies[i].BusA))
	}
	return least
}

// whyNoBusbar says that a pair of bus bars carries too little for every supply, or has too few studs for one inverter
// and one string.
func (b *Bench) whyNoBusbar(id string) []string {
	for i := range b.Catalog.Busbars {
		x := &b.Catalog.Busbars[i]
		if x.ID != id || len(b.Supplies) == 0 {
			continue
		}
		least, studs := b.leastBarA(), wiring.BusbarStuds(1, 1, b.DCCircuits)
		if !plan.AtLeast(x.RatingA, least) {
			return []string{fmt.Sprintf("the smallest inverter that serves and the direct-current loads need bars of %s A, these have %s A (busbars.csv, rating_a)", Figure(least), Figure(x.RatingA))}
		}
		if x.Studs < studs {
			return []string{fmt.Sprintf("a string and an inverter take %d studs, these have %d (busbars.csv, studs)", studs, x.Studs)}
		}
	}
	return nil
}
