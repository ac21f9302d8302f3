package audit

import (
	"math"
	"strings"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// guard is one thing that protects a path: a device, the inverter's own breaker, or the battery's own device.
type guard struct {
	ratingA   float64
	breaker   bool   // else a fuse
	class     string // of a fuse
	terminalC float64
	standsV   float64
	breaksA   float64
	device    *catalog.Device // nil: not bought
	inverter  bool            // the inverter's own
}

// The catalogue's types of device.
const (
	breakerType = "breaker"
	fuseType    = "fuse"
)

// builtInC is the terminal temperature in °C of a breaker built into a battery or inverter: common practice, no source.
const builtInC = 75

// guardsOf returns what protects a path as the plan has it wired: first what is built in, then what is bought.
func (a *auditor) guardsOf(t *task, r *plan.Run) (guards []guard) {
	if t.ownBreakerA > 0 {
		return []guard{{ratingA: t.ownBreakerA, breaker: true, terminalC: builtInC, inverter: true}}
	}
	if r.OwnDevice && t.own != nil {
		guards = append(guards, guard{ratingA: t.own.OwnDeviceA, breaker: true, terminalC: builtInC, breaksA: t.own.OwnInterruptingA})
	}
	if d := a.stock.devices[r.Device]; d != nil {
		guards = append(guards, boughtGuard(d, t.ac))
	}
	return guards
}

// boughtGuard returns a device as it protects a path of direct or of alternating current.
func boughtGuard(d *catalog.Device, ac bool) guard {
	g := guard{ratingA: d.RatingA, breaker: d.Type == breakerType, class: d.Class, terminalC: d.TerminalC,
		standsV: d.MaxDCV, breaksA: d.InterruptingDCA, device: d}
	if ac {
		g.standsV, g.breaksA = d.MaxACV, d.InterruptingACA
	}
	return g
}

// partialRange reports whether fuses of a class break short circuits only and no overload: those whose class
// begins with a small a, as aR and aM. IEC 60269-1.
func partialRange(class string) bool { return strings.HasPrefix(class, "a") }

// devicesOf returns how many devices are bought for one path.
func devicesOf(t *task, r *plan.Run) float64 {
	ends := 1.0
	switch {
	case t.kind == scenarios.RunBond || t.ownBreakerA > 0:
		return 0
	case t.bothEnds:
		ends = 2
	}
	if r.OwnDevice && t.own != nil {
		ends--
	}
	return ends
}

// conductorM returns the length bought for a conductor: with slack, and in whole steps.
func (a *auditor) conductorM(lengthM float64) float64 {
	wish := &a.s.Cable
	m := lengthM * (1 + wish.Slack)
	if wish.StepM > 0 {
		m = plan.Ceil(m/wish.StepM) * wish.StepM
	}
	return m
}

// stringFuseNeeded reports whether each string of modules needs a fuse: whether the others together, with 1.25 of their
// short-circuit current each, can feed it more than its maker allows. NEC 690.9(A), 690.8(A)(1).
func stringFuseNeeded(x *array) bool {
	if x.MaxFuseA == 0 {
		return x.parallel > mostUnfused
	}
	return !plan.AtMost((x.parallel-1)*continuous*x.IscA, x.MaxFuseA)
}

// mostUnfused is the most strings of modules in parallel that go without fuses where the maker states no largest fuse:
// common practice, no source.
const mostUnfused = 2

// judgeStringFuse adds the checks of the fuses of the strings of modules.
func (a *auditor) judgeStringFuse(r *ruling, t *task, run *plan.Run) {
	const source = "NEC 690.8(B), 690.9; IEC 62548"
	needed := float64(t.stringFuses)
	r.same("string fuses", float64(run.StringFuses), needed, "", source)
	r.same("string fuse present", named(run.StringFuse), math.Min(1, needed), "", source)
	f := a.stock.devices[run.StringFuse]
	if f == nil || t.stringFuses == 0 {
		return
	}
	r.least("string fuse rating", f.RatingA, continuous*continuous*t.array.IscA, "A", source)
	r.same("string fuse standard", f.RatingA, a.nearest(false, f.RatingA), "A", a.ruleSet().clauses().standard)
	if t.array.MaxFuseA > 0 {
		r.most("string fuse limit", f.RatingA, t.array.MaxFuseA, "A", fromMaker)
	}
	r.least("string fuse voltage", f.MaxDCV, t.stringFuseV, "V", source)
	r.least("string fuse interrupting", f.InterruptingDCA, t.faultA, "A", a.ruleSet().clauses().interrupting)
	r.same("string fuse kind", answered(f.Type == fuseType && !partialRange(f.Class) && (a.s.Rules == scenarios.IEC || f.Listed != catalog.No)), 1, "", source)
}
