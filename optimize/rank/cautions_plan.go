package rank

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"cartwright/catalog"
	"cartwright/optimize/bench"
	"cartwright/optimize/chassis"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// planCautions returns what to keep in mind when plans are wired, charged and rolled, each where it applies to some
// plan. They are common practice, no source, except those that name one.
func planCautions(b *bench.Bench, plans []plan.Plan) []string {
	if len(plans) == 0 {
		return nil
	}
	var out []string
	add := func(applies bool, words string) {
		if applies {
			out = append(out, words)
		}
	}
	some := func(is func(p *plan.Plan) bool) bool {
		return slices.ContainsFunc(plans, func(p plan.Plan) bool { return is(&p) })
	}
	add(some(func(p *plan.Plan) bool { return len(p.Core.Batteries) > 1 }), "Strings of different makes or ages drift: measure each one's share yearly.")
	add(some(func(p *plan.Plan) bool { return overcharges(b, p) }), "The charger gives more than the batteries of some plan take: set it to at most what the limit \"recharge, batteries\" says.")
	add(some(func(p *plan.Plan) bool { return casters(b, p).Swivel > 0 }), "A swivelling wheel that trails inward takes some of the stated tilt.")
	add(some(func(p *plan.Plan) bool { return !plan.AtLeast(casters(b, p).RatingKg, chassis.TwoCarryKg(p.MassKg)) }), "On an uneven floor two opposite wheels may carry a stiff cart alone: in some plan each is rated below half of the mass.")
	add(b.Scenario.Sun != nil && b.Scenario.Sun.OnCart && some(func(p *plan.Plan) bool { return len(p.Core.Solar) > 0 }), "Wind on the solar modules can tip the cart or roll it away, and the stated tilt does not count it: block the wheels and tie the cart down, or take the modules off.")
	for _, words := range []string{overSill(b, plans), unknownPolarity(b, plans)} {
		add(words != "", words)
	}
	run := b.Scenario.Run(scenarios.RunString)
	add(run != nil && plan.AtMost(run.LengthM, 3) && some(func(p *plan.Plan) bool { return stringsOf(p) >= 3 }), "From three strings up the others feed a string's cable from the bus: protect it from damage and keep it clear of what burns (NEC 240.21(B)(1), IEC 60364-4-43, 433.2.2).")
	for _, dc := range []bool{false, true} {
		add(loadsWithoutCircuits(b.Scenario, dc), uncircuited(dc))
	}
	return out
}

// stringsOf returns how many strings a plan has.
func stringsOf(p *plan.Plan) int {
	n := 0
	for _, b := range p.Core.Batteries {
		n += b.Strings
	}
	return n
}

// overcharges reports whether a plan's chargers give more than its batteries take.
func overcharges(b *bench.Bench, p *plan.Plan) bool {
	for i := range b.Supplies {
		v := &b.Supplies[i]
		if !v.Is(&p.Core) {
			continue
		}
		for _, l := range p.Limits {
			if l.Name == plan.LimitCharge {
				return !plan.AtMost(v.ChargerA, l.Value)
			}
		}
	}
	return false
}

// sillM is the height of a door sill, in metres: common practice, no source.
const sillM = 0.010

// overSill says what push the smallest wheels of the plans need at a sill; "" where no plan's casters state their wheels.
// One axle is lifted at a time, with half of the cart's mass on it.
func overSill(b *bench.Bench, plans []plan.Plan) string {
	var least catalog.Casters
	for i := range plans {
		if c := casters(b, &plans[i]); c.WheelM > 0 && (least.WheelM == 0 || c.WheelM < least.WheelM) {
			least = c
		}
	}
	if least.WheelM == 0 {
		return ""
	}
	if share := chassis.StepN(0.5, least.WheelM/2, sillM) / chassis.StandardGravity; !math.IsInf(share, 1) {
		return fmt.Sprintf("Over a sill of 10 mm the %.0f mm wheels of %s need a push of %.0f %% of the cart's weight, rolling needs %.1f %%: lay a ramp.",
			1000*least.WheelM, least.ID, 100*share, 100*b.Scenario.Cart.Rolling)
	}
	return fmt.Sprintf("The %.0f mm wheels of %s do not roll over a sill of 10 mm: lay a ramp.", 1000*least.WheelM, least.ID)
}

// casters returns the set of casters of a plan.
func casters(b *bench.Bench, p *plan.Plan) catalog.Casters {
	for i := range b.Catalog.Casters {
		if b.Catalog.Casters[i].ID == p.Casters.Part {
			return b.Catalog.Casters[i]
		}
	}
	return catalog.Casters{}
}

// unknownPolarity returns the caution for breakers on strings and mains for which the catalogue does not say whether they
// are polarised; "" for none.
func unknownPolarity(b *bench.Bench, plans []plan.Plan) string {
	used := map[string]bool{}
	for i := range plans {
		for _, r := range plans[i].Runs {
			if r.Run == string(scenarios.RunString) || r.Run == string(scenarios.RunMain) {
				used[r.Device] = true
			}
		}
	}
	var ids []string
	for i := range b.Catalog.Devices {
		if d := &b.Catalog.Devices[i]; used[d.ID] && d.Type == "breaker" && d.Polarised == catalog.Unknown {
			ids = append(ids, d.ID)
		}
	}
	if len(ids) == 0 {
		return ""
	}
	return strings.Join(ids, ", ") + ": check that the breaker is not polarised: current runs both ways through it, and one that is marked + and - fails to break it one way."
}

// loadsWithoutCircuits reports whether there are loads of a kind of current and no circuit for them.
func loadsWithoutCircuits(s *scenarios.Scenario, dc bool) bool {
	loads := !dc && s.Measured != nil
	for i := range s.Loads {
		loads = loads || s.Loads[i].DC == dc
	}
	for i := range s.Circuits {
		if s.Circuits[i].DC == dc {
			return false
		}
	}
	return loads
}

// uncircuited is the caution of loads without circuits.
func uncircuited(dc bool) string {
	if dc {
		return "The scenario lists no circuit with volts: dc: cable, fuse and stud of the loads on the bus are neither planned nor checked."
	}
	return "The scenario lists no circuits: which load is on which outlet is neither planned nor checked."
}
