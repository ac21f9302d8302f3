package audit

import (
	"math"

	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

var cartMutations = append([]mutation{
	mutated("no bus bars", newFair, func(k *cart) { k.drop("bars-150") }, ruleBusbars),
	mutated("two pairs of bus bars", newFair, func(k *cart) { k.line("bars-150", "busbar").Quantity = 2 }, ruleBusbars, ruleEnough),
	mutated("bus bars too weak", newBarn, func(k *cart) { k.c.Busbars[0].RatingA = 185.9 }, ruleBusbarCurrent),
	mutated("bus bars too weak for the loads on the bus", newBarn, func(k *cart) { k.c.Busbars[0].RatingA = 185.3 }, ruleBusbarCurrent),
	mutated("a stud short", newBarn, func(k *cart) { k.c.Busbars[0].Studs = 4 }, ruleBusbarStuds),

	mutated("a shelf there is not", newFair, func(k *cart) { k.p.Shelves[1].Shelf = "c" }, ruleShelves),
	mutated("a shelf twice", newFair, func(k *cart) {
		one := func() []plan.ShelfModules { return []plan.ShelfModules{{Part: "block", Modules: 1}} }
		k.p.Shelves[1].Batteries = one()
		k.p.Shelves = append(k.p.Shelves, plan.Shelf{Shelf: "b", Batteries: one()})
	}, ruleShelves),
	mutated("a module on no shelf", newFair, func(k *cart) { k.p.Shelves[1].Batteries[0].Modules = 1 }, ruleStands),
	mutated("a module of no string", newBarn, func(k *cart) { k.p.Shelves[1].Batteries[0].Modules = 2 }, ruleStands),
	mutated("other shelf, too many for it", newBarn, func(k *cart) {
		k.p.Shelves[0].Batteries = append(k.p.Shelves[0].Batteries, k.p.Shelves[1].Batteries...)
		k.p.Shelves = k.p.Shelves[:1]
	}, ruleShelfRoom, ruleSetDown),
	mutated("other shelf, too tall for it", newBarn, func(k *cart) {
		k.s.Cart.Shelves[1].ClearHeightM = 0.145
		k.p.Shelves[0].Shelf, k.p.Shelves[1].Shelf = "high", "low"
	}, ruleShelfHeight, ruleSetDown),
	mutated("module too tall", newFair, func(k *cart) { k.battery("block").HeightM = 0.251 }, ruleShelfHeight, ruleSetDown),
	mutated("shelf too weak", newFair, func(k *cart) { k.s.Cart.Shelves[1].MaxMassKg = 23.9 }, ruleShelfMass),
	mutated("rails that break", newFair, func(k *cart) { k.s.Cart.Shelves[1].Rails.Count, k.c.Sections[1].YieldPa = 1, 94e6 }, ruleShelfMass), // 23.0 kg
	mutated("rails that sag", newFair, func(k *cart) { k.s.Cart.Shelves[1].Rails.SpanM = 1.1 }, ruleShelfMass),                                // 22.6 kg
	mutated("rails of another section", newFair, func(k *cart) { k.s.Cart.Shelves[1].Rails.Section = "flat-9" }, ruleKnown, ruleShelfMass),
	mutated("not stacked", newFair, func(k *cart) {
		k.s.Cart.Shelves[1].Stack, k.s.Cart.Shelves[1].LengthM = 1, 0.3
	}, ruleShelfRoom, ruleSetDown),
	mutated("too low to stack", newFair, func(k *cart) {
		k.s.Cart.Shelves[1].ClearHeightM, k.s.Cart.Shelves[1].LengthM = 0.43, 0.3
	}, ruleShelfRoom, ruleSetDown),
	mutated("no column left", newBarn, func(k *cart) { k.s.Cart.Shelves[0].LengthM = 0.8 }, ruleShelfRoom, ruleSetDown),
	mutated("modules turned in one column", newBarn, func(k *cart) { k.battery("slab").WidthM = 0.56 }, ruleShelfRoom, ruleSetDown),

	mutated("too heavy", newBarn, func(k *cart) { k.s.Limits.MassKg = 225.2 }, ruleMass),
	mutated("too heavy by what is on deck", newBarn, func(k *cart) { k.s.Cart.DeckItems[0].MassKg = 190 }, ruleMass, ruleCasterLoad),
	mutated("smaller casters", newBarn, func(k *cart) { k.c.Casters[0].RatingKg = 93.8 }, ruleCasterLoad),
	mutated("six casters of which three carry", newBarn, func(k *cart) {
		k.s.Cart.Casters, k.c.Casters[0].SetOf, k.c.Casters[0].RatingKg = 6, 6, 93.8
	}, ruleCasterLoad),
	mutated("heavier frame", newFair, func(k *cart) { k.s.Cart.Pieces[1].Count = 60 }, ruleCasterLoad),
	mutated("no brakes on a slope", newBarn, func(k *cart) { k.c.Casters[0].Brakes = 0 }, ruleHold),
	mutated("no grip on a slope", newBarn, func(k *cart) { k.s.Cart.Grip = 0.039 }, ruleHold),
	mutated("soft ground", newBarn, func(k *cart) { k.s.Cart.Rolling = 0.12 }, rulePush),
	mutated("rougher floor", newFair, func(k *cart) { k.s.CasterFactor = 2.4 }, ruleCasterLoad),
	mutated("set of three casters", newFair, func(k *cart) { k.c.Casters[0].SetOf = 3 }, ruleCasterCount),
	mutated("tips sideways", newBarn, func(k *cart) { k.s.Cart.TrackM = 0.2 }, ruleTiltSideways),
	mutated("tips to the side of the backboard", newBarn, func(k *cart) { k.s.Cart.Backboard.OffsetM = -1.3 }, ruleTiltSideways),
	mutated("tips by itself", newBarn, func(k *cart) { k.s.Cart.Backboard.OffsetM = 3 }, ruleTiltSideways),
	mutated("tips lengthways", newBarn, func(k *cart) { k.s.Cart.WheelbaseM = 0.14 }, ruleTiltLength),
	mutated("steeper ground", newBarn, func(k *cart) { k.s.Limits.TiltDeg = 33 }, ruleTiltSideways),
	mutated("pushed too hard", newBarn, func(k *cart) { k.s.Limits.PushN = 88.3 }, rulePush),
	mutated("pushed up a slope", newBarn, func(k *cart) { k.s.Limits.Slope = 0.12 }, rulePush),
}, stated([]mutation{
	mutated("module larger than the shelf", newFair, func(k *cart) { k.battery("block").LengthM = 0.41 }, ruleShelfRoom, ruleSetDown, ruleLimits),
	mutated("stacked modules counted lower than they are", newFair, func(k *cart) { k.p.Balance.CGHeightMM -= 34 }, ruleBalanceFigures),
	mutated("shelf mass", newBarn, func(k *cart) { k.p.Shelves[1].MassKg += 0.1 }, ruleShelfFigures),
	mutated("mass 1 kg off", newBarn, func(k *cart) { k.p.MassKg++ }, ruleMassFigure),
	mutated("casters miscounted", newBarn, func(k *cart) { k.p.Casters.Count = 3 }, ruleCasterFigures),
	mutated("caster load misstated", newBarn, func(k *cart) { k.p.Casters.LoadEachKg -= 0.1 }, ruleCasterFigures),
	mutated("caster rating misstated", newBarn, func(k *cart) { k.p.Casters.RatingEachKg += 0.1 }, ruleCasterFigures),
	mutated("height of the centre misstated", newBarn, func(k *cart) { k.p.Balance.CGHeightMM++ }, ruleBalanceFigures),
	mutated("tilt misstated", newBarn, func(k *cart) { k.p.Balance.TiltDeg = 47.64174174902143 }, ruleBalanceFigures),
	mutated("tilt asked for misstated", newBarn, func(k *cart) { k.p.Balance.RequiredDeg = 9 }, ruleBalanceFigures),
})...)

var needMutations = []mutation{
	mutated("no disconnect", newBarn, func(k *cart) { k.drop("switch-300") }, ruleNeeds),
	mutated("shunt too weak", newBarn, func(k *cart) { k.c.Sundries[0].RatingA = 199 }, ruleNeeds),
	mutated("a receptacle less", newBarn, func(k *cart) {
		l := k.line("outlet-20", "sundry")
		l.Quantity, l.Buy = 1, 1
	}, ruleNeeds),
	mutated("no receptacle behind a circuit that has none", newBarn, func(k *cart) {
		k.s.Circuits[0].Receptacle = nil
		k.drop("outlet-20")
		k.drop("pump-20")
	}, ruleNeeds),
	mutated("receptacle too weak", newFair, func(k *cart) { k.s.Circuits[0].Receptacle.RatingA = 20 }, ruleNeeds),
	mutated("one strong receptacle for two", newBarn, func(k *cart) {
		weak := k.c.Sundries[3]
		weak.ID, weak.RatingA = "outlet-15", 15
		k.c.Sundries = append(k.c.Sundries, weak)
		l := k.line("outlet-20", "sundry")
		l.Quantity, l.Buy = 1, 1
		other := *l
		other.Part = "outlet-15"
		k.p.Bill = append(k.p.Bill, other)
	}, ruleNeeds),
	mutated("a receptacle above its circuit's rating", newBarn, func(k *cart) {
		strong := k.c.Sundries[3]
		strong.ID, strong.RatingA = "outlet-30", 30
		k.c.Sundries = append(k.c.Sundries, strong)
		k.line("outlet-20", "sundry").Part = "outlet-30"
	}, ruleNeeds),
	mutated("a receptacle for the circuit and for a need", newBarn, func(k *cart) {
		k.s.Needs = append(k.s.Needs, scenarios.Need{Role: "receptacle", Count: 1, RatingA: 20})
	}, ruleNeeds),
	mutated("a sundry too many", newBarn, func(k *cart) {
		l := k.line("shunt-300", "sundry")
		l.Quantity, l.Buy = 2, 2
	}, ruleSundries),
	mutated("a sundry nobody asked for", newBarn, func(k *cart) { k.s.Needs = k.s.Needs[1:] }, ruleSundries),
	mutated("a shunt below what flows through it", newBarn, func(k *cart) {
		k.s.Needs[0].RatingA, k.c.Sundries[0].RatingA = 0, 185
	}, ruleThrough),
	mutated("a disconnect that states no rating", newBarn, func(k *cart) { k.c.Sundries[1].RatingA = 0 }, ruleThrough),
	mutated("two load centres", newBarn, func(k *cart) {
		k.s.Needs[2].Count = 2
		l := k.line("panel-8", "sundry")
		l.Quantity, l.Buy = 2, 2
	}, ruleOneCentre),
	mutated("a load centre below its feeders", newBarn, func(k *cart) {
		k.s.Needs[2].RatingA, k.c.Sundries[2].RatingA = 0, 39
	}, ruleCentreA),
	mutated("a load centre below the inverters' own breakers", newBarn, func(k *cart) {
		k.s.Needs[2].RatingA, k.c.Sundries[2].RatingA = 0, 39
		k.c.Sundries[2].Spaces = 4
		k.s.Run("feeder").OwnBreakerA = 20
		k.run("feeder", "").Device, k.run("feeder", "").Devices = "", 0
	}, ruleCentreA),
	mutated("a breaker of another mount", newBarn, func(k *cart) { k.device("b20-1").Mount = "rail" }, ruleCentreFits),
	mutated("a breaker of no known mount", newBarn, func(k *cart) { k.device("b20-1").Mount = "" }, ruleCentreFits),
	mutated("poles over the spaces", newBarn, func(k *cart) { k.c.Sundries[2].Spaces = 7 }, ruleSpaces),
	mutated("another breaker pole over the spaces", newBarn, func(k *cart) { k.device("b20-1").Poles = 2 }, ruleSpaces),
}

// What leaves the cart alone must not fail it.
var harmless = []mutation{
	mutated("load centre that states no spaces", newBarn, func(k *cart) { k.c.Sundries[2].Spaces = 0 }),
	mutated("fuses take no spaces", newBarn, func(k *cart) {
		k.c.Sundries[2].Spaces = 7
		k.device("b20-1").Type = "fuse"
	}),
	mutated("feeder breakers of another mount take no spaces", newBarn, func(k *cart) {
		k.c.Sundries[2].Spaces = 4
		k.device("b20-f").Mount = "rail"
	}),
	mutated("a load centre of no stated mount", newBarn, func(k *cart) {
		k.c.Sundries[2].Mount, k.c.Sundries[2].Spaces = "", 4
		k.device("b20-1").Mount = "rail"
	}),
	mutated("devices at both ends of a long cable", newBarn, func(k *cart) {
		k.s.Runs[0].LengthM = 3.2
		for _, of := range []string{"slab", "brick"} {
			k.run("string", of).LengthM, k.run("string", of).BoughtM = 3.2, 3.75
			k.run("string", of).Devices++
		}
		d := *k.device("fuse-125")
		d.ID, d.RatingA = "fuse-80", 80
		k.c.Devices = append(k.c.Devices, d)
		k.run("string", "brick").Device = "fuse-80"
	}),
	mutated("a cable of just 3 m", newBarn, func(k *cart) {
		k.s.Runs[0].LengthM = 3
		for _, of := range []string{"slab", "brick"} {
			k.run("string", of).LengthM, k.run("string", of).BoughtM = 3, 3.5
		}
	}),
	mutated("loads on legs, without circuits", newBarn, func(k *cart) { k.withoutCircuits() }),
	mutated("no sets of lists", newFair, func(k *cart) { k.s.OneAtATime = [][]int{} }),
	mutated("all loads of a measured scenario on no circuit", newFair, func(k *cart) {
		k.p.Circuits = []plan.Circuit{{Circuit: "stall", Loads: nil, DeviceA: 10}}
	}),
	mutated("fuses larger than they need be", newFair, func(k *cart) { k.battery("block").MaxFuseA = 125 }),
	mutated("a shunt of just the rating asked for", newBarn, func(k *cart) { k.c.Sundries[0].RatingA = 200 }),
	mutated("a disconnect of just what flows through it", newBarn, func(k *cart) { k.c.Sundries[1].RatingA = 185.95849802371538 }),
	mutated("stronger receptacles than asked for", newBarn, func(k *cart) { k.c.Sundries[3].RatingA = 30 }),
	mutated("a need met by a stronger receptacle", newBarn, func(k *cart) {
		strong := k.c.Sundries[3]
		strong.ID, strong.RatingA = "outlet-30", 30
		k.c.Sundries = append(k.c.Sundries, strong)
		k.s.Needs = append(k.s.Needs, scenarios.Need{Role: "receptacle", Count: 1, RatingA: 20})
		l := *k.line("outlet-20", "sundry")
		l.Part, l.Quantity, l.Buy = "outlet-30", 1, 1
		k.p.Bill = append(k.p.Bill, l)
	}),
	mutated("shelves in another order", newBarn, func(k *cart) { k.p.Shelves[0], k.p.Shelves[1] = k.p.Shelves[1], k.p.Shelves[0] }),
	mutated("runs one by one", newBarn, func(k *cart) {
		k.run("main", "").Count = 1
		k.p.Runs = append(k.p.Runs, *k.run("main", ""))
	}),
	mutated("an empty shelf is not told", newBarn, func(k *cart) {
		empty := k.s.Cart.Shelves[1]
		empty.Name = "top"
		k.s.Cart.Shelves = append(k.s.Cart.Shelves, empty)
	}),
	mutated("a receptacle of any rating", newBarn, func(k *cart) {
		k.s.Circuits[0].Receptacle.RatingA = 0
		plain := k.c.Sundries[3]
		plain.ID, plain.RatingA = "outlet", 0
		k.c.Sundries = append(k.c.Sundries, plain)
	}),
	mutated("loads of any leg on a single one", newBarn, func(k *cart) {
		k.singleLeg()
		k.s.Loads[1].Leg = scenarios.LegB
		k.s.Loads[5].Leg = scenarios.LegBoth // it is on the bus and has none
	}),
	mutated("no push asked for", newBarn, func(k *cart) { k.s.Limits.PushN = 0 }),
	mutated("no mass limit", newBarn, func(k *cart) { k.s.Limits.MassKg = math.Inf(1) }),
	mutated("no recharge asked for", newBarn, func(k *cart) {
		k.s.Recharge = nil
		k.inverter("split-3").ChargerA = 0
		k.unlist("inlet")
	}),
	mutated("a cart of fixed loads and any protocol", newBarn, func(k *cart) {
		k.s.Limits.SharedProtocols = false
		k.battery("brick").Protocols = nil
	}),
	mutated("nothing known of parallel strings", newBarn, func(k *cart) { k.battery("slab").MaxParallel = 0 }),
	mutated("no cycle life", newBarn, func(k *cart) { k.battery("brick").CycleLife = 0 }),
	mutated("legs of a single one", newFair, func(k *cart) {}),
	mutated("a feeder nobody lists, nobody wires", newFair, func(k *cart) { k.unlist("feeder") }),
	mutated("a part that is kept unused", newBarn, func(k *cart) { k.drop("old-inverter") }),
	mutated("gravity of a level cart", newBarn, func(k *cart) { k.s.Limits.Slope = 0 }),
}
