package audit

import (
	"cartwright/optimize/plan"
)

var oddPathMutations = []mutation{
	mutated("a run of no kind", newFair, func(k *cart) { k.p.Runs = append(k.p.Runs, plan.Run{Run: "wind", Cable: "c35", Count: 1}) }, ruleRunKinds),
	mutated("a run of no path", newFair, func(k *cart) {
		k.p.Runs = append(k.p.Runs, plan.Run{Run: "main", Cable: "c35", Sets: 1,
			LengthM: 0.6, BoughtM: 0.6, Conductors: 2})
	}, ruleRunKinds),
	mutated("a branch of no circuit", newFair, func(k *cart) { k.run("branch", "stall").Name = "stable" }, ruleRunKinds, "branch count"),
	mutated("a string of another battery", newBarn, func(k *cart) { k.run("string", "brick").Battery = "slab" },
		"string count", "string wired alike", "string devices", "string own device", "string device present"),
	mutated("a feeder that is not listed", newFair, func(k *cart) { k.s.Runs = append(k.s.Runs[:2], k.s.Runs[3:]...) }, ruleRunKinds),
	mutated("strings that are not listed", newFair, func(k *cart) { k.s.Runs = k.s.Runs[1:] }, ruleRunKinds),
	mutated("an inlet without a supply", newFair, func(k *cart) { k.s.Recharge.Supply = nil }, ruleRunKinds),
	mutated("mains that are not listed", newFair, func(k *cart) { k.s.Runs = append(k.s.Runs[:1], k.s.Runs[2:]...) }, ruleRunKinds),
	mutated("a main too few", newBarn, func(k *cart) { k.run("main", "").Count = 1 }, "main count"),
	mutated("no feeder", newFair, func(k *cart) { k.p.Runs = append(k.p.Runs[:2], k.p.Runs[3:]...) }, "feeder count"),
	mutated("device beside the inverter's own breaker", newFair, func(k *cart) { k.run("main", "").Device = "gg-125" }, "main own breaker"),
	mutated("another's own device", newFair, func(k *cart) { k.run("main", "").OwnDevice = true }, "main devices"),
	mutated("fuses of modules where there are none", newFair, func(k *cart) {
		k.run("main", "").StringFuse, k.run("main", "").StringFuses = "gg-10-dc", 1
	}, "main devices"),
	mutated("links of a main", newFair, func(k *cart) { k.run("main", "").Links = 1 }, "main conductors"),
	mutated("sets of a bond", newFair, func(k *cart) { k.run("bond", "").Sets = 2 }, "bond conductors"),
	mutated("one device for a long cable that others feed", newBarn, func(k *cart) {
		k.s.Runs[0].LengthM = 3.2
		for _, of := range []string{"slab", "brick"} {
			k.run("string", of).LengthM, k.run("string", of).BoughtM = 3.2, 3.75
		}
	}, "string devices"),
	mutated("an own device too weak for the fault", newBarn, func(k *cart) { k.battery("brick").OwnInterruptingA = 5839 }, "string interrupting rating"),
	mutated("an own device of a string of two", newFair, func(k *cart) {
		k.battery("block").OwnDeviceA, k.battery("block").OwnInterruptingA = 125, 20000
		r := k.run("string", "block")
		r.OwnDevice, r.Device, r.Devices = true, "", 0
	}, "string devices", "string own device", "string device present"),
	mutated("own breaker too large for the cable", newFair, func(k *cart) { k.s.Runs[1].OwnBreakerA = 200 }, "main cable protected"),
	mutated("fuse on the main, too large for its overload", newFair, func(k *cart) {
		k.s.Runs[1].OwnBreakerA = 0
		d := *k.device("gg-125")
		d.ID, d.RatingA = "gg-160", 160 // 1.6 * 160 = 256 A, 1.45 * 171 = 248 A
		k.c.Devices = append(k.c.Devices, d)
		k.run("main", "").Device, k.run("main", "").Devices = "gg-160", 1
	}, "main fuse overload"),
	mutated("small conductor of a string", newBarn, func(k *cart) {
		k.battery("brick").MaxDischargeA = 20 // 25 A asked for; 12 AWG carries 25 A at 75 °C
		k.s.Runs[0].TerminalC = 75
		k.battery("brick").OwnDeviceA = 25
		k.ownCable(k.run("string", "brick")).Size = "12 AWG"
	}, ruleBusCurrent, "string small conductor"),
	mutated("small conductor of a main", newBarn, func(k *cart) {
		k.inverter("split-3").ContinuousW, k.inverter("split-3").ChargerA = 800, 19 // 19.8 A; 24.7 A asked for
		k.s.Runs[1].TerminalC, k.s.Runs[1].Drop = 75, 0.05
		k.device("fuse-100").RatingA = 25
		k.c.Cables[2].Size = "12 AWG"
	}, "main small conductor"),
	mutated("main too thin for what the charger gives", newBarn, func(k *cart) { k.inverter("split-3").ChargerA = 90 }, // 112.5 A asked for
		"main device rating"),
	mutated("feeder too weak for all on one leg", newBarn, func(k *cart) { k.inverter("split-3").LegW = 2200 }, "feeder device rating"), // 18.3 A
	mutated("a ground not enlarged with its line", newBarn, func(k *cart) { k.run("feeder", "").Ground = "g10" }, "feeder ground size"),
	mutated("three sets of a main", newBarn, func(k *cart) { k.run("main", "").Sets = 3 }, "main parallel sets"),
	mutated("three sets of a feeder", newBarn, func(k *cart) { k.run("feeder", "").Sets = 3 }, "feeder parallel sets", "feeder conduit fill"),
	mutated("three sets of a branch", newBarn, func(k *cart) { k.run("branch", "bench").Sets = 3 }, "branch parallel sets"),
	mutated("three sets of a string", newFair, func(k *cart) { k.run("string", "block").Sets = 3 }, "string parallel sets"),
	mutated("no set of a main", newFair, func(k *cart) { k.run("main", "").Sets = 0 }, "main cable present"),
	mutated("three sets of an inlet", newBarn, func(k *cart) { k.run("inlet", "").Sets = 3 }, "inlet parallel sets"),
	mutated("three sets of a dc circuit", newBarn, func(k *cart) { k.run("dc", "radio").Sets = 3 }, "dc parallel sets"),
	mutated("stronger fault on a main from all strings", newBarn, func(k *cart) { k.device("fuse-100").InterruptingDCA = 7339 }, "main interrupting rating"),
	mutated("one pole for both hots", newBarn, func(k *cart) { k.device("b20-2").Poles = 1 }, "branch device poles"),
	mutated("feeder with one pole", newBarn, func(k *cart) { k.device("b20-f").Poles = 1 }, "feeder device poles"),
	mutated("neutral not wired", newBarn, func(k *cart) { k.s.Circuits[2].Neutral = true }, "branch conductors"),
	mutated("string at a stated short circuit", newFair, func(k *cart) { k.battery("block").ShortCircuitA = 10001 }, "string interrupting rating", "dc interrupting rating"),
	mutated("cable of aluminium under iec", newFair, func(k *cart) { k.ownCable(k.run("main", "")).Material = "aluminium" }, "main cable listed"),
}

// loneMutations have no twin: under iec insulation of 90 °C at terminals of 70 °C.
var loneMutations = []mutation{
	mutated("a feeder's cable too hot for its terminals", newStable, func(k *cart) {
		k.inverter("split-3").LegW = 2200 // 18.3 A: 1.5 mm2 carries 17.5 A at 70 °C, 23 A at 90 °C
		k.s.Runs[2].Bundled = 2
		k.ownCable(k.run("feeder", "")).Size = "1.5 mm2"
	}, "feeder terminal ampacity"),
	mutated("a branch's cable too hot for its terminals", newStable, func(k *cart) {
		k.ownCable(k.run("branch", "bench")).Size = "1.5 mm2" // 17.5 A at 70 °C, 23 A at 90 °C
	}, "branch terminal ampacity"),
	mutated("a circuit's cable on the bus too hot for its terminals", newStable, func(k *cart) {
		k.s.Circuits[3].DeviceA, k.device("fuse-10").RatingA = 20, 20 // 19.5 A at 70 °C, 24 A at 90 °C
		k.device("fuse-10").Type = breakerType
		k.ownCable(k.run("dc", "radio")).Size = "1.5 mm2"
	}, "dc terminal ampacity"),
}
