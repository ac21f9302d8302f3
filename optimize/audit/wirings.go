package audit

import (
	"math"
	"slices"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
	"cartwright/scenarios/ratings"
)

// wired is one way to build a cable path from owned parts, and what it takes of them.
type wired struct {
	run    plan.Run
	takes  tally
	metal  float64 // mm2·m of conductor it takes
	failed []check
}

// parts are the parts that a path is built from; "" is none. Own says that the battery's own device serves.
type parts struct {
	cable, device, ground string
	sets                  int
	own                   bool
}

// waysToWire returns every way to build a task's path from the parts in a tally, whether it passes or
// not, in the order of the catalogue; but no parallel sets of conductors too small for that, which nobody
// should build. Partial ways lack a ground, or a device where nothing else is wrong.
func (in *installer) waysToWire(a *auditor, t *task, from *tally, partial bool) (ways []wired) {
	cables := in.held(from, catalog.KindCable)
	devices, grounds := in.held(from, catalog.KindDevice), cables
	built, most := []bool{false}, mostSets
	switch {
	case t.kind == scenarios.RunBond:
		cables, devices, most = []string{""}, []string{""}, 1
	case t.ownBreakerA > 0:
		devices = []string{""}
	case t.own != nil:
		built = []bool{true, false}
	}
	if t.ownBreakerA <= 0 && (partial || t.own != nil) {
		devices = append(slices.Clip(devices), "")
	}
	if !t.ground {
		grounds = []string{""}
	} else if partial && t.kind != scenarios.RunBond {
		grounds = append(slices.Clip(grounds), "")
	}
	for _, cable := range cables {
		for sets := 1; sets <= most; sets++ {
			for _, own := range built {
				for _, device := range devices {
					for _, ground := range grounds {
						if w, ok := in.try(a, t, from, parts{cable, device, ground, sets, own}, partial); ok {
							ways = append(ways, w)
						}
					}
				}
			}
		}
	}
	return ways
}

// try builds one path; ok is false where it can't or should not be built so.
func (in *installer) try(a *auditor, t *task, from *tally, p parts, partial bool) (w wired, ok bool) {
	if p.own && !t.bothEnds && p.device != "" {
		return w, false // one device is enough
	}
	w = in.wire(a, t, from, p)
	if !w.takes.within(from) || w.fails("parallel sets") {
		return w, false
	}
	lacks := w.fails("device present") || w.fails(pathDevices)
	return w, !lacks || partial && a.onlyDeviceLacks(t, &w.run)
}

// onlyDeviceLacks reports whether a path without a device would pass with the smallest breaker that
// carries its current; its ground may be missing too.
func (a *auditor) onlyDeviceLacks(t *task, r *plan.Run) bool {
	standard := ratings.Standard(string(a.s.Rules), breakerType)
	_, breakerA := ratings.Around(standard, a.rule(t, r).requiredA)
	behind := *t
	behind.ownBreakerA = breakerA
	for _, c := range a.rule(&behind, r).checks {
		if !c.passed && c.name != "ground present" {
			return false
		}
	}
	return breakerA > 0
}

// held returns the parts of a kind that a tally holds, in the order of the catalogue: pieces, or some
// length.
func (in *installer) held(from *tally, kind catalog.Kind) (ids []string) {
	for _, e := range in.c.All() {
		n := from.quantity[article{part: e.ID}]
		if e.Kind == kind && (n >= 1 || in.stock.byLength(e.ID) && n > 0) {
			ids = append(ids, e.ID)
		}
	}
	return ids
}

