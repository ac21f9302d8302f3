package audit

import (
	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/optimize/wiring/conductor"
	"cartwright/scenarios"
	"cartwright/scenarios/ratings"
)

// check is one requirement of a cable path: the value an entry of the runs has, the limit, and whether it is met.
type check struct {
	name         string
	passed       bool
	value, limit float64
	unit, source string
}

// ruling is the judgement of one entry of the runs. Figures of the cable are 0 where it is in no table.
type ruling struct {
	requiredA     float64 // least ampacity and device rating
	allowedA      float64 // corrected ampacity of all sets together
	deviceA       float64 // rating of the device, or of what serves instead
	dropPct       float64
	interruptingA float64
	checks        []check
}

func (r *ruling) least(name string, value, limit float64, unit, source string) {
	r.checks = append(r.checks, check{name, plan.AtLeast(value, limit), value, limit, unit, source})
}

func (r *ruling) most(name string, value, limit float64, unit, source string) {
	r.checks = append(r.checks, check{name, plan.AtMost(value, limit), value, limit, unit, source})
}

func (r *ruling) same(name string, value, limit float64, unit, source string) {
	r.checks = append(r.checks, check{name, value == limit, value, limit, unit, source})
}

// lay is a path with its cable, in so many parallel sets.
type lay struct {
	*task
	cable *catalog.Cable
	sets  int
}

// ruleSet is what the two rule sets say of a path, each by its own tables.
type ruleSet interface {
	// requiredA returns the least rating of the device and least ampacity of the cable.
	requiredA(t *task) float64
	// listed reports whether the tables have the cable, and its resistance in ohm per metre.
	listed(w *lay) (ohmPerM float64, ok bool)
	// parallel reports whether the cable may be laid in parallel sets.
	parallel(w *lay) bool
	// protects adds the checks of one device and the cable together, and returns the corrected ampacity.
	protects(r *ruling, w *lay, g *guard) (allowedA float64)
	// groundListed reports whether the tables have a grounding conductor; groundMM2 returns the least area of one of
	// that material behind a device.
	groundListed(ground *catalog.Cable) bool
	groundMM2(w *lay, g *guard, ground *catalog.Cable) (mm2 float64, ok bool)
	clauses() *clauses
}

// clauses are the sources of the checks that both rule sets share.
type clauses struct {
	present, green, rating, standard, voltage, poles, interrupting, class, listed, cable, sets, drop, ground string
}

func (a *auditor) ruleSet() ruleSet {
	if a.s.Rules == scenarios.IEC {
		return iecRules{}
	}
	return necRules{}
}

// mostSets is the most parallel sets a path is built with.
const mostSets = 2

// rule judges one entry of the runs for its task.
func (a *auditor) rule(t *task, run *plan.Run) (r ruling) {
	rules := a.ruleSet()
	c := rules.clauses()
	if t.kind == scenarios.RunBond {
		a.judgeGround(&r, &lay{task: t}, nil, run)
		a.judgeConduit(&r, t, run)
		return r
	}
	r.requiredA = rules.requiredA(t)
	w := &lay{t, a.stock.cables[run.Cable], run.Sets}
	if w.cable == nil || w.sets < 1 {
		r.least("cable present", 0, 1, "", c.present)
		return r
	}
	known := a.judgeCable(&r, w)
	guards := a.guardsOf(t, run)
	if len(guards) == 0 {
		r.least("device present", 0, 1, "", c.present)
		return r
	}
	for i := range guards {
		g := &guards[i]
		a.judgeGuard(&r, t, g)
		if known {
			allowed := rules.protects(&r, w, g)
			if i == 0 || allowed < r.allowedA {
				r.allowedA = allowed
			}
		}
	}
	last := &guards[len(guards)-1]
	r.deviceA, r.interruptingA = last.ratingA, last.breaksA
	if known && t.ground {
		a.judgeGround(&r, w, last, run)
	}
	if t.array != nil {
		a.judgeStringFuse(&r, t, run)
	}
	a.judgeConduit(&r, t, run)
	return r
}

