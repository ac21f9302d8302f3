package audit

import (
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// withoutCircuits takes the alternating-current circuits away; the loads are on legs alone.
func (k *cart) withoutCircuits() {
	k.s.Circuits, k.p.Circuits = k.s.Circuits[3:], k.p.Circuits[3:]
	k.s.Loads[4].Circuit = ""
	runs := k.p.Runs[:0]
	for _, r := range k.p.Runs {
		if r.Run != "branch" {
			runs = append(runs, r)
		}
	}
	k.p.Runs = runs
	k.drop("outlet-20")
	k.drop("pump-20")
}

// withoutDC takes the circuit on the bus away.
func (k *cart) withoutDC() {
	k.s.Circuits, k.p.Circuits = k.s.Circuits[:3], k.p.Circuits[:3]
	runs := k.p.Runs[:0]
	for _, r := range k.p.Runs {
		if r.Run != "dc" {
			runs = append(runs, r)
		}
	}
	k.p.Runs = runs
}

var circuitMutations = []mutation{
	mutated("a load on no circuit", newBarn, func(k *cart) { k.p.Circuits[0].Loads = nil }, ruleCircuits),
	mutated("a load on the bus on no circuit", newBarn, func(k *cart) { k.p.Circuits[3].Loads = nil }, ruleCircuits),
	mutated("a load on two circuits", newBarn, func(k *cart) {
		k.p.Circuits[0].Loads = append(k.p.Circuits[0].Loads, "lights")
	}, ruleCircuits, ruleLegs),
	mutated("a load of ac on a circuit of the bus", newBarn, func(k *cart) {
		k.p.Circuits[0].Loads, k.p.Circuits[3].Loads = nil, []string{"router", "fridge"}
	}, ruleCircuits),
	mutated("a circuit that is not told", newBarn, func(k *cart) {
		k.s.Circuits = append(k.s.Circuits, k.s.Circuits[3])
		k.s.Circuits[4].Name = "spare"
		r := *k.run("dc", "radio")
		r.Name = "spare"
		k.p.Runs = append(k.p.Runs, r)
		k.c.Busbars[0].Studs = 7
	}, ruleCircuits),
	mutated("a circuit told twice", newBarn, func(k *cart) {
		k.p.Circuits = append(k.p.Circuits, plan.Circuit{Circuit: "bench", Leg: "A", DeviceA: 20})
	}, ruleCircuits),
	mutated("a circuit there is not", newFair, func(k *cart) {
		k.p.Circuits = append(k.p.Circuits, plan.Circuit{Circuit: "stage"})
	}, ruleCircuits),
	mutated("a circuit of 120 V on both legs", newBarn, func(k *cart) { k.p.Circuits[0].Leg = "both" }, ruleCircuits),
	mutated("a circuit of 240 V on one leg", newBarn, func(k *cart) { k.p.Circuits[2].Leg = "A" }, ruleCircuits, ruleBalanced),
	mutated("a circuit of the bus on a leg", newBarn, func(k *cart) { k.p.Circuits[3].Leg = "A" }, ruleCircuits),
	mutated("a circuit on a leg there is not", newFair, func(k *cart) {
		k.p.Circuits = []plan.Circuit{{Circuit: "stall", Leg: "A", DeviceA: 10}}
	}, ruleCircuits),
	mutated("a load on another circuit than it names", newBarn, func(k *cart) { k.s.Loads[0].Circuit = "porch" }, ruleCircuits),
	mutated("a load of both legs on 120 V", newBarn, func(k *cart) { k.s.Loads[0].Leg = scenarios.LegBoth }, ruleCircuits, ruleLegs),
	mutated("a load of one leg on 240 V", newBarn, func(k *cart) {
		k.p.Circuits[0].Loads, k.p.Circuits[2].Loads = nil, []string{"pump", "fridge"}
		k.p.Legs = k.p.Legs[1:]
	}, ruleCircuits, ruleLegs, ruleBalanced),
	mutated("a load of leg A on a circuit of leg B", newBarn, func(k *cart) {
		k.s.Loads[2].Leg = scenarios.LegA
		k.p.Legs = append(k.p.Legs[:1], k.p.Legs[2:]...)
	}, ruleCircuits),
	mutated("too much on a circuit", newBarn, func(k *cart) {
		k.s.Loads[3].PowerFactor, k.s.Loads[3].Start = 0.4, 1 // 18.75 A
	}, ruleCircuitLoad),
	mutated("too much on a circuit for hours", newBarn, func(k *cart) {
		k.s.Loads[2].Watts, k.s.AutonomyH = 150, 1 // 12.5 A, 15.6 A at 125 %
	}, ruleCircuitLoad),
	mutated("too much on a circuit of the bus", newBarn, func(k *cart) {
		k.s.Loads[5].Watts, k.s.Loads[5].Duty = 500, 0 // 11.4 A at 44 V
	}, ruleCircuitLoad),
	{"another current of a circuit stated", newBarn, func(k *cart) { k.p.Circuits[1].CurrentA -= 0.1 }, []string{ruleCircuitFigures}, true},
	{"another device of a circuit stated", newBarn, func(k *cart) { k.p.Circuits[1].DeviceA++ }, []string{ruleCircuitFigures}, true},
}

var harmlessCircuits = []mutation{
	mutated("a load that names a circuit of 240 V is of both legs", newBarn, func(k *cart) {
		k.s.Loads[1].Leg, k.s.Loads[1].Circuit = scenarios.LegAuto, "pump"
	}),
	mutated("a load of its circuit's leg", newBarn, func(k *cart) {
		k.s.Loads[2].Leg = scenarios.LegB
		k.p.Legs = append(k.p.Legs[:1], k.p.Legs[2:]...)
	}),
	mutated("just under three hours", newBarn, func(k *cart) {
		k.s.Loads[2].Watts, k.s.AutonomyH = 150, 1
		k.s.Loads[2].ToMin = 20*60 + 55
	}),
	mutated("hours with pauses", newBarn, func(k *cart) {
		k.s.Loads[2].Watts, k.s.AutonomyH, k.s.Loads[2].Duty = 150, 1, 0.95
	}),
	mutated("two of a name on two circuits", newBarn, func(k *cart) {
		k.s.Loads[2].Name, k.p.Circuits[1].Loads[0], k.p.Legs[1].Load = "fridge", "fridge", "fridge"
	}),
}
