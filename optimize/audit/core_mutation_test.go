package audit

import (
	"math"

	"cartwright/optimize/plan"
)

// stated marks mutations of nothing but what the plan states.
func stated(all []mutation) []mutation {
	for i := range all {
		all[i].stated = true
	}
	return all
}

func mutated(name string, fresh func() *cart, do func(k *cart), want ...string) mutation {
	return mutation{name: name, fresh: fresh, do: do, want: want}
}

var coreMutations = append(stated([]mutation{
	mutated("not a number", newBarn, func(k *cart) { k.p.AutonomyH = math.NaN() }, ruleFigures),
	mutated("negative count", newBarn, func(k *cart) { k.p.Core.Inverter.Units = -1 }, ruleFigures),
	mutated("negative money", newBarn, func(k *cart) { k.p.Bill[0].Line = -1 }, ruleFigures),
	mutated("absurd count", newFair, func(k *cart) { k.p.Runs[0].Sets = mostCount + 1 }, ruleFigures),
	mutated("absurd length", newFair, func(k *cart) { k.p.Runs[0].LengthM = mostFigure * 2 }, ruleFigures),
	mutated("absurd money", newFair, func(k *cart) { k.p.Cost = mostCents + 1 }, ruleFigures),
	mutated("a part of another kind", newFair, func(k *cart) { k.line("caster-60", "casters").Kind = "sundry" }, ruleKnown, ruleMassFigure,
		ruleCasterFigures, ruleBalanceFigures, ruleLimits),
}), []mutation{
	mutated("an unknown sundry", newBarn, func(k *cart) { k.line("shunt-300", "sundry").Part = "shunt-9" }, ruleKnown,
		ruleNeeds, ruleQuantities, rulePrices),
	mutated("an unknown cable", newFair, func(k *cart) { k.run("main", "").Cable = "c36" }, ruleKnown, "main cable present", ruleQuantities),
	mutated("an unknown ground", newFair, func(k *cart) { k.run("feeder", "").Ground = "gg-10" }, ruleKnown, "feeder ground present", ruleLines, ruleQuantities),
	mutated("an unknown battery on a shelf", newFair, func(k *cart) {
		k.p.Shelves[0].Batteries = append(k.p.Shelves[0].Batteries, plan.ShelfModules{Part: "gg-10"})
	}, ruleKnown),
	mutated("battery listed twice", newFair, func(k *cart) {
		k.p.Core.Batteries = []plan.CoreBattery{{Part: "block", Strings: 1, Series: 2}, {Part: "block", Strings: 1, Series: 2}}
	}, ruleCore, "string count"),
	mutated("no battery", newFair, func(k *cart) {
		k.p.Core.Batteries = nil
		k.p.Runs = k.p.Runs[1:]
		k.p.Shelves = nil
		k.s.AutonomyH = 0
	}, ruleCore, ruleBusCurrent, rulePerKWh, rulePerLife),
	mutated("battery without a string", newBarn, func(k *cart) {
		spare := *k.battery("slab")
		spare.ID = "spare"
		k.c.Batteries = append(k.c.Batteries, spare)
		k.p.Core.Batteries = append(k.p.Core.Batteries, plan.CoreBattery{Part: "spare", Series: 1})
	}, ruleCore),
	mutated("no inverter", newFair, func(k *cart) {
		k.p.Core.Inverter.Units = 0
		k.p.Runs = append(k.p.Runs[:1], k.p.Runs[2:]...)
	}, ruleCore, rulePower, ruleSurge),
	mutated("solar modules", newFair, func(k *cart) { k.p.Core.Solar = []plan.CoreSolar{{Part: "sun", Series: 1, Parallel: 1, Inputs: 1}} }, ruleCore),
	mutated("one in series", newFair, func(k *cart) {
		k.p.Core.Batteries[0].Strings, k.p.Core.Batteries[0].Series = 4, 1
		k.run("string", "block").Count = 4
		k.c.Busbars[0].Studs = 5
		k.s.Bus.LowV = 12 // so that only their number is wrong
		k.inverter("sine-2").ContinuousW = 1000
		k.inverter("sine-2").DCMinV = 10
	}, ruleSeries),
	mutated("a module above the bus", newFair, func(k *cart) { k.battery("block").NominalV = 50 }, ruleSeries),
	mutated("series over max_series", newFair, func(k *cart) { k.battery("block").MaxSeries = 1 }, ruleMaxSeries),
	mutated("charged above the bus window", newFair, func(k *cart) { k.battery("block").MaxV = 15.1 }, ruleBusHigh),
	mutated("nominal below the bus window", newBarn, func(k *cart) { k.battery("brick").NominalV = 43.9 }, ruleBusLow),
	mutated("mixed groups", newBarn, func(k *cart) { k.battery("brick").Group = "h" }, ruleGroup),
	mutated("two kinds without a group", newBarn, func(k *cart) {
		k.battery("brick").Group, k.battery("slab").Group = "", ""
	}, ruleGroup),
	mutated("string over max_parallel", newBarn, func(k *cart) { k.battery("slab").MaxParallel = 1 }, ruleParallel),
	mutated("unit over max_units", newBarn, func(k *cart) { k.inverter("split-3").MaxUnits = 1 }, ruleUnits),
	mutated("unit over one where none are stated", newBarn, func(k *cart) { k.inverter("split-3").MaxUnits = 0 }, ruleUnits),
	mutated("inverter stops above bus low", newBarn, func(k *cart) { k.inverter("split-3").DCMinV = 44.5 }, ruleInputLow),
	mutated("inverter stops below bus high", newBarn, func(k *cart) { k.inverter("split-3").DCMaxV = 59.5 }, ruleInputHigh),
	mutated("a circuit of other volts", newFair, func(k *cart) { k.s.Circuits[0].Volts = 120 }, ruleOutput),
	mutated("a load between legs there are not", newBarn, func(k *cart) {
		k.inverter("split-3").ACV = "120"
		k.s.Circuits[1].Volts = 120
		k.s.Runs = k.s.Runs[:2]
		k.p.Runs = append(k.p.Runs[:3], k.p.Runs[4:]...)
	}, ruleOutput),
}...)

