package audit

import (
	"strings"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// path is one cable path of a good plan, with what it takes to break it and what finds that beside the
// check in question. Names of checks follow the kind of path, but for those that begin with =.
type path struct {
	kind, of string
	fresh    func() *cart
	device   string
	smallA   float64      // a standard rating just below the current asked for
	thin     catalog.Size // a size too thin for the current
	byThin   []string
	byLarge  []string // what finds a device of 400 A
	byOdd    []string // what finds a device of half an ampere more
	byFew    []string // what finds a pole too few
}

var (
	byCurrent    = []string{"terminal ampacity", "corrected ampacity", "cable protected"}
	bySmall      = append(byCurrent[:3:3], "small conductor")
	exactAndWire = []string{"device rating", "cable protected", "small conductor"}
)

var paths = []path{
	{"string", "slab", newBarn, "fuse-125", 110, "4 AWG", byCurrent, []string{"cable protected", "device limit"}, nil, nil},
	{"main", "", newBarn, "fuse-100", 90, "6 AWG", byCurrent, []string{"cable protected"}, nil, nil},
	{"feeder", "", newBarn, "b20-f", 15, "14 AWG", []string{"small conductor"},
		[]string{"cable protected", "=load-centre rating"}, nil, nil},
	{"branch", "bench", newBarn, "b20-1", 15, "14 AWG", bySmall, exactAndWire, exactAndWire, nil},
	{"dc", "radio", newBarn, "fuse-10", 6, "18 AWG", []string{"cable listed"}, exactAndWire, []string{"device rating"}, nil},
	{"inlet", "", newBarn, "b20-in", 15, "14 AWG", bySmall, exactAndWire, []string{"device rating"}, nil},
	{"string", "block", newFair, "gg-125", 80, "6 mm2",
		append(byCurrent[:3:3], "parallel sets", "fuse overload"), []string{"cable protected", "fuse overload"}, nil, nil},
	{"feeder", "", newFair, "gg-10", 6, "1 mm2", []string{"cable listed"}, []string{"cable protected", "fuse overload"}, nil, nil},
	{"branch", "stall", newFair, "gg-10-b", 6, "1 mm2", []string{"cable listed"},
		[]string{"device rating", "cable protected", "fuse overload"}, []string{"device rating"}, nil},
	{"dc", "cooler", newFair, "gg-10-dc", 6, "1 mm2", []string{"cable listed"},
		[]string{"device rating", "cable protected", "fuse overload"}, []string{"device rating"}, nil},
	{"inlet", "", newFair, "gg-10-in", 6, "1 mm2", []string{"cable listed"},
		[]string{"device rating", "cable protected", "fuse overload"}, []string{"device rating"}, nil},
	{"solar", "", newFair, "pv-25", 16, "1.5 mm2", []string{"terminal ampacity", "cable protected", "fuse overload", "voltage drop"},
		[]string{"cable protected", "fuse overload"}, nil, nil},

	// The twins.
	{"string", "slab", newStable, "fuse-125", 80, "6 mm2",
		append(byCurrent[:3:3], "fuse overload"), []string{"cable protected", "fuse overload", "device limit"}, nil, nil},
	{"main", "", newStable, "fuse-100", 63, "6 mm2",
		append(byCurrent[:3:3], "fuse overload"), []string{"cable protected", "fuse overload"}, nil, nil},
	{"feeder", "", newStable, "b20-f", 13, "1.5 mm2", []string{"cable protected"}, []string{"cable protected", "=load-centre rating"}, nil, nil},
	{"branch", "bench", newStable, "b20-1", 16, "1 mm2", []string{"cable listed"},
		[]string{"device rating", "cable protected"}, []string{"device rating"}, nil},
	{"dc", "radio", newStable, "fuse-10", 6, "1 mm2", []string{"cable listed"},
		[]string{"device rating", "cable protected", "fuse overload"}, []string{"device rating"}, nil},
	{"inlet", "", newStable, "b20-in", 16, "1.5 mm2", []string{"terminal ampacity"},
		[]string{"device rating", "cable protected"}, []string{"device rating"}, nil},
	{"string", "block", newBooth, "gg-125", 110, "8 AWG", append(byCurrent[:3:3], "parallel sets"), []string{"cable protected"}, nil, nil},
	{"feeder", "", newBooth, "gg-10", 10, "18 AWG", []string{"cable listed"},
		[]string{"cable protected", "small conductor"}, []string{"cable protected", "small conductor"}, nil},
	{"branch", "stall", newBooth, "gg-10-b", 15, "18 AWG", []string{"cable listed"}, exactAndWire, exactAndWire, nil},
	{"dc", "cooler", newBooth, "gg-10-dc", 6, "18 AWG", []string{"cable listed"}, exactAndWire, []string{"device rating"}, nil},
	{"inlet", "", newBooth, "gg-10-in", 15, "18 AWG", []string{"cable listed"}, exactAndWire, exactAndWire, nil},
	{"solar", "", newBooth, "pv-25", 20, "14 AWG", bySmall, []string{"cable protected", "small conductor"}, nil, nil},
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

// unlisted makes a cable one of no listed size.
func (k *cart) unlisted(c *catalog.Cable) { c.Size, c.OuterM = "0.1 mm2", 0.001 }

// asked are what the scenario asks of a kind of path.
type asked struct {
	drop, ambientC *float64
	conduit        *string
}

func (k *cart) asked(kind, of string) asked {
	for i := range k.s.Circuits {
		if c := &k.s.Circuits[i]; (kind == "branch" || kind == "dc") && c.Name == of {
			return asked{&c.Drop, &c.AmbientC, &c.Conduit}
		}
	}
	r := k.s.Run(scenarios.RunKind(kind))
	return asked{&r.Drop, &r.AmbientC, &r.Conduit}
}

// pathMutations breaks each kind of cable path in each way it can be broken.
func pathMutations() (all []mutation) {
	for _, x := range paths {
		w := wayToBreak{x.kind, x.of, x.fresh, &all}
		breakAny(w)
		breakWired(x, w)
		breakDevice(x, w)
		breakEnds(x, w)
	}
	for _, fresh := range []func() *cart{newBarn, newFair, newStable, newBooth} {
		w := wayToBreak{"bond", "", fresh, &all}
		breakAny(w)
		w.add("a line conductor", func(k *cart, r *plan.Run) { r.Cable = r.Ground }, pathNoLine)
		w.add("a device", func(k *cart, r *plan.Run) { r.Device = k.run("string", k.c.Batteries[0].ID).Device }, pathNoLine, pathDevices)
		breakGround(w)
	}
	return all
}

// wayToBreak is a path of a cart, and the mutations that are added to.
type wayToBreak struct {
	kind, of string
	fresh    func() *cart
	all      *[]mutation
}

func (w wayToBreak) add(name string, do func(k *cart, r *plan.Run), checks ...string) {
	var want []string
	for _, c := range checks {
		if raw, ok := strings.CutPrefix(c, "="); ok {
			want = append(want, raw)
			continue
		}
		want = append(want, w.kind+" "+c)
	}
	name = strings.TrimSpace(w.kind+" "+w.of) + " of the " + w.fresh().s.Name + ": " + name
	*w.all = append(*w.all, mutated(name, w.fresh, func(k *cart) { do(k, k.run(w.kind, w.of)) }, want...))
}

// breakAny breaks what every path has.
func breakAny(w wayToBreak) {
	w.add("wired once too often", func(k *cart, r *plan.Run) {
		r.Count++
		for i := range k.c.Sundries {
			k.c.Sundries[i].Spaces *= 2
		}
	}, pathCount)
	w.add("another length", func(_ *cart, r *plan.Run) { r.LengthM += 0.1 }, pathLength)
	w.add("another length bought", func(_ *cart, r *plan.Run) { r.BoughtM += 0.1 }, pathBought)
	w.add("a conductor more", func(_ *cart, r *plan.Run) { r.Conductors++ }, pathConductors)
	w.add("a device more", func(_ *cart, r *plan.Run) { r.Devices++ }, pathDevices)
	w.add("no conduit of the type asked for", func(k *cart, r *plan.Run) {
		*k.asked(w.kind, w.of).conduit, r.Conduit = "pipe", ""
	}, "conduit present")
	w.add("a conduit too tight", func(k *cart, r *plan.Run) {
		k.c.Conduits = append(k.c.Conduits, catalog.Conduit{Part: catalog.Part{ID: "straw"}, Type: "straw", InsideMM2: 2})
		*k.asked(w.kind, w.of).conduit = "straw"
		for i := range k.p.Runs {
			if other := &k.p.Runs[i]; other.Run == r.Run && other.Name == r.Name {
				other.Conduit = "straw"
			}
		}
	}, "conduit fill")
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
		w.add("another "+figure.name+" stated", func(_ *cart, r *plan.Run) {
			*figure.of(r) *= 1.0001
			if *figure.of(r) == 0 {
				*figure.of(r) = 1
			}
		}, pathFigures)
		(*w.all)[len(*w.all)-1].stated = true
	}
}

// breakWired breaks the cable of a path.
func breakWired(x path, w wayToBreak) {
	w.add("cable of no listed size", func(k *cart, r *plan.Run) { k.unlisted(k.ownCable(r)) }, "cable listed")
	w.add("green cable", func(k *cart, r *plan.Run) { k.ownCable(r).GroundOnly = true }, "cable listed")
	w.add("thinner cable", func(k *cart, r *plan.Run) { k.ownCable(r).Size = x.thin }, x.byThin...)
	w.add("drop too large", func(k *cart, _ *plan.Run) { *k.asked(x.kind, x.of).drop /= 1000 }, "voltage drop")
	hot := []string{"corrected ampacity", "cable protected"}
	if k := x.fresh(); k.s.Rules == scenarios.IEC && k.device(x.device).Type == fuseType {
		hot = append(hot, "fuse overload")
	}
	w.add("too hot", func(k *cart, _ *plan.Run) { *k.asked(x.kind, x.of).ambientC = 200 }, hot...)
	w.add("no set", func(_ *cart, r *plan.Run) { r.Sets = 0 }, "cable present")
	if x.kind != "string" && x.kind != "main" {
		return
	}
	w.add("building wire where fine strand is asked for", func(k *cart, r *plan.Run) {
		k.s.Cable.Fine = true
		for i := range k.c.Cables {
			k.c.Cables[i].Fine = true
		}
		k.ownCable(r).Fine = false
	}, "cable strand")
}

// breakDevice breaks the device of a path.
func breakDevice(x path, w wayToBreak) {
	device := func(name string, do func(d *catalog.Device), checks ...string) {
		w.add(name, func(k *cart, _ *plan.Run) { do(k.device(x.device)) }, checks...)
	}
	w.add("no device", func(_ *cart, r *plan.Run) { r.Device = "" }, pathDevices, "device present")
	device("device too small", func(d *catalog.Device) { d.RatingA = x.smallA }, "device rating")
	device("device of no standard rating", func(d *catalog.Device) { d.RatingA += 0.5 },
		append([]string{"standard rating"}, x.byOdd...)...)
	device("larger device", func(d *catalog.Device) { d.RatingA = 400 }, x.byLarge...)
	device("device of too few volts", func(d *catalog.Device) { d.MaxACV, d.MaxDCV = 24, 24 }, "device voltage")
	device("device of too few poles", func(d *catalog.Device) { d.Poles-- }, append([]string{"device poles"}, x.byFew...)...)
	device("device that can't break the fault", func(d *catalog.Device) {
		d.InterruptingACA, d.InterruptingDCA = 10, 10
	}, "interrupting rating")
	device("fuse of partial range", func(d *catalog.Device) { d.Class = "aR" }, "device class")
	if x.fresh().s.Rules == scenarios.NEC {
		device("terminals too cold for any column", func(d *catalog.Device) { d.TerminalC = 50 }, byCurrent...)
		device("device that is not listed", func(d *catalog.Device) { d.Listed = catalog.No }, "device listed")
	}
	if x.kind == "string" || x.kind == "main" {
		device("polarised breaker", func(d *catalog.Device) { d.Type, d.Polarised = breakerType, catalog.Yes }, "device polarised")
	}
}

// breakEnds breaks what only some kinds of path have: a ground, links, own devices.
func breakEnds(x path, w wayToBreak) {
	switch x.kind {
	case "feeder", "branch", "inlet", "solar":
		breakGround(w)
	default:
		w.add("a ground", func(_ *cart, r *plan.Run) { r.Ground = r.Cable }, pathNoGround)
	}
	switch x.kind {
	case "string":
		w.add("a link more", func(_ *cart, r *plan.Run) { r.Links++ }, pathLinks)
		w.add("a longer link", func(_ *cart, r *plan.Run) { r.LinkM += 0.1 }, pathLinks)
		w.add("two wired in different ways", func(k *cart, r *plan.Run) {
			for i := range k.c.Offers {
				k.c.Offers[i].MinQty = 1
			}
			r.Count = 1
			other := *r
			k.ownCable(&other)
			k.p.Runs = append(k.p.Runs, other)
		}, pathAlike)
		w.add("an own device that is not there", func(_ *cart, r *plan.Run) { r.OwnDevice = true }, pathOwnDevice)
		w.add("larger device than the battery's maker allows", func(k *cart, _ *plan.Run) { k.battery(x.of).MaxFuseA = 124 }, "device limit")
	case "main", "feeder":
		w.add("device beside the inverter's own breaker", func(k *cart, r *plan.Run) {
			k.s.Run(scenarios.RunKind(x.kind)).OwnBreakerA = k.device(x.device).RatingA
			r.Devices = 0
		}, pathOwnBreaker)
	}
}

// breakGround breaks a ground.
func breakGround(w wayToBreak) {
	w.add("no ground", func(_ *cart, r *plan.Run) { r.Ground = "" }, "ground present")
	w.add("ground of no listed size", func(k *cart, r *plan.Run) { k.unlisted(k.ownGround(r)) }, "ground listed")
	w.add("ground too thin", func(k *cart, r *plan.Run) {
		g := k.ownGround(r)
		if g.Size = "14 AWG"; k.s.Rules == scenarios.IEC {
			g.Size = "1 mm2"
		}
	}, "ground size")
}
