package wiring

import (
	"strings"

	"cartwright/catalog"
	"cartwright/scenarios"
	"cartwright/scenarios/ratings"
)

// Rules is one rule set. Both judge an option in four steps, so that a search can drop a cable or a
// device before combining it with others: the device alone, the cable path alone, the two together,
// and the ground that goes with them.
type Rules interface {
	// Check judges one option for one duty, where faultA is the prospective fault current at the device
	// in amperes (ignored with an own breaker). A missing device or ground fails its check.
	Check(d Duty, o Option, faultA float64) Result

	// requiredA returns the least rating of the device and the least ampacity of the cable.
	requiredA(d *Duty) float64
	// ratingChecks adds the checks of the device's rating alone.
	ratingChecks(checks []Check, d *Duty, p protector) []Check
	// path looks up a cable in so many sets and adds the checks of it alone. Where the cable is in no table they fail
	// and the path is empty.
	path(checks []Check, d *Duty, cable *catalog.Cable, sets int) ([]Check, path)
	// pairChecks adds the checks of path and protection together and returns the corrected ampacity.
	pairChecks(checks []Check, d *Duty, w *path, p protector) ([]Check, float64)
	// groundListed reports whether a cable may be a ground at all.
	groundListed(ground *catalog.Cable) bool
	// groundMM2 returns the least area of a ground of a material; ok is false where no size is large
	// enough.
	groundMM2(d *Duty, w *path, p protector, material string) (mm2 float64, ok bool)
	// clauses returns the sources of the checks that both rule sets have.
	clauses() *clauses
}

// path is a cable in so many parallel sets, with what the tables say of it.
type path struct {
	cable   *catalog.Cable
	sets    int
	dropPct float64
	// insulationA is the ampacity of all sets by the insulation, corrected for ambient and bundle.
	insulationA float64
}

// protector is what protects a path: a device, or the inverter's own breaker.
type protector struct {
	ratingA   float64
	breaker   bool   // else a fuse
	class     string // of a fuse
	terminalC float64
}

// ownTerminalC is the terminal temperature of an inverter's own breaker, in °C: common practice, no
// source.
const ownTerminalC = 75

// breakerType and fuseType are the catalogue's device types.
const (
	breakerType = "breaker"
	fuseType    = "fuse"
)

// protectorOf returns what protects the duty's path: the inverter's own breaker where the duty has one, else the
// device, or the battery's own where dev is nil.
func protectorOf(d *Duty, dev *catalog.Device) protector {
	switch {
	case d.OwnBreakerA > 0:
		return protector{ratingA: d.OwnBreakerA, breaker: true, terminalC: ownTerminalC}
	case dev == nil:
		return protector{ratingA: d.BuiltInA, breaker: true, terminalC: ownTerminalC}
	}
	return protector{dev.RatingA, dev.Type == breakerType, dev.Class, dev.TerminalC}
}

// protectors lists all that protects an option's path, the battery's own device first.
func protectors(d *Duty, o *Option) []protector {
	var list []protector
	if o.BuiltIn {
		list = append(list, protectorOf(d, nil))
	}
	if d.OwnBreakerA > 0 || o.Device != nil {
		list = append(list, protectorOf(d, o.Device))
	}
	return list
}

// For returns the rule set of a name; nec for any other than iec, as the scenario's reader admits no third.
func For(r scenarios.Rules) Rules {
	if r == scenarios.IEC {
		return iecRules{}
	}
	return necRules{}
}

// check is Check of both rule sets.
func check(r Rules, d *Duty, o Option, faultA float64) Result {
	res := Result{RequiredA: r.requiredA(d)}
	if o.Cable == nil || o.Sets < 1 {
		res.Checks = []Check{least("cable present", 0, 1, "", r.clauses().present)}
		return res
	}
	checks, w := pathOf(r, make([]Check, 0, mostChecks), d, o.Cable, o.Sets)
	res.DropPct = w.dropPct
	guards := protectors(d, &o)
	if len(guards) == 0 {
		res.Checks = append(checks, least("device present", 0, 1, "", r.clauses().present))
		return res
	}
	if d.Devices > 1 {
		checks = append(checks, least("devices at both ends", float64(o.devices()), float64(d.Devices), "", r.clauses().bothEnds))
	}
	for i, p := range guards {
		res.DeviceA = p.ratingA
		checks = r.ratingChecks(checks, d, p)
		if w.cable == nil {
			continue
		}
		var allowedA float64
		if checks, allowedA = r.pairChecks(checks, d, &w, p); i == 0 || allowedA < res.AllowedA {
			res.AllowedA = allowedA
		}
	}
	if o.BuiltIn {
		res.InterruptingA = d.BuiltInBreaksA
		checks = append(checks, least("interrupting rating", d.BuiltInBreaksA, faultA, "A", r.clauses().interrupting))
	}
	if o.Device != nil && d.OwnBreakerA == 0 {
		res.InterruptingA = InterruptingA(*d, o.Device)
		checks = deviceChecks(checks, d, o.Device, faultA, r.clauses())
	}
	if w.cable != nil && d.Ground {
		checks = append(checks, groundCheck(r, d, &w, guards[len(guards)-1], o.Ground))
	}
	res.Checks = checks
	return res
}

