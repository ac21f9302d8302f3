package audit

import (
	"math"
	"slices"

	"cartwright/optimize/plan"
	"cartwright/scenarios"
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
	}, ruleCore, ruleBusCurrent, rulePeak, rulePerKWh),
	mutated("battery without a string", newBarn, func(k *cart) {
		spare := *k.battery("slab")
		spare.ID = "spare"
		k.c.Batteries = append(k.c.Batteries, spare)
		k.p.Core.Batteries = append(k.p.Core.Batteries, plan.CoreBattery{Part: "spare", Series: 1})
	}, ruleCore),
	mutated("no inverter", newFair, func(k *cart) {
		k.p.Core.Inverter.Units = 0
		k.s.Recharge = nil
		k.unlist("inlet")
		k.p.Runs = append(k.p.Runs[:1], k.p.Runs[3:]...)
	}, ruleCore, rulePower, ruleSurge, ruleSolarInputs),
	mutated("one in series", newFair, func(k *cart) {
		k.p.Core.Batteries[0].Strings, k.p.Core.Batteries[0].Series = 4, 1
		k.run("string", "block").Count, k.run("string", "block").Links, k.run("string", "block").LinkM = 4, 0, 0
		k.c.Busbars[0].Studs = 6
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
		k.singleLeg()
	}, ruleOutput),
}...)

// unlist takes a kind of run out of scenario and plan.
func (k *cart) unlist(kind string) {
	k.s.Runs = slices.DeleteFunc(k.s.Runs, func(r scenarios.Run) bool { return string(r.Kind) == kind })
	k.p.Runs = slices.DeleteFunc(k.p.Runs, func(r plan.Run) bool { return r.Run == kind })
}

// singleLeg puts the barn's loads and circuits behind inverters of 120 V, without a feeder.
func (k *cart) singleLeg() {
	k.inverter("split-3").ACV = "120"
	k.s.Circuits[2].Volts = 120
	for i := range k.p.Circuits {
		k.p.Circuits[i].Leg = ""
	}
	k.unlist("feeder")
}

var supplyMutations = []mutation{
	mutated("load on no leg", newBarn, func(k *cart) { k.p.Legs = k.p.Legs[:3] }, ruleLegs),
	mutated("load on another leg than its circuit", newBarn, func(k *cart) { k.p.Legs[1].Leg = "A" }, ruleLegs),
	mutated("load on leg C", newBarn, func(k *cart) { k.p.Legs[1].Leg = "C" }, ruleLegs),
	mutated("load on two legs", newBarn, func(k *cart) {
		k.p.Legs = append(k.p.Legs, plan.LegLoad{Load: "lights", Leg: "A"})
	}, ruleLegs),
	mutated("leg of a load there is not", newFair, func(k *cart) { k.p.Legs = []plan.LegLoad{{Load: "lamp", Leg: "A"}} }, ruleLegs),
	mutated("loads that can't be read", newFair, func(k *cart) { k.s.Measured.LegA[3] = math.NaN() }, ruleLegs),
	mutated("legs out of balance", newBarn, func(k *cart) {
		k.p.Circuits[0].Leg, k.p.Legs[0].Leg = "B", "B" // the fridge beside the saw, which has 1200 VA
	}, ruleBalanced),
	mutated("legs out of balance, without circuits", newBarn, func(k *cart) {
		k.withoutCircuits()
		k.p.Legs[0].Leg = "B"
	}, ruleBalanced),
	mutated("surges out of balance", newBarn, func(k *cart) {
		k.withoutCircuits()
		k.s.Loads[0].FromMin, k.s.Loads[0].ToMin, k.s.Loads[0].AllDay = 22*60, 23*60, false
		k.s.Loads[0].Start, k.s.Loads[2].ToMin = 40, 23*60 // 8,000 VA as it starts, beside 300 of the lights
		k.inverter("split-3").SurgeW, k.inverter("split-3").LegSurgeW = 9000, 9000
		k.p.Legs[0].Leg = "B"
		k.battery("slab").PeakDischargeA, k.battery("brick").PeakDischargeA = 400, 400
	}, ruleBalanced),
	mutated("inverter too weak", newFair, func(k *cart) {
		k.s.Measured.LegA[20] = 2100
		k.s.Limits.Served = 0
		k.s.AutonomyH = 1
	}, rulePower),
	mutated("leg overload", newBarn, func(k *cart) { k.inverter("split-3").LegW = 599 }, ruleLeg),
	mutated("volt-amperes above the inverter's", newBarn, func(k *cart) { k.inverter("split-3").ContinuousW = 650 }, rulePower),
	mutated("start overload", newBarn, func(k *cart) { k.inverter("split-3").SurgeW = 1899 }, ruleSurge),
	mutated("start overload of a leg", newBarn, func(k *cart) { k.inverter("split-3").LegSurgeW = 1799 }, ruleLegSurge),
	mutated("two at a time that were one", newBarn, func(k *cart) { k.s.OneAtATime = nil }, ruleCircuitLoad, ruleBalanced),
	mutated("strings too weak for the start", newBarn, func(k *cart) {
		k.battery("slab").PeakDischargeA, k.battery("brick").PeakDischargeA = 60, 37 // 37 A * 125 S / 25 S = 94.4 at 37.8 A
		k.battery("slab").MaxDischargeA, k.battery("brick").MaxDischargeA = 100, 60
		k.battery("brick").PeakDischargeA = 18.8 // 94 A, 94.4 needed
	}, rulePeak),
	mutated("strings too weak for the start, at 230 V", newFair, func(k *cart) { k.battery("block").PeakDischargeA = 11 }, rulePeak),
	mutated("no protocol in common", newBarn, func(k *cart) { k.battery("brick").Protocols = []string{"rs485"} }, ruleProtocols),
	mutated("a supply of other volts", newFair, func(k *cart) { k.inverter("sine-2").ChargerACV = "120" }, ruleSupplyVolts),
	mutated("a supply too weak", newBarn, func(k *cart) {
		k.s.Recharge.WithinH = 3 // 74.3 A needed, 73.6 A at 80 % of 20 A
	}, ruleCharger),
	mutated("strings too weak together", newFair, func(k *cart) { k.battery("block").MaxDischargeA = 52 }, ruleBusCurrent),
	mutated("one kind takes too large a share", newBarn, func(k *cart) {
		k.battery("brick").ResistanceOhm = 0.012 // 83 S of 183 S: 45 % of 148.8 A is above 60 A
	}, ruleBusCurrent),
	mutated("a load on the bus too large", newBarn, func(k *cart) {
		k.s.Loads[5].Watts = 5000 // 113.6 A at 44 V beside 148.2 A, where 250 A can be had
		k.s.Loads[5].Duty = 0
		k.c.Busbars[0].RatingA = 400
		k.c.Sundries[0].RatingA, k.c.Sundries[1].RatingA = 400, 400
		k.withoutDC()
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
		k.battery("slab").MaxChargeA, k.battery("brick").MaxChargeA = 50, 5.5 // 27.5 A as they share it, 27.87 A needed
	}, ruleCharge),
	mutated("less time to recharge", newBarn, func(k *cart) { k.s.Recharge.WithinH = 1.5 }, ruleCharger, ruleCharge),
	{"usable energy overstated", newBarn, func(k *cart) { k.p.UsableKWh += 0.001 }, []string{ruleUsable}, true},
	{"hours overstated", newBarn, func(k *cart) { k.p.AutonomyH += 0.001 }, []string{ruleHours}, true},
}
