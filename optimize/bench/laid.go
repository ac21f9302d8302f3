package bench

import (
	"slices"

	"cartwright/optimize/energy"
	"cartwright/optimize/market"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
)

// Before keeps what is dear to find and the same for all problems that differ in their limits only:
// the demand, of which the split of the legs can take seconds, and the options of runs. Catalogue,
// holdings and tax have to be the same.
type Before struct {
	loads    []scenarios.Load
	measured *scenarios.Measured
	demand   *energy.Demand
	options  map[wiredRun][]market.Option
}

// wiredRun is a run and whether heavier options had to be kept.
type wiredRun struct {
	duty  wiring.Duty
	heavy bool
}

// demandOf returns the demand of a scenario's loads.
func (l *Before) demandOf(s *scenarios.Scenario) (*energy.Demand, error) {
	if l.demand != nil && l.measured == s.Measured && slices.Equal(l.loads, s.Loads) {
		return l.demand, nil
	}
	d, err := energy.DemandOf(s)
	if err != nil {
		return nil, err
	}
	l.demand, l.measured, l.loads = d, s.Measured, slices.Clone(s.Loads)
	return d, nil
}

// keep remembers the options of a run.
func (l *Before) keep(run wiredRun, options []market.Option) {
	if l.options == nil {
		l.options = map[wiredRun][]market.Option{}
	}
	l.options[run] = options
}

// OtherParts returns what stays where parts change, too: the demand.
func (l *Before) OtherParts() *Before {
	return &Before{loads: l.loads, measured: l.measured, demand: l.demand}
}