// wire builds one path of a task from the named parts; fuses of strings of modules and a conduit are added
// from what a tally holds.
func (in *installer) wire(a *auditor, t *task, from *tally, p parts) wired {
	w := wired{run: plan.Run{
		Run: string(t.kind), Name: t.circuit, Battery: t.battery, Cable: p.cable, Ground: p.ground, Sets: p.sets,
		Device: p.device, OwnDevice: p.own, Count: 1, LengthM: t.lengthM, BoughtM: a.conductorM(t.lengthM),
		Conductors: t.conductors, Links: t.links,
		DesignA: t.designA, DropLimitPct: 100 * t.drop, FaultA: t.faultA,
	}}
	if t.kind == scenarios.RunBond {
		w.run.DropLimitPct = 0
	}
	if t.links > 0 {
		w.run.LinkM = t.linkM
	}
	if p.device != "" {
		w.run.Devices = int(devicesOf(t, &w.run))
	}
	if t.stringFuses > 0 {
		w.run.StringFuse, w.run.StringFuses = in.stringFuse(a, t, from, w.run)
	}
	if t.conduit != "" {
		w.run.Conduit = in.conduitFor(a, t, from, w.run)
	}
	a.requiredOf(&w.takes, &w.run)
	w.takes.dropEnds()
	for _, x := range w.takes.order {
		if cable := in.stock.cables[x.part]; cable != nil {
			w.metal += w.takes.quantity[x] * cable.Size.AreaMM2()
		}
	}
	res := a.rule(t, &w.run)
	w.run.RequiredA, w.run.AllowedA, w.run.DeviceA = res.requiredA, res.allowedA, res.deviceA
	w.run.DropPct, w.run.InterruptingA = res.dropPct, res.interruptingA
	if t.ownBreakerA <= 0 {
		res.same(pathDevices, float64(w.run.Devices), devicesOf(t, &w.run), "", "")
	}
	for _, c := range res.checks {
		if !c.passed {
			w.failed = append(w.failed, c)
		}
	}
	return w
}

// dropEnds takes the ends out of a tally: an owned cable can be crimped.
func (t *tally) dropEnds() {
	t.order = slices.DeleteFunc(t.order, func(x article) bool {
		if x.ends {
			delete(t.quantity, x)
		}
		return x.ends
	})
}

// stringFuse returns the held fuse for each string of modules of a path by which fewest checks fail, and how
// many it takes; none where too few are held.
func (in *installer) stringFuse(a *auditor, t *task, from *tally, run plan.Run) (fuse string, count int) {
	fewest := math.MaxInt
	for _, id := range in.held(from, catalog.KindDevice) {
		if from.quantity[article{part: id}] < float64(t.stringFuses) {
			continue
		}
		run.StringFuse, run.StringFuses = id, t.stringFuses
		var r ruling
		a.judgeStringFuse(&r, t, &run)
		failed := 0
		for _, c := range r.checks {
			failed += int(1 - answered(c.passed))
		}
		if failed < fewest {
			fuse, count, fewest = id, t.stringFuses, failed
		}
	}
	return fuse, count
}

// conduitFor returns the held conduit of the type asked for that the conductors of a path fill least but no
// more than allowed, else the widest; "" for none.
func (in *installer) conduitFor(a *auditor, t *task, from *tally, run plan.Run) (best string) {
	fits := func(id string) bool {
		run.Conduit = id
		var r ruling
		a.judgeConduit(&r, t, &run)
		return r.allPassed()
	}
	for _, id := range in.held(from, catalog.KindConduit) {
		x, other := in.stock.conduits[id], in.stock.conduits[best]
		if x.Type != t.conduit || from.quantity[article{part: id}] < t.lengthM*(1-sixDigits) {
			continue
		}
		if other == nil || fits(id) && (!fits(best) || x.InsideMM2 < other.InsideMM2) || !fits(best) && x.InsideMM2 > other.InsideMM2 {
			best = id
		}
	}
	return best
}

// fails reports whether a way to wire fails a check of the rule set.
func (w *wired) fails(name string) bool {
	return slices.ContainsFunc(w.failed, func(c check) bool { return c.name == name })
}

// nothingThere is how far a path without a device is from passing, in failed checks: further than one with any device,
// which cannot fail that many.
const nothingThere = 20

// shortfall says how far a way to wire is from passing: the number of checks it fails, plus for each the difference of
// its two numbers as a part of the larger. 0 where it passes.
func (w *wired) shortfall() float64 {
	sum := 0.0
	for _, c := range w.failed {
		sum += 1 + math.Abs(c.value-c.limit)/math.Max(scale(c.value, c.limit), math.SmallestNonzeroFloat64)
	}
	if w.fails("device present") {
		sum += nothingThere
	}
	return sum
}

// within reports whether another tally holds all of this one. A cable may be short by less than a tape measure shows.
func (t *tally) within(other *tally) bool {
	for _, x := range t.order {
		if t.quantity[x] > other.quantity[x]*(1+sixDigits) {
			return false
		}
	}
	return true
}
