package audit

import (
	"strings"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// path is one cable path of a good plan, with what it takes to break it and what finds that beside the
// check in question.
type path struct {
	kind, of string
	fresh    func() *cart
	device   string
	smallA   float64      // a standard rating just below the current asked for
	thin     catalog.Size // a size too thin for the current
	byThin   []string
	byLarge  []string // what finds a device of 400 A
	byOdd    []string // what finds a device of half an ampere more
}

var paths = []path{
	{"string", "slab", newBarn, "fuse-125", 110, "4 AWG",
		[]string{"terminal ampacity", "corrected ampacity", "cable protected"}, []string{"cable protected"}, nil},
	{"main", "", newBarn, "fuse-100", 90, "6 AWG",
		[]string{"terminal ampacity", "corrected ampacity", "cable protected"}, []string{"cable protected"}, nil},
	{"feeder", "", newBarn, "b35-2", 30, "14 AWG",
		[]string{"terminal ampacity", "corrected ampacity", "cable protected", "small conductor"},
		[]string{"cable protected", "ground size"}, nil},
	{"branch", "bench", newBarn, "b20-1", 15, "14 AWG",
		[]string{"terminal ampacity", "corrected ampacity", "cable protected", "small conductor"},
		[]string{"device rating", "cable protected", "small conductor"},
		[]string{"device rating", "cable protected", "small conductor"}},
	{"string", "block", newFair, "gg-125", 80, "6 mm2",
		[]string{"parallel sets", "corrected ampacity", "cable protected", "fuse overload"},
		[]string{"cable protected", "fuse overload"}, nil},
	{"feeder", "", newFair, "gg-10", 6, "1 mm2", []string{"cable listed"}, []string{"cable protected", "fuse overload"}, nil},
	{"branch", "stall", newFair, "gg-10-b", 6, "1 mm2", []string{"cable listed"},
		[]string{"device rating", "cable protected", "fuse overload"}, []string{"device rating"}},

	// The twins.
	{"string", "slab", newStable, "fuse-125", 80, "6 mm2",
		[]string{"corrected ampacity", "cable protected", "fuse overload"}, []string{"cable protected", "fuse overload"}, nil},
	{"main", "", newStable, "fuse-100", 63, "6 mm2",
		[]string{"corrected ampacity", "cable protected", "fuse overload"}, []string{"cable protected", "fuse overload"}, nil},
	{"feeder", "", newStable, "b35-2", 20, "1.5 mm2",
		[]string{"corrected ampacity", "cable protected"}, []string{"cable protected"}, nil},
	{"branch", "bench", newStable, "b20-1", 16, "1 mm2", []string{"cable listed"},
		[]string{"device rating", "cable protected"}, []string{"device rating"}},
	{"string", "block", newBooth, "gg-125", 110, "8 AWG",
		[]string{"parallel sets", "terminal ampacity", "corrected ampacity", "cable protected"}, []string{"cable protected"}, nil},
	{"feeder", "", newBooth, "gg-10", 10, "18 AWG", []string{"cable listed"},
		[]string{"cable protected", "small conductor"}, []string{"cable protected", "small conductor"}},
	{"branch", "stall", newBooth, "gg-10-b", 15, "18 AWG", []string{"cable listed"},
		[]string{"device rating", "cable protected", "small conductor"},
		[]string{"device rating", "cable protected", "small conductor"}},
}

// ownCable gives a run a cable part of its own, of another id and else the same.
func (k *cart) ownCable(r *plan.Run) *catalog.Cable {
	c := *k.cable(r.Cable)
	c.ID += " of its own"
	k.c.Cables = append(k.c.Cables, c)
	r.Cable = c.ID
	return &k.c.Cables[len(k.c.Cables)-1]
}

// ownGround does the same for the ground of a run.
func (k *cart) ownGround(r *plan.Run) *catalog.Cable {
	c := *k.cable(r.Ground)
	c.ID += " for ground"
	k.c.Cables = append(k.c.Cables, c)
	r.Ground = c.ID
	return &k.c.Cables[len(k.c.Cables)-1]
}

// asked changes what the scenario asks of a kind of path.
func (k *cart) asked(kind string, change func(drop, ambientC *float64)) {
	if kind == string(scenarios.RunBranch) {
		for i := range k.s.Circuits {
			change(&k.s.Circuits[i].Drop, &k.s.Circuits[i].AmbientC)
		}
		return
	}
	r := k.s.Run(scenarios.RunKind(kind))
	change(&r.Drop, &r.AmbientC)
}

// pathMutations breaks each kind of cable path in each way it can be broken.
func pathMutations() (all []mutation) {
	for _, x := range paths {
		add := func(name string, do func(k *cart, r *plan.Run), checks ...string) {
			var want []string
			for _, c := range checks {
				want = append(want, x.kind+" "+c)
			}
			all = append(all, mutated(strings.TrimSpace(x.kind+" "+x.of)+" of the "+x.fresh().s.Name+": "+name, x.fresh, func(k *cart) { do(k, k.run(x.kind, x.of)) }, want...))
		}
		device := func(name string, do func(d *catalog.Device), checks ...string) {
			add(name, func(k *cart, _ *plan.Run) { do(k.device(x.device)) }, checks...)
		}
		add("wired once too often", func(_ *cart, r *plan.Run) { r.Count++ }, pathCount)
		add("another length", func(_ *cart, r *plan.Run) { r.LengthM += 0.1 }, pathLength)
		add("a conductor more", func(_ *cart, r *plan.Run) { r.Conductors++ }, pathConductors)
		add("no device", func(_ *cart, r *plan.Run) { r.Device = "" }, "device present")
		device("device too small", func(d *catalog.Device) { d.RatingA = x.smallA }, "device rating")
		device("device of no standard rating", func(d *catalog.Device) { d.RatingA += 0.5 },
			append([]string{"standard rating"}, x.byOdd...)...)
		device("larger device", func(d *catalog.Device) { d.RatingA = 400 }, x.byLarge...)
		device("device of too few volts", func(d *catalog.Device) { d.MaxACV, d.MaxDCV = 24, 24 }, "device voltage")
		device("device of too few poles", func(d *catalog.Device) { d.Poles-- }, "device poles")
		device("device that can't break the fault", func(d *catalog.Device) {
			d.InterruptingACA, d.InterruptingDCA = 2400, 2400
		}, "interrupting rating")
		add("cable of no listed size", func(k *cart, r *plan.Run) { k.ownCable(r).Size = "0.1 mm2" }, "cable listed")
		add("thinner cable", func(k *cart, r *plan.Run) { k.ownCable(r).Size = x.thin }, x.byThin...)
		add("drop too large", func(k *cart, _ *plan.Run) {
			k.asked(x.kind, func(drop, _ *float64) { *drop /= 1000 })
		}, "voltage drop")
		hot := []string{"corrected ampacity", "cable protected"}
		if k := x.fresh(); k.s.Rules == scenarios.IEC && k.device(x.device).Type == "fuse" {
			hot = append(hot, "fuse overload")
		}
		add("too hot", func(k *cart, _ *plan.Run) {
			k.asked(x.kind, func(_, ambientC *float64) { *ambientC = 200 })
		}, hot...)
		if x.kind == "feeder" || x.kind == "branch" {
			add("no ground", func(_ *cart, r *plan.Run) { r.Ground = "" }, "ground present")
			add("ground of no listed size", func(k *cart, r *plan.Run) { k.ownGround(r).Size = "0.1 mm2" }, "ground listed")
			add("ground too thin", func(k *cart, r *plan.Run) {
				g := k.ownGround(r)
				if g.Size = "14 AWG"; k.s.Rules == scenarios.IEC {
					g.Size = "1 mm2"
				}
			}, "ground size")
		} else {
			add("a ground", func(_ *cart, r *plan.Run) { r.Ground = r.Cable }, pathNoGround)
		}
		for _, figure := range []struct {
			name string
			of   func(r *plan.Run) *float64
		}{
			{"design current", func(r *plan.Run) *float64 { return &r.DesignA }},
			{"required current", func(r *plan.Run) *float64 { return &r.RequiredA }},
			{"ampacity", func(r *plan.Run) *float64 { return &r.AllowedA }},
			{"device rating", func(r *plan.Run) *float64 { return &r.DeviceA }},
			{"drop", func(r *plan.Run) *float64 { return &r.DropPct }},
			{"drop limit", func(r *plan.Run) *float64 { return &r.DropLimitPct }},
			{"fault current", func(r *plan.Run) *float64 { return &r.FaultA }},
			{"interrupting rating", func(r *plan.Run) *float64 { return &r.InterruptingA }},
		} {
			add("another "+figure.name+" stated", func(_ *cart, r *plan.Run) { *figure.of(r) *= 1.0001 }, pathFigures)
			all[len(all)-1].stated = true
		}
	}
	return all
}

var oddPathMutations = []mutation{
	mutated("a run of no kind", newFair, func(k *cart) { k.p.Runs = append(k.p.Runs, plan.Run{Run: "solar", Cable: "c35", Count: 1}) }, ruleRunKinds),
	mutated("a run of no path", newFair, func(k *cart) {
		k.p.Runs = append(k.p.Runs, plan.Run{Run: "main", Cable: "c35", Sets: 1,
			LengthM: 0.6, Conductors: 2})
	}, ruleRunKinds),
	mutated("a branch of no circuit", newFair, func(k *cart) { k.run("branch", "stall").Name = "stable" }, ruleRunKinds, "branch count"),
	mutated("a string of another battery", newBarn, func(k *cart) { k.run("string", "brick").Battery = "slab" },
		"string count", "string device rating", "string terminal ampacity", "string corrected ampacity"),
	mutated("a feeder that is not listed", newFair, func(k *cart) { k.s.Runs = k.s.Runs[:2] }, ruleRunKinds),
	mutated("strings that are not listed", newFair, func(k *cart) { k.s.Runs = k.s.Runs[1:] }, ruleRunKinds),
	mutated("mains that are not listed", newFair, func(k *cart) { k.s.Runs = append(k.s.Runs[:1], k.s.Runs[2:]...) }, ruleRunKinds),
	mutated("a main too few", newBarn, func(k *cart) { k.run("main", "").Count = 1 }, "main count"),
	mutated("no feeder", newFair, func(k *cart) { k.p.Runs = append(k.p.Runs[:2], k.p.Runs[3:]...) }, "feeder count"),
	mutated("device beside the inverter's own breaker", newFair, func(k *cart) { k.run("main", "").Device = "gg-125" }, "main own breaker"),
	mutated("device beside a string's own breaker", newFair, func(k *cart) { k.s.Runs[0].OwnBreakerA = 125 }, "string own breaker"),
	mutated("device beside a feeder's own breaker", newFair, func(k *cart) { k.s.Runs[2].OwnBreakerA = 10 }, "feeder own breaker"),
	mutated("own breaker too large for the cable", newFair, func(k *cart) { k.s.Runs[1].OwnBreakerA = 200 }, "main cable protected"),
	mutated("fuse on the main, too large for its overload", newFair, func(k *cart) {
		k.s.Runs[1].OwnBreakerA = 0
		d := *k.device("gg-125")
		d.ID, d.RatingA = "gg-160", 160 // 1.6 * 160 = 256 A, 1.45 * 171 = 248 A
		k.c.Devices = append(k.c.Devices, d)
		k.run("main", "").Device = "gg-160"
	}, "main fuse overload"),
	mutated("small conductor of a string", newBarn, func(k *cart) {
		k.battery("brick").MaxDischargeA = 20 // 25 A asked for; 12 AWG carries 25 A at 75 °C
		k.s.Runs[0].TerminalC = 75
		k.device("fuse-80").RatingA = 25
		k.c.Cables[1].Size = "12 AWG"
	}, ruleBusCurrent, "string small conductor"),
	mutated("small conductor of a main", newBarn, func(k *cart) {
		k.inverter("split-3").ContinuousW = 800 // 19.8 A; 24.7 A asked for
		k.s.Runs[1].TerminalC, k.s.Runs[1].Drop = 75, 0.05
		k.device("fuse-100").RatingA = 25
		k.c.Cables[2].Size = "12 AWG"
	}, "main small conductor"),
	mutated("three sets of a main", newBarn, func(k *cart) { k.run("main", "").Sets = 3 }, "main parallel sets"),
	mutated("three sets of a feeder", newBarn, func(k *cart) { k.run("feeder", "").Sets = 3 }, "feeder parallel sets"),
	mutated("three sets of a branch", newBarn, func(k *cart) { k.run("branch", "bench").Sets = 3 }, "branch parallel sets"),
	mutated("three sets of a string", newFair, func(k *cart) { k.run("string", "block").Sets = 3 }, "string parallel sets"),
	mutated("no set of a string", newFair, func(k *cart) { k.run("string", "block").Sets = 0 }, "string cable present"),
	mutated("no set of a main", newFair, func(k *cart) { k.run("main", "").Sets = 0 }, "main cable present"),
	mutated("no set of a feeder", newFair, func(k *cart) { k.run("feeder", "").Sets = 0 }, "feeder cable present"),
	mutated("no set of a branch", newFair, func(k *cart) { k.run("branch", "stall").Sets = 0 }, "branch cable present"),
	mutated("stronger fault on a string from all the others", newBarn, func(k *cart) { k.device("fuse-80").InterruptingDCA = 5839 }, "string interrupting rating"),
	mutated("stronger fault on a main from all strings", newBarn, func(k *cart) { k.device("fuse-100").InterruptingDCA = 7339 }, "main interrupting rating"),
	mutated("one pole for both hots", newBarn, func(k *cart) { k.device("b20-2").Poles = 1 }, "branch device poles"),
	mutated("feeder with one pole", newBarn, func(k *cart) { k.device("b35-2").Poles = 1 }, "feeder device poles"),
	mutated("neutral not wired", newBarn, func(k *cart) { k.s.Circuits[1].Neutral = true }, "branch conductors"),
	mutated("string at a stated short circuit", newFair, func(k *cart) { k.battery("block").ShortCircuitA = 10001 }, "string interrupting rating"),
	mutated("cable of aluminium under iec", newFair, func(k *cart) { k.c.Cables[1].Material = "aluminium" }, "main cable listed"),
}