var supplyMutations = []mutation{
	mutated("load on no leg", newBarn, func(k *cart) { k.p.Legs = k.p.Legs[:1] }, ruleLegs),
	mutated("load on leg C", newBarn, func(k *cart) { k.p.Legs[1].Leg = "C" }, ruleLegs),
	mutated("load on two legs", newBarn, func(k *cart) {
		k.p.Legs = append(k.p.Legs, plan.LegLoad{Load: "lights", Leg: "A"})
	}, ruleLegs),
	mutated("leg of a load there is not", newFair, func(k *cart) { k.p.Legs = []plan.LegLoad{{Load: "lamp", Leg: "A"}} }, ruleLegs),
	mutated("loads that can't be read", newFair, func(k *cart) { k.s.Measured.LegA[3] = math.NaN() }, ruleLegs),
	mutated("legs out of balance", newBarn, func(k *cart) {
		k.s.Loads[2].FromMin, k.s.Loads[2].ToMin = 6*60, 8*60 // with the pump, which has 600 W on each leg
		k.p.Legs[1].Leg = "A"
	}, ruleBalanced),
	mutated("inverter too weak", newFair, func(k *cart) {
		k.s.Measured.LegA[20] = 2100
		k.s.AutonomyH = 1
	}, rulePower),
	mutated("leg overload", newBarn, func(k *cart) { k.inverter("split-3").LegW = 399 }, ruleLeg),
	mutated("start overload", newBarn, func(k *cart) { k.inverter("split-3").SurgeW = 1899 }, ruleSurge),
	mutated("strings too weak together", newFair, func(k *cart) { k.battery("block").MaxDischargeA = 52 }, ruleBusCurrent),
	mutated("one kind takes too large a share", newBarn, func(k *cart) {
		k.battery("brick").ResistanceOhm = 0.012 // 83 S of 183 S: 45 % of 148.8 A is above 60 A
	}, ruleBusCurrent),
	mutated("a load on the bus too large", newBarn, func(k *cart) {
		k.s.Loads[3].Watts = 5000 // 113.6 A at 44 V beside 148.2 A, where 250 A can be had
		k.s.Loads[3].Duty = 0
		k.c.Busbars[0].RatingA = 400
	}, ruleBusCurrent),
	mutated("autonomy too short", newFair, func(k *cart) { k.s.AutonomyH = 24.3 }, ruleAutonomy),
	mutated("one battery less", newBarn, func(k *cart) {
		k.p.Core.Batteries = k.p.Core.Batteries[:1]
		k.p.Runs = append(k.p.Runs[:1], k.p.Runs[2:]...)
		k.p.Shelves = k.p.Shelves[:1]
	}, ruleAutonomy),
	mutated("more kept in reserve", newBarn, func(k *cart) { k.s.Limits.Reserve = 0.24 }, ruleAutonomy),
	mutated("recharge too slow", newBarn, func(k *cart) { k.inverter("split-3").ChargerA = 12 }, ruleCharger),
	mutated("no charger", newBarn, func(k *cart) { k.inverter("split-3").ChargerA = 0 }, ruleCharger),
	mutated("batteries charge too slowly", newBarn, func(k *cart) {
		k.battery("slab").MaxChargeA, k.battery("brick").MaxChargeA = 9, 6 // 24 A, 24.01 A needed
	}, ruleCharge),
	mutated("less time to recharge", newBarn, func(k *cart) { k.s.Recharge.WithinH = 1.5 }, ruleCharger, ruleCharge),
	{"usable energy overstated", newBarn, func(k *cart) { k.p.UsableKWh += 0.001 }, []string{ruleUsable}, true},
	{"hours overstated", newBarn, func(k *cart) { k.p.AutonomyH += 0.001 }, []string{ruleHours}, true},
}
