package audit

import (
	"fmt"
	"math"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/optimize/wiring"
)

// wired is one way to build a cable path from owned parts, and what it takes of them.
type wired struct {
	run    plan.Run
	takes  tally
	failed []wiring.Check
}

// mostSets is the most parallel sets a path is built with.
const mostSets = 2

// waysToWire returns every way to build a task's path from the parts a tally holds, whether it passes or
// not, in the order of the catalogue.
func (in *installer) waysToWire(a *auditor, t *task, from *tally) (ways []wired) {
	var devices, grounds []string
	if t.duty.OwnBreakerA > 0 {
		devices = []string{""}
	} else {
		for i := range in.c.Devices {
			if id := in.c.Devices[i].ID; from.quantity[article{part: id}] >= 1 {
				devices = append(devices, id)
			}
		}
	}
	var cables []string
	for i := range in.c.Cables {
		if id := in.c.Cables[i].ID; from.quantity[article{part: id}] > 0 {
			cables = append(cables, id)
		}
	}
	if grounds = cables; !t.duty.Ground {
		grounds = []string{""}
	}
	for _, cable := range cables {
		for sets := 1; sets <= mostSets; sets++ {
			for _, device := range devices {
				for _, ground := range grounds {
					w := in.wire(a, t, cable, sets, device, ground)
					if w.takes.within(from) {
						ways = append(ways, w)
					}
				}
			}
		}
	}
	return ways
}

// wire builds one path of a task from the named parts; "" is no device or no ground.
func (in *installer) wire(a *auditor, t *task, cable string, sets int, device, ground string) wired {
	d := &t.duty
	w := wired{run: plan.Run{
		Run: string(d.Kind), Name: d.Name, Battery: t.battery, Cable: cable, Ground: ground, Sets: sets,
		Device: device, Count: 1, LengthM: d.LengthM, Conductors: d.Conductors,
		DesignA: d.DesignA, DropLimitPct: 100 * d.Drop, FaultA: t.faultA,
	}}
	w.takes.add(article{part: cable}, d.LengthM*float64(sets*d.Conductors))
	if ground != "" {
		w.takes.add(article{part: ground}, d.LengthM)
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

// shortfall says how far a way to wire is from passing: the checks it fails, each by which part of the
// larger of its two numbers. 0 where it passes.
func (w *wired) shortfall() float64 {
	sum := 0.0
	for _, c := range w.failed {
		sum++
		if size := scale(c.Value, c.Limit); size > 0 {
			sum += math.Abs(c.Value-c.Limit) / size
		}
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

// move adds a tally, so many times, to this one; below 0 it takes it away.
func (t *tally) move(times float64, other *tally) {
	for _, x := range other.order {
		t.add(x, times*other.quantity[x])
	}
}

// installRuns wires the cable paths of the core from the owned cables and devices: first as many as can
// pass, then those left with what comes nearest.
func (in *installer) installRuns() {
	a := in.auditor()
	tasks := a.tasks()
	m := matchRuns(in, a, tasks)
	if !m.proved() {
		in.notes = append(in.notes, "the search for the best use of the owned cables was cut short; more paths may pass")
	}
	for i := range tasks {
		t, wiredPaths := &tasks[i], 0
		for _, w := range m.best[i] {
			in.lay(t, w)
			wiredPaths++
		}
		for ; wiredPaths < int(t.count); wiredPaths++ {
			w := in.nearest(a, t)
			if w == nil {
				in.lack("%d x %s", int(t.count)-wiredPaths, in.bare(t))
				break
			}
			in.lay(t, w)
		}
	}
}

// nearest returns the way to wire a task's path from what is left that is least far from passing, nil
// where there is none.
func (in *installer) nearest(a *auditor, t *task) *wired {
	var best *wired
	ways := in.waysToWire(a, t, in.left)
	for i := range ways {
		if w := &ways[i]; best == nil || w.shortfall() < best.shortfall() {
			best = w
		}
	}
	return best
}

// bare says what keeps a path from being wired at all.
func (in *installer) bare(t *task) string {
	needed, longest, id := t.duty.LengthM*float64(t.duty.Conductors), 0.0, ""
	for i := range in.c.Cables {
		if left := in.left.quantity[article{part: in.c.Cables[i].ID}]; left > longest {
			longest, id = left, in.c.Cables[i].ID
		}
	}
	switch {
	case id == "":
		return fmt.Sprintf("%s: no cable is left, %.3g m of one kind needed", t.name(), needed)
	case longest < needed:
		return fmt.Sprintf("%s: the longest cable left is %.3g m of %s, %.3g m needed", t.name(), longest, id, needed)
	}
	for i := range in.c.Devices {
		if in.left.quantity[article{part: in.c.Devices[i].ID}] >= 1 || t.duty.OwnBreakerA > 0 {
			return t.name() + ": no cable is left for the ground"
		}
	}
	return t.name() + ": no fuse or breaker is left"
}

// lay puts a path into the plan, beside others that are the same, and takes its parts.
func (in *installer) lay(t *task, w *wired) {
	for _, x := range w.takes.order {
		as := t.name()
		if in.stock.kinds[x.part] == catalog.KindCable && x.part == w.run.Ground && x.part != w.run.Cable {
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
