package audit

import (
	"slices"

	"cartwright/scenarios"
)

// installRuns wires the cable paths of the core from the owned cables and devices: first as many as can
// pass, then the others with what comes nearest to passing, the nearest first.
func (in *installer) installRuns() {
	a := in.auditor()
	tasks := a.tasks()
	counts, alike, passing := make([]int, len(tasks)), make([]bool, len(tasks)), make([][]wired, len(tasks))
	for i := range tasks {
		t := &tasks[i]
		counts[i], alike[i] = int(t.count), t.kind == scenarios.RunString
		if t.kind == scenarios.RunBond {
			in.boundBond(t, tasks, passing)
		}
		for _, w := range in.waysToWire(a, t, in.left, false) {
			if len(w.failed) == 0 {
				passing[i] = append(passing[i], w)
			}
		}
	}
	m := newMatching(in.left, counts, alike, passing, in.mostMatchings)
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
		t := &tasks[at]
		if w.fails("device present") || w.fails(pathDevices) {
			in.lack("a fuse or breaker for %s", t.name())
		}
		if w.run.Ground == "" && t.ground {
			in.lack("a ground for %s", t.name())
		}
		if w.run.StringFuse == "" && t.stringFuses > 0 {
			in.lack("%d x fuse for the strings of modules", t.stringFuses)
		}
		if w.run.Conduit == "" && t.conduit != "" {
			in.lack("%.4g m of conduit %s for %s", t.lengthM, t.conduit, t.name())
		}
	}
	for i, n := range open {
		if n > 0 {
			in.lackPath(a, &tasks[i], n)
		}
	}
}

// boundBond sizes the bond by the largest device and cable that the mains may be wired with, as they are not wired yet.
func (in *installer) boundBond(bond *task, tasks []task, passing [][]wired) {
	for i := range passing {
		if tasks[i].kind != scenarios.RunMain {
			continue
		}
		bond.groundDevice = max(bond.groundDevice, tasks[i].ownBreakerA)
		for k := range passing[i] {
			r := &passing[i][k].run
			bond.groundDevice = max(bond.groundDevice, r.DeviceA)
			bond.groundLine = max(bond.groundLine, float64(r.Sets)*in.stock.cables[r.Cable].Size.AreaMM2())
		}
	}
}

// lackPath notes that so many paths of a task can't be wired at all.
func (in *installer) lackPath(a *auditor, t *task, n int) {
	if t.kind == scenarios.RunBond {
		in.lack("%.4g m of grounding conductor for the bond", a.conductorM(t.lengthM))
		return
	}
	metres := a.conductorM(t.lengthM)*float64(t.conductors) + a.conductorM(t.linkM)*float64(t.links)
	in.lack("%d x cable and device for %s, %.4g m of conductor each", n, t.name(), metres)
}

// nearest returns the way to wire one of the open paths from what is left that is least far from
// passing, and the task it is for; nil where there is none.
func (in *installer) nearest(a *auditor, tasks []task, open []int) (at int, best *wired) {
	for i := range tasks {
		if open[i] == 0 {
			continue
		}
		if tasks[i].kind == scenarios.RunBond {
			tasks[i] = in.auditor().bondTask()[0] // by the mains as they are wired
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

// lay adds a path to the plan's runs, counted with equal ones, and takes its parts.
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
