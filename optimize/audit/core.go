package audit

import (
	"fmt"
	"math"

	"cartwright/catalog"
	"cartwright/optimize/energy"
	"cartwright/scenarios"
)

const (
	ruleKnown     = "known parts"
	ruleCore      = "core"
	ruleSeries    = "modules in series"
	ruleMaxSeries = "series allowed"
	ruleBusHigh   = "bus voltage, highest"
	ruleBusLow    = "bus voltage, nominal"
	ruleGroup     = "parallel group"
	ruleParallel  = "strings in parallel"
	ruleUnits     = "inverter units"
	ruleInputLow  = "inverter input, lowest"
	ruleInputHigh = "inverter input, highest"
	ruleOutput    = "inverter output"
)

var coreRules = []Rule{
	{ruleKnown, "", "every part named is in the catalogue and of the kind it is used as", fromParts},
	{ruleCore, "", "one inverter kind, at least one unit and one string, no battery listed twice", practice},
	{ruleSeries, "", "series = round(bus nominal / module nominal), at least 1", "common practice, no source; halves upward"},
	{ruleMaxSeries, "", "series <= max_series", fromMaker},
	{ruleBusHigh, "V", "max_v * series <= bus high", fromScenario},
	{ruleBusLow, "V", "nominal_v * series >= bus low", fromScenario},
	{ruleGroup, "", "batteries on one bus are of one parallel group, or of one kind", fromMaker},
	{ruleParallel, "", "strings of a kind <= max_parallel", fromMaker},
	{ruleUnits, "", "units <= max_units", fromMaker},
	{ruleInputLow, "V", "inverter dc_min_v <= bus low", fromMaker},
	{ruleInputHigh, "V", "inverter dc_max_v >= bus high", fromMaker},
	{ruleOutput, "", "the inverter's ac volts serve every circuit and load", "nominal volts: ANSI C84.1 for 120 and 240, IEC 60038 for 230"},
}

// recognise looks up what the plan names, notes what is not in the catalogue, and works out the demand.
func (a *auditor) recognise() {
	var unknown []string
	want := func(where, id string, kind catalog.Kind) {
		if !a.stock.has(id, kind) {
			unknown = append(unknown, fmt.Sprintf("%s: no %s %q", where, kind, id))
		}
	}
	core := &a.p.Core
	for _, b := range core.Batteries {
		want("core", b.Part, catalog.KindBattery)
		if found := a.stock.batteries[b.Part]; found != nil {
			a.strings = append(a.strings, bank{found, float64(b.Strings), float64(b.Series)})
		}
	}
	unknown = append(unknown, a.recogniseArray()...)
	want("core", core.Inverter.Part, catalog.KindInverter)
	a.inverter, a.units = a.stock.inverters[core.Inverter.Part], float64(core.Inverter.Units)
	for _, r := range a.p.Runs {
		where := r.Run + " run"
		if r.Run != string(scenarios.RunBond) {
			want(where, r.Cable, catalog.KindCable)
		}
		for _, other := range []struct {
			id   string
			kind catalog.Kind
		}{{r.Ground, catalog.KindCable}, {r.Device, catalog.KindDevice}, {r.StringFuse, catalog.KindDevice}, {r.Conduit, catalog.KindConduit}} {
			if other.id != "" {
				want(where, other.id, other.kind)
			}
		}
	}
	for _, sh := range a.p.Shelves {
		for _, b := range sh.Batteries {
			want("shelf "+sh.Shelf, b.Part, catalog.KindBattery)
		}
	}
	want("casters", a.p.Casters.Part, catalog.KindCasters)
	for _, l := range a.p.Bill {
		kind := catalog.Kind(l.Kind)
		switch l.Kind {
		case kindCableEnd:
			kind = catalog.KindCable
		case kindConduitEnd:
			kind = catalog.KindConduit
		}
		want("bill", l.Part, kind)
	}
	a.none(ruleKnown, append(unknown, a.strangeSections()...))
	a.hookUp()
}

// core checks whether the batteries and the inverter suit this bus, and each other.
func (a *auditor) core() {
	core := &a.p.Core
	var faults []string
	seen := map[string]bool{}
	for _, b := range core.Batteries {
		if seen[b.Part] {
			faults = append(faults, "battery "+b.Part+" is listed twice")
		}
		seen[b.Part] = true
		if b.Strings < 1 {
			faults = append(faults, "battery "+b.Part+" has no string")
		}
	}
	if len(core.Batteries) == 0 {
		faults = append(faults, "no battery")
	}
	if core.Inverter.Units < 1 {
		faults = append(faults, "no inverter")
	}
	a.none(ruleCore, faults)
	a.batteries()
	a.inverterFits()
}

// batteries checks whether each battery fits the bus, and may share it with the others.
func (a *auditor) batteries() {
	bus := a.s.Bus
	var strangers []string
	for i, b := range a.strings {
		right := math.Round(bus.NominalV / b.NominalV)
		a.tell(ruleSeries, b.series, right, b.series == right && right >= 1, -math.Abs(b.series-right), b.ID)
		a.atMost(ruleMaxSeries, b.series, float64(b.MaxSeries), b.ID)
		a.atMost(ruleBusHigh, b.MaxV*b.series, bus.HighV, b.ID)
		a.atLeast(ruleBusLow, b.NominalV*b.series, bus.LowV, b.ID)
		if b.MaxParallel > 0 {
			a.atMost(ruleParallel, b.count, float64(b.MaxParallel), b.ID)
		}
		for _, other := range a.strings[:i] {
			if b.ID != other.ID && (b.Group == "" || b.Group != other.Group) {
				strangers = append(strangers, other.ID+" beside "+b.ID)
			}
		}
	}
	a.none(ruleGroup, strangers)
}

// inverterFits checks whether the inverter suits the bus and serves every circuit and load.
func (a *auditor) inverterFits() {
	inv, bus := a.inverter, a.s.Bus
	if inv == nil {
		return
	}
	a.atMost(ruleUnits, a.units, math.Max(1, float64(inv.MaxUnits)), inv.ID)
	a.atMost(ruleInputLow, inv.DCMinV, bus.LowV, inv.ID)
	a.atLeast(ruleInputHigh, inv.DCMaxV, bus.HighV, inv.ID)
	var faults []string
	for i := range a.s.Circuits {
		if c := &a.s.Circuits[i]; !c.DC && !energy.Serves(inv.ACV, c.Volts) {
			faults = append(faults, fmt.Sprintf("circuit %q of %g V on %s V", c.Name, c.Volts, inv.ACV))
		}
	}
	for i := range a.s.Loads {
		if l := &a.s.Loads[i]; spansLegs(a.s, i) && inv.ACV != energy.ACVThree {
			faults = append(faults, fmt.Sprintf("load %q is between two legs", l.Name))
		}
	}
	a.none(ruleOutput, faults)
}