// judgeCable adds the checks of the cable alone; it reports whether the rule set's tables have it.
func (a *auditor) judgeCable(r *ruling, w *lay) bool {
	c := a.ruleSet().clauses()
	if w.fine {
		r.least("cable strand", answered(w.cable.Fine), 1, "", "the scenario's own limit: fine strand for string and main")
	}
	if w.cable.GroundOnly {
		r.least("cable listed", 0, 1, "", c.green)
		return false
	}
	ohm, ok := a.ruleSet().listed(w)
	if !ok {
		r.least("cable listed", 0, 1, "", c.cable)
		return false
	}
	limit := 1.0
	if a.ruleSet().parallel(w) {
		limit = mostSets
	}
	r.most("parallel sets", float64(w.sets), limit, "", c.sets)
	wayM := 2*w.lengthM + float64(w.links)*w.linkM
	r.dropPct = 100 * conductor.DropV(w.dropA/float64(w.sets), wayM, ohm) / w.dropV
	r.most("voltage drop", r.dropPct, 100*w.drop, "%", c.drop)
	return true
}

// answered returns 1 for yes and 0 for no.
func answered(yes bool) float64 {
	if yes {
		return 1
	}
	return 0
}

// judgeGuard adds the checks of what protects a path, whatever its cable.
func (a *auditor) judgeGuard(r *ruling, t *task, g *guard) {
	c := a.ruleSet().clauses()
	if t.exactA > 0 {
		r.same("device rating", g.ratingA, t.exactA, "A", "the circuit's stated device")
	} else {
		r.least("device rating", g.ratingA, r.requiredA, "A", c.rating)
	}
	r.same("standard rating", g.ratingA, a.nearest(g.breaker, g.ratingA), "A", c.standard)
	if t.mostA > 0 {
		r.most("device limit", g.ratingA, t.mostA, "A", fromMaker)
	}
	if g.inverter {
		return
	}
	r.least("interrupting rating", g.breaksA, t.faultA, "A", c.interrupting)
	if g.device == nil {
		return
	}
	r.least("device voltage", g.standsV, t.deviceV, "V", c.voltage)
	r.least("device poles", float64(g.device.Poles), float64(t.poles), "", c.poles)
	r.same("device class", answered(partialRange(g.class)), 0, "", c.class)
	if t.reversible {
		r.same("device polarised", answered(g.breaker && g.device.Polarised == catalog.Yes), 0, "",
			"IEC 60898-3, UL 489: a breaker that is marked + and - breaks current one way only; from memory")
	}
	if a.s.Rules != scenarios.IEC {
		r.same("device listed", answered(g.device.Listed == catalog.No), 0, "", c.listed)
	}
}

// nearest returns the least standard rating of a breaker or a fuse that is not below a rating; the largest where there
// is none.
func (a *auditor) nearest(breaker bool, ratingA float64) float64 {
	kind := fuseType
	if breaker {
		kind = breakerType
	}
	below, above := ratings.Around(ratings.Standard(string(a.s.Rules), kind), ratingA)
	if above == 0 {
		return below
	}
	return above
}

// judgeGround adds the checks of a path's grounding conductor.
func (a *auditor) judgeGround(r *ruling, w *lay, g *guard, run *plan.Run) {
	rules := a.ruleSet()
	source := rules.clauses().ground
	ground := a.stock.cables[run.Ground]
	if ground == nil {
		r.least("ground present", 0, 1, "", source)
		return
	}
	mm2, ok := rules.groundMM2(w, g, ground)
	if !ok || !rules.groundListed(ground) {
		r.least("ground listed", 0, 1, "", source)
		return
	}
	r.least("ground size", ground.Size.AreaMM2(), mm2, "mm2", source)
}
