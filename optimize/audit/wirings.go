package audit

import (
	"math"
	"slices"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/optimize/wiring"
	"cartwright/scenarios/ratings"
)

// wired is one way to build a cable path from owned parts, and what it takes of them.
type wired struct {
	run    plan.Run
	takes  tally
	metal  float64 // mm2·m of conductor it takes
	failed []wiring.Check
}

// mostSets is the most parallel sets a path is built with.
const mostSets = 2

// waysToWire returns every way to build a task's path from the parts a tally holds, whether it passes or
// not, in the order of the catalogue; but no parallel sets of conductors too small for them, which nobody
// should build. Partial ways go without a ground, or without a device if that is all they lack.
func (in *installer) waysToWire(a *auditor, t *task, from *tally, partial bool) (ways []wired) {
	cables := in.held(from, catalog.KindCable)
	devices, grounds := in.held(from, catalog.KindDevice), cables
	if t.duty.OwnBreakerA > 0 {
		devices = []string{""}
	} else if partial {
		devices = append(devices, "")
	}
	if !t.duty.Ground {
		grounds = []string{""}
	} else if partial {
		grounds = append(grounds[:len(grounds):len(grounds)], "")
	}
	for _, cable := range cables {
		for sets := 1; sets <= mostSets; sets++ {
			for _, device := range devices {
				for _, ground := range grounds {
					w := in.wire(a, t, cable, sets, device, ground)
					if !w.takes.within(from) || w.fails("parallel sets") ||
						w.fails("device present") && !a.onlyDeviceLacks(t, &w.run) {
						continue
					}
					ways = append(ways, w)
				}
			}
		}
	}
	return ways
}

// onlyDeviceLacks reports whether a path without a device would pass behind the smallest breaker that
// carries its current; its ground may still lack too.
func (a *auditor) onlyDeviceLacks(t *task, r *plan.Run) bool {
	standard := ratings.Standard(string(a.s.Rules), "breaker")
	_, breakerA := ratings.Around(standard, a.ruling(t, r).RequiredA)
	behind := *t
	behind.duty.OwnBreakerA = breakerA
	for _, c := range a.ruling(&behind, r).Checks {
		if !c.Passed && c.Name != "ground present" {
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
		if e.Kind == kind && (n >= 1 || kind == catalog.KindCable && n > 0) {
			ids = append(ids, e.ID)
		}
	}
	return ids
}

// wire builds one path of a task from the named parts; "" is no device or no ground.
func (in *installer) wire(a *auditor, t *task, cable string, sets int, device, ground string) wired {
	d := &t.duty
	w := wired{run: plan.Run{
		Run: string(d.Kind), Name: d.Name, Battery: t.battery, Cable: cable, Ground: ground, Sets: sets,
		Device: device, Count: 1, LengthM: d.LengthM, Conductors: d.Conductors,
		DesignA: d.DesignA, DropLimitPct: 100 * d.Drop, FaultA: t.faultA,
	}}
	lay := func(cable string, metres float64) {
		w.takes.add(article{part: cable}, metres)
		w.metal += metres * in.stock.cables[cable].Size.AreaMM2()
	}
	lay(cable, d.LengthM*float64(sets*d.Conductors))
	if ground != "" {
		lay(ground, d.LengthM)
	}
	if device != "" {
		w.takes.add(article{part: device}, 1)
	}
	res := a.ruling(t, &w.run)
	w.run.RequiredA, w.run.AllowedA, w.run.DeviceA = res.RequiredA, res.AllowedA, res.DeviceA
	w.run.DropPct, w.run.InterruptingA = res.DropPct, res.InterruptingA
	for _, c := range res.Checks {
		if !c.Passed {
			w.failed = append(w.failed, c)
		}
	}
	return w
}

// fails reports whether a way to wire fails a check of the rule set.
func (w *wired) fails(check string) bool {
	return slices.ContainsFunc(w.failed, func(c wiring.Check) bool { return c.Name == check })
}

// nothingThere is how far a path without a device is from passing, in failed checks: further than one
// with any device, which fails no more than this.
const nothingThere = 20

// shortfall says how far a way to wire is from passing: the checks it fails, and each by which part of
// the larger of its two numbers. 0 where it passes.
func (w *wired) shortfall() float64 {
	sum := 0.0
	for _, c := range w.failed {
		sum += 1 + math.Abs(c.Value-c.Limit)/math.Max(scale(c.Value, c.Limit), math.SmallestNonzeroFloat64)
	}
	if w.fails("device present") {
		sum += nothingThere
	}
	return sum
}

// within reports whether another tally holds all of this one. A cable may be short by what a tape
// measure does not show.
func (t *tally) within(other *tally) bool {
	for _, x := range t.order {
		if t.quantity[x] > other.quantity[x]*(1+sixDigits) {
			return false
		}
	}
	return true
}

// installRuns wires the cable paths of the core from the owned cables and devices: first as many as can
// pass, then those left with what comes nearest, the nearest of them first.
func (in *installer) installRuns() {
	a := in.auditor()
	tasks := a.tasks()
	counts, passing := make([]int, len(tasks)), make([][]wired, len(tasks))
	for i := range tasks {
		counts[i] = int(tasks[i].count)
		for _, w := range in.waysToWire(a, &tasks[i], in.left, false) {
			if len(w.failed) == 0 {
				passing[i] = append(passing[i], w)
			}
		}
	}
	m := newMatching(in.left, counts, passing, in.mostMatchings)
	m.descend(0, 0, 0)
	if !m.proved() {
		in.notes = append(in.notes, "the search for the best use of the owned cables was cut short; more paths may pass")
	}
	open := slices.Clone(counts) // paths still without a cable
	for i := range tasks {
		open[i] -= len(m.best[i])
		for _, w := range m.best[i] {
			in.lay(&tasks[i], w)
		}
	}
	for {
		at, w := in.nearest(a, tasks, open)
		if w == nil {
			break
		}
		open[at]--
		in.lay(&tasks[at], w)
		if w.run.Device == "" && tasks[at].duty.OwnBreakerA <= 0 {
			in.lack("a fuse or breaker for %s", tasks[at].name())
		}
		if w.run.Ground == "" && tasks[at].duty.Ground {
			in.lack("a ground for %s", tasks[at].name())
		}
	}
	for i, n := range open {
		if n > 0 {
			d := &tasks[i].duty
			in.lack("%d x cable and device for %s, %.4g m of conductor each", n, tasks[i].name(),
				d.LengthM*float64(d.Conductors))
		}
	}
}

// nearest returns the way to wire one of the open paths from what is left that is least far from
// passing, and the task it is for; nil where there is none.
func (in *installer) nearest(a *auditor, tasks []task, open []int) (at int, best *wired) {
	for i := range tasks {
		if open[i] == 0 {
			continue
		}
		ways := in.waysToWire(a, &tasks[i], in.left, true)
		for k := range ways {
			if w := &ways[k]; best == nil || w.shortfall() < best.shortfall() {
				at, best = i, w
			}
		}
	}
	return at, best
}

// lay puts a path into the plan, beside others that are the same, and takes its parts.
func (in *installer) lay(t *task, w *wired) {
	for _, x := range w.takes.order {
		as := t.name()
		if x.part == w.run.Ground && x.part != w.run.Cable {
			as = "ground of " + as
		}
		in.use(x.part, w.takes.quantity[x], as)
	}
	for i := range in.p.Runs {
		r := &in.p.Runs[i]
		same := *r
		same.Count = 1
		if same == w.run {
			r.Count++
			return
		}
	}
	in.p.Runs = append(in.p.Runs, w.run)
}