// pathOf is Rules.path with the two checks that come before it: of the strand, and that green is for grounds only.
func pathOf(r Rules, checks []Check, d *Duty, cable *catalog.Cable, sets int) ([]Check, path) {
	if d.Fine && !cable.Fine {
		return append(checks, least("cable strand", 0, 1, "", "the scenario's own limit: fine strand for string and main")), path{}
	}
	if cable.GroundOnly {
		return append(checks, least("cable listed", 0, 1, "", r.clauses().green)), path{}
	}
	return r.path(checks, d, cable, sets)
}

// mostChecks is room enough for all checks of one option.
const mostChecks = 32

// clauses are the sources of the checks that both rule sets share.
type clauses struct {
	present, green, rating, voltage, poles, interrupting, class, listed, drop, ground, bothEnds string
}

// deviceChecks adds the checks of a device that do not depend on the cable.
func deviceChecks(checks []Check, d *Duty, dev *catalog.Device, faultA float64, c *clauses) []Check {
	checks = append(checks,
		least("device voltage", standsV(d, dev), d.DeviceV, "V", c.voltage),
		least("device poles", float64(dev.Poles), float64(d.Poles), "", c.poles),
		least("interrupting rating", InterruptingA(*d, dev), faultA, "A", c.interrupting),
		same("device of partial range", yes(PartialRange(dev)), 0, "", c.class))
	if d.TwoWay {
		checks = append(checks, same("device polarised", yes(dev.Type == breakerType && dev.Polarised == catalog.Yes), 0, "", polarisedSource))
	}
	if c.listed != "" {
		checks = append(checks, same("device not listed", yes(dev.Listed == catalog.No), 0, "", c.listed))
	}
	return checks
}

// polarisedSource is the source of the rule that a polarised breaker serves no path where current runs both ways.
const polarisedSource = "IEC 60898-3, UL 489: a breaker that is marked + and - breaks current one way only; from memory"

// PartialRange reports whether a device is a fuse of partial range, which breaks short circuits but no overload: its
// class begins with a small a, as aR and aM do.
//
// Source: IEC 60269-1, utilisation categories.
func PartialRange(dev *catalog.Device) bool {
	return dev.Type == fuseType && strings.HasPrefix(dev.Class, "a")
}

// yes returns 1 for yes and 0 for no.
func yes(is bool) float64 {
	if is {
		return 1
	}
	return 0
}

// groundCheck returns the check of a path's grounding conductor.
func groundCheck(r Rules, d *Duty, w *path, p protector, ground *catalog.Cable) Check {
	source := r.clauses().ground
	if ground == nil {
		return least("ground present", 0, 1, "", source)
	}
	mm2, ok := r.groundMM2(d, w, p, ground.Material)
	if !ok || !r.groundListed(ground) {
		return least("ground listed", 0, 1, "", source)
	}
	return groundSize(ground.Size.AreaMM2(), mm2, source)
}

// groundSize returns the check that a ground's area reaches the least one.
func groundSize(haveMM2, leastMM2 float64, source string) Check {
	return least("ground size", haveMM2, leastMM2, "mm2", source)
}

// standard holds the standard ratings of one rule set, rising.
type standard struct{ fuse, breaker []float64 }

func standardOf(rules scenarios.Rules) standard {
	return standard{
		fuse:    ratings.Standard(string(rules), fuseType),
		breaker: ratings.Standard(string(rules), breakerType),
	}
}

// of returns the standard ratings of a protector's kind.
func (s standard) of(p protector) []float64 {
	if p.breaker {
		return s.breaker
	}
	return s.fuse
}

// standardCheck returns the check that a rating is a standard one; its limit is the nearest standard
// rating not below it, or the last.
func standardCheck(list []float64, p protector, source string) Check {
	below, above := ratings.Around(list, p.ratingA)
	if above == 0 {
		above = below
	}
	return same("standard rating", p.ratingA, above, "A", source)
}
