package wiring

import (
	"math"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/optimize/wiring/conductor"
)

// Option is one way to build a path: a cable laid in so many parallel sets, behind a device, with a
// grounding conductor.
type Option struct {
	Cable  *catalog.Cable
	Sets   int
	Device *catalog.Device // nil where Duty.OwnBreakerA or the battery's own device stands in
	Ground *catalog.Cable  // nil where Duty.Ground is false
	// Devices is how many of Device one path has; BuiltIn says that the battery's own device serves besides.
	Devices int
	BuiltIn bool
	Conduit *catalog.Conduit // nil where Duty.Conduit is ""
}

// devices returns how many devices protect the path, what is built in included.
func (o *Option) devices() int {
	n := 0
	if o.Device != nil {
		n = max(1, o.Devices)
	}
	if o.BuiltIn {
		n++
	}
	return n
}

// InterruptingA returns the fault current in amperes that every device of the option can break; +Inf where the
// inverter's own breaker serves, whose interrupting rating is not known.
func (o *Option) InterruptingA(d *Duty) float64 {
	least := math.Inf(1)
	if o.Device != nil {
		least = InterruptingA(*d, o.Device)
	}
	if o.BuiltIn {
		least = math.Min(least, d.BuiltInBreaksA)
	}
	return least
}

// Check is one requirement: the option's value, the limit, and whether the value meets it.
type Check struct {
	Name         string
	Passed       bool
	Value, Limit float64
	Unit, Source string
}

// Result is the judgement of one option for one duty. Figures of the cable are 0 where it is in no table.
type Result struct {
	RequiredA     float64 // least ampacity and device rating asked for
	AllowedA      float64 // corrected ampacity of all sets together (I_z)
	DeviceA       float64 // rating of the device, or of the inverter's own breaker
	DropPct       float64 // of the duty's nominal volts
	InterruptingA float64 // of the device; 0 with an own breaker
	Checks        []Check
}

// OK reports whether every check passed.
func (r Result) OK() bool { return allPassed(r.Checks) }

func allPassed(checks []Check) bool {
	for i := range checks {
		if !checks[i].Passed {
			return false
		}
	}
	return true
}

// least returns the check that value reaches limit.
func least(name string, value, limit float64, unit, source string) Check {
	return Check{name, plan.AtLeast(value, limit), value, limit, unit, source}
}

// most returns the check that value does not exceed limit.
func most(name string, value, limit float64, unit, source string) Check {
	return Check{name, plan.AtMost(value, limit), value, limit, unit, source}
}

// same returns the check that value equals limit.
func same(name string, value, limit float64, unit, source string) Check {
	return Check{name, value == limit, value, limit, unit, source}
}

// InterruptingA returns the fault current in amperes that a device can break in the duty's kind of
// current.
func InterruptingA(d Duty, dev *catalog.Device) float64 {
	if d.AC {
		return dev.InterruptingACA
	}
	return dev.InterruptingDCA
}

// standsV returns the voltage rating of a device for the duty's kind of current.
func standsV(d *Duty, dev *catalog.Device) float64 {
	if d.AC {
		return dev.MaxACV
	}
	return dev.MaxDCV
}

// dropPct returns the voltage drop of a path in percent of its nominal volts, there and back.
//
//	drop % = 100 · I · 2·l·R / (sets · V)      NEC 210.19 informational note, chapter 9 table 8
func dropPct(d *Duty, sets int, ohmPerM float64) float64 {
	return 100 * conductor.DropV(d.DropA/float64(sets), d.WayM(), ohmPerM) / d.NominalV
}
